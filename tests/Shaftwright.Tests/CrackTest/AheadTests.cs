using System.Text.RegularExpressions;
using Shaftwright.CrackTest;
using Shaftwright.Kept;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Tests.House;
using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;

namespace Shaftwright.Tests.CrackTest;

/// <summary>Records dated later than it is prove nothing until their time is put right, and ask for tests all the same.</summary>
public sealed class AheadTests
{
    private static readonly Place[] s_butt = [Place.ButtWeld];
    private static readonly string[] s_round = ["0°", "90°", "180°", "270°"];

    [Theory]
    [InlineData(24.0, SiteState.NotTested, null)] // An hour before the test ends.
    [InlineData(24.9, SiteState.NotTested, null)]
    [InlineData(25.5, SiteState.Clean, "a")] // Its last look lies within what two clocks may differ by.
    [InlineData(30.0, SiteState.Clean, "a")]
    [InlineData(null, SiteState.Clean, "a")] // Nobody said what time it is.
    public void Test_DatedLaterThanItIs_ShowsNothingAndAnswersNothing(
        double? now,
        SiteState state,
        string? answeredBy
    )
    {
        var result = CrackTestSolver.Solve(
            new()
            {
                Work = [Tested.Work(WorkKind.ButtWelded, Tested.Start)],
                Tests = [Tested.Penetrant("a", Tested.Start.AddHours(25), s_butt)],
            },
            new() { Now = now is { } h ? Tested.Start.AddHours(h).AddMinutes(4) : null }
        );
        Assert.Equal(state, Assert.Single(result.Sites).State);
        Assert.Equal(
            answeredBy,
            result.Demands.Single(d => d.Kind == DemandKind.ButtBeforeSleeve).AnsweredBy
        );
        Assert.Equal(answeredBy is null, result.Findings.Any(f => f.Code == "test-ahead-of-now"));
    }

    [Theory]
    [InlineData(1.0, true)]
    [InlineData(3.5, false)]
    public void Work_DatedLaterThanItIs_IsSaidAndNoTestOfTodayAnswersForIt(double now, bool ahead)
    {
        var result = CrackTestSolver.Solve(
            new()
            {
                Work =
                [
                    Tested.Work(WorkKind.ButtWelded, Tested.After(-600)),
                    Tested.Work(WorkKind.Tempered, Tested.After(180)),
                ],
                Tests = [Tested.Penetrant("a", Tested.After(0), s_butt)],
            },
            new() { Now = Tested.Start.AddHours(now), TemperAsked = true }
        );
        Assert.Equal(ahead, result.Findings.Any(f => f.Code == "work-ahead-of-now"));
        Assert.Null(result.Demands.Single(d => d.Kind == DemandKind.ButtBeforeSleeve).AnsweredBy);
    }

    [Theory]
    [InlineData(-1, false)]
    [InlineData(1, true)]
    public void Sample_DatedLaterThanItIs_ReplacesNoGuess(double hours, bool replaces)
    {
        static Shaftwright.Donors.DonorShaft Bar() =>
            new()
            {
                Zones = [new() { Until = Donors.Walked.Mm(300), Diameter = Donors.Walked.Mm(25) }],
            };
        var job = new Job
        {
            Donors = new() { InnerEnd = Bar(), OuterEnd = Bar() },
            Cut = new()
            {
                OverallLength = Donors.Walked.Mm(400),
                InnerCutAt = Donors.Walked.Mm(200),
            },
            Strength = new()
            {
                Sample = new()
                {
                    At = Tested.Start,
                    SameSteel = true,
                    SameSetUp = true,
                    Fusion =
                    [
                        .. s_round.Select(a => new SampleFusion
                        {
                            Angle = Tested.Of<Angle>(a),
                            Depth = Tested.Of<Distance>("9 mm"),
                        }),
                    ],
                },
            },
        };
        var result = Workflow.Evaluate(job, Tested.Start.AddHours(hours));
        Assert.Equal(replaces, result.Strength!.Findings.Any(f => f.Code == "sample-fusion"));
        Assert.Equal(!replaces, result.Strength.Findings.Any(f => f.Code == "sample-ahead-of-now"));
    }

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(1, 1)]
    public void Stroke_DatedLaterThanItIs_TeachesNothing(double hours, int learned)
    {
        var job = new Job
        {
            Truing = new()
            {
                Turns =
                [
                    new()
                    {
                        Id = "t",
                        Moment = Moment.ButtWelded,
                        Support = Support.Centres,
                        FirstSupportAt = Donors.Walked.Mm(0),
                        SecondSupportAt = Donors.Walked.Mm(600),
                        Station = Donors.Walked.Mm(300),
                        Readings =
                        [
                            .. Enumerable
                                .Range(0, 8)
                                .Select(i => new DialReading
                                {
                                    Angle = Measured<Angle>.Of(45 * i, Angle.Degree),
                                    Dial = Donors.Walked.Mm(
                                        Math.Round(0.4 * Math.Cos(Math.PI / 4 * i), 3)
                                    ),
                                }),
                        ],
                    },
                ],
            },
            Press = new()
            {
                Tempered = true,
                Diameter = Donors.Walked.Mm(25),
                Length = Donors.Walked.Mm(600),
                Strokes =
                [
                    new()
                    {
                        Id = "s",
                        At = Tested.Start,
                        Moment = Moment.ButtWelded,
                        Turn = "t",
                        Depth = Donors.Walked.Mm(2),
                        RunOutBefore = Donors.Walked.Mm(0.8),
                        RunOutAfter = Donors.Walked.Mm(0.6),
                    },
                ],
            },
        };
        var press = Workflow.Evaluate(job, Tested.Start.AddHours(hours)).Press!;
        Assert.Equal(learned, press.Strokes.Count);
        Assert.Equal(learned == 0, press.Findings.Any(f => f.Code == "press-stroke-ahead-of-now"));
    }

    [Theory]
    [InlineData(119, false)]
    [InlineData(121, true)]
    public void IsAhead_OfATimeWithAnotherOffset_GoesByTheInstant(double seconds, bool ahead)
    {
        var at = Tested.Start.AddSeconds(seconds).ToOffset(TimeSpan.FromHours(-9));
        Assert.Equal(ahead, FutureDates.IsAhead(at, Tested.Start));
        Assert.False(FutureDates.IsAhead(at, null));
        Assert.False(FutureDates.IsAhead(null, Tested.Start));
    }

    [Fact]
    public void Evaluate_CalledByAFaceOfTheProgram_IsToldTheTime()
    {
        string[] files =
        [
            .. Repository
                .Files("src", "*.cs")
                .Concat(Repository.Files("src", "*.razor"))
                .Where(f => !f.StartsWith("src/Shaftwright/", StringComparison.Ordinal)),
        ];
        var calls = files
            .SelectMany(f =>
                Regex
                    .Matches(Repository.Read(f), @"Workflow\.Evaluate\(([^;]*)")
                    .Select(m => (File: f, Arguments: m.Groups[1].Value))
            )
            .ToList();
        Assert.NotEmpty(calls);
        Assert.All(
            calls,
            c => Assert.True(c.Arguments.Contains(',', StringComparison.Ordinal), c.File)
        );
    }
}
