using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Tests.CrackTest;

namespace Shaftwright.Tests.Strength;

/// <summary>What a cut and etched sample settles, and what a closed sleeve earns.</summary>
public sealed class SampleTests
{
    private static Measured<Distance> Mm(double mm, double? plusMinus = null) =>
        Measured<Distance>.Of(mm, Distance.Mm, plusMinus);

    private static WeldSample Sample(params double[] depths) =>
        new()
        {
            At = new(2026, 5, 3, 14, 20, 0, TimeSpan.Zero),
            Photo = "p1",
            SameSteel = true,
            SameSetUp = true,
            Cracked = false,
            Fusion =
            [
                .. depths.Select(
                    (d, i) =>
                        new SampleFusion
                        {
                            Angle = Measured<Angle>.Of(90 * i, Angle.Degree),
                            Depth = Mm(d, 0.3),
                        }
                ),
            ],
        };

    private static WeldSample Row(WeldSample sample, params (double From, double Hv)[] row) =>
        sample with
        {
            Hardness =
            [
                .. row.Select(r => new SampleHardness
                {
                    From = Mm(r.From),
                    Hardness = Measured<Vickers>.Of(r.Hv, Vickers.Hv, 10),
                }),
            ],
        };

    private static StrengthResult Solve(StrengthInput strength, double? sleeveOutside = null)
    {
        var made = new MadeShaft(
            400,
            [new(ZoneKind.Plain, 0, 200, 25, 25), new(ZoneKind.Plain, 200, 400, 25, 25)],
            [],
            200,
            20,
            sleeveOutside is null ? null : 150,
            sleeveOutside is null ? null : 250,
            sleeveOutside
        );
        var donor = new DonorProfile(
            "",
            [],
            [],
            new SteelKnown(SteelClass.MediumCarbon, null, null)
        );
        return StrengthSolver.Solve(
            made,
            new()
            {
                InnerEnd = donor,
                OuterEnd = donor,
                Findings = [],
            },
            null,
            strength
        );
    }

    private static SectionMargin Ring(StrengthResult result) =>
        result.Sections.Single(s => s.Kind is SectionKind.FusedRing or SectionKind.Sleeved);

    [Fact]
    public void Sample_ReadAtFourPlaces_ReplacesTheLowGuessByItsLeastLessItsDoubt()
    {
        var guess = Solve(new());
        var measured = Solve(new() { Sample = Sample(6.5, 6.1, 7.0, 6.8) });
        // 0.3 of the radius is 3.75 mm; the least reading less its ± is 5.8 mm.
        Assert.Equal(
            RoundSection.FusedRingYieldTorque(Ring(guess).ShearYield.Low, 25, 3.75),
            Ring(guess).YieldTorque.Low,
            1e-3 * Ring(guess).YieldTorque.Low
        );
        Assert.Equal(
            RoundSection.FusedRingYieldTorque(Ring(measured).ShearYield.Low, 25, 5.8),
            Ring(measured).YieldTorque.Low,
            1e-3 * Ring(measured).YieldTorque.Low
        );
        var said = measured.Findings.Single(f => f.Code == "sample-fusion").Text.ToString();
        Assert.Contains("3 May 2026", said, StringComparison.Ordinal);
        Assert.Contains("p1", said, StringComparison.Ordinal);
        Assert.DoesNotContain(measured.Findings, f => f.Code == "fusion-guessed");
    }

