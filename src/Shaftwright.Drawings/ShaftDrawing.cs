using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Drawings;

/// <summary>The shaft that is made, lying with the power unit to the left: stretches, weld, heat, sleeve, hardened parts, dimensions.</summary>
public static class ShaftDrawing
{
    /// <summary>Draws the made shaft.</summary>
    /// <param name="made">The shaft.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="width">Width of the drawing, drawing units.</param>
    /// <param name="marks">Marks of crack tests to show on it; null for none.</param>
    /// <exception cref="ArgumentNullException"><paramref name="made"/> is null.</exception>
    public static Drawing Of(
        MadeShaft made,
        Display display = Display.Metric,
        double width = Drawing.Telephone,
        IReadOnlyList<MarkResult>? marks = null
    )
    {
        ArgumentNullException.ThrowIfNull(made);
        var board = new Board(width);
        const double side = 10;
        var k = (width - 2 * side) / Math.Max(made.Overall, 1);
        var thickest = Math.Max(
            made.Stretches.Count == 0
                ? 20
                : made.Stretches.Max(s => Math.Max(s.Diameter, s.EndDiameter)),
            made.SleeveOutside ?? 0
        );
        var times = Metal.Exaggeration(k, thickest);
        var across = k * times;
        double At(double mm) => side + mm * k;
        var half = thickest / 2 * across;
        var middle = 74 + half;
        var metal = new Metal(board, At, middle, across);
        var seen = new ShaftMarks(made, marks ?? []);

        board.Words(Ink.Note, side, 18, "◀ power unit");
        board.Words(Ink.Note, width - side, 18, "wheel ▶", anchor: Anchor.End);
        board.Add(new Line(Ink.Axis, new(0, middle), new(width, middle)));
        metal.Body(made.Stretches);

        var sleeve = made is { SleeveFrom: { } f, SleeveTo: { } t } ? new Band(f, t) : (Band?)null;
        var welds = new List<double> { made.WeldAt };
        if (sleeve is { } s0)
            welds.AddRange([s0.Low, s0.High]);
        List<Band> heat =
        [
            .. welds.Select(w => new Band(
                Math.Max(0, w - made.HeatBand),
                Math.Min(made.Overall, w + made.HeatBand)
            )),
        ];
        metal.Heat(heat, thickest / 2);
        metal.Hard(made.Stretches, made.Hardened);
        if (sleeve is { } s1)
        {
            var outside = (made.SleeveOutside ?? thickest * 1.25) / 2 * across;
            board.Box(Ink.Sleeve, At(s1.Low), middle - outside, At(s1.High), middle + outside);
        }
        metal.Diameters(made.Stretches, display, sleeve is { } over ? [.. heat, over] : heat);

        // The weld last: a wedge from both sides, so that it is seen on and through a sleeve.
        var w0 = At(made.WeldAt);
        foreach (var up in new[] { -1, 1 })
            board.Add(
                new Polygon(
                    Ink.Weld,
                    [
                        new(w0 - 4, middle + up * half),
                        new(w0 + 4, middle + up * half),
                        new(w0, middle + up * half * 0.35),
                    ]
                )
            );
        board.Add(new Line(Ink.Weld, new(w0, 48), new(w0, middle - half - 3), Arrow: true));
        board.Words(
            Ink.Strong,
            w0,
            42,
            "weld, " + Say.Length(made.WeldAt).In(display) + " from the inner end",
            anchor: Anchor.Middle
        );

        seen.Draw(board, At, middle, half, across);

        var y = middle + half + 30 + seen.Below;
        if (sleeve is { } s2)
        {
            board.Dimension(
                At(s2.Low),
                At(s2.High),
                y,
                "sleeve " + Say.Length(s2.High - s2.Low).In(display)
            );
            y += 28;
        }
        board.Dimension(At(0), w0, y, Say.Length(made.WeldAt).In(display));
        board.Dimension(
            w0,
            At(made.Overall),
            y,
            Say.Length(made.Overall - made.WeldAt).In(display)
        );
        y += 28;
        board.Dimension(
            At(0),
            At(made.Overall),
            y,
            Say.Length(made.Overall).In(display) + " overall",
            Board.Big
        );

        var legend = new Legend(board).Below(y + 8);
        legend.Line("weld", Ink.Weld);
        legend.Item(
            "changed by heat",
            (x, at) => new Metal(board, mm => x + mm, at, 1).Heat([new(0, 26)], 7)
        );
        if (made.Hardened.Count > 0)
            legend.Line("hardened", Ink.Hard);
        if (sleeve is not null)
            legend.Face("sleeve", Ink.Sleeve);
        MetalLegend(board, legend, made.Stretches);
        seen.Explain(board, legend);
        y = board.Paragraph(Ink.Note, legend.Bottom + 14, Metal.ScaleWords(times));
        y = seen.Words(board, y, display);

        return board.Done(
            "shaft",
            "The shaft to make",
            Describe(made, sleeve, display)
                + (marks is { Count: > 0 } ? " With the marks of its crack tests." : ""),
            y - 8,
            k,
            TableOf(made, sleeve, seen.Rows(display), display)
        );
    }

    /// <summary>Samples of the stretches that need a word.</summary>
    internal static void MetalLegend(Board board, Legend legend, IReadOnlyList<Stretch> stretches)
    {
        foreach (var kind in new[] { ZoneKind.Spline, ZoneKind.BootSeat })
        {
            if (stretches.Any(s => s.Kind == kind))
                legend.Item(
                    Metal.NameOf(kind),
                    (x, y) =>
                        new Metal(board, mm => x + mm, y, 1).Body([
                            new Stretch(kind, 0, 26, 14, 14),
                        ])
                );
        }
    }

    private static string Describe(MadeShaft made, Band? sleeve, Display display)
    {
        var words =
            $"A shaft {Say.Length(made.Overall).In(display)} overall, the power unit to the left, welded {Say.Length(made.WeldAt).In(display)} from its inner end.";
        return sleeve is { } s
            ? words
                + $" A sleeve covers it from {Say.Length(s.Low).In(display)} to {Say.Length(s.High).In(display)}."
            : words;
    }

    private static Table TableOf(
        MadeShaft made,
        Band? sleeve,
        IEnumerable<IReadOnlyList<string>> marks,
        Display display
    )
    {
        var rows = new List<IReadOnlyList<string>>();
        foreach (var s in made.Stretches)
            rows.Add(
                Row(Metal.NameOf(s.Kind), s.From, s.To, Metal.DiameterOf(s, display), display)
            );
        rows.Add([
            "weld",
            Say.Length(made.WeldAt).In(display),
            "",
            "heat taken to reach " + Say.Length(made.HeatBand).In(display) + " on each side",
        ]);
        if (sleeve is { } sl)
            rows.Add(
                Row(
                    "sleeve",
                    sl.Low,
                    sl.High,
                    made.SleeveOutside is { } d ? Say.Length(d).In(display) : "not known",
                    display
                )
            );
        foreach (var h in made.Hardened)
            rows.Add(
                Row(
                    "hardened",
                    h.From,
                    h.To,
                    h.CaseDepth is { } c
                        ? $"case {Say.Length(c.Low).In(display)} to {Say.Length(c.High).In(display)} deep"
                        : "case depth not known",
                    display
                )
            );
        rows.AddRange(marks);
        return new(
            "The shaft from its inner (power unit) end",
            ["What", "From", "To", "Diameter"],
            rows
        );
    }

    internal static IReadOnlyList<string> Row(
        string what,
        double from,
        double to,
        string diameter,
        Display display
    ) => [what, Say.Length(from).In(display), Say.Length(to).In(display), diameter];
}
