using Shaftwright.Corner;
using Shaftwright.Joints;

namespace Shaftwright.Length;

/// <summary>Which lengths one set of readings allows at each travel. Built anew for each nudge of the values.</summary>
internal sealed class SetEnvelope
{
    private readonly SetCurves _curves;
    private readonly PlungeLimits? _limits;
    private readonly double _towardsWheel;
    private readonly double _awayFromWheel;
    private readonly double _sinAngleLimit;
    private readonly double _tanAngleLimit;
    private readonly double _share;
    private readonly FloatingSet? _floating;
    private readonly CurveSlip? _slip;
    private readonly double _from;
    private readonly double _to;
    private List<double>? _pieces;

    /// <param name="set">The readings.</param>
    /// <param name="numbers">What the values mean.</param>
    /// <param name="values">The row, possibly nudged.</param>
    /// <param name="slip">What the curves are taken to be off between readings; null for nothing.</param>
    public SetEnvelope(
        ReadingSet set,
        LengthNumbers numbers,
        double[] values,
        CurveSlip? slip = null
    )
    {
        _slip = slip;
        Set = set;
        _share = numbers.Share;
        _curves = numbers.CurvesOf(set, values);
        _limits = numbers.LimitsOf(values);
        _from = set.Travel(values, 0);
        _to = set.Travel(values, set.Readings.Length - 1);
        var endFloat = values[CornerNumbers.EndFloat];
        // Pushed home when it was measured, the output can only move outwards; otherwise it may be at either end of its float.
        _towardsWheel = values[CornerNumbers.TowardsWheel] + endFloat;
        _awayFromWheel = values[CornerNumbers.AwayFromWheel] + (numbers.StubWasHome ? 0 : endFloat);
        _sinAngleLimit = Math.Sin(numbers.InnerAngleLimitOf(values));
        _tanAngleLimit = Math.Tan(numbers.InnerAngleLimitOf(values));
        if (numbers.Floats)
            _floating = new(numbers, values, _curves, _towardsWheel, _awayFromWheel);
    }

    public ReadingSet Set { get; }

    public bool HasAngle => _curves.HasAngle;

    /// <summary>Travels between which every length of this set is smooth, ends included, mm. Made when a search first asks:
    /// the nudged curves of an uncertainty are never searched.</summary>
    public IReadOnlyList<double> Pieces => _pieces ??= [_from, .. _curves.Corners(_from, _to), _to];

    public bool HasOuterAngle => _curves.HasOuterAngle;

    /// <summary>Longest shaft, mm, at a travel, that leaves <paramref name="margin"/> of plunge before the joint bottoms.</summary>
    /// <returns>mm; 0 when no length does.</returns>
    /// <remarks>With w the part of the length along the inner axis and r across it, L = √(w² + r²). Moving the joint's housing
    /// towards the wheel by e is the same as taking e from w. Where no angle was read, r counts as 0, which takes off the
    /// whole of e and so errs on the short, safe side.</remarks>
    public double Longest(double travel, double margin) =>
        LongestByCurve(travel, margin) + (_slip?.Over(travel) ?? 0);

    private double LongestByCurve(double travel, double margin)
    {
        if (_floating is { } floating)
            return floating.Longest(travel, margin);
        var r2 = _curves.AcrossSquared(travel);
        if (Set.Form == ReadingForm.DistanceAndAngle)
            return _limits!.Longest(_curves.Axial(travel) - _towardsWheel, Math.Sqrt(r2), margin);
        if (_share != 1)
        {
            var s = margin - HalfStroke(travel);
            var along = Axial(travel) - _towardsWheel - _share * s;
            return along > 0 ? Math.Sqrt(along * along + r2) - (1 - _share) * s : 0;
        }
        var stop = _curves.InStop(travel);
        var w = Math.Sqrt(Math.Max(0, stop * stop - r2)) - _towardsWheel - margin;
        return w > 0 ? Math.Sqrt(w * w + r2) : 0;
    }

