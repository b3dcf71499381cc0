namespace Shaftwright.Measures;

/// <summary>Rockwell C hardness. It has no conversion: another scale is refused, not converted on the quiet.</summary>
public sealed class Hardness : IDimension<Hardness>
{
    private Hardness() { }

    /// <summary>Rockwell C.</summary>
    public static readonly Unit Hrc = new("HRC", 1m, ["rc"]);

    /// <inheritdoc/>
    public static string Word => "Rockwell C hardness";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [Hrc];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } =
    [
        new("h", "HRC (Rockwell C)", "HB or HV (Brinell, Vickers)"),
        new("hr", "HRC (Rockwell C)", "HRB (Rockwell B, for soft steel)"),
    ];

    /// <inheritdoc/>
    public static string Examples => "28 HRC, 30 ± 3 HRC";
}
