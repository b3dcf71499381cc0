using CsCheck;
using Shaftwright.Car;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Tests.Donors;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Strength;

public sealed class StrengthSolverTests
{
    /// <summary>Core of 10 HRC to the point: 303 MPa; softened by class, here medium carbon 280/√3 to 303 MPa at most.</summary>
    private static DonorShaft Core(double hrc, DonorShaft shaft) =>
        shaft with
        {
            Steel = SteelClass.MediumCarbon,
            CoreHardness = Measured<Hardness>.Of(hrc, Hardness.Hrc, 0),
        };

    private static StrengthResult Solve(
        DonorShaft inner,
        DonorShaft outer,
        double? torqueNm = null,
        StrengthInput? weld = null,
        double? sleeve = null,
        CarResult? car = null
    )
    {
        var donors = DonorsSolver.Solve(Pair(inner, outer));
        var made = CutSolver
            .Solve(donors, Shaftwright.Tests.Cut.CutSolverTests.Ask(500, sleeve: sleeve), null)
            .Made!;
        return StrengthSolver.Solve(
            made,
            donors,
            car ?? (torqueNm is { } t ? Torque(Band.Exactly(t * 1000)) : null),
            weld ?? new StrengthInput()
        );
    }

    private static CarResult Torque(Band torque, Band? inner = null, Band? outer = null) =>
        new()
        {
            ThisCar = new(torque, null, torque, TorqueLimit.OnlyEngineSideKnown),
            NewOverInnerDonor = inner,
            NewOverOuterDonor = outer,
            Findings = [],
        };

    private static SectionMargin One(StrengthResult r, SectionKind kind, ShaftEnd? end) =>
        Assert.Single(r.Sections, s => s.Kind == kind && s.End == end);

    private static Finding Says(StrengthResult r, string code, Severity severity) =>
        Assert.Single(r.Findings, f => f.Code == code && f.Severity == severity);

    private static double Solid(double yield, double d) => yield * Math.PI * d * d * d / 16;

    [Fact]
    public void Solve_TwoDonors_JudgesEverySectionInOrderFromTheInnerEnd()
    {
        var result = Solve(Core(10, Usual(25, 400)), Core(20, Usual(24, 400)), 800);

        Assert.Equal(result.Sections.OrderBy(s => s.At), result.Sections);
        Assert.Equal(
            Solid(303, 24),
            One(result, SectionKind.SplineRoot, ShaftEnd.Inner).YieldTorque.Low,
            3
        );
        Assert.Equal(
            Solid(303, 22),
            One(result, SectionKind.Groove, ShaftEnd.Inner).YieldTorque.Low,
            3
        );
        // The boot seat is 1 mm thinner than the bar.
        Assert.Equal(
            Solid(366, 23),
            One(result, SectionKind.Plain, ShaftEnd.Outer).YieldTorque.High,
            3
        );
        var beside = One(result, SectionKind.BesideWeld, ShaftEnd.Outer);
        Assert.True(beside.Softened);
        Assert.Equal(Solid(280 / Math.Sqrt(3), 24), beside.YieldTorque.Low, 3);
        Assert.Equal(Solid(420 / Math.Sqrt(3), 24), beside.YieldTorque.High, 3);
        Assert.Equal(beside.YieldTorque.Low / 800e3, beside.Margin!.Value.Low, 9);
        Assert.DoesNotContain(result.Sections, s => s.Kind == SectionKind.SleeveEnd);
        Assert.DoesNotContain(result.Findings, f => f.Code == "sleeve-no-credit");
    }

    [Fact]
    public void Solve_WithSleeve_JudgesBothEndsAtFullTorqueInSoftMetalWithoutCredit()
    {
        var bare = Solve(Core(20, Usual(25, 400)), Core(20, Usual(24, 400)), 800);
        var sleeved = Solve(Core(20, Usual(25, 400)), Core(20, Usual(24, 400)), 800, sleeve: 120);

        var end = One(sleeved, SectionKind.SleeveEnd, ShaftEnd.Inner);
        Assert.Equal(Solid(280 / Math.Sqrt(3), 25), end.YieldTorque.Low, 3);
        Assert.True(end.Softened);
        Assert.Equal(24, One(sleeved, SectionKind.SleeveEnd, ShaftEnd.Outer).Diameter);
        Assert.Equal(
            One(bare, SectionKind.FusedRing, null).YieldTorque,
            One(sleeved, SectionKind.FusedRing, null).YieldTorque
        );
        Says(sleeved, "sleeve-no-credit", Severity.Note);
    }

