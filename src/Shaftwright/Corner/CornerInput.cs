using Shaftwright.Corner.Linkages;
using Shaftwright.Measures;

namespace Shaftwright.Corner;

/// <summary>Where the steering stands at a reading.</summary>
public enum Steering
{
    /// <summary>Wheel straight ahead.</summary>
    Straight,

    /// <summary>Steered fully to the left.</summary>
    FullLeft,

    /// <summary>Steered fully to the right.</summary>
    FullRight,
}

/// <summary>Along which line "in" and "out" were read.</summary>
public enum SlideLine
{
    /// <summary>Along the shaft: how much longer or shorter the trial shaft could be set. A telescoping trial shaft reads this.</summary>
    Shaft,

    /// <summary>Along the inner joint's axis: how far the inner end moves in its housing. Needs the inner angle as well.</summary>
    InnerAxis,
}

/// <summary>One position of the wheel, and what was read there: in and out of a trial shaft, or distance and inner angle.</summary>
public sealed record TrialReading
{
    /// <summary>Wheel centre's height above ride height; bump positive, droop negative.</summary>
    public Measured<Distance>? Travel { get; init; }

    /// <summary>Where the steering stood.</summary>
    public Steering Steering { get; init; }

    /// <summary>How far the trial shaft still goes in (could be longer) before the joint bottoms.</summary>
    public Measured<Distance>? In { get; init; }

    /// <summary>How far it still comes out (could be shorter) before the joint reaches its outer stop.</summary>
    public Measured<Distance>? Out { get; init; }

    /// <summary>Straight distance between the joint centres, inner joint at mid-plunge.</summary>
    public Measured<Distance>? Distance { get; init; }

    /// <summary>Angle between the shaft (or the line of centres) and the inner joint's axis.</summary>
    public Measured<Angle>? InnerAngle { get; init; }

    /// <summary>Angle between the shaft and the outer joint's axis.</summary>
    public Measured<Angle>? OuterAngle { get; init; }
}

/// <summary>What was true while measuring. Null is "don't know".</summary>
public sealed record MeasuringConditions
{
    /// <summary>Spring out (or slack), so that bump could be reached.</summary>
    public bool? SpringOut { get; init; }

    /// <summary>Roll bar disconnected.</summary>
    public bool? RollBarOff { get; init; }

    /// <summary>Driver, or the driver's weight, in the car when ride height was set.</summary>
    public bool? DriverIn { get; init; }

    /// <summary>Inner stub pushed home.</summary>
    public bool? StubPushedHome { get; init; }

    /// <summary>Its locating clip felt to snap.</summary>
    public bool? ClipFelt { get; init; }
}

/// <summary>Readings at one corner of the car.</summary>
public sealed record CornerInput
{
    /// <summary>Joint-centre length of the trial shaft.</summary>
    public Measured<Distance>? TrialLength { get; init; }

    /// <summary>Along which line in and out were read.</summary>
    public SlideLine ReadAlong { get; init; }

    /// <summary>The readings.</summary>
    public IReadOnlyList<TrialReading> Readings { get; init; } = [];

    /// <summary>What was true while measuring.</summary>
    public MeasuringConditions Conditions { get; init; } = new();

    /// <summary>End float of the output (inner stub) in the power unit, stop to stop.</summary>
    public Measured<Distance>? OutputEndFloat { get; init; }

    /// <summary>How far the power unit's movement under torque takes the inner joint towards the wheel, from where it stood when measured.</summary>
    public Measured<Distance>? PowerUnitTowardsWheel { get; init; }

    /// <summary>How far it takes the inner joint away from the wheel.</summary>
    public Measured<Distance>? PowerUnitAwayFromWheel { get; init; }

    /// <summary>The linkage by its points. Where it is whole, the length is found from it.</summary>
    public LinkageInput? Linkage { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        Linkage?.Check(check, path + ".linkage");
        check.Range(path, CornerFields.TrialLength, TrialLength);
        check.Range(path, CornerFields.OutputEndFloat, OutputEndFloat);
        check.Range(path, CornerFields.PowerUnitTowardsWheel, PowerUnitTowardsWheel);
        check.Range(path, CornerFields.PowerUnitAwayFromWheel, PowerUnitAwayFromWheel);
        check.That(
            Readings.Count <= CornerFields.MostReadings,
            path + ".readings",
            $"{Readings.Count} readings",
            "is more than a corner needs",
            $"at most {CornerFields.MostReadings} readings"
        );
        for (var i = 0; i < Readings.Count; i++)
        {
            var at = $"{path}.readings[{i}]";
            var r = Readings[i];
            check.Range(at, CornerFields.Travel, r.Travel);
            check.Range(at, CornerFields.In, r.In);
            check.Range(at, CornerFields.Out, r.Out);
            check.Range(at, CornerFields.Distance, r.Distance);
            check.Range(at, CornerFields.InnerAngle, r.InnerAngle);
            check.Range(at, CornerFields.OuterAngle, r.OuterAngle);
        }
    }
}

/// <summary>The questions of <see cref="CornerInput"/>, with the ± of the tool usually at hand (common practice, no source).</summary>
public static class CornerFields
{
    /// <summary>Most readings of one corner.</summary>
    public const int MostReadings = 200;

    /// <summary>Trial shaft length, mm.</summary>
    public static Field<Distance> TrialLength { get; } =
        new(
            "trialLength",
            "trial shaft, joint centre to joint centre",
            50,
            2000,
            0.5,
            "steel rule"
        );

    /// <summary>Travel, mm.</summary>
    public static Field<Distance> Travel { get; } =
        new("travel", "wheel centre above (+) or below (−) ride height", -400, 400, 2, "tape");

    /// <summary>In, mm.</summary>
    public static Field<Distance> In { get; } =
        new("in", "how far it still goes in", -60, 200, 0.5, "steel rule");

    /// <summary>Out, mm.</summary>
    public static Field<Distance> Out { get; } =
        new("out", "how far it still comes out", -60, 200, 0.5, "steel rule");

    /// <summary>Distance between joint centres, mm.</summary>
    public static Field<Distance> Distance { get; } =
        new("distance", "distance between the joint centres", 50, 2000, 1, "tape");

    /// <summary>Inner angle, rad.</summary>
    public static Field<Angle> InnerAngle { get; } =
        new(
            "innerAngle",
            "angle at the inner joint",
            0,
            60 * Math.PI / 180,
            0.5 * Math.PI / 180,
            "angle gauge, by hand"
        );

    /// <summary>Outer angle, rad.</summary>
    public static Field<Angle> OuterAngle { get; } =
        new(
            "outerAngle",
            "angle at the outer joint",
            0,
            60 * Math.PI / 180,
            0.5 * Math.PI / 180,
            "angle gauge, by hand"
        );

    /// <summary>End float, mm.</summary>
    public static Field<Distance> OutputEndFloat { get; } =
        new("outputEndFloat", "end float of the output stub", 0, 20, 0.1, "dial or feeler");

    /// <summary>Power unit towards the wheel, mm.</summary>
    public static Field<Distance> PowerUnitTowardsWheel { get; } =
        new(
            "powerUnitTowardsWheel",
            "power unit moves the joint towards the wheel by",
            0,
            60,
            1,
            "rule against a mark"
        );

    /// <summary>Power unit away from the wheel, mm.</summary>
    public static Field<Distance> PowerUnitAwayFromWheel { get; } =
        new(
            "powerUnitAwayFromWheel",
            "power unit moves the joint away from the wheel by",
            0,
            60,
            1,
            "rule against a mark"
        );
}
