using CsCheck;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Tests.Length;

namespace Shaftwright.Tests.Joints;

public sealed class JointsTests
{
    [Fact]
    public void TripodRule_WrittenAsATable_GivesTheSameLimits() =>
        Gen.Select(Gen.Double[300, 600], Gen.Double[0, 120], Gen.Double[5, 25], Gen.Double[12, 25])
            .Sample(
                (axial, across, radius, plunge) =>
                {
                    var rule = PlungeLimits.Of(TrialShaft.Joints(plunge, 30, 40, radius).Inner!)!;
                    var table = PlungeLimits.Of(
                        TrialShaft.Joints(plunge, 30, 40, radius).Inner! with
                        {
                            PlungeTable =
                            [
                                .. Enumerable
                                    .Range(1, 400)
                                    .Select(k => new PlungeAtAngle
                                    {
                                        Angle = TrialShaft.Deg(k * 0.1),
                                        In = TrialShaft.Mm(
                                            plunge - radius * Math.Tan(k * 0.1 * TrialShaft.Degree)
                                        ),
                                        Out = TrialShaft.Mm(
                                            plunge - radius * Math.Tan(k * 0.1 * TrialShaft.Degree)
                                        ),
                                    }),
                            ],
                        }
                    )!;
                    // Straight pieces of 0.1° between points of a tangent: radius·(0.00175)²/4 off at most, some 1e-4 mm.
                    Assert.Equal(
                        rule.LargestAxial(axial, across, 1),
                        table.LargestAxial(axial, across, 1),
                        1e-3
                    );
                    Assert.Equal(
                        rule.SmallestAxial(axial, across, 1),
                        table.SmallestAxial(axial, across, 1),
                        1e-3
                    );
                    // The closed form puts the spider exactly on its limit.
                    var w = rule.LargestAxial(axial, across, 1);
                    Assert.Equal(-(rule.In(Math.Atan2(across, w)) - 1), axial - w, 1e-9);
                },
                iter: 200
            );

    [Fact]
    public void TripodOf20mm_At20Degrees_Loses7mm() =>
        // Roller radius × tan angle: 20 × 0.36397.
        Assert.Equal(
            7.2794,
            PlungeLimits.Of(TrialShaft.Joints(25, 30, 40, 20).Inner!) is { } l
                ? 25 - l.In(20 * TrialShaft.Degree)
                : 0,
            4
        );

    [Fact]
    public void OverallLength_ThroughBothOffsets_AddsUp()
    {
        var joints = TrialShaft.Joints(15, 30, 40);
        joints = joints with
        {
            Inner = joints.Inner! with
            {
                Seat = SeatKind.Clip,
                WayRound = WayRound.AsMeasured,
                SeatToCentre = TrialShaft.Mm(-4),
                SeatToEnd = TrialShaft.Mm(6),
            },
            Outer = joints.Outer! with
            {
                Seat = SeatKind.Shoulder,
                WayRound = WayRound.Symmetric,
                SeatToCentre = TrialShaft.Mm(21),
                SeatToEnd = TrialShaft.Mm(38),
            },
        };
        LengthResult Solve(JointsInput j) =>
            Workflow
                .Evaluate(
                    new Job
                    {
                        Corner = new()
                        {
                            Readings =
                            [
                                .. new[] { -60.0, 0, 60 }.Select(t =>
                                    TrialShaft.DistanceAndAngle(t, 450, 0)
                                ),
                            ],
                        },
                        Joints = j,
                    }
                )
                .Length!;
        var result = Solve(joints);
        Assert.Equal(450, result.Make!.Value, 1e-6);
        // Seats: 450 − (−4) − 21; ends lie 6 and 38 beyond them.
        Assert.Equal(433, result.SeatToSeat!.Value, 1e-6);
        Assert.Equal(477, result.Overall!.Value, 1e-6);

        var turned = Solve(
            joints with
            {
                Inner = joints.Inner! with { WayRound = WayRound.Turned },
            }
        );
        Assert.Equal(477 - 8, turned.Overall!.Value, 1e-6);
    }

    [Fact]
    public void UnknownWayRound_SaysWhatItCosts()
    {
        var joints = new JointsInput
        {
            Inner = new JointInput
            {
                Kind = JointKind.PlungingTripod,
                SeatToCentre = TrialShaft.Mm(6.5),
            },
        };
        var finding = Assert.Single(
            JointsSolver.Solve(joints).Findings,
            f => f.Code == "inner-way-round-unknown"
        );
        Assert.Contains("13.0", finding.Text.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void TwoFixedJoints_AreStopped()
    {
        var joints = new JointsInput
        {
            Inner = new JointInput { Kind = JointKind.Fixed },
            Outer = new JointInput { Kind = JointKind.Fixed },
        };
        Assert.Contains(
            JointsSolver.Solve(joints).Findings,
            f => f is { Code: "no-plunging-joint", Severity: Severity.Stop }
        );
    }
}
