using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Truing.Pressing;

/// <summary>What the press is to do next.</summary>
public enum PressStep
{
    /// <summary>Too little is known to say.</summary>
    NotKnown,

    /// <summary>Press as planned.</summary>
    Press,

    /// <summary>It is inside its limit: leave it alone.</summary>
    Straight,

    /// <summary>Do not press.</summary>
    DoNotPress,
}

/// <summary>The next stroke. Places in mm from the inner end.</summary>
/// <param name="RamAt">Where the ram stands.</param>
/// <param name="FirstBlockAt">First block.</param>
/// <param name="SecondBlockAt">Second block.</param>
/// <param name="Up">Angle from the painted mark that lies under the ram, rad.</param>
/// <param name="Depth">How far past contact, mm.</param>
/// <param name="Load">Load at the bottom, N, 5 to 95 % of what is thought possible.</param>
/// <param name="Wanted">What it is to move where the dial reads, mm off the axis: half of the run-out.</param>
/// <param name="Seen">What it will move there, 5 to 95 %, mm.</param>
/// <param name="SpringsBack">How much of the depth comes back, mm, as expected.</param>
/// <param name="ChanceTooFar">Chance that it ends bent the other way by more than the limit.</param>
/// <param name="Strain">Largest strain at the surface, as expected.</param>
/// <param name="Turned">True when the shaft is pressed back after it went too far.</param>
/// <param name="Bridge">True when the ram would stand on the weld and needs a hollowed cap.</param>
public sealed record PressPlan(
    double RamAt,
    double FirstBlockAt,
    double SecondBlockAt,
    double Up,
    double Depth,
    Band Load,
    double Wanted,
    Band Seen,
    double SpringsBack,
    double ChanceTooFar,
    double Strain,
    bool Turned,
    bool Bridge
)
{
    /// <summary>Distance between the blocks, mm.</summary>
    public double Span => SecondBlockAt - FirstBlockAt;
}

/// <summary>A stroke that was made, and what it did.</summary>
/// <param name="StrokeId">Its id.</param>
/// <param name="Depth">How deep, mm; null if only the load is known.</param>
/// <param name="Load">Load, N; null if not read.</param>
/// <param name="Seen">What moved at the dial, towards straight, mm; null when it was not read after.</param>
/// <param name="SeenUncertainty">Standard uncertainty of it, mm.</param>
/// <param name="WentTooFar">True when it came out bent the other way by more than can be misread.</param>
public sealed record StrokeResult(
    string StrokeId,
    double? Depth,
    double? Load,
    double? Seen,
    double SeenUncertainty,
    bool WentTooFar
);

/// <summary>What the strokes so far have taught.</summary>
/// <param name="Before">Tensile yield where it bends, as taken before any stroke, MPa.</param>
/// <param name="Now">The same after the strokes, 5 to 95 %, MPa. It stands for everything that makes this shaft stiffer or softer
/// under this press, so it is no test of the steel.</param>
/// <param name="Strokes">How many strokes it was learned from.</param>
public sealed record PressLearned(Band Before, Band Now, int Strokes);

/// <summary>The answer of the press.</summary>
public sealed record PressResult
{
    /// <summary>Code of the finding that a crack, a click or flaking was noted at a stroke.</summary>
    public const string CrackSign = "press-crack-sign";

    /// <summary>Code of the finding that says on what the promise of a stroke was tested.</summary>
    public const string Promise = "press-promise";

    /// <summary>How far along the work is.</summary>
    public Moment Moment { get; init; }

    /// <summary>What to do.</summary>
    public PressStep Step { get; init; }

    /// <summary>The stroke; null unless there is one to make.</summary>
    public PressPlan? Plan { get; init; }

    /// <summary>Run-out now, twice the offset at the dial, mm; null when it is not known.</summary>
    public double? RunOut { get; init; }

    /// <summary>High point now, rad from the painted mark; null when not known.</summary>
    public double? HighPoint { get; init; }

    /// <summary>Where the dial stands, mm from the inner end, as far as known.</summary>
    public double? DialAt { get; init; }

    /// <summary>Id of the turn that says where that was read; empty when none does.</summary>
    public string Dial { get; init; } = "";

    /// <summary>Id of the newest turn at this moment; empty when there is none.</summary>
    public string NewestTurn { get; init; } = "";

    /// <summary>Limit of the run-out, mm.</summary>
    public double Limit { get; init; }

    /// <summary>How the run-out stands by what was noted with the last stroke at this moment; not known when nothing was read after
    /// it. Null when there is no stroke, or when a turn was read since: then the turn says it.</summary>
    public RunOutVerdict? SinceStroke { get; init; }

    /// <summary>The same in words; null with it.</summary>
    public Sentence? SinceWords { get; init; }

    /// <summary>The strokes that stand, oldest first.</summary>
    public IReadOnlyList<StrokeResult> Strokes { get; init; } = [];

    /// <summary>What was learned; null before the model could be laid out.</summary>
    public PressLearned? Learned { get; init; }

    /// <summary>Length of the shaft as taken, mm; null when not known.</summary>
    public double? Length { get; init; }

    /// <summary>Diameters between the ends as taken, for a drawing.</summary>
    public IReadOnlyList<Shaftwright.Donors.Stretch> Stretches { get; init; } = [];

    /// <summary>The answer in a sentence or two.</summary>
    public required Sentence Words { get; init; }

    /// <summary>What to know beside it.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
