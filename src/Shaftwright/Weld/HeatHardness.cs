using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>Hardness of the heat-affected zone as welded, HV, by two published methods that do not agree: a band, never a number.</summary>
/// <remarks>A comparison of twelve such methods on more than 300 welds found none best everywhere, and a standard deviation of 28 HV
/// for the best mixture (Nicholas and Abson, 2008). On shaft steels these two stand 15 to 130 HV apart.</remarks>
public static class HeatHardness
{
    /// <summary>Düren's method, HV.</summary>
    /// <param name="steel">Composition, mass %.</param>
    /// <param name="coolingTime">t8/5, s, more than 0.</param>
    /// <remarks>B* = Si/11+Mn/8+Cu/9+Cr/5+Ni/17+Mo/6+V/3; martensite 802C+305; none 350(C+B*)+101; between
    /// 2019[C(1−0.5 log t)+0.3B*]+66(1−0.8 log t), clamped to those two. Source: Düren / Lorenz and Düren (from memory).</remarks>
    public static double Dueren(Composition steel, double coolingTime)
    {
        var l = Math.Log10(coolingTime);
        var b =
            steel.Si / 11
            + steel.Mn / 8
            + steel.Cu / 9
            + steel.Cr / 5
            + steel.Ni / 17
            + steel.Mo / 6
            + steel.V / 3;
        var martensite = 802 * steel.C + 305;
        var none = 350 * (steel.C + b) + 101;
        var between = 2019 * (steel.C * (1 - 0.5 * l) + 0.3 * b) + 66 * (1 - 0.8 * l);
        return Math.Min(Math.Max(between, none), martensite);
    }

    /// <summary>Yurioka's method, HV.</summary>
    /// <param name="steel">Composition, mass %.</param>
    /// <param name="coolingTime">t8/5, s, more than 0.</param>
    /// <remarks>Source: Yurioka, Okumura, Kasuya and Cotton, Metal Construction 19, 1987, 217R (coefficients from memory). The arctan form
    /// passes its own limits for |X| above 2; it is clamped to them here, which the form suggests and the paper may not.</remarks>
    public static double Yurioka(Composition steel, double coolingTime)
    {
        var (raw, none, martensite) = YuriokaRaw(steel, coolingTime);
        return Math.Min(Math.Max(raw, none), martensite);
    }

    /// <summary>The same before clamping, with its two limits, HV.</summary>
    public static (double Raw, double NoMartensite, double Martensite) YuriokaRaw(
        Composition steel,
        double coolingTime
    )
    {
        var c = steel.C;
        var cp = c <= 0.3 ? c : c / 6 + 0.25;
        var one =
            cp
            + steel.Si / 24
            + steel.Mn / 6
            + steel.Cu / 15
            + steel.Ni / 12
            + steel.Cr * (1 - 0.16 * Math.Sqrt(steel.Cr)) / 8
            + steel.Mo / 4;
        var two =
            c
            + steel.Si / 24
            + steel.Mn / 5
            + steel.Cu / 10
            + steel.Ni / 18
            + steel.Cr / 5
            + steel.Mo / 2.5
            + steel.V / 5;
        var three =
            cp + steel.Mn / 3.6 + steel.Cu / 20 + steel.Ni / 9 + steel.Cr / 5 + steel.Mo / 4;
        var martensite = 884 * c * (1 - 0.3 * c * c) + 294;
        var none = 145 + 130 * Math.Tanh(2.65 * two - 0.69);
        var startsAt = Math.Exp(10.6 * one - 4.8);
        var endsAt = Math.Exp(6.2 * three + 0.74);
        var x = 4 * Math.Log(coolingTime / startsAt) / Math.Log(endsAt / startsAt) - 2;
        return (
            (martensite + none) / 2 - (martensite - none) * Math.Atan(x) / 2.2,
            none,
            martensite
        );
    }

    /// <summary>The band of both methods over a range of steels and of cooling times, HV.</summary>
    public static Band Of(CompositionBand steel, Band coolingTime)
    {
        ArgumentNullException.ThrowIfNull(steel);
        // Both fall with time and rise with every element of a shaft steel: the corners hold the extremes.
        return new(
            Math.Min(Dueren(steel.Low, coolingTime.High), Yurioka(steel.Low, coolingTime.High)),
            Math.Max(Dueren(steel.High, coolingTime.Low), Yurioka(steel.High, coolingTime.Low))
        );
    }
}
