namespace Shaftwright.Drawings.Shop;

/// <summary>What a line of a works drawing is. Each is a layer of its own in a DXF.</summary>
public enum Pen
{
    /// <summary>A visible edge.</summary>
    Edge,

    /// <summary>What is cut off, or lies behind.</summary>
    Hidden,

    /// <summary>A centre line.</summary>
    Centre,

    /// <summary>A dimension.</summary>
    Dimension,

    /// <summary>A line to cut at, or a weld.</summary>
    Cut,

    /// <summary>Frame, title block and words.</summary>
    Frame,
}

/// <summary>A place on the sheet, mm: x to the right, y up, from its lower left corner.</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Up.</param>
public readonly record struct At(double X, double Y);

/// <summary>One thing on a works drawing.</summary>
/// <param name="Pen">What it is.</param>
public abstract record ShopMark(Pen Pen);

/// <summary>A straight line.</summary>
/// <param name="Pen">What it is.</param>
/// <param name="From">One end.</param>
/// <param name="To">The other.</param>
public sealed record ShopLine(Pen Pen, At From, At To) : ShopMark(Pen);

/// <summary>A circle.</summary>
/// <param name="Pen">What it is.</param>
/// <param name="Centre">Its centre.</param>
/// <param name="Radius">Its radius, mm on the sheet.</param>
public sealed record ShopCircle(Pen Pen, At Centre, double Radius) : ShopMark(Pen);

/// <summary>Words on one level line.</summary>
/// <param name="Pen">What they are.</param>
/// <param name="At">Where their base line begins, or its middle.</param>
/// <param name="Height">Letter height, mm on the sheet.</param>
/// <param name="Words">The words.</param>
/// <param name="Middle">True when <paramref name="At"/> is the middle of the words.</param>
public sealed record ShopText(Pen Pen, At At, double Height, string Words, bool Middle = false)
    : ShopMark(Pen);

/// <summary>A works drawing on its sheet.</summary>
/// <param name="Code">A stable kebab-case name of the kind of drawing.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Paper">Its paper.</param>
/// <param name="Scale">Sheet ÷ part: 1, 0.5, 0.2, 0.1 (ISO 5455).</param>
/// <param name="Marks">What is on it, mm on the sheet.</param>
public sealed record ShopSheet(
    string Code,
    string Title,
    Paper Paper,
    double Scale,
    IReadOnlyList<ShopMark> Marks
);

/// <summary>A sheet of paper, lying.</summary>
/// <param name="Name">Its name, ISO 216.</param>
/// <param name="Width">mm.</param>
/// <param name="Height">mm.</param>
public sealed record Paper(string Name, double Width, double Height)
{
    /// <summary>A4.</summary>
    public static Paper A4 { get; } = new("A4", 297, 210);

    /// <summary>A3.</summary>
    public static Paper A3 { get; } = new("A3", 420, 297);
}
