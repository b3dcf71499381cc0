using Shaftwright.Measures;

namespace Shaftwright.Joints;

/// <summary>A joint's kind, by what it does.</summary>
public enum JointKind
{
    /// <summary>Don't know yet.</summary>
    Unknown,

    /// <summary>Angle only; its centre does not move along the shaft.</summary>
    Fixed,

    /// <summary>Plunging tripod: the plunge left shrinks as the rollers tilt.</summary>
    PlungingTripod,

    /// <summary>Plunging ball joint whose cage stays on the shaft's inner part.</summary>
    PlungingBall,

    /// <summary>Cross groove: balls where slanted grooves cross, so its centre moves about half the plunge.</summary>
    CrossGroove,
}

/// <summary>What locates the joint on the shaft.</summary>
public enum SeatKind
{
    /// <summary>Don't know yet.</summary>
    Unknown,

    /// <summary>A shoulder of the shaft.</summary>
    Shoulder,

    /// <summary>A clip in a groove.</summary>
    Clip,

    /// <summary>The shaft's end against a stop in the joint.</summary>
    EndStop,
}

/// <summary>Which way round the joint's inner part is on the shaft.</summary>
public enum WayRound
{
    /// <summary>Don't know yet.</summary>
    Unknown,

    /// <summary>It is the same both ways round.</summary>
    Symmetric,

    /// <summary>As it was when the offset was measured.</summary>
    AsMeasured,

    /// <summary>Turned round since the offset was measured: the offset changes sign.</summary>
    Turned,
}

/// <summary>Plunge limits at one angle.</summary>
public sealed record PlungeAtAngle
{
    /// <summary>The joint angle.</summary>
    public Measured<Angle>? Angle { get; init; }

    /// <summary>Plunge inwards from mid-stroke to the stop at that angle.</summary>
    public Measured<Distance>? In { get; init; }

    /// <summary>Plunge outwards from mid-stroke to the stop at that angle.</summary>
    public Measured<Distance>? Out { get; init; }
}

/// <summary>One joint, and how it sits on the shaft. In is into the joint's own housing, out is out of it, at either end of the shaft.</summary>
public sealed record JointInput
{
    /// <summary>What the fabricator calls it. A shaft end on the shelf is offered for it when it is said to fit a joint of this
    /// name.</summary>
    public string Name { get; init; } = "";

    /// <summary>Teeth of its spline; 0 when not counted.</summary>
    public int Teeth { get; init; }

    /// <summary>Diameter over the teeth that its spline takes.</summary>
    public Measured<Distance>? SplineDiameter { get; init; }

    /// <summary>What it does.</summary>
    public JointKind Kind { get; init; }

    /// <summary>Largest angle it may work at.</summary>
    public Measured<Angle>? AngleLimit { get; init; }

    /// <summary>Plunge inwards from mid-stroke to the stop, straight.</summary>
    public Measured<Distance>? PlungeIn { get; init; }

    /// <summary>Plunge outwards from mid-stroke to the stop, straight.</summary>
    public Measured<Distance>? PlungeOut { get; init; }

    /// <summary>Tripod: radius from its axis to the roller's centre line; plunge loses this × tan(angle) at each end unless a table is given.</summary>
    public Measured<Distance>? RollerRadius { get; init; }

    /// <summary>On the bench, straight: from stop to stop. Half of it each way counts where plunge in and out are not given.</summary>
    public Measured<Distance>? Stroke { get; init; }

    /// <summary>The same, held at <see cref="StrokeAngle"/>: what it lacks is the loss at both ends.</summary>
    public Measured<Distance>? StrokeAtAngle { get; init; }

    /// <summary>The angle it was held at.</summary>
    public Measured<Angle>? StrokeAngle { get; init; }

    /// <summary>Plunge limits measured at angles; they replace the rule.</summary>
    public IReadOnlyList<PlungeAtAngle> PlungeTable { get; init; } = [];

    /// <summary>Whether a ring or a clip holds the shaft in at the outer stop; null when not known. Matters where both joints plunge.</summary>
    public bool? HeldAtOuterStop { get; init; }

    /// <summary>Torque that it may carry at angles: the user's own data.</summary>
    public IReadOnlyList<TorqueAtAngle> TorqueTable { get; init; } = [];

    /// <summary>Its boot.</summary>
    public BootInput? Boot { get; init; }

    /// <summary>Whether the joint's stub clamps the hub bearing together; null when not known. Asked of the outer joint.</summary>
    public bool? StubClampsBearing { get; init; }

    /// <summary>What locates it on the shaft.</summary>
    public SeatKind Seat { get; init; }

    /// <summary>Which way round it goes on.</summary>
    public WayRound WayRound { get; init; }

    /// <summary>From the locating feature to the joint centre; positive away from the middle of the shaft.</summary>
    public Measured<Distance>? SeatToCentre { get; init; }

    /// <summary>Chords of two marks that find the joint centre; counts where <see cref="SeatToCentre"/> is not given.</summary>
    public CentreSwing? Swing { get; init; }

