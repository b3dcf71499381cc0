namespace Shaftwright.Measures;

/// <summary>Power of radiation falling on a surface, such as UV-A from an inspection lamp. Internal unit W/m².</summary>
public sealed class Irradiance : IDimension<Irradiance>
{
    private Irradiance() { }

    /// <summary>Watt a square metre.</summary>
    public static readonly Unit WattPerSquareMetre = new("W/m²", 1m, ["W/m2"]);

    /// <summary>Microwatt a square centimetre.</summary>
    public static readonly Unit MicrowattPerSquareCentimetre = new(
        "µW/cm²",
        0.01m,
        ["uW/cm2", "µW/cm2", "μW/cm²", "μW/cm2", "uW/cm²"]
    );

    /// <inheritdoc/>
    public static string Word => "irradiance";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } =
    [WattPerSquareMetre, MicrowattPerSquareCentimetre];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } = [];

    /// <inheritdoc/>
    public static string Examples => "12 W/m², 1200 µW/cm²";
}
