using CsCheck;
using Shaftwright.Cut;
using Shaftwright.Cut.Search;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Measures;
using Shaftwright.Strength;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Cut.Search;

public sealed class ShelfSearchTests
{
    private static ShelfDonor On(string id, DonorShaft shaft) =>
        new()
        {
            Id = id,
            Shaft = shaft,
            Condition = DonorCondition.Sound,
            WalkedEnd = new(),
        };

    private static ShelfRequest Ask(double overall, params ShelfDonor[] donors) =>
        new()
        {
            Shelf = new() { Donors = donors },
            Cut = CutSolverTests.Ask(overall),
            Metal = ShelfSearchProperties.Metal,
        };

    private static string Why(ShelfResult result, string id) =>
        Assert.Single(result.Rejected, r => r.Id == id).Why.ToString();

    [Fact]
    public void Solve_ThreePlainShafts_LeadsWithThePairThatMatchesAndTheOneThatCarriesMost()
    {
        var result = ShelfSearch.Solve(
            Ask(500, On("a", Usual(24, 400)), On("b", Usual(24.3, 400)), On("c", Usual(27, 400)))
        );
        Assert.DoesNotContain(result.Findings, f => f.Severity == Severity.Stop);
        var match = result.Choices[0];
        Assert.Equal(["a", "b"], new[] { match.Inner.Id, match.Outer.Id }.Order());
        Assert.Equal(0.3, match.In(SearchGoal.Step)!.Value, 9);
        // The ring of the butt, 30 % of the radius deep, is the weakest: on 24.3 it carries more than on 24.
        var strong = result.Choices.MaxBy(c => c.In(SearchGoal.Strength))!;
        Assert.Equal(["b", "c"], new[] { strong.Inner.Id, strong.Outer.Id }.Order());
        Assert.Contains("2.70", strong.GivesUp!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Solve_OneLongShaftWithBothEnds_GivesBothEndsAndSaysSo()
    {
        var shaft = Usual(25, 655);
        var both = On(
            "long",
            shaft with
            {
                Zones = [.. shaft.Zones, Zone(ZoneKind.Spline, 700, 26, root: 24)],
            }
        ) with
        {
            FarEnd = new(),
        };
        var result = ShelfSearch.Solve(Ask(500, both));
        var choice = Assert.Single(result.Choices);
        Assert.NotEqual(choice.Inner.Far, choice.Outer.Far);
        Assert.Contains(
            choice.Mind,
            m => m.ToString().Contains("cut twice", StringComparison.Ordinal)
        );
        Assert.Equal(499.2, choice.InnerAt + choice.OuterAt, 9);
        // 700 less the two pieces: the middle is left over.
        Assert.Equal(200.8, choice.In(SearchGoal.Scrap)!.Value, 9);
    }

    [Theory]
    [InlineData(505.3, 0)]
    [InlineData(505.1, 1)]
    public void Solve_OneShaftWithBothEnds_NeedsRoomForTheSawAndBothFaces(
        double length,
        int choices
    )
    {
        // The two pieces take 501.2 between them, the saw 2 and the two faces 1 each: 505.2.
        var both = On("long", new() { Zones = [Zone(ZoneKind.Plain, 505.2, 25)] }) with
        {
            FarEnd = new(),
        };
        Assert.Equal(choices, ShelfSearch.Solve(Ask(length - 505.2 + 502, both)).Choices.Count);
    }

    [Fact]
    public void Solve_LengthFromSeatToSeat_MakesEachPairAsLongAsItsOwnEndsAsk()
    {
        double[] stubs = [6, 9];
        var donors = stubs.Select(
            (beyond, i) =>
                On($"{i}", Usual(25, 400)) with
                {
                    WalkedEnd = new() { SeatToEnd = Exactly(beyond) },
                }
        );
        var request = Ask(500, [.. donors]) with { SeatToSeat = 450 };
        var result = ShelfSearch.Solve(
            request with
            {
                Cut = request.Cut with { OverallLength = null },
            }
        );
        var choice = result.Choices[0];
        Assert.Equal(465, choice.Overall, 9);
        Assert.Equal(465 - 0.8, choice.InnerAt + choice.OuterAt, 9);
    }

    [Fact]
    public void Solve_EndsThatDoNotFit_AreNotOfferedAndSayWhy()
    {
        static ShelfDonor Splined(string id, int teeth, double over, DonorEnd end) =>
            On(
                id,
                new()
                {
                    Zones =
                    [
                        Zone(ZoneKind.Spline, 40, over, root: over - 2) with
                        {
                            Teeth = teeth,
                        },
                        Zone(ZoneKind.Plain, 400, 24),
                    ],
                }
            ) with
            {
                WalkedEnd = end,
            };
        var joint = new JointInput
        {
            Name = "ball 26",
            Teeth = 26,
            SplineDiameter = Mm(25.8),
            Seat = SeatKind.Clip,
        };
        var result = ShelfSearch.Solve(
            Ask(
                500,
                Splined("named", 0, 25.8, new() { Fits = ["Ball 26"] }),
                Splined("counted", 26, 25.8, new()),
                Splined("other name", 26, 25.8, new() { Fits = ["ball 28"] }),
                Splined("other count", 28, 25.8, new()),
                Splined("too thick", 26, 26.4, new()),
                Splined("other seat", 26, 25.8, new() { Seat = SeatKind.Shoulder }),
                Splined("nothing known", 0, 25.8, new())
            ) with
            {
                Joints = new() { Inner = joint, Outer = joint },
            }
        );
        Assert.Equal(
            ["counted", "named"],
            result.Choices.SelectMany(c => new[] { c.Inner.Id, c.Outer.Id }).Distinct().Order()
        );
        Assert.Contains("ball 28", Why(result, "other name"), StringComparison.Ordinal);
        Assert.Contains("28 teeth", Why(result, "other count"), StringComparison.Ordinal);
        Assert.Contains("26.40", Why(result, "too thick"), StringComparison.Ordinal);
        Assert.Contains("shoulder", Why(result, "other seat"), StringComparison.Ordinal);
        Assert.Contains("nothing written", Why(result, "nothing known"), StringComparison.Ordinal);
    }

    [Fact]
    public void Solve_WhatIsUsedOrDamaged_IsNotCutInAndItsEndNotOffered()
    {
        static GoneStretch From(GoneWhy why, double? from, double? to) =>
            new()
            {
                Why = why,
                From = from is { } a ? Mm(a) : null,
                To = to is { } b ? Mm(b) : null,
                Note = "the blue car",
            };
        var used = On("used", Usual(25, 700)) with
        {
            FarEnd = new(),
            Gone = [From(GoneWhy.Used, null, 260)],
        };
        var pitted = On("pitted", Usual(25, 700)) with { Gone = [From(GoneWhy.Damaged, 200, 210)] };
        var scrap = On("scrap", Usual(25, 700)) with { Condition = DonorCondition.Scrap };
        var result = ShelfSearch.Solve(Ask(500, used, pitted, scrap));
        var choice = result.Choices[0];
        var far = choice.Inner.Id == "used" ? choice.Inner : choice.Outer;
        Assert.True(far.Far);
        var (usedAt, pittedAt) =
            choice.Inner.Id == "used"
                ? (choice.InnerAt, choice.OuterAt)
                : (choice.OuterAt, choice.InnerAt);
        Assert.InRange(usedAt, 0, 440);
        Assert.InRange(pittedAt, 0, 200);
        Assert.Contains("scrap", Why(result, "scrap"), StringComparison.Ordinal);

        var gone = ShelfSearch.Solve(Ask(500, used with { FarEnd = null }, pitted));
        Assert.Contains("gone (the blue car)", Why(gone, "used"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("overlap", "before the one in front")]
    [InlineData("root", "at its root")]
    [InlineData("hard", "overlap from 60.0")]
    [InlineData("bore", "no thinner")]
    [InlineData("fillet", "longer than the stretch")]
    public void Solve_AProfileThatCannotBe_IsRefusedWithItsPlace(string fault, string says)
    {
        var good = Usual(25, 400);
        var bad = fault switch
        {
            "overlap" => good with { Zones = [.. good.Zones, Zone(ZoneKind.Plain, 390, 25)] },
            "root" => good with
            {
                Zones = [Zone(ZoneKind.Spline, 40, 24, root: 25), .. good.Zones.Skip(1)],
            },
            "hard" => good with { Hardened = [Hard(0, 80), Hard(60, 120)] },
            "bore" => good with
            {
                Bores =
                [
                    new()
                    {
                        From = Mm(0),
                        To = Mm(60),
                        Diameter = Mm(22.5),
                    },
                ],
            },
            _ => good with
            {
                Zones =
                [
                    .. good.Zones.Take(2),
                    good.Zones[2] with
                    {
                        Fillet = Mm(58),
                    },
                    .. good.Zones.Skip(3),
                ],
            },
        };
        var result = ShelfSearch.Solve(Ask(500, On("bad", bad), On("a", good), On("b", good)));
        Assert.Contains(says, Why(result, "bad"), StringComparison.Ordinal);
        Assert.NotEmpty(result.Choices);
    }

    [Fact]
    public void Solve_NoLength_SearchesNothingAndSaysWhatToDo()
    {
        var result = ShelfSearch.Solve(Ask(500, On("a", Usual(25, 400))) with { Cut = new() });
        Assert.Empty(result.Choices);
        Assert.Single(result.Findings, f => f.Code == "shelf-needs-length");
    }

    [Fact]
    public void Solve_ShaftsTooShort_SaysByHowMuch()
    {
        var result = ShelfSearch.Solve(Ask(900, On("a", Usual(25, 400)), On("b", Usual(25, 400))));
        var stop = Assert.Single(result.Findings, f => f.Severity == Severity.Stop);
        Assert.Contains("99.2", stop.Text.ToString(), StringComparison.Ordinal);
        Assert.Contains("too short", Why(result, "a"), StringComparison.Ordinal);
    }

    [Fact]
    public void Solve_ABentShaftOfTheOtherSide_IsMinded()
    {
        var other = On("b", Usual(25, 400)) with
        {
            Condition = DonorCondition.Bent,
            Side = Side.Left,
        };
        var result = ShelfSearch.Solve(
            Ask(500, On("a", Usual(25, 400)), other) with
            {
                Side = Side.Right,
            }
        );
        Assert.Contains(
            result.Choices[0].Mind,
            m => m.ToString().Contains("bent", StringComparison.Ordinal)
        );
        Assert.Contains(
            result.Choices[0].Mind,
            m => m.ToString().Contains("other way", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Taking_AnyChoice_CutsAndCarriesWhatTheSearchSaid() =>
        Check.Sample(
            Gen.Select(Tests.Donors.Walked.Random.Array[2, 3], Gen.Int[80, 320], Gen.Int[20, 50]),
            trial =>
            {
                var (shafts, overall, sleeve) = trial;
                var job = new Job
                {
                    Shelf = new()
                    {
                        Donors =
                        [
                            .. shafts.Select(
                                (s, i) => On($"{i}", s) with { FarEnd = i == 0 ? new() : null }
                            ),
                        ],
                    },
                    Cut = new()
                    {
                        OverallLength = Mm(overall),
                        RootGap = Mm(1),
                        Shrinkage = Mm(1),
                        HeatBand = Mm(8),
                        SleeveLength = Mm(sleeve),
                        SleeveOutside = Mm(36),
                        BootSlideRoom = Mm(5),
                    },
                };
                foreach (var choice in Workflow.Evaluate(job).Shelf!.Choices)
                {
                    var taken = Workflow.Evaluate(job.Taking(choice));
                    Assert.Equal(choice.OuterAt, taken.Cut!.OuterAt!.Value, tolerance: 1e-6);
                    Assert.DoesNotContain(taken.Cut.Findings, f => f.Severity == Severity.Stop);
                    var heated = taken
                        .Strength!.Sections.Where(s =>
                            s.Kind
                                is SectionKind.BesideWeld
                                    or SectionKind.FusedRing
                                    or SectionKind.SleeveEnd
                        )
                        .Min(s => s.YieldTorque.Low);
                    // Where two stretches meet with less than a step, 0.2 mm, either reading may count.
                    Assert.Equal(
                        heated,
                        choice.In(SearchGoal.Strength)!.Value,
                        tolerance: 0.03 * heated
                    );
                }
            },
            iter: 300
        );
}
