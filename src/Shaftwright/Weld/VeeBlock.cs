using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>How the lower piece is brought up.</summary>
public enum PackingWay
{
    /// <summary>Not decided.</summary>
    Unknown,

    /// <summary>The same pack on both faces of the vee.</summary>
    BothFaces,

    /// <summary>One pack on one face, and the block moved aside.</summary>
    OneFace,

    /// <summary>A pack under the whole block.</summary>
    UnderBlock,
}

/// <summary>One vee block with the piece that stands in it, where the two pieces do not share one vee, or one stands on a taper.</summary>
public sealed record VeeBlock
{
    /// <summary>Included angle; null takes the common one.</summary>
    public Measured<Angle>? Angle { get; init; }

    /// <summary>Diameter of a plain bar laid in the empty vee to find its height.</summary>
    public Measured<Distance>? BarDiameter { get; init; }

    /// <summary>From the table to the top of that bar.</summary>
    public Measured<Distance>? HeightOverBar { get; init; }

    /// <summary>Taper: diameter of the piece at the edge of the vee nearer the weld.</summary>
    public Measured<Distance>? DiameterNearWeld { get; init; }

    /// <summary>Taper: diameter of the piece at the far edge of the vee.</summary>
    public Measured<Distance>? DiameterFar { get; init; }

    /// <summary>Length of the vee along the shaft.</summary>
    public Measured<Distance>? Length { get; init; }

    /// <summary>From the near edge of the vee to the joint.</summary>
    public Measured<Distance>? ToJoint { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, VeeBlockFields.Angle, Angle);
        check.Range(path, VeeBlockFields.BarDiameter, BarDiameter);
        check.Range(path, VeeBlockFields.HeightOverBar, HeightOverBar);
        check.Range(path, VeeBlockFields.DiameterNearWeld, DiameterNearWeld);
        check.Range(path, VeeBlockFields.DiameterFar, DiameterFar);
        check.Range(path, VeeBlockFields.Length, Length);
        check.Range(path, VeeBlockFields.ToJoint, ToJoint);
    }
}

/// <summary>The questions of <see cref="VeeBlock"/>.</summary>
public static class VeeBlockFields
{
    /// <summary>Included angle, rad.</summary>
    public static Field<Angle> Angle { get; } =
        new(
            "angle",
            "included angle of this vee",
            30 * Math.PI / 180,
            150 * Math.PI / 180,
            0.5 * Math.PI / 180,
            "angle gauge"
        );

    /// <summary>Bar diameter, mm.</summary>
    public static Field<Distance> BarDiameter { get; } =
        new("barDiameter", "diameter of the plain bar laid in the vee", 5, 120, 0.02, "caliper");

    /// <summary>Height over the bar, mm.</summary>
    public static Field<Distance> HeightOverBar { get; } =
        new(
            "heightOverBar",
            "from the table to the top of that bar",
            10,
            400,
            0.02,
            "height gauge or caliper"
        );

    /// <summary>Diameter at the near edge, mm.</summary>
    public static Field<Distance> DiameterNearWeld { get; } =
        new(
            "diameterNearWeld",
            "diameter at the vee's edge nearer the weld",
            8,
            120,
            0.02,
            "caliper"
        );

    /// <summary>Diameter at the far edge, mm.</summary>
    public static Field<Distance> DiameterFar { get; } =
        new("diameterFar", "diameter at the vee's far edge", 8, 120, 0.02, "caliper");

    /// <summary>Length of the vee, mm.</summary>
    public static Field<Distance> Length { get; } =
        new("length", "length of the vee along the shaft", 5, 500, 0.5, "steel rule");

    /// <summary>Near edge to joint, mm.</summary>
    public static Field<Distance> ToJoint { get; } =
        new("toJoint", "from the vee's near edge to the joint", 0, 1000, 1, "steel rule");
}
