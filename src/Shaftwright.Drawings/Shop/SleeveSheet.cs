namespace Shaftwright.Drawings.Shop;

/// <summary>The sleeve to make: cut open along its axis, and from its end.</summary>
public static class SleeveSheet
{
    /// <summary>The sheet; null when the job has no sleeve, or its outside was not said.</summary>
    /// <param name="result">The job's answers.</param>
    /// <param name="paper">The paper.</param>
    public static ShopSheet? Of(JobResult result, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(paper);
        if (
            result.Cut?.Marks?.Sleeve is not { Outside: { } outside } sleeve
            || outside <= sleeve.Bore
        )
            return null;
        var board = new ShopBoard(paper, sleeve.Length + outside, outside, beside: 130, above: 60);
        var s = board.Scale;
        var (left, y) = (ShopBoard.Origin.X + 60, ShopBoard.Origin.Y + board.Height / 2 + 6);
        var right = left + sleeve.Length * s;
        var (big, small) = (outside / 2 * s, sleeve.Bore / 2 * s);
        board.Outline(
            Pen.Edge,
            new At(left, y - big),
            new(right, y - big),
            new(right, y + big),
            new(left, y + big)
        );
        board.Line(Pen.Edge, left, y + small, right, y + small);
        board.Line(Pen.Edge, left, y - small, right, y - small);
        board.Line(Pen.Centre, left - 4, y, right + 4, y);
        // The cut metal, hatched at 45 degrees.
        for (var x = left - (big - small); x < right; x += 3)
        {
            foreach (var bottom in (double[])[y + small, y - big])
            {
                var (from, to) = (Math.Max(x, left), Math.Min(x + big - small, right));
                if (to > from)
                    board.Line(Pen.Dimension, from, bottom + from - x, to, bottom + to - x);
            }
        }
        board.Across(left, right, y - big, y - big - 8, ShopBoard.Mm(sleeve.Length) + " ±0.2");
        board.Upright(
            y - small,
            y + small,
            left,
            left - 7,
            "Ø" + ShopBoard.Mm(sleeve.Bore, "0.00") + " +0.05/0"
        );
        board.Upright(y - big, y + big, right, right + 7, "Ø" + ShopBoard.Mm(outside));
        var middle = right + 42 + big;
        board.Circle(Pen.Edge, middle, y, big);
        board.Circle(Pen.Edge, middle, y, small);
        board.Line(Pen.Centre, middle - big - 4, y, middle + big + 4, y);
        board.Line(Pen.Centre, middle, y - big - 4, middle, y + big + 4);
        if (sleeve.Halves)
        {
            board.Line(Pen.Cut, middle - big - 2, y, middle - small, y);
            board.Line(Pen.Cut, middle + small, y, middle + big + 2, y);
        }
        return board.Done(
            "shop-sleeve",
            sleeve.Halves ? "Sleeve, in two halves" : "Sleeve",
            ShaftSheet.JobName(result.Job),
            sleeve.Halves
                ? "Bore first, then saw into two halves; keep the halves as a pair. Break sharp edges."
                : "In one piece: on before the butt is tacked. Break sharp edges.",
            $"Bore {ShopBoard.Mm(sleeve.Fit, "0.00")} over the thickest bar under it: measure that bar before boring."
        );
    }
}
