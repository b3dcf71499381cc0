namespace Shaftwright.Joints;

/// <summary>A joint's stroke as it is found on the bench, in plain numbers.</summary>
/// <param name="In">Plunge inwards from mid-stroke, straight, mm.</param>
/// <param name="Out">Plunge outwards, mm.</param>
/// <param name="Radius">ρ of the loss at an angle, mm; 0 when it is not known.</param>
/// <param name="InUncertainty">Standard uncertainty, mm.</param>
/// <param name="OutUncertainty">Standard uncertainty, mm.</param>
/// <param name="RadiusUncertainty">Standard uncertainty, mm.</param>
/// <remarks>Three bench measurements give the whole envelope: the stroke straight (half of it each way), the stroke held at an angle
/// (half of what it lacks is lost at each end, and the kind's rule carries that to other angles), and the largest angle. Values
/// given one by one count before them. JCGM 100:2008 (GUM), 5.1.2 for the uncertainty of the radius.</remarks>
internal sealed record BenchStroke(
    double In,
    double Out,
    double Radius,
    double InUncertainty,
    double OutUncertainty,
    double RadiusUncertainty
)
{
    /// <summary>True when the loss was measured, not taken from the roller radius.</summary>
    public bool LossMeasured { get; init; }

    /// <summary>Of a joint; null when its plunge is not known.</summary>
    public static BenchStroke? Of(JointInput joint)
    {
        var half = joint.Stroke is { } stroke ? stroke.Value / 2 : (double?)null;
        var halfUncertainty = joint.Stroke is { } s
            ? JointFields.Stroke.StandardUncertainty(s) / 2
            : 0;
        if (
            (joint.PlungeIn?.Value ?? half) is not { } goesIn
            || (joint.PlungeOut?.Value ?? half) is not { } comesOut
        )
            return null;
        var (radius, radiusUncertainty, measured) = Loss(joint);
        return new(
            goesIn,
            comesOut,
            radius,
            joint.PlungeIn is { } i ? JointFields.PlungeIn.StandardUncertainty(i) : halfUncertainty,
            joint.PlungeOut is { } o
                ? JointFields.PlungeOut.StandardUncertainty(o)
                : halfUncertainty,
            radiusUncertainty
        )
        {
            LossMeasured = measured,
        };
    }

    /// <summary>Stroke straight, mm, by whichever way it was given; null when unknown.</summary>
    public static double? StraightStroke(JointInput joint) =>
        joint.Stroke?.Value ?? joint.PlungeIn?.Value + joint.PlungeOut?.Value;

    private static (double Radius, double Uncertainty, bool Measured) Loss(JointInput joint)
    {
        if (
            StraightStroke(joint) is { } straight
            && joint is { StrokeAtAngle: { } bent, StrokeAngle: { Value: > 0 } angle }
        )
        {
            var byHalf = joint.Kind is JointKind.PlungingBall or JointKind.CrossGroove;
            var x = byHalf ? angle.Value / 2 : angle.Value;
            var tangent = Math.Tan(x);
            var radius = Math.Max(0, (straight - bent.Value) / 2 / tangent);
            var lost = double.Hypot(
                joint.Stroke is { } s
                    ? JointFields.Stroke.StandardUncertainty(s)
                    : double.Hypot(
                        JointFields.PlungeIn.StandardUncertainty(joint.PlungeIn!),
                        JointFields.PlungeOut.StandardUncertainty(joint.PlungeOut!)
                    ),
                JointFields.StrokeAtAngle.StandardUncertainty(bent)
            );
            // d(1/tan x)/dx = −1/sin² x, and x is the angle or half of it.
            var bySlope =
                radius
                / (Math.Sin(x) * Math.Cos(x))
                * JointFields.StrokeAngle.StandardUncertainty(angle)
                * (byHalf ? 0.5 : 1);
            return (radius, double.Hypot(lost / 2 / tangent, bySlope), true);
        }
        return
            joint.Kind is JointKind.PlungingTripod or JointKind.Unknown
            && joint.RollerRadius is { } roller
            ? (roller.Value, JointFields.RollerRadius.StandardUncertainty(roller), false)
            : (0, 0, false);
    }
}
