using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>How a move ended.</summary>
public enum MoveEnd
{
    /// <summary>The carrier stands where it was asked to.</summary>
    Reached,

    /// <summary>The linkage locks or goes over centre on the way: no position beyond belongs to this assembly.</summary>
    Locked,

    /// <summary>The conditions do not hold the carrier at ride height: some are alike, or the linkage stands at its dead centre.</summary>
    Loose,
}

/// <summary>Where a move ended.</summary>
/// <param name="End">How.</param>
/// <param name="Drive">Travel and rack that were reached; at a lock within 1e-6 mm of it.</param>
/// <param name="Carrier">The carrier there.</param>
public readonly record struct CarrierMove(MoveEnd End, Drive Drive, Pose Carrier);
