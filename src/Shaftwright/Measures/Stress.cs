namespace Shaftwright.Measures;

/// <summary>Stresses. Internal unit MPa.</summary>
public sealed class Stress : IDimension<Stress>
{
    private Stress() { }

    /// <summary>Megapascal.</summary>
    public static readonly Unit MPa = new("MPa", 1m, ["N/mm2", "N/mm²", "N/mm^2"]);

    /// <summary>Thousand pounds-force a square inch.</summary>
    public static readonly Unit Ksi = new("ksi", 4448.2216152605m / 645.16m, []);

    /// <summary>Pounds-force a square inch.</summary>
    public static readonly Unit Psi = new("psi", 4.4482216152605m / 645.16m, []);

    /// <summary>Gigapascal.</summary>
    public static readonly Unit GPa = new("GPa", 1000m, []);

    /// <inheritdoc/>
    public static string Word => "stress";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [MPa, Ksi, Psi, GPa];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } =
    [new("mPa", "MPa (N/mm²)", "mPa (a thousandth of a pascal)")];

    /// <inheritdoc/>
    public static string Examples => "430 MPa, 430 N/mm², 62 ksi";
}
