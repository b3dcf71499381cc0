using System.Globalization;
using Shaftwright.Measures;
using Shaftwright.Weld;

namespace Shaftwright.Drawings;

/// <summary>Both prepared ends in section along the shaft, with the beads that fill the groove, to scale.</summary>
public static class GrooveDrawing
{
    /// <summary>Draws it.</summary>
    /// <param name="groove">The groove.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="width">Width of the drawing, drawing units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="groove"/> is null.</exception>
    public static Drawing Of(
        PreparationNumbers groove,
        Display display = Display.Metric,
        double width = Drawing.Telephone
    )
    {
        ArgumentNullException.ThrowIfNull(groove);
        var board = new Board(width);
        var R = groove.Diameter / 2;
        var half = groove.Gap / 2;
        var top = groove.Depth * Math.Tan(groove.Bevel) + half;
        var arm = Math.Max(top * 0.6, R * 0.6);
        var k = Math.Min((width - 2 * Board.Edge) / (2 * (top + arm)), 190 / (2 * R));
        var middle = width / 2;
        var axis = 44 + groove.Cap * k + R * k;
        Spot At(double along, double radius) => new(middle + along * k, axis - radius * k);

        board.Words(Ink.Strong, Board.Edge, 20, "The groove, cut along the shaft");
        foreach (var side in new[] { -1, 1 })
        foreach (var up in new[] { 1, -1 })
        {
            var flat = groove.Flat / 2;
            board.Add(
                new Polygon(
                    Ink.Bar,
                    [
                        At(side * (top + arm), 0),
                        At(side * half, 0),
                        At(side * half, up * flat),
                        At(side * top, up * R),
                        At(side * (top + arm), up * R),
                    ]
                )
            );
        }
        Beads(board, groove, k, At);
        board.Add(new Line(Ink.Axis, At(-(top + arm), 0), At(top + arm, 0)));
        var y = axis + (R + groove.Cap) * k + 40;
        board.Dimension(
            middle - top * k,
            middle + top * k,
            y,
            Say.Length(2 * top).In(display) + " across"
        );
        y += 24;
        foreach (
            var line in new[]
            {
                $"{Say.Length(groove.Depth).In(display)} deep, bevel {Say.Angle(groove.Bevel).In(display)} each, gap {Say.Length(groove.Gap).In(display)}, flat {Say.Length(groove.Flat).In(display)}",
                $"{Runs(groove)} runs drawn of the size that is usual; the real ones differ",
            }
        )
            y = board.Paragraph(Ink.Note, y, line);
        return board.Done(
            "groove",
            "The groove and its beads",
            $"Two ends of {Say.Diameter(groove.Diameter).In(display)} bar, bevelled {Say.Angle(groove.Bevel).In(display)} each to a flat of {Say.Length(groove.Flat).In(display)}, {Say.Length(groove.Gap).In(display)} apart: a groove {Say.Length(groove.Depth).In(display)} deep, filled in {Runs(groove)} runs.",
            y - 6,
            k,
            new(
                "The groove",
                ["What", "How much"],
                [
                    ["depth", Say.Length(groove.Depth).In(display)],
                    ["metal to fill in", Whole(groove.Volume) + " mm³"],
                    ["runs", Runs(groove)],
                    [
                        "ring as deep as the groove",
                        Say.Share(groove.ShareOfGroove).In(display) + " of solid bar",
                    ],
                    ["ring that counts", Say.Share(groove.ShareCounted).In(display)],
                    [
                        "draws together",
                        $"{Say.Length(groove.Shrinkage.Low).In(display)} to {Say.Length(groove.Shrinkage.High).In(display)}",
                    ],
                ]
            )
        );
    }

    /// <summary>Rows of circles of one bead's size from the root up, as many as fit.</summary>
    private static void Beads(
        Board board,
        PreparationNumbers groove,
        double k,
        Func<double, double, Spot> at
    )
    {
        var bead = (groove.Bead.Low + groove.Bead.High) / 2;
        var r = Math.Sqrt(bead / Math.PI);
        var flat = groove.Flat / 2;
        for (var depth = r; depth - r < groove.Depth; depth += 1.75 * r)
        {
            var wide = 2 * depth * Math.Tan(groove.Bevel) + groove.Gap;
            var count = Math.Max(1, (int)Math.Floor(wide / (1.9 * r)));
            for (var i = 0; i < count; i++)
            {
                var along = count == 1 ? 0 : (i - (count - 1) / 2.0) * (wide / count);
                foreach (var up in new[] { 1, -1 })
                    board.Add(
                        new Circle(Ink.Shim, at(along, up * (flat + depth)), Math.Max(2, r * k))
                    );
            }
        }
    }

    private static string Runs(PreparationNumbers groove) =>
        groove.FewestRuns == groove.MostRuns
            ? groove.FewestRuns.ToString(CultureInfo.InvariantCulture)
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{groove.FewestRuns} to {groove.MostRuns}"
            );

    private static string Whole(double x) => x.ToString("0", CultureInfo.InvariantCulture);
}