    [Theory]
    [InlineData(null, false, 0.3, 0.3)]
    [InlineData(6.0, false, 5 / 12.0, 5 / 12.0)]
    [InlineData(6.0, true, 5 / 12.0, 7 / 12.0)]
    [InlineData(30.0, true, 1, 1)]
    public void Solve_FusedRing_CountsTheLowEndUntilASampleWasEtched(
        double? depth,
        bool sample,
        double low,
        double high
    )
    {
        var result = Solve(
            Core(10, Usual(25, 400)),
            Core(10, Usual(24, 400)),
            weld: new StrengthInput
            {
                FusionDepth = depth is { } d ? Mm(d) : null,
                FusionFromSample = sample,
            }
        );

        var ring = One(result, SectionKind.FusedRing, null);
        double Ratio(double p) => 1 - Math.Pow(1 - p, 4);
        Assert.Equal(24, ring.Diameter);
        Assert.Equal(Solid(280 / Math.Sqrt(3), 24) * Ratio(low), ring.YieldTorque.Low, 3);
        Assert.Equal(Solid(420 / Math.Sqrt(3), 24) * Ratio(high), ring.YieldTorque.High, 3);
        Assert.Equal(sample ? 0 : 1, result.Findings.Count(f => f.Code == "fusion-guessed"));
    }

    [Fact]
    public void Solve_HardenedZoneOfKnownDepth_YieldsAtSurfaceOrUnderTheCase()
    {
        var shaft = Core(10, Usual(25, 400)) with
        {
            Hardened = [Hard(0, 200, 3.5)],
            SurfaceHardness = Measured<Hardness>.Of(52, Hardness.Hrc, 0),
        };
        var result = Solve(shaft, Core(10, Usual(24, 400)));

        // The groove is 1.5 mm deep in the bar of 25 and 2 mm below the spline of 26, so 1.5 mm of case are left below its floor.
        Assert.Equal(
            RoundSection.HardenedYieldTorque(966, 303, 22, 1.5),
            One(result, SectionKind.Groove, ShaftEnd.Inner).YieldTorque.Low,
            3
        );
        Assert.Equal(
            RoundSection.HardenedYieldTorque(966, 303, 24, 2.5),
            One(result, SectionKind.SplineRoot, ShaftEnd.Inner).YieldTorque.Low,
            3
        );
        // Beyond 200 the bar of 25 is soft, weaker than the hardened seat of 24.
        var plain = One(result, SectionKind.Plain, ShaftEnd.Inner);
        Assert.Equal(25, plain.Diameter);
        Assert.Equal(Solid(303, 25), plain.YieldTorque.Low, 3);
    }

    [Fact]
    public void Solve_HardenedZoneOfUnknownDepth_RunsFromNoCaseToAllCase()
    {
        var shaft = Core(10, Usual(25, 400)) with { Hardened = [Hard(0, 60)] };
        var root = One(
            Solve(shaft, Core(10, Usual(24, 400))),
            SectionKind.SplineRoot,
            ShaftEnd.Inner
        );

        Assert.Equal(Solid(303, 24), root.YieldTorque.Low, 3);
        Assert.Equal(Solid(966, 24), root.YieldTorque.High, 3);
    }

    [Fact]
    public void Solve_HeatOnAHardenedZone_TakesSoftenedStrengthThere()
    {
        var shaft = Core(10, Usual(25, 400)) with { Hardened = [Hard(0, 400, 4)] };
        var result = Solve(shaft, Core(10, Usual(24, 400)));

        Assert.Equal(
            Solid(280 / Math.Sqrt(3), 25),
            One(result, SectionKind.BesideWeld, ShaftEnd.Inner).YieldTorque.Low,
            3
        );
    }

