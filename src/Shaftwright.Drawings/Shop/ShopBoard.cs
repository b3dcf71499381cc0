using System.Globalization;

namespace Shaftwright.Drawings.Shop;

/// <summary>A works drawing in the making: frame, title block, dimensions.</summary>
/// <remarks>Frame and title block as a shop has them; the projection symbol is that of the first angle, ISO 5456-2; scales of
/// ISO 5455; general tolerance ISO 2768-1. All from memory.</remarks>
internal sealed class ShopBoard
{
    /// <summary>Letter height, mm on the sheet.</summary>
    public const double Letters = 3.5;

    /// <summary>Free edge of the sheet, mm.</summary>
    public const double Margin = 10;

    /// <summary>Height of the title block, mm.</summary>
    public const double Block = 22;

    private static readonly double[] s_scales = [1, 0.5, 0.2, 0.1];

    private readonly List<ShopMark> _marks = [];
    private readonly Paper _paper;

    /// <summary>Begins a sheet at the largest scale at which a part of a size fits beside what is fixed.</summary>
    /// <param name="paper">The paper.</param>
    /// <param name="wide">Width of the part, mm.</param>
    /// <param name="high">Height of the part, mm.</param>
    /// <param name="beside">Width that dimensions and words take beside it, mm on the sheet.</param>
    /// <param name="above">Height that they take, mm on the sheet.</param>
    public ShopBoard(Paper paper, double wide, double high, double beside, double above)
    {
        _paper = paper;
        Width = paper.Width - 2 * Margin;
        Height = paper.Height - 2 * Margin - Block;
        Scale = s_scales.FirstOrDefault(
            s => wide * s + beside <= Width && high * s + above <= Height,
            s_scales[^1]
        );
    }

    /// <summary>Sheet ÷ part.</summary>
    public double Scale { get; }

    /// <summary>Free width inside the frame, mm.</summary>
    public double Width { get; }

    /// <summary>Free height inside the frame above the title block, mm.</summary>
    public double Height { get; }

    /// <summary>Lower left corner of the free space.</summary>
    public static At Origin => new(Margin, Margin + Block);

    public void Line(Pen pen, double x1, double y1, double x2, double y2) =>
        _marks.Add(new ShopLine(pen, new(x1, y1), new(x2, y2)));

    public void Circle(Pen pen, double x, double y, double radius) =>
        _marks.Add(new ShopCircle(pen, new(x, y), radius));

    public void Words(
        double x,
        double y,
        string words,
        bool middle = false,
        double height = Letters,
        Pen pen = Pen.Frame
    ) => _marks.Add(new ShopText(pen, new(x, y), height, words, middle));

    /// <summary>A closed outline.</summary>
    public void Outline(Pen pen, params IReadOnlyList<At> corners)
    {
        for (var i = 0; i < corners.Count; i++)
        {
            var (a, b) = (corners[i], corners[(i + 1) % corners.Count]);
            Line(pen, a.X, a.Y, b.X, b.Y);
        }
    }

    /// <summary>A level dimension with extension lines from a height down or up to it.</summary>
    public void Across(double from, double to, double edge, double at, string words)
    {
        var over = at < edge ? -1.5 : 1.5;
        Line(Pen.Dimension, from, edge + over / 1.5, from, at + over);
        Line(Pen.Dimension, to, edge + over / 1.5, to, at + over);
        Line(Pen.Dimension, from, at, to, at);
        // Narrow ones get their arrows from outside, so that heads do not meet.
        var outside = Math.Abs(to - from) < 8;
        Head(from, at, outside ? 1 : -1, level: true);
        Head(to, at, outside ? -1 : 1, level: true);
        Words((from + to) / 2, at + 1, words, middle: true, pen: Pen.Dimension);
    }

    /// <summary>An upright dimension; its words stand level beside it.</summary>
    public void Upright(double from, double to, double edge, double at, string words)
    {
        var over = at < edge ? -1.5 : 1.5;
        Line(Pen.Dimension, edge + over / 1.5, from, at + over, from);
        Line(Pen.Dimension, edge + over / 1.5, to, at + over, to);
        Line(Pen.Dimension, at, from, at, to);
        Head(at, from, -1, level: false);
        Head(at, to, 1, level: false);
        if (at < edge)
            Words(
                at - 1.5 - WidthOf(words),
                (from + to) / 2 - Letters / 2,
                words,
                pen: Pen.Dimension
            );
        else
            Words(at + 1.5, (from + to) / 2 - Letters / 2, words, pen: Pen.Dimension);
    }