    /// <summary>Shortest shaft, mm, at a travel, that leaves <paramref name="margin"/> before the joint pulls out and keeps its angle.</summary>
    public double Shortest(double travel, double margin) =>
        Math.Max(ShortestByPlunge(travel, margin), ShortestByAngle(travel));

    /// <summary>Shortest shaft by plunge alone, mm.</summary>
    public double ShortestByPlunge(double travel, double margin) =>
        ShortestByCurve(travel, margin) + (_slip?.Under(travel) ?? 0);

    private double ShortestByCurve(double travel, double margin)
    {
        if (_floating is { } floating)
            return floating.Shortest(travel, margin);
        var r2 = _curves.AcrossSquared(travel);
        if (Set.Form == ReadingForm.DistanceAndAngle)
            return _limits!.Shortest(_curves.Axial(travel) + _awayFromWheel, Math.Sqrt(r2), margin);
        if (_share != 1)
        {
            var s = HalfStroke(travel) - margin;
            var along = Math.Max(0, Axial(travel) + _awayFromWheel - _share * s);
            return Math.Sqrt(along * along + r2) - (1 - _share) * s;
        }
        var stop = _curves.OutStop(travel);
        var w = Math.Sqrt(Math.Max(0, stop * stop - r2)) + _awayFromWheel + margin;
        return Math.Sqrt(Math.Max(0, w) * Math.Max(0, w) + r2);
    }

    /// <summary>Shortest shaft that keeps the inner angle inside its limit, mm: r/sin φ; 0 when it is not known. Where the shaft
    /// floats, both angles, at the worst drift.</summary>
    public double ShortestByAngle(double travel)
    {
        if (_floating is { } floating)
            return Math.Max(
                floating.ShortestByInnerAngle(travel),
                floating.ShortestByOuterAngle(travel)
            );
        if (!HasAngle || double.IsNaN(_sinAngleLimit))
            return 0;
        var r = Math.Sqrt(_curves.AcrossSquared(travel));
        if (_share == 1)
            return r / _sinAngleLimit;
        // The point it bends about stands at axial − κs; the limit holds there, and the shaft is (1 − κ)s shorter than its arm.
        var s = (Axial(travel) - r / _tanAngleLimit) / _share;
        return Math.Max(0, r / _sinAngleLimit - (1 - _share) * s);
    }

    /// <summary>True when the outer joint's angle, not the inner's, sets <see cref="ShortestByAngle"/>.</summary>
    public bool OuterAngleBinds(double travel) =>
        _floating is { } f && f.ShortestByOuterAngle(travel) > f.ShortestByInnerAngle(travel);

    /// <summary>Plunge left before the joint bottoms, mm, with a shaft of this length; negative when it would. Where the shaft
    /// floats, the length left before it jams.</summary>
    public double LeftIn(double length, double travel) =>
        Along(Longest(travel, 0), travel) - Along(length, travel);

    /// <summary>Plunge left before the joint reaches its outer stop, mm.</summary>
    public double LeftOut(double length, double travel) =>
        Along(length, travel) - Along(ShortestByPlunge(travel, 0), travel);

    /// <summary>Plunge from mid-stroke, positive outboard, mm; the middle of its drift where the shaft floats; null when only in
    /// and out were read.</summary>
    public double? Plunge(double length, double travel) =>
        Set.Form != ReadingForm.DistanceAndAngle ? null
        : _floating is { } floating
            ? floating.Drift(length, travel) is var (low, high) ? (low + high) / 2
                : null
        : (_share == 1 ? _curves.Axial(travel) : 0) - Along(length, travel);

    /// <summary>Plunge of the outer joint outboard at the middle of the drift, mm; null where it does not plunge or the shaft jams.</summary>
    public double? OuterPlunge(double length, double travel) =>
        _floating is { } floating && Plunge(length, travel) is { } plunge
            ? floating.OuterPlunge(length, plunge, travel)
            : null;

    /// <summary>How far the shaft drifts along its axis, mm; null where it does not float, 0 where it jams.</summary>
    public double? Drift(double length, double travel) =>
        _floating is not { } floating ? null
        : floating.Drift(length, travel) is var (low, high) ? high - low
        : 0;

