namespace Shaftwright.Weld;

/// <summary>How one-sided shrinkage bends a shaft, and why beads go on opposite sides.</summary>
/// <remarks>Source: own derivation, small angles: a straight shaft with one kink, turned on its two supports. Check values:
/// welding-and-inspection.md 2.4, mark D.</remarks>
public static class BeadPull
{
    /// <summary>Kink of a joint whose one side shrinks more than the other, rad: δ/D.</summary>
    public static double Kink(double shrinkDifference, double diameter) =>
        shrinkDifference / diameter;

    /// <summary>Total run-out at the splice from a kink there, mm: 2·β·L1·L2/(L1+L2).</summary>
    /// <param name="kink">β, rad.</param>
    /// <param name="toFirst">L1, splice to one support, mm.</param>
    /// <param name="toSecond">L2, splice to the other, mm.</param>
    public static double RunOut(double kink, double toFirst, double toSecond) =>
        2 * kink * toFirst * toSecond / (toFirst + toSecond);

    /// <summary>What is left of four equal pulls, each ρ of the one before because the joint stiffens, as a share of the first.</summary>
    /// <param name="stiffening">ρ, 0 to 1.</param>
    /// <param name="degrees">Where each bead goes, degrees, in order of welding.</param>
    /// <remarks>Model and derivation are ours: the vector sum of ρᵏ at each angle. Opposite sides leave (1−ρ)√(1+ρ⁴), round and round
    /// (1−ρ²)√(1+ρ²): opposite is smaller for every ρ between 0 and 1.</remarks>
    public static double Left(double stiffening, ReadOnlySpan<double> degrees)
    {
        double x = 0,
            y = 0,
            pull = 1;
        foreach (var d in degrees)
        {
            var (sin, cos) = Math.SinCos(d * Math.PI / 180);
            x += pull * cos;
            y += pull * sin;
            pull *= stiffening;
        }
        return double.Hypot(x, y);
    }
}
