using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>How the arc is struck.</summary>
public enum ArcProcess
{
    /// <summary>Gas tungsten arc (TIG).</summary>
    Tig,

    /// <summary>Gas metal arc (MIG, MAG).</summary>
    Mag,

    /// <summary>Covered electrode (MMA).</summary>
    Mma,

    /// <summary>Not known.</summary>
    Unknown,
}

/// <summary>Heat into the joint, and how fast it leaves again.</summary>
public static class ArcHeat
{
    /// <summary>Thermal efficiency: 0.6 TIG, 0.8 MIG/MAG and covered electrode.</summary>
    /// <remarks>Source: EN 1011-1, Table 1, as listed in a steelmaker's welding guide.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The process is not known: take <see cref="EfficiencyBand"/>.</exception>
    public static double Efficiency(ArcProcess process) =>
        process switch
        {
            ArcProcess.Tig => 0.6,
            ArcProcess.Mag or ArcProcess.Mma => 0.8,
            _ => throw new ArgumentOutOfRangeException(
                nameof(process),
                process,
                "An unknown process has a range of efficiencies, no single one."
            ),
        };

    /// <summary>Thermal efficiency as a range: a single value where the process is known.</summary>
    public static Band EfficiencyBand(ArcProcess process) =>
        process == ArcProcess.Unknown ? new(0.6, 0.8) : Band.Exactly(Efficiency(process));

    /// <summary>Heat input, kJ/mm: Q = k·U·I·60/(1000·v).</summary>
    /// <param name="process">Gives k.</param>
    /// <param name="volts">Arc voltage, V.</param>
    /// <param name="amps">Current, A.</param>
    /// <param name="travelSpeed">mm/min.</param>
    /// <remarks>Source: EN 1011-1. Arc energy is the same without k: a procedure says which it quotes.</remarks>
    public static double Input(ArcProcess process, double volts, double amps, double travelSpeed) =>
        Efficiency(process) * volts * amps * 60 / (1000 * travelSpeed);

    /// <summary>How much one lap round a bar warms a length of it with nothing lost, K: ΔT = 4Q/(ρ·D·L·c).</summary>
    /// <param name="heatInput">kJ/mm.</param>
    /// <param name="diameter">D, mm.</param>
    /// <param name="length">L, the length of bar that shares the heat, mm.</param>
    /// <remarks>Own derivation: Q·πD over the mass ρ·(π/4)D²·L. ρ 7.85e-6 kg/mm³, c 0.49 kJ/(kg·K). A bar is not a wide plate:
    /// its bulk warms, and one lap can overshoot an interpass limit.</remarks>
    public static double BarWarming(double heatInput, double diameter, double length)
    {
        const double Density = 7.85e-6,
            SpecificHeat = 0.49;
        return 4 * heatInput / (Density * diameter * length * SpecificHeat);
    }
}
