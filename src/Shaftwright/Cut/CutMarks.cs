using Shaftwright.Measures;

namespace Shaftwright.Cut;

/// <summary>A face that a caliper's jaw or a tape's hook can be held against.</summary>
/// <param name="Words">What it is.</param>
/// <param name="At">Where it is, from the joint end, mm.</param>
/// <param name="ToScribe">From it to the line to scribe, mm.</param>
public sealed record MarkFace(string Words, double At, double ToScribe);

/// <summary>How one donor is marked and cut.</summary>
/// <param name="End">Which piece it gives.</param>
/// <param name="Scribe">The line to scribe, from the joint end, mm: the finished face and what is left on it for squaring.</param>
/// <param name="OffcutFrom">Where the offcut begins, mm: the saw runs between the line and there.</param>
/// <param name="Length">Length of the piece once its face is square, mm.</param>
/// <param name="Near">The nearest edge before the line that a caliper reaches, to prove the mark by; null when there is none.</param>
public sealed record PieceMark(
    ShaftEnd End,
    double Scribe,
    double OffcutFrom,
    double Length,
    MarkFace? Near
);

/// <summary>The sleeve to make.</summary>
/// <param name="Length">mm.</param>
/// <param name="Outside">Outside diameter, mm; null when it was not said.</param>
/// <param name="Bore">Bore, mm: the thickest bar it lies over, and the fit.</param>
/// <param name="Fit">How much wider than that bar, mm.</param>
/// <param name="Halves">True when it cannot be parked out of the way of the weld on either piece, and must be made in two halves.</param>
/// <param name="ParkRoom">How far it can be pushed back from the weld, to its near end, mm: the larger of both sides.</param>
public sealed record SleeveMake(
    double Length,
    double? Outside,
    double Bore,
    double Fit,
    bool Halves,
    double ParkRoom
)
{
    /// <summary>Its wall, mm; null when its outside was not said.</summary>
    public double? Wall => (Outside - Bore) / 2;
}

/// <summary>What is scribed, sawn and checked on the bench.</summary>
/// <param name="Inner">The inner-end donor.</param>
/// <param name="Outer">The outer-end donor.</param>
/// <param name="Pair">Both pieces end to end without a gap, faces square, mm.</param>
/// <param name="InVee">End to end with the gap between them, before tacking, mm.</param>
/// <param name="Welded">End to end after welding, at least and at most, mm.</param>
/// <param name="Sleeve">The sleeve; null for none.</param>
public sealed record CutMarks(
    PieceMark Inner,
    PieceMark Outer,
    double Pair,
    double InVee,
    Band Welded,
    SleeveMake? Sleeve
);
