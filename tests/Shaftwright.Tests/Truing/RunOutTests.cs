using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;
using Shaftwright.Truing;

namespace Shaftwright.Tests.Truing;

public sealed class RunOutTests
{
    [Fact]
    public void Verdict_ByGuardBand_AcceptsUpToTheLimitLessTheDial()
    {
        var c = PublishedFile.Load("run-out")["guard band"];
        var limit = DialTurns.Mm(c.Number("limit"));
        var accepts = c.Expected("acceptsTo");
        TurnResult Judge(double runOut) =>
            DialTurns.Judge(DialTurns.Eccentric(runOut / 2, 0) with { Limit = limit });

        c.Agrees("U", Judge(0.1).RunOutUncertainty);
        c.Agrees("acceptsTo", limit.Value - Judge(0.1).RunOutUncertainty);
        Assert.Equal(RunOutVerdict.Inside, Judge(accepts - 0.0001).Verdict);
        Assert.Equal(RunOutVerdict.TooCloseToCall, Judge(accepts + 0.0002).Verdict);
        Assert.Equal(RunOutVerdict.TooCloseToCall, Judge(0.15).Verdict);
        Assert.Equal(RunOutVerdict.TooCloseToCall, Judge(0.1651).Verdict);
        Assert.Equal(RunOutVerdict.Over, Judge(0.1653).Verdict);
    }

    // Common practice, no source: about 0.15 mm is accepted after straightening, about 0.20 with the sleeve on, nearly 2 mm is not.
    [Theory]
    [InlineData(Moment.ButtWelded, 0.13, RunOutVerdict.Inside)]
    [InlineData(Moment.ButtWelded, 0.15, RunOutVerdict.TooCloseToCall)]
    [InlineData(Moment.ButtWelded, 0.18, RunOutVerdict.Over)]
    [InlineData(Moment.Sleeved, 0.18, RunOutVerdict.Inside)]
    [InlineData(Moment.Sleeved, 0.20, RunOutVerdict.TooCloseToCall)]
    [InlineData(Moment.Sleeved, 0.23, RunOutVerdict.Over)]
    [InlineData(Moment.Sleeved, 1.9, RunOutVerdict.Over)]
    [InlineData(Moment.ButtWelded, 1.9, RunOutVerdict.Over)]
    [InlineData(Moment.BeforeWelding, 0.18, RunOutVerdict.Over)]
    [InlineData(Moment.Tacked, 0.18, RunOutVerdict.Over)]
    [InlineData(Moment.AfterFirstRun, 0.18, RunOutVerdict.Inside)]
    public void Verdict_ByTheUsualLimitOfTheMoment_IsAsTheTradeHasIt(
        Moment moment,
        double runOut,
        RunOutVerdict verdict
    )
    {
        var result = DialTurns.Solve(DialTurns.Eccentric(runOut / 2, 90) with { Moment = moment });
        Assert.Equal(verdict, result.Turns[0].Verdict);
        Assert.Equal(
            verdict == RunOutVerdict.Over,
            result.Find("over-limit") is { Severity: Severity.Stop }
        );
        Assert.NotNull(result.Find("usual-limit"));
    }

    [Fact]
    public void Words_OfABentShaft_SayWhereToMarkIt()
    {
        var turn = DialTurns.Judge(DialTurns.Eccentric(0.34, 135));
        Assert.Equal(
            "Run-out 0.68\u00a0mm; the limit is 0.15\u00a0mm, so it is over. The high point is 135° from your mark, in the "
                + "direction you numbered, give or take 2°: mark it. With your mark at twelve and your numbers running "
                + "clockwise that is half past four. The axis there stands 0.34\u00a0mm off its turning line.",
            turn.Words.ToString()
        );
        Assert.Contains("26.8\u00a0thou", turn.Words.In(Display.Inch), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "twelve o'clock")]
    [InlineData(7, "twelve o'clock")]
    [InlineData(8, "half past twelve")]
    [InlineData(90, "three o'clock")]
    [InlineData(180, "six o'clock")]
    [InlineData(285, "half past nine")]
    [InlineData(353, "twelve o'clock")]
    public void Words_OnAClockFace_AreTheNearestHalfHour(double degrees, string clock) =>
        Assert.Contains(
            $"that is {clock}.",
            DialTurns.Judge(DialTurns.Eccentric(0.5, degrees, 12)).Words.ToString(),
            StringComparison.Ordinal
        );

