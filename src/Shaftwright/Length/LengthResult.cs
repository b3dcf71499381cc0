using Shaftwright.Corner;
using Shaftwright.Corner.Linkages;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Length;

/// <summary>What forbids a length.</summary>
public enum Forbids
{
    /// <summary>The inner joint bottoms: the shaft is too long there.</summary>
    JointBottoms,

    /// <summary>The inner joint comes to its outer stop: the shaft is too short there.</summary>
    JointPullsOut,

    /// <summary>The inner joint's angle passes its limit: the shaft is too short there.</summary>
    InnerAngle,

    /// <summary>The outer joint's angle passes its limit where the shaft floats between two plunging joints: it is too short there.</summary>
    OuterAngle,
}

/// <summary>One end of the window of lengths, and what sets it.</summary>
/// <param name="Length">Joint-centre length, mm, margin and allowances already taken off.</param>
/// <param name="StandardUncertainty">mm, first order.</param>
/// <param name="Travel">Wheel travel where it binds, mm, bump positive.</param>
/// <param name="Steering">Steering there.</param>
/// <param name="Forbids">What binds.</param>
public sealed record WindowEnd(
    double Length,
    double StandardUncertainty,
    double Travel,
    Steering Steering,
    Forbids Forbids
)
{
    /// <summary>Rack, power unit and the other wheel where a linkage was solved; null for readings.</summary>
    public LinkagePlace? Place { get; init; }
}

/// <summary>What is left of the joint at one position with the length to make.</summary>
/// <param name="Travel">mm, bump positive.</param>
/// <param name="Steering">Steering there.</param>
/// <param name="LeftIn">Length by which the shaft could still be longer before the stop itself, allowances taken off, margin not; mm.</param>
/// <param name="LeftOut">Length by which it could still be shorter; mm.</param>
/// <param name="Plunge">Plunge of the inner joint from mid-stroke, positive outboard; mm; null when only in and out were read.</param>
/// <param name="InnerAngle">rad; null when no angle was read.</param>
/// <param name="OuterAngle">rad; null when no outer angle was read.</param>
/// <param name="Read">True at a reading, false on the fitted curve between readings.</param>
public sealed record PositionLeft(
    double Travel,
    Steering Steering,
    double LeftIn,
    double LeftOut,
    double? Plunge,
    double? InnerAngle,
    double? OuterAngle,
    bool Read
)
{
    /// <summary>Which way the shaft can drift along its axis between two plunging joints, mm in all; 0 where it jams; null where one
    /// joint holds it.</summary>
    public double? Drift { get; init; }

    /// <summary>Plunge of the outer joint from mid-stroke, positive outboard, mm, at the middle of the drift; null where it does not plunge.</summary>
    public double? OuterPlunge { get; init; }

    /// <summary>Torque the inner joint may carry at this angle ÷ the torque in the shaft at its highest; null when not known.</summary>
    public double? InnerTorqueMargin { get; init; }

    /// <summary>The same of the outer joint.</summary>
    public double? OuterTorqueMargin { get; init; }

    /// <summary>Inner boot, clamp to clamp along its axis, mm; null when its clamps are not known.</summary>
    public double? InnerBoot { get; init; }

    /// <summary>Outer boot.</summary>
    public double? OuterBoot { get; init; }

    /// <summary>Rack, power unit and the other wheel where a linkage was solved; null for readings.</summary>
    public LinkagePlace? Place { get; init; }
}

