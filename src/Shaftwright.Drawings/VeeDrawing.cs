using System.Globalization;
using Shaftwright.Cut;
using Shaftwright.Measures;
using Shaftwright.Weld;

namespace Shaftwright.Drawings;

/// <summary>Two ends in a vee, seen along the shaft: the smaller one on a pack of feeler blades on each face.</summary>
public static class VeeDrawing
{
    /// <summary>Draws it. Null when a diameter is not known.</summary>
    /// <param name="weld">The answer of the weld stage.</param>
    /// <param name="innerDiameter">Diameter of the inner-end piece, mm.</param>
    /// <param name="outerDiameter">Diameter of the outer-end piece, mm.</param>
    /// <param name="veeAngle">Included angle of the vee, rad; null draws 90° and says so.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="width">Width of the drawing, drawing units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="weld"/> is null.</exception>
    public static Drawing? Of(
        WeldResult weld,
        double? innerDiameter,
        double? outerDiameter,
        double? veeAngle = null,
        Display display = Display.Metric,
        double width = Drawing.Telephone
    )
    {
        ArgumentNullException.ThrowIfNull(weld);
        if (innerDiameter is not { } inner || outerDiameter is not { } outer)
            return null;
        var board = new Board(width);
        var half = (veeAngle ?? Math.PI / 2) / 2;
        var large = Math.Max(inner, outer) / 2;
        var shim = weld.Shim ?? Math.Abs(inner - outer) / 2;
        const double drawn = 78;
        var k = drawn / large;

        // A shim is a tenth or two of a millimetre on a bar of 25: to scale it would be a hair.
        var times = shim * k is > 0.01 and < 14 ? (int)Math.Ceiling(14 / (shim * k)) : 1;
        var gap = shim * k * times;
        var small = drawn - gap;
        var apex = new Spot(width / 2, 0);
        var lift = drawn / Math.Sin(half);
        var middle = 40 + drawn;
        apex = apex with { Y = middle + lift };
        var arm = lift * Math.Cos(half) + drawn * 0.55;
        Spot On(int side, double along, double off) =>
            new(
                apex.X + side * (along * Math.Sin(half) - off * Math.Cos(half)),
                apex.Y - along * Math.Cos(half) - off * Math.Sin(half)
            );

        board.Words(Ink.Strong, Board.Edge, 20, "In the vee, seen along the shaft");
        board.Add(new Polyline(Ink.Tool, [On(-1, arm, 0), apex, On(1, arm, 0)]));
        for (var i = 1; i <= 9; i++)
        {
            foreach (var side in new[] { -1, 1 })
                board.Add(
                    new Line(Ink.Tool, On(side, arm * i / 10, 0), On(side, arm * i / 10 - 7, -9))
                );
        }
        var touch = lift * Math.Cos(half);
        if (gap > 0)
        {
            foreach (var side in new[] { -1, 1 })
            {
                var leaves = (side < 0 ? weld.Packs?.Left : weld.Packs?.Right)?.Leaves ?? [shim];
                var total = leaves.Sum();
                var from = 0.0;
                foreach (var leaf in leaves)
                {
                    var to = from + leaf / total * gap;
                    board.Add(
                        new Polygon(
                            Ink.Shim,
                            [
                                On(side, touch - 26, from),
                                On(side, touch + 26, from),
                                On(side, touch + 26, to),
                                On(side, touch - 26, to),
                            ]
                        )
                    );
                    from = to;
                }
            }
        }
        var centre = new Spot(apex.X, middle);
        board.Add(new Circle(Ink.Bar, centre, small));
        board.Add(new Circle(Ink.Gone, centre, drawn));
        board.Add(
            new Line(
                Ink.Axis,
                new(centre.X - drawn - 12, middle),
                new(centre.X + drawn + 12, middle)
            )
        );
        board.Add(
            new Line(
                Ink.Axis,
                new(centre.X, middle - drawn - 10),
                new(centre.X, middle + drawn + 10)
            )
        );
        var (smallName, largeName) =
            inner <= outer
                ? ("inner-end piece", "outer-end piece")
                : ("outer-end piece", "inner-end piece");
        board.Add(
            new Text(
                Ink.Strong,
                new(centre.X, middle - 10),
                "ø\u00a0" + Diameter(Math.Min(inner, outer), display),
                Board.Small,
                Anchor.Middle
            )
        );

        var y = apex.Y + 30;
        var alike = gap <= 0;
        if (alike)
        {
            y = board.Paragraph(Ink.Strong, y, "Both ends are alike: no shims.");
        }
        else
        {
            var (leftWords, rightWords) = (
                Leaves(weld.Packs?.Left, shim, display),
                Leaves(weld.Packs?.Right, shim, display)
            );
            y = board.Paragraph(Ink.Strong, y, "Left face: " + leftWords);
            y = board.Paragraph(Ink.Strong, y, "Right face: " + rightWords);
        }
        y += 4;
        var legend = new Legend(board).Below(y - 20);
        legend.Face(smallName + (alike ? "" : ", on the shims"), Ink.Bar);
        legend.Face(largeName + ", behind it", Ink.Gone);
        var notes =
            times > 1
                ? $"Shims and the step drawn ×{times.ToString(CultureInfo.InvariantCulture)}. "
                : "";
        notes += veeAngle is { } a
            ? $"Vee of {Say.Angle(a).In(display)}; the shims would be the same in any vee."
            : "Drawn as a 90° vee; the shims are the same in any vee.";
        y = board.Paragraph(Ink.Note, legend.Bottom + 14, notes);

        return board.Done(
            "vee",
            "The two ends in the vee",
            Describe(weld, inner, outer, shim, display),
            y - 8,
            k,
            TableOf(weld, inner, outer, shim, display)
        );
    }

    // A hundredth in mm, a thousandth in inches: what the caliper of each trade reads.
    private static string Diameter(double mm, Display display) =>
        (display == Display.Inch ? Say.Length(mm) : Say.Fine(mm)).In(display);

    private static string Leaves(ShimPack? pack, double shim, Display display)
    {
        if (pack is null)
            return Say.Fine(shim).In(display) + " wanted; no pack found";
        var leaves = string.Join(" + ", pack.Leaves.Select(l => Say.Fine(l).In(display)));
        return pack.Leaves.Count > 1
            ? leaves + " = " + Say.Fine(pack.Thickness).In(display)
            : leaves;
    }

    private static string Describe(
        WeldResult weld,
        double inner,
        double outer,
        double shim,
        Display display
    )
    {
        if (weld.ShimUnder is null || shim <= 0)
            return "Both ends lie in the vee without shims.";
        var which = weld.ShimUnder == ShaftEnd.Inner ? "inner-end" : "outer-end";
        return $"The {which} piece is the smaller of the two and lies on {Say.Fine(shim).In(display)} of shim on each face of the vee, so that both axes are one.";
    }

    private static Table TableOf(
        WeldResult weld,
        double inner,
        double outer,
        double shim,
        Display display
    )
    {
        var rows = new List<IReadOnlyList<string>>
        {
            new[] { "inner-end piece, diameter", Diameter(inner, display) },
            new[] { "outer-end piece, diameter", Diameter(outer, display) },
            new[] { "shim wanted on each face", Say.Fine(shim).In(display) },
        };
        if (weld.Packs is { } packs)
        {
            rows.Add(["left face", Leaves(packs.Left, shim, display)]);
            rows.Add(["right face", Leaves(packs.Right, shim, display)]);
            rows.Add(["error of the worse pack", Say.Fine(packs.Error).In(display)]);
        }
        return new("Setting up in the vee", ["What", "How much"], rows);
    }
}
