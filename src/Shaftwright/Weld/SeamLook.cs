using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>A seam that is looked at.</summary>
public enum SeamPlace
{
    /// <summary>The butt weld.</summary>
    Butt,

    /// <summary>The fillet all round at the sleeve's inner end.</summary>
    SleeveInnerEnd,

    /// <summary>The fillet all round at the sleeve's outer end.</summary>
    SleeveOuterEnd,
}

/// <summary>Quality levels of ISO 5817: B asks most, D least.</summary>
public enum SeamLevel
{
    /// <summary>B, the strictest.</summary>
    B,

    /// <summary>C.</summary>
    C,

    /// <summary>D.</summary>
    D,
}

/// <summary>What was seen and measured on a finished seam. Of two looks at one seam the last counts.</summary>
public sealed record SeamLook
{
    /// <summary>Which seam.</summary>
    public SeamPlace Place { get; init; }

    /// <summary>Depth of the weld, which stands for the standard's t and s: how deep it is fused.</summary>
    public Measured<Distance>? Depth { get; init; }

    /// <summary>Deepest undercut; 0 for none.</summary>
    public Measured<Distance>? Undercut { get; init; }

    /// <summary>True when no undercut is longer than 25 mm and all of them together are a quarter of the way round or less.</summary>
    public bool? UndercutShort { get; init; }

    /// <summary>Largest pore in the surface, across; 0 for none.</summary>
    public Measured<Distance>? SurfacePore { get; init; }

    /// <summary>Largest pore in the cut of the sample, across; 0 for none.</summary>
    public Measured<Distance>? InnerPore { get; init; }

    /// <summary>How far the cap stands over the bar.</summary>
    public Measured<Distance>? CapHeight { get; init; }

    /// <summary>How wide the cap is.</summary>
    public Measured<Distance>? CapWidth { get; init; }

    /// <summary>How far one piece's surface stands beside the other's, half of the difference of their diameters taken off.</summary>
    public Measured<Distance>? Offset { get; init; }

    /// <summary>True when a crack was seen, also in a crater.</summary>
    public bool? Cracked { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, SeamFields.Depth, Depth);
        check.Range(path, SeamFields.Undercut, Undercut);
        check.Range(path, SeamFields.SurfacePore, SurfacePore);
        check.Range(path, SeamFields.InnerPore, InnerPore);
        check.Range(path, SeamFields.CapHeight, CapHeight);
        check.Range(path, SeamFields.CapWidth, CapWidth);
        check.Range(path, SeamFields.Offset, Offset);
    }
}

/// <summary>The questions of <see cref="SeamLook"/>.</summary>
public static class SeamFields
{
    /// <summary>Depth, mm.</summary>
    public static Field<Distance> Depth { get; } =
        new("depth", "depth of the weld", 0.5, 60, 0.5, "the etched sample");

    /// <summary>Undercut, mm.</summary>
    public static Field<Distance> Undercut { get; } =
        new("undercut", "deepest undercut", 0, 10, 0.1, "weld gauge");

    /// <summary>Surface pore, mm.</summary>
    public static Field<Distance> SurfacePore { get; } =
        new("surfacePore", "largest pore in the surface", 0, 20, 0.2, "steel rule and glass");

    /// <summary>Pore in the cut, mm.</summary>
    public static Field<Distance> InnerPore { get; } =
        new(
            "innerPore",
            "largest pore in the cut of the sample",
            0,
            20,
            0.2,
            "steel rule and glass"
        );

    /// <summary>Cap height, mm.</summary>
    public static Field<Distance> CapHeight { get; } =
        new("capHeight", "height of the cap", 0, 15, 0.3, "weld gauge");

    /// <summary>Cap width, mm.</summary>
    public static Field<Distance> CapWidth { get; } =
        new("capWidth", "width of the cap", 1, 60, 0.5, "caliper");

    /// <summary>Offset, mm.</summary>
    public static Field<Distance> Offset { get; } =
        new("offset", "one surface beside the other", 0, 20, 0.1, "straight edge and blades");
}
