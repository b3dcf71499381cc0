using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>How much hydrogen the filler brings, on the scale of EN 1011-2, ml per 100 g of deposited metal.</summary>
/// <remarks>Source: EN 1011-2:2001, Table C.2 (public restatement).</remarks>
public enum HydrogenScale
{
    /// <summary>Not known.</summary>
    Unknown,

    /// <summary>More than 15.</summary>
    A,

    /// <summary>More than 10, up to 15.</summary>
    B,

    /// <summary>More than 5, up to 10.</summary>
    C,

    /// <summary>More than 3, up to 5: clean solid wire, TIG or MAG.</summary>
    D,

    /// <summary>3 and less, proven.</summary>
    E,
}

/// <summary>How the arc is run.</summary>
public sealed record ArcInput
{
    /// <summary>Process.</summary>
    public ArcProcess Process { get; init; } = ArcProcess.Unknown;

    /// <summary>Arc voltage U.</summary>
    public Measured<Voltage>? Volts { get; init; }

    /// <summary>Current I.</summary>
    public Measured<Current>? Amps { get; init; }

    /// <summary>Speed of the arc along the joint, v.</summary>
    public Measured<TravelSpeed>? Speed { get; init; }

    /// <summary>Hydrogen scale of the filler.</summary>
    public HydrogenScale Hydrogen { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, ArcFields.Volts, Volts);
        check.Range(path, ArcFields.Amps, Amps);
        check.Range(path, ArcFields.Speed, Speed);
    }
}

/// <summary>The questions of <see cref="ArcInput"/>.</summary>
public static class ArcFields
{
    /// <summary>Arc voltage, V.</summary>
    public static Field<Voltage> Volts { get; } =
        new("volts", "arc voltage", 5, 50, 1, "the set's meter");

    /// <summary>Current, A.</summary>
    public static Field<Current> Amps { get; } =
        new("amps", "welding current", 5, 600, 5, "the set's meter");

    /// <summary>Travel speed, mm/min.</summary>
    public static Field<TravelSpeed> Speed { get; } =
        new("speed", "speed of the arc along the joint", 10, 2000, 15, "a lap by the clock");

    /// <summary>Hydrogen taken when the scale is not known, ml/100 g: of clean solid wire (EN 1011-2, Table C.2, note), else from
    /// a good basic electrode to the end of the formula's range.</summary>
    public static Band UsualHydrogen(ArcProcess process) =>
        process is ArcProcess.Tig or ArcProcess.Mag ? new(3, 5) : new(3, 20);

    /// <summary>The hydrogen of a scale, ml/100 g. Its open ends stop where method B does: 1 and 20.</summary>
    public static Band Of(HydrogenScale scale, ArcProcess process) =>
        scale switch
        {
            HydrogenScale.A => new(15, 20),
            HydrogenScale.B => new(10, 15),
            HydrogenScale.C => new(5, 10),
            HydrogenScale.D => new(3, 5),
            HydrogenScale.E => new(1, 3),
            _ => UsualHydrogen(process),
        };

    /// <summary>Heat input taken when U, I or v is not known, kJ/mm. Common practice on bars of this size, no source.</summary>
    public static Band UsualHeatInput(ArcProcess process) =>
        process == ArcProcess.Tig ? new(0.4, 0.8) : new(0.4, 1.2);
}
