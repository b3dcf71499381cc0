using System.Globalization;
using Shaftwright.Corner;
using Shaftwright.Corner.Linkages;
using Shaftwright.Geometry;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Corner.Linkages;

/// <summary>Jobs that hold a linkage by its points.</summary>
internal static class LinkageJobs
{
    public static Measured<Distance> Mm(double value, double plusMinus = 0) =>
        Measured<Distance>
            .Read(
                string.Create(CultureInfo.InvariantCulture, $"{(decimal)value} ± {plusMinus} mm"),
                "test"
            )
            .Required;

    public static Measured<Angle> Deg(double value, double plusMinus = 0) =>
        Measured<Angle>
            .Read(
                string.Create(CultureInfo.InvariantCulture, $"{(decimal)value} ± {plusMinus}°"),
                "test"
            )
            .Required;

    public static PointInput At(LinkagePoint point, double x, double y, double z, double u = 0) =>
        new()
        {
            Point = point,
            X = Mm(x, u),
            Y = Mm(y, u),
            Z = Mm(z, u),
        };

    public static IReadOnlyList<PositionInput> Positions(params double[] travels) =>
        [.. travels.Select(t => new PositionInput { Travel = Mm(t) })];

    /// <summary>The three cars of kinematics.md by the ids of Published/kinematics.json.</summary>
    public static LinkageInput Paper(string id, double u = 0)
    {
        PointInput P(LinkagePoint p, double x, double y, double z) => At(p, x, y, z, u);
        if (id == "trailing-arm")
            return new()
            {
                Kind = LinkageKind.PivotedArm,
                Points =
                [
                    P(LinkagePoint.PivotOne, 410, 300, 280),
                    P(LinkagePoint.PivotTwo, 410, 500, 280),
                    P(LinkagePoint.WheelCentre, 0, 690, 280),
                    P(LinkagePoint.OuterJoint, 0, 650, 280),
                    P(LinkagePoint.InnerJoint, 0, 200, 280),
                ],
                InnerDirection = Straight,
                OuterDirection = Straight,
                Positions = Positions(-90, 0, 90),
            };
        if (id == "parallel-wishbones")
            return new()
            {
                Kind = LinkageKind.DoubleWishbone,
                Points =
                [
                    P(LinkagePoint.LowerFront, 120, 320, 200),
                    P(LinkagePoint.LowerRear, -120, 320, 200),
                    P(LinkagePoint.LowerBall, 0, 620, 200),
                    P(LinkagePoint.UpperFront, 100, 320, 400),
                    P(LinkagePoint.UpperRear, -100, 320, 400),
                    P(LinkagePoint.UpperBall, 0, 620, 400),
                    P(LinkagePoint.TrackInner, -120, 320, 260),
                    P(LinkagePoint.TrackOuter, -120, 620, 260),
                    P(LinkagePoint.WheelCentre, 0, 680, 280),
                    P(LinkagePoint.OuterJoint, 0, 600, 280),
                    P(LinkagePoint.InnerJoint, 0, 200, 280),
                ],
                InnerDirection = Straight,
                OuterDirection = Straight,
                Positions = Positions(-84, 0, 84),
            };
        return new()
        {
            Kind = LinkageKind.PivotedArm,
            Points =
            [
                P(LinkagePoint.PivotOne, 300, 100, 280),
                P(LinkagePoint.PivotTwo, -200, 100, 280),
                P(LinkagePoint.WheelCentre, 0, 600, 280),
                P(LinkagePoint.OuterJoint, 0, 500, 280),
                P(LinkagePoint.InnerJoint, 0, 200, 280),
            ],
            InnerDirection = Straight,
            OuterDirection = Straight,
            Positions = Positions(-140, 0, 140),
        };
    }

    public static DirectionInput Straight { get; } = new() { Rise = Deg(0), Forward = Deg(0) };

    /// <summary>An invented front corner with a rack: points by name, to be moved about.</summary>
    public static IReadOnlyDictionary<LinkagePoint, Vec3> Steered { get; } =
        new Dictionary<LinkagePoint, Vec3>
        {
            [LinkagePoint.LowerFront] = new(150, 320, 200),
            [LinkagePoint.LowerRear] = new(-150, 325, 205),
            [LinkagePoint.LowerBall] = new(0, 620, 190),
            [LinkagePoint.UpperFront] = new(120, 350, 400),
            [LinkagePoint.UpperRear] = new(-120, 355, 395),
            [LinkagePoint.UpperBall] = new(-10, 600, 420),
            [LinkagePoint.TrackInner] = new(-120, 300, 260),
            [LinkagePoint.TrackOuter] = new(-130, 600, 260),
            [LinkagePoint.WheelCentre] = new(0, 680, 290),
            [LinkagePoint.OuterJoint] = new(0, 610, 290),
            [LinkagePoint.OuterAxis] = new(1, 660, 289),
            [LinkagePoint.InnerJoint] = new(20, 210, 270),
            [LinkagePoint.InnerAxis] = new(21, 260, 268),
        };

    /// <summary>A job of a linkage, joints that plunge ± 60 mm, and no margin.</summary>
    public static Job Job(
        LinkageInput linkage,
        double plunge = 60,
        double innerLimit = 40,
        double outerLimit = 50,
        double margin = 0,
        double? chosen = null
    ) =>
        new()
        {
            Corner = new CornerInput
            {
                Linkage = linkage,
                OutputEndFloat = Mm(0),
                PowerUnitTowardsWheel = Mm(0),
                PowerUnitAwayFromWheel = Mm(0),
            },
            Joints = new JointsInput
            {
                Inner = new()
                {
                    Kind = JointKind.PlungingBall,
                    PlungeIn = Mm(plunge),
                    PlungeOut = Mm(plunge),
                    AngleLimit = Deg(innerLimit),
                },
                Outer = new() { Kind = JointKind.Fixed, AngleLimit = Deg(outerLimit) },
            },
            Length = new() { Margin = Mm(margin), Chosen = chosen is { } c ? Mm(c) : null },
        };
}
