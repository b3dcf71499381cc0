using Shaftwright.Measures;

namespace Shaftwright.Truing;

/// <summary>How straight a shaft runs, from dial readings at one station.</summary>
/// <remarks>
/// <para>Run-out is the largest reading less the smallest. The part of it that a bend or a set-off makes goes once round, and is
/// found by least squares (<see cref="FirstHarmonic"/>): a round section turning e off its axis shows 2e. A few readings can
/// straddle the top, so the larger of the run-out as read and 2e is judged.</para>
/// <para>Uncertainty of the run-out: accuracy ± and half a division of the dial as rectangular, and the repeatability, together;
/// U = 2u. With a 0.01 dial ± 0.01 and 0.004 that is 0.0152 mm. Source: JCGM 100:2008 (GUM), 4.3.7 and 5.1.2.</para>
/// <para>Verdict by guard band: inside when run-out + U ≤ limit, over when run-out − U > limit. Principle: ISO 14253-1 decision
/// rule, from memory. Limits: <see cref="TruingFields"/>.</para>
/// <para>Check values: Published/run-out.json.</para>
/// </remarks>
public static class TruingSolver
{
    // Two angles nearer than this are the same place read again, rad.
    private const double SamePlace = 0.5 * Math.PI / 180;

    /// <summary>The largest run-out usually accepted at a moment, mm. Common practice, no source, for the butt weld and the
    /// sleeve. Before them the butt's is taken, since pieces and tacks that start outside it cannot end inside; after the
    /// first run the sleeve's, since nothing may have moved.</summary>
    public static double UsualLimit(Moment moment) =>
        moment is Moment.Sleeved or Moment.AfterFirstRun
            ? TruingFields.UsualLimitSleeved
            : TruingFields.UsualLimitButt;

    /// <summary>Judges every turn.</summary>
    /// <param name="truing">The turns, in the order they were taken.</param>
    /// <exception cref="ArgumentNullException"><paramref name="truing"/> is null.</exception>
    public static TruingResult Solve(TruingInput truing)
    {
        ArgumentNullException.ThrowIfNull(truing);
        var advice = new TruingAdvice(truing.Turns.Count);
        var turns = new List<TurnResult>();
        for (var i = 0; i < truing.Turns.Count; i++)
        {
            advice.Begin(i, truing.Turns[i]);
            turns.Add(Judge(truing.Turns[i], advice, IsLatest(truing.Turns, i)));
        }
        advice.Limits(truing.Turns);
        return new() { Turns = turns, Findings = advice.Findings };
    }

    private static TurnResult Judge(DialTurn turn, TruingAdvice advice, bool latest)
    {
        var limit = turn.Limit?.Value ?? UsualLimit(turn.Moment);
        var points = Points(turn);
        if (points.Count < turn.Readings.Count)
            advice.Incomplete(turn.Readings.Count - points.Count);
        advice.Supports();

        var spread = points.Count == 0 ? 0 : points.Max(p => p.Dial) - points.Min(p => p.Dial);
        var expanded =
            points.Count == 0
                ? 0
                : 2
                    * Math.Max(
                        points.MaxBy(p => p.Dial).DialUncertainty,
                        points.MinBy(p => p.Dial).DialUncertainty
                    );
        var round = Round.Of([.. points.Select(p => p.Angle)], SamePlace);
        var fit = round.GoesRound ? FirstHarmonic.Fit(points) : null;
        if (fit is null)
        {
            advice.NotRound(round);
            // Readings that do not go round still prove that it is over: the rest can only add to the run-out.
            var over = spread - expanded > limit;
            if (over)
                advice.Over(spread, limit, latest);
            return new TurnResult(
                turn.Id,
                turn.Moment,
                over ? spread : null,
                expanded,
                null,
                0,
                null,
                0,
                0,
                limit,
                over ? RunOutVerdict.Over : RunOutVerdict.NotKnown,
                TruingWords.NotRound(over ? spread : null, limit)
            );
        }

        advice.Closing(points, SamePlace);
        advice.Spacing(round);
        advice.Shape(points, fit, spread, expanded, limit);
        var offset = fit.Offset;
        var judged = Math.Max(spread, 2 * offset);
        if (2 * offset > spread + TruingFields.Division / 2)
            expanded = Math.Max(expanded, 4 * fit.OffsetUncertainty);
        var verdict =
            judged + expanded <= limit ? RunOutVerdict.Inside
            : judged - expanded > limit ? RunOutVerdict.Over
            : RunOutVerdict.TooCloseToCall;
        if (verdict == RunOutVerdict.Over)
            advice.Over(judged, limit, latest);
        if (verdict == RunOutVerdict.TooCloseToCall)
            advice.TooClose(judged, expanded, limit, latest);

        var result = new TurnResult(
            turn.Id,
            turn.Moment,
            spread,
            expanded,
            offset,
            fit.OffsetUncertainty,
            fit.HasDirection ? fit.HighPoint : null,
            fit.HasDirection ? fit.SidewaysUncertainty / offset : 0,
            round.Places == 3 ? 0 : Math.Sqrt(fit.SquareSum / points.Count),
            limit,
            verdict,
            Sentence.Plain("")
        );
        return result with { Words = TruingWords.Of(result) };
    }