/// <summary>One position of a linkage with a shaft of <see cref="LengthResult.PositionsFor"/>.</summary>
/// <param name="Travel">Wheel centre over ride height, mm.</param>
/// <param name="Rack">Rack to the left, mm.</param>
/// <param name="OtherTravel">The other wheel of a beam over ride height, mm.</param>
/// <param name="PowerUnit">How the power unit stands.</param>
/// <param name="Reached">False where the linkage does not get there; then the numbers are missing.</param>
/// <param name="Distance">Straight distance between the joint centres, inner at mid-plunge, mm.</param>
/// <param name="Axial">Part of it along the inner axis, mm.</param>
/// <param name="Plunge">Plunge from mid-stroke, positive outboard, mm; null when the shaft does not reach.</param>
/// <param name="InnerAngle">rad.</param>
/// <param name="OuterAngle">rad.</param>
public sealed record SweptLength(
    double Travel,
    double Rack,
    double OtherTravel,
    PowerUnitState PowerUnit,
    bool Reached,
    double? Distance,
    double? Axial,
    double? Plunge,
    double? InnerAngle,
    double? OuterAngle
);

/// <summary>The reading worth taking again first.</summary>
/// <param name="ReadingIndex">Index into the corner's readings; null when it is a value shared by all (the trial length, an allowance).</param>
/// <param name="Field">Name of the field.</param>
/// <param name="ShareOfVariance">Its share of the variance of the tighter side, 0 to 1.</param>
/// <param name="Words">How to say it.</param>
public sealed record MeasureAgain(
    int? ReadingIndex,
    string Field,
    double ShareOfVariance,
    Sentence Words
);

/// <summary>The answer of the length stage. Lengths are joint centre to joint centre, mm, unless named otherwise.</summary>
public sealed record LengthResult
{
    /// <summary>Shortest allowed; null when too little was read.</summary>
    public WindowEnd? Shortest { get; init; }

    /// <summary>Longest allowed; null when too little was read.</summary>
    public WindowEnd? Longest { get; init; }

    /// <summary>True when a length exists that no position forbids.</summary>
    public bool HasWindow => Shortest is { } s && Longest is { } l && s.Length <= l.Length;

    /// <summary>By how much the window fails to exist, mm; 0 when it exists.</summary>
    public double Missing { get; init; }

    /// <summary>True when no length exists only because two readings at one height contradict each other.</summary>
    public bool Contradicted { get; init; }

    /// <summary>The length to make (or the chosen one, judged); null when none exists.</summary>
    public double? Make { get; init; }

    /// <summary>The lengths that each way of picking gives, the balanced first; empty without a window.</summary>
    public IReadOnlyList<LengthChoice> Choices { get; init; } = [];

    /// <summary>Standard uncertainty of the length to make, from the readings, mm.</summary>
    public double MakeUncertainty { get; init; }

    /// <summary>How far off the made shaft may be, mm each way, with the readings' uncertainty already taken off at twice its standard value.</summary>
    public double Tolerance { get; init; }

    /// <summary>Chance that some position passes a limit with its margin, first order.</summary>
    public double ChanceOfViolation { get; init; }

    /// <summary>Chance that some position reaches the stop itself.</summary>
    public double ChanceOfContact { get; init; }

    /// <summary>Locating feature to locating feature on the shaft; null until both joints' seats are known.</summary>
    public double? SeatToSeat { get; init; }

    /// <summary>Shaft end to shaft end; null until both joints' seats and ends are known.</summary>
    public double? Overall { get; init; }

    /// <summary>Standard uncertainty that the joints' offsets alone give the overall length, mm; 0 when it is not known.</summary>
    public double OverallUncertainty { get; init; }

    /// <summary>The length that <see cref="Positions"/> belong to: the one to make; where none exists, the middle between the two
    /// ends that cross, so that a picture can show by how much they do. Null when there are no positions.</summary>
    public double? PositionsFor { get; init; }

    /// <summary>What is left at the readings and on the curve between with a shaft of <see cref="PositionsFor"/>, ordered by
    /// steering and travel.</summary>
    public IReadOnlyList<PositionLeft> Positions { get; init; } = [];

    /// <summary>Every position that a linkage was asked to go to, in the order of the job; empty without a linkage.</summary>
    public IReadOnlyList<SweptLength> Sweep { get; init; } = [];

    /// <summary>The reading worth taking again first; null when nothing is uncertain.</summary>
    public MeasureAgain? MeasureAgain { get; init; }

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
