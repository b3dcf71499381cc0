using Shaftwright.Corner;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Length;

/// <summary>Whether the stated uncertainty and chance are what reading the car many times would show.</summary>
public sealed class LengthUncertaintyTests
{
    /// <summary>A double-wishbone corner of unequal, leaning arms, solved numerically: not the polynomial that the library fits.</summary>
    private static (double Axial, double Across) Wishbone(
        double travel,
        double upperLength,
        double upperLean,
        double lowerLength
    )
    {
        // Front view, y outboard, z up. The upper arm's pivot stands so that the upright is nearly plumb at ride height.
        (double Y, double Z) lower = (150, 180),
            upper = (150 + lowerLength - upperLength, 372 - upperLean);
        (double, double, double, double) Place(double a)
        {
            var y1 = lower.Y + lowerLength * Math.Cos(a);
            var z1 = lower.Z + lowerLength * Math.Sin(a);
            // Circle of the upright (200 long) about the lower ball, and of the upper arm.
            var dy = upper.Y - y1;
            var dz = upper.Z - z1;
            var d = double.Hypot(dy, dz);
            var along = (200 * 200 - upperLength * upperLength + d * d) / (2 * d);
            var off = Math.Sqrt(200 * 200 - along * along);
            var y2 = y1 + (along * dy + off * dz) / d;
            var z2 = z1 + (along * dz - off * dy) / d;
            return (y1, z1, y2, z2);
        }
        (double Y, double Z) Hub(double a)
        {
            var (y1, z1, y2, z2) = Place(a);
            // The joint lies 40 % up the upright and 20 inboard of it.
            var uy = (y2 - y1) / 200;
            var uz = (z2 - z1) / 200;
            return (y1 + 80 * uy - 20 * uz, z1 + 80 * uz + 20 * uy);
        }
        var ride = Hub(0.02);
        double low = -0.4,
            high = 0.4;
        for (var i = 0; i < 80; i++)
        {
            var mid = (low + high) / 2;
            if (Hub(mid).Z - ride.Z < travel)
                low = mid;
            else
                high = mid;
        }
        var at = Hub((low + high) / 2);
        return (at.Y - 90, Math.Abs(at.Z - ride.Z - 6));
    }

    [Fact]
    public void CurveBetweenReadings_OnRandomLinkages_StaysInsideTheStatedError()
    {
        var random = new Random(20261125);
        int inside = 0,
            all = 0;
        for (var n = 0; n < 300; n++)
        {
            var upper = 200 + 90 * random.NextDouble();
            var lean = 60 * (random.NextDouble() - 0.5);
            var lower = 260 + 80 * random.NextDouble();
            var reach = 60 + 35 * random.NextDouble();
            double[] heights = [-reach, 0, reach];
            var corner = new CornerInput
            {
                Conditions = TrialShaft.AllWell,
                Readings = [.. heights.Select(t => Reading(t, Wishbone(t, upper, lean, lower)))],
            };
            var set = Assert.Single(Workflow.Evaluate(new Job { Corner = corner }).Corner!.Sets);
            for (var t = -reach + 5; t < reach; t += 5)
            {
                var (axial, across) = Wishbone(t, upper, lean, lower);
                var fitted = FittedDistance(heights, corner, t);
                all++;
                if (
                    Math.Abs(fitted - double.Hypot(axial, across))
                    <= set.LargestInterpolationError + 1e-9
                )
                    inside++;
            }
            // Not silly either: a bound of centimetres would be true and useless.
            Assert.InRange(set.LargestInterpolationError, 0.01, 1.0);
        }
        Assert.True(
            inside >= 0.97 * all,
            $"only {inside} of {all} points lie inside the stated interpolation error"
        );
    }

    private static TrialReading Reading(double t, (double Axial, double Across) at) =>
        TrialShaft.DistanceAndAngle(t, at.Axial, at.Across);

