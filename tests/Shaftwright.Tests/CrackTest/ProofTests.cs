using Shaftwright.CrackTest;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;

namespace Shaftwright.Tests.CrackTest;

/// <summary>What must be on record before a place counts as clean: the strokes of the press, the tempering, the conditions of the
/// look, and what a test had found that was taken back.</summary>
public sealed class ProofTests
{
    private static readonly Place[] s_butt = [Place.ButtWeld];
    private static readonly Place[] s_ends = [Place.SleeveInnerEnd, Place.SleeveOuterEnd];

    private static PressStroke Stroke(string id, double? minutes, Moment moment) =>
        new()
        {
            Id = id,
            At = minutes is { } m ? Tested.After(m) : null,
            Moment = moment,
        };

    private static TestDemand? AfterPressing(
        CrackTestInput input,
        Place[] places,
        params PressStroke[] strokes
    ) =>
        CrackTestSolver
            .Solve(input, new() { Strokes = strokes })
            .Demands.SingleOrDefault(d =>
                d.Kind == DemandKind.AfterPressing && d.Places.SequenceEqual(places)
            );

    [Theory]
    [InlineData(-60.0, true)] // Pressed an hour before the test.
    [InlineData(20.0, false)] // Pressed while the test ran.
    [InlineData(120.0, false)] // Pressed again after it: asked anew.
    public void Strokes_WithNobodyNotingThem_AskForATestThatComesAfter(double last, bool answered)
    {
        var input = new CrackTestInput
        {
            Work = [Tested.Work(WorkKind.ButtWelded, Tested.After(-600))],
            Tests = [Tested.Penetrant("a", Tested.After(0), s_butt)],
        };
        var asked = AfterPressing(
            input,
            s_butt,
            Stroke("s1", -90, Moment.ButtWelded),
            Stroke("s2", last, Moment.ButtWelded)
        );
        Assert.Equal("s2", asked!.WorkId);
        Assert.Equal(answered, asked.AnsweredBy is not null);
        Assert.Null(AfterPressing(input, s_butt));
    }

    [Fact]
    public void Strokes_BeforeTheFirstRunUntested_AreNotMadeUpForByLaterOnes()
    {
        var result = CrackTestSolver.Solve(
            new()
            {
                Work =
                [
                    Tested.Work(WorkKind.ButtWelded, Tested.After(-600)),
                    Tested.Work(WorkKind.FirstRun, Tested.After(0)),
                ],
            },
            new()
            {
                Strokes =
                [
                    Stroke("s1", -90, Moment.ButtWelded),
                    Stroke("s2", 90, Moment.AfterFirstRun),
                ],
            }
        );
        Assert.Equal(2, result.Demands.Count(d => d.Kind == DemandKind.AfterPressing));
        Assert.Contains(
            result.Findings,
            f => f is { Code: "ran-untested", Severity: Severity.Stop }
        );
    }

    [Fact]
    public void Strokes_AfterTheSleeveWentOn_AskForItsEnds()
    {
        var input = new CrackTestInput
        {
            Work =
            [
                Tested.Work(WorkKind.ButtWelded, Tested.After(-600)),
                Tested.Work(WorkKind.SleeveWelded, Tested.After(0)),
            ],
            Tests = [Tested.Penetrant("a", Tested.After(60), s_ends)],
        };
        Assert.Equal(
            "a",
            AfterPressing(input, s_ends, Stroke("s", 50, Moment.Sleeved))!.AnsweredBy
        );
        Assert.Null(AfterPressing(input, s_ends, Stroke("s", 70, Moment.Sleeved))!.AnsweredBy);
    }

    [Theory]
    [InlineData(-60.0, false)] // Straightened as bar, before there was a weld.
    [InlineData(10.0, true)]
    public void Strokes_OfNoMoment_AskOnlyWhenAWeldWasThere(double at, bool asks) =>
        Assert.Equal(
            asks,
            AfterPressing(
                new() { Work = [Tested.Work(WorkKind.ButtWelded, Tested.After(0))] },
                s_butt,
                Stroke("s", at, Moment.BeforeWelding)
            )
                is not null
        );

