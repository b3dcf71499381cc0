using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>Two wishbones and a link that steers, to a rack or to a fixed point. Each wishbone is two rods to one ball: its ball goes
/// on the same circle.</summary>
public static class DoubleWishbone
{
    /// <summary>Makes one from its points at ride height, mm.</summary>
    /// <param name="wheelCentre">Wheel centre.</param>
    /// <param name="lowerFront">Lower arm, front pivot.</param>
    /// <param name="lowerRear">Lower arm, rear pivot.</param>
    /// <param name="lowerBall">Lower ball.</param>
    /// <param name="upperFront">Upper arm, front pivot.</param>
    /// <param name="upperRear">Upper arm, rear pivot.</param>
    /// <param name="upperBall">Upper ball.</param>
    /// <param name="track">The link that steers.</param>
    public static Linkage Of(
        Vec3 wheelCentre,
        Vec3 lowerFront,
        Vec3 lowerRear,
        Vec3 lowerBall,
        Vec3 upperFront,
        Vec3 upperRear,
        Vec3 upperBall,
        Constraint track
    ) =>
        new(
            "double wishbone",
            wheelCentre,
            [
                Constraint.Rod(lowerFront, lowerBall),
                Constraint.Rod(lowerRear, lowerBall),
                Constraint.Rod(upperFront, upperBall),
                Constraint.Rod(upperRear, upperBall),
                track,
            ]
        );
}
