namespace Shaftwright.Joints;

/// <summary>How a tripod's spider moves when the joint runs at an angle.</summary>
/// <remarks>Three straight tracks at radius ρ, 120° apart, cut the spider's tilted plane in three points of an ellipse with half
/// axes ρ/cos φ and ρ. Written as p·e^(iθ) + q·e^(−iθ), p and q half the sum and half the difference of the two, arms 120° apart
/// pass through all three only from the point −q·e^(3iθ): the spider's centre runs round on a circle of radius q, three times a
/// turn, and each roller slides along its arm between p − 2q and p + 2q. The cut's mean lies on the housing's axis, and each
/// roller passes ρ·tan φ beyond and short of it: that is the loss at each end of the stroke. Own derivation, rigid geometry,
/// exact for rollers without width and an axis that keeps its direction.</remarks>
public static class Tripod
{
    /// <summary>Radius of the circle the spider's centre runs round on, three times a turn, mm: ρ(1/cos φ − 1)/2.</summary>
    /// <param name="rollerRadius">Spider's axis to the roller's centre line, mm.</param>
    /// <param name="angle">Joint angle, rad, 0 to less than π/2.</param>
    public static double Orbit(double rollerRadius, double angle) =>
        rollerRadius * (1 / Math.Cos(angle) - 1) / 2;

    /// <summary>Plunge lost at each end, mm: ρ·tan φ.</summary>
    /// <param name="rollerRadius">mm.</param>
    /// <param name="angle">rad, 0 to less than π/2.</param>
    public static double EndLoss(double rollerRadius, double angle) =>
        rollerRadius * Math.Tan(angle);

    /// <summary>How far each roller slides along its arm, end to end, mm: 2ρ(1/cos φ − 1).</summary>
    /// <param name="rollerRadius">mm.</param>
    /// <param name="angle">rad, 0 to less than π/2.</param>
    public static double RollerSlide(double rollerRadius, double angle) =>
        4 * Orbit(rollerRadius, angle);
}
