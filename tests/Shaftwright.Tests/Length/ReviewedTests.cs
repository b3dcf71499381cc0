using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Length;

/// <summary>Inputs on which an independent review showed the length stage silent or too sure; each once erred on the unsafe side.</summary>
public sealed class ReviewedTests
{
    private static TrialReading At(
        double travel,
        double goesIn,
        double comesOut,
        double? inner = null,
        double? outer = null,
        Steering steering = Steering.Straight,
        double plusMinus = 0
    ) =>
        new()
        {
            Travel = TrialShaft.Mm(travel),
            Steering = steering,
            In = TrialShaft.Mm(goesIn, plusMinus),
            Out = TrialShaft.Mm(comesOut, plusMinus),
            InnerAngle = inner is { } i ? TrialShaft.Deg(i) : null,
            OuterAngle = outer is { } o ? TrialShaft.Deg(o) : null,
        };

    private static CornerInput Corner(params TrialReading[] readings) =>
        new()
        {
            Conditions = TrialShaft.AllWell,
            TrialLength = TrialShaft.Mm(400),
            Readings = readings,
        };

    [Fact]
    public void AnglesUnreadAtALock_AreNamedForBothJoints()
    {
        var result = TrialShaft.Solve(
            Corner(
                At(-60, 20, 20, 10, 12),
                At(0, 20, 20, 2, 3),
                At(60, 20, 20, 10, 12),
                At(-60, 20, 20, steering: Steering.FullLeft),
                At(0, 20, 20, steering: Steering.FullLeft),
                At(60, 20, 20, steering: Steering.FullLeft)
            ),
            TrialShaft.Joints(20, 25, 45),
            3
        );
        foreach (var joint in new[] { "inner", "outer" })
        {
            var caution = Assert.Single(result.Findings, f => f.Code == joint + "-angle-unchecked");
            Assert.Contains("full left lock", caution.Text.ToString(), StringComparison.Ordinal);
            Assert.DoesNotContain("straight", caution.Text.ToString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void OneAngleReadOverItsLimit_Stops_ThoughItsNeighboursHaveNone()
    {
        var result = TrialShaft.Solve(
            Corner(At(-60, 20, 20, 40, 55), At(0, 20, 20), At(60, 20, 20)),
            TrialShaft.Joints(20, 25, 45),
            3
        );
        Assert.Contains(
            result.Findings,
            f => f is { Code: "inner-angle", Severity: Severity.Stop }
        );
        Assert.Contains(
            result.Findings,
            f => f is { Code: "outer-angle", Severity: Severity.Stop }
        );
        Assert.All(result.Findings, f => Assert.NotEqual("", f.Action.ToString()));
    }

    [Theory]
    [InlineData(44.9, true)]
    [InlineData(40, false)]
    public void AngleNearItsLimit_WithinItsDoubt_IsCautioned(double outer, bool close)
    {
        TrialReading Read(double travel) =>
            At(travel, 20, 20, 5) with
            {
                OuterAngle = Measured<Angle>.Read($"{outer}°", "outer").Required,
            };
        var result = TrialShaft.Solve(
            Corner(Read(-60), Read(0), Read(60)),
            TrialShaft.Joints(20, 25, 45),
            3
        );
        Assert.Equal(close, result.Findings.Any(f => f.Code == "outer-angle-close"));
        Assert.DoesNotContain(result.Findings, f => f.Code == "outer-angle");
    }

    [Fact]
    public void DoubtOfTheInnerAngleLimit_ReachesTheShortEnd()
    {
        double Uncertainty(double plusMinus)
        {
            var joints = TrialShaft.Joints(25, 22, 45);
            joints = joints with
            {
                Inner = joints.Inner! with { AngleLimit = TrialShaft.Deg(22, plusMinus) },
            };
            var corner = new CornerInput
            {
                Conditions = TrialShaft.AllWell,
                Readings =
                [
                    .. new[] { -140.0, 0, 140 }.Select(t =>
                        TrialShaft.DistanceAndAngle(t, t == 0 ? 300 : 284, t == 0 ? 0 : 112)
                    ),
                ],
            };
            var shortest = TrialShaft.Solve(corner, joints, 1).Shortest!;
            Assert.Equal(Forbids.InnerAngle, shortest.Forbids);
            return shortest.StandardUncertainty;
        }
        // L = r/sin φ: dL/dφ = −L/tan φ = 740 mm a radian at 22°, so ± 2° (u 0.0202) is 14.9 mm.
        Assert.Equal(
            14.9,
            Math.Sqrt(Math.Pow(Uncertainty(2), 2) - Math.Pow(Uncertainty(0), 2)),
            0.3
        );
    }

    private static PlungeAtAngle Row(
        double angle,
        double? goesIn,
        double? comesOut,
        double pm = 0
    ) =>
        new()
        {
            Angle = TrialShaft.Deg(angle),
            In = goesIn is { } i ? TrialShaft.Mm(i, pm) : null,
            Out = comesOut is { } o ? TrialShaft.Mm(o, pm) : null,
        };

    private static JointsInput Table(JointKind kind, params PlungeAtAngle[] rows)
    {
        var joints = TrialShaft.Joints(20, 30, 45);
        return joints with { Inner = joints.Inner! with { Kind = kind, PlungeTable = rows } };
    }

    private static CornerInput Bent() =>
        new()
        {
            Conditions = TrialShaft.AllWell,
            Readings =
            [
                .. new[] { -140.0, 0, 140 }.Select(t =>
                    TrialShaft.DistanceAndAngle(t, t == 0 ? 400 : 380, t == 0 ? 0 : 165)
                ),
            ],
        };

    [Fact]
    public void PlungeTable_BeyondItsLastRow_GoesOnFallingAndSaysSo()
    {
        var result = TrialShaft.Solve(Bent(), Table(JointKind.PlungingBall, Row(5, 18, 18)), 1);
        Assert.Contains(result.Findings, f => f.Code == "plunge-table-exceeded");
        var limits = PlungeLimits.Of(Table(JointKind.PlungingBall, Row(5, 18, 18)).Inner!)!;
        Assert.Equal(20 - 2.0 / 5 * 15, limits.In(15 * TrialShaft.Degree), 1e-9);
        // A rising column is held: no stop recedes as the joint bends.
        Assert.Equal(
            22,
            PlungeLimits
                .Of(Table(JointKind.PlungingBall, Row(5, 22, 22)).Inner!)!
                .In(15 * TrialShaft.Degree),
            1e-9
        );
    }

    [Fact]
    public void PlungeTable_RowsThatAreIncomplete_AreNamedAndDoNotHideTheMissingRadius()
    {
        var findings = JointsSolver
            .Solve(Table(JointKind.PlungingTripod, Row(20, 12, null)))
            .Findings;
        Assert.Contains(findings, f => f.Code == "inner-plunge-row-incomplete");
        Assert.Contains(findings, f => f.Code == "inner-roller-radius-unknown");
    }

    [Fact]
    public void PlungeTable_ItsDoubt_ReachesTheWindow()
    {
        double Uncertainty(double pm) =>
            TrialShaft
                .Solve(Bent(), Table(JointKind.PlungingBall, Row(30, 15, 15, pm)), 1)
                .Longest!.StandardUncertainty;
        Assert.True(Uncertainty(5) > Uncertainty(0) + 2);
    }

    [Fact]
    public void JointOfUnknownKind_WithARollerRadius_LosesPlungeAsATripodAndSaysSo()
    {
        var tripod = TrialShaft.Joints(20, 30, 45, 18);
        var unknown = tripod with { Inner = tripod.Inner! with { Kind = JointKind.Unknown } };
        Assert.Equal(
            TrialShaft.Solve(Bent(), tripod, 1).Longest!.Length,
            TrialShaft.Solve(Bent(), unknown, 1).Longest!.Length,
            1e-9
        );
        Assert.Contains(JointsSolver.Solve(unknown).Findings, f => f.Code == "inner-kind-unknown");
    }

    [Fact]
    public void Chance_OfThreeReadingsThatBindAlike_IsNotThatOfOne()
    {
        // In 7, 8, 7 with ± 0.5 each, chosen 0.4 mm under the two sevens: 1 − Φ(0.4/0.2887) = 0.083 at either end.
        const double each = 0.0829;
        var corner = Corner(
            At(-60, 7, 20, plusMinus: 0.5),
            At(0, 8, 20, plusMinus: 0.5),
            At(60, 7, 20, plusMinus: 0.5)
        );
        var result = Workflow
            .Evaluate(
                new Job
                {
                    Corner = corner,
                    Length = new LengthInput
                    {
                        Margin = TrialShaft.Mm(0),
                        Chosen = TrialShaft.Mm(406.6),
                    },
                }
            )
            .Length!;
        var either = 1 - (1 - each) * (1 - each);
        Assert.InRange(result.ChanceOfViolation, either, 1.5 * either);
    }

    [Fact]
    public void DoubtOfTheSeats_IsTakenFromTheTolerance()
    {
        LengthResult Solve(double plusMinus)
        {
            var joints = TrialShaft.Joints(20, 30, 45);
            JointInput Seated(JointInput j) =>
                j with
                {
                    WayRound = WayRound.Symmetric,
                    SeatToCentre = TrialShaft.Mm(5, plusMinus),
                    SeatToEnd = TrialShaft.Mm(8, plusMinus),
                };
            return TrialShaft.Solve(
                Corner(At(-60, 8, 8), At(0, 8, 8), At(60, 8, 8)),
                joints with
                {
                    Inner = Seated(joints.Inner!),
                    Outer = Seated(joints.Outer!),
                },
                3
            );
        }
        Assert.Equal(0, Solve(0).OverallUncertainty);
        // Four offsets of ± 2: 2·2/√3.
        Assert.Equal(4 / Math.Sqrt(3), Solve(2).OverallUncertainty, 1e-9);
        Assert.Equal(2, Solve(0).Tolerance);
        Assert.True(Solve(2).Tolerance < 0.5);
    }

    [Fact]
    public void HeightsTooCloseTogether_AreNotThreeHeights()
    {
        var result = TrialShaft.Solve(Corner(At(0, 12, 12), At(1, 12, 12), At(2, 12, 12)), null, 3);
        Assert.Contains(
            result.Findings,
            f => f is { Code: "too-few-heights", Severity: Severity.Stop }
        );
        Assert.Null(result.Make);
    }

    [Fact]
    public void RideHeightReadOnlyOnLock_DoesNotServeTheStraightReadings()
    {
        var result = TrialShaft.Solve(
            Corner(
                At(-80, 12, 12),
                At(-70, 12, 12),
                At(60, 12, 12),
                At(-80, 12, 12, steering: Steering.FullLeft),
                At(0, 12, 12, steering: Steering.FullLeft),
                At(60, 12, 12, steering: Steering.FullLeft)
            ),
            null,
            3
        );
        Assert.Contains(
            result.Findings,
            f => f is { Code: "no-ride-height", Severity: Severity.Stop }
        );
    }

    [Fact]
    public void TooManyReadings_AreRefusedByName()
    {
        var corner = Corner([.. Enumerable.Range(0, 201).Select(_ => At(0, 1, 1))]);
        Assert.Equal("corner.readings", Assert.Single(new Job { Corner = corner }.Check()).Field);
    }
}
