using Shaftwright.Measures;

namespace Shaftwright.Truing.Pressing;

/// <summary>How far out the shaft is at one place, on one pair of supports.</summary>
/// <param name="Place">Where it was read; null parts are filled in by who knows the shaft.</param>
/// <param name="Offset">Axis off the turning line, mm.</param>
/// <param name="Uncertainty">Standard uncertainty of it, mm.</param>
/// <param name="High">High point from the mark, rad; null when not known.</param>
/// <param name="Expanded">Uncertainty of the run-out, k = 2, mm.</param>
/// <param name="RunOut">Run-out as read, mm.</param>
/// <param name="Limit">Limit of the run-out, mm.</param>
/// <param name="Turn">Id of the turn that says where it was read; empty when none does.</param>
internal sealed record Bow(
    TurnPlace Place,
    double Offset,
    double Uncertainty,
    double? High,
    double Expanded,
    double RunOut,
    double Limit,
    string Turn = ""
)
{
    /// <summary>The part of the offset that lies at an angle, mm; null when the high point is not known.</summary>
    public double? Along(double angle) => High is { } high ? Offset * Math.Cos(high - angle) : null;
}

/// <summary>Where a turn was read, as far as it was noted.</summary>
internal readonly record struct TurnPlace(
    Support Support,
    double? At,
    double? First,
    double? Second
);

/// <summary>Finds what the dial last said of a moment, and what it said before and after each stroke.</summary>
internal sealed class PressReadings
{
    // Nearer than this two stations are one, mm.
    private const double SameStation = 5;

    private readonly List<(DialTurn Turn, TurnResult Result)> _turns = [];

    public PressReadings(TruingInput? truing, TruingResult? judged, Moment moment)
    {
        for (var i = 0; i < (truing?.Turns.Count ?? 0) && i < (judged?.Turns.Count ?? 0); i++)
        {
            if (truing!.Turns[i].Moment == moment)
                _turns.Add((truing.Turns[i], judged!.Turns[i]));
        }
    }

    public bool Any => _turns.Count > 0;

    /// <summary>The last turn at each station, of those after a turn; of all when that one is not among them.</summary>
    public List<Bow> Latest(string after)
    {
        var from = _turns.FindIndex(t => t.Turn.Id == after) + 1;
        if (after.Length == 0)
            from = 0;
        var latest = new List<(DialTurn Turn, TurnResult Result)>();
        for (var i = from; i < _turns.Count; i++)
        {
            if (_turns[i].Result.Offset is null)
                continue;
            latest.RemoveAll(t => IsSame(t.Turn, _turns[i].Turn));
            latest.Add(_turns[i]);
        }
        return [.. latest.Select(t => Of(t.Turn, t.Result))];
    }

    /// <summary>True when turns were entered after a turn, whether they can be used or not.</summary>
    public bool AnyAfter(string turn) =>
        _turns.FindIndex(t => t.Turn.Id == turn) is var at && at >= 0 && at + 1 < _turns.Count;

    /// <summary>True when a turn that has a run-out was read after a stroke. Of a stroke that names no turn nobody knows which came
    /// first, unless the turn says after how many strokes it was read.</summary>
    public bool IsReadAfter(PressStroke stroke, int strokes)
    {
        var at = _turns.FindIndex(t => t.Turn.Id == stroke.Turn);
        return stroke.Turn.Length == 0
            ? _turns.Exists(t => t.Result.RunOut is not null && t.Turn.AfterStroke >= strokes)
            : at >= 0 && _turns.Skip(at + 1).Any(t => t.Result.RunOut is not null);
    }

    /// <summary>Where a turn was read.</summary>
    public TurnPlace? PlaceOf(string turn) =>
        _turns.FindIndex(t => t.Turn.Id == turn) is var at and >= 0
            ? PlaceOf(_turns[at].Turn)
            : null;

