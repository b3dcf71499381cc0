namespace Shaftwright.Weld;

/// <summary>Something measured on a seam.</summary>
public enum SeamItem
{
    /// <summary>Undercut, ISO 5817 no. 5011 and 5012.</summary>
    Undercut,

    /// <summary>Pore in the surface, no. 2017.</summary>
    SurfacePore,

    /// <summary>Single pore inside, no. 2011.</summary>
    InnerPore,

    /// <summary>Excess weld metal of a butt, no. 502.</summary>
    ButtCap,

    /// <summary>Excess convexity of a fillet, no. 503.</summary>
    FilletCap,

    /// <summary>Misalignment of a seam round a bar, no. 5072.</summary>
    Offset,
}

/// <summary>Limits of ISO 5817:2014 for what a person can measure on a seam. A crack has none: no level accepts it (no. 100, 104).</summary>
/// <remarks>All <b>from memory</b> but the excess weld metal of level C, which was looked up: have somebody who holds the standard
/// read them. They are made for plate and pipe; on a solid bar the depth of the weld stands for t and s, which is the careful side.
/// Check values: Published/seam-limits.json.</remarks>
public static class SeamLimits
{
    /// <summary>Depth up to which the rules for thin metal hold, mm.</summary>
    public const double Thin = 3;

    internal const string Source =
        "ISO 5817:2014, from memory (excess weld metal at level C looked up); the depth of the weld taken for its thickness";

    /// <summary>Most that a level accepts, mm; 0 when it accepts none. Null when what it depends on is not known.</summary>
    /// <param name="item">What.</param>
    /// <param name="level">The level.</param>
    /// <param name="depth">Depth of the weld, mm, for t and s; null when not known.</param>
    /// <param name="width">Width of the cap, mm; null when not known.</param>
    /// <param name="isShort">For undercut in thin metal: whether it is short. Not known counts as long.</param>
    public static double? Most(
        SeamItem item,
        SeamLevel level,
        double? depth,
        double? width,
        bool isShort
    )
    {
        // By level B, C, D.
        double By(double b, double c, double d) =>
            level switch
            {
                SeamLevel.B => b,
                SeamLevel.C => c,
                _ => d,
            };
        double Cap(double b, double share, double most) => Math.Min(1 + share * b, most);
        return item switch
        {
            SeamItem.ButtCap => width is { } b
                ? By(Cap(b, 0.1, 5), Cap(b, 0.15, 7), Cap(b, 0.25, 10))
                : null,
            SeamItem.FilletCap => width is { } b
                ? By(Cap(b, 0.1, 3), Cap(b, 0.15, 4), Cap(b, 0.25, 5))
                : null,
            // No level B takes a pore in the surface, however deep the weld is.
            SeamItem.SurfacePore when level == SeamLevel.B => 0,
            _ when depth is not { } => null,
            SeamItem.Undercut when depth > Thin => By(
                Math.Min(0.05 * depth.Value, 0.5),
                Math.Min(0.1 * depth.Value, 0.5),
                Math.Min(0.2 * depth.Value, 1)
            ),
            SeamItem.Undercut => isShort ? By(0, 0.1 * depth.Value, 0.2 * depth.Value) : 0,
            SeamItem.SurfacePore when depth > Thin => By(
                0,
                Math.Min(0.2 * depth.Value, 2),
                Math.Min(0.3 * depth.Value, 3)
            ),
            SeamItem.SurfacePore => By(0, 0, 0.3 * depth.Value),
            SeamItem.InnerPore => By(
                Math.Min(0.2 * depth.Value, 3),
                Math.Min(0.3 * depth.Value, 4),
                Math.Min(0.4 * depth.Value, 5)
            ),
            _ => Math.Min(0.5 * depth.Value, By(2, 3, 4)),
        };
    }
}
