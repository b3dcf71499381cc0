using CsCheck;
using Shaftwright.Corner.Linkages;
using Shaftwright.Geometry;
using Shaftwright.Measures;
using static Shaftwright.Tests.Corner.Linkages.LinkageJobs;

namespace Shaftwright.Tests.Corner.Linkages;

/// <summary>Points from tapes. The answer is made first, and the tapes derived from it.</summary>
public sealed class TapedPointTests
{
    private static readonly Vec3[] s_marks =
    [
        new(500, 100, 20),
        new(-450, 150, 60),
        new(20, 760, 10),
        new(-80, 90, 640),
        new(300, 800, 500),
    ];

    private static IReadOnlyList<ReferenceInput> Marks(int count) =>
        [
            .. s_marks
                .Take(count)
                .Select(
                    (m, i) =>
                        new ReferenceInput
                        {
                            Name = Name(i),
                            X = Mm(m.X),
                            Y = Mm(m.Y),
                            Z = Mm(m.Z),
                        }
                ),
        ];

    private static string Name(int i) => "ABCDE"[i].ToString();

    private static PointInput Taped(
        Vec3 at,
        int count,
        double u = 1,
        Func<int, double>? off = null
    ) =>
        new()
        {
            Point = LinkagePoint.OuterJoint,
            Tapes =
            [
                .. Enumerable
                    .Range(0, count)
                    .Select(i => new TapeInput
                    {
                        From = Name(i),
                        Distance = Mm(
                            Math.Round((at - s_marks[i]).Length + (off?.Invoke(i) ?? 0), 9),
                            u
                        ),
                    }),
            ],
        };

    private sealed record Place(Vec3 At, Vec3 Uncertainty, IReadOnlyList<TapeFit> Tapes);

    /// <summary>The place found for a point of an otherwise plain linkage; null, with what is said, when there is none.</summary>
    private static Place? Find(
        PointInput point,
        IReadOnlyList<ReferenceInput> references,
        out string why
    )
    {
        var paper = Paper("parallel-wishbones");
        var corner = Workflow
            .Evaluate(
                new Job
                {
                    Corner = new()
                    {
                        Linkage = paper with
                        {
                            References = references,
                            Points = [.. paper.Points.Where(p => p.Point != point.Point), point],
                        },
                    },
                }
            )
            .Corner!;
        why = string.Join(" ", corner.Findings.Select(f => f.Text.In(Display.Metric)));
        return corner.Linkage is { } linkage
            ? linkage
                .Points.Where(p => p.Point == point.Point)
                .Select(p => new Place(p.At, p.Uncertainty, linkage.Tapes))
                .Single()
            : null;
    }

    private static readonly Gen<Vec3> s_point = Gen.Select(
        Gen.Double[-300, 300],
        Gen.Double[300, 700],
        Gen.Double[100, 500],
        (x, y, z) => new Vec3(x, y, z)
    );

    [Fact]
    public void FourOrFiveTapes_FindThePointTheyWereMadeFrom() =>
        Gen.Select(s_point, Gen.Int[4, 5])
            .Sample(
                (at, count) =>
                {
                    var found = Find(Taped(at, count), Marks(count), out var why);
                    Assert.True(found is not null, why);
                    PaperCarsTests.Near(at, found.At, 1e-6);
                    Assert.All(found.Tapes, t => Assert.Equal(t.Taped, t.Fitted, 1e-6));
                },
                iter: 300
            );

    [Fact]
    public void ThreeTapes_LeaveTwoPlaces_AndARoughHeightTellsThem() =>
        s_point.Sample(
            at =>
            {
                var three = Taped(at, 3);
                Assert.Null(Find(three, Marks(3), out var why));
                Assert.Contains("two places", why, StringComparison.Ordinal);
                var rough = three with { Z = Mm(Math.Round(at.Z + 25), 60) };
                var found = Find(rough, Marks(3), out why);
                Assert.True(found is not null, why);
                // The rough height pulls by no more than its weight against a millimetre of tape.
                PaperCarsTests.Near(at, found.At, 1);
            },
            iter: 200
        );

