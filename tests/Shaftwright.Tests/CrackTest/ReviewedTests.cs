using Shaftwright.CrackTest;
using Shaftwright.Weld;

namespace Shaftwright.Tests.CrackTest;

/// <summary>Records on which an independent review showed a place called clean, or a test owed called done, when it was not.</summary>
public sealed class ReviewedTests
{
    private static readonly Place[] s_butt = [Place.ButtWeld];

    private static CrackTestResult MarkedAndDressed(double dressedAt, double? retestAt) =>
        Tested.Solve(
            new()
            {
                Tests =
                [
                    Tested.Penetrant(
                        "a",
                        Tested.After(0),
                        s_butt,
                        marks: Tested.Mark("m", Place.ButtWeld, "4", "0.5")
                    ),
                    .. retestAt is { } at
                        ? new[] { Tested.Penetrant("b", Tested.After(at), s_butt) }
                        : [],
                ],
                Decisions =
                [
                    new()
                    {
                        Id = "d",
                        Indication = "m",
                        What = MarkDecision.Dressed,
                        At = Tested.After(dressedAt),
                    },
                ],
            }
        );

    [Theory]
    [InlineData(30, null, SiteState.ToRetest)] // Seen to between the first look and the last of the test that found it.
    [InlineData(-1440, null, SiteState.ToRetest)] // Dated the day before.
    [InlineData(60, 50.0, SiteState.ToRetest)] // The penetrant was on before the dressing.
    [InlineData(-1440, 20.0, SiteState.ToRetest)] // Begun before the mark was found.
    [InlineData(60, 61.0, SiteState.Clean)]
    public void Mark_IsClearedOnlyByATestBegunAfterItWasFoundAndWorkedOn(
        double dressedAt,
        double? retestAt,
        SiteState state
    ) => Assert.Equal(state, Assert.Single(MarkedAndDressed(dressedAt, retestAt).Sites).State);

    [Theory]
    [InlineData(WorkKind.Pressed, 20, 0, false)] // Pressed in the middle of the test.
    [InlineData(WorkKind.Pressed, 20, 21, true)]
    [InlineData(WorkKind.ButtWelded, 0, 2879, false)] // The two days end in the middle of the test.
    [InlineData(WorkKind.ButtWelded, 0, 2881, true)]
    public void Demand_IsAnsweredOnlyByATestBegunAfterTheWorkItAsksFor(
        WorkKind kind,
        double workedAt,
        double testedAt,
        bool answered
    )
    {
        var result = Tested.Solve(
            new()
            {
                Work = [Tested.Work(kind, Tested.After(workedAt))],
                Tests = [Tested.Penetrant("a", Tested.After(testedAt), s_butt)],
            }
        );
        var asked = kind == WorkKind.Pressed ? DemandKind.AfterPressing : DemandKind.AfterTwoDays;
        Assert.Equal(answered ? "a" : null, result.Demands.Single(d => d.Kind == asked).AnsweredBy);
    }

    [Theory]
    [InlineData(FillerKind.Austenitic, SiteState.NotTested)]
    [InlineData(FillerKind.Ferritic, SiteState.Clean)]
    public void MagneticTest_OfAWeldKnownToBeAustenitic_ClearsNothing(
        FillerKind filler,
        SiteState state
    )
    {
        var result = Workflow
            .Evaluate(
                new Job
                {
                    Weld = new() { Filler = new() { Kind = filler } },
                    CrackTest = new()
                    {
                        Work = [Tested.Work(WorkKind.ButtWelded, Tested.After(-60))],
                        Tests = [Tested.Magnetic("a", Tested.After(0), s_butt)],
                    },
                }
            )
            .CrackTest!;
        Assert.Equal(state, result.Sites.Single(s => s.Place == Place.ButtWeld).State);
    }
}
