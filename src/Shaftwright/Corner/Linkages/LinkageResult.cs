using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>One point as it is used.</summary>
/// <param name="Point">Which.</param>
/// <param name="At">Where, mm, at ride height with the power unit at rest.</param>
/// <param name="Uncertainty">Standard uncertainty of each coordinate, mm.</param>
public sealed record PlacedPoint(LinkagePoint Point, Vec3 At, Vec3 Uncertainty);

/// <summary>What the linkage does at the positions asked for.</summary>
public sealed record LinkageResult
{
    /// <summary>What holds the hub.</summary>
    public required LinkageKind Kind { get; init; }

    /// <summary>The points as used.</summary>
    public required IReadOnlyList<PlacedPoint> Points { get; init; }

    /// <summary>Every tape against the place it led to.</summary>
    public IReadOnlyList<TapeFit> Tapes { get; init; } = [];

    /// <summary>Every reading against the linkage that the readings corrected; empty without readings.</summary>
    public IReadOnlyList<ReadingFit> Readings { get; init; } = [];

    /// <summary>Every uncertain coordinate before and after the readings corrected it; empty without readings.</summary>
    public IReadOnlyList<CorrectedCoordinate> Corrected { get; init; } = [];

    /// <summary>Every position asked for, in the order of the job where it lists them.</summary>
    public required IReadOnlyList<SweptPosition> Positions { get; init; }
}
