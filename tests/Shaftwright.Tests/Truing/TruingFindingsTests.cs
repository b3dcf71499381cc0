using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.Tests.Truing;

public sealed class TruingFindingsTests
{
    [Fact]
    public void Closing_ReadingThatComesBackElsewhere_SaysTheDialMoved()
    {
        (double, double)[] turn = [(0, 0.20), (90, 0.25), (180, 0.30), (270, 0.25), (360, 0.24)];
        var moved = DialTurns.Solve(DialTurns.At(turn));
        Assert.Contains(
            "0.04\u00a0mm apart",
            moved.Find("dial-moved")!.Text.ToString(),
            StringComparison.Ordinal
        );

        // What moved makes every reading less sure; what came back does not.
        turn[^1] = (360, 0.21);
        var back = DialTurns.Solve(DialTurns.At(turn));
        Assert.Null(back.Find("dial-moved"));
        Assert.True(moved.Turns[0].RunOutUncertainty > 2 * back.Turns[0].RunOutUncertainty);
    }

    [Fact]
    public void Spacing_ThreePlaces_SaysThatNothingChecksThem()
    {
        var three = DialTurns.Solve(DialTurns.Eccentric(0.2, 10, 3));
        Assert.NotNull(three.Find("nothing-checks"));
        Assert.Equal(0, three.Turns[0].Residual);
        Assert.Null(DialTurns.Solve(DialTurns.Eccentric(0.2, 10, 8)).Find("nothing-checks"));
    }

    [Fact]
    public void Spacing_FourPlaces_SaysThatAnOvalMayHide()
    {
        // An oval with its highs at 45° and 225° shows nothing at the quarter turns.
        double Oval(double degrees) => 0.5 + 0.1 * Math.Sin(2 * degrees * Math.PI / 180);
        var four = DialTurns.Solve(
            DialTurns.At([.. new double[] { 0, 90, 180, 270 }.Select(a => (a, Oval(a)))])
        );
        Assert.Equal(0, four.Turns[0].RunOut!.Value, 1e-12);
        Assert.NotNull(four.Find("oval-may-hide"));

        var eight = DialTurns.Solve(
            DialTurns.At([.. Enumerable.Range(0, 8).Select(i => (45.0 * i, Oval(45 * i)))])
        );
        Assert.Equal(0.2, eight.Turns[0].RunOut!.Value, 1e-9);
        Assert.Null(eight.Find("oval-may-hide"));
        var finding = eight.Find("not-a-bend")!;
        Assert.Equal(Severity.Caution, finding.Severity);
        Assert.Null(eight.Turns[0].HighPoint);
    }

