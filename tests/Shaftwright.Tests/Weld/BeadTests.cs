using CsCheck;
using Shaftwright.Measures;
using Shaftwright.Weld;

namespace Shaftwright.Tests.Weld;

/// <summary>The order of the beads, and what is learned of this shaft.</summary>
public sealed class BeadTests
{
    private static double Degrees(double rad) => rad * 180 / Math.PI;

    private static AxisReading At(int layers, double x, double y, double? begun = null) =>
        new(layers, begun, double.Hypot(x, y), 0.002, (Math.Atan2(y, x) + Math.Tau) % Math.Tau);

    [Fact]
    public void Plan_WithoutReadings_TacksAndWeldsOnOppositeSides()
    {
        var plan = BeadSolver.Solve([], null);
        Assert.Equal([0, 180, 90, 270], plan.Tacks.Select(b => Math.Round(Degrees(b.At))));
        Assert.Equal([0, 180, 90, 270], plan.Next.Select(b => Math.Round(Degrees(b.At))));
        Assert.False(plan.FromDial);
        Assert.Equal("Bead 2 of 4: at 180°, opposite to the last.", plan.Next[1].Words.ToString());
        Assert.Contains(plan.Findings, f => f.Code == "beads-not-read");
    }

    [Fact]
    public void Plan_OfSeveralLayers_StartsEach45OnAndReversed()
    {
        var preparation = WeldSolver
            .Solve(
                new()
                {
                    InnerDiameter = WeldJobs.Mm(25),
                    OuterDiameter = WeldJobs.Mm(25),
                    Preparation = new() { Flat = WeldJobs.Mm(9) },
                }
            )
            .Preparation!;
        Assert.True(preparation.FewestRuns > 1);
        var plan = BeadSolver.Solve([], preparation);
        Assert.Equal(4 * preparation.FewestRuns, plan.All.Count);
        for (var layer = 1; layer <= preparation.FewestRuns; layer++)
        {
            var beads = plan.All.Where(b => b.Layer == layer).ToList();
            Assert.Equal(45 * (layer - 1) % 360, Math.Round(Degrees(beads[0].At)));
            Assert.All(beads, b => Assert.Equal(layer % 2 == 0, b.Backwards));
            // Every second bead faces the one before it.
            Assert.Equal(Math.PI, Math.Abs(beads[0].At - beads[1].At), 1e-9);
            Assert.Equal(Math.PI, Math.Abs(beads[2].At - beads[3].At), 1e-9);
        }
        Assert.Equal(Enumerable.Range(1, plan.All.Count), plan.All.Select(b => b.Number));
    }

    [Fact]
    public void Plan_AfterTacking_BeginsWhereTheShaftStandsHighest()
    {
        var plan = BeadSolver.Solve([At(0, 0, 0.12)], null);
        Assert.Equal(90, Degrees(plan.StartsAt), 1e-9);
        Assert.True(plan.FromDial);
    }

    [Fact]
    public void Plan_WithARunOutThatTheDialCannotTell_FollowsThePattern()
    {
        var plan = BeadSolver.Solve([At(0, 0.003, 0)], null);
        Assert.False(plan.FromDial);
        Assert.Equal(0, plan.StartsAt);
        Assert.Contains(plan.Findings, f => f.Code == "beads-even");
    }

    [Fact]
    public void Learned_FromAShaftThatIsPulledAlikeByEachLayer_IsItsPull() =>
        Gen.Select(Gen.Double[0.02, 0.2], Gen.Double[0.05, 0.5], Gen.Double[0, 6.28], Gen.Int[2, 5])
            .Sample(
                (pull, first, angle, layers) =>
                {
                    // A shaft that moves `pull` away from where each layer begins, welded as proposed.
                    var (x, y) = (first * Math.Cos(angle), first * Math.Sin(angle));
                    var read = new List<AxisReading> { At(0, x, y) };
                    for (var n = 1; n <= layers; n++)
                    {
                        var start = BeadSolver.Solve(read, null).StartsAt;
                        (x, y) = (x - pull * Math.Cos(start), y - pull * Math.Sin(start));
                        read.Add(At(n, x, y, start));
                    }
                    var plan = BeadSolver.Solve(read, null);
                    Assert.Equal(pull, plan.Pull!.PerLayer, 1e-9);
                    Assert.Equal(layers, plan.Pull.Layers);
                    Assert.True(plan.Pull.Uncertainty > 0);
                    // And where the layers began need not be said when they were welded as proposed.
                    var unsaid = BeadSolver.Solve(
                        [.. read.Select(r => r with { BegunAt = null })],
                        null
                    );
                    Assert.Equal(pull, unsaid.Pull!.PerLayer, 1e-9);
                }
            );