    /// <summary>The limit of a turn, or the usual one.</summary>
    public double LimitOf(string turn, Moment moment) =>
        _turns.FindIndex(t => t.Turn.Id == turn) is var at and >= 0 ? _turns[at].Result.Limit
        : _turns.Count > 0 ? _turns[^1].Result.Limit
        : TruingSolver.UsualLimit(moment);

    /// <summary>The reading before a stroke: as entered with it, else the turn it names.</summary>
    public Bow? Before(PressStroke stroke)
    {
        if (stroke.RunOutBefore is { } runOut)
            return Typed(stroke, runOut, stroke.HighBefore ?? stroke.Up);
        var at = _turns.FindIndex(t => t.Turn.Id == DialOf(stroke));
        return at >= 0 && _turns[at].Result.Offset is not null
            ? Of(_turns[at].Turn, _turns[at].Result)
            : null;
    }

    /// <summary>The reading after a stroke: as entered with it, else the first turn at the same station before the next stroke's.</summary>
    public Bow? After(PressStroke stroke, string? nextTurn)
    {
        if (stroke.RunOutAfter is { } runOut)
            return Typed(stroke, runOut, stroke.HighAfter);
        var at = _turns.FindIndex(t => t.Turn.Id == stroke.Turn);
        var dial = _turns.FindIndex(t => t.Turn.Id == DialOf(stroke));
        if (at < 0 || dial < 0)
            return null;
        var until = nextTurn is null
            ? _turns.Count - 1
            : _turns.FindIndex(t => t.Turn.Id == nextTurn);
        for (var i = at + 1; i <= until; i++)
        {
            if (IsSame(_turns[dial].Turn, _turns[i].Turn) && _turns[i].Result.Offset is not null)
                return Of(_turns[i].Turn, _turns[i].Result);
        }
        return null;
    }

    private static string DialOf(PressStroke stroke) =>
        stroke.Dial.Length > 0 ? stroke.Dial : stroke.Turn;

    /// <summary>The newest turn of the moment; empty when there is none.</summary>
    public string Newest => _turns.Count > 0 ? _turns[^1].Turn.Id : "";

    private Bow Typed(PressStroke stroke, Measured<Distance> runOut, Measured<Angle>? high)
    {
        var u = Uncertainty(runOut);
        return new(
            PlaceOf(DialOf(stroke)) ?? new(Support.Unknown, null, null, null),
            runOut.Value / 2,
            u / 2,
            high?.Value,
            2 * u,
            runOut.Value,
            LimitOf(DialOf(stroke), stroke.Moment),
            DialOf(stroke)
        );
    }

    private static Bow Of(DialTurn turn, TurnResult result) =>
        new(
            PlaceOf(turn),
            result.Offset!.Value,
            result.OffsetUncertainty,
            result.HighPoint,
            result.RunOutUncertainty,
            Math.Max(result.RunOut ?? 0, 2 * result.Offset.Value),
            result.Limit,
            turn.Id
        );

    private static TurnPlace PlaceOf(DialTurn turn) =>
        new(
            turn.Support,
            turn.Station?.Value,
            turn.FirstSupportAt?.Value,
            turn.SecondSupportAt?.Value
        );

    private static bool IsSame(DialTurn a, DialTurn b) =>
        a.Station is { } x && b.Station is { } y
            ? Math.Abs(x.Value - y.Value) <= SameStation
            : a.Station is null && b.Station is null;

    /// <summary>Standard uncertainty of a run-out typed as one number, mm: dial and repeatability, as in the truing stage.</summary>
    private static double Uncertainty(Measured<Distance> runOut)
    {
        var dial = runOut.PlusMinus is { } typed
            ? typed / Math.Sqrt(3)
            : Math.Sqrt(
                (
                    TruingFields.Dial.UsualPlusMinus * TruingFields.Dial.UsualPlusMinus
                    + TruingFields.Division * TruingFields.Division / 4
                ) / 3
            );
        return Math.Sqrt(dial * dial + TruingFields.Repeatability * TruingFields.Repeatability);
    }
}
