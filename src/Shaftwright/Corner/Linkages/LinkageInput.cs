using Shaftwright.Measures;

namespace Shaftwright.Corner.Linkages;

/// <summary>What holds the hub.</summary>
public enum LinkageKind
{
    /// <summary>Don't know yet.</summary>
    Unknown,

    /// <summary>Two wishbones and a link that steers.</summary>
    DoubleWishbone,

    /// <summary>A lower arm, a strut with its top mount, and a link that steers.</summary>
    Strut,

    /// <summary>One arm on one axis: trailing, semi-trailing or swing.</summary>
    PivotedArm,

    /// <summary>Five links.</summary>
    FiveLink,

    /// <summary>A beam across the car on four links.</summary>
    Beam,
}

/// <summary>A point that is measured, wheels straight, at ride height.</summary>
public enum LinkagePoint
{
    /// <summary>Centre of this wheel.</summary>
    WheelCentre,

    /// <summary>Centre of the wheel at the other end of a beam.</summary>
    OtherWheelCentre,

    /// <summary>Outer joint's centre.</summary>
    OuterJoint,

    /// <summary>Another point of the outer joint's axis, outboard of its centre.</summary>
    OuterAxis,

    /// <summary>Inner joint's centre at mid-plunge.</summary>
    InnerJoint,

    /// <summary>Another point of the inner joint's axis, outboard of its centre.</summary>
    InnerAxis,

    /// <summary>Lower arm, front pivot.</summary>
    LowerFront,

    /// <summary>Lower arm, rear pivot.</summary>
    LowerRear,

    /// <summary>Lower ball.</summary>
    LowerBall,

    /// <summary>Upper arm, front pivot.</summary>
    UpperFront,

    /// <summary>Upper arm, rear pivot.</summary>
    UpperRear,

    /// <summary>Upper ball.</summary>
    UpperBall,

    /// <summary>Steering link, inner end; on a rack, with the rack centred.</summary>
    TrackInner,

    /// <summary>Steering link, outer end.</summary>
    TrackOuter,

    /// <summary>Middle of the strut's top mount.</summary>
    StrutTop,

    /// <summary>Another point on the line of the strut, low on its body.</summary>
    StrutLow,

    /// <summary>One point of an arm's axis.</summary>
    PivotOne,

    /// <summary>Another point of an arm's axis.</summary>
    PivotTwo,

    /// <summary>First link, end on the body.</summary>
    LinkOneInner,

    /// <summary>First link, end on the hub carrier or beam.</summary>
    LinkOneOuter,

    /// <summary>Second link, end on the body.</summary>
    LinkTwoInner,

    /// <summary>Second link, end on the hub carrier or beam.</summary>
    LinkTwoOuter,

    /// <summary>Third link, end on the body.</summary>
    LinkThreeInner,

    /// <summary>Third link, end on the hub carrier or beam.</summary>
    LinkThreeOuter,

    /// <summary>Fourth link, end on the body.</summary>
    LinkFourInner,

    /// <summary>Fourth link, end on the hub carrier or beam.</summary>
    LinkFourOuter,

    /// <summary>One point of the line that the power unit rolls about under torque.</summary>
    RollOne,

    /// <summary>Another point of that line. A roll is right-handed from the first to this one.</summary>
    RollTwo,

    /// <summary>Where an intermediate shaft leaves the power unit.</summary>
    Output,

    /// <summary>Middle of the intermediate shaft's own bearing.</summary>
    Bearing,
}

/// <summary>A point that tapes are held to: a jig hole, a mark on the floor, anything whose place is known.</summary>
public sealed record ReferenceInput
{
    /// <summary>What it is called.</summary>
    public string Name { get; init; } = "";

    /// <summary>Forward of the origin.</summary>
    public Measured<Distance>? X { get; init; }

    /// <summary>Left of the centreline.</summary>
    public Measured<Distance>? Y { get; init; }

    /// <summary>Above the floor.</summary>
    public Measured<Distance>? Z { get; init; }
}

/// <summary>One tape from a reference point.</summary>
public sealed record TapeInput
{
    /// <summary>Name of the reference point.</summary>
    public string From { get; init; } = "";

    /// <summary>Straight distance.</summary>
    public Measured<Distance>? Distance { get; init; }
}

/// <summary>One measured point, in the car's axes: x forward, y left, z up.</summary>
public sealed record PointInput
{
    /// <summary>Which.</summary>
    public LinkagePoint Point { get; init; }

