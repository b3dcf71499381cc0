namespace Shaftwright.Measures;

/// <summary>Forces. Internal unit N.</summary>
/// <remarks>1 lbf = 4.4482216152605 N and 1 kgf = 9.80665 N, both exact.</remarks>
public sealed class Force : IDimension<Force>
{
    private Force() { }

    /// <summary>Newton.</summary>
    public static readonly Unit Newton = new("N", 1m, ["newton", "newtons"]);

    /// <summary>Kilonewton.</summary>
    public static readonly Unit Kilonewton = new("kN", 1000m, []);

    /// <summary>Kilogram-force.</summary>
    public static readonly Unit KilogramForce = new("kgf", 9.80665m, ["kp"]);

    /// <summary>Pound-force.</summary>
    public static readonly Unit PoundForce = new("lbf", 4.4482216152605m, []);

    /// <inheritdoc/>
    public static string Word => "force";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } =
    [Newton, Kilonewton, KilogramForce, PoundForce];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } =
    [
        new("kg", "kgf (what a spring balance shows)", "kg (a mass)"),
        new("lb", "lbf (what a spring balance shows)", "lb (a mass)"),
        new("t", "kN", "tonnes or tons of force; write it in kN or kgf"),
    ];

    /// <inheritdoc/>
    public static string Examples => "150 N, 15 kgf, 34 lbf";
}
