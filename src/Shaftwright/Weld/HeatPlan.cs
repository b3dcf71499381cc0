using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>What was chosen and read of the heat before, between and after the runs.</summary>
public sealed record HeatPlan
{
    /// <summary>Preheat chosen.</summary>
    public Measured<Temperature>? Preheat { get; init; }

    /// <summary>Highest temperature read between runs.</summary>
    public Measured<Temperature>? Interpass { get; init; }

    /// <summary>Length of bar heated in all, the weld in its middle.</summary>
    public Measured<Distance>? HeatedLength { get; init; }

    /// <summary>Tempering temperature chosen.</summary>
    public Measured<Temperature>? Temper { get; init; }

    /// <summary>Time at the tempering temperature.</summary>
    public Measured<Duration>? TemperTime { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, HeatFields.Preheat, Preheat);
        check.Range(path, HeatFields.Interpass, Interpass);
        check.Range(path, HeatFields.HeatedLength, HeatedLength);
        check.Range(path, HeatFields.Temper, Temper);
        check.Range(path, HeatFields.TemperTime, TemperTime);
    }
}

/// <summary>The questions of <see cref="HeatPlan"/>, and what is taken when they are not answered.</summary>
public static class HeatFields
{
    /// <summary>Preheat, °C.</summary>
    public static Field<Temperature> Preheat { get; } =
        new("preheat", "preheat", 0, 450, 15, "temperature crayon");

    /// <summary>Interpass, °C.</summary>
    public static Field<Temperature> Interpass { get; } =
        new("interpass", "highest temperature read between runs", 0, 480, 15, "temperature crayon");

    /// <summary>Heated length, mm.</summary>
    public static Field<Distance> HeatedLength { get; } =
        new("heatedLength", "length of bar heated in all", 20, 500, 10, "steel rule");

    /// <summary>Temper, °C.</summary>
    public static Field<Temperature> Temper { get; } =
        new("temper", "tempering temperature", 100, 720, 15, "temperature crayon");

    /// <summary>Time at temperature, s.</summary>
    public static Field<Duration> TemperTime { get; } =
        new("temperTime", "time at the tempering temperature", 60, 24 * 3600, 300, "a clock");

    /// <summary>Heated length taken when none is given, mm. Common practice, no source.</summary>
    public const double UsualHeatedLength = 100;
}
