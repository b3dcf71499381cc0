namespace Shaftwright.Measures;

/// <summary>Electric currents. Internal unit A.</summary>
public sealed class Current : IDimension<Current>
{
    private Current() { }

    /// <summary>Ampere.</summary>
    public static readonly Unit Ampere = new("A", 1m, ["amp", "amps", "ampere", "amperes"]);

    /// <inheritdoc/>
    public static string Word => "current";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [Ampere];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } = [];

    /// <inheritdoc/>
    public static string Examples => "120 A, 110 ± 10 A";
}
