using System.Globalization;
using Shaftwright.Measures;
using Shaftwright.Weld;

namespace Shaftwright.Drawings;

/// <summary>The next layer seen along the shaft from its inner end: where each bead goes, numbered, with the painted mark up.</summary>
public static class BeadDrawing
{
    /// <summary>Draws it.</summary>
    /// <param name="plan">The order of the beads.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="width">Width of the drawing, drawing units.</param>
    /// <param name="now">Number of the bead to weld now, from 1 in the layer; 0 for none.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static Drawing Of(
        BeadPlan plan,
        Display display = Display.Metric,
        double width = Drawing.Telephone,
        int now = 0
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        var board = new Board(width);
        const double R = 74;
        var centre = new Spot(width / 2, 46 + R + 34);
        // The mark stands up; angles are numbered clockwise as seen from the inner end.
        Spot At(double angle, double radius) =>
            new(centre.X + radius * Math.Sin(angle), centre.Y - radius * Math.Cos(angle));
        board.Words(
            Ink.Strong,
            Board.Edge,
            20,
            $"Layer {Whole(plan.NextLayer)}, seen from the inner end"
        );
        board.Add(new Circle(Ink.Bar, centre, R));
        board.Add(new Line(Ink.Answer, At(0, R - 16), At(0, R + 4)));
        board.Words(Ink.Note, centre.X, centre.Y - R - 36, "mark, 0°", Board.Small, Anchor.Middle);
        for (var i = 0; i < plan.Next.Count; i++)
        {
            var bead = plan.Next[i];
            var arc = new List<Spot>();
            for (var s = -10; s <= 10; s++)
                arc.Add(At(bead.At + (bead.Backwards ? -s : s) * Math.PI / 4 / 10 * 0.86, R + 9));
            board.Add(new Polyline(i + 1 == now ? Ink.Worst : Ink.Path, arc, Arrow: true));
            var at = At(bead.At, R - 26);
            board.Add(
                new Text(
                    i + 1 == now ? Ink.Worst : Ink.Strong,
                    at with
                    {
                        Y = at.Y + 6,
                    },
                    Whole(i + 1),
                    20,
                    Anchor.Middle
                )
            );
        }
        if (plan.Last is { } last && plan.FromDial)
        {
            board.Add(new Circle(Ink.Worst, At(last.HighPoint, R + 24), 6));
        }
        var y = centre.Y + R + 42;
        if (plan.FromDial)
            y = board.Paragraph(
                Ink.Note,
                y,
                $"Ring: stands highest at {Say.Bearing(plan.Last!.HighPoint).In(display)}."
            );
        y = board.Paragraph(
            Ink.Note,
            y,
            "Angles are numbered from the mark as on the dial. Arrows: the way the torch goes."
        );
        return board.Done(
            "beads",
            $"Layer {Whole(plan.NextLayer)}, bead by bead",
            "Quarter beads in this order: "
                + string.Join(", ", plan.Next.Select(b => Say.Bearing(b.At).In(display)))
                + ".",
            y - 6,
            0,
            WeldTables.Beads(plan, display)!
        );
    }

    private static string Whole(int x) => x.ToString(CultureInfo.InvariantCulture);
}
