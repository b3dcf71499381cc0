using Shaftwright.Cut;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Strength;

/// <summary>What kind of section a margin belongs to.</summary>
public enum SectionKind
{
    /// <summary>The thinnest plain bar of a piece.</summary>
    Plain,

    /// <summary>The root of a spline, as a plain round section.</summary>
    SplineRoot,

    /// <summary>The floor of a groove.</summary>
    Groove,

    /// <summary>The heat-softened bar beside the weld.</summary>
    BesideWeld,

    /// <summary>The fused ring of the butt weld.</summary>
    FusedRing,

    /// <summary>The bar at a sleeve end, softened, at full torque.</summary>
    SleeveEnd,

    /// <summary>The butt weld together with a sleeve of which every seam is closed.</summary>
    Sleeved,
}

/// <summary>One section, and how far its yield is from the torque in it.</summary>
/// <param name="Kind">What kind of section.</param>
/// <param name="Words">Where it is, as one would say it.</param>
/// <param name="End">Which piece it belongs to; null for the weld, which joins both.</param>
/// <param name="At">Place from the inner end, mm.</param>
/// <param name="Diameter">Diameter that carries, mm.</param>
/// <param name="ShearYield">Shear yield of the metal there, MPa; in a hardened section the surface stress at which it first yields.</param>
/// <param name="YieldTorque">Torque at first yield, N·mm.</param>
/// <param name="Margin">Yield torque ÷ shaft torque; null when the shaft torque is unknown.</param>
/// <param name="NewOverDonor">New torque ÷ torque the donor was made for, at the piece it belongs to; null when unknown.</param>
/// <param name="Softened">True where the heat of a weld is taken to have softened the metal.</param>
public sealed record SectionMargin(
    SectionKind Kind,
    string Words,
    ShaftEnd? End,
    double At,
    double Diameter,
    Band ShearYield,
    Band YieldTorque,
    Band? Margin,
    Band? NewOverDonor,
    bool Softened
);

/// <summary>The unfused core of the butt weld, taken as the flat crack that it is.</summary>
/// <param name="Diameter">Of the core, mm; as wide as the bar where nothing may be fused.</param>
/// <param name="Intensity">Mode III stress intensity at its edge at the torque in the shaft, N/mm^1.5; null where the torque is
/// unknown, and where nothing may be fused, since it then has no upper end.</param>
/// <param name="MayBeAll">True where by the numbers known the weld may have fused nothing.</param>
public sealed record UnfusedRoot(Band Diameter, Band? Intensity, bool MayBeAll);

/// <summary>The answer of the strength stage.</summary>
public sealed record StrengthResult
{
    /// <summary>Torque in the shaft, N·mm; null when unknown.</summary>
    public Band? Torque { get; init; }

    /// <summary>Every section judged, in order from the inner end.</summary>
    public IReadOnlyList<SectionMargin> Sections { get; init; } = [];

    /// <summary>The one that yields first at the low end of its range; null when nothing could be judged.</summary>
    public SectionMargin? Weakest { get; init; }

    /// <summary>The unfused core of the butt weld; null where the weld could not be judged or fuses right through.</summary>
    public UnfusedRoot? Root { get; init; }

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
