namespace Shaftwright.Measures;

/// <summary>Electric voltages. Internal unit V.</summary>
public sealed class Voltage : IDimension<Voltage>
{
    private Voltage() { }

    /// <summary>Volt.</summary>
    public static readonly Unit Volt = new("V", 1m, ["volt", "volts"]);

    /// <inheritdoc/>
    public static string Word => "voltage";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [Volt];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } = [];

    /// <inheritdoc/>
    public static string Examples => "12 V, 21.5 V";
}
