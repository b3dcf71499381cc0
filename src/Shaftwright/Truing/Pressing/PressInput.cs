using Shaftwright.Donors;
using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.Truing.Pressing;

/// <summary>One stroke of the press, with what the dial said after it. Strokes are a record: a wrong one is corrected by a later
/// entry that names it, never changed.</summary>
public sealed record PressStroke : IEntry
{
    /// <inheritdoc/>
    public string Id { get; init; } = "";

    /// <inheritdoc/>
    public string Corrects { get; init; } = "";

    /// <inheritdoc/>
    public bool Withdrawn { get; init; }

    /// <summary>When it was made; null for strokes from before times were kept. A crack test answers for it only when it came later.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>How far along the work was.</summary>
    public Moment Moment { get; init; }

    /// <summary>Where the ram stood, from the inner end.</summary>
    public Measured<Distance>? RamAt { get; init; }

    /// <summary>First block, from the inner end.</summary>
    public Measured<Distance>? FirstBlockAt { get; init; }

    /// <summary>Second block, from the inner end.</summary>
    public Measured<Distance>? SecondBlockAt { get; init; }

    /// <summary>Which angle from the painted mark lay under the ram.</summary>
    public Measured<Angle>? Up { get; init; }

    /// <summary>How far the ram went past contact.</summary>
    public Measured<Distance>? Depth { get; init; }

    /// <summary>What the gauge of the press showed at the bottom.</summary>
    public Measured<Force>? Load { get; init; }

    /// <summary>Run-out before it, at the station and on the supports of <see cref="Dial"/>.</summary>
    public Measured<Distance>? RunOutBefore { get; init; }

    /// <summary>High point before it, from the painted mark.</summary>
    public Measured<Angle>? HighBefore { get; init; }

    /// <summary>Run-out after it, read in the same place.</summary>
    public Measured<Distance>? RunOutAfter { get; init; }

    /// <summary>High point after it; null when it was not looked for.</summary>
    public Measured<Angle>? HighAfter { get; init; }

    /// <summary>Id of the newest turn under the dial when this was entered; turns after it were read after the stroke.</summary>
    public string Turn { get; init; } = "";

    /// <summary>Id of the turn that says where the dial stood and on what the shaft turned; empty: that of <see cref="Turn"/>.</summary>
    public string Dial { get; init; } = "";

    /// <summary>True when a crack, a click or flaking scale was seen or heard.</summary>
    public bool CrackSign { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, PressFields.RamAt, RamAt);
        check.Range(path, PressFields.FirstBlockAt, FirstBlockAt);
        check.Range(path, PressFields.SecondBlockAt, SecondBlockAt);
        check.Range(path, PressFields.Up, Up);
        check.Range(path, PressFields.Depth, Depth);
        check.Range(path, PressFields.Load, Load);
        check.Range(path, PressFields.RunOutBefore, RunOutBefore);
        check.Range(path, PressFields.HighBefore, HighBefore);
        check.Range(path, PressFields.RunOutAfter, RunOutAfter);
        check.Range(path, PressFields.HighAfter, HighAfter);
    }
}

/// <summary>What is known of press, steel and weld, and every stroke so far.</summary>
public sealed record PressInput
{
    /// <summary>Whether the welds were tempered and have cooled right through; null for don't know, which counts as no.</summary>
    public bool? Tempered { get; init; }

    /// <summary>Whether a file skates where the ram would stand; null leaves it to the donors' hardened stretches.</summary>
    public bool? FileSkates { get; init; }

    /// <summary>Where the bend is, from the inner end; null takes the weld, or the dial where there is none.</summary>
    public Measured<Distance>? BendAt { get; init; }

    /// <summary>Diameter of the bar, when no shaft was walked.</summary>
    public Measured<Distance>? Diameter { get; init; }

    /// <summary>Length of the shaft, when none was walked.</summary>
    public Measured<Distance>? Length { get; init; }

    /// <summary>The steel, when no donor says.</summary>
    public SteelClass Steel { get; init; }

    /// <summary>Tensile yield where it bends, if it was measured or a data sheet is at hand.</summary>
    public Measured<Stress>? Yield { get; init; }

    /// <summary>Nearest that the blocks can stand to each other.</summary>
    public Measured<Distance>? ShortestSpan { get; init; }

    /// <summary>Farthest that the blocks can stand apart.</summary>
    public Measured<Distance>? LongestSpan { get; init; }

    /// <summary>Most that the press can push.</summary>
    public Measured<Force>? MostLoad { get; init; }

