using Shaftwright.CrackTest;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Truing.Pressing;

public sealed class PressSolverTests
{
    private static Measured<Angle> Degrees(double d) => Measured<Angle>.Of(d, Angle.Degree);

    /// <summary>A turn of eight readings of a shaft that is off its axis.</summary>
    private static DialTurn Turn(
        string id,
        double runOut,
        double high,
        double station = 300,
        Moment moment = Moment.ButtWelded,
        double oval = 0
    ) =>
        new()
        {
            Id = id,
            Moment = moment,
            Support = Support.Centres,
            FirstSupportAt = Mm(0),
            SecondSupportAt = Mm(600),
            Station = Mm(station),
            Readings =
            [
                .. Enumerable
                    .Range(0, 8)
                    .Select(i => new DialReading
                    {
                        Angle = Degrees(45 * i),
                        Dial = Mm(
                            Math.Round(
                                runOut / 2 * Math.Cos((45 * i - high) * Math.PI / 180)
                                    + oval / 2 * Math.Cos(2 * 45 * i * Math.PI / 180),
                                3
                            )
                        ),
                    }),
            ],
        };

    private static PressInput Bar(params PressStroke[] strokes) =>
        new()
        {
            Tempered = true,
            Diameter = Mm(25),
            Length = Mm(600),
            Yield = Measured<Stress>.Of(500, Stress.MPa, 5),
            LongestSpan = Mm(300),
            Strokes = strokes,
        };

    private static PressStroke Made(
        string id,
        double depth,
        double before,
        double high,
        double? after,
        double? highAfter = null
    ) =>
        new()
        {
            Id = id,
            Moment = Moment.ButtWelded,
            RamAt = Mm(300),
            FirstBlockAt = Mm(150),
            SecondBlockAt = Mm(450),
            Up = Degrees(high),
            Depth = Mm(depth),
            RunOutBefore = Mm(before),
            HighBefore = Degrees(high),
            RunOutAfter = after is { } a ? Mm(a) : null,
            HighAfter = highAfter is { } h ? Degrees(h) : null,
            Turn = "t",
        };

    private static PressResult Ask(PressInput press, params DialTurn[] turns) =>
        Workflow
            .Evaluate(
                new Job
                {
                    Press = press,
                    Truing = new() { Turns = turns },
                }
            )
            .Press!;

    private static Finding Says(PressResult result, string code, Severity severity) =>
        Assert.Single(result.Findings, f => f.Code == code && f.Severity == severity);

    [Fact]
    public void Solve_BarOfKnownYield_PressesTheHighSideShortOfTheTextbookStroke()
    {
        var result = Ask(Bar(), Turn("t", 1.0, 90));
        var plan = result.Plan!;

        Assert.Equal(PressStep.Press, result.Step);
        Assert.Equal(90, plan.Up * 180 / Math.PI, 0.5);
        Assert.Equal((300, 150, 450), (plan.RamAt, plan.FirstBlockAt, plan.SecondBlockAt));
        // Seen on 600 mm centres a bend in 300 mm of span shows more than twice what it is under the ram.
        var beam = new PressBeam(
            [new(0, 600, new RoundBar(25, 500, hardening: PressLimits.Hardening))],
            150,
            450,
            300,
            new DialPlace(300, 0, 600)
        );
        var textbook = Enumerable
            .Range(0, 4000)
            .Select(i => beam.At(beam.YieldLoad * (1 + i / 4000.0)))
            .First(r => r.Seen >= 0.5);
        Assert.InRange(plan.Depth, 0.75 * textbook.Depth, 1.02 * textbook.Depth);
        Assert.True(plan.ChanceTooFar <= PressLimits.ChanceTooFar + 1e-9);
        Assert.InRange(plan.SpringsBack, 0.6 * plan.Depth, plan.Depth);
        Assert.True(plan.Seen.High <= 0.55 && plan.Seen.Low >= 0);
        Says(result, "press-promise", Severity.Note);
    }

    [Fact]
    public void Solve_UnknownSteel_BeginsShorterThanAKnownOneOfTheLowEnd()
    {
        var known = Ask(
            Bar() with
            {
                Yield = Measured<Stress>.Of(300, Stress.MPa, 10),
            },
            Turn("t", 1.0, 0)
        );
        var unknown = Ask(Bar() with { Yield = null }, Turn("t", 1.0, 0));
        Assert.True(unknown.Plan!.Depth <= 1.1 * known.Plan!.Depth);
        Says(unknown, "press-wide-yield", Severity.Note);
    }

