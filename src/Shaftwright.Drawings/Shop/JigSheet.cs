using System.Globalization;
using Shaftwright.Weld;

namespace Shaftwright.Drawings.Shop;

/// <summary>The alignment jig: from both ends, and from its side.</summary>
public static class JigSheet
{
    /// <summary>The sheet; null when the diameters at the weld are not known.</summary>
    /// <param name="result">The job's answers.</param>
    /// <param name="paper">The paper.</param>
    public static ShopSheet? Of(JobResult result, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(paper);
        if (result.Jig is not { } jig)
            return null;
        var board = new ShopBoard(
            paper,
            jig.Length + 2 * jig.Width,
            jig.Height,
            beside: 120,
            above: 76
        );
        var s = board.Scale;
        var (x, y) = (
            ShopBoard.Origin.X + 22,
            ShopBoard.Origin.Y + board.Height / 2 - jig.Height * s / 2 + 6
        );
        // First angle: what is seen from one end stands beyond the other.
        End(board, jig, jig.OuterApex, jig.OuterDiameter, x, y, "outer end");
        var side = x + jig.Width * s + 38;
        var right = side + jig.Length * s;
        double At(double z) => side + z * s;
        board.Outline(
            Pen.Edge,
            new At(side, y),
            new(right, y),
            new(right, y + jig.Height * s),
            new(At(jig.Hold + jig.Window), y + jig.Height * s),
            new(At(jig.Hold + jig.Window), y + jig.Base * s),
            new(At(jig.Hold), y + jig.Base * s),
            new(At(jig.Hold), y + jig.Height * s),
            new(side, y + jig.Height * s)
        );
        board.Line(Pen.Hidden, side, y + jig.InnerApex * s, At(jig.Hold), y + jig.InnerApex * s);
        board.Line(
            Pen.Hidden,
            At(jig.Hold + jig.Window),
            y + jig.OuterApex * s,
            right,
            y + jig.OuterApex * s
        );
        board.Line(Pen.Centre, side - 4, y + jig.Axis * s, right + 4, y + jig.Axis * s);
        board.Line(
            Pen.Cut,
            At(jig.Length / 2),
            y + (jig.Axis - 4) * s,
            At(jig.Length / 2),
            y + (jig.Axis + 4) * s
        );
        board.Across(side, At(jig.Hold), y, y - 7, ShopBoard.Mm(jig.Hold));
        board.Across(At(jig.Hold), At(jig.Hold + jig.Window), y, y - 7, ShopBoard.Mm(jig.Window));
        board.Across(side, right, y, y - 14, ShopBoard.Mm(jig.Length));
        board.Upright(
            y,
            y + jig.Base * s,
            At(jig.Hold + jig.Window / 2),
            At(jig.Hold + jig.Window / 2) + 4,
            ShopBoard.Mm(jig.Base)
        );
        board.Upright(y, y + jig.Axis * s, right, right + 7, ShopBoard.Mm(jig.Axis, "0.00"));
        End(board, jig, jig.InnerApex, jig.InnerDiameter, right + 52, y, "inner end");
        board.DatumUnder(At(jig.Length - jig.Hold / 2), y, "A");
        return board.Done(
            "shop-jig",
            "Alignment jig",
            ShaftSheet.JobName(result.Job),
            "A is the underside. Both vees in one setting, parallel to A within 0.02 over their length. Apex heights are where the faces would meet: mill a relief slot there.",
            "Steel or cast iron. A printed or wooden one serves to line up cold for tacking only: it burns, and what burns gives off poison."
        );
    }

    private static void End(
        ShopBoard board,
        AlignmentJig jig,
        double apex,
        double diameter,
        double x,
        double y,
        string which
    )
    {
        var s = board.Scale;
        var (w, m, v) = (jig.Width * s, jig.Width / 2 * s, jig.HalfOpening(apex) * s);
        board.Outline(
            Pen.Edge,
            new At(x, y),
            new(x + w, y),
            new(x + w, y + jig.Height * s),
            new(x + m + v, y + jig.Height * s),
            new(x + m, y + apex * s),
            new(x + m - v, y + jig.Height * s),
            new(x, y + jig.Height * s)
        );
        board.Circle(Pen.Hidden, x + m, y + jig.Axis * s, diameter / 2 * s);
        board.Line(Pen.Centre, x + m, y - 3, x + m, y + (jig.Axis + diameter / 2) * s + 3);
        board.Across(x, x + w, y, y - 7, ShopBoard.Mm(jig.Width));
        board.Upright(y, y + apex * s, x + m, x - 4, ShopBoard.Mm(apex, "0.00"));
        board.Words(
            x + m,
            y + (jig.Axis + diameter / 2) * s + 5,
            $"{which}, Ø{ShopBoard.Mm(diameter, "0.00")}, vee {(jig.Angle * 180 / Math.PI).ToString("0.#", CultureInfo.InvariantCulture)}°",
            middle: true
        );
    }
}