    private static double FittedDistance(double[] heights, CornerInput corner, double t)
    {
        var square = MathNet.Numerics.Fit.Polynomial(
            heights,
            [.. corner.Readings.Select(r => r.Distance!.Value * r.Distance.Value)],
            2
        );
        return Math.Sqrt(MathNet.Numerics.Polynomial.Evaluate(t, square));
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(6)]
    public void StatedUncertainty_AgainstReadingTheCarManyTimes_HasTheRightSize(int readings)
    {
        var random = new Random(7 * readings);
        double[] heights = readings switch
        {
            3 => [-80, 0, 80],
            4 => [-80, -35, 0, 80],
            _ => [-80, -50, -20, 0, 45, 80],
        };
        var truth = Solve(heights, _ => 0);
        var off = new List<double>();
        var longOff = new List<double>();
        var stated = 0.0;
        var longStated = 0.0;
        const int Times = 400;
        for (var n = 0; n < Times; n++)
        {
            var result = Solve(heights, half => half * (2 * random.NextDouble() - 1));
            off.Add(result.Make!.Value - truth.Make!.Value);
            longOff.Add(result.Longest!.Length - truth.Longest!.Length);
            stated += result.MakeUncertainty / Times;
            longStated += result.Longest.StandardUncertainty / Times;
        }
        var seen = Math.Sqrt(off.Average(x => x * x));
        var longSeen = Math.Sqrt(longOff.Average(x => x * x));

        // The stated value also holds the curve's own error, which the repeated readings share, so it may be larger, not smaller.
        Assert.InRange(stated / seen, 0.9, 1.6);
        Assert.InRange(longStated / longSeen, 0.9, 1.6);
    }

    [Fact]
    public void ChanceOfViolation_AgainstManyCars_IsNotTooSmall()
    {
        var random = new Random(11);
        double[] heights = [-80, 0, 80];
        var violated = 0;
        var stated = 0.0;
        const int Times = 700;
        for (var n = 0; n < Times; n++)
        {
            // One reading of the car; the truth is the car itself. A narrow joint makes the chance worth stating.
            var read = Solve(
                heights,
                half => half * (2 * random.NextDouble() - 1),
                plunge: 9.2,
                margin: 2.5
            );
            if (read.Make is not { } make)
            {
                n--;
                continue;
            }
            var truth = Solve(heights, _ => 0, plunge: 9.2, margin: 2.5);
            stated += read.ChanceOfViolation / Times;
            if (make > truth.Longest!.Length || make < truth.Shortest!.Length)
                violated++;
        }
        var seen = violated / (double)Times;
        // The sum over sides is an upper bound to first order; and a bound ten times the truth would cry wolf.
        Assert.InRange(stated, 0.8 * seen, 10 * seen + 0.02);
    }

    [Fact]
    public void MeasureAgain_NamesTheReadingThatWasTakenBadly()
    {
        double[] heights = [-80, 0, 80];
        for (var bad = 0; bad < 3; bad++)
        {
            var corner = Corner(heights, _ => 0, 18);
            corner = corner with
            {
                Readings =
                [
                    .. corner.Readings.Select(
                        (r, k) =>
                            r with
                            {
                                In = Loose(r.In!, k == bad ? 4 : 0.2),
                                Out = Loose(r.Out!, k == bad ? 4 : 0.2),
                            }
                    ),
                ],
            };
            var result = TrialShaft.Solve(corner, TrialShaft.Joints(18, 40, 40), 2);
            // Only a reading that binds matters; the outermost positions of this car bind one side, ride height the other.
            if (result.MeasureAgain!.ReadingIndex is { } named)
                Assert.True(
                    named == bad || result.MeasureAgain.ShareOfVariance < 0.9,
                    $"reading {bad} was bad, {named} was named"
                );
        }
        static Measured<Distance> Loose(Measured<Distance> m, double half) =>
            Measured<Distance>.Of(m.Value, Distance.Mm, half);
    }

    private static LengthResult Solve(
        double[] heights,
        Func<double, double> slip,
        double plunge = 18,
        double margin = 2
    ) => TrialShaft.Solve(Corner(heights, slip, plunge), TrialShaft.Joints(18, 40, 40), margin);

    private static CornerInput Corner(double[] heights, Func<double, double> slip, double plunge)
    {
        const double Trial = 402;
        return new CornerInput
        {
            Conditions = TrialShaft.AllWell,
            TrialLength = Measured<Distance>.Of(Trial + slip(0.5), Distance.Mm),
            Readings =
            [
                .. heights.Select(t =>
                {
                    var (axial, across) = Wishbone(t, 240, 10, 310);
                    var exact = TrialShaft.InAndOut(t, axial, across, Trial, plunge, plunge);
                    return new TrialReading
                    {
                        Travel = Measured<Distance>.Of(t + slip(2), Distance.Mm),
                        In = Measured<Distance>.Of(exact.In!.Value + slip(0.5), Distance.Mm),
                        Out = Measured<Distance>.Of(exact.Out!.Value + slip(0.5), Distance.Mm),
                        InnerAngle = Measured<Angle>.Of(
                            Math.Max(0, exact.InnerAngle!.Value / TrialShaft.Degree + slip(0.5)),
                            Angle.Degree
                        ),
                    };
                }),
            ],
        };
    }
}
