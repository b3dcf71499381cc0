namespace Shaftwright.Measures;

/// <summary>Visible light falling on a surface. Internal unit lx.</summary>
/// <remarks>1 foot-candle is 1 lumen a square foot: 1/0.3048² lx, 10.763910416709722 to the last decimal held.</remarks>
public sealed class Illuminance : IDimension<Illuminance>
{
    private Illuminance() { }

    /// <summary>Lux.</summary>
    public static readonly Unit Lux = new("lx", 1m, ["lux"]);

    /// <summary>Foot-candle.</summary>
    public static readonly Unit FootCandle = new(
        "fc",
        1m / 0.09290304m,
        ["ftc", "footcandle", "footcandles"]
    );

    /// <inheritdoc/>
    public static string Word => "light";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [Lux, FootCandle];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } = [];

    /// <inheritdoc/>
    public static string Examples => "800 lx, 75 fc";
}
