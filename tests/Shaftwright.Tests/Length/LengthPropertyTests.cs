using CsCheck;
using Shaftwright.Corner;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Length;

/// <summary>What must hold for every car, drawn at random.</summary>
public sealed class LengthPropertyTests
{
    /// <summary>A car whose outer joint an arm swings: travel against axial and across distances, exactly.</summary>
    private sealed record Arm(
        double Radius,
        double Lean,
        double AxleFromPivot,
        double InnerFromPivot,
        double InnerRise
    )
    {
        public (double Axial, double Across) At(double travel)
        {
            // The arm's angle that gives this travel of the joint, measured from its angle at ride height.
            var y0 = Radius * Math.Sin(Lean);
            var angle = Math.Asin((y0 + travel) / Radius);
            var axial = Radius * Math.Cos(angle) - InnerFromPivot;
            var rise = y0 + travel - InnerRise;
            return (axial, double.Hypot(rise, AxleFromPivot));
        }
    }

    private static readonly Gen<Arm> Arms = Gen.Select(
        Gen.Double[260, 520],
        Gen.Double[-0.2, 0.2],
        Gen.Double[0, 25],
        Gen.Double[-150, 60],
        Gen.Double[-25, 25],
        (r, lean, offset, inner, rise) => new Arm(r, lean, offset, inner, rise)
    );

    private static readonly double[] Heights = [-70, 0, 70];

    private static CornerInput DistanceAndAngle(Arm arm, double[] heights) =>
        new()
        {
            Conditions = TrialShaft.AllWell,
            Readings =
            [
                .. heights.Select(t =>
                    TrialShaft.DistanceAndAngle(t, arm.At(t).Axial, arm.At(t).Across)
                ),
            ],
        };

    private static CornerInput InAndOut(Arm arm, double[] heights, double trial, double plunge) =>
        new()
        {
            Conditions = TrialShaft.AllWell,
            TrialLength = TrialShaft.Mm(trial),
            Readings =
            [
                .. heights.Select(t =>
                    TrialShaft.InAndOut(t, arm.At(t).Axial, arm.At(t).Across, trial, plunge, plunge)
                ),
            ],
        };

    [Fact]
    public void InsideTheWindow_IfAndOnlyIf_NoLimitIsPassedInADenseSweep() =>
        Gen.Select(
                Arms,
                Gen.Double[10, 25],
                Gen.Double[0, 22],
                Gen.Double[0, 4],
                Gen.Double[18, 26],
                Gen.Double[-30, 30]
            )
            .Sample(
                (arm, plunge, roller, margin, limit, off) =>
                {
                    var corner = DistanceAndAngle(arm, Heights);
                    var joints = TrialShaft.Joints(plunge, limit, 60, roller);
                    var result = TrialShaft.Solve(corner, joints, margin);
                    var length = arm.At(0).Axial + off;
                    if (result.Shortest is null || length < 60)
                        return;
                    // Too near an end for a dense sweep of finite step to tell.
                    if (
                        Math.Abs(length - result.Shortest.Length) < 1e-3
                        || Math.Abs(length - result.Longest!.Length) < 1e-3
                    )
                        return;

                    // Independent of the solver's algebra: walk the fitted D² and axial curves, place the spider, and look.
                    var curve = QuadraticThrough(corner, Heights);
                    var violated = false;
                    for (var i = 0; i <= 2000 && !violated; i++)
                    {
                        var t = Heights[0] + (Heights[^1] - Heights[0]) * i / 2000;
                        var (square, axial) = curve(t);
                        var r = Math.Sqrt(Math.Max(0, square - axial * axial));
                        if (r >= length)
                        {
                            violated = true;
                            break;
                        }
                        var phi = Math.Asin(r / length);
                        var s = axial - length * Math.Cos(phi);
                        var reach = plunge - roller * Math.Tan(phi) - margin;
                        violated = s < -reach || s > reach || phi > limit * TrialShaft.Degree;
                    }
                    Assert.Equal(
                        !violated,
                        length > result.Shortest.Length && length < result.Longest.Length
                    );
                },
                iter: 600
            );

