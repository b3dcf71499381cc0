using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>What the filler rod is.</summary>
public enum FillerKind
{
    /// <summary>Not known.</summary>
    Unknown,

    /// <summary>Ferritic: plain or low-alloy steel.</summary>
    Ferritic,

    /// <summary>Austenitic: stainless (such as 309 or 312) or nickel.</summary>
    Austenitic,
}

/// <summary>How both ends are ground for the weld. The root gap stands with the cut.</summary>
public sealed record Preparation
{
    /// <summary>Bevel of each end from its end face; the included angle is twice that.</summary>
    public Measured<Angle>? Bevel { get; init; }

    /// <summary>Flat left in the middle of each end face, across it; 0 for a point.</summary>
    public Measured<Distance>? Flat { get; init; }

    /// <summary>Height of the cap over the bar.</summary>
    public Measured<Distance>? Cap { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, PreparationFields.Bevel, Bevel);
        check.Range(path, PreparationFields.Flat, Flat);
        check.Range(path, PreparationFields.Cap, Cap);
    }
}

/// <summary>The filler.</summary>
public sealed record Filler
{
    /// <summary>What it is.</summary>
    public FillerKind Kind { get; init; }

    /// <summary>Diameter of the rod or wire.</summary>
    public Measured<Distance>? Diameter { get; init; }

    /// <summary>Length of rod used up for a length of bead.</summary>
    public Measured<Ratio>? RodPerBead { get; init; }

    /// <summary>CET of the weld metal it makes, if its data sheet gives an analysis.</summary>
    public Measured<Content>? Cet { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, PreparationFields.RodDiameter, Diameter);
        check.Range(path, PreparationFields.RodPerBead, RodPerBead);
        check.Range(path, PreparationFields.FillerCet, Cet);
    }
}

/// <summary>The questions of <see cref="Preparation"/> and <see cref="Filler"/>, and what is taken when they are not answered.</summary>
public static class PreparationFields
{
    /// <summary>Bevel, rad.</summary>
    public static Field<Angle> Bevel { get; } =
        new(
            "bevel",
            "bevel of each end, from its end face",
            0,
            60 * Math.PI / 180,
            2 * Math.PI / 180,
            "angle gauge"
        );

    /// <summary>Flat, mm.</summary>
    public static Field<Distance> Flat { get; } =
        new("flat", "flat left in the middle of the end face, across it", 0, 110, 0.5, "caliper");

    /// <summary>Cap, mm.</summary>
    public static Field<Distance> Cap { get; } =
        new("cap", "height of the cap over the bar", 0, 6, 0.5, "by eye");

    /// <summary>Rod diameter, mm.</summary>
    public static Field<Distance> RodDiameter { get; } =
        new("diameter", "diameter of the filler rod", 0.6, 6);

    /// <summary>Rod used for a length of bead.</summary>
    public static Field<Ratio> RodPerBead { get; } =
        new("rodPerBead", "length of rod used for a length of bead", 0.2, 10, 0.2, "a trial run");

    /// <summary>CET of the weld metal, mass %.</summary>
    public static Field<Content> FillerCet { get; } =
        new("cet", "CET of the weld metal", 0.05, 0.8, 0.02, "data sheet");

    /// <summary>Bevel taken when none is given, rad: 30°, an included angle of 60°. Common practice, no source.</summary>
    public const double UsualBevel = 30 * Math.PI / 180;

    /// <summary>Cross-section of a TIG bead when the rod's feed is not known, mm². Common practice, no source.</summary>
    public static Band UsualBead { get; } = new(8, 15);

    /// <summary>Share of the rod that ends in the joint: stubs, drips and what is ground off. Common practice, no source.</summary>
    public static Band UsualYield { get; } = new(0.8, 1);
}
