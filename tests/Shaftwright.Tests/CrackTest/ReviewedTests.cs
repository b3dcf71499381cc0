using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;
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

    private static readonly MadeShaft s_made = new(
        450,
        [new(ZoneKind.Spline, 0, 30, 26, 26, 24), new(ZoneKind.Plain, 30, 450, 25, 25)],
        [],
        216.5,
        20,
        null,
        null,
        null
    );

    [Theory]
    [InlineData("300 mm ± 0", true)] // Round, small, on plain bar.
    [InlineData("240 mm ± 0", true)] // 3.5 mm beyond the heat, 2 mm to its edge.
    [InlineData("238 mm ± 0", false)] // Its edge reaches into the heat of the butt.
    [InlineData("240 mm ± 3 mm", false)] // It may.
    [InlineData("31 mm ± 0", false)] // Its edge reaches into the spline.
    [InlineData(null, false)] // Nobody noted where.
    public void MarkOnTheBar_IsAcceptedOnlyWhereNoWeldAndNoSplineCanBe(string? at, bool accepted)
    {
        var mark = Tested.Mark("m", Place.Bar, "4", "3") with
        {
            Position = at is null ? null : Tested.Of<Distance>(at),
        };
        var result = CrackTestSolver.Solve(
            new() { Tests = [Tested.Penetrant("a", Tested.After(0), [Place.Bar], marks: mark)] },
            new() { Made = s_made }
        );
        Assert.Equal(!accepted, Assert.Single(result.Marks).Stops);
    }

    [Theory]
    [InlineData(false, 60)] // Nobody wrote the butt down.
    [InlineData(true, 60)] // Or only when the sleeve was on.
    public void Sleeve_OverAButtThatNobodyWroteDown_AsksForItsTest(bool noted, double sleevedAt)
    {
        var input = new CrackTestInput
        {
            Work =
            [
                Tested.Work(WorkKind.SleeveWelded, Tested.After(sleevedAt)),
                .. noted ? new[] { Tested.Work(WorkKind.ButtWelded, Tested.After(sleevedAt)) } : [],
            ],
        };
        DemandKind[] Missed(CrackTestInput asked) =>
            [
                .. Tested
                    .Solve(asked)
                    .Demands.Where(d => d is { Hidden: true, AnsweredBy: null })
                    .Select(d => d.Kind),
            ];
        Assert.Equal([DemandKind.ButtBeforeSleeve], Missed(input));
        Assert.Empty(
            Missed(input with { Tests = [Tested.Penetrant("a", Tested.After(0), s_butt)] })
        );
    }
}
