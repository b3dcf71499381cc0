using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Tests.Cut;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Donors;

/// <summary>Fillets, splines by count, hollows, rings and the file test.</summary>
public sealed class ShaftDetailTests
{
    private static string[] Codes(DonorShaft shaft) =>
        [
            .. DonorsSolver
                .Solve(new() { InnerEnd = shaft, OuterEnd = Usual(25, 400) })
                .Findings.Where(f =>
                    f.Text.ToString().Contains("inner-end", StringComparison.Ordinal)
                )
                .Select(f => f.Code),
        ];

    private static DonorShaft Splined(int teeth, double module, double over, double angle) =>
        new()
        {
            Zones =
            [
                Zone(ZoneKind.Spline, 40, over, root: over - 2) with
                {
                    Teeth = teeth,
                    Module = Mm(module),
                    PressureAngle = Measured<Angle>.Of(angle, Angle.Degree),
                },
                Zone(ZoneKind.Plain, 400, 24),
            ],
        };

    /// <summary>Over the teeth of 26 × 1: 27 at 30°, 26.9 at 37.5°, 26.8 at 45°. ISO 4156-1, from memory.</summary>
    [Theory]
    [InlineData(26, 27, 30, false)]
    [InlineData(26, 26.8, 45, false)]
    [InlineData(25, 27, 30, true)]
    [InlineData(27, 27, 30, true)]
    [InlineData(26, 27.45, 45, true)]
    public void Solve_SplineByCount_IsQuestionedWhenATeethMoreOrLessFitsBetter(
        int teeth,
        double over,
        double angle,
        bool questioned
    ) =>
        Assert.Equal(
            questioned,
            Codes(Splined(teeth, 1, over, angle)).Contains("spline-does-not-add-up")
        );

    [Fact]
    public void Solve_SplineThatIsAllRunOut_IsQuestioned()
    {
        var shaft = Splined(26, 1, 27, 30);
        var run = shaft.Zones[0] with { RunOut = Mm(40) };
        Assert.Contains("spline-all-run-out", Codes(shaft with { Zones = [run, shaft.Zones[1]] }));
        run = run with { RunOut = Mm(8) };
        Assert.DoesNotContain(
            "spline-all-run-out",
            Codes(shaft with { Zones = [run, shaft.Zones[1]] })
        );
    }

    [Theory]
    [InlineData(FileTest.Untried, "hardening-not-tested")]
    [InlineData(FileTest.Skates, "hardening-not-placed")]
    [InlineData(FileTest.Bites, null)]
    public void Solve_FileTest_SaysWhatItLeavesOpen(FileTest test, string? code)
    {
        var said = Codes(Usual(25, 400) with { FileTest = test })
            .Where(c => c.StartsWith("hardening", StringComparison.Ordinal));
        Assert.Equal(code is null ? [] : [code], said);
    }

    [Fact]
    public void Solve_CutNearAFillet_KeepsTheHeatOffAllOfIt()
    {
        // Thick to 100, then 25 with a fillet of 6 into it: the heat of 20 may come no nearer than 106.
        DonorShaft Stepped(double fillet) =>
            new()
            {
                Zones =
                [
                    Zone(ZoneKind.Plain, 100, 30),
                    Zone(ZoneKind.Plain, 400, 25) with
                    {
                        Fillet = Mm(fillet),
                    },
                ],
            };
        var outer = new DonorShaft { Zones = [Zone(ZoneKind.Plain, 400, 25)] };
        double Earliest(double fillet) =>
            CutSolverTests
                .Solve(Stepped(fillet), outer, CutSolverTests.Ask(400, at: 110))
                .Checks.Single(c => c is { Code: "weld-clear-of-step", End: ShaftEnd.Inner })
                .Has;
        Assert.Equal(10, Earliest(0), 9);
        Assert.Equal(4, Earliest(6), 9);
    }

    [Theory]
    [InlineData(ZoneKind.SensorRing)]
    [InlineData(ZoneKind.Damper)]
    public void Solve_CutBesideARing_KeepsTheHeatOffIt(ZoneKind kind)
    {
        var ringed = new DonorShaft
        {
            Zones =
            [
                Zone(ZoneKind.Plain, 100, 25),
                Zone(kind, 130, 25),
                Zone(ZoneKind.Plain, 400, 25),
            ],
        };
        var outer = new DonorShaft { Zones = [Zone(ZoneKind.Plain, 400, 25)] };
        var result = CutSolverTests.Solve(ringed, outer, CutSolverTests.Ask(400, at: 140));
        var check = result.Checks.Single(c =>
            c is { Code: "weld-clear-of-ring", End: ShaftEnd.Inner }
        );
        Assert.Equal(10, check.Has, 9);
        Assert.False(check.Holds);
    }

    [Fact]
    public void Solve_HollowUnderASpline_TakesItsShareOfTheTorqueAndIsNotCutIn()
    {
        var solid = new DonorShaft
        {
            Zones = [Zone(ZoneKind.Spline, 40, 26, root: 24), Zone(ZoneKind.Plain, 400, 25)],
        };
        var hollow = solid with
        {
            Bores =
            [
                new()
                {
                    From = Mm(0),
                    To = Mm(60),
                    Diameter = Exactly(12),
                },
            ],
        };
        static SectionMargin Root(DonorShaft shaft)
        {
            var job = new Job
            {
                Donors = Pair(shaft, Usual(25, 400)),
                Cut = CutSolverTests.Ask(500),
            };
            return Workflow
                .Evaluate(job)
                .Strength!.Sections.Single(s =>
                    s is { Kind: SectionKind.SplineRoot, End: ShaftEnd.Inner }
                );
        }
        // 1 − (12/24)⁴ = 15/16 of the solid root.
        Assert.Equal(15.0 / 16, Root(hollow).YieldTorque.Low / Root(solid).YieldTorque.Low, 9);
        Assert.Equal(15.0 / 16, Root(hollow).YieldTorque.High / Root(solid).YieldTorque.High, 9);
        var cut = CutSolverTests.Solve(hollow, Usual(25, 400), CutSolverTests.Ask(300, at: 70));
        Assert.Contains(cut.Checks, c => c is { Code: "weld-clear-of-hollow", Holds: false });
    }
}
