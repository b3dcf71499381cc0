using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Car;

/// <summary>What sets the torque in the shaft.</summary>
public enum TorqueLimit
{
    /// <summary>The engine side: the tyre could hold more.</summary>
    EngineSide,

    /// <summary>The tyre side: the tyre slips first.</summary>
    TyreSide,

    /// <summary>Only one side is known, so that side is taken.</summary>
    OnlyEngineSideKnown,

    /// <summary>Only one side is known, so that side is taken.</summary>
    OnlyTyreSideKnown,
}

/// <summary>Torque that one car can put into one shaft.</summary>
/// <param name="EngineSide">From the engine, through ratios, launch and clutch; N·mm; null if it cannot be had.</param>
/// <param name="TyreSide">What the tyre holds; N·mm; null if it cannot be had.</param>
/// <param name="Governing">N·mm: the smaller of the two.</param>
/// <param name="Limit">Which side that is, judged at the high end.</param>
public sealed record ShaftTorque(
    Band? EngineSide,
    Band? TyreSide,
    Band Governing,
    TorqueLimit Limit
);

/// <summary>The answer of the car stage.</summary>
public sealed record CarResult
{
    /// <summary>This car; null if too little is known.</summary>
    public ShaftTorque? ThisCar { get; init; }

    /// <summary>The car of the inner-end donor; null if too little is known.</summary>
    public ShaftTorque? InnerDonor { get; init; }

    /// <summary>The car of the outer-end donor; null if too little is known.</summary>
    public ShaftTorque? OuterDonor { get; init; }

    /// <summary>New torque ÷ the torque the inner-end donor was made for. Above 1 the part is asked for more than its maker intended.</summary>
    public Band? NewOverInnerDonor { get; init; }

    /// <summary>New torque ÷ the torque the outer-end donor was made for.</summary>
    public Band? NewOverOuterDonor { get; init; }

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