    /// <summary>Forward of the origin.</summary>
    public Measured<Distance>? X { get; init; }

    /// <summary>Left of the centreline; negative to the right.</summary>
    public Measured<Distance>? Y { get; init; }

    /// <summary>Above the floor or whatever plane heights are taken from.</summary>
    public Measured<Distance>? Z { get; init; }

    /// <summary>Tapes to it from reference points; three or more find it without its coordinates.</summary>
    public IReadOnlyList<TapeInput> Tapes { get; init; } = [];

    /// <summary>It was measured on the other side of the car, and the car is alike on both: y changes sign.</summary>
    public bool Mirrored { get; init; }
}

/// <summary>The direction of a shaft or a rack, by an angle gauge on a true face or along a straight edge.</summary>
public sealed record DirectionInput
{
    /// <summary>How much it rises towards the outside, seen from the front; 0 is level.</summary>
    public Measured<Angle>? Rise { get; init; }

    /// <summary>How much it goes forward towards the outside, seen from above; 0 is straight across the car.</summary>
    public Measured<Angle>? Forward { get; init; }
}

/// <summary>How the power unit stands.</summary>
public enum PowerUnitState
{
    /// <summary>At rest.</summary>
    AtRest,

    /// <summary>Under full torque, driving.</summary>
    Driving,

    /// <summary>Under full torque the other way: lifting off, or reverse.</summary>
    Overrun,
}

/// <summary>How far the power unit moves on its mounts.</summary>
public sealed record PowerUnitMove
{
    /// <summary>Forward.</summary>
    public Measured<Distance>? X { get; init; }

    /// <summary>To the left.</summary>
    public Measured<Distance>? Y { get; init; }

    /// <summary>Up.</summary>
    public Measured<Distance>? Z { get; init; }

    /// <summary>Roll about the line from <see cref="LinkagePoint.RollOne"/> to <see cref="LinkagePoint.RollTwo"/>, right-handed.</summary>
    public Measured<Angle>? Roll { get; init; }
}

/// <summary>What carries the bearing of an intermediate shaft.</summary>
public enum BearingCarrier
{
    /// <summary>There is no intermediate shaft, or none with a bearing of its own.</summary>
    Unsaid,

    /// <summary>A bracket on the power unit: it moves with that.</summary>
    PowerUnit,

    /// <summary>The body: its bearing stays, and the shaft swings about it and slides at the power unit.</summary>
    Body,
}

/// <summary>One position to look at.</summary>
public sealed record PositionInput
{
    /// <summary>Wheel centre's height above ride height.</summary>
    public Measured<Distance>? Travel { get; init; }

    /// <summary>Rack, to the left; left out it is centred.</summary>
    public Measured<Distance>? Rack { get; init; }

    /// <summary>The other wheel of a beam, above ride height; left out it stays.</summary>
    public Measured<Distance>? OtherTravel { get; init; }

    /// <summary>How the power unit stands.</summary>
    public PowerUnitState PowerUnit { get; init; }
}

/// <summary>Travel and lock that cannot happen together: what lies in both ranges is left out.</summary>
public sealed record NeverTogether
{
    /// <summary>From this travel; left out, from the lowest.</summary>
    public Measured<Distance>? TravelFrom { get; init; }

    /// <summary>To this travel; left out, to the highest.</summary>
    public Measured<Distance>? TravelTo { get; init; }

    /// <summary>From this rack displacement; left out, from the furthest right.</summary>
    public Measured<Distance>? RackFrom { get; init; }

    /// <summary>To this rack displacement; left out, to the furthest left.</summary>
    public Measured<Distance>? RackTo { get; init; }
}

/// <summary>The linkage of one corner by its points, and where it goes.</summary>
public sealed record LinkageInput
{
    /// <summary>What holds the hub.</summary>
    public LinkageKind Kind { get; init; }

    /// <summary>The measured points.</summary>
    public IReadOnlyList<PointInput> Points { get; init; } = [];

    /// <summary>The reference points that tapes are held to.</summary>
    public IReadOnlyList<ReferenceInput> References { get; init; } = [];

    /// <summary>Direction of the inner joint's axis, where no second point of it is given.</summary>
    public DirectionInput? InnerDirection { get; init; }

    /// <summary>Direction of the outer joint's axis, where no second point of it is given.</summary>
    public DirectionInput? OuterDirection { get; init; }

    /// <summary>Direction in which the rack moves; left out, straight across the car.</summary>
    public DirectionInput? RackDirection { get; init; }

