using Shaftwright.Measures;

namespace Shaftwright.Corner.Linkages;

/// <summary>The questions of <see cref="LinkageInput"/>, with the ± of the tool usually at hand (common practice, no source).</summary>
public static class LinkageFields
{
    private const double Degree = Math.PI / 180;

    /// <summary>Most positions of one job.</summary>
    public const int MostPositions = 2000;

    /// <summary>Forward, mm.</summary>
    public static Field<Distance> X { get; } =
        new("x", "forward of the origin", -6000, 6000, 2, "tape");

    /// <summary>Left, mm.</summary>
    public static Field<Distance> Y { get; } =
        new("y", "left of the centreline", -2000, 2000, 2, "tape");

    /// <summary>Up, mm.</summary>
    public static Field<Distance> Z { get; } =
        new("z", "height above the floor", -1000, 2500, 2, "tape");

    /// <summary>A tape from a reference point, mm.</summary>
    public static Field<Distance> Tape { get; } =
        new("distance", "tape from the reference point", 10, 6000, 1.5, "tape");

    /// <summary>Rise of a direction, rad.</summary>
    public static Field<Angle> Rise { get; } =
        new(
            "rise",
            "how much it rises towards the outside",
            -30 * Degree,
            30 * Degree,
            0.3 * Degree,
            "angle gauge on a true face"
        );

    /// <summary>Forward lean of a direction, rad.</summary>
    public static Field<Angle> Forward { get; } =
        new(
            "forward",
            "how much it goes forward towards the outside",
            -30 * Degree,
            30 * Degree,
            0.5 * Degree,
            "straight edge against a line across the car"
        );

    /// <summary>Droop, mm.</summary>
    public static Field<Distance> Droop { get; } =
        new("droop", "how far the wheel drops below ride height", 0, 400);

    /// <summary>Bump, mm.</summary>
    public static Field<Distance> Bump { get; } =
        new("bump", "how far the wheel rises above ride height", 0, 400);

    /// <summary>Rack to the left, mm.</summary>
    public static Field<Distance> RackLeft { get; } =
        new("rackLeft", "how far the rack moves to the left at full lock", 0, 200);

    /// <summary>Rack to the right, mm.</summary>
    public static Field<Distance> RackRight { get; } =
        new("rackRight", "how far the rack moves to the right at full lock", 0, 200);

    /// <summary>Bushes, mm.</summary>
    public static Field<Distance> Bushes { get; } =
        new(
            "bushes",
            "how far the bushes let the hub in or out",
            0,
            20,
            0.5,
            "lever and rule against a mark"
        );

    /// <summary>Travel of a position, mm; where to look, so exact.</summary>
    public static Field<Distance> Travel { get; } =
        new("travel", "wheel centre above (+) or below (−) ride height", -400, 400);

    /// <summary>Rack of a position, mm.</summary>
    public static Field<Distance> Rack { get; } = new("rack", "rack to the left", -200, 200);

    /// <summary>The other wheel's travel, mm.</summary>
    public static Field<Distance> OtherTravel { get; } =
        new("otherTravel", "the other wheel above (+) or below (−) ride height", -400, 400);

    /// <summary>Lower end of a trimmed travel, mm.</summary>
    public static Field<Distance> TravelFrom { get; } =
        new("travelFrom", "from this travel", -400, 400);

    /// <summary>Upper end of a trimmed travel, mm.</summary>
    public static Field<Distance> TravelTo { get; } = new("travelTo", "to this travel", -400, 400);

    /// <summary>Right end of a trimmed rack, mm.</summary>
    public static Field<Distance> RackFrom { get; } =
        new("rackFrom", "from this rack displacement", -200, 200);

    /// <summary>Left end of a trimmed rack, mm.</summary>
    public static Field<Distance> RackTo { get; } =
        new("rackTo", "to this rack displacement", -200, 200);

    /// <summary>Power unit forward, mm.</summary>
    public static Field<Distance> MoveX { get; } =
        new("x", "power unit moves forward", -60, 60, 1, "rule against a mark");

    /// <summary>Power unit left, mm.</summary>
    public static Field<Distance> MoveY { get; } =
        new("y", "power unit moves to the left", -60, 60, 1, "rule against a mark");

    /// <summary>Power unit up, mm.</summary>
    public static Field<Distance> MoveZ { get; } =
        new("z", "power unit moves up", -60, 60, 1, "rule against a mark");

    /// <summary>Power unit's roll, rad.</summary>
    public static Field<Angle> Roll { get; } =
        new(
            "roll",
            "power unit rolls on its mounts",
            -15 * Degree,
            15 * Degree,
            0.5 * Degree,
            "angle gauge"
        );

    /// <summary>A point in plain words.</summary>
    public static string Words(LinkagePoint point) =>
        point switch
        {
            LinkagePoint.WheelCentre => "wheel centre",
            LinkagePoint.OtherWheelCentre => "the other wheel's centre",
            LinkagePoint.OuterJoint => "outer joint's centre",
            LinkagePoint.OuterAxis => "second point of the outer joint's axis",
            LinkagePoint.InnerJoint => "inner joint's centre",
            LinkagePoint.InnerAxis => "second point of the inner joint's axis",
            LinkagePoint.LowerFront => "lower arm's front pivot",
            LinkagePoint.LowerRear => "lower arm's rear pivot",
            LinkagePoint.LowerBall => "lower ball",
            LinkagePoint.UpperFront => "upper arm's front pivot",
            LinkagePoint.UpperRear => "upper arm's rear pivot",
            LinkagePoint.UpperBall => "upper ball",
            LinkagePoint.TrackInner => "steering link's inner end",
            LinkagePoint.TrackOuter => "steering link's outer end",
            LinkagePoint.StrutTop => "strut's top mount",
            LinkagePoint.StrutLow => "low point on the strut",
            LinkagePoint.PivotOne => "arm's first pivot",
            LinkagePoint.PivotTwo => "arm's second pivot",
            LinkagePoint.LinkOneInner => "first link's inner end",
            LinkagePoint.LinkOneOuter => "first link's outer end",
            LinkagePoint.LinkTwoInner => "second link's inner end",
            LinkagePoint.LinkTwoOuter => "second link's outer end",
            LinkagePoint.LinkThreeInner => "third link's inner end",
            LinkagePoint.LinkThreeOuter => "third link's outer end",
            LinkagePoint.LinkFourInner => "fourth link's inner end",
            LinkagePoint.LinkFourOuter => "fourth link's outer end",
            LinkagePoint.RollOne => "first point of the roll line",
            LinkagePoint.RollTwo => "second point of the roll line",
            LinkagePoint.Output => "output of the power unit",
            _ => "intermediate shaft's bearing",
        };
}
