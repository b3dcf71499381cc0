namespace Shaftwright.Drawings;

/// <summary>A place on a drawing, in drawing units: x to the right, y down. One unit is one CSS pixel where the drawing is
/// shown at its own <see cref="Drawing.Width"/>.</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Down.</param>
public readonly record struct Spot(double X, double Y);

/// <summary>What a line or a face stands for. Writers turn it into a look; a meaning never rests on colour alone.</summary>
public enum Ink
{
    /// <summary>Metal that stays.</summary>
    Bar,

    /// <summary>Metal that is cut off.</summary>
    Gone,

    /// <summary>A hatch or an edge inside the metal: spline teeth, a step.</summary>
    Detail,

    /// <summary>A boot's seat.</summary>
    Seat,

    /// <summary>A hardened stretch.</summary>
    Hard,

    /// <summary>Metal that the heat of a weld changes.</summary>
    Heat,

    /// <summary>A cut.</summary>
    Cut,

    /// <summary>A weld.</summary>
    Weld,

    /// <summary>A sleeve.</summary>
    Sleeve,

    /// <summary>Lengths or positions that are allowed.</summary>
    Allowed,

    /// <summary>A limit that must not be passed.</summary>
    Limit,

    /// <summary>A curve that is followed: over travel, round the shaft.</summary>
    Path,

    /// <summary>The answer: the length to make, the fitted circle.</summary>
    Answer,

    /// <summary>A reading.</summary>
    Reading,

    /// <summary>The point that matters most: the worst one, the high one.</summary>
    Worst,

    /// <summary>A tool: the vee block, the dial.</summary>
    Tool,

    /// <summary>A feeler blade.</summary>
    Shim,

    /// <summary>A dimension line and its words.</summary>
    Measure,

    /// <summary>Axes and centre lines.</summary>
    Axis,

    /// <summary>Words that explain.</summary>
    Note,

    /// <summary>Words to be read first.</summary>
    Strong,
}

/// <summary>Where a text stands to its place.</summary>
public enum Anchor
{
    /// <summary>It begins there.</summary>
    Start,

    /// <summary>Its middle is there.</summary>
    Middle,

    /// <summary>It ends there.</summary>
    End,
}

/// <summary>One thing on a drawing.</summary>
/// <param name="Ink">What it stands for.</param>
public abstract record Shape(Ink Ink);

/// <summary>A straight line.</summary>
/// <param name="Ink">What it stands for.</param>
/// <param name="From">One end.</param>
/// <param name="To">The other.</param>
/// <param name="Arrow">True for an arrow head at <paramref name="To"/>.</param>
public sealed record Line(Ink Ink, Spot From, Spot To, bool Arrow = false) : Shape(Ink);

/// <summary>A line through several places.</summary>
/// <param name="Ink">What it stands for.</param>
/// <param name="Points">The places, in order.</param>
/// <param name="Arrow">True for an arrow head at the last.</param>
public sealed record Polyline(Ink Ink, IReadOnlyList<Spot> Points, bool Arrow = false) : Shape(Ink);

/// <summary>A closed face.</summary>
/// <param name="Ink">What it stands for.</param>
/// <param name="Points">Its corners, in order.</param>
public sealed record Polygon(Ink Ink, IReadOnlyList<Spot> Points) : Shape(Ink);

/// <summary>A circle.</summary>
/// <param name="Ink">What it stands for.</param>
/// <param name="Centre">Its centre.</param>
/// <param name="Radius">Its radius, drawing units.</param>
public sealed record Circle(Ink Ink, Spot Centre, double Radius) : Shape(Ink);

/// <summary>A line of words.</summary>
/// <param name="Ink">What it stands for.</param>
/// <param name="At">Its base line's place.</param>
/// <param name="Words">The words.</param>
/// <param name="Size">Letter height, drawing units.</param>
/// <param name="Anchor">How it stands to its place.</param>
public sealed record Text(Ink Ink, Spot At, string Words, double Size, Anchor Anchor = Anchor.Start)
    : Shape(Ink);

/// <summary>A level dimension line with ticks at its ends and its words above.</summary>
/// <param name="Ink">What it stands for.</param>
/// <param name="From">Left end.</param>
/// <param name="To">Right end, at the same height.</param>
/// <param name="Words">What it measures.</param>
/// <param name="WordsAt">Middle of the words' base line.</param>
/// <param name="Size">Letter height, drawing units.</param>
public sealed record Measure(Ink Ink, Spot From, Spot To, string Words, Spot WordsAt, double Size)
    : Shape(Ink);

/// <summary>The rows of text that say what a drawing shows, for those who cannot see it or want the numbers.</summary>
/// <param name="Caption">What it lists.</param>
/// <param name="Heads">Column heads.</param>
/// <param name="Rows">Rows, each as long as <paramref name="Heads"/>.</param>
public sealed record Table(
    string Caption,
    IReadOnlyList<string> Heads,
    IReadOnlyList<IReadOnlyList<string>> Rows
);

/// <summary>A picture as shapes with meanings, and the table behind it.</summary>
/// <param name="Code">A stable kebab-case name of the kind of drawing.</param>
/// <param name="Title">What it is.</param>
/// <param name="Description">What it shows, in a sentence or two, for those who cannot see it.</param>
/// <param name="Width">Width, drawing units.</param>
/// <param name="Height">Height, drawing units.</param>
/// <param name="UnitsPerMm">Drawing units for one millimetre of the thing along the drawing's main direction; 0 where axes have scales of their own.</param>
/// <param name="Shapes">What is on it, the first at the back.</param>
/// <param name="Table">The table behind it.</param>
public sealed record Drawing(
    string Code,
    string Title,
    string Description,
    double Width,
    double Height,
    double UnitsPerMm,
    IReadOnlyList<Shape> Shapes,
    Table Table
)
{
    /// <summary>Width that fits a 390 px telephone with its page margins, drawing units.</summary>
    public const double Telephone = 358;

    /// <summary>Width for a printed A4 page, drawing units.</summary>
    public const double Page = 640;
}
