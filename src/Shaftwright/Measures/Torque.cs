namespace Shaftwright.Measures;

/// <summary>Torques. Internal unit N·mm.</summary>
/// <remarks>1 lbf = 4.4482216152605 N exactly (0.45359237 kg × 9.80665 m/s²).</remarks>
public sealed class Torque : IDimension<Torque>
{
    private Torque() { }

    /// <summary>Newton metre.</summary>
    public static readonly Unit NewtonMetre = new("N·m", 1000m, ["nm"]);

    /// <summary>Pound-force foot.</summary>
    public static readonly Unit PoundFoot = new(
        "lbf·ft",
        4.4482216152605m * 304.8m,
        ["ftlbf", "lbft", "ftlb", "ftlbs", "lbsft"]
    );

    /// <summary>Pound-force inch.</summary>
    public static readonly Unit PoundInch = new(
        "lbf·in",
        4.4482216152605m * 25.4m,
        ["inlbf", "lbin", "inlb", "inlbs"]
    );

    /// <summary>Ounce-force inch.</summary>
    public static readonly Unit OunceInch = new(
        "ozf·in",
        4.4482216152605m * 25.4m / 16m,
        ["inozf"]
    );

    /// <summary>Kilogram-force metre.</summary>
    public static readonly Unit KilogramForceMetre = new("kgf·m", 9806.65m, ["mkgf", "kpm"]);

    /// <summary>Newton millimetre.</summary>
    public static readonly Unit NewtonMillimetre = new("N·mm", 1m, ["nmm"]);

    /// <inheritdoc/>
    public static string Word => "torque";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } =
    [NewtonMetre, PoundFoot, PoundInch, OunceInch, KilogramForceMetre, NewtonMillimetre];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } =
    [
        new("kgm", "kgf·m (a weight on a lever, 9.807 N·m)", "kg·m² (an inertia)"),
        new("mkg", "kgf·m (a weight on a lever, 9.807 N·m)", "kg·m² (an inertia)"),
        new("ozin", "ozf·in of a torque screwdriver", "oz·in of an imbalance"),
    ];

    /// <inheritdoc/>
    public static string Examples => "215 N·m, 215 Nm, 118 lbf·ft, 118 ft-lb";
}
