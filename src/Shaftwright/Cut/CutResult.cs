using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Cut;

/// <summary>Which end of the made shaft.</summary>
public enum ShaftEnd
{
    /// <summary>The power-unit end.</summary>
    Inner,

    /// <summary>The wheel end.</summary>
    Outer,
}

/// <summary>One rule at one place: how far away it must be, and is.</summary>
/// <param name="Code">Stable kebab-case name of the rule.</param>
/// <param name="End">On which piece.</param>
/// <param name="Rule">What must stay clear of what, in words.</param>
/// <param name="Has">Clearance there is, mm; negative when they overlap.</param>
/// <param name="Needs">Clearance asked for, mm.</param>
/// <param name="Heavy">True when failing it stops the cut; false when it is a cost to be weighed.</param>
public sealed record CutCheck(
    string Code,
    ShaftEnd End,
    string Rule,
    double Has,
    double Needs,
    bool Heavy
)
{
    /// <summary>True when it holds.</summary>
    public bool Holds => Has >= Needs - 1e-9;
}

/// <summary>The shaft that the cut makes, in plain numbers from its inner end, mm.</summary>
/// <param name="Overall">Overall length after welding.</param>
/// <param name="Stretches">Its stretches in order; those of the outer piece turned round.</param>
/// <param name="Hardened">Its hardened stretches.</param>
/// <param name="WeldAt">Middle of the weld.</param>
/// <param name="HeatBand">Width on each side of a weld that the heat changes.</param>
/// <param name="SleeveFrom">Where the sleeve begins; null for none.</param>
/// <param name="SleeveTo">Where the sleeve ends; null for none.</param>
/// <param name="SleeveOutside">Outside diameter of the sleeve; null if unknown.</param>
public sealed record MadeShaft(
    double Overall,
    IReadOnlyList<Stretch> Stretches,
    IReadOnlyList<HardStretch> Hardened,
    double WeldAt,
    double HeatBand,
    double? SleeveFrom,
    double? SleeveTo,
    double? SleeveOutside
)
{
    /// <summary>Its hollows, from its inner end.</summary>
    public IReadOnlyList<HollowStretch> Hollows { get; init; } = [];
}

/// <summary>The answer of the cut stage.</summary>
public sealed record CutResult
{
    /// <summary>True when the program chose the place, false when the user did.</summary>
    public bool Proposed { get; init; }

    /// <summary>Where to cut the inner-end donor, from its joint end, mm; null when there is no place.</summary>
    public double? InnerAt { get; init; }

    /// <summary>Where to cut the outer-end donor, from its joint end, mm.</summary>
    public double? OuterAt { get; init; }

    /// <summary>Diameter of the inner piece at the cut, mm.</summary>
    public double? InnerDiameter { get; init; }

    /// <summary>Diameter of the outer piece at the cut, mm.</summary>
    public double? OuterDiameter { get; init; }

    /// <summary>Difference of the two diameters, mm, never negative.</summary>
    public double? DiameterStep =>
        InnerDiameter is { } a && OuterDiameter is { } b ? Math.Abs(a - b) : null;

    /// <summary>Overall length aimed at after welding, mm.</summary>
    public double? Overall { get; init; }

    /// <summary>How far the heat reached on the sample; null when it was not measured.</summary>
    public MeasuredHeat? Heat { get; init; }

    /// <summary>How far off the overall length may come out because gap and shrinkage are not known better, mm each way.</summary>
    public double OverallPlusMinus { get; init; }

    /// <summary>Each rule at each place.</summary>
    public IReadOnlyList<CutCheck> Checks { get; init; } = [];

    /// <summary>What is scribed, sawn and checked on the bench; null when there is no place.</summary>
    public CutMarks? Marks { get; init; }

    /// <summary>The shaft that it makes; null when there is no place.</summary>
    public MadeShaft? Made { get; init; }

    /// <summary>Overall lengths for which these two donors have a sound cut, mm; null when there are none or they are not known.</summary>
    public Band? OverallPossible { get; init; }

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