    [Fact]
    public void Solve_HeatOnAHardenedGroove_TakesNoCreditForTheCase()
    {
        // A cut chosen against the rules, 10 mm beyond the groove.
        var shaft = Core(10, Usual(25, 400)) with
        {
            Hardened = [Hard(0, 400, 6)],
        };
        var donors = DonorsSolver.Solve(Pair(shaft, Core(10, Usual(24, 600))));
        var made = CutSolver
            .Solve(donors, Shaftwright.Tests.Cut.CutSolverTests.Ask(500, at: 53), null)
            .Made!;
        var groove = One(
            StrengthSolver.Solve(made, donors, null, new StrengthInput()),
            SectionKind.Groove,
            ShaftEnd.Inner
        );

        Assert.True(groove.Softened);
        Assert.Equal(Solid(280 / Math.Sqrt(3), 22), groove.YieldTorque.Low, 3);
    }

    [Fact]
    public void Solve_TorqueAboveTheStrongestSteel_Stops()
    {
        var result = Solve(Core(10, Usual(25, 400)), Core(10, Usual(24, 400)), 5000);

        var stop = Says(result, "yields", Severity.Stop);
        Assert.Contains("fused ring", stop.Text.ToString());
    }

    [Fact]
    public void Solve_TorqueBetweenTheTwoEnds_CautionsAndSaysWhatWouldSettleIt()
    {
        var result = Solve(Usual(25, 400), Usual(24, 400), 600);

        var caution = Says(result, "may-yield", Severity.Caution);
        Assert.Contains(
            "hardness of the cut face of the inner-end and the outer-end",
            caution.Action.ToString()
        );
        Assert.Contains("etched sample", caution.Action.ToString());
    }

    [Fact]
    public void Solve_SmallTorque_NeitherStopsNorCautions()
    {
        var result = Solve(Usual(25, 400), Usual(24, 400), 50);

        Assert.All(result.Sections, s => Assert.True(s.Margin!.Value.Low > 1));
        Assert.DoesNotContain(result.Findings, f => f.Severity > Severity.Note);
    }

    [Fact]
    public void Solve_TorqueUnknown_GivesYieldTorquesWithoutMargins()
    {
        var result = Solve(Usual(25, 400), Usual(24, 400));

        Assert.Null(result.Torque);
        Assert.NotEmpty(result.Sections);
        Assert.All(result.Sections, s => Assert.Null(s.Margin));
        Says(result, "torque-unknown", Severity.Caution);
    }

    [Fact]
    public void Solve_YardstickAboveOne_CautionsForThatEndAndTheWeldTakesTheLarger()
    {
        var result = Solve(
            Usual(25, 400),
            Usual(24, 400),
            car: Torque(Band.Exactly(50e3), inner: new(0.7, 0.9), outer: new(1.1, 1.4))
        );

        Assert.Contains(
            "outer-end piece gets 1.10 to 1.40 times",
            Says(result, "more-than-donor", Severity.Caution).Text.ToString()
        );
        Assert.Equal(new Band(1.1, 1.4), One(result, SectionKind.FusedRing, null).NewOverDonor);
        Assert.Equal(
            new Band(0.7, 0.9),
            One(result, SectionKind.Plain, ShaftEnd.Inner).NewOverDonor
        );
    }

    [Fact]
    public void Solve_SplineWithoutRoot_IsLeftOutAndSaid()
    {
        var shaft = new DonorShaft
        {
            Zones = [Zone(ZoneKind.Spline, 40, 26), Zone(ZoneKind.Plain, 400, 25)],
        };
        var result = Solve(shaft, Usual(24, 400));

        Assert.DoesNotContain(
            result.Sections,
            s => s.Kind == SectionKind.SplineRoot && s.End == ShaftEnd.Inner
        );
        Says(result, "not-judged", Severity.Caution);
    }

    [Fact]
    public void Solve_Weakest_IsNamedInASentence()
    {
        var result = Solve(Core(10, Usual(25, 400)), Core(10, Usual(24, 400)), 300);

        Assert.Equal(SectionKind.FusedRing, result.Weakest!.Kind);
        Assert.StartsWith(
            "The weakest place is the fused ring of the butt weld, 24.0\u00a0mm thick",
            Says(result, "weakest-place", Severity.Note).Text.ToString()
        );
    }

