using System.Globalization;
using System.Text;

namespace Shaftwright.Drawings.Shop;

/// <summary>Writes works drawings as PDF, a sheet a page, in their size on paper: print it without fitting to the page.</summary>
/// <remarks>Lines, circles and words in one of the fonts that every reader has, so nothing is embedded and it runs in the browser
/// as well. Source: ISO 32000-1; the fourteen standard fonts and WinAnsi, annex D.</remarks>
public static class PdfWriter
{
    private const double PointsPerMm = 72 / 25.4;

    /// <summary>The bytes of the file.</summary>
    /// <param name="sheets">The drawings.</param>
    public static byte[] Write(params IReadOnlyList<ShopSheet> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        var objects = new List<byte[]>
        {
            Bytes("<< /Type /Catalog /Pages 2 0 R >>"),
            Bytes(
                $"<< /Type /Pages /Count {sheets.Count} /Kids [{string.Join(' ', sheets.Select((_, i) => $"{4 + 2 * i} 0 R"))}] >>"
            ),
            Bytes(
                "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>"
            ),
        };
        for (var i = 0; i < sheets.Count; i++)
        {
            var sheet = sheets[i];
            objects.Add(
                Bytes(
                    $"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 {N(sheet.Paper.Width * PointsPerMm)} {N(sheet.Paper.Height * PointsPerMm)}] /Resources << /Font << /F1 3 0 R >> >> /Contents {5 + 2 * i} 0 R >>"
                )
            );
            var content = Content(sheet);
            objects.Add([
                .. Bytes($"<< /Length {content.Length} >>\nstream\n"),
                .. content,
                .. Bytes("\nendstream"),
            ]);
        }
        using var file = new MemoryStream();
        void Put(byte[] bytes) => file.Write(bytes, 0, bytes.Length);
        Put(Bytes("%PDF-1.4\n%âãÏÓ\n"));
        var places = new List<long>();
        for (var i = 0; i < objects.Count; i++)
        {
            places.Add(file.Position);
            Put(Bytes($"{i + 1} 0 obj\n"));
            Put(objects[i]);
            Put(Bytes("\nendobj\n"));
        }
        var table = file.Position;
        Put(Bytes($"xref\n0 {objects.Count + 1}\n0000000000 65535 f \n"));
        foreach (var place in places)
            Put(Bytes($"{place.ToString("0000000000", CultureInfo.InvariantCulture)} 00000 n \n"));
        Put(
            Bytes(
                $"trailer\n<< /Size {objects.Count + 1} /Root 1 0 R >>\nstartxref\n{table}\n%%EOF\n"
            )
        );
        return file.ToArray();
    }

    private static byte[] Content(ShopSheet sheet)
    {
        var page = new StringBuilder();
        page.Append("1 J 1 j ")
            .Append(N(PointsPerMm))
            .Append(" 0 0 ")
            .Append(N(PointsPerMm))
            .Append(" 0 0 cm\n");
        Pen? pen = null;
        foreach (var mark in sheet.Marks)
        {
            if (mark.Pen != pen && mark is not ShopText)
            {
                pen = mark.Pen;
                page.Append(Look(mark.Pen)).Append('\n');
            }
            switch (mark)
            {
                case ShopLine l:
                    page.Append($"{N(l.From.X)} {N(l.From.Y)} m {N(l.To.X)} {N(l.To.Y)} l S\n");
                    break;
                case ShopCircle c:
                    Circle(page, c);
                    break;
                case ShopText t:
                    // Capitals of the font are 0.72 of its size.
                    var size = t.Height / 0.72;
                    var x = t.Middle ? t.At.X - Width(t.Words, size) / 2 : t.At.X;
                    page.Append($"BT /F1 {N(size)} Tf {N(x)} {N(t.At.Y)} Td (")
                        .Append(Escaped(t.Words))
                        .Append(") Tj ET\n");
                    break;
            }
        }
        return Bytes(page.ToString());
    }

    private static string Look(Pen pen) =>
        pen switch
        {
            Pen.Edge => "0.5 w [] 0 d",
            Pen.Hidden => "0.25 w [3 1.5] 0 d",
            Pen.Centre => "0.18 w [9 1.5 1.5 1.5] 0 d",
            Pen.Dimension => "0.18 w [] 0 d",
            Pen.Cut => "0.9 w [] 0 d",
            _ => "0.35 w [] 0 d",
        };

    /// <summary>Four arcs; the usual 0.5523 of the radius makes each round to 0.03 %.</summary>
    private static void Circle(StringBuilder page, ShopCircle c)
    {
        var (x, y, r) = (c.Centre.X, c.Centre.Y, c.Radius);
        var k = 0.5522847498 * r;
        page.Append($"{N(x + r)} {N(y)} m ")
            .Append($"{N(x + r)} {N(y + k)} {N(x + k)} {N(y + r)} {N(x)} {N(y + r)} c ")
            .Append($"{N(x - k)} {N(y + r)} {N(x - r)} {N(y + k)} {N(x - r)} {N(y)} c ")
            .Append($"{N(x - r)} {N(y - k)} {N(x - k)} {N(y - r)} {N(x)} {N(y - r)} c ")
            .Append($"{N(x + k)} {N(y - r)} {N(x + r)} {N(y - k)} {N(x + r)} {N(y)} c S\n");
    }

    /// <summary>Width of words, by the widths of the standard font where they differ much; the rest are 0.556.</summary>
    private static double Width(string words, double size)
    {
        var ems = 0.0;
        foreach (var c in words)
            ems += c switch
            {
                'i' or 'j' or 'l' => 0.222,
                ' ' or '\u00a0' or '.' or ',' or ':' or '/' or 't' or 'f' or 'I' => 0.278,
                '(' or ')' or 'r' or '-' => 0.333,
                'c' or 'k' or 's' or 'v' or 'x' or 'y' or 'z' => 0.5,
                'm' => 0.833,
                'w' or 'C' or 'D' or 'H' or 'N' or 'R' or 'U' => 0.722,
                'Ø' => 0.778,
                '±' => 0.584,
                _ => 0.556,
            };
        return ems * size;
    }

    private static string Escaped(string words)
    {
        var text = new StringBuilder();
        foreach (var c in words)
        {
            var plain = c switch
            {
                '−' or '–' => '-',
                '\u00a0' => ' ',
                // What the encoding lacks must not vanish in silence.
                > 'ÿ' or (> '~' and < '\u00a0') => '?',
                _ => c,
            };
            if (plain is '(' or ')' or '\\')
                text.Append('\\');
            text.Append(plain);
        }
        return text.ToString();
    }

    private static byte[] Bytes(string text) => Encoding.Latin1.GetBytes(text);

    private static string N(double number) =>
        Math.Round(number, 4).ToString("0.####", CultureInfo.InvariantCulture);
}
