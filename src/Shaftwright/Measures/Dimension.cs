namespace Shaftwright.Measures;

/// <summary>A kind of quantity. It is a type, so that a torque put where a distance belongs does not compile.</summary>
/// <typeparam name="TSelf">The dimension itself.</typeparam>
public interface IDimension<TSelf>
    where TSelf : IDimension<TSelf>
{
    /// <summary>The word for it in a sentence: <c>length</c>, <c>angle</c>.</summary>
    static abstract string Word { get; }

    /// <summary>Accepted units; the first is the default, taken for a bare number.</summary>
    static abstract IReadOnlyList<Unit> Units { get; }

    /// <summary>Spellings that two trades read differently. Each is refused with both readings.</summary>
    static abstract IReadOnlyList<Ambiguity> Ambiguities { get; }

    /// <summary>Ways of writing it, for a refusal.</summary>
    static abstract string Examples { get; }
}

/// <summary>A unit spelling with two readings.</summary>
/// <param name="Spelling">As typed, without separators.</param>
/// <param name="First">One reading.</param>
/// <param name="Second">The other.</param>
public sealed record Ambiguity(string Spelling, string First, string Second);

/// <summary>Distances: lengths, diameters, travel, plunge. Internal unit mm.</summary>
/// <remarks>1 in = 25.4 mm exactly (international yard and pound agreement, 1959; BIPM SI Brochure 9th ed. lists it as outside the SI).</remarks>
public sealed class Distance : IDimension<Distance>
{
    private Distance() { }

    /// <summary>Millimetre.</summary>
    public static readonly Unit Mm = new(
        "mm",
        1m,
        ["millimetre", "millimetres", "millimeter", "millimeters"]
    );

    /// <summary>Inch.</summary>
    public static readonly Unit Inch = new("in", 25.4m, ["\"", "″", "”", "inch", "inches"]);

    /// <summary>Thousandth of an inch.</summary>
    public static readonly Unit Thou = new("thou", 0.0254m, ["th"]);

    /// <summary>Centimetre.</summary>
    public static readonly Unit Cm = new("cm", 10m, []);

    /// <summary>Metre.</summary>
    public static readonly Unit Metre = new("m", 1000m, ["metre", "metres", "meter", "meters"]);

    /// <summary>Micrometre.</summary>
    public static readonly Unit Micrometre = new("µm", 0.001m, ["um", "μm", "micron", "microns"]);

    /// <summary>Foot.</summary>
    public static readonly Unit Foot = new("ft", 304.8m, ["foot", "feet", "'", "′"]);

    /// <inheritdoc/>
    public static string Word => "length";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } =
    [Mm, Inch, Thou, Cm, Metre, Micrometre, Foot];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } =
    [
        new("mil", "thou (a thousandth of an inch)", "mm"),
        new("mils", "thou (thousandths of an inch)", "mm"),
    ];

    /// <inheritdoc/>
    public static string Examples => "27.30 mm, 27,30 mm, 3/8 in, 1 1/2 in, 4 thou, 431 ± 1 mm";
}

/// <summary>Angles. Internal unit rad.</summary>
public sealed class Angle : IDimension<Angle>
{
    private Angle() { }

    /// <summary>Degree.</summary>
    public static readonly Unit Degree = new("°", 1m, ["deg", "degree", "degrees"], Math.PI / 180);

    /// <summary>Radian.</summary>
    public static readonly Unit Radian = new("rad", 1m, ["radian", "radians"]);

    /// <summary>Milliradian: 1 mm in 1 m.</summary>
    public static readonly Unit Milliradian = new("mrad", 0.001m, []);

    /// <summary>Minute of arc.</summary>
    public static readonly Unit Arcminute = new("′", 1m, ["'", "arcmin"], Math.PI / 10800);

    /// <inheritdoc/>
    public static string Word => "angle";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [Degree, Radian, Milliradian, Arcminute];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } =
    [new("grad", "degrees (a full turn is 360)", "gon (a full turn is 400)")];

    /// <inheritdoc/>
    public static string Examples => "12.5°, 12,5 deg, 12° 30′, 0.2 rad";
}

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

    /// <summary>Kilogram-force metre.</summary>
    public static readonly Unit KilogramForceMetre = new("kgf·m", 9806.65m, ["mkgf", "kpm"]);

    /// <summary>Newton millimetre.</summary>
    public static readonly Unit NewtonMillimetre = new("N·mm", 1m, ["nmm"]);

    /// <inheritdoc/>
    public static string Word => "torque";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } =
    [NewtonMetre, PoundFoot, PoundInch, KilogramForceMetre, NewtonMillimetre];

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

/// <summary>Stresses. Internal unit MPa.</summary>
public sealed class Stress : IDimension<Stress>
{
    private Stress() { }

    /// <summary>Megapascal.</summary>
    public static readonly Unit MPa = new("MPa", 1m, ["N/mm2", "N/mm²"]);

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

/// <summary>Masses. Internal unit kg.</summary>
public sealed class Mass : IDimension<Mass>
{
    private Mass() { }

    /// <summary>Kilogram.</summary>
    public static readonly Unit Kilogram = new("kg", 1m, ["kilo", "kilos"]);

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

/// <summary>Plain numbers: ratios, factors, shares, counts.</summary>
public sealed class Ratio : IDimension<Ratio>
{
    private Ratio() { }

    /// <summary>A bare number.</summary>
    public static readonly Unit One = new("", 1m, []);

    /// <summary>A hundredth.</summary>
    public static readonly Unit Percent = new("%", 0.01m, []);

    /// <inheritdoc/>
    public static string Word => "number";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [One, Percent];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } = [];

    /// <inheritdoc/>
    public static string Examples => "3.58, 3,58, 95 %, 0.9 ± 0.1";
}

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
