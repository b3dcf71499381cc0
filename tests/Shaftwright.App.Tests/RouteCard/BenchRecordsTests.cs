using Shaftwright.CrackTest;
using Shaftwright.Findings;
using Shaftwright.Fit;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.App.Tests.RouteCards;

/// <summary>A signature alone opens nothing that a test on record must open.</summary>
public sealed class BenchRecordsTests
{
    private static readonly DateTimeOffset s_monday = new(
        2026,
        5,
        4,
        8,
        0,
        0,
        TimeSpan.FromHours(2)
    );

    private static readonly OperationState[] s_owed =
    [
        OperationState.NeedsReadings,
        OperationState.Stopped,
    ];

    private static readonly Place[] s_ends = [Place.SleeveInnerEnd, Place.SleeveOuterEnd];

    private static DateTimeOffset Hours(double hours) => s_monday.AddHours(hours);

    private static JobDocument Signed(
        JobDocument document,
        params (string Code, double Hours)[] signs
    ) =>
        document with
        {
            Records = document.Records with
            {
                SignOffs =
                [
                    .. document.Records.SignOffs,
                    .. signs.Select(s => new SignOff(
                        $"{s.Code}{s.Hours}",
                        s.Code,
                        Hours(s.Hours),
                        "R.",
                        ""
                    )),
                ],
            },
        };

    private static Operation On(JobDocument document, string code) =>
        RouteCard
            .Of(document, Workflow.Evaluate(document.Job))
            .Operations.Single(o => o.Code == code);

    /// <summary>Made as far as the butt, which was welded at 0.</summary>
    private static JobDocument ToTheButt { get; } =
        Signed(
            JobDocument.Empty,
            [
                .. RouteCard
                    .Of(JobDocument.Empty, Workflow.Evaluate(new()))
                    .Operations.TakeWhile(o => o.Code != "crack-test-butt")
                    .Select(o => (o.Code, 0.0)),
            ]
        );

    private static JobDocument Tested(JobDocument document, double hours, params Place[] places) =>
        BenchWork.With(document, [BenchWork.Looked($"t{hours}", Hours(hours), places)]);

    private static JobDocument Marked(JobDocument document, bool? crack = null)
    {
        var run = BenchWork.Looked("marked", Hours(4), Place.ButtWeld) with
        {
            Indications =
            [
                new()
                {
                    Id = "m",
                    Place = Place.ButtWeld,
                    Length = Measured<Distance>.Of(1, Distance.Mm),
                    Width = Measured<Distance>.Of(0.8, Distance.Mm),
                    Crack = crack,
                },
            ],
        };
        return BenchWork.With(document, [run]);
    }