    [Fact]
    public void Solve_AfterAStrokeThatLeftNothing_GoesDeeperAndExpectsAHarderBar()
    {
        var first = Ask(Bar() with { Yield = null }, Turn("t", 1.0, 0));
        var press = Bar(Made("a", Math.Round(first.Plan!.Depth, 2), 1.0, 0, 1.0, 0)) with
        {
            Yield = null,
        };
        var second = Ask(press, Turn("t", 1.0, 0));
        Assert.True(second.Plan!.Depth > first.Plan.Depth + 0.05);
        Assert.True(second.Learned!.Now.Low > first.Learned!.Now.Low + 20);
        Assert.Equal(1, second.Learned.Strokes);
    }

    [Fact]
    public void Solve_AStrokeThatMovedMoreThanForeseen_LearnsASofterBar()
    {
        var before = Ask(Bar() with { Yield = null }, Turn("t", 1.6, 0));
        var press = Bar(Made("a", Math.Round(before.Plan!.Depth, 2), 1.6, 0, 0.7, 0)) with
        {
            Yield = null,
        };
        var after = Ask(press, Turn("t", 1.6, 0));
        Assert.True(after.Learned!.Now.High < 0.8 * before.Learned!.Now.High);
        Assert.Equal(0.45, after.Strokes[0].Seen!.Value, 1e-9);
        Assert.Equal(0.7, after.RunOut!.Value, 1e-9);
    }

    [Fact]
    public void Solve_AStrokeThatWentTooFar_TurnsTheShaftAndPressesLess()
    {
        var press = Bar(Made("a", 2.5, 0.8, 0, 0.3, 180));
        var result = Ask(press, Turn("t", 0.8, 0));
        Assert.True(result.Plan!.Turned);
        Assert.Equal(180, result.Plan.Up * 180 / Math.PI, 0.5);
        Assert.True(result.Plan.Depth < 2.2);
        Assert.True(result.Strokes[0].WentTooFar);
        Says(result, "press-went-too-far", Severity.Caution);
    }

    [Fact]
    public void Solve_ATurnTakenSince_OutweighsWhatWasTypedWithTheStroke()
    {
        var result = Ask(
            Bar(Made("a", 2.2, 0.8, 0, 0.6, 0)),
            Turn("t", 0.8, 0),
            Turn("u", 0.5, 10)
        );
        Assert.Equal(0.5, result.RunOut!.Value, 0.01);
        Assert.Equal(10, result.Plan!.Up * 180 / Math.PI, 1);
        // What the stroke itself did stays what was typed with it.
        Assert.Equal(0.1, result.Strokes[0].Seen!.Value, 1e-9);
    }

    [Fact]
    public void Solve_ACorrectedStroke_CountsAsCorrected()
    {
        var wrong = Made("a", 5.2, 0.8, 0, 0.6, 0);
        var right = Made("b", 2.2, 0.8, 0, 0.6, 0) with { Corrects = "a" };
        var once = Ask(Bar(Made("a", 2.2, 0.8, 0, 0.6, 0)), Turn("t", 0.8, 0));
        var put = Ask(Bar(wrong, right), Turn("t", 0.8, 0));
        var gone = Ask(
            Bar(
                wrong,
                new PressStroke
                {
                    Id = "c",
                    Corrects = "a",
                    Withdrawn = true,
                }
            ),
            Turn("t", 0.8, 0)
        );
        Assert.Equal(once.Plan!.Depth, put.Plan!.Depth, 1e-12);
        Assert.Empty(gone.Strokes);
        Assert.Equal(0.8, gone.RunOut!.Value, 0.01);
    }

    [Fact]
    public void Solve_StrokeWithoutReadingAfter_AsksForTheDial()
    {
        var result = Ask(Bar(Made("a", 2.2, 0.8, 0, null)), Turn("t", 0.8, 0));
        Assert.Equal(PressStep.NotKnown, result.Step);
        Says(result, "press-read-after", Severity.Caution);
        Assert.Equal(
            PressStep.Press,
            Ask(Bar(Made("a", 2.2, 0.8, 0, null)), Turn("t", 0.8, 0), Turn("u", 0.6, 0)).Step
        );
    }

    [Theory]
    [InlineData(false)]
    [InlineData(null)]
    public void Solve_WeldNotTemperedOrNotKnownToBe_DoesNotPress(bool? tempered)
    {
        var result = Ask(Bar() with { Tempered = tempered }, Turn("t", 0.8, 0));
        Assert.Equal(PressStep.DoNotPress, result.Step);
        Assert.Null(result.Plan);
        Says(result, "press-untempered", Severity.Stop);
        // Before any weld there is nothing to temper.
        Assert.Equal(
            PressStep.Press,
            Ask(
                Bar() with
                {
                    Tempered = tempered,
                },
                Turn("t", 0.8, 0, moment: Moment.BeforeWelding)
            ).Step
        );
    }