    [Fact]
    public void Learned_FromReadingsWithNoise_StaysWithinItsUncertainty()
    {
        // 400 shafts of one true pull, two layers each, readings off by their own uncertainty: about 1 in 20 may fall outside 2u.
        var random = new Random(7);
        double Noise() =>
            0.01
            * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
            * Math.Cos(2 * Math.PI * random.NextDouble());
        const double True = 0.08;
        var outside = 0;
        for (var i = 0; i < 400; i++)
        {
            var (x, y) = (0.4, 0.0);
            var read = new List<AxisReading>();
            for (var n = 0; n <= 3; n++)
            {
                if (n > 0)
                    x -= True;
                read.Add(
                    At(n, x + Noise(), y + Noise(), n > 0 ? 0 : null) with
                    {
                        OffsetUncertainty = 0.01,
                    }
                );
            }
            var pull = BeadSolver.Solve(read, null).Pull!;
            if (Math.Abs(pull.PerLayer - True) > pull.Uncertainty)
                outside++;
        }
        Assert.InRange(outside, 0, 40);
    }

    [Fact]
    public void Learned_OfAShaftThatMovesTheOtherWay_TurnsTheStartRound()
    {
        var read = new List<AxisReading> { At(0, 0.1, 0), At(1, 0.2, 0, 0), At(2, 0.3, 0, 0) };
        var plan = BeadSolver.Solve(read, null);
        Assert.True(plan.Pull!.PerLayer < 0);
        Assert.Equal(Math.PI, plan.StartsAt, 1e-9);
        Assert.Contains(
            plan.Findings,
            f => f.Code == "pull-learned" && f.Severity == Findings.Severity.Caution
        );
    }

    [Fact]
    public void Learned_BeadByBead_IsWhatEachBeadOfALayerDoes() =>
        Gen.Select(
                Gen.Double[0.03, 0.2],
                Gen.Double[0.5, 0.95],
                Gen.Double[0.1, 0.6],
                Gen.Double[0, 6.28]
            )
            .Sample(
                (pull, stiffening, first, angle) =>
                {
                    // A shaft on which each bead moves the axis away from itself, the first of a layer most, welded as proposed.
                    var (x, y) = (first * Math.Cos(angle), first * Math.Sin(angle));
                    var read = new List<AxisReading> { At(0, x, y) };
                    for (var layer = 0; layer < 2; layer++)
                    {
                        var used = new HashSet<int>();
                        for (var b = 0; b < 4; b++)
                        {
                            var plan = BeadSolver.Solve(read, null);
                            Assert.Equal((layer + 1, 4 - b), (plan.NextLayer, plan.Next.Count));
                            var at = plan.Next[0].At;
                            // No quarter of a layer twice.
                            Assert.True(used.Add((int)Math.Round(at * 1e6)));
                            var move = pull * Math.Pow(stiffening, b);
                            (x, y) = (x - move * Math.Cos(at), y - move * Math.Sin(at));
                            read.Add(
                                b < 3
                                    ? At(layer, x, y, at) with
                                    {
                                        Beads = b + 1,
                                    }
                                    : At(layer + 1, x, y)
                            );
                        }
                    }
                    var moves = BeadSolver.Solve(read, null).ByBead;
                    Assert.Equal([1, 2, 3, 4], moves.Select(m => m.Number));
                    for (var b = 0; b < 4; b++)
                    {
                        Assert.Equal(pull * Math.Pow(stiffening, b), moves[b].Away, 1e-9);
                        Assert.Equal(2, moves[b].Beads);
                        Assert.Equal(0, moves[b].Aside, 1e-9);
                    }
                    // Where the beads lie need not be said when they were laid as proposed.
                    var unsaid = BeadSolver
                        .Solve([.. read.Select(r => r with { BegunAt = null })], null)
                        .ByBead;
                    Assert.All(
                        moves.Zip(unsaid),
                        m => Assert.Equal(m.First.Away, m.Second.Away, 1e-9)
                    );
                }
            );

