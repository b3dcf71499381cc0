using Shaftwright.Cut;
using Shaftwright.Findings;

namespace Shaftwright.Weld;

/// <summary>A stack of feeler blades.</summary>
/// <param name="Leaves">Thicknesses, mm, thickest first.</param>
public sealed record ShimPack(IReadOnlyList<double> Leaves)
{
    /// <summary>Its thickness, mm.</summary>
    public double Thickness => Leaves.Sum();
}

/// <summary>Two packs from one set of blades, one for each face of the vee.</summary>
/// <param name="Left">For one face.</param>
/// <param name="Right">For the other.</param>
/// <param name="Error">Error of the worse pack, mm: its thickness less the shim wanted, with its sign.</param>
/// <param name="AxisError">Distance between the two axes that the packs' errors leave, mm; null when the vee angle is unknown, unless the packs are exact.</param>
public sealed record ShimPair(ShimPack Left, ShimPack Right, double Error, double? AxisError);

/// <summary>The answer of the weld stage.</summary>
public sealed record WeldResult
{
    /// <summary>Which piece lies on the shims: the smaller one; null when they are alike or unknown.</summary>
    public ShaftEnd? ShimUnder { get; init; }

    /// <summary>Shim on each face, mm: half the diameter difference.</summary>
    public double? Shim { get; init; }

    /// <summary>Expanded uncertainty of the shim, k = 2, mm.</summary>
    public double ShimUncertainty { get; init; }

    /// <summary>The best two packs; null when no shim is needed or none can be made.</summary>
    public ShimPair? Packs { get; init; }

    /// <summary>Error of the worse of the nearest two packs when none come near enough to be offered, mm, with its sign; null otherwise, and when so many packs are possible that only their being no use was established.</summary>
    public double? NearestError { get; init; }

    /// <summary>Packing under the whole block that would do the same, mm; null when the vee angle is unknown.</summary>
    public double? UnderBlock { get; init; }

    /// <summary>How far aside the axis goes if one face alone is shimmed to regain the height, mm; null when the vee angle is unknown.</summary>
    public double? OneFaceError { get; init; }

    /// <summary>The three ways of packing with their mistakes; null when an angle or a height is missing, or no piece is lower.</summary>
    public PackingPlan? Packing { get; init; }

    /// <summary>Pieces that stand on a taper.</summary>
    public IReadOnlyList<TaperStand> Tapers { get; init; } = [];

    /// <summary>The tacks under the dial; null when they were not read.</summary>
    public TackStand? Tacks { get; init; }

    /// <summary>The groove; null when it is not known.</summary>
    public PreparationNumbers? Preparation { get; init; }

    /// <summary>The heat; null when it was not asked for.</summary>
    public HeatNumbers? Heat { get; init; }

    /// <summary>The finished seams, judged by what was measured on them; empty when nobody looked.</summary>
    public IReadOnlyList<SeamResult> Seams { get; init; } = [];

    /// <summary>What to know of the preparation.</summary>
    public IReadOnlyList<Finding> PreparationFindings { get; init; } = [];

    /// <summary>What to know of the set-up in the vee.</summary>
    public IReadOnlyList<Finding> SetUpFindings { get; init; } = [];

    /// <summary>All of it: set-up, preparation, tacks, preheat, welding, tempering.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