    private static WorkDone Work(WorkKind kind, double hours) =>
        new()
        {
            Id = $"{kind}-{hours}",
            Kind = kind,
            At = new DateTimeOffset(2026, 5, 4, 8, 0, 0, TimeSpan.Zero).AddHours(hours),
        };

    private static PressResult OnRecord(
        CrackTestInput record,
        PressInput press,
        Moment moment = Moment.ButtWelded
    ) =>
        Workflow
            .Evaluate(
                new Job
                {
                    Press = press,
                    Truing = new() { Turns = [Turn("t", 0.8, 0, moment: moment)] },
                    CrackTest = record,
                }
            )
            .Press!;

    [Fact]
    public void Press_OfAShaftThatARecordForbids_IsRefused()
    {
        Assert.Equal(
            PressStep.Press,
            OnRecord(
                new() { Work = [Work(WorkKind.ButtWelded, 0), Work(WorkKind.Tempered, 5)] },
                Bar()
            ).Step
        );
        var cracked = OnRecord(
            new()
            {
                Tests =
                [
                    new()
                    {
                        Id = "a",
                        Indications =
                        [
                            new()
                            {
                                Id = "m",
                                Place = Place.ButtWeld,
                                Crack = true,
                            },
                        ],
                    },
                ],
            },
            Bar()
        );
        Assert.Equal(PressStep.DoNotPress, cracked.Step);
        Says(cracked, "press-mark-stops", Severity.Stop);
        // Tempered once, and welded again since.
        var sleeved = OnRecord(
            new()
            {
                Work =
                [
                    Work(WorkKind.ButtWelded, 0),
                    Work(WorkKind.Tempered, 5),
                    Work(WorkKind.SleeveWelded, 9),
                ],
            },
            Bar(),
            Moment.Sleeved
        );
        Assert.Equal(PressStep.DoNotPress, sleeved.Step);
        Says(sleeved, "press-untempered", Severity.Stop);
        // The turn says that nothing is welded; the record knows better.
        var said = OnRecord(
            new() { Work = [Work(WorkKind.ButtWelded, 0)] },
            Bar() with
            {
                Tempered = null,
            },
            Moment.BeforeWelding
        );
        Assert.Equal(PressStep.DoNotPress, said.Step);
    }

    [Fact]
    public void Solve_WhatMustNotBePressed_IsNotPressed()
    {
        Says(
            Ask(Bar() with { FileSkates = true }, Turn("t", 0.8, 0)),
            "press-hard-case",
            Severity.Stop
        );
        Says(
            Ask(Bar(), Turn("t", 0.8, 0, moment: Moment.Tacked)),
            "press-tacked",
            Severity.Caution
        );
        Says(
            Ask(Bar(), Turn("t", 0.8, 0, moment: Moment.AfterFirstRun)),
            "press-after-run",
            Severity.Stop
        );
        var cracked = Made("a", 2.2, 0.8, 0, 0.6, 0) with { CrackSign = true };
        Says(Ask(Bar(cracked), Turn("t", 0.8, 0)), "press-crack-sign", Severity.Stop);
        // A crack stays a crack when the shaft is straight.
        Says(
            Ask(Bar(cracked), Turn("t", 0.8, 0), Turn("u", 0.05, 0)),
            "press-crack-sign",
            Severity.Stop
        );
    }

