using Shaftwright.Findings;

namespace Shaftwright.Joints;

/// <summary>The answer of the joints stage.</summary>
public sealed record JointsResult
{
    /// <summary>Joint centre beyond its locating feature at the inner end, mm, which way round taken into account; null if unknown.</summary>
    public double? InnerSeatToCentre { get; init; }

    /// <summary>The same at the outer end.</summary>
    public double? OuterSeatToCentre { get; init; }

    /// <summary>Shaft end beyond the locating feature at the inner end, mm; null if unknown.</summary>
    public double? InnerSeatToEnd { get; init; }

    /// <summary>The same at the outer end.</summary>
    public double? OuterSeatToEnd { get; init; }

    /// <summary>Standard uncertainty of the overall length through the four offsets, mm, as far as they are known.</summary>
    public double OverallUncertainty { get; init; }

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