    [Theory]
    [InlineData(40, 90)] // 0° and 180° are done: of what is open 90° lies nearest.
    [InlineData(250, 270)]
    public void Plan_WithinALayer_TakesTheOpenQuarterNearestTheHighPoint(double high, double next)
    {
        double X(double d) => 0.2 * Math.Cos(d * Math.PI / 180);
        double Y(double d) => 0.2 * Math.Sin(d * Math.PI / 180);
        var open = BeadSolver.Solve(
            [
                At(0, 0.3, 0),
                At(0, 0.2, 0, 0) with
                {
                    Beads = 1,
                },
                At(0, X(high), Y(high), Math.PI) with
                {
                    Beads = 2,
                },
            ],
            null
        );
        Assert.Equal(next, Degrees(open.Next[0].At), 1e-6);
        Assert.Equal(2, open.Next.Count);
        Assert.Contains(open.Findings, f => f.Code == "beads-within");
        Assert.Equal(
            "Bead 4 of 4: at " + (next == 90 ? "270°" : "90°") + ", opposite to the last.",
            open.Next[1].Words.ToString()
        );
    }

    [Fact]
    public void Learned_FromLayersThatWereNotReadOneByOne_IsNothing() =>
        Assert.Null(BeadSolver.Solve([At(0, 0.1, 0), At(2, 0.02, 0, 0)], null).Pull);

    [Fact]
    public void Plan_WithAPullLargerThanWhatIsLeft_Warns()
    {
        var plan = BeadSolver.Solve([At(0, 0.5, 0), At(1, 0.05, 0, 0)], null);
        Assert.Contains(plan.Findings, f => f.Code == "pull-overshoots");
    }

    [Fact]
    public void Job_WithATackedTurn_BeginsAtItsHighPoint()
    {
        var turn = new Shaftwright.Truing.DialTurn
        {
            Id = "t",
            Moment = Shaftwright.Truing.Moment.Tacked,
            Station = WeldJobs.Mm(300),
            Readings =
            [
                .. Enumerable
                    .Range(0, 8)
                    .Select(i => new Shaftwright.Truing.DialReading
                    {
                        Angle = WeldJobs.Degrees(45 * i),
                        Dial = WeldJobs.Mm(
                            Math.Round(0.2 * Math.Cos((45 * i - 90) * Math.PI / 180), 6)
                        ),
                    }),
            ],
        };
        var job = new Job
        {
            Weld = new() { InnerDiameter = WeldJobs.Mm(25), OuterDiameter = WeldJobs.Mm(25) },
            Truing = new() { Turns = [turn] },
        };
        var plan = Workflow.Evaluate(job).Beads!;
        Assert.Equal(90, Degrees(plan.StartsAt), 0.01);
        // A layer's turn at the same station teaches the pull.
        var after = turn with
        {
            Id = "u",
            Layer = 1,
            Readings =
            [
                .. turn.Readings.Select(r =>
                    r with
                    {
                        Dial = WeldJobs.Mm(Math.Round(r.Dial!.Value / 2, 6)),
                    }
                ),
            ],
        };
        var learned = Workflow
            .Evaluate(job with { Truing = new() { Turns = [turn, after] } })
            .Beads!;
        Assert.Equal(0.1, learned.Pull!.PerLayer, 1e-3);
        // What was noted at the weld goes before the turn.
        var noted = Workflow
            .Evaluate(
                job with
                {
                    Weld = job.Weld with
                    {
                        Layers =
                        [
                            new() { RunOut = WeldJobs.Mm(0.4), HighPoint = WeldJobs.Degrees(200) },
                        ],
                    },
                }
            )
            .Beads!;
        Assert.Equal(200, Degrees(noted.StartsAt), 1e-9);
    }
}
