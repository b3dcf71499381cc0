namespace Shaftwright.Truing.Pressing;

/// <summary>A solid round bar of one yield strength in bending.</summary>
/// <remarks>
/// <para>With κ the curvature, κy = 2σy/(E·D) that of first yield and η = κy/κ ≤ 1:
/// M/My = (16/π){[asin η − η(1 − 2η²)√(1 − η²)]/(8η) + (1 − η²)^(3/2)/3}, My = πD³σy/32; from 1 at first yield to 16/3π.
/// Source: derived, the usual integral of stress over a circle.</para>
/// <para>With hardening, a share h of Young's modulus that goes on beyond yield, the moment is (1 − h) times that of the perfectly
/// plastic bar plus h·EI·κ: two bars side by side, one of which never yields.</para>
/// <para>Inverted by Newton's method in η, safeguarded by halving; agrees with the forward formula to 1e-12 of My.
/// Check values: Published/press-stroke.json.</para>
/// </remarks>
public sealed class RoundBar : BendSection
{
    /// <summary>Most that the moment can become, as a multiple of that of first yield: 16/(3π).</summary>
    public const double FullRatio = 16 / (3 * Math.PI);

    private readonly double _yieldCurvature;
    private readonly double _hardening;

    /// <summary>A bar.</summary>
    /// <param name="diameter">mm, above 0.</param>
    /// <param name="yield">Tensile yield, MPa, above 0.</param>
    /// <param name="modulus">Young's modulus, MPa.</param>
    /// <param name="hardening">Slope beyond yield as a share of Young's modulus, 0 to below 1; 0 is perfectly plastic.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public RoundBar(double diameter, double yield, double modulus = Steel, double hardening = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(hardening);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(hardening, 1);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(diameter);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(yield);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(modulus);
        Radius = diameter / 2;
        Stiffness = modulus * Math.PI / 64 * diameter * diameter * diameter * diameter;
        YieldMoment = Math.PI / 32 * diameter * diameter * diameter * yield;
        _yieldCurvature = yield / (modulus * Radius);
        _hardening = hardening;
    }

    /// <inheritdoc/>
    public override double Stiffness { get; }

    /// <inheritdoc/>
    public override double YieldMoment { get; }

    /// <inheritdoc/>
    public override double FullMoment =>
        _hardening > 0 ? double.PositiveInfinity : FullRatio * YieldMoment;

    /// <inheritdoc/>
    public override double Radius { get; }

    /// <inheritdoc/>
    public override double Curvature(double moment) =>
        _yieldCurvature * CurvatureRatio(moment / YieldMoment, _hardening);

    /// <summary>κ/κy at a moment, with hardening.</summary>
    /// <param name="m">M/My, 0 or more.</param>
    /// <param name="hardening">Slope beyond yield as a share of Young's modulus, 0 to below 1.</param>
    public static double CurvatureRatio(double m, double hardening)
    {
        if (hardening <= 0 || m <= 1)
            return CurvatureRatio(m);
        // The moment rises with the curvature and ever more slowly, so Newton from below never passes the root.
        var k = m;
        for (var i = 0; i < 100; i++)
        {
            var off = m - (1 - hardening) * MomentRatio(k) - hardening * k;
            var step = off / ((1 - hardening) * ElasticShare(k) + hardening);
            k += step;
            if (step <= 1e-13 * k)
                break;
        }
        return k;
    }

    /// <summary>M/My at a curvature.</summary>
    /// <param name="k">κ/κy, 0 or more.</param>
    public static double MomentRatio(double k)
    {
        if (k <= 1)
            return k;
        var n = 1 / k;
        var root = Math.Sqrt(1 - n * n);
        return 16 / Math.PI * (Core(n, root) / (8 * n) + root * root * root / 3);
    }

    /// <summary>How fast M/My grows with κ/κy: the share of the second moment of area that is still elastic.</summary>
    /// <param name="k">κ/κy, 0 or more.</param>
    public static double ElasticShare(double k)
    {
        if (k <= 1)
            return 1;
        var n = 1 / k;
        return 2 / Math.PI * Core(n, Math.Sqrt(1 - n * n));
    }

    /// <summary>κ/κy at a moment.</summary>
    /// <param name="m">M/My, 0 or more.</param>
    /// <returns>1 or less up to first yield; positive infinity from 16/(3π) up.</returns>
    public static double CurvatureRatio(double m)
    {
        if (m <= 1)
            return m;
        if (m >= FullRatio)
            return double.PositiveInfinity;
        var (low, high) = (0.0, 1.0);
        // Near the full moment what is missing goes with η², which makes a good beginning anywhere.
        var n = Math.Sqrt((FullRatio - m) / (FullRatio - 1));
        for (var i = 0; i < 60; i++)
        {
            var root = Math.Sqrt(Math.Max(0, 1 - n * n));
            var core = Core(n, root);
            var off = 16 / Math.PI * (core / (8 * n) + root * root * root / 3) - m;
            if (off > 0)
                low = n;
            else
                high = n;
            // d(M/My)/dη = −(2/π)·core/η².
            var next = n + off * n * n * Math.PI / (2 * core);
            if (!(next > low && next < high))
                next = (low + high) / 2;
            if (Math.Abs(next - n) <= 1e-15)
                return 1 / next;
            n = next;
        }
        return 1 / n;
    }

    /// <summary>asin η − η(1 − 2η²)√(1 − η²), with √(1 − η²) given; by its series where the terms would cancel.</summary>
    private static double Core(double n, double root) =>
        n < 0.02 ? n * n * n * (8.0 / 3 - 0.8 * n * n) : Math.Asin(n) - n * (1 - 2 * n * n) * root;
}