    /// <summary>Errors drawn as stated: what the point is off, over what is said of it, has the mean square 1.</summary>
    [Fact]
    public void StatedDoubt_IsTheDoubt()
    {
        var random = new Random(7);
        double Normal() =>
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
            * Math.Cos(2 * Math.PI * random.NextDouble());
        var sum = 0.0;
        const int Draws = 600;
        for (var n = 0; n < Draws; n++)
        {
            var at = new Vec3(random.Next(-300, 300), random.Next(300, 700), random.Next(100, 500));
            // ± √3 is a standard uncertainty of 1.
            var found = Find(Taped(at, 5, Math.Sqrt(3), _ => Normal()), Marks(5), out var why);
            Assert.True(found is not null, why);
            var (d, u) = (found.At - at, found.Uncertainty);
            sum += Square(d.X / u.X) + Square(d.Y / u.Y) + Square(d.Z / u.Z);
        }
        static double Square(double x) => x * x;
        // 1800 squares of mean 1, three and three a little alike: standard deviation between √(2/1800) and √(6/1800) = 0.058.
        Assert.InRange(sum / (3 * Draws), 0.8, 1.2);
    }

    [Fact]
    public void TapeOnTheWrongHole_IsNamed()
    {
        var input = Paper("parallel-wishbones") with
        {
            References = Marks(5),
            Points =
            [
                .. Paper("parallel-wishbones")
                    .Points.Select(p =>
                        p.Point == LinkagePoint.LowerBall
                            ? Taped(new(0, 620, 200), 5, 1, i => i == 1 ? 14 : 0) with
                            {
                                Point = p.Point,
                            }
                            : p
                    ),
            ],
        };
        var said = Assert.Single(
            Workflow.Evaluate(Job(input)).Findings,
            f => f.Code == "tapes-do-not-meet"
        );
        Assert.Contains("from B", said.Text.In(Display.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void LinkageByTapes_GivesTheLengthOfThatByCoordinates()
    {
        var paper = Paper("parallel-wishbones");
        var taped = paper with
        {
            References = Marks(5),
            Points =
            [
                .. paper.Points.Select(p =>
                    Taped(new(p.X!.Value, p.Y!.Value, p.Z!.Value), 5) with
                    {
                        Point = p.Point,
                    }
                ),
            ],
        };
        Assert.Equal(
            Workflow.Evaluate(Job(paper, 15, 20, 25, 1)).Length!.Make!.Value,
            Workflow.Evaluate(Job(taped, 15, 20, 25, 1)).Length!.Make!.Value,
            1e-6
        );
    }

    [Fact]
    public void MirroredPoint_ChangesItsSide()
    {
        var paper = Paper("parallel-wishbones");
        var other = paper with
        {
            Points =
            [
                .. paper.Points.Select(p =>
                    p.Point == LinkagePoint.UpperBall
                        ? p with
                        {
                            Y = Mm(-p.Y!.Value),
                            Mirrored = true,
                        }
                        : p
                ),
            ],
        };
        Assert.Equal(
            Workflow.Evaluate(Job(paper)).Length!.Make!.Value,
            Workflow.Evaluate(Job(other)).Length!.Make!.Value,
            1e-12
        );
    }

    /// <summary>Across measured to ± 4 mm and a tape straight across to ± 2 mm: the weighted mean, in closed form.</summary>
    [Fact]
    public void OneTapeBesideCoordinates_CountsByItsDoubt()
    {
        IReadOnlyList<ReferenceInput> mark =
        [
            new()
            {
                Name = "A",
                X = Mm(0),
                Y = Mm(100),
                Z = Mm(280),
            },
        ];
        var point = new PointInput
        {
            Point = LinkagePoint.OuterJoint,
            X = Mm(0),
            Y = Mm(600, 4),
            Z = Mm(280),
            Tapes = [new() { From = "A", Distance = Mm(505, 2) }],
        };
        var found = Find(point, mark, out var why);
        Assert.True(found is not null, why);
        Assert.Equal((600 / 16.0 + 605 / 4.0) / (1 / 16.0 + 1 / 4.0), found.At.Y, 1e-6);
        Assert.Equal(Math.Sqrt(1 / 3.0 / (1 / 16.0 + 1 / 4.0)), found.Uncertainty.Y, 1e-6);
    }

    [Theory]
    [InlineData(2, "at least three tapes")]
    [InlineData(4, "“D”")]
    public void TapesThatFixNothing_SayWhy(int tapes, string says)
    {
        Assert.Null(Find(Taped(new(0, 620, 200), tapes), Marks(3), out var why));
        Assert.Contains(says, why, StringComparison.Ordinal);
    }

    [Fact]
    public void ReferencePointsOnALine_AreRefused()
    {
        IReadOnlyList<ReferenceInput> line =
        [
            .. new[] { 0.0, 200, 400 }.Select(
                (x, i) =>
                    new ReferenceInput
                    {
                        Name = Name(i),
                        X = Mm(x),
                        Y = Mm(0),
                        Z = Mm(0),
                    }
            ),
        ];
        Assert.Null(Find(Taped(new(0, 620, 200), 3), line, out var why));
        Assert.Contains("one line", why, StringComparison.Ordinal);
    }
}
