using System.Globalization;
using System.Text;

namespace Shaftwright.Drawings.Shop;

/// <summary>Writes a works drawing as SVG in its size on paper.</summary>
public static class ShopSvg
{
    /// <summary>The element, a file of its own.</summary>
    /// <param name="sheet">The drawing.</param>
    public static string Write(ShopSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var (w, h) = (sheet.Paper.Width, sheet.Paper.Height);
        var svg = new StringBuilder();
        svg.Append(
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"{N(w)}mm\" height=\"{N(h)}mm\" viewBox=\"0 0 {N(w)} {N(h)}\" font-family=\"Helvetica,Arial,'DejaVu Sans',sans-serif\"><title>{Markup.Escape(sheet.Title)}</title><rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>"
        );
        foreach (var mark in sheet.Marks)
        {
            switch (mark)
            {
                case ShopLine l:
                    svg.Append(
                        $"<path d=\"M{N(l.From.X)} {N(h - l.From.Y)}L{N(l.To.X)} {N(h - l.To.Y)}\"{Look(l.Pen)}/>"
                    );
                    break;
                case ShopCircle c:
                    svg.Append(
                        $"<circle cx=\"{N(c.Centre.X)}\" cy=\"{N(h - c.Centre.Y)}\" r=\"{N(c.Radius)}\"{Look(c.Pen)}/>"
                    );
                    break;
                case ShopText t:
                    svg.Append(
                        $"<text x=\"{N(t.At.X)}\" y=\"{N(h - t.At.Y)}\" font-size=\"{N(t.Height / 0.72)}\"{(t.Middle ? " text-anchor=\"middle\"" : "")}>{Markup.Escape(t.Words)}</text>"
                    );
                    break;
            }
        }
        return svg.Append("</svg>").ToString();
    }

    private static string Look(Pen pen)
    {
        var (width, dashes) = pen switch
        {
            Pen.Edge => ("0.5", ""),
            Pen.Hidden => ("0.25", "3 1.5"),
            Pen.Centre => ("0.18", "9 1.5 1.5 1.5"),
            Pen.Dimension => ("0.18", ""),
            Pen.Cut => ("0.9", ""),
            _ => ("0.35", ""),
        };
        return $" fill=\"none\" stroke=\"#000\" stroke-width=\"{width}\""
            + (dashes.Length > 0 ? $" stroke-dasharray=\"{dashes}\"" : "");
    }

    private static string N(double number) =>
        Math.Round(number, 4).ToString("0.####", CultureInfo.InvariantCulture);
}
