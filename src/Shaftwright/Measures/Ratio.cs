namespace Shaftwright.Measures;

/// <summary>Plain numbers: ratios, factors, shares, counts.</summary>
public sealed class Ratio : IDimension<Ratio>
{
    private Ratio() { }

    /// <summary>A bare number.</summary>
    public static readonly Unit One = new("", 1m, []);

    /// <summary>A hundredth.</summary>
    public static readonly Unit Percent = new("%", 0.01m, []) { OftenOfDoubt = true };

    /// <inheritdoc/>
    public static string Word => "number";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [One, Percent];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } = [];

    /// <inheritdoc/>
    public static string Examples => "3.58, 3,58, 95 %, 0.9 ± 0.1";
}