    /// <summary>From the locating feature to the shaft's end; positive away from the middle of the shaft.</summary>
    public Measured<Distance>? SeatToEnd { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, JointFields.AngleLimit, AngleLimit);
        check.Range(path, JointFields.PlungeIn, PlungeIn);
        check.Range(path, JointFields.PlungeOut, PlungeOut);
        check.Range(path, JointFields.RollerRadius, RollerRadius);
        check.Range(path, JointFields.Stroke, Stroke);
        check.Range(path, JointFields.StrokeAtAngle, StrokeAtAngle);
        check.Range(path, JointFields.StrokeAngle, StrokeAngle);
        check.Range(path, JointFields.SeatToCentre, SeatToCentre);
        check.Range(path, JointFields.SeatToEnd, SeatToEnd);
        check.Range(path, JointFields.SplineDiameter, SplineDiameter);
        for (var i = 0; i < PlungeTable.Count; i++)
        {
            var at = $"{path}.plungeTable[{i}]";
            check.Range(at, JointFields.TableAngle, PlungeTable[i].Angle);
            check.Range(at, JointFields.TableIn, PlungeTable[i].In);
            check.Range(at, JointFields.TableOut, PlungeTable[i].Out);
        }
        for (var i = 0; i < TorqueTable.Count; i++)
            TorqueTable[i].Check(check, $"{path}.torqueTable[{i}]");
        Boot?.Check(check, path + ".boot");
        Swing?.Check(check, path + ".swing");
    }
}

/// <summary>The two joints of the shaft.</summary>
public sealed record JointsInput
{
    /// <summary>At the power unit.</summary>
    public JointInput? Inner { get; init; }

    /// <summary>At the wheel.</summary>
    public JointInput? Outer { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        Inner?.Check(check, path + ".inner");
        Outer?.Check(check, path + ".outer");
    }
}

/// <summary>The questions of <see cref="JointInput"/>.</summary>
public static class JointFields
{
    private const double Degree = Math.PI / 180;

    /// <summary>Angle limit, rad.</summary>
    public static Field<Angle> AngleLimit { get; } =
        new("angleLimit", "largest angle of the joint", 1 * Degree, 60 * Degree);

    /// <summary>Plunge in, mm.</summary>
    public static Field<Distance> PlungeIn { get; } =
        new("plungeIn", "plunge inwards from mid-stroke", 0, 100, 0.5, "steel rule");

    /// <summary>Plunge out, mm.</summary>
    public static Field<Distance> PlungeOut { get; } =
        new("plungeOut", "plunge outwards from mid-stroke", 0, 100, 0.5, "steel rule");

    /// <summary>Roller radius, mm.</summary>
    public static Field<Distance> RollerRadius { get; } =
        new("rollerRadius", "tripod axis to roller centre line", 0, 80, 0.2, "caliper");

    /// <summary>Stroke, mm.</summary>
    public static Field<Distance> Stroke { get; } =
        new("stroke", "stroke from stop to stop, straight", 0, 200, 0.5, "steel rule");

    /// <summary>Stroke at an angle, mm.</summary>
    public static Field<Distance> StrokeAtAngle { get; } =
        new(
            "strokeAtAngle",
            "stroke from stop to stop, held at an angle",
            0,
            200,
            0.5,
            "steel rule"
        );

    /// <summary>That angle, rad; below 5° the loss cannot be told from the rule's own error.</summary>
    public static Field<Angle> StrokeAngle { get; } =
        new(
            "strokeAngle",
            "angle it was held at",
            5 * Degree,
            60 * Degree,
            0.5 * Degree,
            "angle gauge"
        );

    /// <summary>Seat to centre, mm.</summary>
    public static Field<Distance> SeatToCentre { get; } =
        new(
            "seatToCentre",
            "locating feature to joint centre (+ towards the end)",
            -100,
            100,
            0.3,
            "caliper"
        );

    /// <summary>Seat to end, mm.</summary>
    public static Field<Distance> SeatToEnd { get; } =
        new(
            "seatToEnd",
            "locating feature to the end of the shaft (+ towards the end)",
            -20,
            200,
            0.1,
            "caliper"
        );

    /// <summary>Diameter over the teeth, mm.</summary>
    public static Field<Distance> SplineDiameter { get; } =
        new(
            "splineDiameter",
            "diameter over the teeth that the joint takes",
            8,
            120,
            0.1,
            "caliper"
        );

    /// <summary>Angle of a row of the plunge table, rad.</summary>
    public static Field<Angle> TableAngle { get; } =
        new("angle", "joint angle", 0, 60 * Degree, 0.5 * Degree, "angle gauge");

    /// <summary>Plunge in at that angle, mm.</summary>
    public static Field<Distance> TableIn { get; } =
        new("in", "plunge inwards at that angle", 0, 100, 0.5, "steel rule");

    /// <summary>Plunge out at that angle, mm.</summary>
    public static Field<Distance> TableOut { get; } =
        new("out", "plunge outwards at that angle", 0, 100, 0.5, "steel rule");
}
