namespace Shaftwright.Weld;

/// <summary>How far heat reaches along a bar: the peak beside a run, and what a held preheat brings to the bar's far end.</summary>
/// <remarks>Closed forms of textbook heat conduction with constant properties; derived, and checked against numerical
/// maximisation and a finite-difference bar. Steel changes its properties by half over this range: guides, no more.</remarks>
public static class BarHeat
{
    /// <summary>Density times specific heat of steel, J/(mm³·K): 7.85e-6 kg/mm³ × 490 J/(kg·K).</summary>
    public const double HeatCapacity = 7.85e-6 * 490;

    /// <summary>Temperature of the workshop, °C.</summary>
    public const double Workshop = 20;

    /// <summary>Distance from a run on a thick body at which the peak temperature falls to a value, mm:
    /// r = √(2Q / (π·e·ρc·(Tp − T0))).</summary>
    /// <param name="heatInput">Q, kJ/mm.</param>
    /// <param name="before">T0 before the run, °C.</param>
    /// <param name="peak">Tp, °C; above <paramref name="before"/>.</param>
    /// <remarks>An instantaneous line of heat on a half-space. The least that heat reaches: a bar spreads it less.</remarks>
    public static double ReachOfRun(double heatInput, double before, double peak) =>
        Math.Sqrt(2 * heatInput * 1000 / (Math.PI * Math.E * HeatCapacity * (peak - before)));

    /// <summary>Distance along a bar at which the peak temperature after one whole lap falls to a value, mm:
    /// x = 4Q / (ρc·D·√(2π·e)·(Tp − T0)).</summary>
    /// <param name="heatInput">Q, kJ/mm, all round.</param>
    /// <param name="diameter">D, mm.</param>
    /// <param name="before">T0, °C.</param>
    /// <param name="peak">Tp, °C; above <paramref name="before"/>.</param>
    /// <remarks>The lap's heat Q·πD put into one cross-section of a long bar at once, nothing lost. The most that one lap reaches.</remarks>
    public static double ReachOfLap(
        double heatInput,
        double diameter,
        double before,
        double peak
    ) =>
        4
        * heatInput
        * 1000
        / (HeatCapacity * diameter * Math.Sqrt(2 * Math.PI * Math.E) * (peak - before));

    /// <summary>Length over which a held temperature dies away along a bar, mm: ℓ = √(k·D/(4h)).</summary>
    /// <param name="diameter">D, mm.</param>
    /// <param name="conductivity">k, W/(m·K).</param>
    /// <param name="loss">h, W/(m²·K), to air and by radiation.</param>
    public static double DyingLength(double diameter, double conductivity, double loss) =>
        // k in W/(mm·K) over h in W/(mm²·K).
        Math.Sqrt(conductivity * 1e-3 * diameter / (4 * loss * 1e-6));

    /// <summary>Steady temperature at a place along a bar that is held hot at one end and free at the other, °C:
    /// T = Ta + (T0 − Ta)·cosh((L − x)/ℓ)/cosh(L/ℓ).</summary>
    /// <param name="hot">T0, °C.</param>
    /// <param name="x">From the hot edge, mm.</param>
    /// <param name="length">L, from the hot edge to the free end, mm; nothing is lost there.</param>
    /// <param name="dyingLength">ℓ, mm.</param>
    /// <remarks>What it comes to if the heat is held for long: the most a short preheat can bring there.</remarks>
    public static double Along(double hot, double x, double length, double dyingLength)
    {
        var (a, b) = (Math.Max(0, length - x) / dyingLength, length / dyingLength);
        // cosh a / cosh b without overflow for a long bar.
        var share = Math.Exp(a - b) * (1 + Math.Exp(-2 * a)) / (1 + Math.Exp(-2 * b));
        return Workshop + (hot - Workshop) * share;
    }
}
