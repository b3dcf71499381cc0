using Shaftwright.Cut;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>One piece's steel, in numbers.</summary>
/// <param name="End">Which piece.</param>
/// <param name="Words">How it is known.</param>
/// <param name="Carbon">Carbon, mass %.</param>
/// <param name="CarbonEquivalent">CE of the International Institute of Welding, mass %.</param>
/// <param name="Cet">CET, mass %.</param>
/// <param name="CrackingParameter">Pcm, mass %; meant for low carbon, shown and not decided on.</param>
/// <param name="LimitsBroken">Limits of the CET formula that it breaks, in words.</param>
public sealed record SteelNumbers(
    ShaftEnd End,
    string Words,
    Band Carbon,
    Band CarbonEquivalent,
    Band Cet,
    Band CrackingParameter,
    IReadOnlyList<string> LimitsBroken
);

/// <summary>How far a piece loses its hardness.</summary>
/// <param name="End">Which piece.</param>
/// <param name="From">Temperature from which it softens, °C.</param>
/// <param name="Length">From the middle of the weld along the bar, mm.</param>
/// <param name="Measured">True when the sample's hardness readings gave it.</param>
/// <param name="How">How it was estimated.</param>
public sealed record SoftenedLength(
    ShaftEnd End,
    double From,
    Band Length,
    bool Measured,
    string How
);

/// <summary>A part that the heat must not reach.</summary>
/// <param name="End">On which piece.</param>
/// <param name="Words">What it is.</param>
/// <param name="FromWeld">Distance from the middle of the weld, mm.</param>
/// <param name="Comes">What preheat and welding, held for long, can bring it to, °C.</param>
/// <param name="ComesTempering">What tempering, held for long, can bring it to, °C.</param>
/// <param name="Allowed">Highest temperature allowed there, °C.</param>
public sealed record HotPlace(
    ShaftEnd End,
    string Words,
    double FromWeld,
    Band Comes,
    Band ComesTempering,
    double Allowed
);

/// <summary>The heat of the weld in numbers.</summary>
public sealed record HeatNumbers
{
    /// <summary>Both steels.</summary>
    public IReadOnlyList<SteelNumbers> Steels { get; init; } = [];

    /// <summary>Preheat by the handbooks for the worse of the two steels, °C: the answer.</summary>
    public Band Preheat { get; init; }

    /// <summary>Preheat by EN 1011-2 method B, °C; the lowest and highest over what is not known.</summary>
    public Band MethodB { get; init; }

    /// <summary>Limits of method B that are broken, in words; not empty means an extrapolation.</summary>
    public IReadOnlyList<string> MethodBLimits { get; init; } = [];

    /// <summary>CET that method B was asked with, mass %.</summary>
    public Band Cet { get; init; }

    /// <summary>Hydrogen, ml/100 g.</summary>
    public Band Hydrogen { get; init; }

    /// <summary>Heat input, kJ/mm.</summary>
    public Band HeatInput { get; init; }

    /// <summary>Arc energy, kJ/mm: the same without the efficiency of the process; null when it was not typed.</summary>
    public double? ArcEnergy { get; init; }

    /// <summary>True when voltage, current and speed were typed.</summary>
    public bool HeatInputKnown { get; init; }

    /// <summary>Diameter taken for thickness, mm; null when unknown.</summary>
    public double? Diameter { get; init; }

    /// <summary>t8/5 by the thick-plate formula, s.</summary>
    public Band? CoolingThreeDimensional { get; init; }

    /// <summary>t8/5 by the thin-plate formula, s.</summary>
    public Band? CoolingTwoDimensional { get; init; }

    /// <summary>t8/5 that governs, s.</summary>
    public Band? Cooling { get; init; }

    /// <summary>Hardness beside the weld by Düren, HV.</summary>
    public Band? Dueren { get; init; }

    /// <summary>The same by Yurioka, HV.</summary>
    public Band? Yurioka { get; init; }

    /// <summary>How much one lap warms the heated length of bar, K.</summary>
    public Band? LapWarming { get; init; }

    /// <summary>Highest temperature between runs, °C.</summary>
    public double InterpassLimit { get; init; }

    /// <summary>Quarter beads in one go from the middle of the preheat before the bar is at <see cref="InterpassLimit"/>; null when unknown.</summary>
    public int? BeadsInOneGo { get; init; }

    /// <summary>Softened lengths, inner piece first; empty when the diameter is unknown.</summary>
    public IReadOnlyList<SoftenedLength> Softened { get; init; } = [];

    /// <summary>Parts that the heat must not reach; empty until the cut is settled.</summary>
    public IReadOnlyList<HotPlace> Places { get; init; } = [];

    /// <summary>Tempering temperature, °C.</summary>
    public Band Temper { get; init; }

    /// <summary>Time at it, s.</summary>
    public double TemperTime { get; init; }

    /// <summary>What to know of preheat and steel.</summary>
    public IReadOnlyList<Finding> PreheatFindings { get; init; } = [];

    /// <summary>What to know while welding and cooling.</summary>
    public IReadOnlyList<Finding> WeldFindings { get; init; } = [];

    /// <summary>What to know of tempering.</summary>
    public IReadOnlyList<Finding> TemperFindings { get; init; } = [];
}
