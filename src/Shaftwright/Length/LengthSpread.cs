using Shaftwright.Measures;

namespace Shaftwright.Length;

/// <summary>One measure's part in the uncertainty of the length.</summary>
/// <param name="ReadingIndex">Index into the corner's readings; null for a value that all share.</param>
/// <param name="Field">Name of the field.</param>
/// <param name="Words">Which measure, as one would say it.</param>
/// <param name="ShareOfVariance">Its share of the variance of the length to make over all cars, 0 to 1: the square of its correlation.
/// What is missing to 1 in all is what measures do together, and the bend of the curve.</param>
/// <param name="FirstOrderShare">The same by first order.</param>
/// <param name="ChanceIfTwiceAsGood">Chance of passing a limit were it known twice as well, by the same cars; null where not tried.</param>
public sealed record MeasureShare(
    int? ReadingIndex,
    string Field,
    Sentence Words,
    double ShareOfVariance,
    double FirstOrderShare,
    double? ChanceIfTwiceAsGood
);

/// <summary>A chance found by counting.</summary>
/// <param name="Value">0 to 1.</param>
/// <param name="StandardUncertainty">Of the counting, √(p(1 − p)/n); with none counted, 1/n.</param>
public readonly record struct Counted(double Value, double StandardUncertainty);

/// <summary>What many cars, drawn within the doubt of everything measured, say of one length. Lengths are mm, joint centre to joint centre.</summary>
public sealed record LengthSpread
{
    /// <summary>How many cars.</summary>
    public required long Cars { get; init; }

    /// <summary>Seed of the run: the same seed gives the same cars.</summary>
    public required ulong Seed { get; init; }

    /// <summary>The length judged.</summary>
    public required double Length { get; init; }

    /// <summary>How far off it the finished shaft was taken to be at most, each way, evenly spread.</summary>
    public required double Making { get; init; }

    /// <summary>Mean of the balanced length of each car; NaN when no car had one.</summary>
    public required double Mean { get; init; }

    /// <summary>Its standard deviation over the cars.</summary>
    public required double StandardDeviation { get; init; }

    /// <summary>95 cars of 100 ask for a length from here…</summary>
    public required double Low { get; init; }

    /// <summary>…to here.</summary>
    public required double High { get; init; }

    /// <summary>Chance that some position passes a limit with its margin.</summary>
    public required Counted ChanceOfViolation { get; init; }

    /// <summary>…by plunge.</summary>
    public required Counted ChanceOfPlunge { get; init; }

    /// <summary>…by the inner joint's angle.</summary>
    public required Counted ChanceOfInnerAngle { get; init; }

    /// <summary>…by the outer joint's angle.</summary>
    public required Counted ChanceOfOuterAngle { get; init; }

    /// <summary>Chance that some position reaches the stop itself.</summary>
    public required Counted ChanceOfContact { get; init; }

    /// <summary>Chance that no length at all works on the car.</summary>
    public required Counted ChanceOfNoWindow { get; init; }

    /// <summary>Standard uncertainty of the balanced length by first order; NaN without a window.</summary>
    public required double FirstOrderUncertainty { get; init; }

    /// <summary>Chance of passing a limit by first order, making counted; NaN without a length.</summary>
    public required double FirstOrderChance { get; init; }

    /// <summary>What to say where the cars and first order differ by more than the counting explains; null where they agree.</summary>
    public Sentence? Disagreement { get; init; }

    /// <summary>The measures, the largest share first.</summary>
    public IReadOnlyList<MeasureShare> Shares { get; init; } = [];
}