    /// <summary>False when the same station was read again later: what it showed then has been dealt with since.</summary>
    private static bool IsLatest(IReadOnlyList<DialTurn> turns, int i)
    {
        var here = turns[i].Station?.Value;
        for (var j = i + 1; j < turns.Count; j++)
        {
            var there = turns[j].Station?.Value;
            // A turn with too little in it settles nothing.
            if (!Round.Of([.. Points(turns[j]).Select(p => p.Angle)], SamePlace).GoesRound)
                continue;
            if (
                here is { } a && there is { } b
                    ? Math.Abs(a - b) <= 5
                    : here is null && there is null
            )
                return false;
        }
        return true;
    }

    private static List<Point> Points(DialTurn turn)
    {
        var read = turn
            .Readings.Where(r => r.Angle is not null && r.Dial is not null)
            .Select(r =>
                (
                    Angle: FirstHarmonic.Turn(r.Angle!.Value),
                    Dial: r.Dial!,
                    AngleU: TruingFields.ShaftAngle.StandardUncertainty(r.Angle)
                )
            )
            .ToList();
        var repeat = Repeatability([.. read.Select(r => (r.Angle, r.Dial.Value))]);
        return
        [
            .. read.Select(r => new Point(
                r.Angle,
                r.Dial.Value,
                r.AngleU,
                Math.Sqrt(Square(OfDial(r.Dial)) + Square(repeat))
            )),
        ];
    }

    /// <summary>Standard uncertainty of what the dial shows, mm: a typed ± covers all of it; otherwise accuracy and half a division.</summary>
    private static double OfDial(Measured<Distance> dial)
    {
        if (dial.PlusMinus is { } typed)
            return typed / Math.Sqrt(3);
        var (accuracy, division) =
            dial.Unit == Distance.Thou || dial.Unit == Distance.Inch
                ? (TruingFields.InchDivision, TruingFields.InchDivision)
                : (TruingFields.Dial.UsualPlusMinus, TruingFields.Division);
        return Math.Sqrt((Square(accuracy) + Square(division / 2)) / 3);
    }

    /// <summary>Standard deviation of reading the same place again, mm: from places read twice if that is worse than usual.</summary>
    private static double Repeatability(List<(double Angle, double Dial)> read)
    {
        double squares = 0;
        var freedom = 0;
        foreach (var place in Round.Group(read, r => r.Angle, SamePlace))
        {
            var mean = place.Average(r => r.Dial);
            squares += place.Sum(r => Square(r.Dial - mean));
            freedom += place.Count - 1;
        }
        return Math.Max(
            TruingFields.Repeatability,
            freedom == 0 ? 0 : Math.Sqrt(squares / freedom)
        );
    }

    private static double Square(double x) => x * x;
}