    [Theory]
    [InlineData(0, 90, 180, 270, true)]
    [InlineData(0, 120, 240, 300, true)]
    [InlineData(0, 0, 0, 0, false)]
    [InlineData(0, 360, 720, 1, false)]
    [InlineData(0, 40, 80, 120, false)] // One side only.
    public void Sample_ReadAtFourAngles_CountsOnlyWhenTheyGoRound(
        double a,
        double b,
        double c,
        double d,
        bool counts
    )
    {
        var sample = Sample(6, 6, 6, 6);
        double[] at = [a, b, c, d];
        sample = sample with
        {
            Fusion =
            [
                .. sample.Fusion.Select(
                    (f, i) => f with { Angle = Measured<Angle>.Of(at[i], Angle.Degree) }
                ),
            ],
        };
        var result = Solve(new() { Sample = sample });
        Assert.Equal(
            counts,
            Ring(result).YieldTorque.Low > Ring(Solve(new())).YieldTorque.Low * 1.01
        );
        Assert.Equal(!counts, result.Findings.Any(f => f.Code == "sample-few-places"));
        Assert.Equal(counts, result.Findings.Any(f => f.Code == "sample-fusion"));
    }

    [Fact]
    public void Sample_FusedDeeperThanTheBarIsThick_CountsForNoMoreThanTheGuess()
    {
        var deep = Solve(new() { Sample = Sample(30, 30, 30, 30) });
        Assert.Equal(
            Ring(Solve(new())).YieldTorque.Low,
            Ring(deep).YieldTorque.Low,
            1e-9 * Ring(deep).YieldTorque.Low
        );
        Assert.Contains(deep.Findings, f => f.Code == "sample-too-deep");
        // Fused right through, within the reading's own doubt, is believed.
        Assert.DoesNotContain(
            Solve(new() { Sample = Sample(12.5, 12.5, 12.5, 12.5) }).Findings,
            f => f.Code == "sample-too-deep"
        );
    }

    [Fact]
    public void Sample_ShallowerThanTheGuess_CountsToo()
    {
        var shallow = Solve(new() { Sample = Sample(2.3, 2.5, 2.6, 2.4) });
        Assert.True(Ring(shallow).YieldTorque.Low < Ring(Solve(new())).YieldTorque.Low);
    }

    [Fact]
    public void Sample_ReadAtTwoPlaces_NeverCountsForMoreThanTheGuess()
    {
        var two = Solve(new() { Sample = Sample(9, 9.5) });
        Assert.Equal(Ring(Solve(new())).YieldTorque.Low, Ring(two).YieldTorque.Low, 1e-6);
        Assert.Contains(two.Findings, f => f.Code == "sample-few-places");
    }

    [Theory]
    [InlineData(null, true)]
    [InlineData(true, null)]
    [InlineData(false, true)]
    [InlineData(true, false)]
    public void Sample_NotSaidToBeAlike_ReplacesNothing(bool? steel, bool? setUp)
    {
        var result = Solve(
            new() { Sample = Sample(9, 9, 9, 9) with { SameSteel = steel, SameSetUp = setUp } }
        );
        Assert.Equal(Ring(Solve(new())).YieldTorque, Ring(result).YieldTorque);
        Assert.Contains(result.Findings, f => f.Code == "sample-not-alike");
    }

    [Fact]
    public void Sample_WithACrack_StopsTheJob()
    {
        var result = Solve(new() { Sample = Sample(9, 9, 9, 9) with { Cracked = true } });
        Assert.Contains(
            result.Findings,
            f => f is { Code: "sample-cracked", Severity: Severity.Stop }
        );
        Assert.Equal(Ring(Solve(new())).YieldTorque, Ring(result).YieldTorque);
    }