    [Theory]
    [InlineData(0)]
    [InlineData(3.9154254010998657)]
    public void ShortEnd_WhereTheFittedAcrossDistanceDipsBelowZero_IsTheTopOfADenseSweep(
        double away
    )
    {
        // Found by the property below: near 20.9 mm of bump the clamped curve has a bump 0.015 mm high between two grid points.
        var arm = new Arm(
            322,
            -0.06451612903225806,
            0.010869565217391304,
            -61.5625,
            0.7110115950590981
        );
        var corner = DistanceAndAngle(arm, Heights) with
        {
            PowerUnitAwayFromWheel = TrialShaft.Mm(away),
        };
        var curve = QuadraticThrough(corner, Heights);
        var top = 0.0;
        for (var i = 0; i <= 1_400_000; i++)
        {
            var (square, axial) = curve(-70 + i * 1e-4);
            var w = axial + away - 20 + 1;
            top = Math.Max(top, Math.Sqrt(w * w + Math.Max(0, square - axial * axial)));
        }
        // A step of 1e-4 mm under a corner of slope 0.1 leaves the dense sweep itself 1e-5 mm low at most.
        Assert.Equal(
            top,
            TrialShaft.Solve(corner, TrialShaft.Joints(20, 40, 40), 1).Shortest!.Length,
            1e-5
        );
    }

    [Fact]
    public void InchesAndMillimetres_GiveTheSameLength() =>
        Arms.Sample(
            arm =>
            {
                var metric = InAndOut(arm, Heights, arm.At(0).Axial + 2, 18);
                var inches = metric with
                {
                    TrialLength = InInches(metric.TrialLength!),
                    Readings =
                    [
                        .. metric.Readings.Select(r =>
                            r with
                            {
                                Travel = InInches(r.Travel!),
                                In = InInches(r.In!),
                                Out = InInches(r.Out!),
                            }
                        ),
                    ],
                };
                var joints = TrialShaft.Joints(18, 30, 40);
                var a = TrialShaft.Solve(metric, joints, 2);
                var b = TrialShaft.Solve(inches, joints, 2);
                Assert.Equal(a.Longest!.Length, b.Longest!.Length, 1e-7);
                Assert.Equal(a.Shortest!.Length, b.Shortest!.Length, 1e-7);
                Assert.Equal(a.Make is null, b.Make is null);
                if (a.Make is { } make)
                    Assert.Equal(make, b.Make!.Value, 1e-7);
            },
            iter: 200
        );

    private static Measured<Distance> InInches(Measured<Distance> m) =>
        Measured<Distance>.Of(m.Value / 25.4, Distance.Inch, 0);

    [Fact]
    public void BumpAndDroopExchanged_LeftAndRightExchanged_AndShuffled_GiveTheSameLength() =>
        Arms.Sample(
            arm =>
            {
                double[] heights = [-80, -30, 0, 45, 80];
                var corner = DistanceAndAngle(arm, heights);
                var joints = TrialShaft.Joints(15, 30, 40, 18);
                var mirrored = corner with
                {
                    Readings =
                    [
                        .. corner
                            .Readings.Reverse()
                            .Select(r =>
                                r with
                                {
                                    Travel = TrialShaft.Mm(-r.Travel!.Value),
                                    Steering = Steering.FullLeft,
                                }
                            ),
                    ],
                };
                var a = TrialShaft.Solve(corner, joints, 1);
                var b = TrialShaft.Solve(mirrored, joints, 1);
                Assert.Equal(a.Shortest!.Length, b.Shortest!.Length, 1e-8);
                Assert.Equal(a.Longest!.Length, b.Longest!.Length, 1e-8);
            },
            iter: 200
        );

    [Fact]
    public void BothFormsOfOneCar_AgreeWithinTheCurvesError() =>
        Arms.Sample(
            arm =>
            {
                var joints = TrialShaft.Joints(16, 35, 40);
                var a = TrialShaft.Solve(DistanceAndAngle(arm, Heights), joints, 2);
                var b = TrialShaft.Solve(
                    InAndOut(arm, Heights, arm.At(0).Axial + 5, 16),
                    joints,
                    2
                );
                Assert.InRange(Math.Abs(a.Shortest!.Length - b.Shortest!.Length), 0, 0.3);
                Assert.InRange(Math.Abs(a.Longest!.Length - b.Longest!.Length), 0, 0.3);
                if (a.Make is { } fromDistance && b.Make is { } fromTrial)
                    Assert.InRange(Math.Abs(fromDistance - fromTrial), 0, 0.3);
            },
            iter: 300
        );