    /// <summary>Lowest travel, below ride height; given as a positive number.</summary>
    public Measured<Distance>? Droop { get; init; }

    /// <summary>Highest travel, above ride height.</summary>
    public Measured<Distance>? Bump { get; init; }

    /// <summary>How far the rack moves to the left at full lock; left out, the inner end of the link stays.</summary>
    public Measured<Distance>? RackLeft { get; init; }

    /// <summary>How far it moves to the right, as a positive number.</summary>
    public Measured<Distance>? RackRight { get; init; }

    /// <summary>What cannot happen together.</summary>
    public IReadOnlyList<NeverTogether> Never { get; init; } = [];

    /// <summary>Positions to look at, in place of <see cref="Droop"/>, <see cref="Bump"/> and the locks. Those of one rack and one
    /// state of the power unit make a path that is looked at all along.</summary>
    public IReadOnlyList<PositionInput> Positions { get; init; } = [];

    /// <summary>How the power unit moves driving.</summary>
    public PowerUnitMove? Driving { get; init; }

    /// <summary>How it moves the other way.</summary>
    public PowerUnitMove? Overrun { get; init; }

    /// <summary>How far soft bushes let the outer joint towards or away from the inner one.</summary>
    public Measured<Distance>? Bushes { get; init; }

    /// <summary>What carries the bearing of an intermediate shaft.</summary>
    public BearingCarrier IntermediateBearing { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        for (var i = 0; i < Points.Count; i++)
        {
            var at = $"{path}.points[{i}]";
            check.Range(at, LinkageFields.X, Points[i].X);
            check.Range(at, LinkageFields.Y, Points[i].Y);
            check.Range(at, LinkageFields.Z, Points[i].Z);
            for (var k = 0; k < Points[i].Tapes.Count; k++)
                check.Range($"{at}.tapes[{k}]", LinkageFields.Tape, Points[i].Tapes[k].Distance);
            check.That(
                Points.Take(i).All(p => p.Point != Points[i].Point),
                at + ".point",
                Points[i].Point.ToString(),
                "is given twice",
                "each point once"
            );
        }
        for (var i = 0; i < References.Count; i++)
        {
            var at = $"{path}.references[{i}]";
            check.Range(at, LinkageFields.X, References[i].X);
            check.Range(at, LinkageFields.Y, References[i].Y);
            check.Range(at, LinkageFields.Z, References[i].Z);
        }
        (string Name, DirectionInput? Of)[] directions =
        [
            (".innerDirection", InnerDirection),
            (".outerDirection", OuterDirection),
            (".rackDirection", RackDirection),
        ];
        foreach (var (name, d) in directions)
        {
            check.Range(path + name, LinkageFields.Rise, d?.Rise);
            check.Range(path + name, LinkageFields.Forward, d?.Forward);
        }
        check.Range(path, LinkageFields.Droop, Droop);
        check.Range(path, LinkageFields.Bump, Bump);
        check.Range(path, LinkageFields.RackLeft, RackLeft);
        check.Range(path, LinkageFields.RackRight, RackRight);
        check.Range(path, LinkageFields.Bushes, Bushes);
        for (var i = 0; i < Never.Count; i++)
        {
            var at = $"{path}.never[{i}]";
            check.Range(at, LinkageFields.TravelFrom, Never[i].TravelFrom);
            check.Range(at, LinkageFields.TravelTo, Never[i].TravelTo);
            check.Range(at, LinkageFields.RackFrom, Never[i].RackFrom);
            check.Range(at, LinkageFields.RackTo, Never[i].RackTo);
        }
        for (var i = 0; i < Positions.Count; i++)
        {
            var at = $"{path}.positions[{i}]";
            check.Range(at, LinkageFields.Travel, Positions[i].Travel);
            check.Range(at, LinkageFields.Rack, Positions[i].Rack);
            check.Range(at, LinkageFields.OtherTravel, Positions[i].OtherTravel);
        }
        (string Name, PowerUnitMove? Of)[] moves = [(".driving", Driving), (".overrun", Overrun)];
        foreach (var (name, m) in moves)
        {
            check.Range(path + name, LinkageFields.MoveX, m?.X);
            check.Range(path + name, LinkageFields.MoveY, m?.Y);
            check.Range(path + name, LinkageFields.MoveZ, m?.Z);
            check.Range(path + name, LinkageFields.Roll, m?.Roll);
        }
    }
}
