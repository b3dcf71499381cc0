namespace Shaftwright.Measures;

/// <summary>Vickers hardness, as a laboratory reads it across a weld. Another scale is refused, not converted on the quiet.</summary>
public sealed class Vickers : IDimension<Vickers>
{
    private Vickers() { }

    /// <summary>Vickers, at any of the loads used on a section.</summary>
    public static readonly Unit Hv = new("HV", 1m, ["HV0.5", "HV1", "HV5", "HV10", "VPN"]);

    /// <inheritdoc/>
    public static string Word => "Vickers hardness";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [Hv];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } = [];

    /// <inheritdoc/>
    public static string Examples => "215 HV, 215 ± 10 HV";
}
