using System.Globalization;
using System.Text;

namespace Shaftwright.Drawings.Shop;

/// <summary>Writes a works drawing as DXF of release 12 (AC1009), which every CAD and laser shop reads: the part in its true size,
/// whatever the scale of the sheet; lines, circles and words on named layers.</summary>
/// <remarks>Source: the DXF reference of release 12, from memory; what it writes is audited in the tests by ezdxf.</remarks>
public static class DxfWriter
{
    private static readonly (Pen Pen, string Layer, int Colour, string Line)[] s_layers =
    [
        (Pen.Edge, "EDGE", 7, "CONTINUOUS"),
        (Pen.Hidden, "HIDDEN", 8, "HIDDEN"),
        (Pen.Centre, "CENTRE", 5, "CENTER"),
        (Pen.Dimension, "DIMENSION", 3, "CONTINUOUS"),
        (Pen.Cut, "CUT", 1, "CONTINUOUS"),
        (Pen.Frame, "FRAME", 7, "CONTINUOUS"),
    ];

    /// <summary>The text of the file.</summary>
    /// <param name="sheet">The drawing.</param>
    public static string Write(ShopSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var dxf = new StringBuilder();
        var full = 1 / sheet.Scale;
        void Pair(int code, string value) =>
            dxf.Append(code).Append('\n').Append(value).Append('\n');
        void Number(int code, double value) =>
            Pair(code, Math.Round(value, 6).ToString("0.0#####", CultureInfo.InvariantCulture));
        void Point(int code, At at)
        {
            Number(code, at.X * full);
            Number(code + 10, at.Y * full);
            Number(code + 20, 0);
        }

        Pair(0, "SECTION");
        Pair(2, "HEADER");
        Pair(9, "$ACADVER");
        Pair(1, "AC1009");
        Pair(9, "$EXTMIN");
        Point(10, new(0, 0));
        Pair(9, "$EXTMAX");
        Point(10, new(sheet.Paper.Width, sheet.Paper.Height));
        Pair(9, "$LTSCALE");
        Number(40, full);
        Pair(0, "ENDSEC");

        Pair(0, "SECTION");
        Pair(2, "TABLES");
        Pair(0, "TABLE");
        Pair(2, "LTYPE");
        Pair(70, "3");
        LineType("CONTINUOUS", "Solid line", []);
        LineType("HIDDEN", "Dashes", [3, -1.5]);
        LineType("CENTER", "Long and short", [9, -1.5, 1.5, -1.5]);
        Pair(0, "ENDTAB");
        Pair(0, "TABLE");
        Pair(2, "LAYER");
        Pair(70, s_layers.Length.ToString(CultureInfo.InvariantCulture));
        foreach (var (_, layer, colour, line) in s_layers)
        {
            Pair(0, "LAYER");
            Pair(2, layer);
            Pair(70, "0");
            Pair(62, colour.ToString(CultureInfo.InvariantCulture));
            Pair(6, line);
        }
        Pair(0, "ENDTAB");
        Pair(0, "TABLE");
        Pair(2, "STYLE");
        Pair(70, "1");
        Pair(0, "STYLE");
        Pair(2, "STANDARD");
        Pair(70, "0");
        Number(40, 0);
        Number(41, 1);
        Number(50, 0);
        Pair(71, "0");
        Number(42, 2.5);
        Pair(3, "txt");
        Pair(4, "");
        Pair(0, "ENDTAB");
        Pair(0, "ENDSEC");

        Pair(0, "SECTION");
        Pair(2, "ENTITIES");
        foreach (var mark in sheet.Marks)
        {
            var layer = s_layers.First(l => l.Pen == mark.Pen).Layer;
            switch (mark)
            {
                case ShopLine l:
                    Pair(0, "LINE");
                    Pair(8, layer);
                    Point(10, l.From);
                    Point(11, l.To);
                    break;
                case ShopCircle c:
                    Pair(0, "CIRCLE");
                    Pair(8, layer);
                    Point(10, c.Centre);
                    Number(40, c.Radius * full);
                    break;
                case ShopText t:
                    Pair(0, "TEXT");
                    Pair(8, layer);
                    Point(10, t.At);
                    Number(40, t.Height * full);
                    Pair(1, Plain(t.Words));
                    Pair(7, "STANDARD");
                    if (t.Middle)
                    {
                        Pair(72, "1");
                        Point(11, t.At);
                    }
                    break;
            }
        }
        Pair(0, "ENDSEC");
        Pair(0, "EOF");
        return dxf.ToString();

        void LineType(string name, string words, double[] dashes)
        {
            Pair(0, "LTYPE");
            Pair(2, name);
            Pair(70, "0");
            Pair(3, words);
            Pair(72, "65");
            Pair(73, dashes.Length.ToString(CultureInfo.InvariantCulture));
            Number(40, dashes.Sum(Math.Abs));
            foreach (var dash in dashes)
                Number(49, dash);
        }
    }

    /// <summary>Release 12 knows only ASCII; it has codes of its own for three signs.</summary>
    private static string Plain(string words)
    {
        var plain = new StringBuilder();
        foreach (var c in words)
            plain.Append(
                c switch
                {
                    'Ø' => "%%c",
                    '±' => "%%p",
                    '°' => "%%d",
                    '−' or '–' => "-",
                    '\u00a0' => " ",
                    '·' => ".",
                    '÷' => "/",
                    '×' => "x",
                    > '~' or < ' ' => "?",
                    _ => c.ToString(),
                }
            );
        return plain.ToString();
    }
}
