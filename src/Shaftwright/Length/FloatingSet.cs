using Shaftwright.Corner;
using Shaftwright.Joints;

namespace Shaftwright.Length;

/// <summary>One set of readings of a shaft that floats between two plunging joints.</summary>
internal sealed class FloatingSet(
    LengthNumbers numbers,
    double[] values,
    SetCurves curves,
    double towardsWheel,
    double awayFromWheel
)
{
    private readonly PlungeLimits _inner = numbers.LimitsOf(values)!;
    private readonly PlungeLimits _outer = numbers.OuterLimitsOf(values)!;
    private readonly double _sinInnerLimit = Math.Sin(numbers.InnerAngleLimitOf(values));
    private readonly double _sinOuterLimit = Math.Sin(numbers.OuterAngleLimitOf(values));

    public double Longest(double travel, double margin) =>
        At(travel).Longest(_inner, _outer, margin, towardsWheel);

    public double Shortest(double travel, double margin) =>
        At(travel)
            .Shortest(_inner, _outer, margin, awayFromWheel, numbers.InnerHeld, numbers.OuterHeld);

    public (double Lowest, double Highest)? Drift(double length, double travel) =>
        At(travel).Drift(_inner, _outer, length);

    /// <summary>Plunge of the outer joint outboard that goes with one of the inner joint, mm.</summary>
    public double OuterPlunge(double length, double innerPlunge, double travel) =>
        At(travel).OuterPlunge(length, innerPlunge);

    public double ShortestByInnerAngle(double travel) =>
        double.IsNaN(_sinInnerLimit) ? 0 : AcrossInner(At(travel)) / _sinInnerLimit;

    public double ShortestByOuterAngle(double travel) =>
        double.IsNaN(_sinOuterLimit) ? 0 : AcrossOuter(At(travel)) / _sinOuterLimit;

    public double InnerAngle(double length, double travel) =>
        Math.Asin(Math.Min(1, AcrossInner(At(travel)) / length));

    public double OuterAngle(double length, double travel) =>
        Math.Asin(Math.Min(1, AcrossOuter(At(travel)) / length));

    /// <summary>The whole stroke of the other joint is taken, not only what the drift leaves of it: a little too much, never too little.</summary>
    private double AcrossInner(FloatingShaft shaft) =>
        Math.Sqrt(shaft.AcrossInnerSquared(-_outer.StraightOut, _outer.StraightIn));

    private double AcrossOuter(FloatingShaft shaft) =>
        Math.Sqrt(shaft.AcrossOuterSquared(-_inner.StraightIn, _inner.StraightOut));

    private FloatingShaft At(double travel)
    {
        var distance = curves.Distance(travel);
        return FloatingShaft.Of(
            distance,
            Math.Acos(Math.Clamp(curves.Axial(travel) / distance, -1, 1)),
            curves.OuterAngle(travel)
        );
    }
}