    [Theory]
    [InlineData(null, DemandLack.TimeOfStrokes, null)] // Nobody knows when: no test can be said to come after.
    [InlineData(-30.0, DemandLack.None, "a")] // The end of the pressing is noted.
    [InlineData(30.0, DemandLack.None, null)]
    public void Strokes_WithoutATime_AreAnsweredOnlyOnceTheEndOfPressingIsNoted(
        double? ended,
        DemandLack lack,
        string? answeredBy
    )
    {
        var asked = AfterPressing(
            new()
            {
                Work =
                [
                    Tested.Work(WorkKind.ButtWelded, Tested.After(-600)),
                    .. ended is { } e
                        ? new[] { Tested.Work(WorkKind.Pressed, Tested.After(e)) }
                        : [],
                ],
                Tests = [Tested.Penetrant("a", Tested.After(0), s_butt)],
            },
            s_butt,
            Stroke("s", null, Moment.ButtWelded)
        )!;
        Assert.Equal((lack, answeredBy), (asked.Lack, asked.AnsweredBy));
    }

    [Fact]
    public void Strokes_OfAJob_AskInTheWorkflowAndNotWhenTakenBack()
    {
        Job Pressed(params PressStroke[] more) =>
            new() { Press = new() { Strokes = [Stroke("s", 0, Moment.ButtWelded), .. more] } };
        Assert.Contains(
            Workflow.Evaluate(Pressed()).CrackTest!.Demands,
            d => d.Kind == DemandKind.AfterPressing
        );
        Assert.Null(
            Workflow
                .Evaluate(
                    Pressed(
                        new PressStroke
                        {
                            Id = "x",
                            Corrects = "s",
                            Withdrawn = true,
                        }
                    )
                )
                .CrackTest
        );
    }

    [Theory]
    [InlineData(true, -60.0, "a", null)] // Tempered, then tested.
    [InlineData(true, 60.0, null, "tested-before-tempering")]
    [InlineData(false, 60.0, null, "tested-before-tempering")]
    [InlineData(true, null, null, "tempering-not-noted")] // Asked for, and not on record.
    [InlineData(false, null, "a", null)] // Low-carbon steel: no temper asked.
    public void ButtTest_CountsOnlyAfterTheTempering(
        bool asked,
        double? tempered,
        string? answeredBy,
        string? finding
    )
    {
        var result = CrackTestSolver.Solve(
            new()
            {
                Work =
                [
                    Tested.Work(WorkKind.ButtWelded, Tested.After(-600)),
                    .. tempered is { } t
                        ? new[] { Tested.Work(WorkKind.Tempered, Tested.After(t)) }
                        : [],
                ],
                Tests = [Tested.Penetrant("a", Tested.After(0), s_butt)],
            },
            new() { TemperAsked = asked }
        );
        Assert.Equal(
            answeredBy,
            result.Demands.Single(d => d.Kind == DemandKind.ButtBeforeSleeve).AnsweredBy
        );
        Assert.Equal(
            finding is null ? [] : [finding],
            result.Findings.Where(f => f.Severity == Severity.Caution).Select(f => f.Code)
        );
    }

    public static TheoryData<string, TestNote> Notes() =>
        new()
        {
            { "", Whole },
            { "temperature-unknown", Whole with { PartTemperature = null } },
            { "light-unknown", Whole with { Light = null } },
            { "makers-dwell-unknown", Whole with { MakersDwell = null } },
        };

    private static TestNote Whole =>
        new()
        {
            Id = "n",
            Places = s_butt,
            MakersDwell = Tested.Of<Duration>("10 min"),
            PartTemperature = Tested.Of<Temperature>("18 °C"),
            Light = Tested.Of<Illuminance>("800 lx"),
        };

