using Shaftwright.App.Tests.Drawings;
using Shaftwright.Findings;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;
using Shaftwright.Weld;

namespace Shaftwright.App.Tests.RouteCards;

public class RouteCardTests
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

    [Fact]
    public void Of_AnyJob_HasItsOperationsInMakingOrder() =>
        Assert.Equal(
            [
                "measure-car",
                "check-joints",
                "length",
                "walk-donors",
                "cut",
                "strength",
                "prepare-ends",
                "weld-sample",
                "set-up",
                "tack",
                "check-tacks",
                "preheat",
                "weld",
                "slow-cool",
                "temper",
                "cool",
                "true-butt",
                "crack-test-butt",
                "sleeve",
                "close-vent",
                "true-sleeved",
                "crack-test-sleeved",
                "crack-test-late",
                "fit",
                "first-run",
                "crack-test-event",
                "service",
            ],
            Card(JobDocument.Empty).Operations.Select(o => o.Code)
        );

    [Fact]
    public void Of_EmptyJob_AsksForReadingsAtTheCarFirst()
    {
        var card = Card(JobDocument.Empty);
        Assert.Equal("measure-car", card.Next.Operation);
        Assert.Equal(OperationState.NeedsReadings, StateOf(card, "measure-car"));
        Assert.Equal(OperationState.Held, StateOf(card, "weld"));
    }

    [Fact]
    public void Of_EveryCaution_StandsOnTheCardOnce()
    {
        var cautions = Card(JobDocument.Empty).Operations.SelectMany(o => o.Cautions).ToList();
        Assert.Equal(cautions.Count, cautions.Distinct().Count());
        // The hazards that nobody may leave out, each by a word that only its caution has.
        string[] hazards =
        [
            "never a jack",
            "insurance",
            "phosgene",
            "cadmium",
            "competent welder",
            "burns eyes",
            "loose clothing",
            "low-hydrogen",
            "developer cans",
            "looks cold",
            "burst under the press",
            "no proof of strength",
            "in line with the shaft",
            "vibration",
            "Earth clamp",
            "Etchants",
            "closed hollow",
        ];
        foreach (var hazard in hazards)
            Assert.Single(cautions, c => c.Contains(hazard, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_OperationsWithoutANumber_SayWhomToAsk()
    {
        var temper = Card(JobDocument.Empty).Operations.Single(o => o.Code == "temper");
        Assert.Null(temper.Answer);
        Assert.Contains("heat treater", temper.NoNumber, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_SignedInOrder_EachFreesTheNextUntilAllAreSigned()
    {
        var document = BenchWork.Tested(Samples.Example(Samples.GrassTrack), s_monday) with
        {
            Records = new(),
        };
        var order = Card(document).Operations.Select(o => o.Code).ToList();
        foreach (var code in order)
        {
            var before = Card(document).Operations.Single(o => o.Code == code);
            Assert.True(
                before.State is not (OperationState.Held or OperationState.Stopped),
                $"{code} is {before.State}: {before.Because}"
            );
            document = Sign(document, code);
            Assert.Equal(OperationState.Signed, StateOf(Card(document), code));
        }
        Assert.Equal("", Card(document).Next.Operation);
    }

    [Fact]
    public void Of_SetUpNotSigned_HoldsTackAndSaysWhatItWaitsFor()
    {
        var document = Sign(
            Samples.Example(Samples.GrassTrack) with
            {
                Records = new(),
            },
            "length",
            "cut",
            "strength",
            "prepare-ends",
            "weld-sample"
        );
        var card = Card(document);
        Assert.Equal(OperationState.Held, StateOf(card, "tack"));
        Assert.Equal("set-up", card.Next.Operation);
        var tack = card.Operations.Single(o => o.Code == "tack");
        Assert.Contains("Set up in the vee", tack.Because!.ToString(), StringComparison.Ordinal);
        // Held does not hide what is known: the tacked run-out was read.
        Assert.NotNull(tack.Answer);
    }

    [Theory]
    [InlineData("weld", "preheat")]
    [InlineData("weld", "weld-sample")]
    [InlineData("temper", "slow-cool")]
    [InlineData("true-butt", "cool")]
    [InlineData("true-butt", "temper")]
    [InlineData("true-sleeved", "close-vent")]
    public void Of_HeatAndWork_EachWaitsForWhatMustComeBefore(string later, string missing)
    {
        var document = Samples.Example(Samples.GrassTrack) with { Records = new() };
        var order = Card(document).Operations.Select(o => o.Code).ToList();
        // Everything before it signed but the one: it waits, directly or through those between.
        var between = order.SkipWhile(c => c != missing).TakeWhile(c => c != later).ToHashSet();
        document = Sign(
            document,
            [.. order.TakeWhile(c => c != later).Where(c => !between.Contains(c))]
        );
        Assert.Equal(OperationState.Held, StateOf(Card(document), later));
        // Signed from there on, it is free.
        document = Sign(document, [.. between]);
        Assert.NotEqual(OperationState.Held, StateOf(Card(document), later));
    }

    [Fact]
    public void Of_TacksWithAParallelOffset_StopsUntilTheyAreBroken()
    {
        var example = Samples.Example(Samples.GrassTrack);
        var tacks = example.Job.Weld!.Tacks;
        var offset = example.Job with
        {
            Weld = example.Job.Weld with
            {
                Tacks =
                [
                    .. tacks.Select(t =>
                        t.Piece == Shaftwright.Cut.ShaftEnd.Outer
                            ? t with
                            {
                                RunOut = Measured<Distance>.Of(0.9, Distance.Mm),
                            }
                            : t
                    ),
                ],
            },
        };
        Assert.Equal(OperationState.Stopped, StateOf(Card(new(offset, new())), "check-tacks"));
    }

    [Fact]
    public void Of_SignedThoughHeld_StaysSignedAndSaysSo()
    {
        var card = Card(Sign(JobDocument.Empty, "weld"));
        var weld = card.Operations.Single(o => o.Code == "weld");
        Assert.Equal(OperationState.Signed, weld.State);
        Assert.Contains(
            "does not stand signed",
            weld.Because!.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Of_NoLengthWorks_StopOutweighsTheSignatureAndComesNext()
    {
        var document = Sign(
            Samples.Example(Samples.Pickup),
            "measure-car",
            "check-joints",
            "length"
        );
        var card = Card(document);
        var length = card.Operations.Single(o => o.Code == "length");
        Assert.Equal(OperationState.Stopped, length.State);
        Assert.NotNull(length.SignOff);
        Assert.Equal("length", card.Next.Operation);
        Assert.Equal(OperationState.Held, StateOf(card, "prepare-ends"));
    }

    [Fact]
    public void Of_SignOffWithdrawn_HoldsAgain()
    {
        var signed = Sign(JobDocument.Empty, "weld");
        var records = signed.Records with
        {
            SignOffs =
            [
                .. signed.Records.SignOffs,
                new("w", "weld", s_monday, "", "pores") { Withdrawn = true },
            ],
        };
        var card = Card(signed with { Records = records });
        Assert.Equal(OperationState.Held, StateOf(card, "weld"));
    }

    [Fact]
    public void Of_NoSleeve_SkipsItsOperationsAndHoldsNothingByThem()
    {
        var job = Samples.Example(Samples.GrassTrack).Job;
        var document = new JobDocument(
            job with
            {
                Cut = job.Cut! with { SleeveLength = null },
            },
            new()
        );
        foreach (var code in new[] { "sleeve", "close-vent", "true-sleeved", "crack-test-sleeved" })
            Assert.Equal(OperationState.NotInThisJob, StateOf(Card(document), code));
        var late = Card(document).Operations.Single(o => o.Code == "crack-test-late");
        Assert.Contains("Crack-test the butt", late.Because!.ToString(), StringComparison.Ordinal);
        document = Sign(BenchWork.Tested(document, s_monday), "crack-test-butt");
        Assert.Equal(OperationState.NeedsReadings, StateOf(Card(document), "crack-test-late"));
        document = Sign(document, "weld", "temper");
        Assert.Equal(OperationState.Answered, StateOf(Card(document), "crack-test-late"));
    }

    [Theory]
    [InlineData(-1, false)]
    [InlineData(1, true)]
    [InlineData(null, true)] // Nobody said what time it is.
    public void Of_SignedAtATimeStillToCome_IsNotSigned(int? hours, bool counts)
    {
        var document = Sign(JobDocument.Empty, "weld");
        var result = Workflow.Evaluate(document.Job, hours is { } h ? s_monday.AddHours(h) : null);
        var weld = RouteCard.Of(document, result).Operations.Single(o => o.Code == "weld");
        Assert.Equal(counts, weld.State == OperationState.Signed);
        Assert.Equal(
            !counts,
            weld.Because?.ToString().Contains("still to come", StringComparison.Ordinal) is true
        );
    }

    [Fact]
    public void Of_ASeamThatIsNotWhatWasAsked_StopsBeforeItsCrackTest()
    {
        OperationState With(double undercut, SeamPlace place, string code) =>
            StateOf(
                Card(
                    new(
                        new Job
                        {
                            Weld = new()
                            {
                                Seams =
                                [
                                    new()
                                    {
                                        Place = place,
                                        Depth = Measured<Distance>.Of(8, Distance.Mm),
                                        Undercut = Measured<Distance>.Of(undercut, Distance.Mm),
                                    },
                                ],
                            },
                        },
                        new()
                    )
                ),
                code
            );
        Assert.Equal(OperationState.Stopped, With(1.5, SeamPlace.Butt, "crack-test-butt"));
        Assert.NotEqual(OperationState.Stopped, With(0.1, SeamPlace.Butt, "crack-test-butt"));
        Assert.NotEqual(OperationState.Stopped, With(1.5, SeamPlace.Butt, "crack-test-sleeved"));
        Assert.Equal(
            OperationState.Stopped,
            With(1.5, SeamPlace.SleeveOuterEnd, "crack-test-sleeved")
        );
    }

    [Fact]
    public void Of_WeldSigned_LateCrackTestSaysNotBeforeTwoDaysOn()
    {
        var card = Card(Sign(JobDocument.Empty, "weld"));
        Assert.Contains(
            "Not before 6 May 2026, 08:00",
            card.Operations.Single(o => o.Code == "crack-test-late").Answer!.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Of_PressedAndTurnedAgain_TheLastTurnCounts()
    {
        JobDocument With(params DialTurn[] turns) =>
            Sign(
                new(new Job { Truing = new() { Turns = turns } }, new()),
                "length",
                "cut",
                "strength",
                "prepare-ends",
                "weld-sample",
                "set-up",
                "tack",
                "check-tacks",
                "preheat",
                "weld",
                "slow-cool",
                "temper",
                "cool"
            );
        var bent = TurnOf("a", 0.6);
        var straight = TurnOf("b", 0.02);
        Assert.Equal(OperationState.Stopped, StateOf(Card(With(bent)), "true-butt"));
        Assert.Equal(OperationState.Answered, StateOf(Card(With(bent, straight)), "true-butt"));
        Assert.Equal(OperationState.Stopped, StateOf(Card(With(straight, bent)), "true-butt"));
    }

    [Theory]
    [InlineData(0.9, OperationState.Stopped, "over the limit")]
    [InlineData(0.02, OperationState.Answered, "inside the limit")]
    [InlineData(null, OperationState.NeedsReadings, "Not read since the last stroke")]
    public void Truing_AStrokeLaterThanTheTurn_HasTheLastWord(
        double? after,
        OperationState state,
        string says
    )
    {
        JobDocument With(string stroke, params DialTurn[] turns) =>
            Sign(
                new(
                    new Job
                    {
                        Truing = new() { Turns = turns },
                        Press = new()
                        {
                            Tempered = true,
                            Strokes =
                            [
                                new()
                                {
                                    Id = "p",
                                    Moment = Moment.ButtWelded,
                                    Turn = stroke,
                                    RunOutAfter = after is { } mm
                                        ? Measured<Distance>.Of(mm, Distance.Mm)
                                        : null,
                                },
                            ],
                        },
                    },
                    new()
                ),
                [
                    .. Card(JobDocument.Empty)
                        .Operations.TakeWhile(o => o.Code != "true-butt")
                        .Select(o => o.Code),
                ]
            );
        var inside = TurnOf("a", 0.02);
        foreach (var stroke in new[] { "a", "" })
        {
            var job = With(stroke, inside);
            var butt = Card(job).Operations.Single(o => o.Code == "true-butt");
            Assert.Equal(state, butt.State);
            Assert.Contains(says, $"{butt.Answer} {butt.Because}", StringComparison.Ordinal);
            Assert.Contains(
                says,
                StageAnswers.Truing(Workflow.Evaluate(job.Job))!.ToString(),
                StringComparison.Ordinal
            );
            Assert.Equal(
                after == 0.9,
                Workflow.Evaluate(job.Job).Press!.Findings.Any(f => f.Severity == Severity.Stop)
            );
            // No signature stands in for the dial.
            if (after != 0.02)
                Assert.Equal(state, StateOf(Card(Sign(job, "true-butt")), "true-butt"));
        }
        // Turned again since: the turn says it.
        var again = TurnOf("b", 0.02);
        Assert.Equal(OperationState.Answered, StateOf(Card(With("a", inside, again)), "true-butt"));
        Assert.Equal(
            OperationState.Answered,
            StateOf(Card(With("", inside, again with { AfterStroke = 1 })), "true-butt")
        );
    }

    [Fact]
    public void Truing_WithThePressKnown_SaysTheNextStrokeUntilItIsStraightOrACrackShows()
    {
        var press = new PressInput
        {
            Tempered = true,
            Diameter = Measured<Distance>.Of(26, Distance.Mm),
            Length = Measured<Distance>.Of(560, Distance.Mm),
        };
        Operation Of(PressInput input, double runOut) =>
            Card(
                new(
                    new Job
                    {
                        Truing = new() { Turns = [TurnOf("a", runOut)] },
                        Press = input,
                    },
                    new JobRecords()
                )
            )
                .Operations.Single(o => o.Code == "true-butt");
        var bent = Of(press, 0.6);
        Assert.Contains("past contact", bent.Answer!.ToString(), StringComparison.Ordinal);
        Assert.Contains(bent.Findings, f => f.Code == "press-promise");
        Assert.DoesNotContain(
            "press",
            Of(press, 0.02).Answer!.ToString(),
            StringComparison.Ordinal
        );
        Assert.Contains(
            Of(press with { Tempered = null }, 0.6).Findings,
            f => f.Code == "press-untempered"
        );
        var cracked = press with
        {
            Strokes =
            [
                new PressStroke
                {
                    Id = "p",
                    Moment = Moment.ButtWelded,
                    CrackSign = true,
                },
            ],
        };
        Assert.Equal(OperationState.Stopped, Of(cracked, 0.02).State);
    }

    [Fact]
    public void Of_EveryFindingOfTheJob_StandsUnderAnOperation()
    {
        foreach (var example in new[] { Samples.GrassTrack, Samples.Pickup })
        {
            var document = Samples.Example(example);
            var result = Workflow.Evaluate(document.Job);
            var onCard = RouteCard
                .Of(document, result)
                .Operations.SelectMany(o => o.Findings)
                .Select(f => f.Code + f.Text)
                .ToHashSet();
            Assert.All(
                result.Findings.Where(f => f.Stage != Stage.Truing),
                f => Assert.Contains(f.Code + f.Text, onCard)
            );
        }
    }

    [Fact]
    public void SignOff_GivenForOtherNumbers_NoLongerCounts()
    {
        var job = new JobDocument(
            new Job { Truing = new() { Turns = [TurnOf("a", 0.08)] } },
            new JobRecords()
        );
        var said = Card(job)
            .Operations.Single(o => o.Code == "true-butt")
            .Answer!.In(Display.Metric);
        Assert.Matches("[0-9]", said);
        var signed = Sign(job, "true-butt");
        signed = signed with
        {
            Records = signed.Records with
            {
                SignOffs = [signed.Records.SignOffs[0] with { Said = said }],
            },
        };
        Assert.Equal(OperationState.Signed, StateOf(Card(signed), "true-butt"));

        var again = signed with { Job = new() { Truing = new() { Turns = [TurnOf("b", 0.06)] } } };
        var operation = Card(again).Operations.Single(o => o.Code == "true-butt");
        Assert.Equal(OperationState.Answered, operation.State);
        Assert.True(operation.SignedForOther);
        Assert.Contains(said, operation.Because!.In(Display.Metric), StringComparison.Ordinal);
        Assert.Contains(
            operation.Title,
            Card(again)
                .Operations.Single(o => o.Code == "crack-test-butt")
                .Because!.In(Display.Metric),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("Make it 431.0 mm ± 1.2 mm.", "To make: 431.0 mm, give or take 1.2 mm.", true)]
    [InlineData("Make it 431.0 mm ± 1.2 mm.", "Make it 431.1 mm ± 1.2 mm.", false)]
    [InlineData("Make it 431.0 mm.", "Make it 431.0 mm ± 1.2 mm.", false)]
    [InlineData("Make it 431.0 mm.", null, false)]
    [InlineData("", "Make it 431.0 mm.", true)]
    public void StandsFor_CountsNumbersNotWords(string said, string? now, bool stands) =>
        Assert.Equal(
            stands,
            new SignOff("s", "length", s_monday, "R.", "") { Said = said }.StandsFor(
                now is null ? null : Sentence.Plain(now)
            )
        );

    [Fact]
    public void States_EachHasAWordAndAShapeOfItsOwn()
    {
        var states = Enum.GetValues<OperationState>();
        Assert.Equal(states.Length, states.Select(OperationStates.WordOf).Distinct().Count());
        Assert.Equal(states.Length, states.Select(OperationStates.GlyphOf).Distinct().Count());
        Assert.Equal(states.Length, states.Select(OperationStates.PathOf).Distinct().Count());
    }

    private static DialTurn TurnOf(string id, double runOut) =>
        new()
        {
            Id = id,
            Moment = Moment.ButtWelded,
            Readings =
            [
                .. Enumerable
                    .Range(0, 12)
                    .Select(i => new DialReading
                    {
                        Angle = Measured<Angle>.Of(30 * i, Angle.Degree),
                        Dial = Measured<Distance>.Of(
                            Math.Round(runOut / 2 * Math.Cos(Math.PI / 6 * i), 4),
                            Distance.Mm
                        ),
                    }),
            ],
        };

    private static RouteCard Card(JobDocument document) =>
        RouteCard.Of(document, Workflow.Evaluate(document.Job));

    private static OperationState StateOf(RouteCard card, string code) =>
        card.Operations.Single(o => o.Code == code).State;

    private static JobDocument Sign(JobDocument document, params string[] codes) =>
        document with
        {
            Records = document.Records with
            {
                SignOffs =
                [
                    .. document.Records.SignOffs,
                    .. codes.Select(c => new SignOff("s-" + c, c, s_monday, "R.", "")),
                ],
            },
        };
}