    [Fact]
    public void Sleeve_ButtSignedWithoutATest_IsHeld()
    {
        var signed = Signed(ToTheButt, ("crack-test-butt", 5));
        var butt = On(signed, "crack-test-butt");
        Assert.Equal(OperationState.NeedsReadings, butt.State);
        Assert.Contains(
            "record says otherwise",
            butt.Because!.ToString(),
            StringComparison.Ordinal
        );
        Assert.Equal(OperationState.Held, On(signed, "sleeve").State);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)] // What was noted of the press at the butt says nothing of the truing after the sleeve.
    public void Sleeved_TruedAfterItsTest_IsToBeTestedAgain(bool pressedAtTheButt)
    {
        var job = Signed(
            Tested(ToTheButt, 4, Place.ButtWeld),
            ("crack-test-butt", 5),
            ("sleeve", 10),
            ("close-vent", 10)
        );
        job = Signed(Tested(job, 12, s_ends), ("true-sleeved", 14), ("crack-test-sleeved", 15));
        if (pressedAtTheButt)
            job = BenchWork.With(
                job,
                [],
                new WorkDone
                {
                    Id = "p",
                    Kind = WorkKind.Pressed,
                    At = Hours(1),
                }
            );
        Assert.Equal(OperationState.NeedsReadings, On(job, "crack-test-sleeved").State);
        var again = Tested(job, 16, s_ends);
        Assert.Equal(OperationState.Signed, On(again, "crack-test-sleeved").State);
    }

    [Fact]
    public void Sleeve_ButtTestedCleanAndSigned_IsFree()
    {
        var tested = Tested(ToTheButt, 4, Place.ButtWeld);
        Assert.Equal(OperationState.Answered, On(tested, "crack-test-butt").State);
        Assert.Equal(OperationState.Held, On(tested, "sleeve").State);
        var signed = Signed(tested, ("crack-test-butt", 5));
        Assert.Equal(OperationState.Signed, On(signed, "crack-test-butt").State);
        Assert.Equal(OperationState.ToDo, On(signed, "sleeve").State);
    }

    [Fact]
    public void Sleeve_PressedAfterTheTest_IsHeldAgain()
    {
        var signed = Signed(Tested(ToTheButt, 4, Place.ButtWeld), ("crack-test-butt", 5));
        signed = BenchWork.With(
            signed,
            [],
            new WorkDone
            {
                Id = "p",
                Kind = WorkKind.Pressed,
                At = Hours(6),
            }
        );
        Assert.Equal(OperationState.Held, On(signed, "sleeve").State);
        Assert.Contains(
            "after the truing of 4 May 2026, 14:00",
            On(signed, "crack-test-butt").Because!.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Butt_TestedBeforeTheTruingWasSigned_IsAskedForAgain()
    {
        var trued = Signed(
            ToTheButt with
            {
                Records = new()
                {
                    SignOffs =
                    [
                        .. ToTheButt.Records.SignOffs.Where(s => s.Operation != "true-butt"),
                    ],
                },
            },
            ("true-butt", 6)
        );
        Assert.Equal(
            OperationState.NeedsReadings,
            On(Tested(trued, 4, Place.ButtWeld), "crack-test-butt").State
        );
        Assert.Equal(
            OperationState.Answered,
            On(Tested(trued, 7, Place.ButtWeld), "crack-test-butt").State
        );
    }

    [Theory]
    [InlineData(null)]
    [InlineData(true)]
    public void CrackTest_AMarkAtTheWeld_StopsTheJobWhateverIsSigned(bool? crack)
    {
        var stopped = Signed(Marked(ToTheButt, crack), ("crack-test-butt", 5));
        Assert.Equal(OperationState.Stopped, On(stopped, "crack-test-butt").State);
        Assert.Equal(OperationState.Held, On(stopped, "sleeve").State);
        var card = RouteCard.Of(stopped, Workflow.Evaluate(stopped.Job));
        Assert.Equal("crack-test-butt", card.Next.Operation);
        // Dressed and tested again: a mark is dealt with, a crack never.
        var again = Tested(stopped, 9, Place.ButtWeld);
        again = again with
        {
            Job = again.Job with
            {
                CrackTest = again.Job.CrackTest! with
                {
                    Decisions =
                    [
                        new()
                        {
                            Id = "d",
                            Indication = "m",
                            What = MarkDecision.Dressed,
                            At = Hours(6),
                        },
                    ],
                },
            },
        };
        Assert.Equal(
            crack == true ? OperationState.Stopped : OperationState.Signed,
            On(again, "crack-test-butt").State
        );
    }

    [Fact]
    public void Late_SignedTooEarly_StaysOpenUntilATestTwoDaysOn()
    {
        var sleeved = Tested(
            Signed(
                Tested(ToTheButt, 4, Place.ButtWeld),
                ("crack-test-butt", 5),
                ("sleeve", 10),
                ("close-vent", 10),
                ("true-sleeved", 11)
            ),
            12,
            s_ends
        );
        sleeved = Signed(sleeved, ("crack-test-sleeved", 13), ("crack-test-late", 14));
        var early = On(sleeved, "crack-test-late");
        Assert.Equal(OperationState.NeedsReadings, early.State);
        // Two days after the sleeve was signed for, Monday 18:00.
        Assert.Contains("6 May 2026, 18:00", early.Because!.ToString(), StringComparison.Ordinal);
        Assert.Equal(OperationState.Held, On(sleeved, "fit").State);
        Assert.Equal(
            OperationState.NeedsReadings,
            On(Tested(sleeved, 57.9, s_ends), "crack-test-late").State
        );
        // Begun after the two days, not only looked at after them.
        Assert.Equal(
            OperationState.NeedsReadings,
            On(Tested(sleeved, 58.1, s_ends), "crack-test-late").State
        );
        var waited = Tested(sleeved, 59, s_ends);
        Assert.Equal(OperationState.Signed, On(waited, "crack-test-late").State);
        Assert.Equal(OperationState.ToDo, On(waited, "fit").State);
    }

    [Fact]
    public void Sleeved_ATestFromBeforeTheSleeve_DoesNotCount()
    {
        var document = Tested(Signed(ToTheButt, ("sleeve", 10)), 9, s_ends);
        Assert.Contains(
            "welded since",
            On(Signed(document, ("crack-test-sleeved", 11)), "crack-test-sleeved")
                .Because!.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Butt_SignedBeforeTestsWereKept_StandsByWordAndSaysSo()
    {
        var old = Signed(ToTheButt, ("crack-test-butt", 5), ("sleeve", 10));
        var butt = On(old, "crack-test-butt");
        Assert.Equal(OperationState.Signed, butt.State);
        Assert.Contains("no test is on record", butt.Answer!.ToString(), StringComparison.Ordinal);
        var never = Signed(ToTheButt, ("sleeve", 10));
        Assert.Equal(OperationState.Stopped, On(never, "crack-test-butt").State);
    }

    [Fact]
    public void Butt_AWordThatProvesNothing_LeavesItsTestOwed()
    {
        void Owed(JobDocument document)
        {
            var card = RouteCard.Of(document, Workflow.Evaluate(document.Job, Hours(1000)));
            var butt = card.Operations.Single(o => o.Code == "crack-test-butt");
            Assert.Contains(butt.State, s_owed);
            Assert.DoesNotContain("Signed for before", $"{butt.Answer}", StringComparison.Ordinal);
        }
        var old = Signed(ToTheButt, ("crack-test-butt", 5), ("sleeve", 10));
        JobDocument Stroke(double? hours) =>
            old with
            {
                Job = new()
                {
                    Press = new()
                    {
                        Strokes =
                        [
                            new()
                            {
                                Id = "p",
                                Moment = Moment.ButtWelded,
                                At = hours is { } h ? Hours(h) : null,
                            },
                        ],
                    },
                },
            };
        Owed(Stroke(6));
        Owed(Stroke(null));
        foreach (var code in new[] { "weld", "temper", "true-butt" })
            Owed(Signed(old, (code, 6)));
        Owed(Signed(ToTheButt, ("crack-test-butt", 5), ("sleeve", 40000)));
        Owed(Signed(ToTheButt, ("crack-test-butt", 39000), ("sleeve", 40000)));
        Owed(
            BenchWork.With(
                old,
                [],
                new WorkDone
                {
                    Id = "w",
                    Kind = WorkKind.ButtWelded,
                    At = Hours(0),
                }
            )
        );
        // Pressed before the word was given: it stands.
        Assert.Equal(OperationState.Signed, On(Stroke(4), "crack-test-butt").State);
    }

    [Fact]
    public void Butt_StandingByWord_StillSaysThatNoTestSawIt()
    {
        var old = Signed(ToTheButt, ("crack-test-butt", 5), ("sleeve", 10));
        Assert.Contains(
            RouteCard.Of(old, Workflow.Evaluate(old.Job)).Operations.SelectMany(o => o.Findings),
            f => f is { Code: "hidden-untested", Severity: Severity.Caution }
        );
    }

    [Fact]
    public void Event_NotedAndTested_FreesTheService()
    {
        var none = On(ToTheButt, "crack-test-event");
        Assert.Equal(OperationState.Held, none.State);
        var ran = Signed(
            BenchWork.Tested(ToTheButt, s_monday),
            ("sleeve", 0),
            ("fit", 50),
            ("first-run", 51)
        );
        var tested = On(ran, "crack-test-event");
        Assert.Equal(OperationState.Answered, tested.State);
        Assert.Contains("6 May 2026, 21:00", tested.Answer!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_StepsOpen_HoldTheFirstRunThoughSigned()
    {
        FitDone[] done =
        [
            .. Enum.GetValues<FitStep>()
                .Where(s => s is not (FitStep.ProofTwist or FitStep.FirstRun))
                .Select(s => new FitDone
                {
                    Id = s.ToString(),
                    Step = s,
                    At = Hours(70 + (int)s),
                    PullHeld = true,
                    FreeAtDroop = true,
                    FreeAtLock = true,
                    LeftIn = Measured<Distance>.Of(9, Distance.Mm),
                    LeftOut = Measured<Distance>.Of(9, Distance.Mm),
                }),
        ];
        JobDocument Fitted(params FitDone[] steps) =>
            Signed(
                JobDocument.Empty with
                {
                    Job = new() { Fit = new() { Done = steps } },
                },
                ("fit", 90)
            );
        var open = On(Fitted(done[..^1]), "fit");
        Assert.Equal(OperationState.NeedsReadings, open.State);
        Assert.Contains("gearbox", open.Because!.ToString(), StringComparison.Ordinal);
        Assert.Equal(OperationState.Signed, On(Fitted(done), "fit").State);
        var failed = done.Select(d => d with { PullHeld = false }).ToArray();
        Assert.Equal(OperationState.Stopped, On(Fitted(failed), "fit").State);
    }
}
