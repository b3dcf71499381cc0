using Shaftwright.Donors;
using Shaftwright.Measures;
using Shaftwright.Truing.Pressing;

namespace Shaftwright.Drawings;

/// <summary>The shaft on the blocks of the press: where blocks and ram stand, which side is up, how deep to go.</summary>
public static class PressDrawing
{
    /// <summary>Draws the next stroke. Null when there is none.</summary>
    /// <param name="result">The answer of the press.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="width">Width of the drawing, drawing units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="result"/> is null.</exception>
    public static Drawing? Of(
        PressResult result,
        Display display = Display.Metric,
        double width = Drawing.Telephone
    )
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Plan is not { } plan)
            return null;
        var board = new Board(width);
        const double side = 26;
        // Between the blocks and a little beyond: the rest of the shaft changes nothing.
        var beyond = 0.18 * plan.Span;
        var from = Math.Max(0, plan.FirstBlockAt - beyond);
        var to = Math.Min(
            result.Stretches.Count > 0 ? result.Stretches[^1].To : plan.SecondBlockAt + beyond,
            plan.SecondBlockAt + beyond
        );
        var k = (width - 2 * side) / Math.Max(1, to - from);
        double At(double mm) => side + (mm - from) * k;
        var shown = Metal.Between(result.Stretches, from, to);
        var thickest = shown.Count == 0 ? 25 : shown.Max(s => Math.Max(s.Diameter, s.EndDiameter));
        var times = Metal.Exaggeration(k, thickest);
        var across = k * times;
        var half = thickest / 2 * across;

        board.Words(Ink.Note, Board.Edge, 18, "◀ power unit");
        board.Words(Ink.Note, width - Board.Edge, 18, "wheel ▶", anchor: Anchor.End);
        var ramX = At(plan.RamAt);
        board.Words(
            Ink.Answer,
            ramX,
            46,
            "press " + Say.Fine(plan.Depth).In(display) + " past contact",
            Board.Big,
            Anchor.Middle
        );
        var top = 122.0;
        var middle = top + half;
        board.Box(Ink.Tool, ramX - 13, top - 66, ramX + 13, top - 26);
        board.Add(new Line(Ink.Answer, new(ramX, top - 60), new(ramX, top - 3), Arrow: true));
        board.Add(new Line(Ink.Axis, new(At(from), middle), new(At(to), middle)));
        new Metal(board, At, middle, across).Body(shown);
        foreach (var block in new[] { plan.FirstBlockAt, plan.SecondBlockAt })
        {
            var (x, y) = (At(block), middle + RadiusAt(shown, block, thickest) * across);
            board.Add(new Polygon(Ink.Tool, [new(x, y), new(x + 17, y + 30), new(x - 17, y + 30)]));
        }
        // How it is bent now, drawn far too large: the high side is up.
        var rise = 12.0;
        board.Add(
            new Polyline(
                Ink.Path,
                [
                    new(At(plan.FirstBlockAt), middle),
                    new(ramX, middle - rise),
                    new(At(plan.SecondBlockAt), middle),
                ]
            )
        );

        var bottom = middle + half + 44;
        var (a, b) = (At(plan.FirstBlockAt), At(plan.SecondBlockAt));
        board.Dimension(
            a,
            ramX,
            bottom + 14,
            Say.Length(plan.RamAt - plan.FirstBlockAt).In(display)
        );
        board.Dimension(
            ramX,
            b,
            bottom + 14,
            Say.Length(plan.SecondBlockAt - plan.RamAt).In(display)
        );
        var y0 = board.Paragraph(
            Ink.Strong,
            bottom + 44,
            "From the inner end: blocks at "
                + Say.Length(plan.FirstBlockAt).In(display)
                + " and "
                + Say.Length(plan.SecondBlockAt).In(display)
                + ", ram at "
                + Say.Length(plan.RamAt).In(display)
                + "."
        );

        // Seen along the shaft: numbers run clockwise, so the mark lies as far to the left of the top as the high point's angle.
        const double round = 40;
        var eye = new Spot(side + round + 16, y0 + round + 26);
        board.Add(new Circle(Ink.Bar, eye, round));
        board.Add(
            new Line(
                Ink.Answer,
                new(eye.X, eye.Y - round - 24),
                new(eye.X, eye.Y - round - 2),
                Arrow: true
            )
        );
        var angle = -plan.Up;
        Spot Polar(double r) => new(eye.X + r * Math.Sin(angle), eye.Y - r * Math.Cos(angle));
        board.Add(new Line(Ink.Weld, Polar(round - 16), Polar(round + 10)));
        board.Add(new Circle(Ink.Worst, Polar(round), 5));
        var text = eye.X + round + 24;
        board.Words(Ink.Strong, text, eye.Y - 22, "Seen from the end");
        board.Words(Ink.Strong, text, eye.Y - 2, "you numbered from:");
        board.Words(Ink.Note, text, eye.Y + 18, "high side up, paint mark");
        board.Words(
            Ink.Note,
            text,
            eye.Y + 36,
            Say.Bearing(plan.Up).In(display) + " back from the top"
        );
        var end = board.Paragraph(
            Ink.Note,
            eye.Y + round + 34,
            Metal.ScaleWords(times) + " The bend is drawn far too large."
        );
        return board.Done(
            "press",
            "The next stroke of the press",
            Describe(plan, display),
            end - 8,
            k,
            TableOf(plan, display)
        );
    }

    private static double RadiusAt(IReadOnlyList<Stretch> shown, double at, double thickest)
    {
        foreach (var s in shown)
        {
            if (at >= s.From && at <= s.To)
                return s.At(at) / 2;
        }
        return thickest / 2;
    }

    private static string Describe(PressPlan plan, Display display) =>
        $"The shaft on two blocks {Say.Length(plan.Span).In(display)} apart, the ram between them, the side {Say.Bearing(plan.Up).In(display)} from the paint mark up. Press {Say.Fine(plan.Depth).In(display)} past contact.";

    private static Table TableOf(PressPlan plan, Display display) =>
        new(
            "The next stroke of the press",
            ["What", "Value"],
            [
                ["First block, from the inner end", Say.Length(plan.FirstBlockAt).In(display)],
                ["Ram, from the inner end", Say.Length(plan.RamAt).In(display)],
                ["Second block, from the inner end", Say.Length(plan.SecondBlockAt).In(display)],
                ["Under the ram, from the mark", Say.Bearing(plan.Up).In(display)],
                ["Depth past contact", Say.Fine(plan.Depth).In(display)],
                ["Of that springs back", Say.Fine(plan.SpringsBack).In(display)],
                [
                    "Load",
                    Say.Load(plan.Load.Low).In(display)
                        + " to "
                        + Say.Load(plan.Load.High).In(display),
                ],
                [
                    "Run-out should fall by",
                    Say.Fine(2 * Math.Max(0, plan.Seen.Low)).In(display)
                        + " to "
                        + Say.Fine(2 * plan.Seen.High).In(display),
                ],
                ["Chance of going too far", Say.Chance(plan.ChanceTooFar).In(display)],
            ]
        );
}
