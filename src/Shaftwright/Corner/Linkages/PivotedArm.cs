using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>Trailing, semi-trailing or swing arm: the carrier turns about one axis, whatever its direction.</summary>
public static class PivotedArm
{
    /// <summary>Makes one from its points at ride height, mm.</summary>
    /// <param name="wheelCentre">Wheel centre.</param>
    /// <param name="onePivot">One point of the axis.</param>
    /// <param name="otherPivot">Another point of the axis.</param>
    public static Linkage Of(Vec3 wheelCentre, Vec3 onePivot, Vec3 otherPivot) =>
        new(
            "arm on one axis",
            wheelCentre,
            [.. Constraint.Ball(onePivot), .. Constraint.OnLine(otherPivot, otherPivot - onePivot)]
        );
}
