using System.Globalization;
using Shaftwright.Measures;

namespace Shaftwright.Truing;

/// <summary>When in the making a set of readings was taken.</summary>
public enum Moment
{
    /// <summary>Before any weld.</summary>
    BeforeWelding,

    /// <summary>Tacked.</summary>
    Tacked,

    /// <summary>Butt weld done and cold.</summary>
    ButtWelded,

    /// <summary>Sleeve on and cold.</summary>
    Sleeved,

    /// <summary>After the first run on the car.</summary>
    AfterFirstRun,
}

/// <summary>What carried the shaft while it was turned.</summary>
public enum Support
{
    /// <summary>Don't know any more.</summary>
    Unknown,

    /// <summary>Between centres.</summary>
    Centres,

    /// <summary>On two vees.</summary>
    Vees,
}

/// <summary>One reading: which angle of the shaft was under the dial, and what it showed.</summary>
public sealed record DialReading
{
    /// <summary>Angle of the shaft from the painted mark, in the direction of numbering.</summary>
    public Measured<Angle>? Angle { get; init; }

    /// <summary>What the dial showed; larger when the plunger is pushed in (the surface stands higher).</summary>
    public Measured<Distance>? Dial { get; init; }
}

/// <summary>One turn of the shaft under the dial, at one station.</summary>
public sealed record DialTurn
{
    /// <summary>A stable id within the job.</summary>
    public string Id { get; init; } = "";

    /// <summary>When in the making.</summary>
    public Moment Moment { get; init; }

    /// <summary>How many layers of weld were in at that moment; null when the moment's weld was whole, or none was begun.
    /// With <see cref="Moment.Tacked"/> it counts the butt's layers, with <see cref="Moment.ButtWelded"/> the sleeve's.</summary>
    public int? Layer { get; init; }

    /// <summary>How many strokes of the press it had had since the last weld; null when nobody counted. Readings with different
    /// counts are of a different shape and are never fitted together.</summary>
    public int? AfterStroke { get; init; }

    /// <summary>What carried it.</summary>
    public Support Support { get; init; }

    /// <summary>Angle between the two faces of the vees, when on vees.</summary>
    public Measured<Angle>? VeeAngle { get; init; }

    /// <summary>Position of the dial from the shaft's inner end.</summary>
    public Measured<Distance>? Station { get; init; }

    /// <summary>Position of the first support from the inner end.</summary>
    public Measured<Distance>? FirstSupportAt { get; init; }

    /// <summary>Position of the second support from the inner end.</summary>
    public Measured<Distance>? SecondSupportAt { get; init; }

    /// <summary>The readings.</summary>
    public IReadOnlyList<DialReading> Readings { get; init; } = [];

    /// <summary>Largest total run-out accepted; null takes the usual one for the moment.</summary>
    public Measured<Distance>? Limit { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, TruingFields.Station, Station);
        check.Range(path, TruingFields.FirstSupportAt, FirstSupportAt);
        check.Range(path, TruingFields.SecondSupportAt, SecondSupportAt);
        check.Range(path, TruingFields.Limit, Limit);
        check.Range(path, TruingFields.VeeAngle, VeeAngle);
        Whole(check, path + ".layer", Layer, 1, TruingFields.MostLayers, "a layer of weld");
        Whole(check, path + ".afterStroke", AfterStroke, 0, TruingFields.MostStrokes, "a stroke");
        for (var i = 0; i < Readings.Count; i++)
        {
            check.Range($"{path}.readings[{i}]", TruingFields.ShaftAngle, Readings[i].Angle);
            check.Range($"{path}.readings[{i}]", TruingFields.Dial, Readings[i].Dial);
        }
    }

    private static void Whole(
        InputCheck check,
        string path,
        int? value,
        int least,
        int most,
        string what
    )
    {
        if (value is { } v)
            check.That(
                v >= least && v <= most,
                path,
                v.ToString(CultureInfo.InvariantCulture),
                $"is no number of {what}",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"a whole number from {least} to {most}"
                )
            );
    }
}

