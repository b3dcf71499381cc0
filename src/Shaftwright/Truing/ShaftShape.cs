using Shaftwright.Measures;

namespace Shaftwright.Truing;

/// <summary>What bends a shaft's line.</summary>
public enum BendKind
{
    /// <summary>Nothing that the dial can tell.</summary>
    Straight,

    /// <summary>Two straight pieces meeting at an angle at the weld.</summary>
    Kink,

    /// <summary>One even curve from end to end.</summary>
    Sweep,

    /// <summary>Two straight, parallel pieces, one beside the other at the weld. No press takes it out.</summary>
    SetOff,

    /// <summary>A kink at the weld and a sweep.</summary>
    KinkAndSweep,

    /// <summary>A kink and a set-off at the weld.</summary>
    KinkAndSetOff,
}

/// <summary>Between which lines a run-out is told.</summary>
public enum TurningLine
{
    /// <summary>As it lay when it was last read.</summary>
    AsRead,

    /// <summary>Between centres in the shaft's ends.</summary>
    Ends,

    /// <summary>Between the joint centres, as on the car.</summary>
    JointCentres,
}

/// <summary>One way in which the readings can be explained.</summary>
/// <param name="Kind">What bends it.</param>
/// <param name="Kink">Angle between the two pieces, rad, towards the side that stands out at the weld.</param>
/// <param name="Sweep">Curvature, 1/mm, towards the side that stands out in the middle. The sag over a length L is curvature × L²/8.</param>
/// <param name="SetOff">How far the outer piece lies beside the inner one, mm, towards the outer piece's side.</param>
/// <param name="KinkUncertainty">Standard uncertainty of the kink in any one direction, rad; 0 when it has none.</param>
/// <param name="SweepUncertainty">The same of the curvature, 1/mm.</param>
/// <param name="SetOffUncertainty">The same of the set-off, mm.</param>
/// <param name="Misfit">Sum of the squares of what it leaves, each over its uncertainty.</param>
/// <param name="Freedom">Numbers read less numbers fitted.</param>
public sealed record Bend(
    BendKind Kind,
    Across Kink,
    Across Sweep,
    Across SetOff,
    double KinkUncertainty,
    double SweepUncertainty,
    double SetOffUncertainty,
    double Misfit,
    int Freedom
)
{
    /// <summary>Where the weld is, from the inner end, mm; NaN when not known, and then there is only a sweep.</summary>
    public double WeldAt { get; init; } = double.NaN;

    /// <summary>Variances and covariance of the one or two parts in the order kink, sweep, set-off, in any one direction.</summary>
    internal (double First, double Second, double Both) Covariance { get; init; }

    /// <summary>How far the axis stands off the line through two supports.</summary>
    /// <param name="at">Where, from the inner end, mm.</param>
    /// <param name="firstSupport">First support, mm.</param>
    /// <param name="secondSupport">Second support, mm; not the first's.</param>
    /// <returns>mm. Run-out is twice its size.</returns>
    public Across OffsetAt(double at, double firstSupport, double secondSupport)
    {
        var e = BendShapes.Sweep(at, firstSupport, secondSupport) * Sweep;
        if (double.IsNaN(WeldAt))
            return e;
        return e
            + BendShapes.Kink(at, firstSupport, secondSupport, WeldAt) * Kink
            + BendShapes.SetOff(at, firstSupport, secondSupport, WeldAt) * SetOff;
    }

    /// <summary>Standard uncertainty of <see cref="OffsetAt"/> in any one direction, mm, if this is what bends it.</summary>
    /// <param name="at">Where, from the inner end, mm.</param>
    /// <param name="firstSupport">First support, mm.</param>
    /// <param name="secondSupport">Second support, mm; not the first's.</param>
    public double OffsetUncertaintyAt(double at, double firstSupport, double secondSupport)
    {
        var (f, g) = BendShapes.Of(Kind, at, firstSupport, secondSupport, WeldAt);
        return Math.Sqrt(
            Math.Max(
                0,
                f * f * Covariance.First + g * g * Covariance.Second + 2 * f * g * Covariance.Both
            )
        );
    }
}