    [Fact]
    public void HardnessRow_ReplacesTheSoftenedMetalBySideAndByItsSoftest()
    {
        var sample = Row(
            Sample(6, 6, 6, 6),
            (-30, 250),
            (-17, 245),
            (-12, 218),
            (-8, 213),
            (-5, 222),
            (-3, 240),
            (3, 230),
            (5, 205),
            (8, 190),
            (12, 210),
            (17, 235),
            (30, 238)
        );
        var result = Solve(new() { Sample = sample });
        var inner = result.Sections.Single(s =>
            s is { Kind: SectionKind.BesideWeld, End: ShaftEnd.Inner }
        );
        // 203 HV by the table is 11.6 HRC.
        Assert.Equal(ShearYield.OfHardness(VickersScale.ToHrc(203)), inner.ShearYield.Low, 1e-9);
        var outer = result.Sections.Single(s =>
            s is { Kind: SectionKind.BesideWeld, End: ShaftEnd.Outer }
        );
        Assert.True(outer.ShearYield.Low < inner.ShearYield.Low);
        Assert.DoesNotContain(result.Findings, f => f.Code == "softened-assumed");
        var read = SampleReadings.Of(sample)!;
        Assert.Equal(17, read.SoftenedTo(inner: true));
        Assert.Equal(17, read.SoftenedTo(inner: false));
    }

    /// <summary>A row that does not go through the soft zone and out of it tells nothing of either.</summary>
    [Theory]
    [InlineData("60 250, 80 251, 100 250")] // Sound bar alone.
    [InlineData("3 262, 20 250, 40 251")] // Over the soft zone in one step.
    [InlineData("1 300, 2 310, 3 305")] // The weld's own metal alone.
    [InlineData("3 300, 5 220, 7 221, 8 222")] // Ends inside the heat.
    public void HardnessRow_NotThroughTheHeatAndOut_ReplacesNothing(string row)
    {
        (double From, double Hv)[] side =
        [
            .. row.Split(", ")
                .Select(r => r.Split(' ').Select(double.Parse).ToArray())
                .Select(r => (r[0], r[1])),
        ];
        var sample = Row(Sample(6, 6, 6, 6), [.. side, .. side.Select(r => (-r.From, r.Hv))]);
        var read = SampleReadings.Of(sample)!;
        Assert.Null(read.Softest(inner: true));
        Assert.Null(read.Softest(inner: false));
        Assert.True(read.Heat is null or { Band: >= 20 });
        Assert.Equal(
            Ring(Solve(new() { Sample = Sample(6, 6, 6, 6) })).YieldTorque,
            Ring(Solve(new() { Sample = sample })).YieldTorque
        );
    }

    [Fact]
    public void HardnessRow_WithABrittlePeak_IsSaid() =>
        Assert.Contains(
            Solve(
                new() { Sample = Row(Sample(6, 6, 6, 6), (-8, 240), (-4, 480), (-2, 250)) }
            ).Findings,
            f => f.Code == "sample-hard"
        );

    [Theory]
    [InlineData(238, 20)]
    [InlineData(392, 40)]
    [InlineData(513, 50)]
    [InlineData(595, 55)]
    public void VickersToRockwell_OfItsRows_IsTheTable(double hv, double hrc) =>
        // ASTM E140, Table 1, from memory.
        Assert.Equal(hrc, VickersScale.ToHrc(hv), 1e-9);

    private static SleeveSeams AllDone =>
        new()
        {
            Halves = true,
            SeamsOpposite = true,
            ClearOfStarts = true,
            NoCraterAtToe = true,
            Closed = true,
            Vented = true,
            VentClosed = true,
            Tested = true,
        };

    [Fact]
    public void Sleeve_WithEverySeamClosed_SharesTheTorqueOverTheButtOnly()
    {
        var bare = Solve(new(), 36);
        var closed = Solve(new() { Sleeve = AllDone }, 36);
        Assert.Equal(SectionKind.Sleeved, Ring(closed).Kind);
        // Two tubes twisted alike: the sleeve of 36 on 25 first yields at τ·2(Js + Jr)/36.
        var js = RoundSection.SecondMoment(36, 25);
        var jr = RoundSection.SecondMoment(25, 25 - 2 * 3.75);
        var tube = 235 / Math.Sqrt(3);
        var expected = Math.Min(
            tube * 2 * (js + jr) / 36,
            Ring(bare).ShearYield.Low * 2 * (js + jr) / 25
        );
        Assert.Equal(expected, Ring(closed).YieldTorque.Low, 1e-3 * expected);
        Assert.True(Ring(closed).YieldTorque.Low > Ring(bare).YieldTorque.Low);
        // The bar at the sleeve's ends still takes all of it.
        Assert.Equal(
            bare.Sections.Where(s => s.Kind == SectionKind.SleeveEnd),
            closed.Sections.Where(s => s.Kind == SectionKind.SleeveEnd)
        );
        Assert.Contains(closed.Findings, f => f.Code == "sleeve-counts");
    }

