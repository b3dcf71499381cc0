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

    /// <summary>Over the limit only by readings that stand alone, like spatter or a grinding mark: clean there and read again.</summary>
    ReadAgain,

    /// <summary>Over the limit.</summary>
    Over,
}

/// <summary>One harmonic of the readings round a station: amplitude × cos(order × θ − phase).</summary>
/// <param name="Order">1 eccentricity or bow, 2 oval, 3 and more lobes.</param>
/// <param name="Amplitude">As the dial saw it, mm.</param>
/// <param name="Phase">rad, 0 to 2π. The first high stands at phase ÷ order.</param>
/// <param name="Uncertainty">Standard uncertainty of the amplitude, mm.</param>
/// <param name="VeeFactor">How many times its own size this order reads on these vees if the bar is alike all along
/// (<see cref="VeeSensitivity"/>), with its sign; null on centres, for order 1, or when the vees' angle is not known.</param>
public sealed record Harmonic(
    int Order,
    double Amplitude,
    double Phase,
    double Uncertainty,
    double? VeeFactor
)
{
    /// <summary>The lobes of the bar itself under the dial, what leaks in from both vees by lever arm taken off; null unless the dial
    /// was put over both vees too, or for an order that the vees do not show.</summary>
    public OwnLobes? Own { get; init; }
}

/// <summary>Lobes of the bar itself at a station.</summary>
/// <param name="Amplitude">mm.</param>
/// <param name="Phase">rad, 0 to 2π.</param>
/// <param name="Uncertainty">Standard uncertainty of the amplitude, mm.</param>
public sealed record OwnLobes(double Amplitude, double Phase, double Uncertainty);

/// <summary>A reading that the others disown.</summary>
/// <param name="Reading">Its place in the turn's list of readings, from 0.</param>
/// <param name="Angle">Angle from the mark, rad, 0 to 2π.</param>
/// <param name="Off">Reading less what the others make of it, mm: above for spatter or a burr, below for a nick or a grinding mark.</param>
/// <param name="Weight">What it was still counted for in the fit, 0 to 1.</param>
public sealed record Blip(int Reading, double Angle, double Off, double Weight);

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
)
{
    /// <summary>Position of the dial from the inner end, mm; null if not noted.</summary>
    public double? Station { get; init; }

    /// <summary>After how many layers of the weld; see <see cref="DialTurn.Layer"/>.</summary>
    public int? Layer { get; init; }

    /// <summary>After how many strokes of the press; see <see cref="DialTurn.AfterStroke"/>.</summary>
    public int? AfterStroke { get; init; }

    /// <summary>The harmonics fitted, from the first on; empty when the readings do not go round.</summary>
    public IReadOnlyList<Harmonic> Harmonics { get; init; } = [];

    /// <summary>Middle of the dial by the fit, mm; 0 when there is none.</summary>
    public double Middle { get; init; }

    /// <summary>The highest order that these readings could have told apart; 0 when they do not go round.</summary>
    public int HighestOrder { get; init; }

    /// <summary>What each complete reading counted for in the fit, 0 to 1, in their order.</summary>
    public IReadOnlyList<double> Weights { get; init; } = [];

    /// <summary>Readings that stand alone: hardly counted in the fit, always shown.</summary>
    public IReadOnlyList<Blip> Blips { get; init; } = [];

    /// <summary>Run-out without those, mm; null when there is no fit.</summary>
    public double? CleanRunOut { get; init; }

    /// <summary>Run-out that no straightening takes out: of the harmonics from the second on, highest less lowest, mm.</summary>
    public double Form { get; init; }

    /// <summary>What the fit says the dial shows at an angle of the shaft.</summary>
    /// <param name="angle">From the mark, rad.</param>
    /// <returns>mm.</returns>
    public double Fitted(double angle)
    {
        var y = Middle;
        foreach (var h in Harmonics)
            y += h.Amplitude * Math.Cos(h.Order * angle - h.Phase);
        return y;
    }
}

/// <summary>The answer of the truing stage.</summary>
public sealed record TruingResult
{
    /// <summary>Every turn, in the order taken.</summary>
    public IReadOnlyList<TurnResult> Turns { get; init; } = [];

    /// <summary>The shaft's bow at each moment, layer and stroke that was read, in the order taken.</summary>
    public IReadOnlyList<ShaftShape> Shapes { get; init; } = [];

    /// <summary>The shaft's bow as last read; null when no turn has its places noted.</summary>
    public ShaftShape? Shape => Shapes.Count > 0 ? Shapes[^1] : null;

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
