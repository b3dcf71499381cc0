using System.Globalization;
using System.Text;

namespace Shaftwright.Drawings;

/// <summary>Writes a drawing as inline SVG: named and described for those who cannot see it, coloured by CSS variables so
/// that the page, the dark garage and black-and-white print each get their own look.</summary>
public static class SvgWriter
{
    /// <summary>The SVG element.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="id">An id that no other element of the page has; null takes the drawing's code.</param>
    /// <param name="standalone">True to put <see cref="DrawingStyle.Css"/> inside and the namespace on it, for a file of its own.</param>
    /// <exception cref="ArgumentNullException"><paramref name="drawing"/> is null.</exception>
    public static string Write(Drawing drawing, string? id = null, bool standalone = false)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        var name = Markup.Escape(id ?? drawing.Code);
        var svg = new StringBuilder();
        svg.Append("<svg class=\"drawing\" role=\"img\" aria-labelledby=\"")
            .Append(name)
            .Append("-title ")
            .Append(name)
            .Append("-desc\" viewBox=\"0 0 ")
            .Append(N(drawing.Width))
            .Append(' ')
            .Append(N(drawing.Height))
            .Append("\" data-drawing=\"")
            .Append(Markup.Escape(drawing.Code))
            .Append('"');
        if (standalone)
            svg.Append(" xmlns=\"http://www.w3.org/2000/svg\"");
        svg.Append('>');
        svg.Append("<title id=\"")
            .Append(name)
            .Append("-title\">")
            .Append(Markup.Escape(drawing.Title))
            .Append("</title><desc id=\"")
            .Append(name)
            .Append("-desc\">")
            .Append(Markup.Escape(drawing.Description))
            .Append("</desc>");
        if (standalone)
            svg.Append("<style>").Append(DrawingStyle.Css).Append("</style>");
        foreach (var shape in drawing.Shapes)
            Append(svg, shape);
        return svg.Append("</svg>").ToString();
    }

    private static void Append(StringBuilder svg, Shape shape)
    {
        switch (shape)
        {
            case Line l:
                svg.Append("<path").Append(Class(l.Ink, "line")).Append(" d=\"");
                AppendPath(svg, [l.From, l.To]);
                svg.Append("\"/>");
                if (l.Arrow)
                    AppendArrow(svg, l.Ink, l.From, l.To);
                break;
            case Polyline { Points.Count: > 1 } p:
                svg.Append("<path").Append(Class(p.Ink, "line")).Append(" d=\"");
                AppendPath(svg, p.Points);
                svg.Append("\"/>");
                if (p.Arrow)
                    AppendArrow(svg, p.Ink, p.Points[^2], p.Points[^1]);
                break;
            case Polygon { Points.Count: > 2 } p:
                svg.Append("<path").Append(Class(p.Ink, "face")).Append(" d=\"");
                AppendPath(svg, p.Points);
                svg.Append("Z\"/>");
                break;
            case Circle c:
                svg.Append("<circle")
                    .Append(Class(c.Ink, "face"))
                    .Append(" cx=\"")
                    .Append(N(c.Centre.X))
                    .Append("\" cy=\"")
                    .Append(N(c.Centre.Y))
                    .Append("\" r=\"")
                    .Append(N(c.Radius))
                    .Append("\"/>");
                break;
            case Text t:
                AppendText(svg, t);
                break;
            case Measure m:
                svg.Append("<path").Append(Class(m.Ink, "line")).Append(" d=\"");
                AppendPath(svg, [m.From, m.To]);
                foreach (var end in new[] { m.From, m.To })
                    AppendPath(svg, [new(end.X, end.Y - 5), new(end.X, end.Y + 5)]);
                svg.Append("\"/>");
                AppendText(svg, new(m.Ink, m.WordsAt, m.Words, m.Size, Anchor.Middle));
                break;
        }
    }

    private static void AppendText(StringBuilder svg, Text t)
    {
        svg.Append("<text")
            .Append(Class(t.Ink, "words"))
            .Append(" x=\"")
            .Append(N(t.At.X))
            .Append("\" y=\"")
            .Append(N(t.At.Y))
            .Append("\" font-size=\"")
            .Append(N(t.Size))
            .Append('"');
        if (t.Anchor != Anchor.Start)
            svg.Append(" text-anchor=\"")
                .Append(t.Anchor == Anchor.Middle ? "middle" : "end")
                .Append('"');
        svg.Append('>').Append(Markup.Escape(t.Words)).Append("</text>");
    }

    private static void AppendArrow(StringBuilder svg, Ink ink, Spot from, Spot to)
    {
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var length = Math.Sqrt(dx * dx + dy * dy);
        if (length < 1e-9)
            return;
        var (ux, uy) = (dx / length, dy / length);
        Spot Side(double s) => new(to.X - 10 * ux - s * uy, to.Y - 10 * uy + s * ux);
        svg.Append("<path").Append(Class(ink, "head")).Append(" d=\"");
        AppendPath(svg, [to, Side(4), Side(-4)]);
        svg.Append("Z\"/>");
    }

    private static void AppendPath(StringBuilder svg, IReadOnlyList<Spot> points)
    {
        for (var i = 0; i < points.Count; i++)
            svg.Append(i == 0 ? 'M' : 'L')
                .Append(N(points[i].X))
                .Append(' ')
                .Append(N(points[i].Y));
    }

    private static string Class(Ink ink, string form) =>
        $" class=\"{form} {DrawingStyle.ClassOf(ink)}\"";

    private static string N(double value) =>
        value.ToString("0.##", CultureInfo.InvariantCulture) is var text && text == "-0"
            ? "0"
            : text;
}