    [Fact]
    public void Solve_InsideTheLimit_Stops()
    {
        var result = Ask(Bar(), Turn("t", 0.10, 0));
        Assert.Equal(PressStep.Straight, result.Step);
        Assert.Null(result.Plan);
        Assert.Contains("Stop here", result.Words.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Solve_OvalThatIsNoBend_IsLeftAlone()
    {
        var result = Ask(Bar(), Turn("t", 0.06, 0, oval: 0.16));
        Assert.Equal(PressStep.DoNotPress, result.Step);
        Says(result, "press-not-a-bend", Severity.Caution);
    }

    [Fact]
    public void Solve_PiecesBesideOneAxis_AreNotPressed()
    {
        // Set off at the weld (see MadeJob), seen on centres: low before it, high after it.
        var result = Workflow
            .Evaluate(
                MadeJob() with
                {
                    Truing = new() { Turns = [Turn("a", 0.5, 180, 250), Turn("b", 0.5, 0, 350)] },
                }
            )
            .Press!;
        Assert.Equal(PressStep.DoNotPress, result.Step);
        Says(result, "press-set-off", Severity.Stop);
    }

    [Fact]
    public void Solve_MadeShaftHardToTheHeat_KeepsTheCaseBelowItsShareAndOffTheRam()
    {
        var result = Workflow
            .Evaluate(MadeJob() with { Truing = new() { Turns = [Turn("t", 0.8, 0)] } })
            .Press!;
        Assert.Equal(PressStep.Press, result.Step);
        Assert.True(result.Plan!.Bridge);
        Says(result, "press-case-between", Severity.Caution);
        Says(result, "press-bridge", Severity.Caution);
        // Away from the weld the case itself would be under the ram.
        var away = Workflow
            .Evaluate(
                MadeJob() with
                {
                    Truing = new() { Turns = [Turn("t", 0.8, 0)] },
                    Press = MadeJob().Press! with { BendAt = Mm(180) },
                }
            )
            .Press!;
        Assert.Equal(PressStep.DoNotPress, away.Step);
        Says(away, "press-no-place", Severity.Stop);
    }

    [Fact]
    public void Solve_SleevedShaft_PressesBesideTheSleeve()
    {
        var job = MadeJob();
        job = job with
        {
            Donors = Pair(Usual(25, 420), Usual(25, 420)),
            Cut = job.Cut! with { SleeveLength = Mm(80), SleeveOutside = Mm(36) },
            Truing = new() { Turns = [Turn("t", 0.8, 0, 380, Moment.Sleeved)] },
        };
        var evaluated = Workflow.Evaluate(job);
        var (made, plan) = (evaluated.Cut!.Made!, evaluated.Press!.Plan!);
        Assert.True(plan.RamAt >= made.SleeveTo!.Value + PressLimits.ToeClear - 1e-9);
        Assert.True(plan.FirstBlockAt <= made.SleeveFrom!.Value - PressLimits.ToeClear + 1e-9);
        Says(evaluated.Press, "press-beside", Severity.Caution);
    }

    [Fact]
    public void Solve_BlocksOnAMadeShaft_StandClearOfSplinesSeatsAndWeld()
    {
        var job = MadeJob() with { Truing = new() { Turns = [Turn("t", 0.8, 0)] } };
        var evaluated = Workflow.Evaluate(job);
        var (made, plan) = (evaluated.Cut!.Made!, evaluated.Press!.Plan!);
        foreach (var block in new[] { plan.FirstBlockAt, plan.SecondBlockAt })
        {
            Assert.True(Math.Abs(block - made.WeldAt) >= PressLimits.ToeClear);
            Assert.DoesNotContain(
                made.Stretches,
                s =>
                    s.Kind is not (Shaftwright.Donors.ZoneKind.Plain)
                    && block > s.From - PressLimits.FeatureClear
                    && block < s.To + PressLimits.FeatureClear
            );
        }
    }

    [Fact]
    public void Solve_TooLittleKnown_SaysWhatIsMissing()
    {
        Says(Ask(Bar()), "press-no-turn", Severity.Note);
        Says(
            Ask(Bar() with { Diameter = null }, Turn("t", 0.8, 0)),
            "press-no-diameter",
            Severity.Note
        );
        var vague = Ask(
            Bar() with
            {
                Length = null,
            },
            Turn("t", 0.8, 0) with
            {
                Support = Support.Unknown,
                FirstSupportAt = null,
                SecondSupportAt = null,
            }
        );
        Says(vague, "press-supports-unknown", Severity.Caution);
        // On longer supports the same bend shows more, so that less of it is asked of the press.
        Assert.True(vague.Plan!.Depth < Ask(Bar(), Turn("t", 0.8, 0)).Plan!.Depth);
        Assert.Null(Workflow.Evaluate(new Job()).Press);
    }

    [Fact]
    public void Solve_ManyStrokes_ComesToAnEnd()
    {
        var strokes = Enumerable
            .Range(0, PressLimits.Strokes)
            .Select(i => Made($"s{i}", 1.5, 0.8, 0, 0.8 - 0.03 * (i % 2), 0))
            .ToArray();
        Says(Ask(Bar(strokes), Turn("t", 0.8, 0)), "press-too-many", Severity.Stop);
        var silent = Enumerable
            .Range(0, PressLimits.StrokesWithoutResponse)
            .Select(i => Made($"s{i}", 2.5, 0.8, 0, 0.8, 0))
            .ToArray();
        Says(Ask(Bar(silent), Turn("t", 0.8, 0)), "press-no-response", Severity.Stop);
    }

    [Fact]
    public void Solve_HighPointAfterNotLookedFor_StaysOpenToBothSides()
    {
        // 0.30 before and 0.10 after is 0.10 moved, or 0.20 if it lies on the other side: neither is taken for certain.
        var result = Ask(Bar(Made("a", 2.2, 0.30, 0, 0.10)), Turn("t", 0.30, 0), Turn("u", 0.3, 0));
        Assert.False(result.Strokes[0].WentTooFar);
        Assert.Equal(0.10, result.Strokes[0].Seen!.Value, 1e-9);
    }

    [Fact]
    public void Solve_MarkMovedRound_TurnsTheAnswerWithIt() =>
        CsCheck.Check.Sample(
            CsCheck.Gen.Double[0, 360],
            shift =>
            {
                var still = Ask(Bar(), Turn("t", 0.8, 20)).Plan!;
                var moved = Ask(Bar(), Turn("t", 0.8, 20 + shift)).Plan!;
                return Math.Abs(moved.Depth - still.Depth) < 0.02
                    && Math.Abs(
                        Math.IEEERemainder(moved.Up - still.Up - shift * Math.PI / 180, Math.Tau)
                    ) < 0.01;
            },
            iter: 20
        );

    [Fact]
    public void Planned_KeptWithAReadingAfter_IsTakenForTheStrokeOfThatPlan()
    {
        var before = Ask(Bar(), Turn("far", 0.5, 40, 200), Turn("t", 1.0, 40));
        Assert.Equal(("t", "t"), (before.Dial, before.NewestTurn));
        var stroke = PressSolver.Planned(before, "a") with
        {
            RunOutAfter = Mm(0.7),
            HighAfter = Degrees(40),
        };
        var after = Ask(Bar(stroke), Turn("far", 0.5, 40, 200), Turn("t", 1.0, 40));
        Assert.Equal(0.15, after.Strokes[0].Seen!.Value, 1e-3);
        Assert.Equal(0.7, after.RunOut!.Value, 1e-9);
        Assert.Equal(before.Plan!.FirstBlockAt, after.Plan!.FirstBlockAt, 0.1);
        Assert.Throws<ArgumentException>(() =>
            PressSolver.Planned(Ask(Bar(), Turn("t", 0.05, 0)), "b")
        );
    }

    [Fact]
    public void Planned_ReadAtTheOtherStationLast_StillKnowsWhereTheDialStood()
    {
        // The worst of two stations was read first; the turn read after it is no reading after the stroke.
        var before = Ask(Bar(), Turn("t", 1.0, 40), Turn("far", 0.5, 40, 200));
        Assert.Equal(("t", "far"), (before.Dial, before.NewestTurn));
        var stroke = PressSolver.Planned(before, "a");
        var waits = Ask(Bar(stroke), Turn("t", 1.0, 40), Turn("far", 0.5, 40, 200));
        Says(waits, "press-read-after", Severity.Caution);
        var read = Ask(
            Bar(stroke),
            Turn("t", 1.0, 40),
            Turn("far", 0.5, 40, 200),
            Turn("u", 0.6, 40)
        );
        Assert.Equal(0.2, read.Strokes[0].Seen!.Value, 1e-3);
    }

    [Fact]
    public void PressAt_TwoMoments_AnswersForEach()
    {
        var result = Workflow.Evaluate(
            new Job
            {
                Press = Bar(),
                Truing = new()
                {
                    Turns = [Turn("t", 0.05, 0), Turn("s", 0.8, 0, moment: Moment.Sleeved)],
                },
            }
        );
        Assert.Equal(PressStep.Straight, result.PressAt(Moment.ButtWelded)!.Step);
        Assert.Equal(PressStep.Press, result.PressAt(Moment.Sleeved)!.Step);
        Assert.Equal(Moment.Sleeved, result.Press!.Moment);
        Assert.Null(result.PressAt(Moment.Tacked));
    }

    private static Job MadeJob() =>
        new()
        {
            Donors = Pair(
                Usual(25, 420) with
                {
                    Hardened = [Hard(0, 420, 2.5)],
                },
                Usual(25, 420) with
                {
                    Hardened = [Hard(0, 420, 2.5)],
                }
            ),
            Cut = new()
            {
                OverallLength = Mm(600),
                InnerCutAt = Mm(300),
                RootGap = Mm(0),
                Shrinkage = Mm(0),
                HeatBand = Mm(20),
            },
            Press = new() { Tempered = true },
        };
}
