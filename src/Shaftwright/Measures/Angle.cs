namespace Shaftwright.Measures;

/// <summary>Angles. Internal unit rad.</summary>
public sealed class Angle : IDimension<Angle>
{
    private Angle() { }

    /// <summary>Degree.</summary>
    public static readonly Unit Degree = new(
        "°",
        1m,
        ["º", "˚", "deg", "degs", "degree", "degrees"],
        Math.PI / 180
    );

    /// <summary>Radian.</summary>
    public static readonly Unit Radian = new("rad", 1m, ["radian", "radians"]);

    /// <summary>Milliradian: 1 mm in 1 m.</summary>
    public static readonly Unit Milliradian = new("mrad", 0.001m, []) { OftenOfDoubt = true };

    /// <summary>Minute of arc.</summary>
    public static readonly Unit Arcminute = new("′", 1m, ["'", "’", "arcmin"], Math.PI / 10800)
    {
        OftenOfDoubt = true,
    };

    /// <summary>Gon: the 400th part of a turn.</summary>
    public static readonly Unit Gon = new("gon", 1m, ["gons"], Math.PI / 200);

    /// <inheritdoc/>
    public static string Word => "angle";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } =
    [Degree, Radian, Milliradian, Arcminute, Gon];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } =
    [new("grad", "degrees (a full turn is 360)", "gon (a full turn is 400)")];

    /// <inheritdoc/>
    public static string Examples => "12.5°, 12,5 deg, 12° 30′, 0.2 rad";
}
