using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>Feeler-blade sets that can be named instead of listed.</summary>
public enum BladeSet
{
    /// <summary>Not said: the blades listed, if any are; the set of 20 otherwise.</summary>
    Unsaid,

    /// <summary>The blades are listed one by one.</summary>
    Listed,

    /// <summary>0.05 to 1.00 mm in steps of 0.05: 20 blades.</summary>
    Metric20,

    /// <summary>0.05 0.10 0.15 0.20 0.25 0.30 0.40 0.50 0.60 0.70 0.80 0.90 1.00 mm: 13 blades.</summary>
    Metric13,
}

/// <summary>Two ends to be laid in one vee block, or in two vees cut alike.</summary>
public sealed record WeldInput
{
    /// <summary>Diameter of the inner-end piece where it lies in the vee; null takes it from the cut.</summary>
    public Measured<Distance>? InnerDiameter { get; init; }

    /// <summary>Diameter of the outer-end piece where it lies in the vee; null takes it from the cut.</summary>
    public Measured<Distance>? OuterDiameter { get; init; }

    /// <summary>Included angle of the vee. It does not change the shims; it is needed for the alternatives shown beside them.</summary>
    public Measured<Angle>? VeeAngle { get; init; }

    /// <summary>A named set of blades.</summary>
    public BladeSet BladeSet { get; init; }

    /// <summary>The blades on hand, when they are listed. A thickness owned twice is listed twice.</summary>
    public IReadOnlyList<Measured<Distance>> Blades { get; init; } = [];

    /// <summary>Most leaves in one pack.</summary>
    public int MostLeaves { get; init; } = 4;

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, WeldFields.InnerDiameter, InnerDiameter);
        check.Range(path, WeldFields.OuterDiameter, OuterDiameter);
        check.Range(path, WeldFields.VeeAngle, VeeAngle);
        for (var i = 0; i < Blades.Count; i++)
        {
            if (WeldFields.Blade.OutOfRange(Blades[i], $"{path}.blades[{i}]") is { } refusal)
                check.That(false, refusal.Field, refusal.Value, refusal.Problem, refusal.Accepted);
        }
        check.That(
            Blades.Count <= WeldFields.MostBlades,
            path + ".blades",
            $"{Blades.Count} blades",
            "is more than one set",
            $"at most {WeldFields.MostBlades} blades"
        );
        check.That(
            MostLeaves is >= 1 and <= 6,
            path + ".mostLeaves",
            $"{MostLeaves}",
            "is not a workable pack",
            "1 to 6 leaves"
        );
    }
}

/// <summary>The questions of <see cref="WeldInput"/>.</summary>
public static class WeldFields
{
    /// <summary>Inner-end diameter, mm.</summary>
    public static Field<Distance> InnerDiameter { get; } =
        new(
            "innerDiameter",
            "diameter of the inner-end piece in the vee",
            8,
            120,
            0.02,
            "caliper, same one for both"
        );

    /// <summary>Outer-end diameter, mm.</summary>
    public static Field<Distance> OuterDiameter { get; } =
        new(
            "outerDiameter",
            "diameter of the outer-end piece in the vee",
            8,
            120,
            0.02,
            "caliper, same one for both"
        );

    /// <summary>Included angle of the vee, rad.</summary>
    public static Field<Angle> VeeAngle { get; } =
        new(
            "veeAngle",
            "included angle of the vee",
            30 * Math.PI / 180,
            150 * Math.PI / 180,
            0.5 * Math.PI / 180,
            "angle gauge"
        );

    /// <summary>One blade, mm.</summary>
    public static Field<Distance> Blade { get; } =
        new("blade", "thickness of a feeler blade", 0.01, 5, 0.005, "marked on the blade");

    /// <summary>Most blades that a search takes.</summary>
    public const int MostBlades = 40;
}
