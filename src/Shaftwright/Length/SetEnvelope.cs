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
    private readonly double _from;
    private readonly double _to;
    private List<double>? _pieces;

    public SetEnvelope(ReadingSet set, LengthNumbers numbers, double[] values)
    {
        Set = set;
        _curves = new SetCurves(set, values, numbers.ReadAlong);
        _limits = numbers.LimitsOf(values);
        _from = set.Travel(values, 0);
        _to = set.Travel(values, set.Readings.Length - 1);
        var endFloat = values[CornerNumbers.EndFloat];
        // Pushed home when it was measured, the output can only move outwards; otherwise it may be at either end of its float.
        _towardsWheel = values[CornerNumbers.TowardsWheel] + endFloat;
        _awayFromWheel = values[CornerNumbers.AwayFromWheel] + (numbers.StubWasHome ? 0 : endFloat);
        _sinAngleLimit = Math.Sin(numbers.InnerAngleLimitOf(values));
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
    public double Longest(double travel, double margin)
    {
        var r2 = _curves.AcrossSquared(travel);
        double w;
        if (Set.Form == ReadingForm.DistanceAndAngle)
            w = _limits!.LargestAxial(_curves.Axial(travel) - _towardsWheel, Math.Sqrt(r2), margin);
        else
        {
            var stop = _curves.InStop(travel);
            w = Math.Sqrt(Math.Max(0, stop * stop - r2)) - _towardsWheel - margin;
        }
        return w > 0 ? Math.Sqrt(w * w + r2) : 0;
    }

    /// <summary>Shortest shaft, mm, at a travel, that leaves <paramref name="margin"/> before the joint pulls out and keeps its angle.</summary>
    public double Shortest(double travel, double margin) =>
        Math.Max(ShortestByPlunge(travel, margin), ShortestByAngle(travel));

    /// <summary>Shortest shaft by plunge alone, mm.</summary>
    public double ShortestByPlunge(double travel, double margin)
    {
        var r2 = _curves.AcrossSquared(travel);
        double w;
        if (Set.Form == ReadingForm.DistanceAndAngle)
            w = _limits!.SmallestAxial(
                _curves.Axial(travel) + _awayFromWheel,
                Math.Sqrt(r2),
                margin
            );
        else
        {
            var stop = _curves.OutStop(travel);
            w = Math.Sqrt(Math.Max(0, stop * stop - r2)) + _awayFromWheel + margin;
        }
        return double.IsNaN(w)
            ? double.PositiveInfinity
            : Math.Sqrt(Math.Max(0, w) * Math.Max(0, w) + r2);
    }

    /// <summary>Shortest shaft that keeps the inner angle inside its limit, mm: r/sin φ; 0 when it is not known.</summary>
    public double ShortestByAngle(double travel) =>
        HasAngle && !double.IsNaN(_sinAngleLimit)
            ? Math.Sqrt(_curves.AcrossSquared(travel)) / _sinAngleLimit
            : 0;

    /// <summary>Plunge left before the joint bottoms, mm, with a shaft of this length; negative when it would.</summary>
    public double LeftIn(double length, double travel) =>
        Along(Longest(travel, 0), travel) - Along(length, travel);

    /// <summary>Plunge left before the joint reaches its outer stop, mm.</summary>
    public double LeftOut(double length, double travel) =>
        Along(length, travel) - Along(ShortestByPlunge(travel, 0), travel);

    /// <summary>Plunge from mid-stroke, positive outboard, mm; null when only in and out were read.</summary>
    public double? Plunge(double length, double travel) =>
        Set.Form == ReadingForm.DistanceAndAngle
            ? _curves.Axial(travel) - Along(length, travel)
            : null;

    /// <summary>Inner angle with a shaft of this length, rad; null when no angle was read.</summary>
    public double? InnerAngle(double length, double travel) =>
        HasAngle && length > 0
            ? Math.Asin(Math.Min(1, Math.Sqrt(_curves.AcrossSquared(travel)) / length))
            : null;

    /// <summary>Outer angle as read, rad; null when it was not.</summary>
    public double? OuterAngle(double travel) => HasOuterAngle ? _curves.OuterAngle(travel) : null;

    private double Along(double length, double travel)
    {
        var square = length * length - _curves.AcrossSquared(travel);
        // A length too short to reach the centre at all counts as ever further out, so that searches can pass through it.
        return square >= 0 ? Math.Sqrt(square) : -Math.Sqrt(-square);
    }
}