    [Theory]
    [MemberData(nameof(Notes))]
    public void CleanLook_WithSomethingNotNoted_ShowsNothingCleanUntilItIsNoted(
        string lacks,
        TestNote note
    )
    {
        var run = Tested.Penetrant("a", Tested.After(0), s_butt) with { Notes = [note] };
        CrackTestInput Input(params TestNote[] more) =>
            new()
            {
                Work = [Tested.Work(WorkKind.ButtWelded, Tested.After(-600))],
                Tests = [run with { Notes = [.. run.Notes, .. more] }],
            };
        var bare = Tested.Solve(Input());
        Assert.Equal(lacks.Length > 0, bare.Findings.Any(f => f.Code == lacks));
        Assert.Equal(
            lacks.Length == 0 ? SiteState.Clean : SiteState.NotTested,
            Assert.Single(bare.Sites).State
        );
        Assert.Equal(
            lacks.Length == 0 ? RunVerdict.Counts : RunVerdict.NotShown,
            bare.Runs[0].Verdict
        );
        var noted = Tested.Solve(Input(Whole with { Id = "n2" }));
        Assert.Equal(SiteState.Clean, Assert.Single(noted.Sites).State);
        Assert.Equal("a", noted.Demands[0].AnsweredBy);
    }

    [Fact]
    public void MarkOfALookThatShowsNothingClean_CountsAllTheSame()
    {
        var run = Tested.Penetrant(
            "a",
            Tested.After(0),
            s_butt,
            marks: Tested.Mark("m", Place.ButtWeld, "4", "0.5")
        ) with
        {
            Notes = [],
        };
        Assert.Equal(
            SiteState.Stopped,
            Assert.Single(Tested.Solve(new() { Tests = [run] }).Sites).State
        );
    }

    [Theory]
    [InlineData(true, null, SiteState.ToRetest)]
    [InlineData(false, null, SiteState.ToRetest)] // Put right by one without the mark: the same.
    [InlineData(true, 10.0, SiteState.ToRetest)] // Begun while the other ran.
    [InlineData(true, 60.0, SiteState.Clean)]
    public void TestTakenBack_WithAMark_LeavesThePlaceToBeTestedAgain(
        bool withdrawn,
        double? retestAt,
        SiteState state
    )
    {
        var result = Tested.Solve(
            new()
            {
                Tests =
                [
                    Tested.Penetrant("clean before", Tested.After(-600), s_butt),
                    Tested.Penetrant(
                        "a",
                        Tested.After(0),
                        s_butt,
                        marks: Tested.Mark("m", Place.ButtWeld, "4", "0.5", crack: true)
                    ),
                    Tested.Penetrant("a2", Tested.After(0), s_butt) with
                    {
                        Corrects = "a",
                        Withdrawn = withdrawn,
                    },
                    .. retestAt is { } at
                        ? new[] { Tested.Penetrant("b", Tested.After(at), s_butt) }
                        : [],
                ],
            }
        );
        Assert.Equal(state, Assert.Single(result.Sites).State);
        Assert.Equal(
            state == SiteState.ToRetest,
            result.Findings.Any(f => f.Code == "crack-taken-back")
        );
    }

    [Fact]
    public void TestPutRight_WithItsMarkKept_LeavesOnlyTheMark()
    {
        var mark = Tested.Mark("m", Place.ButtWeld, "4", "0.5");
        var result = Tested.Solve(
            new()
            {
                Tests =
                [
                    Tested.Penetrant("a", Tested.After(0), s_butt, marks: mark),
                    Tested.Penetrant(
                        "b",
                        Tested.After(0),
                        s_butt,
                        marks: mark with
                        {
                            Id = "m2",
                        }
                    ) with
                    {
                        Corrects = "a",
                    },
                ],
            }
        );
        Assert.Equal(SiteState.Stopped, Assert.Single(result.Sites).State);
        Assert.DoesNotContain(result.Findings, f => f.Code == "mark-taken-back");
    }
}
