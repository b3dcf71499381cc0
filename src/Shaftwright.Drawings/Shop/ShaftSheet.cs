using Shaftwright.Cut;
using Shaftwright.Donors;

namespace Shaftwright.Drawings.Shop;

/// <summary>The two pieces to cut, and the shaft they make.</summary>
public static class ShaftSheet
{
    /// <summary>How much of the offcut is shown, mm of the part.</summary>
    private const double Offcut = 15;

    /// <summary>The sheet; null when the job has no cut.</summary>
    /// <param name="result">The job's answers.</param>
    /// <param name="paper">The paper.</param>
    public static ShopSheet? Of(JobResult result, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(paper);
        if (
            result
            is not {
                Cut: { Marks: { } marks, Made: { } made },
                Donors: { InnerEnd: { } inner, OuterEnd: { } outer },
            }
        )
            return null;
        var thick = made.Stretches.Max(s => Math.Max(s.Diameter, s.EndDiameter));
        thick = Math.Max(thick, made.SleeveOutside ?? 0);
        var board = new ShopBoard(paper, made.Overall, 3 * thick, beside: 34, above: 98);
        var s = board.Scale;
        var left = ShopBoard.Origin.X + 22;
        var row = thick * s;
        // From the top down: inner piece, outer piece, the shaft.
        var y = ShopBoard.Origin.Y + board.Height - 16 - row / 2;
        Piece(board, inner, marks.Inner, left, y, "A");
        y -= row + 30;
        Piece(board, outer, marks.Outer, left, y, "B");
        y -= row + 28;
        Shaft(board, made, left, y, row / 2);
        return board.Done(
            "shop-shaft",
            "Pieces to cut, and the shaft",
            JobName(result.Job),
            $"A and B are the joint ends. Faces square to the axis within 0.1. Both end to end {ShopBoard.Mm(marks.Pair)}; with the gap {ShopBoard.Mm(marks.InVee)} before tacking."
        );
    }

    internal static string JobName(Job job) =>
        job.Name
        + job.Side switch
        {
            Side.Left when !job.Name.Contains("left", StringComparison.OrdinalIgnoreCase) =>
                ", left",
            Side.Right when !job.Name.Contains("right", StringComparison.OrdinalIgnoreCase) =>
                ", right",
            _ => "",
        };

    private static void Piece(
        ShopBoard board,
        DonorProfile donor,
        PieceMark mark,
        double left,
        double y,
        string datum
    )
    {
        var s = board.Scale;
        var cut = mark.Length;
        Body(board, Metal.Between(donor.Stretches, 0, cut), Pen.Edge, left, y);
        Body(
            board,
            Metal.Between(donor.Stretches, cut, Math.Min(donor.Length, cut + Offcut)),
            Pen.Hidden,
            left,
            y
        );
        board.Line(Pen.Centre, left - 4, y, left + (cut + Offcut) * s + 4, y);
        var at = donor
            .Stretches.Where(t => t.From < cut)
            .Select(t => t.At(Math.Min(t.To, cut)))
            .Last();
        var half = at / 2 * s;
        var face = left + cut * s;
        board.Line(Pen.Cut, face, y - half - 3, face, y + half + 3);
        board.Datum(left, y + donor.Stretches[0].Diameter / 2 * s, datum);
        board.Words(
            left + 9,
            y + donor.Stretches.Max(t => Math.Max(t.Diameter, t.EndDiameter)) / 2 * s + 6.5,
            donor.Name.Length > 0 ? donor.Name
                : mark.End == ShaftEnd.Inner ? "inner-end donor"
                : "outer-end donor"
        );
        board.Upright(
            y - half,
            y + half,
            face,
            face + Offcut * s + 5,
            "Ø" + ShopBoard.Mm(at, "0.00")
        );
        var lowest = y - donor.Stretches.Max(t => Math.Max(t.Diameter, t.EndDiameter)) / 2 * s;
        if (mark.Near is { } near)
        {
            board.Across(
                left + near.At * s,
                left + mark.Scribe * s,
                lowest,
                lowest - 7,
                ShopBoard.Mm(near.ToScribe) + " to scribe"
            );
            board.Across(left, face, lowest, lowest - 14, Length(mark));
        }
        else
            board.Across(left, face, lowest, lowest - 9, Length(mark));
    }

    private static string Length(PieceMark mark) =>
        $"{ShopBoard.Mm(mark.Length)} ±0.2 faced (scribe {ShopBoard.Mm(mark.Scribe)})";

    private static void Shaft(ShopBoard board, MadeShaft made, double left, double y, double half)
    {
        var s = board.Scale;
        Body(board, made.Stretches, Pen.Edge, left, y);
        board.Line(Pen.Centre, left - 4, y, left + made.Overall * s + 4, y);
        var weld = left + made.WeldAt * s;
        board.Line(Pen.Cut, weld, y - half - 2, weld, y + half + 2);
        board.Across(left, weld, y + half, y + half + 5, ShopBoard.Mm(made.WeldAt) + " weld");
        board.Across(
            left,
            left + made.Overall * s,
            y - half,
            y - half - 14,
            ShopBoard.Mm(made.Overall) + " overall, welded"
        );
        if (made is { SleeveFrom: { } from, SleeveTo: { } to })
        {
            var r = (made.SleeveOutside ?? made.Stretches.Max(t => t.Diameter)) / 2 * s;
            board.Outline(
                Pen.Hidden,
                new At(left + from * s, y - r),
                new(left + to * s, y - r),
                new(left + to * s, y + r),
                new(left + from * s, y + r)
            );
            board.Across(
                left + from * s,
                left + to * s,
                y - half,
                y - half - 7,
                ShopBoard.Mm(to - from) + " sleeve"
            );
        }
    }

    private static void Body(
        ShopBoard board,
        IReadOnlyList<Stretch> stretches,
        Pen pen,
        double left,
        double y
    )
    {
        var s = board.Scale;
        for (var i = 0; i < stretches.Count; i++)
        {
            var t = stretches[i];
            var (x1, x2) = (left + t.From * s, left + t.To * s);
            var (a, b) = (t.Diameter / 2 * s, t.EndDiameter / 2 * s);
            board.Line(pen, x1, y + a, x2, y + b);
            board.Line(pen, x1, y - a, x2, y - b);
            board.Line(pen, x1, y - a, x1, y + a);
            if (
                i == stretches.Count - 1
                || Math.Abs(stretches[i + 1].Diameter - t.EndDiameter) > 1e-9
            )
                board.Line(pen, x2, y - b, x2, y + b);
            if (t is { Kind: ZoneKind.Spline, RootDiameter: { } root })
            {
                board.Line(Pen.Hidden, x1, y + root / 2 * s, x2, y + root / 2 * s);
                board.Line(Pen.Hidden, x1, y - root / 2 * s, x2, y - root / 2 * s);
            }
        }
    }
}