    /// <summary>A datum flag under a face.</summary>
    public void DatumUnder(double x, double y, string letter)
    {
        Datum(x, y - 11, letter, stem: false);
        Line(Pen.Dimension, x, y, x, y - 5);
    }

    /// <summary>A datum flag on a face: its letter in a box, on a stem.</summary>
    public void Datum(double x, double y, string letter, bool stem = true)
    {
        if (!stem)
            y -= 5;
        else
            Line(Pen.Dimension, x, y, x, y + 5);
        Outline(
            Pen.Dimension,
            new At(x - 3, y + 5),
            new(x + 3, y + 5),
            new(x + 3, y + 11),
            new(x - 3, y + 11)
        );
        Words(x, y + 6.3, letter, middle: true, pen: Pen.Dimension);
    }

    /// <summary>The finished sheet with its frame and title block.</summary>
    /// <param name="code">Stable name.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="job">Whose it is.</param>
    /// <param name="notes">Lines over the title block.</param>
    public ShopSheet Done(string code, string title, string job, params IReadOnlyList<string> notes)
    {
        var (right, top) = (_paper.Width - Margin, _paper.Height - Margin);
        Outline(
            Pen.Frame,
            new At(Margin, Margin),
            new(right, Margin),
            new(right, top),
            new(Margin, top)
        );
        Line(Pen.Frame, Margin, Margin + Block, right, Margin + Block);
        Words(Margin + 4, Margin + 14.5, title, height: 5);
        Words(Margin + 4, Margin + 8.5, job);
        Words(
            Margin + 4,
            Margin + 3,
            "Dimensions in mm. General tolerance ISO 2768-1 m. Measure the part, not the paper.",
            height: 2.5
        );
        Line(Pen.Frame, right - 62, Margin, right - 62, Margin + Block);
        Words(right - 59, Margin + 14.5, "Scale " + ScaleWords(Scale));
        Words(right - 59, Margin + 8.5, _paper.Name);
        Projection(right - 26, Margin + Block / 2);
        var y = Margin + Block + 3;
        foreach (
            var line in notes.SelectMany(n => Board.Wrap(n, Letters / 0.72, Width - 8)).Reverse()
        )
        {
            Words(Margin + 4, y, line);
            y += 5.5;
        }
        return new(code, title, _paper, Scale, _marks);
    }

    /// <summary>About how wide words come out.</summary>
    public static double WidthOf(string words, double height = Letters) =>
        Board.WidthOf(words, height / 0.72);

    public static string ScaleWords(double scale) =>
        "1:" + Math.Round(1 / scale).ToString(CultureInfo.InvariantCulture);

    /// <summary>A number as it stands on a drawing: no more digits than it has.</summary>
    public static string Mm(double mm, string digits = "0.0") =>
        mm.ToString(digits, CultureInfo.InvariantCulture);

    /// <summary>An arrow head whose tip is at a place.</summary>
    private void Head(double x, double y, int side, bool level)
    {
        const double Long = 2.5;
        const double Half = 0.5;
        foreach (var half in (double[])[-Half, Half])
        {
            if (level)
                Line(Pen.Dimension, x, y, x - side * Long, y + half);
            else
                Line(Pen.Dimension, x, y, x + half, y - side * Long);
        }
    }

    /// <summary>First angle: the truncated cone seen from its side, and from its thin end to the right of it.</summary>
    private void Projection(double x, double y)
    {
        Outline(
            Pen.Frame,
            new At(x - 9, y - 3.5),
            new(x - 1, y - 5),
            new(x - 1, y + 5),
            new(x - 9, y + 3.5)
        );
        Line(Pen.Centre, x - 11, y, x + 17, y);
        Circle(Pen.Frame, x + 10, y, 5);
        Circle(Pen.Frame, x + 10, y, 3.5);
        Line(Pen.Centre, x + 10, y - 7, x + 10, y + 7);
    }
}
