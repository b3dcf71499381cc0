using System.Globalization;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.Drawings;

/// <summary>The shaft's bow in space: its line about the supports it lay on, the bow drawn larger by a stated factor.</summary>
public static class BowDrawing
{
    private const double Height = 44;

    /// <summary>Draws it. Null when there is nothing to draw.</summary>
    /// <param name="shape">The bow.</param>
    /// <param name="turns">The turns judged, for readings that stand alone.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="width">Width of the drawing, drawing units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Drawing? Of(
        ShaftShape? shape,
        IReadOnlyList<TurnResult> turns,
        Display display = Display.Metric,
        double width = Drawing.Telephone
    )
    {
        ArgumentNullException.ThrowIfNull(turns);
        if (shape is not { Stations.Count: > 0, Lines.Count: > 0 })
            return null;
        var (a, b) = (shape.Lines[0].From, shape.Lines[0].To);
        var from = Math.Min(
            shape.Overall is null ? double.PositiveInfinity : 0,
            Math.Min(a, shape.Stations.Min(s => s.Station))
        );
        var to = Math.Max(shape.Overall ?? 0, Math.Max(b, shape.Stations.Max(s => s.Station)));
        var board = new Board(width);
        const double side = 18;
        var kx = (width - 2 * side) / (to - from);
        double X(double x) => side + (x - from) * kx;

        var up = shape.HighPoint ?? 0;
        var marks = shape
            .Stations.Select(s =>
                (
                    Station: s,
                    // What was read on other supports, carried to these by the bow found.
                    Off: shape.Likeliest.OffsetAt(s.Station, a, b) + (s.Read - s.Fitted)
                )
            )
            .ToList();
        var line = Enumerable
            .Range(0, 121)
            .Select(i => from + (to - from) * i / 120)
            .Concat(shape.WeldAt is { } w ? [w, w + 1e-6] : [])
            .Order()
            .Select(x => (X: x, Off: shape.Likeliest.OffsetAt(x, a, b)))
            .ToList();
        double Towards(Across off, double direction) =>
            off.Size * Math.Cos(off.Direction - direction);
        double Most(double direction) =>
            Math.Max(
                line.Max(p => Math.Abs(Towards(p.Off, direction))),
                marks.Max(m => Math.Abs(Towards(m.Off, direction)))
            );
        var most = Math.Max(Most(up), Most(up + Math.PI / 2));
        var factor = Round(Height / Math.Max(most, 0.01) / kx);
        var ky = factor * kx;

        board.Words(Ink.Strong, Board.Edge, 20, "The shaft's line about its supports");
        var y = 58.0 + Height;
        View(
            up,
            shape.HighPoint is null
                ? "seen with the mark up"
                : $"seen with {Say.Bearing(up).In(display)} up",
            true
        );
        // The other view only where it shows something.
        if (Most(up + Math.PI / 2) * ky > 6)
        {
            y += 2 * Height + 34;
            var other = Across.Turn(up + Math.PI / 2);
            View(other, $"seen with {Say.Bearing(other).In(display)} up", false);
        }
        y += Height + 22;
        if (shape.HighPoint is { } high)
            y = board.Paragraph(
                Ink.Worst,
                y,
                "HIGH towards " + Say.Bearing(high).In(display) + " from the mark",
                Board.Big
            );
        var legend = new Legend(board).Below(y - 18);
        legend.Dot("station read", Ink.Reading);
        if (marks.Any(m => Alone(m.Station)))
            legend.Item(
                "with a reading that stands alone",
                (x, at) => DialDrawing.Cross(board, x + 13, at)
            );
        legend.Line("line found", Ink.Answer);
        legend.Item("support", (x, at) => Support(board, x + 13, at - 4));
        if (shape.WeldAt is not null)
            legend.Line("weld", Ink.Weld);
        y = board.Paragraph(
            Ink.Note,
            legend.Bottom + 14,
            $"Bow drawn ×{factor.ToString("0", CultureInfo.InvariantCulture)} larger than the length."
        );
        return board.Done(
            "bow",
            "The shaft's bow in space",
            shape.Words.In(display),
            y - 8,
            kx,
            TableOf(shape, display)
        );

        bool Alone(ShapeStation station) =>
            turns.FirstOrDefault(t => t.TurnId == station.TurnId) is { Blips.Count: > 0 };

        void View(double direction, string words, bool main)
        {
            var zero = y;
            double Y(Across off) => zero - ky * Towards(off, direction);
            board.Words(Ink.Note, Board.Edge, zero - Height - 14, words);
            board.Add(new Line(Ink.Axis, new(side, zero), new(width - side, zero)));
            Support(board, X(a), zero);
            Support(board, X(b), zero);
            if (shape.WeldAt is { } weld)
                board.Add(new Line(Ink.Weld, new(X(weld), zero - 12), new(X(weld), zero + 12)));
            board.Add(new Polyline(Ink.Answer, [.. line.Select(p => new Spot(X(p.X), Y(p.Off)))]));
            foreach (var (station, off) in marks)
            {
                var at = new Spot(X(station.Station), Y(off));
                board.Add(new Circle(Ink.Reading, at, 4));
                if (Alone(station))
                    DialDrawing.Cross(board, at.X, at.Y + 15);
            }
            if (main && shape.HighPoint is not null)
            {
                var top = line.MaxBy(p => Towards(p.Off, direction));
                var tip = new Spot(X(top.X), Y(top.Off) - 5);
                board.Add(
                    new Polygon(
                        Ink.Worst,
                        [tip, new(tip.X - 6, tip.Y - 11), new(tip.X + 6, tip.Y - 11)]
                    )
                );
            }
        }
    }

    private static void Support(Board board, double x, double y) =>
        board.Add(new Polygon(Ink.Tool, [new(x, y), new(x - 7, y + 13), new(x + 7, y + 13)]));

    /// <summary>Down to 1, 2 or 5 times a power of ten.</summary>
    private static double Round(double factor)
    {
        var decade = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(factor, 1))));
        var lead = factor / decade;
        return decade
            * (
                lead >= 5 ? 5
                : lead >= 2 ? 2
                : 1
            );
    }

    private static Table TableOf(ShaftShape shape, Display display)
    {
        var rows = shape
            .Stations.Select(s =>
                (IReadOnlyList<string>)
                    [
                        Say.Length(s.Station).In(display),
                        $"{Say.Length(s.FirstSupport).In(display)} and {Say.Length(s.SecondSupport).In(display)}",
                        $"{Say.Fine(s.Read.Size).In(display)} at {Say.Bearing(s.Read.Direction).In(display)}",
                        $"{Say.Fine(s.Fitted.Size).In(display)} at {Say.Bearing(s.Fitted.Direction).In(display)}",
                    ]
            )
            .ToList();
        foreach (var l in shape.Lines)
            rows.Add([
                Say.Length(l.At).In(display) + " (largest)",
                $"{Say.Length(l.From).In(display)} and {Say.Length(l.To).In(display)}",
                "",
                l.RunOut > 0
                    ? $"{Say.Fine(l.RunOut / 2).In(display)} at {Say.Bearing(l.HighPoint).In(display)}"
                    : Say.Fine(0).In(display),
            ]);
        return new(
            "How far the axis stands off the line between supports, and towards where",
            ["At", "Supports at", "Read", "By the line found"],
            rows
        );
    }
}
