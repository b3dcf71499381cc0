using Shaftwright.Measures;

namespace Shaftwright.Truing;

/// <summary>How straight a shaft runs, from dial readings at one station or several.</summary>
/// <remarks>
/// <para>Run-out is the largest reading less the smallest. The part of it that a bend or a set-off makes goes once round; oval
/// and lobes go round twice and more. They are told apart as far as the readings can (<see cref="TurnFit"/>). A round section
/// turning e off its axis shows 2e. A few readings can straddle the top, so the larger of the run-out as read and that of the
/// fitted curve is judged.</para>
/// <para>Uncertainty of the run-out: accuracy ± and half a division of the dial as rectangular, and the repeatability, together;
/// U = 2u. With a 0.01 dial ± 0.01 and 0.004 that is 0.0152 mm. Source: JCGM 100:2008 (GUM), 4.3.7 and 5.1.2.</para>
/// <para>Verdict by guard band: inside when run-out + U ≤ limit, over when run-out − U > limit. Over only by readings that
/// stand alone: read again. Principle: ISO 14253-1 decision rule, from memory. Limits: <see cref="TruingFields"/>.</para>
/// <para>Stations read in one state of the shaft are joined to its bow in space: <see cref="ShaftShape"/>.</para>
/// <para>Check values: Published/run-out.json, vee-sensitivity.json, bow-between-supports.json.</para>
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

    /// <summary>Judges every turn, and finds the shaft's bow from the turns that were read in one state of it.</summary>
    /// <param name="truing">The turns, in the order they were taken.</param>
    /// <param name="places">What earlier stages know of the shaft's places; null for nothing.</param>
    /// <exception cref="ArgumentNullException"><paramref name="truing"/> is null.</exception>
    public static TruingResult Solve(TruingInput truing, ShaftPlaces? places = null)
    {
        ArgumentNullException.ThrowIfNull(truing);
        var known = places ?? new();
        known = known with
        {
            Overall = truing.OverallLength?.Value ?? known.Overall,
            WeldAt = truing.WeldAt?.Value ?? known.WeldAt,
        };
        var advice = new TruingAdvice(truing.Turns.Count);
        var turns = new List<TurnResult>();
        var read = new List<ReadStation>();
        for (var i = 0; i < truing.Turns.Count; i++)
        {
            var turn = truing.Turns[i];
            advice.Begin(i, turn);
            var (result, offset) = Judge(turn, advice, IsLatest(truing.Turns, i));
            turns.Add(result);
            read.Add(ReadStation.Of(turn, i, offset, known));
        }
        VeeLobes.Tell(truing.Turns, turns);
        for (var i = 0; i < turns.Count; i++)
        {
            advice.Begin(i, truing.Turns[i]);
            advice.OwnLobes(turns[i]);
        }
        advice.OverAll();
        advice.Limits(truing.Turns);
        var shapes = ShapeSolver.Solve(truing.Turns, read, known);
        if (shapes.Count > 0)
            advice.Shape(shapes[^1], turns);
        else
            advice.NoShape(truing.Turns, read, known);
        return new()
        {
            Turns = turns,
            Shapes = shapes,
            Findings = advice.Findings,
        };
    }

    private static (TurnResult Result, (Across At, double Uncertainty)? Offset) Judge(
        DialTurn turn,
        TruingAdvice advice,
        bool latest
    )
    {
        var limit = turn.Limit?.Value ?? UsualLimit(turn.Moment);
        var points = Points(turn);
        if (points.Count < turn.Readings.Count)
            advice.Incomplete(turn.Readings.Count - points.Count);
        advice.Supports();

        var spread = Spread(points);
        var expanded = Expanded(points);
        var round = Round.Of([.. points.Select(p => p.Angle)], SamePlace);
        var found = round.GoesRound ? TurnFit.Of(points, SamePlace) : null;
        if (found is null)
        {
            advice.NotRound(round);
            // Readings that do not go round still prove that it is over: the rest can only add to the run-out.
            var over = spread - expanded > limit;
            if (over)
                advice.Over(spread, limit, latest);
            return (
                new TurnResult(
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
                )
                {
                    Station = turn.Station?.Value,
                    Layer = turn.Layer,
                    AfterStroke = turn.AfterStroke,
                },
                null
            );
        }

        advice.Closing(points, SamePlace);
        advice.Spacing(round);
        var fit = found.Fit;
        var clean = new List<Point>();
        var blips = new List<Blip>();
        for (var i = 0; i < points.Count; i++)
        {
            if (found.IsBlip(i))
                blips.Add(
                    new(points[i].Reading, points[i].Angle, fit.Residuals[i], found.Weights[i])
                );
            else
                clean.Add(points[i]);
        }
        var (high, low) = Extremes(fit, 1);
        var curve = fit.At(high) - fit.At(low);
        var between =
            curve > spread + TruingFields.Division / 2
                ? Math.Max(expanded, 2 * fit.DifferenceUncertainty(high, low, found.Variances))
                : expanded;
        var judged = Math.Max(spread, curve);
        var verdict = Verdict(judged, between, limit);
        var cleanRunOut = Spread(clean);
        if (
            blips.Count > 0
            && Verdict(Math.Max(cleanRunOut, curve), between, limit) is var without
            && without < verdict
        )
            verdict = RunOutVerdict.ReadAgain;

        var first = FirstPart.Of(fit, found.Variances);
        var residual = 0.0;
        foreach (var p in clean)
            residual += Square(
                p.Dial
                    - fit.Middle
                    - fit.Part(1).Toward0 * Math.Cos(p.Angle)
                    - fit.Part(1).Toward90 * Math.Sin(p.Angle)
            );
        var (formHigh, formLow) = Extremes(fit, 2);
        var result = new TurnResult(
            turn.Id,
            turn.Moment,
            spread,
            between,
            first.Offset.Size,
            first.Along,
            first.HasDirection ? first.Offset.Direction : null,
            first.HasDirection ? first.Sideways / first.Offset.Size : 0,
            round.Places == 3 ? 0 : Math.Sqrt(residual / clean.Count),
            limit,
            verdict,
            Sentence.Plain("")
        )
        {
            Station = turn.Station?.Value,
            Layer = turn.Layer,
            AfterStroke = turn.AfterStroke,
            Middle = fit.Middle,
            Harmonics = Harmonics(turn, fit, found.Variances),
            HighestOrder = found.HighestOrder,
            Weights = found.Weights,
            Blips = blips,
            CleanRunOut = cleanRunOut,
            Form = fit.Order < 2 ? 0 : Without(fit, formHigh) - Without(fit, formLow),
        };
        advice.Form(result, found, points);
        switch (verdict)
        {
            case RunOutVerdict.Over:
                advice.Over(judged, limit, latest);
                break;
            case RunOutVerdict.TooCloseToCall:
                advice.TooClose(judged, between, limit, latest);
                break;
            case RunOutVerdict.ReadAgain:
                advice.OverByBlips(judged, cleanRunOut, limit, latest);
                break;
        }
        return (result with { Words = TruingWords.Of(result, curve) }, (first.Offset, first.Mean));
    }

    internal static RunOutVerdict Verdict(double runOut, double expanded, double limit) =>
        runOut + expanded <= limit ? RunOutVerdict.Inside
        : runOut - expanded > limit ? RunOutVerdict.Over
        : RunOutVerdict.TooCloseToCall;

    private static double Spread(List<Point> points) =>
        points.Count == 0 ? 0 : points.Max(p => p.Dial) - points.Min(p => p.Dial);

    /// <summary>U of the largest reading less the smallest, k = 2, mm.</summary>
    private static double Expanded(List<Point> points) =>
        points.Count == 0
            ? 0
            : 2
                * Math.Max(
                    points.MaxBy(p => p.Dial).DialUncertainty,
                    points.MinBy(p => p.Dial).DialUncertainty
                );

    private static List<Harmonic> Harmonics(DialTurn turn, HarmonicFit fit, double[] variances)
    {
        var harmonics = new List<Harmonic>();
        for (var k = 1; k <= fit.Order; k++)
        {
            var part = FirstPart.Of(fit, variances, k);
            harmonics.Add(
                new(
                    k,
                    part.Offset.Size,
                    part.Offset.Direction,
                    part.Along,
                    k > 1 && turn is { Support: Support.Vees, VeeAngle: { } vee }
                        ? VeeSensitivity.Over(k, vee.Value)
                        : null
                )
            );
        }
        return harmonics;
    }

    /// <summary>Where the fit from some order on stands highest and lowest, rad.</summary>
    private static (double High, double Low) Extremes(HarmonicFit fit, int from)
    {
        if (fit.Order == 1 && from == 1)
        {
            var high = fit.Part(1).Direction;
            return (high, high + Math.PI);
        }
        double At(double angle) => from == 1 ? fit.At(angle) : Without(fit, angle);
        // Six waves in 720 steps: the step's own error is below a thousandth of the height.
        const int steps = 720;
        double top = 0,
            bottom = 0,
            most = double.NegativeInfinity,
            least = double.PositiveInfinity;
        for (var i = 0; i < steps; i++)
        {
            var angle = Math.Tau * i / steps;
            var y = At(angle);
            if (y > most)
                (top, most) = (angle, y);
            if (y < least)
                (bottom, least) = (angle, y);
        }
        return (top, bottom);
    }

    private static double Without(HarmonicFit fit, double angle) =>
        fit.At(angle)
        - fit.Middle
        - fit.Part(1).Toward0 * Math.Cos(angle)
        - fit.Part(1).Toward90 * Math.Sin(angle);

    /// <summary>The turns that count at a moment: at each station the last. What was read before the press is history.</summary>
    /// <param name="truing">All turns.</param>
    /// <param name="moment">The moment.</param>
    public static TruingInput At(TruingInput truing, Moment moment)
    {
        ArgumentNullException.ThrowIfNull(truing);
        var turns = new List<DialTurn>();
        foreach (var turn in truing.Turns)
        {
            if (turn.Moment != moment)
                continue;
            // A turn with too little in it settles nothing.
            if (turns.Count == 0 || GoesRound(turn))
                turns.RemoveAll(t => SameStation(t, turn));
            turns.Add(turn);
        }
        return truing with { Turns = turns };
    }

    /// <summary>False when the same station was read again later: what it showed then has been dealt with since.</summary>
    private static bool IsLatest(IReadOnlyList<DialTurn> turns, int i)
    {
        for (var j = i + 1; j < turns.Count; j++)
        {
            // A turn with too little in it settles nothing.
            if (GoesRound(turns[j]) && SameStation(turns[i], turns[j]))
                return false;
        }
        return true;
    }

    private static bool GoesRound(DialTurn turn) =>
        Round.Of([.. Points(turn).Select(p => p.Angle)], SamePlace).GoesRound;

    private static bool SameStation(DialTurn one, DialTurn other) =>
        one.Station?.Value is { } a && other.Station?.Value is { } b
            ? Math.Abs(a - b) <= 5
            : one.Station is null && other.Station is null;

    private static List<Point> Points(DialTurn turn)
    {
        var read = turn
            .Readings.Select((r, i) => (Reading: r, At: i))
            .Where(r => r.Reading.Angle is not null && r.Reading.Dial is not null)
            .Select(r =>
                (
                    Angle: Across.Turn(r.Reading.Angle!.Value),
                    Dial: r.Reading.Dial!,
                    AngleU: TruingFields.ShaftAngle.StandardUncertainty(r.Reading.Angle),
                    r.At
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
                Math.Sqrt(Square(OfDial(r.Dial)) + Square(repeat)),
                r.At
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
