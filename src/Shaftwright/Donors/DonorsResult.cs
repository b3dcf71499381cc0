using Shaftwright.Findings;

namespace Shaftwright.Donors;

/// <summary>A stretch with plain numbers, mm.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Diameter">Diameter where it begins.</param>
/// <param name="EndDiameter">Diameter where it ends; the same unless it is a taper.</param>
/// <param name="RootDiameter">Spline: at the root of the teeth; otherwise null.</param>
/// <param name="Guessed">True when no diameter was measured here and a neighbour's stands in, so that the drawing has no hole.
/// Nothing is cut in such a stretch and its strength is not judged.</param>
/// <param name="DiameterDoubt">The most its diameters can be off, mm each way.</param>
/// <param name="RootDoubt">The most its root diameter can be off, mm each way.</param>
public readonly record struct Stretch(
    ZoneKind Kind,
    double From,
    double To,
    double Diameter,
    double EndDiameter,
    double? RootDiameter = null,
    bool Guessed = false,
    double DiameterDoubt = 0,
    double RootDoubt = 0
)
{
    /// <summary>Radius of the fillet at its beginning, mm; 0 when sharp or unknown.</summary>
    public double Fillet { get; init; }

    /// <summary>Diameter at a place in it, mm.</summary>
    public double At(double x) =>
        To > From ? Diameter + (EndDiameter - Diameter) * (x - From) / (To - From) : Diameter;

    /// <summary>Its length, mm.</summary>
    public double Length => To - From;
}

/// <summary>A hardened stretch with plain numbers, mm.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="CaseDepth">Depth of the case, at least and at most; null if unknown.</param>
public readonly record struct HardStretch(double From, double To, Measures.Band? CaseDepth);

/// <summary>A hollow with plain numbers, mm.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Diameter">The most its diameter can be.</param>
public readonly record struct HollowStretch(double From, double To, double Diameter);

/// <summary>One donor as measured, in plain numbers from its joint end, mm.</summary>
/// <param name="Name">What the fabricator calls it.</param>
/// <param name="Stretches">In order from the joint end, without gaps.</param>
/// <param name="Hardened">Hardened stretches.</param>
/// <param name="Steel">What is known of its steel.</param>
public sealed record DonorProfile(
    string Name,
    IReadOnlyList<Stretch> Stretches,
    IReadOnlyList<HardStretch> Hardened,
    SteelKnown Steel
)
{
    /// <summary>Its hollows, in order from the joint end.</summary>
    public IReadOnlyList<HollowStretch> Hollows { get; init; } = [];

    /// <summary>How far it has been measured, mm.</summary>
    public double Length => Stretches.Count == 0 ? 0 : Stretches[^1].To;
}

/// <summary>What is known of a donor's steel, in plain numbers.</summary>
/// <param name="Class">Its class.</param>
/// <param name="CoreHrc">Core hardness range, HRC; null if not measured.</param>
/// <param name="SurfaceHrc">Surface hardness range, HRC; null if not measured.</param>
public sealed record SteelKnown(
    SteelClass Class,
    Measures.Band? CoreHrc,
    Measures.Band? SurfaceHrc
);

/// <summary>The answer of the donors stage.</summary>
public sealed record DonorsResult
{
    /// <summary>The inner-end donor; null if it has not been walked.</summary>
    public DonorProfile? InnerEnd { get; init; }

    /// <summary>The outer-end donor; null if it has not been walked.</summary>
    public DonorProfile? OuterEnd { get; init; }

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
