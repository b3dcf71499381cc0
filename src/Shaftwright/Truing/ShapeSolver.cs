using Shaftwright.Measures;

namespace Shaftwright.Truing;

/// <summary>Joins the stations that were read in one state of the shaft to its bow in space.</summary>
/// <remarks>One state: same moment, layer and stroke. Where strokes are not counted, a station that is read again begins a new
/// state, since the shaft may have been pressed between; where they are, it only replaces the earlier reading.</remarks>
internal static class ShapeSolver
{
    // Two stations nearer than this are one, mm.
    private const double SameStation = 5;

    public static IReadOnlyList<ShaftShape> Solve(
        IReadOnlyList<DialTurn> turns,
        IReadOnlyList<ReadStation> read,
        ShaftPlaces places
    )
    {
        var shapes = new List<ShaftShape>();
        foreach (var state in States(turns, read))
            shapes.Add(Shape(turns, state, places));
        return shapes;
    }

    /// <summary>The usable turns, state by state, in the order they were taken.</summary>
    private static List<List<ReadStation>> States(
        IReadOnlyList<DialTurn> turns,
        IReadOnlyList<ReadStation> read
    )
    {
        var states = new List<List<ReadStation>>();
        foreach (var station in read)
        {
            if (!station.Whole)
                continue;
            var turn = turns[station.Index];
            var open = states.Count > 0 ? states[^1] : null;
            var last = open is null ? null : turns[open[^1].Index];
            if (
                open is null
                || last!.Moment != turn.Moment
                || last.Layer != turn.Layer
                || last.AfterStroke != turn.AfterStroke
            )
            {
                states.Add([station]);
                continue;
            }
            var again = open.FindIndex(s => Math.Abs(s.Station - station.Station) <= SameStation);
            if (again < 0)
                open.Add(station);
            else if (turn.AfterStroke is not null)
                open[again] = station;
            else
                states.Add([station]);
        }
        return states;
    }

    private static ShaftShape Shape(
        IReadOnlyList<DialTurn> turns,
        List<ReadStation> stations,
        ShaftPlaces places
    )
    {
        var turn = turns[stations.Max(s => s.Index)];
        stations.Sort((a, b) => a.Station.CompareTo(b.Station));
        var possible = BendFit.Of(stations, places.WeldAt, out var variances);
        var likeliest = possible[0];
        var limit =
            stations.Min(s => turns[s.Index].Limit?.Value) ?? TruingSolver.UsualLimit(turn.Moment);
        var (high, highU) = HighPoint(likeliest, stations, places);
        // Even where none can be told, a bend may hide in the readings' uncertainty.
        var band =
            likeliest.Kind == BendKind.Straight
                ? [likeliest, .. BendFit.Hidden(stations, places.WeldAt)]
                : possible;
        var lines = Lines(stations, band, places, limit);
        var shape = new ShaftShape
        {
            Moment = turn.Moment,
            Layer = turn.Layer,
            AfterStroke = turn.AfterStroke,
            Stations =
            [
                .. stations.Select(
                    (s, i) =>
                        new ShapeStation(
                            s.TurnId,
                            s.Station,
                            s.First,
                            s.Second,
                            s.Offset,
                            Math.Sqrt(variances[i]),
                            likeliest.OffsetAt(s.Station, s.First, s.Second)
                        )
                ),
            ],
            Likeliest = likeliest,
            Possible = possible,
            WeldAt = places.WeldAt,
            Overall = places.Overall,
            HighPoint = high,
            HighPointUncertainty = highU,
            Lines = lines,
            Limit = limit,
            Words = Sentence.Plain(""),
        };
        return shape with { Words = ShapeWords.Of(shape) };
    }

    /// <summary>Direction of the bend where it stands out, and its standard uncertainty.</summary>
    private static (double?, double) HighPoint(
        Bend bend,
        List<ReadStation> stations,
        ShaftPlaces places
    )
    {
        if (bend.Kind == BendKind.Straight)
            return (null, 0);
        // About its own ends a bow stands out on one side: there is no leaving the line on the other.
        var from = places.Overall is null ? stations.Min(s => Math.Min(s.First, s.Station)) : 0;
        var to = places.Overall ?? stations.Max(s => Math.Max(s.Second, s.Station));
        var at = Largest(bend, from, to, from, to, places.WeldAt);
        var e = bend.OffsetAt(at, from, to);
        var u = bend.OffsetUncertaintyAt(at, from, to);
        return e.Size > 2 * u && e.Size > 0 ? (e.Direction, u / e.Size) : (null, 0);
    }

    private static List<LineRunOut> Lines(
        List<ReadStation> stations,
        IReadOnlyList<Bend> possible,
        ShaftPlaces places,
        double limit
    )
    {
        var lines = new List<LineRunOut>();
        var last = stations.MaxBy(s => s.Index);
        var from = Math.Min(0, stations.Min(s => s.Station));
        if (places.Overall is null)
            from = stations.Min(s => Math.Min(s.First, s.Station));
        var to = places.Overall ?? stations.Max(s => Math.Max(s.Second, s.Station));
        Add(TurningLine.AsRead, last.First, last.Second);
        if (places.Overall is { } overall)
            Add(TurningLine.Ends, 0, overall);
        if (
            places is { InnerCentre: { } inner, OuterCentre: { } outer }
            && Math.Abs(outer - inner) > 10
        )
            Add(TurningLine.JointCentres, inner, outer);
        return lines;

        void Add(TurningLine line, double a, double b)
        {
            double low = double.PositiveInfinity,
                high = 0;
            foreach (var bend in possible)
            {
                var x = Largest(bend, from, to, a, b, places.WeldAt);
                var (e, u) = (bend.OffsetAt(x, a, b).Size, bend.OffsetUncertaintyAt(x, a, b));
                low = Math.Min(low, Math.Max(0, 2 * e - 4 * u));
                high = Math.Max(high, 2 * e + 4 * u);
            }
            var at = Largest(possible[0], from, to, a, b, places.WeldAt);
            var offset = possible[0].OffsetAt(at, a, b);
            lines.Add(
                new(
                    line,
                    a,
                    b,
                    2 * offset.Size,
                    low,
                    high,
                    at,
                    offset.Direction,
                    high <= limit ? RunOutVerdict.Inside
                        : low > limit ? RunOutVerdict.Over
                        : RunOutVerdict.TooCloseToCall
                )
            );
        }
    }

    /// <summary>Where along the shaft a bend stands furthest off the line through two supports, mm from the inner end.</summary>
    private static double Largest(
        Bend bend,
        double from,
        double to,
        double a,
        double b,
        double? weld
    )
    {
        const int steps = 100;
        double at = from,
            most = -1;
        void Try(double x)
        {
            if (x >= from && x <= to && bend.OffsetAt(x, a, b).Size is var e && e > most + 1e-12)
                (at, most) = (x, e);
        }
        // Just beside the weld on both sides: a set-off jumps there.
        if (weld is { } w)
        {
            Try(w);
            Try(w + 1e-6);
        }
        for (var i = 0; i <= steps; i++)
            Try(from + (to - from) * i / steps);
        return at;
    }
}
