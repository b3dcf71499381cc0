using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Fit;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Tests.CrackTest;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Fit;

/// <summary>The steps hold each other, what is found wrong stops them, and the record keeps both.</summary>
public sealed class FitSolverTests
{
    private static readonly FitInput s_known = new()
    {
        StubClampsBearing = true,
        HubNutByMaker = Tested.Of<Torque>("215 N·m"),
        PullByMaker = Tested.Of<Force>("150 N"),
    };

    private static FitResult Solve(FitInput fit, FitBasis? basis = null) =>
        FitSolver.Solve(fit, basis ?? new());

    private static FitDone Done(FitStep step, double minutes = double.NaN) =>
        new()
        {
            Id = $"{step}-{minutes}",
            Step = step,
            At = Tested.After(double.IsNaN(minutes) ? (int)step * 10 : minutes),
        };

    /// <summary>A step as it is noted when all is well.</summary>
    private static FitDone Well(FitStep step, double minutes = double.NaN) =>
        step switch
        {
            FitStep.PaintLine => Done(step, minutes) with
            {
                LineDiameter = Tested.Of<Distance>("28"),
            },
            FitStep.PullCheck => Done(step, minutes) with
            {
                Pull = Tested.Of<Force>("160 N"),
                PullHeld = true,
            },
            FitStep.BearingClamp => Done(step, minutes) with
            {
                HubNut = Tested.Of<Torque>("215 N·m"),
            },
            FitStep.TrialEnds => Done(step, minutes) with
            {
                LeftIn = Tested.Of<Distance>("8"),
                LeftOut = Tested.Of<Distance>("9"),
            },
            FitStep.FreeTurn => Done(step, minutes) with { FreeAtDroop = true, FreeAtLock = true },
            FitStep.FirstRun => Done(step, minutes) with
            {
                LineOffset = Tested.Of<Distance>("0"),
                Leaks = false,
                Noise = false,
            },
            _ => Done(step, minutes),
        };

    private static FitInput With(FitInput fit, params FitDone[] more) =>
        fit with
        {
            Done = [.. fit.Done, .. more],
        };

    private static FitStepResult At(FitResult result, FitStep step) =>
        Assert.Single(result.Steps, s => s.Step == step);

    private static void Says(FitResult result, string code, Severity severity) =>
        Assert.Single(result.Findings, f => f.Code == code && f.Severity == severity);

