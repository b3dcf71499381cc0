using Shaftwright.CrackTest;
using Shaftwright.Findings;

namespace Shaftwright.Tests.CrackTest;

/// <summary>Which tests the work asks for, when, and what becomes of one that was left out.</summary>
public sealed class DemandTests
{
    private static readonly Place[] s_butt = [Place.ButtWeld];
    private static readonly Place[] s_ends = [Place.SleeveInnerEnd, Place.SleeveOuterEnd];

    private static DateTimeOffset Hours(double hours) => Tested.Start.AddHours(hours);

    private static CrackTestResult Solve(WorkDone[] work, params TestRun[] tests) =>
        Tested.Solve(new() { Work = work, Tests = tests });

    private static DemandState StateOf(CrackTestResult result, DemandKind kind, double hours) =>
        Assert.Single(result.Demands, d => d.Kind == kind).At(Hours(hours));

    private static WorkDone Work(WorkKind kind, double hours) => Tested.Work(kind, Hours(hours));

    private static TestRun Test(string id, double hours, params Place[] places) =>
        Tested.Penetrant(id, Hours(hours), places);

    [Fact]
    public void Demands_OfAWholeMaking_ComeInOrderAndAreAllAnswered()
    {
        var result = Solve(
            [
                Work(WorkKind.ButtWelded, 0),
                Work(WorkKind.Tempered, 3),
                Work(WorkKind.Pressed, 20),
                Work(WorkKind.SleeveWelded, 30),
                Work(WorkKind.Pressed, 40),
                Work(WorkKind.FirstRun, 90),
                Work(WorkKind.FirstEvent, 200),
            ],
            Test("butt", 22, s_butt),
            Test("pressed", 42, s_ends),
            Test("late", 79, s_ends),
            Test("event", 210, s_ends)
        );
        Assert.Equal(
            [
                (DemandKind.ButtBeforeSleeve, "butt"),
                (DemandKind.AfterPressing, "butt"),
                (DemandKind.AfterPressing, "pressed"),
                (DemandKind.AfterTwoDays, "late"),
                (DemandKind.AfterFirstEvent, "event"),
            ],
            result.Demands.Select(d => (d.Kind, d.AnsweredBy ?? "-"))
        );
        Assert.All(result.Demands, d => Assert.Equal(DemandState.Done, d.At(Hours(300))));
        Assert.DoesNotContain(result.Findings, f => f.Severity == Severity.Stop);
    }

    [Theory]
    [InlineData(47.9, DemandState.NotYet)]
    [InlineData(48.1, DemandState.Due)]
    public void AfterTwoDays_FromTheLastHeat_WaitsFortyEightHours(double hours, DemandState state)
    {
        var result = Solve([Work(WorkKind.ButtWelded, -5), Work(WorkKind.Tempered, 0)]);
        Assert.Equal(state, StateOf(result, DemandKind.AfterTwoDays, hours));
    }

    [Fact]
    public void AfterTwoDays_ATestTooEarly_DoesNotAnswerIt()
    {
        var result = Solve([Work(WorkKind.ButtWelded, 0)], Test("early", 47, s_butt));
        Assert.Equal(DemandState.Due, StateOf(result, DemandKind.AfterTwoDays, 50));
        Assert.Equal(DemandState.Done, StateOf(result, DemandKind.ButtBeforeSleeve, 50));
    }

    [Fact]
    public void AfterTwoDays_MoreHeat_BeginsAgain()
    {
        var result = Solve(
            [Work(WorkKind.ButtWelded, 0), Work(WorkKind.WeldRepaired, 60)],
            Test("late", 50, s_butt)
        );
        Assert.Equal(DemandState.NotYet, StateOf(result, DemandKind.AfterTwoDays, 100));
    }

    [Fact]
    public void AfterTwoDays_AMarkWeldedAgain_IsHeatToo()
    {
        var result = Tested.Solve(
            new()
            {
                Work = [Work(WorkKind.ButtWelded, 0)],
                Decisions =
                [
                    new()
                    {
                        Id = "d",
                        Indication = "m",
                        What = MarkDecision.WeldedAgain,
                        At = Hours(30),
                    },
                ],
            }
        );
        Assert.Equal(DemandState.NotYet, StateOf(result, DemandKind.AfterTwoDays, 77));
        Assert.Equal(DemandState.Due, StateOf(result, DemandKind.AfterTwoDays, 79));
    }