    /// <summary>Inner angle with a shaft of this length, rad; the worst of its drift where it floats; null when no angle was read.</summary>
    public double? InnerAngle(double length, double travel)
    {
        if (!HasAngle || length <= 0)
            return null;
        if (_floating is { } floating)
            return floating.InnerAngle(length, travel);
        var r = Math.Sqrt(_curves.AcrossSquared(travel));
        var arm = _share == 1 ? length : length - (1 - _share) * Along(length, travel);
        return Math.Asin(Math.Min(1, r / arm));
    }

    /// <summary>Distance between the joint centres, mm; null when only in and out were read.</summary>
    public double? Distance(double travel) =>
        Set.Form == ReadingForm.DistanceAndAngle ? _curves.Distance(travel) : null;

    /// <summary>Outer angle, rad; from readings as read, from a linkage with a shaft of this length; the worst of its drift where the
    /// shaft floats; null when it was not read.</summary>
    public double? OuterAngle(double travel, double? length = null)
    {
        if (!HasOuterAngle)
            return null;
        if (length is not { } l)
            return _curves.OuterAngle(travel);
        if (_floating is { } floating)
            return floating.OuterAngle(l, travel);
        // The shaft's line begins at the point it bends about.
        return Plunge(l, travel) is { } plunge
            ? _curves.OuterAngle(travel, _share * plunge)
            : _curves.OuterAngle(travel);
    }

    /// <summary>Length with which the inner joint stands at mid-stroke, mm; where the shaft floats, both do.</summary>
    public double Centred(double travel) =>
        Set.Form == ReadingForm.DistanceAndAngle
            ? _curves.Distance(travel)
            : Math.Sqrt(Square(Axial(travel)) + _curves.AcrossSquared(travel));

    private static double Square(double x) => x * x;

    /// <summary>Distance between the joint centres along the inner axis, inner at mid-stroke, mm. From in and out it is had by taking
    /// mid-stroke half-way between the stops.</summary>
    private double Axial(double travel)
    {
        if (Set.Form == ReadingForm.DistanceAndAngle)
            return _curves.Axial(travel);
        var half = HalfStroke(travel);
        var arm = _curves.InStop(travel) - (1 - _share) * half;
        return Math.Sqrt(Math.Max(0, arm * arm - _curves.AcrossSquared(travel))) - _share * half;
    }

    /// <summary>Half the stroke along the housing, from the lengths at which a trial shaft stops: with κ the joint's share, the bend
    /// moves 2κh between the stops while the shaft's own middle moves (1 − κ)h either way beyond it. Substitution; the slope is
    /// within a few per cent of −2, so each step leaves that little.</summary>
    private double HalfStroke(double travel)
    {
        var (goesIn, comesOut) = (_curves.InStop(travel), _curves.OutStop(travel));
        var r2 = _curves.AcrossSquared(travel);
        double Bend(double arm) => Math.Sqrt(Math.Max(0, arm * arm - r2));
        var h = (goesIn - comesOut) / 2;
        for (var i = 0; i < 50; i++)
        {
            var beyond = (1 - _share) * h;
            var off = Bend(goesIn - beyond) - Bend(comesOut + beyond) - 2 * _share * h;
            h += off / 2;
            if (Math.Abs(off) < 1e-12 * goesIn)
                break;
        }
        return h;
    }

    /// <summary>The part of a length along the inner axis; where the joint's centre moves, less plunge, which differs by a constant
    /// at a travel; where the shaft floats, the length itself.</summary>
    private double Along(double length, double travel)
    {
        if (_floating is not null)
            return length;
        var square = length * length - _curves.AcrossSquared(travel);
        // κ = 1/2: s = (D² − L²)/(axial + L).
        if (_share != 1)
        {
            var axial = Axial(travel);
            return -(axial * axial - square) / (axial + length);
        }
        // A length too short to reach the centre at all counts as ever further out, so that searches can pass through it.
        return square >= 0 ? Math.Sqrt(square) : -Math.Sqrt(-square);
    }
}
