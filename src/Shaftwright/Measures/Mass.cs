namespace Shaftwright.Measures;

/// <summary>Masses. Internal unit kg.</summary>
public sealed class Mass : IDimension<Mass>
{
    private Mass() { }

    /// <summary>Kilogram.</summary>
    public static readonly Unit Kilogram = new("kg", 1m, ["kgs", "kilo", "kilos"]);

    /// <summary>Pound, avoirdupois.</summary>
    public static readonly Unit Pound = new("lb", 0.45359237m, ["lbs"]);

    /// <summary>Gram.</summary>
    public static readonly Unit Gram = new("g", 0.001m, []);

    /// <inheritdoc/>
    public static string Word => "mass";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [Kilogram, Pound, Gram];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } =
    [
        new("ton", "1000 kg (a tonne)", "2240 lb or 2000 lb (a long or a short ton)"),
        new("tons", "1000 kg (tonnes)", "2240 lb or 2000 lb (long or short tons)"),
    ];

    /// <inheritdoc/>
    public static string Examples => "310 kg, 680 lb";
}