/// <summary>All turns under the dial so far.</summary>
public sealed record TruingInput
{
    /// <summary>The turns, in the order they were taken.</summary>
    public IReadOnlyList<DialTurn> Turns { get; init; } = [];

    /// <summary>Middle of the weld from the shaft's inner end; null takes it from the cut.</summary>
    public Measured<Distance>? WeldAt { get; init; }

    /// <summary>Overall length of the shaft; null takes it from the cut.</summary>
    public Measured<Distance>? OverallLength { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, TruingFields.WeldAt, WeldAt);
        check.Range(path, TruingFields.OverallLength, OverallLength);
        for (var i = 0; i < Turns.Count; i++)
            Turns[i].Check(check, $"{path}.turns[{i}]");
    }
}

/// <summary>The questions of <see cref="DialTurn"/>.</summary>
public static class TruingFields
{
    /// <summary>Station, mm.</summary>
    public static Field<Distance> Station { get; } =
        new("station", "dial from the inner end", 0, 2500, 1, "steel rule");

    /// <summary>First support, mm.</summary>
    public static Field<Distance> FirstSupportAt { get; } =
        new("firstSupportAt", "first support from the inner end", 0, 2500, 1, "steel rule");

    /// <summary>Second support, mm.</summary>
    public static Field<Distance> SecondSupportAt { get; } =
        new("secondSupportAt", "second support from the inner end", 0, 2500, 1, "steel rule");

    /// <summary>Angle of the vees, rad.</summary>
    public static Field<Angle> VeeAngle { get; } =
        new(
            "veeAngle",
            "angle between the faces of the vees",
            30 * Math.PI / 180,
            150 * Math.PI / 180,
            Math.PI / 180,
            "angle gauge"
        );

    /// <summary>Middle of the weld, mm.</summary>
    public static Field<Distance> WeldAt { get; } =
        new("weldAt", "middle of the weld from the inner end", 5, 2500, 1, "steel rule");

    /// <summary>Overall length, mm.</summary>
    public static Field<Distance> OverallLength { get; } =
        new("overallLength", "overall length of the shaft", 60, 2500, 1, "steel rule");

    /// <summary>Most layers of weld that a turn can be noted after.</summary>
    public const int MostLayers = 40;

    /// <summary>Most strokes of the press that a turn can be noted after.</summary>
    public const int MostStrokes = 500;

    /// <summary>Run-out limit, mm.</summary>
    public static Field<Distance> Limit { get; } =
        new("limit", "largest run-out accepted", 0.01, 5);

    /// <summary>Angle of the shaft, rad.</summary>
    public static Field<Angle> ShaftAngle { get; } =
        new(
            "angle",
            "angle from the mark",
            -4 * Math.PI,
            4 * Math.PI,
            3 * Math.PI / 180,
            "by eye against a dial of marks"
        );

    /// <summary>Dial reading, mm.</summary>
    public static Field<Distance> Dial { get; } =
        new("dial", "dial reading", -50, 50, 0.01, "dial indicator, 0.01 divisions");

    /// <summary>Division of a metric dial, mm. A reading without a typed ± is good to half of it.</summary>
    public const double Division = 0.01;

    /// <summary>Division of an inch dial, mm: one thou. Readings typed in inches or thou without a ± take it for their accuracy too. Common practice, no source.</summary>
    public const double InchDivision = 0.0254;

    /// <summary>Standard deviation of a dial brought back to the same place, mm. Common practice, no source.</summary>
    public const double Repeatability = 0.004;

    /// <summary>Run-out accepted after straightening the butt, mm. Common practice, no source.</summary>
    public const double UsualLimitButt = 0.15;

    /// <summary>Run-out accepted with the sleeve on, mm. Common practice, no source.</summary>
    public const double UsualLimitSleeved = 0.20;
}
