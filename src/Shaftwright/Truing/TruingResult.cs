using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Truing;

/// <summary>How a run-out stands to its limit.</summary>
public enum RunOutVerdict
{
    /// <summary>Too few readings to say.</summary>
    NotKnown,

    /// <summary>Inside the limit, the indicator's uncertainty taken off.</summary>
    Inside,

    /// <summary>So near the limit that the indicator cannot tell.</summary>
    TooCloseToCall,

    /// <summary>Over the limit.</summary>
    Over,
}

/// <summary>One turn under the dial, judged.</summary>
/// <param name="TurnId">Its id.</param>
/// <param name="Moment">When in the making.</param>
/// <param name="RunOut">Total run-out as read, largest less smallest, mm; null when too few.</param>
/// <param name="RunOutUncertainty">Expanded uncertainty of it, k = 2, mm.</param>
/// <param name="Offset">Distance of the axis from the turning line by the first harmonic, mm: half of the part of the run-out that a bend makes; null when the readings do not go round the shaft.</param>
/// <param name="OffsetUncertainty">Standard uncertainty of it, mm; 0 when there is no offset.</param>
/// <param name="HighPoint">Angle from the mark where the surface stands highest, rad, 0 to 2π; null when no direction can be told.</param>
/// <param name="HighPointUncertainty">Standard uncertainty of it, rad; 0 when there is no high point.</param>
/// <param name="Residual">Root mean square of what the first harmonic does not explain, mm; 0 with three readings, which explain themselves.</param>
/// <param name="Limit">Limit it is judged by, mm.</param>
/// <param name="Verdict">How it stands to the limit.</param>
/// <param name="Words">The answer in a sentence or two.</param>
public sealed record TurnResult(
    string TurnId,
    Moment Moment,
    double? RunOut,
    double RunOutUncertainty,
    double? Offset,
    double OffsetUncertainty,
    double? HighPoint,
    double HighPointUncertainty,
    double Residual,
    double Limit,
    RunOutVerdict Verdict,
    Sentence Words
);

/// <summary>The answer of the truing stage.</summary>
public sealed record TruingResult
{
    /// <summary>Every turn, in the order taken.</summary>
    public IReadOnlyList<TurnResult> Turns { get; init; } = [];

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