    private static Gen<DonorShaft> Shafts { get; } =
        from diameter in Gen.Int[220, 300]
        from length in Gen.Int[340, 450]
        from hrc in Gen.Int[0, 40]
        from hard in Gen.Int[0, 400]
        select Core(hrc, Usual(diameter / 10.0, length)) with
        {
            Hardened = hard < 60 ? [] : [Hard(0, Math.Min(hard, length), 3)],
        };

    [Fact]
    public void Solve_DonorsSwapped_MirrorsEverySection() =>
        Check.Sample(
            Gen.Select(Shafts, Shafts, Gen.Bool),
            t =>
            {
                var (a, b, sleeved) = t;
                double? sleeve = sleeved ? 120 : null;
                var one = Solve(a, b, 700, sleeve: sleeve);
                var two = Solve(b, a, 700, sleeve: sleeve);
                Assert.Equal(one.Sections.Count, two.Sections.Count);
                foreach (var s in one.Sections)
                {
                    ShaftEnd? end = s.End switch
                    {
                        ShaftEnd.Inner => ShaftEnd.Outer,
                        ShaftEnd.Outer => ShaftEnd.Inner,
                        _ => null,
                    };
                    var m = One(two, s.Kind, end);
                    Assert.Equal(s.YieldTorque.Low, m.YieldTorque.Low, s.YieldTorque.Low * 1e-9);
                    Assert.Equal(s.YieldTorque.High, m.YieldTorque.High, s.YieldTorque.High * 1e-9);
                    Assert.Equal(500 - s.At, m.At, tolerance: 1e-6);
                }
            }
        );

    [Fact]
    public void Solve_ThickerShaftMoreTorqueDeeperFusion_MoveMarginsTheRightWay() =>
        Check.Sample(
            Gen.Select(Gen.Int[200, 300], Gen.Int[1, 30], Gen.Int[100, 2000], Gen.Int[20, 80]),
            t =>
            {
                var (d, more, torque, depth) = t;
                StrengthResult At(double diameter, double nm, double fusion) =>
                    Solve(
                        Core(10, Usual(diameter / 10, 400)),
                        Core(10, Usual(diameter / 10, 400)),
                        nm,
                        new StrengthInput { FusionDepth = Mm(fusion / 10) }
                    );
                var plain = At(d, torque, depth);
                Assert.True(
                    Plain(At(d + more, torque, depth)) > Plain(plain)
                        && Ring(At(d + more, torque, depth)) > Ring(plain)
                );
                Assert.True(Ring(At(d, torque + more, depth)) < Ring(plain));
                Assert.True(Ring(At(d, torque, depth + more)) >= Ring(plain));
                static double Plain(StrengthResult r) =>
                    One(r, SectionKind.Plain, ShaftEnd.Outer).Margin!.Value.Low;
                static double Ring(StrengthResult r) =>
                    One(r, SectionKind.FusedRing, null).Margin!.Value.Low;
            },
            iter: 200
        );

    [Fact]
    public void Solve_AnyRandomDonors_AnswersWithoutThrowingAndRangesAreInOrder() =>
        Check.Sample(
            Gen.Select(Walked.Random, Walked.Random, Gen.Int[60, 400]),
            t =>
            {
                var (inner, outer, overall) = t;
                var result = Workflow.Evaluate(
                    new Job
                    {
                        Car = Shaftwright.Tests.Car.CarSolverTests.Known,
                        Donors = Pair(inner, outer),
                        Cut = new CutInput { OverallLength = Mm(overall), HeatBand = Mm(5) },
                    }
                );
                foreach (var s in result.Strength?.Sections ?? [])
                {
                    Assert.True(s.YieldTorque.Low <= s.YieldTorque.High && s.YieldTorque.Low > 0);
                    Assert.True(s.ShearYield.Low <= s.ShearYield.High);
                    Assert.InRange(s.At, 0, overall);
                }
                Assert.All(
                    result.Findings,
                    f =>
                    {
                        Assert.NotEqual("", f.Action.ToString());
                        Assert.NotEqual("", f.Source);
                        Assert.DoesNotContain("NaN", f.Text.ToString());
                        Assert.DoesNotContain("∞", f.Text.ToString());
                    }
                );
            }
        );
}
