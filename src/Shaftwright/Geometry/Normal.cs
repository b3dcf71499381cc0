namespace Shaftwright.Geometry;

/// <summary>The standard normal distribution.</summary>
public static class Normal
{
    /// <summary>Chance that a standard normal value lies below <paramref name="z"/>.</summary>
    /// <returns>0 to 1; absolute error below 1e-7. NaN for NaN.</returns>
    /// <remarks>Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.26 (error function, |error| ≤ 1.5e-7).</remarks>
    public static double Below(double z)
    {
        var x = Math.Abs(z) / Math.Sqrt(2);
        var t = 1 / (1 + 0.3275911 * x);
        var polynomial =
            t
            * (
                0.254829592
                + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))
            );
        var tail = 0.5 * polynomial * Math.Exp(-x * x);
        return z < 0 ? tail : 1 - tail;
    }
}