    [Fact]
    public void Steps_DoneInOrder_EachFreesTheNextUntilAllAreDone()
    {
        var fit = s_known;
        foreach (var step in Enum.GetValues<FitStep>().Where(s => s != FitStep.ProofTwist))
        {
            var before = At(Solve(fit), step);
            Assert.Equal(FitStepState.Next, before.State);
            Assert.Equal(before.WhatToDo.ToString(), Solve(fit).Next.ToString());
            Assert.All(
                Solve(fit)
                    .Steps.SkipWhile(s => s.Step != step)
                    .Skip(1)
                    .Where(s => s.Step != FitStep.ProofTwist),
                s => Assert.Equal(FitStepState.Waits, s.State)
            );
            fit = With(fit, Well(step));
            Assert.Equal(FitStepState.Done, At(Solve(fit), step).State);
        }
        Assert.Equal(FitStepState.NotInThisJob, At(Solve(fit), FitStep.ProofTwist).State);
        Assert.Empty(Solve(fit).Findings);
        Assert.Contains("fitted", Solve(fit).Next.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Cautions_EachStandOnceAndNoneOfTheHazardsIsLeftOut()
    {
        var cautions = Solve(s_known).Steps.Select(s => s.Caution).OfType<string>().ToList();
        Assert.Equal(cautions.Count, cautions.Distinct().Count());
        foreach (
            var hazard in new[]
            {
                "never a jack",
                "stores energy",
                "no rolling",
                "loose clothing",
                "in line with the shaft",
                "vibration",
            }
        )
            Assert.Single(cautions, c => c.Contains(hazard, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(FitStep.PullCheck)]
    [InlineData(FitStep.TrialEnds)]
    [InlineData(FitStep.FreeTurn)]
    [InlineData(FitStep.FirstRun)]
    public void Steps_NotedWithoutWhatTheyAreFor_AreNotDone(FitStep step)
    {
        var fit = With(
            s_known,
            [.. Enum.GetValues<FitStep>().Where(s => s < step).Select(s => Well(s)), Done(step)]
        );
        var result = At(Solve(fit), step);
        Assert.Equal(FitStepState.Next, result.State);
        Assert.StartsWith("Note ", result.Because!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void PullCheck_CameOut_StopsUntilALaterOneHolds()
    {
        var fit = With(s_known, Done(FitStep.PullCheck) with { PullHeld = false });
        Assert.Equal(FitStepState.Stopped, At(Solve(fit), FitStep.PullCheck).State);
        Says(Solve(fit), "pulled-out", Severity.Stop);
        fit = With(fit, Well(FitStep.PullCheck, 500));
        Assert.Equal(FitStepState.Done, At(Solve(fit), FitStep.PullCheck).State);
        Assert.DoesNotContain(Solve(fit).Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(2, fit.Done.Count);
    }

    [Fact]
    public void PullCheck_LighterThanTheMakersFigure_IsSaid() =>
        Says(
            Solve(
                With(s_known, Well(FitStep.PullCheck) with { Pull = Tested.Of<Force>("10 kgf") })
            ),
            "pull-too-light",
            Severity.Caution
        );

    [Theory]
    [InlineData("200 N·m", "hub-nut-loose", Severity.Stop)]
    [InlineData("245 N·m", "hub-nut-tight", Severity.Caution)]
    [InlineData("210 ± 6 N·m", null, Severity.Note)]
    public void HubNut_AgainstItsMakersFigure_IsJudgedWithItsDoubt(
        string given,
        string? code,
        Severity severity
    )
    {
        var result = Solve(
            With(s_known, Done(FitStep.BearingClamp) with { HubNut = Tested.Of<Torque>(given) })
        );
        if (code is null)
            Assert.Empty(result.Findings);
        else
            Says(result, code, severity);
    }

    [Fact]
    public void HubNut_RolledBeforeItWasTight_StopsButTightenedAgainLaterDoesNot()
    {
        Says(
            Solve(With(s_known, Well(FitStep.FirstRun, 10), Well(FitStep.BearingClamp, 20))),
            "rolled-before-clamped",
            Severity.Stop
        );
        Assert.Empty(
            Solve(
                With(
                    s_known,
                    Well(FitStep.PaintLine),
                    Well(FitStep.BearingClamp, 20),
                    Well(FitStep.FirstRun, 30),
                    Well(FitStep.BearingClamp, 40)
                )
            ).Findings
        );
    }

    [Fact]
    public void HubNut_NothingKnown_IsTakenAsClampingTheBearing()
    {
        var result = Solve(new());
        Says(result, "clamp-unknown", Severity.Caution);
        Assert.NotEqual(FitStepState.NotInThisJob, At(result, FitStep.BearingClamp).State);
        var loose = Solve(new() { StubClampsBearing = false });
        Assert.Equal(FitStepState.NotInThisJob, At(loose, FitStep.BearingClamp).State);
    }

    private static FitBasis Fitting(double leftIn, double leftOut) =>
        new()
        {
            Margin = 3,
            Length = new()
            {
                Shortest = new(430, 0.3, -60, Shaftwright.Corner.Steering.Straight, default),
                Longest = new(440, 0.3, 0, Shaftwright.Corner.Steering.Straight, default),
                Positions =
                [
                    new(0, default, leftIn, 20, null, null, null, true),
                    new(-60, default, 20, leftOut, null, null, null, true),
                ],
                MakeUncertainty = 0.4,
                Tolerance = 1,
                Findings = [],
            },
        };

    [Theory]
    [InlineData("8", null)]
    [InlineData("9.9", null)]
    [InlineData("10.1", "not-as-worked-out")]
    [InlineData("2.5", "margin-not-kept")]
    [InlineData("0.4", "no-plunge-left")]
    public void TrialEnds_WhatIsLeft_IsComparedWithTheLengthStage(string left, string? code)
    {
        // 2·√((0.5/√3)² + 0.4²) + 1 = 1.99 mm about the 8 mm worked out.
        var result = Solve(
            With(
                s_known,
                Done(FitStep.TrialEnds) with
                {
                    LeftIn = Tested.Of<Distance>(left),
                    LeftOut = Tested.Of<Distance>("9"),
                }
            ),
            Fitting(8, 9)
        );
        Assert.Equal(new(8, 0, 9, -60), result.TrialEnds);
        if (code is null)
            Assert.Empty(result.Findings);
        else
            Assert.Contains(result.Findings, f => f.Code == code);
    }

    [Theory]
    [InlineData(false, true, "full droop")]
    [InlineData(true, false, "full lock")]
    [InlineData(false, false, "droop and at full lock")]
    public void FreeTurn_WhereItBinds_StopsAndSaysWhere(bool droop, bool atLock, string where)
    {
        var result = Solve(
            With(s_known, Done(FitStep.FreeTurn) with { FreeAtDroop = droop, FreeAtLock = atLock })
        );
        Says(result, "does-not-turn-freely", Severity.Stop);
        Assert.Contains(where, result.Findings[0].Text.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.4 mm", false)]
    [InlineData("2 mm", true)]
    [InlineData("-2 mm", true)]
    public void Line_OffsetBeyondItsDoubt_StopsWithTheTwist(string offset, bool stops)
    {
        var result = Solve(
            With(
                s_known,
                Well(FitStep.PaintLine),
                Well(FitStep.BearingClamp),
                Well(FitStep.FirstRun) with
                {
                    LineOffset = Tested.Of<Distance>(offset),
                }
            )
        );
        Assert.Equal(2 * Tested.Of<Distance>(offset).Value / 28, result.Twist!.Value, 1e-12);
        Assert.Equal(stops, result.Findings.Any(f => f.Code == "twisted"));
    }

    [Theory]
    [InlineData(true, false, "leak-after-run")]
    [InlineData(false, true, "noise-after-run")]
    public void FirstRun_ALeakOrANoise_Stops(bool leaks, bool noise, string code)
    {
        var result = Solve(
            With(
                s_known,
                Well(FitStep.PaintLine),
                Well(FitStep.BearingClamp),
                Well(FitStep.FirstRun) with
                {
                    Leaks = leaks,
                    Noise = noise,
                }
            )
        );
        Says(result, code, Severity.Stop);
        Assert.Equal(FitStepState.Stopped, At(result, FitStep.FirstRun).State);
    }

    private static FitBasis Shaft()
    {
        var donors = DonorsSolver.Solve(Pair(Usual(28, 400), Usual(27, 400)));
        var made = CutSolver
            .Solve(donors, Shaftwright.Tests.Cut.CutSolverTests.Ask(500), null)
            .Made!;
        return new() { Made = made, Donors = donors };
    }

    [Fact]
    public void HubNut_LooseWhenItRanAndTightAfterwards_StillStops()
    {
        var loose = Done(FitStep.BearingClamp, 5) with { HubNut = Tested.Of<Torque>("60 N·m") };
        Says(
            Solve(With(s_known, loose, Well(FitStep.FirstRun, 10), Well(FitStep.BearingClamp, 20))),
            "rolled-before-clamped",
            Severity.Stop
        );
    }

    [Fact]
    public void FirstRun_TwistedThenLookedAtWithoutTheLine_StaysTwisted()
    {
        var twisted = Well(FitStep.FirstRun, 10) with { LineOffset = Tested.Of<Distance>("4") };
        Says(
            Solve(
                With(
                    s_known,
                    Well(FitStep.PaintLine, 1),
                    Well(FitStep.BearingClamp, 5),
                    twisted,
                    Well(FitStep.FirstRun, 20) with
                    {
                        LineOffset = null,
                    }
                )
            ),
            "twisted",
            Severity.Stop
        );
    }

    private static FitResult Twisted(string torque, string? set, string? offset = null) =>
        Solve(
            With(
                s_known with
                {
                    ProofTorque = Tested.Of<Torque>(torque),
                },
                Well(FitStep.PaintLine),
                Done(FitStep.ProofTwist) with
                {
                    ProofSet = set is null ? null : Tested.Of<Angle>(set),
                    LineOffset = offset is null ? null : Tested.Of<Distance>(offset),
                }
            ),
            Shaft()
        );

    [Fact]
    public void Proof_WellBelowYield_LeavesNothingAndMoreIsTooMuch()
    {
        var proof = Twisted("200 N·m", null).Proof!;
        Assert.Equal(ProofVerdict.NotKnown, proof.Verdict);
        Assert.Equal(0, proof.Set.High);
        Assert.True(proof.WindUp.Low > 0);
        Assert.Equal(proof.WindUp.Low, proof.WindUp.High, 1e-12);
        Assert.Equal(ProofVerdict.AsExpected, Twisted("200 N·m", "0.2°").Proof!.Verdict);
        var much = Twisted("200 N·m", "3°");
        Assert.Equal(ProofVerdict.TooMuch, much.Proof!.Verdict);
        Says(much, "proof-set-too-large", Severity.Stop);
        // The same read off the painted line: 3° on a diameter of 28.
        Assert.Equal(
            3 * Math.PI / 180,
            Twisted("200 N·m", null, "0.733 mm").Proof!.Measured!.Value,
            1e-3
        );
    }

    [Fact]
    public void Proof_ThatMightTwistItRightThrough_Stops()
    {
        var result = Twisted("9000 N·m", null);
        Says(result, "proof-may-break", Severity.Stop);
        Assert.Equal(double.PositiveInfinity, result.Proof!.Set.High);
        Assert.Contains("may give way", result.Proof.Words.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Proof_OfAShaftNotDescribed_SaysThatNothingIsKnown() =>
        Says(
            Solve(s_known with { ProofTorque = Tested.Of<Torque>("500 N·m") }),
            "proof-without-shaft",
            Severity.Caution
        );

    [Fact]
    public void Evaluate_AProofTwistOrAFirstRun_IsWorkThatAsksForACrackTest()
    {
        var job = new Job
        {
            Fit = With(s_known, Done(FitStep.ProofTwist, 0), Well(FitStep.FirstRun, 600)),
        };
        var tests = Workflow.Evaluate(job).CrackTest!;
        var demand = Assert.Single(tests.Demands);
        Assert.Equal(DemandKind.AfterProofTwist, demand.Kind);
        Assert.Equal(DemandState.Overdue, demand.At(Tested.After(700)));
        var tested = job with
        {
            CrackTest = new()
            {
                Tests = [Tested.Penetrant("t", Tested.After(60), [Place.ButtWeld])],
            },
        };
        Assert.Equal("t", Assert.Single(Workflow.Evaluate(tested).CrackTest!.Demands).AnsweredBy);
    }

    [Theory]
    [InlineData(SeatKind.Clip, "new clip")]
    [InlineData(SeatKind.Shoulder, "shoulder or stop")]
    [InlineData(SeatKind.Unknown, "not noted")]
    public void Joints_HowTheySit_DecidesWhatToDo(SeatKind seat, string words)
    {
        var result = Solve(
            s_known,
            new()
            {
                Joints = new()
                {
                    Inner = new() { Seat = seat },
                    Outer = new() { Seat = seat },
                },
            }
        );
        Assert.Contains(
            words,
            At(result, FitStep.Joints).WhatToDo.ToString(),
            StringComparison.OrdinalIgnoreCase
        );
    }

    [Fact]
    public void Solve_NothingKnown_IsAnAnswerWithASentenceEverywhere()
    {
        var result = Solve(new());
        Assert.All(
            result.Steps,
            s =>
            {
                Assert.EndsWith(".", s.WhatToDo.ToString(), StringComparison.Ordinal);
                Assert.NotEmpty(s.Source);
                Assert.NotEmpty(s.Title);
            }
        );
    }
}