    [Fact]
    public void ButtBeforeSleeve_SleevedUntested_IsMissedForGoodAndStops()
    {
        WorkDone[] work = [Work(WorkKind.ButtWelded, 0), Work(WorkKind.SleeveWelded, 10)];
        var result = Solve(work, Test("too late", 12, s_butt));
        Assert.Equal(DemandState.Missed, StateOf(result, DemandKind.ButtBeforeSleeve, 20));
        Assert.Equal(
            Severity.Stop,
            Assert.Single(result.Findings, f => f.Code == "hidden-untested").Severity
        );
        Assert.Contains(result.Findings, f => f.Code == "butt-under-sleeve");
        Assert.Equal(
            SiteState.Hidden,
            Assert.Single(result.Sites, s => s.Place == Place.ButtWeld).State
        );
    }

    [Fact]
    public void AfterPressing_PressedAgainAfterTheTestAndSleeved_IsMissed()
    {
        var result = Solve(
            [
                Work(WorkKind.ButtWelded, 0),
                Work(WorkKind.Pressed, 8),
                Work(WorkKind.SleeveWelded, 10),
            ],
            Test("before the press", 5, s_butt)
        );
        Assert.Equal(DemandState.Done, StateOf(result, DemandKind.ButtBeforeSleeve, 20));
        Assert.Equal(DemandState.Missed, StateOf(result, DemandKind.AfterPressing, 20));
    }

    [Fact]
    public void AfterPressing_OfASleevedShaft_NeedsBothEnds()
    {
        WorkDone[] work = [Work(WorkKind.SleeveWelded, 0), Work(WorkKind.Pressed, 5)];
        var one = Solve(work, Test("inner", 6, Place.SleeveInnerEnd));
        Assert.Equal(DemandState.Due, StateOf(one, DemandKind.AfterPressing, 9));
        var both = Solve(
            work,
            Test("inner", 6, Place.SleeveInnerEnd),
            Test("outer", 8, Place.SleeveOuterEnd)
        );
        Assert.Equal(
            "outer",
            Assert.Single(both.Demands, d => d.Kind == DemandKind.AfterPressing).AnsweredBy
        );
    }

    [Fact]
    public void AfterFirstEvent_RunAgainWithoutIt_StopsUntilMadeUp()
    {
        WorkDone[] work =
        [
            Work(WorkKind.ButtWelded, -120),
            Work(WorkKind.SleeveWelded, -100),
            Work(WorkKind.FirstEvent, 0),
            Work(WorkKind.LaterRun, 100),
        ];
        var late = Test("late", -40, s_ends);
        var butt = Test("butt", -110, s_butt);
        var ran = Solve(work, butt, late);
        Assert.Equal(DemandState.Due, StateOf(ran, DemandKind.AfterFirstEvent, 99));
        Assert.Equal(DemandState.Overdue, StateOf(ran, DemandKind.AfterFirstEvent, 101));
        Assert.Contains(ran.Findings, f => f is { Code: "ran-untested", Severity: Severity.Stop });
        var made = Solve(work, butt, late, Test("made up", 120, s_ends));
        Assert.Contains(made.Findings, f => f.Code == "tested-late");
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Stop);
    }

    [Fact]
    public void Demands_ATestThatDoesNotCount_AnswersNothing()
    {
        var result = Solve(
            [Work(WorkKind.ButtWelded, 0)],
            Tested.Penetrant("short", Hours(5), s_butt, dwell: 4)
        );
        Assert.Equal(DemandState.Due, StateOf(result, DemandKind.ButtBeforeSleeve, 9));
    }

    [Fact]
    public void Words_OfEveryDemandInEveryState_AreASentence()
    {
        foreach (var kind in Enum.GetValues<DemandKind>())
        {
            foreach (
                var (before, by) in new (double?, string?)[]
                {
                    (null, null),
                    (3, null),
                    (null, "t"),
                }
            )
            {
                foreach (var hours in new[] { -1, 1, 4 })
                {
                    var demand = new TestDemand(
                        kind,
                        "w",
                        Hours(0),
                        before is { } b ? Hours(b) : null,
                        kind == DemandKind.ButtBeforeSleeve,
                        s_butt,
                        by,
                        false
                    );
                    Assert.EndsWith(
                        ".",
                        demand.Words(Hours(hours)).ToString(),
                        StringComparison.Ordinal
                    );
                }
            }
        }
    }
}
