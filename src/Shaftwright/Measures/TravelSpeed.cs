namespace Shaftwright.Measures;

/// <summary>Speeds of travel of an arc. Internal unit mm/min, as welding procedures print them.</summary>
public sealed class TravelSpeed : IDimension<TravelSpeed>
{
    private TravelSpeed() { }

    /// <summary>Millimetre a minute.</summary>
    public static readonly Unit MmPerMinute = new("mm/min", 1m, ["mm/minute"]);

    /// <summary>Inch a minute.</summary>
    public static readonly Unit InchPerMinute = new("in/min", 25.4m, ["ipm", "in/minute"]);

    /// <summary>Millimetre a second.</summary>
    public static readonly Unit MmPerSecond = new("mm/s", 60m, ["mm/sec"]);

    /// <summary>Centimetre a minute.</summary>
    public static readonly Unit CmPerMinute = new("cm/min", 10m, ["cm/minute"]);

    /// <inheritdoc/>
    public static string Word => "travel speed";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } =
    [MmPerMinute, InchPerMinute, MmPerSecond, CmPerMinute];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } = [];

    /// <inheritdoc/>
    public static string Examples => "100 mm/min, 4 in/min, 1.7 mm/s";
}
