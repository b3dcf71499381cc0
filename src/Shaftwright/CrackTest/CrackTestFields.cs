using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>The questions of <see cref="TestRun"/> and <see cref="Indication"/>.</summary>
public static class CrackTestFields
{
    /// <summary>Maker's shortest dwell, s.</summary>
    public static Field<Duration> MakersDwell { get; } =
        new("makersDwell", "shortest dwell by the maker of the penetrant", 60, 4 * 3600);

    /// <summary>Maker's shortest development, s.</summary>
    public static Field<Duration> MakersDevelopment { get; } =
        new("makersDevelopment", "shortest development by the maker", 60, 2 * 3600);

    /// <summary>Part temperature, °C.</summary>
    public static Field<Temperature> PartTemperature { get; } =
        new("partTemperature", "temperature of the part", -40, 200, 2, "contact thermometer");

    /// <summary>Light, lx.</summary>
    public static Field<Illuminance> Light { get; } =
        new("light", "white light at the part", 0, 150000);

    /// <summary>UV-A, W/m².</summary>
    public static Field<Irradiance> UltraViolet { get; } =
        new("ultraViolet", "UV-A at the part", 0, 500);

    /// <summary>Angle between the two directions of magnetising, rad.</summary>
    public static Field<Angle> BetweenDirections { get; } =
        new("betweenDirections", "angle between the two directions of magnetising", 0, Math.PI);

    /// <summary>Position of a mark, mm.</summary>
    public static Field<Distance> Position { get; } =
        new("position", "middle of the mark from the inner end", 0, 2500, 1, "steel rule");

    /// <summary>Angle of a mark, rad.</summary>
    public static Field<Angle> MarkAngle { get; } =
        new(
            "angle",
            "angle of the mark from the painted line",
            -2 * Math.PI,
            2 * Math.PI,
            5 * Math.PI / 180,
            "by eye"
        );

    /// <summary>Length of a mark, mm.</summary>
    public static Field<Distance> Length { get; } =
        new("length", "length of the mark", 0.05, 400, 0.3, "steel rule and glass");

    /// <summary>Width of a mark, mm.</summary>
    public static Field<Distance> Width { get; } =
        new("width", "width of the mark", 0.02, 100, 0.2, "steel rule and glass");

    /// <summary>Direction of a mark, rad.</summary>
    public static Field<Angle> Direction { get; } =
        new(
            "direction",
            "direction of the mark (0 along the shaft, 90° round it)",
            -Math.PI,
            Math.PI,
            5 * Math.PI / 180,
            "by eye"
        );
}
