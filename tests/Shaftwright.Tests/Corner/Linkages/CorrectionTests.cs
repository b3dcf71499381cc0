using Shaftwright.Corner;
using Shaftwright.Corner.Linkages;
using Shaftwright.Findings;
using Shaftwright.Geometry;
using Shaftwright.Measures;
using static Shaftwright.Tests.Corner.Linkages.LinkageJobs;

namespace Shaftwright.Tests.Corner.Linkages;

/// <summary>Readings at the car correct the points. Cars are drawn about a true one by the doubt they state.</summary>
public sealed class CorrectionTests
{
    private static readonly double[] s_travels = [-60, 0, 60];

    private static Random Seeded => new(20);

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
        * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>A steered corner measured with errors of standard uncertainty <paramref name="u"/>, stated as such.</summary>
    private static LinkageInput Measured(double u, Func<double> error) =>
        new()
        {
            Kind = LinkageKind.DoubleWishbone,
            Points =
            [
                .. Steered.Select(p =>
                    At(
                        p.Key,
                        Math.Round(p.Value.X + u * error(), 6),
                        Math.Round(p.Value.Y + u * error(), 6),
                        Math.Round(p.Value.Z + u * error(), 6),
                        u * Math.Sqrt(3)
                    )
                ),
            ],
            RackLeft = Mm(30),
            RackRight = Mm(30),
            Positions =
            [
                .. from t in new[] { -60.0, -30, 0, 30, 60 }
                from r in new[] { -30.0, 0, 30 }
                select new PositionInput { Travel = Mm(t), Rack = Mm(r) },
            ],
        };

    private static IReadOnlyList<SweptPosition> True { get; } =
        Workflow.Evaluate(Job(Measured(0, () => 0))).Corner!.Linkage!.Positions;

    private static CornerInput With(
        LinkageInput linkage,
        double u,
        Func<double> error,
        Func<double, Steering, double>? slip = null
    ) =>
        new()
        {
            Linkage = linkage,
            Readings =
            [
                .. from s in Enum.GetValues<Steering>()
                from t in s_travels
                let rack = s == Steering.FullLeft ? 30
                : s == Steering.FullRight ? -30
                : 0
                let line = True.Single(p => p.Travel == t && p.Place.Rack == rack).Line!.Value
                select new TrialReading
                {
                    Travel = Mm(t),
                    Steering = s,
                    Distance = Mm(
                        Math.Round(line.Distance + u * error() + (slip?.Invoke(t, s) ?? 0), 6),
                        u * Math.Sqrt(3)
                    ),
                },
            ],
        };

    private static CornerResult Solve(CornerInput corner) =>
        Workflow.Evaluate(new Job { Corner = corner }).Corner!;

    private static double Worst(CornerResult result) =>
        result
            .Linkage!.Positions.Zip(True)
            .Max(p => Math.Abs(p.First.Line!.Value.Distance - p.Second.Line!.Value.Distance));

    [Fact]
    public void Readings_BringTheLinkageToTheCar()
    {
        var random = Seeded;
        double Error() => Normal(random);
        var (before, after) = (0.0, 0.0);
        for (var n = 0; n < 12; n++)
        {
            var measured = Measured(2, Error);
            before += Worst(Solve(new CornerInput { Linkage = measured }));
            after += Worst(Solve(With(measured, 0.3, Error)));
        }
        // Points to 2 mm alone leave several mm; with distances to 0.3 mm at nine places nearly what these are sure to.
        Assert.True(before / 12 > 2.5, $"{before / 12:f2} mm without readings");
        Assert.True(after / 12 < 0.7, $"{after / 12:f2} mm with them");
    }

    /// <summary>The doubt that is left is the doubt: over drawn cars the true coordinates lie as far off the corrected ones as stated.</summary>
    [Fact]
    public void PosteriorDoubt_IsTheDoubt()
    {
        var random = Seeded;
        double Error() => Normal(random);
        var sum = 0.0;
        var count = 0;
        var truth = Steered.Values.SelectMany(p => new[] { p.X, p.Y, p.Z }).ToArray();
        for (var n = 0; n < 25; n++)
        {
            var result = Solve(With(Measured(2, Error), 0.3, Error));
            Assert.DoesNotContain(result.Findings, f => f.Severity == Severity.Stop);
            foreach (var p in result.Linkage!.Points)
            {
                var off = p.At - Steered[p.Point];
                sum +=
                    Square(off.X / p.Uncertainty.X)
                    + Square(off.Y / p.Uncertainty.Y)
                    + Square(off.Z / p.Uncertainty.Z);
                count += 3;
            }
        }
        // Mean square 1; 975 numbers, of which those of one car are a little alike.
        Assert.InRange(sum / count, 0.85, 1.15);
        static double Square(double x) => x * x;
    }

