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

/// <summary>The weld: how its two ends are laid in line, prepared, heated and joined.</summary>
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

    /// <summary>The inner-end piece's own vee, where the two do not share one or it stands on a taper.</summary>
    public VeeBlock? InnerVee { get; init; }

    /// <summary>The outer-end piece's own vee.</summary>
    public VeeBlock? OuterVee { get; init; }

    /// <summary>How the lower piece is brought up.</summary>
    public PackingWay Packing { get; init; }

    /// <summary>Steel of the inner-end piece.</summary>
    public WeldSteel? InnerSteel { get; init; }

    /// <summary>Steel of the outer-end piece.</summary>
    public WeldSteel? OuterSteel { get; init; }

    /// <summary>How both ends are ground.</summary>
    public Preparation? Preparation { get; init; }

    /// <summary>The filler.</summary>
    public Filler? Filler { get; init; }

    /// <summary>How the arc is run.</summary>
    public ArcInput? Arc { get; init; }

    /// <summary>Heat before, between and after the runs.</summary>
    public HeatPlan? Heat { get; init; }

    /// <summary>The dial on both sides of the joint, tacked.</summary>
    public IReadOnlyList<TackNote> Tacks { get; init; } = [];

    /// <summary>The dial between layers of beads.</summary>
    public IReadOnlyList<LayerNote> Layers { get; init; } = [];

    /// <summary>Quality level of ISO 5817 that the seams are to have.</summary>
    public SeamLevel SeamLevel { get; init; }

    /// <summary>What was seen and measured on the finished seams, before the crack test.</summary>
    public IReadOnlyList<SeamLook> Seams { get; init; } = [];

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
        InnerVee?.Check(check, path + ".innerVee");
        OuterVee?.Check(check, path + ".outerVee");
        InnerSteel?.Check(check, path + ".innerSteel");
        OuterSteel?.Check(check, path + ".outerSteel");
        Preparation?.Check(check, path + ".preparation");
        Filler?.Check(check, path + ".filler");
        Arc?.Check(check, path + ".arc");
        Heat?.Check(check, path + ".heat");
        for (var i = 0; i < Tacks.Count; i++)
            Tacks[i].Check(check, $"{path}.tacks[{i}]");
        for (var i = 0; i < Seams.Count; i++)
            Seams[i].Check(check, $"{path}.seams[{i}]");
        for (var i = 0; i < Layers.Count; i++)
        {
            Layers[i].Check(check, $"{path}.layers[{i}]");
            check.That(
                Layers[i].Layers is >= 0 and <= DialNoteFields.MostLayers,
                $"{path}.layers[{i}].layers",
                $"{Layers[i].Layers}",
                "is not a count of layers",
                $"0 to {DialNoteFields.MostLayers}"
            );
            check.That(
                Layers[i].Beads is >= 0 and <= DialNoteFields.MostBeads,
                $"{path}.layers[{i}].beads",
                $"{Layers[i].Beads}",
                "is not a count of beads",
                $"0 to {DialNoteFields.MostBeads}; the fourth makes the layer whole"
            );
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