    /// <summary>Every stroke, oldest first.</summary>
    public IReadOnlyList<PressStroke> Strokes { get; init; } = [];

    /// <summary>The strokes that stand: corrections in the place of what they correct, what was taken back left out.</summary>
    public IReadOnlyList<PressStroke> Standing() => Entries.Standing(Strokes);

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, PressFields.BendAt, BendAt);
        check.Range(path, PressFields.Diameter, Diameter);
        check.Range(path, PressFields.Length, Length);
        check.Range(path, PressFields.Yield, Yield);
        check.Range(path, PressFields.ShortestSpan, ShortestSpan);
        check.Range(path, PressFields.LongestSpan, LongestSpan);
        check.Range(path, PressFields.MostLoad, MostLoad);
        for (var i = 0; i < Strokes.Count; i++)
            Strokes[i].Check(check, $"{path}.strokes[{i}]");
        new EntryIds(check).Of(Strokes, $"{path}.strokes");
    }
}

/// <summary>The questions of <see cref="PressInput"/> and <see cref="PressStroke"/>.</summary>
public static class PressFields
{
    private const double ByEye = 5 * Math.PI / 180;

    /// <summary>Ram, mm.</summary>
    public static Field<Distance> RamAt { get; } =
        new("ramAt", "ram from the inner end", 0, 2500, 2, "steel rule");

    /// <summary>First block, mm.</summary>
    public static Field<Distance> FirstBlockAt { get; } =
        new("firstBlockAt", "first block from the inner end", 0, 2500, 2, "steel rule");

    /// <summary>Second block, mm.</summary>
    public static Field<Distance> SecondBlockAt { get; } =
        new("secondBlockAt", "second block from the inner end", 0, 2500, 2, "steel rule");

    /// <summary>Angle under the ram, rad.</summary>
    public static Field<Angle> Up { get; } =
        new("up", "angle under the ram", -4 * Math.PI, 4 * Math.PI, ByEye, "by eye");

    /// <summary>Depth past contact, mm.</summary>
    public static Field<Distance> Depth { get; } =
        new("depth", "depth past contact", 0.01, 60, 0.05, "dial on the shaft, zeroed at contact");

    /// <summary>Load, N.</summary>
    public static Field<Force> Load { get; } =
        new("load", "load at the bottom of the stroke", 100, 1e6, 1000, "gauge of the press");

    /// <summary>Run-out before, mm.</summary>
    public static Field<Distance> RunOutBefore { get; } =
        new("runOutBefore", "run-out before", 0, 30, 0.01, "dial indicator, 0.01 divisions");

    /// <summary>High point before, rad.</summary>
    public static Field<Angle> HighBefore { get; } =
        new("highBefore", "high point before", -4 * Math.PI, 4 * Math.PI, ByEye, "by eye");

    /// <summary>Run-out after, mm.</summary>
    public static Field<Distance> RunOutAfter { get; } =
        new("runOutAfter", "run-out after", 0, 30, 0.01, "dial indicator, 0.01 divisions");

    /// <summary>High point after, rad.</summary>
    public static Field<Angle> HighAfter { get; } =
        new("highAfter", "high point after", -4 * Math.PI, 4 * Math.PI, ByEye, "by eye");

    /// <summary>Bend, mm.</summary>
    public static Field<Distance> BendAt { get; } =
        new("bendAt", "where it is bent, from the inner end", 0, 2500, 5, "straight edge");

    /// <summary>Diameter, mm.</summary>
    public static Field<Distance> Diameter { get; } =
        new("diameter", "diameter where it is bent", 8, 120, 0.05, "caliper");

    /// <summary>Length, mm.</summary>
    public static Field<Distance> Length { get; } =
        new("length", "length of the shaft", 100, 2500, 1, "steel rule");

    /// <summary>Yield, MPa.</summary>
    public static Field<Stress> Yield { get; } =
        new("yield", "tensile yield where it bends", 150, 1600, 60, "data sheet");

    /// <summary>Shortest span, mm.</summary>
    public static Field<Distance> ShortestSpan { get; } =
        new("shortestSpan", "blocks at their nearest", 40, 2000, 2, "steel rule");

    /// <summary>Longest span, mm.</summary>
    public static Field<Distance> LongestSpan { get; } =
        new("longestSpan", "blocks at their farthest", 60, 2500, 2, "steel rule");

    /// <summary>Capacity, N.</summary>
    public static Field<Force> MostLoad { get; } =
        new("mostLoad", "most that the press can push", 1000, 2e6);
}
