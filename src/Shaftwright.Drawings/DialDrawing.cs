using System.Globalization;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.Drawings;

/// <summary>What the dial showed round the shaft, the circle that fits it, and the high point to mark.</summary>
public static class DialDrawing
{
    /// <summary>Draws it. Null when there is no reading.</summary>
    /// <param name="result">The turn, judged.</param>
    /// <param name="turn">The turn, as read.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="width">Width of the drawing, drawing units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Drawing? Of(
        TurnResult result,
        DialTurn turn,
        Display display = Display.Metric,
        double width = Drawing.Telephone
    )
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(turn);
        var readings = turn
            .Readings.Where(r => r is { Angle: not null, Dial: not null })
            .Select(r =>
                (
                    Angle: Turned(r.Angle!.Value),
                    Dial: r.Dial!.Value,
                    Alone: result.Blips.Any(b => turn.Readings[b.Reading] == r)
                )
            )
            .OrderBy(r => r.Angle)
            .ToList();
        if (readings.Count == 0)
            return null;

        const double round = 92;
        const double most = 34;
        var board = new Board(width);
        var centre = new Spot(width / 2, 34 + round + most + 26);
        var offset = result.Offset ?? 0;
        var lobed = result.Harmonics.Count > 1;
        double Fit(double angle) =>
            lobed ? result.Fitted(angle) - result.Middle
            : result.HighPoint is { } h ? offset * Math.Cos(angle - h)
            : 0;
        // The level that the fit stands about; readings count from it.
        var level =
            result.Harmonics.Count > 0
                ? result.Middle
                : readings.Average(r => r.Dial - Fit(r.Angle));
        var swing = Math.Max(
            Math.Max(readings.Max(r => Math.Abs(r.Dial - level)), lobed ? Swing(Fit) : offset),
            0.005
        );
        var k = Math.Min(most / swing, 2000);
        Spot Polar(double angle, double radius) =>
            new(centre.X + radius * Math.Sin(angle), centre.Y - radius * Math.Cos(angle));

        board.Words(Ink.Strong, Board.Edge, 20, "Under the dial, seen along the shaft");
        board.Add(new Circle(Ink.Gone, centre, round));
        // Only at the rim, so that the middle stays free for words.
        foreach (var quarter in new[] { 0, 1, 2, 3 })
            board.Add(
                new Line(
                    Ink.Axis,
                    Polar(quarter * Math.PI / 2, round - most),
                    Polar(quarter * Math.PI / 2, round + most)
                )
            );
        foreach (
            var (degrees, anchor, dx, dy) in new[]
            {
                (90, Anchor.Start, 12.0, 5.0),
                (180, Anchor.Middle, 0.0, 18.0),
                (270, Anchor.End, -12.0, 5.0),
            }
        )
        {
            var at = Polar(degrees * Math.PI / 180, round + most);
            board.Words(
                Ink.Axis,
                at.X + dx,
                at.Y + dy,
                degrees.ToString(CultureInfo.InvariantCulture) + "°",
                anchor: anchor
            );
        }

        // Numbering runs clockwise as drawn; an arrow inside says so.
        board.Add(
            new Polyline(
                Ink.Measure,
                [.. Enumerable.Range(0, 13).Select(i => Polar((14 + 4 * i) * Math.PI / 180, 52))],
                Arrow: true
            )
        );
        board.Words(Ink.Note, centre.X, centre.Y, "angles count", anchor: Anchor.Middle);
        board.Words(Ink.Note, centre.X, centre.Y + 18, "this way", anchor: Anchor.Middle);

        var dots = readings.Select(r => Polar(r.Angle, round + k * (r.Dial - level))).ToList();
        if (dots.Count > 2)
            board.Add(new Polygon(Ink.Path, dots));
        if (lobed)
        {
            board.Add(
                new Polygon(
                    Ink.Answer,
                    [
                        .. Enumerable
                            .Range(0, 120)
                            .Select(i => Math.Tau * i / 120)
                            .Select(a => Polar(a, round + k * Fit(a))),
                    ]
                )
            );
        }
        else if (result.HighPoint is { } high)
        {
            board.Add(
                new Circle(
                    Ink.Answer,
                    new(
                        centre.X + k * offset * Math.Sin(high),
                        centre.Y - k * offset * Math.Cos(high)
                    ),
                    round
                )
            );
        }
        for (var i = 0; i < dots.Count; i++)
        {
            if (readings[i].Alone)
                Cross(board, dots[i].X, dots[i].Y);
            else
                board.Add(new Circle(Ink.Reading, dots[i], 4));
        }
        board.Add(
            new Polygon(
                Ink.Weld,
                [
                    Polar(0, round + most + 2),
                    new(centre.X - 7, centre.Y - round - most - 14),
                    new(centre.X + 7, centre.Y - round - most - 14),
                ]
            )
        );
        board.Words(Ink.Strong, centre.X + 12, centre.Y - round - most - 3, "paint mark, 0°");

        var y = centre.Y + round + most + 44;
        if (result.HighPoint is { } top)
        {
            board.Add(
                new Line(Ink.Worst, Polar(top, 58), Polar(top, round + k * offset - 8), Arrow: true)
            );
            board.Add(new Circle(Ink.Worst, Polar(top, round + k * offset), 7));
            y = board.Paragraph(
                Ink.Worst,
                y,
                "HIGH at " + Say.Bearing(top).In(display) + " from the mark",
                Board.Big
            );
        }
        else
        {
            y = board.Paragraph(Ink.Strong, y, "No high point can be told.");
        }
        var legend = new Legend(board).Below(y - 16);
        legend.Dot("reading", Ink.Reading);
        if (result.Blips.Count > 0)
            legend.Item("stands alone", (x, at) => Cross(board, x + 13, at));
        if (lobed || result.HighPoint is not null)
            legend.Item(
                lobed ? "fitted shape" : "fitted circle",
                (x, at) => board.Add(new Circle(Ink.Answer, new(x + 13, at), 7))
            );
        if (result.HighPoint is not null)
            legend.Dot("high point", Ink.Worst);
        legend.Line("true round", Ink.Gone);
        // The picture shows the ring of readings, not the shaft to scale: what counts is how much the wobble is enlarged.
        var times = Rounded(k);
        y = board.Paragraph(
            Ink.Note,
            legend.Bottom + 14,
            $"Run-out drawn about ×{times} larger than the metal's."
        );

        return board.Done(
            "dial",
            "Dial readings round the shaft",
            Describe(result, display),
            y - 8,
            k,
            TableOf(result, readings, level, Fit, display)
        );
    }

    private static double Swing(Func<double, double> fit) =>
        Enumerable.Range(0, 120).Max(i => Math.Abs(fit(Math.Tau * i / 120)));

    /// <summary>A reading that the others disown.</summary>
    internal static void Cross(Board board, double x, double y)
    {
        board.Add(new Line(Ink.Worst, new(x - 5, y - 5), new(x + 5, y + 5)));
        board.Add(new Line(Ink.Worst, new(x - 5, y + 5), new(x + 5, y - 5)));
    }

    // 25.4 mm hold 96 CSS pixels, whatever the screen makes of them.
    private static string Rounded(double unitsPerMm)
    {
        var times = unitsPerMm * 25.4 / 96;
        var decade = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(times, 1))));
        return (Math.Round(times / decade) * decade).ToString("0", CultureInfo.InvariantCulture);
    }

    private static double Turned(double angle)
    {
        var turned = Math.IEEERemainder(angle, 2 * Math.PI);
        return turned < 0 ? turned + 2 * Math.PI : turned;
    }

    private static string Describe(TurnResult result, Display display)
    {
        var words = result.RunOut is { } runOut
            ? $"Total run-out {Say.Fine(runOut).In(display)}."
            : "Too few readings for a run-out.";
        foreach (var blip in result.Blips)
            words += $" The reading at {Say.Bearing(blip.Angle).In(display)} stands alone.";
        return result.HighPoint is { } high
            ? words
                + $" The high point lies {Say.Bearing(high).In(display)} from the paint mark, in the direction of numbering."
            : words + " No high point can be told.";
    }

    private static Table TableOf(
        TurnResult result,
        IReadOnlyList<(double Angle, double Dial, bool Alone)> readings,
        double level,
        Func<double, double> fit,
        Display display
    )
    {
        var rows = new List<IReadOnlyList<string>>();
        foreach (var (angle, dial, alone) in readings)
            rows.Add([
                Say.Angle(angle).In(display) + (alone ? " (stands alone)" : ""),
                Say.Fine(dial).In(display),
                Say.Fine(level + fit(angle)).In(display),
            ]);
        if (result.HighPoint is { } high)
            rows.Add([
                Say.Bearing(high).In(display) + " (high point)",
                "",
                Say.Fine(level + fit(high)).In(display),
            ]);
        return new("Dial readings round the shaft", ["Angle from the mark", "Dial", "Fit"], rows);
    }
}