    [Fact]
    public void Judge_FourReadingsThatStraddleTheTop_JudgesTheRunOutBetweenThem()
    {
        // High at 45°: the four readings see only cos 45° of it.
        var turn = DialTurns.Judge(DialTurns.Eccentric(0.1, 45, 4));
        Assert.Equal(0.2 * Math.Cos(Math.PI / 4), turn.RunOut!.Value, 1e-9);
        Assert.Equal(0.1, turn.Offset!.Value, 1e-9);
        Assert.Equal(RunOutVerdict.Over, turn.Verdict);
        Assert.Contains(
            "0.14\u00a0mm as read, 0.20\u00a0mm between",
            turn.Words.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Judge_ReadingsOfHalfATurn_DoNotClaimToKnow()
    {
        foreach (
            var turn in new[]
            {
                DialTurns.At((0, 0.1), (90, 0.12), (180, 0.15)),
                DialTurns.At((0, 0.1), (20, 0.12), (40, 0.12), (60, 0.11)),
            }
        )
        {
            var result = DialTurns.Solve(turn);
            Assert.Equal(RunOutVerdict.NotKnown, result.Turns[0].Verdict);
            Assert.Null(result.Turns[0].RunOut);
            Assert.Null(result.Turns[0].Offset);
            Assert.Null(result.Turns[0].HighPoint);
            Assert.NotNull(result.Find("half-turn-unread"));
        }
    }

    [Fact]
    public void Judge_TooFewPlaces_SaysSoHoweverOftenTheyWereRead()
    {
        foreach (
            var turn in new[]
            {
                DialTurns.At(),
                DialTurns.At((0, 0.1)),
                DialTurns.At((0, 0.1), (180, 0.11), (360, 0.1), (-180, 0.11)),
            }
        )
        {
            var result = DialTurns.Solve(turn);
            Assert.Equal(RunOutVerdict.NotKnown, result.Turns[0].Verdict);
            Assert.NotNull(result.Find("too-few-readings"));
        }
    }

    [Fact]
    public void Judge_TwoReadingsFarApart_AlreadyProveItIsOver()
    {
        var result = DialTurns.Solve(DialTurns.At((0, 0.1), (180, 1.9)));
        Assert.Equal(RunOutVerdict.Over, result.Turns[0].Verdict);
        Assert.Equal(1.8, result.Turns[0].RunOut!.Value, 1e-12);
        Assert.Null(result.Turns[0].HighPoint);
        Assert.Contains(
            "at least 1.80",
            result.Turns[0].Words.ToString(),
            StringComparison.Ordinal
        );
        Assert.NotNull(result.Find("over-limit"));
    }

    [Fact]
    public void Judge_AStraightShaft_NamesNoHighPoint()
    {
        var turn = DialTurns.Judge(DialTurns.Even(0.50, 0.50, 0.51, 0.50, 0.50, 0.51, 0.50, 0.50));
        Assert.Equal(RunOutVerdict.Inside, turn.Verdict);
        Assert.Null(turn.HighPoint);
        Assert.Contains("no one side", turn.Words.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Judge_AnInchDial_IsBelievedOnlyToItsOwnDivision()
    {
        DialReading Thou(double degrees, double thou) =>
            new()
            {
                Angle = Measured<Angle>.Of(degrees, Angle.Degree),
                Dial = Measured<Distance>.Of(thou, Distance.Thou),
            };
        var turn = DialTurns.Judge(
            DialTurns.At() with
            {
                Readings =
                [
                    .. Enumerable
                        .Range(0, 8)
                        .Select(i =>
                            Thou(45 * i, Math.Round(3 + 2.5 * Math.Cos(i * Math.PI / 4), 6))
                        ),
                ],
            }
        );
        // One thou and half a division, rectangular, and 0.004 mm.
        Assert.Equal(
            2 * Math.Sqrt((0.0254 * 0.0254 + 0.0127 * 0.0127) / 3 + 0.004 * 0.004),
            turn.RunOutUncertainty,
            1e-12
        );
        Assert.Equal(RunOutVerdict.TooCloseToCall, turn.Verdict);
    }

    [Fact]
    public void Judge_ATypedDialPlusMinus_StandsForAllOfTheDial()
    {
        var turn = DialTurns.Eccentric(0.03, 0);
        var typed = turn with
        {
            Readings =
            [
                .. turn.Readings.Select(r =>
                    r with
                    {
                        Dial = Measured<Distance>.Of(
                            Math.Round(r.Dial!.Value, 3),
                            Distance.Mm,
                            0.06
                        ),
                    }
                ),
            ],
        };
        Assert.Equal(
            2 * Math.Sqrt(0.06 * 0.06 / 3 + 0.004 * 0.004),
            DialTurns.Judge(typed).RunOutUncertainty,
            1e-12
        );
        Assert.Equal(RunOutVerdict.Inside, DialTurns.Judge(typed).Verdict);
    }
}