    /// <summary>One number uncertain, one reading of it: the weighted mean of both, in closed form.</summary>
    [Fact]
    public void OneCoordinateAndOneDistance_GiveTheWeightedMean()
    {
        var paper = Paper("trailing-arm");
        var linkage = paper with
        {
            Points =
            [
                .. paper.Points.Select(p =>
                    p.Point == LinkagePoint.InnerJoint ? p with { Y = Mm(200, 3) } : p
                ),
            ],
        };
        // D = 650 − y: read 452 ± 1 says y = 198, measured 200 ± 3.
        var result = Solve(
            new CornerInput
            {
                Linkage = linkage,
                Readings = [new() { Travel = Mm(0), Distance = Mm(452, 1) }],
            }
        );
        var inner = result.Linkage!.Points.Single(p => p.Point == LinkagePoint.InnerJoint);
        Assert.Equal((200 / 9.0 + 198 / 1.0) / (1 / 9.0 + 1), inner.At.Y, 1e-6);
        Assert.Equal(Math.Sqrt(1 / 3.0 / (1 / 9.0 + 1)), inner.Uncertainty.Y, 1e-6);
        // What is corrected is what the length is found from.
        Assert.Equal(
            650 - inner.At.Y,
            result.Linkage.Positions.Single(p => p.Travel == 0).Line!.Value.Distance,
            1e-9
        );
    }

    [Theory]
    [InlineData(SlideLine.Shaft)]
    [InlineData(SlideLine.InnerAxis)]
    public void InAndOut_OfATrialShaft_SayTheSameAsADistance(SlideLine along)
    {
        var paper = Paper("swing-arm");
        var linkage = paper with
        {
            Points =
            [
                .. paper.Points.Select(p =>
                    p.Point == LinkagePoint.InnerJoint ? p with { Y = Mm(204, 6) } : p
                ),
            ],
        };
        // The paper car at bump: axial 284, across 112; a trial shaft of 300 between stops of ± 15.
        TrialReading At(double travel, double axial, double across)
        {
            double Long(double s) => double.Hypot(axial + s, across);
            var mid = Math.Sqrt(300 * 300 - across * across);
            return along == SlideLine.Shaft
                ? new()
                {
                    Travel = Mm(travel),
                    In = Mm(Math.Round(Long(15) - 300, 9), 1e-4),
                    Out = Mm(Math.Round(300 - Long(-15), 9), 1e-4),
                }
                : new()
                {
                    Travel = Mm(travel),
                    In = Mm(Math.Round(axial + 15 - mid, 9), 1e-4),
                    Out = Mm(Math.Round(mid - axial + 15, 9), 1e-4),
                };
        }
        var result = Solve(
            new CornerInput
            {
                Linkage = linkage,
                TrialLength = Mm(300),
                ReadAlong = along,
                Readings = [At(-140, 284, 112), At(0, 300, 0), At(140, 284, 112)],
            }
        );
        var inner = result.Linkage!.Points.Single(p => p.Point == LinkagePoint.InnerJoint);
        Assert.Equal(200, inner.At.Y, 1e-3);
    }

    [Fact]
    public void AReadingThatDoesNotFit_IsNamedAndLeftOut()
    {
        var random = Seeded;
        double Error() => Normal(random);
        var measured = Measured(2, Error);
        var result = Solve(
            With(measured, 0.3, Error, (t, s) => t == 60 && s == Steering.FullLeft ? 15 : 0)
        );
        var said = Assert.Single(result.Findings, f => f.Code == "reading-contradicts-linkage");
        Assert.Contains("full left lock", said.Text.In(Display.Metric), StringComparison.Ordinal);
        Assert.Single(result.Linkage!.Readings, r => r.LeftOut);
        Assert.True(Worst(result) < 1.2, $"{Worst(result):f2} mm");
    }

    [Fact]
    public void AWrongTrialShaft_ContradictsAllPoints()
    {
        // 40 mm wrong at every height: points to ± 1 mm cannot give that.
        var paper = Paper("trailing-arm", 1);
        var result = Solve(
            new CornerInput
            {
                Linkage = paper,
                Readings =
                [
                    .. new[] { -90.0, 0, 90 }.Select(t => new TrialReading
                    {
                        Travel = Mm(t),
                        Distance = Mm(
                            t == 0 ? 490
                                : t < 0 ? 420
                                : 500,
                            1
                        ),
                    }),
                ],
            }
        );
        Assert.Contains(
            result.Findings,
            f => f.Code == "readings-contradict-linkage" && f.Severity == Severity.Stop
        );
        Assert.Contains(result.Findings, f => f.Code == "point-moved-far");
    }
}
