namespace Shaftwright.Drawings;

/// <summary>A drawing in the making: shapes, and words that never leave the paper.</summary>
internal sealed class Board(double width)
{
    /// <summary>Letter height of ordinary words: legible at arm's length on a telephone.</summary>
    public const double Small = 14;

    /// <summary>Letter height of words to be read first.</summary>
    public const double Big = 17;

    /// <summary>Space kept free at the edges.</summary>
    public const double Edge = 6;

    private readonly List<Shape> _shapes = [];

    public double Width => width;

    public void Add(Shape shape) => _shapes.Add(shape);

    /// <summary>A rectangle.</summary>
    public void Box(Ink ink, double left, double top, double right, double bottom) =>
        Add(
            new Polygon(
                ink,
                [new(left, top), new(right, top), new(right, bottom), new(left, bottom)]
            )
        );

    /// <summary>Words on one line, moved sideways where they would leave the paper.</summary>
    public void Words(
        Ink ink,
        double x,
        double y,
        string words,
        double size = Small,
        Anchor anchor = Anchor.Start
    )
    {
        var w = WidthOf(words, size, ink);
        var left = anchor switch
        {
            Anchor.Start => x,
            Anchor.Middle => x - w / 2,
            _ => x - w,
        };
        var moved = Math.Max(Edge, Math.Min(left, width - Edge - w)) - left;
        Add(new Text(ink, new(x + moved, y), words, size, anchor));
    }

    /// <summary>Words broken over lines. Returns the base line of the next line.</summary>
    public double Paragraph(Ink ink, double y, string words, double size = Small)
    {
        foreach (var line in Wrap(words, size, width - 2 * Edge, ink))
        {
            Add(new Text(ink, new(Edge, y), line, size));
            y += size * 1.35;
        }
        return y;
    }

    /// <summary>A level dimension, its words kept on the paper.</summary>
    public void Dimension(double from, double to, double y, string words, double size = Small)
    {
        var half = WidthOf(words, size) / 2;
        var middle = Math.Clamp(
            (from + to) / 2,
            Math.Min(Edge + half, width / 2),
            Math.Max(width - Edge - half, width / 2)
        );
        Add(new Measure(Ink.Measure, new(from, y), new(to, y), words, new(middle, y - 8), size));
    }

    /// <summary>The finished drawing.</summary>
    public Drawing Done(
        string code,
        string title,
        string description,
        double height,
        double unitsPerMm,
        Table table
    ) => new(code, title, description, width, Math.Ceiling(height), unitsPerMm, _shapes, table);

    /// <summary>About how wide words come out in any ordinary sans-serif type; rather too wide than too narrow.</summary>
    public static double WidthOf(string words, double size, Ink ink = Ink.Note)
    {
        var ems = 0.0;
        foreach (var c in words)
            ems += c switch
            {
                'i' or 'j' or 'l' or '.' or ',' or ':' or ';' or '\'' or '|' or '!' => 0.33,
                ' ' or '\u00a0' or 'f' or 't' or 'r' or 'I' or '(' or ')' or '·' => 0.42,
                'm' or 'w' or 'M' or 'W' or '−' or '+' or '×' or '±' or '=' => 0.9,
                >= 'A' and <= 'Z' or 'ø' or 'Ø' => 0.72,
                _ => 0.63,
            };
        return ems * size * (DrawingStyle.IsBold(ink) ? 1.12 : 1);
    }

    /// <summary>Breaks words into lines no wider than given. A single longer word stays whole.</summary>
    public static IReadOnlyList<string> Wrap(
        string words,
        double size,
        double widest,
        Ink ink = Ink.Note
    )
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && WidthOf(longer, size, ink) > widest)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }
        if (line.Length > 0)
            lines.Add(line);
        return lines;
    }
}