    [Fact]
    public void ReadAlongTheInnerAxis_GivesTheSameAsAlongTheShaft() =>
        Arms.Sample(
            arm =>
            {
                var trial = arm.At(0).Axial + 5;
                if (Heights.Any(t => arm.At(t).Across > 0.6 * trial))
                    return;
                var along = InAndOut(arm, Heights, trial, 16);
                var axis = along with
                {
                    ReadAlong = SlideLine.InnerAxis,
                    Readings =
                    [
                        .. Heights.Select(
                            (t, k) =>
                            {
                                var (axial, across) = arm.At(t);
                                var w = Math.Sqrt(trial * trial - across * across);
                                // The spider sits at s = axial − w from mid-stroke; it may go to −16 and +16.
                                return along.Readings[k] with
                                {
                                    In = TrialShaft.Mm(axial - w + 16),
                                    Out = TrialShaft.Mm(16 - (axial - w)),
                                };
                            }
                        ),
                    ],
                };
                var joints = TrialShaft.Joints(16, 40, 40);
                Assert.Equal(
                    TrialShaft.Solve(along, joints, 2).Longest!.Length,
                    TrialShaft.Solve(axis, joints, 2).Longest!.Length,
                    1e-6
                );
                Assert.Equal(
                    TrialShaft.Solve(along, joints, 2).Shortest!.Length,
                    TrialShaft.Solve(axis, joints, 2).Shortest!.Length,
                    1e-6
                );
            },
            iter: 200
        );

    [Fact]
    public void Allowances_ShortenTheLongEndAndLengthenTheShortEnd() =>
        Gen.Select(Arms, Gen.Double[0.2, 3], Gen.Double[0.5, 6], Gen.Double[0.5, 6])
            .Sample(
                (arm, endFloat, towards, away) =>
                {
                    var joints = TrialShaft.Joints(20, 40, 40);
                    var plain = DistanceAndAngle(arm, Heights);
                    var moved = plain with
                    {
                        OutputEndFloat = TrialShaft.Mm(endFloat),
                        PowerUnitTowardsWheel = TrialShaft.Mm(towards),
                        PowerUnitAwayFromWheel = TrialShaft.Mm(away),
                    };
                    var a = TrialShaft.Solve(plain, joints, 1);
                    var b = TrialShaft.Solve(moved, joints, 1);
                    // With the stub pushed home the float can only move the joint outwards. Along the shaft an axial millimetre is cos φ of one.
                    Assert.InRange(
                        a.Longest!.Length - b.Longest!.Length,
                        0.75 * (towards + endFloat),
                        towards + endFloat + 1e-9
                    );
                    Assert.InRange(
                        b.Shortest!.Length - a.Shortest!.Length,
                        0.75 * away,
                        away + 1e-9
                    );

                    var notHome = moved with
                    {
                        Conditions = moved.Conditions with { StubPushedHome = false },
                    };
                    Assert.True(
                        TrialShaft.Solve(notHome, joints, 1).Shortest!.Length > b.Shortest!.Length
                    );
                },
                iter: 200
            );

    [Fact]
    public void WithoutAnAngle_TheAnswerErrsOnTheSafeSide() =>
        Arms.Sample(
            arm =>
            {
                var corner = InAndOut(arm, Heights, arm.At(0).Axial + 5, 16) with
                {
                    PowerUnitTowardsWheel = TrialShaft.Mm(3),
                    PowerUnitAwayFromWheel = TrialShaft.Mm(3),
                };
                var blind = corner with
                {
                    Readings = [.. corner.Readings.Select(r => r with { InnerAngle = null })],
                };
                var seen = TrialShaft.Solve(corner, null, 3);
                var unseen = TrialShaft.Solve(blind, null, 3);
                Assert.True(unseen.Longest!.Length <= seen.Longest!.Length + 1e-9);
                Assert.True(unseen.Shortest!.Length >= seen.Shortest!.Length - 1e-9);
            },
            iter: 200
        );

    /// <summary>Lagrange's quadratics through the readings: not the solver's fit.</summary>
    private static Func<double, (double Square, double Axial)> QuadraticThrough(
        CornerInput corner,
        double[] t
    )
    {
        double[] d = [.. corner.Readings.Select(r => r.Distance!.Value)];
        double[] a =
        [
            .. corner.Readings.Select(r => r.Distance!.Value * Math.Cos(r.InnerAngle!.Value)),
        ];
        return x =>
        {
            var square = 0.0;
            var axial = 0.0;
            for (var i = 0; i < 3; i++)
            {
                var weight = 1.0;
                for (var j = 0; j < 3; j++)
                {
                    if (j != i)
                        weight *= (x - t[j]) / (t[i] - t[j]);
                }
                square += weight * d[i] * d[i];
                axial += weight * a[i];
            }
            return (square, axial);
        };
    }
}
