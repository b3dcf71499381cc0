namespace Shaftwright.Measures;

/// <summary>Temperatures. Internal unit °C.</summary>
/// <remarks>0 °C is 273.15 K exactly (BIPM SI Brochure, 9th ed., 2.3.1); °F = °C × 9/5 + 32.</remarks>
public sealed class Temperature : IDimension<Temperature>
{
    private Temperature() { }

    /// <summary>Degree Celsius.</summary>
    public static readonly Unit Celsius = new("°C", 1m, ["C", "degC", "celsius"]);

    /// <summary>Degree Fahrenheit.</summary>
    public static readonly Unit Fahrenheit = new(
        "°F",
        1m,
        ["F", "degF", "fahrenheit"],
        5.0 / 9,
        zero: 32m
    );

    /// <summary>Kelvin.</summary>
    public static readonly Unit Kelvin = new("K", 1m, ["kelvin"], zero: 273.15m);

    /// <inheritdoc/>
    public static string Word => "temperature";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [Celsius, Fahrenheit, Kelvin];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } =
    [new("°", "°C", "°F"), new("deg", "°C", "°F"), new("degrees", "°C", "°F")];

    /// <inheritdoc/>
    public static string Examples => "18 °C, 18 C, 64 °F, 250 ± 20 °C";
}