    [Fact]
    public void Spacing_ALargeGap_IsCautioned()
    {
        var result = DialTurns.Solve(DialTurns.At((0, 0.1), (60, 0.1), (120, 0.1), (210, 0.1)));
        Assert.Contains(
            "from 210° to 0°",
            result.Find("gap-in-turn")!.Text.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Shape_OneMisreadNumber_IsPointedAt()
    {
        var turn = DialTurns.Eccentric(0.1, 30, 12);
        var readings = turn.Readings.ToArray();
        readings[7] = DialTurns.Reading(210, readings[7].Dial!.Value + 0.1);
        var result = DialTurns.Solve(turn with { Readings = readings });
        Assert.Contains(
            "at 210° stands alone",
            result.Find("lone-reading")!.Text.ToString(),
            StringComparison.Ordinal
        );
        Assert.Null(DialTurns.Solve(turn).Find("lone-reading"));
    }

    [Fact]
    public void Supports_Unknown_AreCautionedAndPlacesAskedFor()
    {
        var turn = DialTurns.Eccentric(0.02, 0);
        Assert.Equal(
            Severity.Caution,
            DialTurns
                .Solve(turn with { Support = Support.Unknown })
                .Find("supports-unknown")!
                .Severity
        );
        Assert.Null(DialTurns.Solve(turn).Find("places-missing"));
        Assert.NotNull(DialTurns.Solve(turn with { Station = null }).Find("places-missing"));
        Assert.NotNull(
            DialTurns.Solve(turn with { Support = Support.Vees }).Find("places-missing")
        );
        var vees = turn with
        {
            Support = Support.Vees,
            FirstSupportAt = DialTurns.Mm(100),
            SecondSupportAt = DialTurns.Mm(400),
        };
        Assert.Null(DialTurns.Solve(vees).Find("places-missing"));
        Assert.Null(DialTurns.Solve(vees).Find("dial-over-support"));
        Assert.NotNull(
            DialTurns.Solve(vees with { Station = DialTurns.Mm(390) }).Find("dial-over-support")
        );
        Assert.NotNull(
            DialTurns
                .Solve(vees with { SecondSupportAt = DialTurns.Mm(100) })
                .Find("supports-together")
        );
    }

    [Fact]
    public void Over_ReadAgainLaterAtTheSameStation_NoLongerStopsTheJob()
    {
        var bent = DialTurns.Eccentric(0.3, 40) with { Moment = Moment.Tacked };
        var trued = DialTurns.Eccentric(0.03, 40);
        var result = DialTurns.Solve(bent, trued);
        Assert.Null(result.Find("over-limit"));
        Assert.StartsWith(
            "Turn 1 (tacked): ",
            result.Find("was-over")!.Text.ToString(),
            StringComparison.Ordinal
        );

        // Another station, or a turn too poor to say, settles nothing.
        Assert.NotNull(
            DialTurns.Solve(bent, trued with { Station = DialTurns.Mm(300) }).Find("over-limit")
        );
        Assert.NotNull(DialTurns.Solve(bent, DialTurns.At((0, 0.1), (90, 0.1))).Find("over-limit"));
        Assert.NotNull(DialTurns.Solve(trued, bent).Find("over-limit"));
    }

    [Fact]
    public void Over_AtSeveralStations_StopsOnceAndNamesTheWorst()
    {
        var result = DialTurns.Solve([
            .. new[] { (150.0, 0.2), (250, 0.4), (350, 0.3) }.Select(t =>
                DialTurns.Eccentric(t.Item2, 40) with
                {
                    Station = DialTurns.Mm(t.Item1),
                }
            ),
        ]);
        var stop = result.Findings.Single(f => f.Severity == Severity.Stop);
        Assert.Equal(
            "Run-out is over the limit of 0.15\u00a0mm at 3 stations; the worst is 0.80\u00a0mm, 250.0\u00a0mm from the inner end.",
            stop.Text.ToString()
        );
    }

    [Fact]
    public void Incomplete_Readings_AreLeftOutAndCounted()
    {
        var turn = DialTurns.Eccentric(0.02, 0);
        var result = DialTurns.Solve(
            turn with
            {
                Readings =
                [
                    .. turn.Readings,
                    new DialReading(),
                    new DialReading { Angle = turn.Readings[1].Angle },
                ],
            }
        );
        Assert.StartsWith(
            "2 of the readings",
            result.Find("readings-incomplete")!.Text.ToString(),
            StringComparison.Ordinal
        );
        Assert.Equal(DialTurns.Judge(turn).Words, result.Turns[0].Words);
        Assert.Equal(DialTurns.Judge(turn).Offset, result.Turns[0].Offset);
    }

    [Fact]
    public void Findings_OfEveryKindOfTurn_CarryAnActionAndASource()
    {
        DialTurn[] turns =
        [
            DialTurns.At(),
            DialTurns.At((0, 1), (10, 2)),
            DialTurns.Eccentric(0.3, 20, 3),
            DialTurns.Eccentric(0.075, 20, 4) with
            {
                Support = Support.Unknown,
            },
            DialTurns.Eccentric(0.2, 20, 12) with
            {
                Moment = Moment.AfterFirstRun,
                Limit = DialTurns.Mm(0.3),
            },
        ];
        Assert.All(
            DialTurns.Solve(turns).Findings,
            f =>
            {
                Assert.Equal(Stage.Truing, f.Stage);
                Assert.NotEmpty(f.Action.ToString());
                Assert.NotEmpty(f.Source);
            }
        );
        Assert.Empty(DialTurns.Solve().Findings);
    }
}