    public static TheoryData<string> Lacking() =>
        new(
            "halves",
            "seamsOpposite",
            "clearOfStarts",
            "noCraterAtToe",
            "closed",
            "vented",
            "ventClosed",
            "tested"
        );

    [Theory]
    [MemberData(nameof(Lacking))]
    public void Sleeve_WithOneThingOpen_EarnsNothingAndNamesIt(string lacking)
    {
        var seams = lacking switch
        {
            "halves" => AllDone with { Halves = null },
            "seamsOpposite" => AllDone with { SeamsOpposite = null },
            "clearOfStarts" => AllDone with { ClearOfStarts = false },
            "noCraterAtToe" => AllDone with { NoCraterAtToe = null },
            "closed" => AllDone with { Closed = false },
            "vented" => AllDone with { Vented = null },
            "ventClosed" => AllDone with { VentClosed = false },
            _ => AllDone with { Tested = null },
        };
        var result = Solve(new() { Sleeve = seams }, 36);
        Assert.Equal(SectionKind.FusedRing, Ring(result).Kind);
        Assert.Equal(Ring(Solve(new(), 36)).YieldTorque, Ring(result).YieldTorque);
        Assert.Single(seams.Open);
        Assert.Contains(
            seams.Open[0],
            result.Findings.Single(f => f.Code == "sleeve-no-credit").Text.ToString(),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(true, false, SectionKind.Sleeved)]
    [InlineData(true, true, SectionKind.FusedRing)]
    [InlineData(false, false, SectionKind.FusedRing)] // Tests are kept, and none of them looked at the outer end.
    public void Sleeve_SaidToBeTested_EarnsNothingAgainstTheRecord(
        bool bothEnds,
        bool cracked,
        SectionKind kind
    )
    {
        static DonorShaft Bar() =>
            new() { Zones = [new() { Until = Mm(300), Diameter = Mm(25, 0) }] };
        var job = new Job
        {
            Donors = new() { InnerEnd = Bar(), OuterEnd = Bar() },
            Cut = new()
            {
                OverallLength = Mm(400),
                InnerCutAt = Mm(200),
                SleeveLength = Mm(100),
                SleeveOutside = Mm(36),
            },
            Strength = new() { Sleeve = AllDone },
            CrackTest = new()
            {
                Tests =
                [
                    Tested.Penetrant(
                        "a",
                        Tested.Start,
                        bothEnds
                            ? [Place.SleeveInnerEnd, Place.SleeveOuterEnd]
                            : [Place.SleeveInnerEnd],
                        marks: new Indication
                        {
                            Id = "m",
                            Place = Place.SleeveInnerEnd,
                            Crack = cracked,
                            Withdrawn = !cracked,
                        }
                    ),
                ],
            },
        };
        Assert.Equal(kind, Ring(Workflow.Evaluate(job).Strength!).Kind);
    }

    private static Job Read(string typed, bool alike, params (double From, double Hv)[] row)
    {
        static DonorShaft Bar() =>
            new() { Zones = [new() { Until = Mm(300), Diameter = Mm(25, 0) }] };
        return new()
        {
            Donors = new() { InnerEnd = Bar(), OuterEnd = Bar() },
            Cut = new()
            {
                OverallLength = Mm(400),
                InnerCutAt = Mm(200),
                HeatBand = typed.Length == 0 ? null : Tested.Of<Distance>(typed),
            },
            Strength = new() { Sample = Row(Sample(9, 9, 9, 9), row) with { SameSteel = alike } },
        };
    }

    // Softened to 14 and 22 mm on one side, hardened and then softened to 11 and 18 on the other; the bar reads 300.
    private static readonly (double From, double Hv)[] s_row =
    [
        (-45, 302),
        (-30, 298),
        (-22, 285),
        (-14, 220),
        (-6, 240),
        (0, 260),
        (4, 380),
        (11, 230),
        (18, 268),
        (28, 296),
        (40, 304),
    ];

    [Theory]
    [InlineData("", true, 28.5, "cut-heat-measured")] // The first unchanged reading of the farther side, and half a millimetre.
    [InlineData("35 mm", true, 35, "cut-heat-measured")] // Typed wider: a wish for room.
    [InlineData("12 mm", true, 28.5, "cut-heat-wider")] // Typed narrower than it was measured.
    [InlineData("", false, 20, null)] // Not of the same offcuts: the usual one.
    public void HardnessAcross_OnBothSides_GivesTheHeatBandOfCutAndStrength(
        string typed,
        bool alike,
        double band,
        string? finding
    )
    {
        var result = Workflow.Evaluate(Read(typed, alike, s_row));
        Assert.Equal(band, result.Cut!.Made!.HeatBand, 1e-9);
        Assert.Equal(
            finding is null ? [] : [finding],
            result
                .Cut.Findings.Where(f => f.Code.StartsWith("cut-heat", StringComparison.Ordinal))
                .Select(f => f.Code)
        );
        // The strength takes the metal as soft over the same width: just outside it, plain bar is whole again.
        var beside = result
            .Strength!.Sections.Where(s => s.Kind == SectionKind.BesideWeld)
            .ToList();
        Assert.Equal(2, beside.Count);
        Assert.All(beside, s => Assert.True(Math.Abs(s.At - result.Cut.Made.WeldAt) <= band));
        var plain = result.Strength.Sections.Where(s => s.Kind == SectionKind.Plain).ToList();
        Assert.All(plain, s => Assert.True(Math.Abs(s.At - result.Cut.Made.WeldAt) >= band - 1e-9));
    }

    [Fact]
    public void HardnessAcross_OnOneSideOnly_NarrowsNothing()
    {
        var near = s_row.Where(r => r.From >= 0).Select(r => (r.From / 1.5, r.Hv)).ToArray();
        var heat = SampleReadings.Of(Row(Sample(), near))!.Heat!;
        Assert.Equal(new MeasuredHeat(20, false), heat);
        var both = SampleReadings
            .Of(Row(Sample(), [.. near, .. near.Select(r => (-r.Item1, r.Hv))]))!
            .Heat!;
        Assert.True(both.BothSides);
        Assert.Equal(28 / 1.5 + 0.5, both.Band, 1e-9);
    }

    [Fact]
    public void HardnessAcross_ThatStopsInsideTheHeat_GivesNoBand() =>
        // The outermost two do not agree: nobody knows how hard the bar is.
        Assert.Null(
            SampleReadings.Of(Row(Sample(), [.. s_row.Where(r => r.From is >= 0 and < 20)]))!.Heat
        );

    [Fact]
    public void HardnessAcross_DatedLaterThanItIs_LeavesTheUsualBand() =>
        Assert.Equal(
            20,
            Workflow
                .Evaluate(
                    Read("", true, s_row),
                    new DateTimeOffset(2026, 5, 3, 10, 0, 0, TimeSpan.Zero)
                )
                .Cut!.Made!.HeatBand
        );

    [Fact]
    public void Sleeve_SlidOnWhole_NeedsNoLongSeams() =>
        Assert.Equal(
            SectionKind.Sleeved,
            Ring(
                Solve(new() { Sleeve = AllDone with { Halves = false, SeamsOpposite = null } }, 36)
            ).Kind
        );
}
