using Shaftwright.Corner;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Length;

/// <summary>Writes down what a fabricator would read under a car whose geometry is known.</summary>
internal static class TrialShaft
{
    public const double Degree = Math.PI / 180;

    public static readonly MeasuringConditions AllWell = new()
    {
        SpringOut = true,
        RollBarOff = true,
        DriverIn = true,
        StubPushedHome = true,
        ClipFelt = true,
    };

    public static Measured<Distance> Mm(double value, double plusMinus = 0) =>
        Measured<Distance>.Of(value, Distance.Mm, plusMinus);

    public static Measured<Angle> Deg(double value, double plusMinus = 0) =>
        Measured<Angle>.Of(value, Angle.Degree, plusMinus);

    public static JointsInput Joints(
        double plunge,
        double innerLimit,
        double outerLimit,
        double rollerRadius = 0
    ) =>
        new()
        {
            Inner = new JointInput
            {
                Kind = rollerRadius > 0 ? JointKind.PlungingTripod : JointKind.PlungingBall,
                PlungeIn = Mm(plunge),
                PlungeOut = Mm(plunge),
                RollerRadius = rollerRadius > 0 ? Mm(rollerRadius) : null,
                AngleLimit = Deg(innerLimit),
            },
            Outer = new JointInput { Kind = JointKind.Fixed, AngleLimit = Deg(outerLimit) },
        };

    /// <summary>Distance and angle, from the axial and radial parts of the line of centres.</summary>
    public static TrialReading DistanceAndAngle(
        double travel,
        double axial,
        double across,
        double outerAngle = double.NaN
    ) =>
        new()
        {
            Travel = Mm(travel),
            Distance = Mm(double.Hypot(axial, across)),
            InnerAngle = Deg(Math.Atan2(across, axial) / Degree),
            OuterAngle = double.IsNaN(outerAngle) ? null : Deg(outerAngle),
        };

    /// <summary>In and out of a trial shaft, along it: the joint stops where its plunge ends.</summary>
    public static TrialReading InAndOut(
        double travel,
        double axial,
        double across,
        double trial,
        double plungeIn,
        double plungeOut
    ) =>
        new()
        {
            Travel = Mm(travel),
            In = Mm(double.Hypot(axial + plungeIn, across) - trial),
            Out = Mm(trial - double.Hypot(axial - plungeOut, across)),
            InnerAngle = Deg(Math.Asin(across / trial) / Degree),
        };

    public static LengthResult Solve(CornerInput corner, JointsInput? joints, double margin) =>
        Workflow
            .Evaluate(
                new Job
                {
                    Corner = corner,
                    Joints = joints,
                    Length = new LengthInput { Margin = Mm(margin) },
                }
            )
            .Length!;
}
