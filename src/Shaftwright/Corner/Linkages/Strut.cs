using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>A lower arm, a strut fixed to the carrier whose line goes through its top mount, and a link that steers.</summary>
public static class Strut
{
    /// <summary>Makes one from its points at ride height, mm.</summary>
    /// <param name="wheelCentre">Wheel centre.</param>
    /// <param name="lowerFront">Lower arm, front pivot.</param>
    /// <param name="lowerRear">Lower arm, rear pivot.</param>
    /// <param name="lowerBall">Lower ball.</param>
    /// <param name="topMount">Middle of the top mount.</param>
    /// <param name="onStrut">Another point of the strut's line, low on the body of the strut. The strut need not point at the lower ball.</param>
    /// <param name="track">The link that steers.</param>
    public static Linkage Of(
        Vec3 wheelCentre,
        Vec3 lowerFront,
        Vec3 lowerRear,
        Vec3 lowerBall,
        Vec3 topMount,
        Vec3 onStrut,
        Constraint track
    ) =>
        new(
            "strut",
            wheelCentre,
            [
                Constraint.Rod(lowerFront, lowerBall),
                Constraint.Rod(lowerRear, lowerBall),
                .. Constraint.LineThrough(topMount, onStrut),
                track,
            ]
        );
}
