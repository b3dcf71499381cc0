namespace Shaftwright.Weld;

/// <summary>Time from 800 to 500 °C beside a run.</summary>
/// <param name="ThreeDimensional">By the thick-plate formula, s.</param>
/// <param name="TwoDimensional">By the thin-plate formula, s.</param>
/// <param name="TransitionThickness">Thickness at which both agree, mm.</param>
public readonly record struct CoolingTime(
    double ThreeDimensional,
    double TwoDimensional,
    double TransitionThickness
)
{
    /// <summary>Temperature from which the formulas have no answer, °C.</summary>
    public const double Pole = 500;

    /// <summary>Temperature above which they are doubtful, °C.</summary>
    public const double Doubtful = 350;

    /// <summary>The one that governs, s: the longer.</summary>
    public double Seconds => Math.Max(ThreeDimensional, TwoDimensional);

    /// <summary>Evaluates both formulas.</summary>
    /// <param name="temperature">Preheat or interpass temperature T, °C, below <see cref="Pole"/>.</param>
    /// <param name="heatInput">Q, kJ/mm.</param>
    /// <param name="thickness">d, mm.</param>
    /// <param name="f2">Shape factor of the thin formula; 0.9 for a filling run in a butt (from memory).</param>
    /// <param name="f3">Shape factor of the thick formula; 0.9 for a filling run in a butt (from memory).</param>
    /// <remarks>Source: EN 1011-2:2001, Annex D (public restatements).
    /// 3-D: t = (6700 − 5T)·Q·[1/(500−T) − 1/(800−T)]·F3.
    /// 2-D: t = (4300 − 4.3T)·10⁵·(Q²/d²)·[1/(500−T)² − 1/(800−T)²]·F2.
    /// Wide plates: for a bar of the shaft's size the result is a guide to a band, no more.</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="temperature"/> is not below 500 °C.</exception>
    public static CoolingTime Of(
        double temperature,
        double heatInput,
        double thickness,
        double f2 = 0.9,
        double f3 = 0.9
    )
    {
        if (!(temperature < Pole))
            throw new ArgumentOutOfRangeException(
                nameof(temperature),
                temperature,
                "The formulas have no answer at 500 °C and above."
            );
        var a = 1 / (500 - temperature);
        var b = 1 / (800 - temperature);
        var three = 6700 - 5 * temperature;
        var two = 4300 - 4.3 * temperature;
        return new(
            three * heatInput * (a - b) * f3,
            two * 1e5 * heatInput * heatInput / (thickness * thickness) * (a * a - b * b) * f2,
            Math.Sqrt(two / three * 1e5 * heatInput * (a + b) * f2 / f3)
        );
    }
}