/// <summary>One station of a shape: what was read there and what the shape makes of it.</summary>
/// <param name="TurnId">The turn.</param>
/// <param name="Station">Position of the dial from the inner end, mm.</param>
/// <param name="FirstSupport">First support, mm.</param>
/// <param name="SecondSupport">Second support, mm.</param>
/// <param name="Read">Offset of the axis from the line through those supports, by the first harmonic, mm.</param>
/// <param name="Uncertainty">Standard uncertainty of it in any one direction, mm, the places' own included.</param>
/// <param name="Fitted">What the likeliest bend makes of it, mm.</param>
public sealed record ShapeStation(
    string TurnId,
    double Station,
    double FirstSupport,
    double SecondSupport,
    Across Read,
    double Uncertainty,
    Across Fitted
);

/// <summary>The largest run-out along the shaft about some line.</summary>
/// <param name="Line">Which line.</param>
/// <param name="From">Its first end, from the shaft's inner end, mm.</param>
/// <param name="To">Its second end, mm.</param>
/// <param name="RunOut">Run-out that the bend makes, mm: twice the offset.</param>
/// <param name="Low">Lowest that the readings allow, mm, k = 2, over every bend that explains them.</param>
/// <param name="High">Highest, mm.</param>
/// <param name="At">Where it is largest, from the inner end, mm.</param>
/// <param name="HighPoint">Where the shaft stands high there, rad from the mark.</param>
/// <param name="Verdict">How it stands to the limit, by that band.</param>
public sealed record LineRunOut(
    TurningLine Line,
    double From,
    double To,
    double RunOut,
    double Low,
    double High,
    double At,
    double HighPoint,
    RunOutVerdict Verdict
);

/// <summary>The bow of the shaft in space at one moment, from all stations read in one state of it.</summary>
public sealed record ShaftShape
{
    /// <summary>When in the making.</summary>
    public Moment Moment { get; init; }

    /// <summary>After how many layers of the weld; see <see cref="DialTurn.Layer"/>.</summary>
    public int? Layer { get; init; }

    /// <summary>After how many strokes; see <see cref="DialTurn.AfterStroke"/>.</summary>
    public int? AfterStroke { get; init; }

    /// <summary>The stations it rests on, from the inner end.</summary>
    public IReadOnlyList<ShapeStation> Stations { get; init; } = [];

    /// <summary>The likeliest bend.</summary>
    public required Bend Likeliest { get; init; }

    /// <summary>Every bend that explains the readings about as well, the likeliest first. One: it is told.</summary>
    public IReadOnlyList<Bend> Possible { get; init; } = [];

    /// <summary>True when the stations tell what bends it.</summary>
    public bool Told =>
        Possible.Count == 1 && (Likeliest.Kind == BendKind.Straight || WeldAt is not null);

    /// <summary>Middle of the weld from the inner end, mm; null when not known.</summary>
    public double? WeldAt { get; init; }

    /// <summary>Overall length, mm; null when not known.</summary>
    public double? Overall { get; init; }

    /// <summary>Where the shaft stands out, at the weld or midway: the side to mark and to press on, rad from the mark, 0 to 2π;
    /// null when it is straight or points nowhere.</summary>
    public double? HighPoint { get; init; }

    /// <summary>Standard uncertainty of the high point, rad; 0 when there is none.</summary>
    public double HighPointUncertainty { get; init; }

    /// <summary>Run-out about the lines that are known.</summary>
    public IReadOnlyList<LineRunOut> Lines { get; init; } = [];

    /// <summary>Limit it is judged by, mm.</summary>
    public double Limit { get; init; }

    /// <summary>What is found, in a sentence or two.</summary>
    public required Sentence Words { get; init; }
}
