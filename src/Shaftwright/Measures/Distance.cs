namespace Shaftwright.Measures;

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
    public static readonly Unit Inch = new("in", 25.4m, ["\"", "″", "”", "ins", "inch", "inches"]);

    /// <summary>Thousandth of an inch.</summary>
    public static readonly Unit Thou = new("thou", 0.0254m, ["th"]) { OftenOfDoubt = true };

    /// <summary>Centimetre.</summary>
    public static readonly Unit Cm = new("cm", 10m, []);

    /// <summary>Metre.</summary>
    public static readonly Unit Metre = new("m", 1000m, ["metre", "metres", "meter", "meters"]);

    /// <summary>Micrometre.</summary>
    public static readonly Unit Micrometre = new("µm", 0.001m, ["um", "μm", "micron", "microns"])
    {
        OftenOfDoubt = true,
    };

    /// <summary>Foot.</summary>
    public static readonly Unit Foot = new("ft", 304.8m, ["foot", "feet", "'", "’", "′"]);

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
