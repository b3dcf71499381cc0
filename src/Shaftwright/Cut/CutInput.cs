using Shaftwright.Measures;

namespace Shaftwright.Cut;

/// <summary>How the two donors are to be cut and joined.</summary>
public sealed record CutInput
{
    /// <summary>Overall length wanted, shaft end to shaft end; null takes it from the length stage.</summary>
    public Measured<Distance>? OverallLength { get; init; }

    /// <summary>Where the inner-end donor is cut, from its joint end; null asks for a proposal.</summary>
    public Measured<Distance>? InnerCutAt { get; init; }

    /// <summary>Gap left between the faces in the vee.</summary>
    public Measured<Distance>? RootGap { get; init; }

    /// <summary>Width that the saw or disc takes away at a cut.</summary>
    public Measured<Distance>? Kerf { get; init; }

    /// <summary>What is left on each face to be turned or ground square.</summary>
    public Measured<Distance>? Facing { get; init; }

    /// <summary>How much the weld draws the two ends together.</summary>
    public Measured<Distance>? Shrinkage { get; init; }

    /// <summary>Width on each side of a weld that the heat is taken to change.</summary>
    public Measured<Distance>? HeatBand { get; init; }

    /// <summary>Length of the sleeve over the weld; null for none.</summary>
    public Measured<Distance>? SleeveLength { get; init; }

    /// <summary>Outside diameter of the sleeve.</summary>
    public Measured<Distance>? SleeveOutside { get; init; }

    /// <summary>How much wider the sleeve's bore is than the bar under it.</summary>
    public Measured<Distance>? SleeveFit { get; init; }

    /// <summary>Bore of the smaller end of the inner boot, unstretched, if it must pass over anything.</summary>
    public Measured<Distance>? InnerBootBore { get; init; }

    /// <summary>Bore of the smaller end of the outer boot, unstretched.</summary>
    public Measured<Distance>? OuterBootBore { get; init; }

    /// <summary>Room a boot needs to slide back along the shaft so that its joint can be reached.</summary>
    public Measured<Distance>? BootSlideRoom { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, CutFields.OverallLength, OverallLength);
        check.Range(path, CutFields.InnerCutAt, InnerCutAt);
        check.Range(path, CutFields.RootGap, RootGap);
        check.Range(path, CutFields.Kerf, Kerf);
        check.Range(path, CutFields.Facing, Facing);
        check.Range(path, CutFields.Shrinkage, Shrinkage);
        check.Range(path, CutFields.HeatBand, HeatBand);
        check.Range(path, CutFields.SleeveLength, SleeveLength);
        check.Range(path, CutFields.SleeveOutside, SleeveOutside);
        check.Range(path, CutFields.SleeveFit, SleeveFit);
        check.Range(path, CutFields.InnerBootBore, InnerBootBore);
        check.Range(path, CutFields.OuterBootBore, OuterBootBore);
        check.Range(path, CutFields.BootSlideRoom, BootSlideRoom);
    }
}

/// <summary>The questions of <see cref="CutInput"/>, and what is taken when they are not answered.</summary>
public static class CutFields
{
    /// <summary>Overall length, mm.</summary>
    public static Field<Distance> OverallLength { get; } =
        new("overallLength", "overall length wanted", 60, 2500, 0.5, "steel rule");

    /// <summary>Cut position, mm.</summary>
    public static Field<Distance> InnerCutAt { get; } =
        new(
            "innerCutAt",
            "cut on the inner-end donor, from its joint end",
            10,
            2000,
            0.5,
            "steel rule"
        );

    /// <summary>Root gap, mm. When not given, <see cref="UsualRootGap"/>.</summary>
    public static Field<Distance> RootGap { get; } =
        new("rootGap", "gap between the faces in the vee", 0, 6, 0.2, "feeler blade");

    /// <summary>Width of the saw cut, mm. When not given, <see cref="UsualKerf"/>.</summary>
    public static Field<Distance> Kerf { get; } =
        new("kerf", "width the saw takes away", 0, 10, 0.5, "a trial cut");

    /// <summary>Left on a face for squaring, mm. When not given, <see cref="UsualFacing"/>.</summary>
    public static Field<Distance> Facing { get; } =
        new("facing", "left on each face to be squared", 0, 20, 0.2, "caliper");

    /// <summary>Kerf taken when none is given, mm: a thin cutting disc or a bandsaw. Common practice, no source.</summary>
    public const double UsualKerf = 2;

    /// <summary>Facing taken when none is given, mm. Common practice, no source.</summary>
    public const double UsualFacing = 1;

    /// <summary>Shrinkage, mm. When not given, <see cref="UsualShrinkage"/> within its usual ±.</summary>
    public static Field<Distance> Shrinkage { get; } =
        new(
            "shrinkage",
            "how much the weld draws the ends together",
            0,
            5,
            0.7,
            "guess before the sample is welded"
        );

    /// <summary>Heat band, mm. When not given, <see cref="UsualHeatBand"/>.</summary>
    public static Field<Distance> HeatBand { get; } =
        new("heatBand", "heat-affected width on each side of a weld", 2, 80);

    /// <summary>Sleeve length, mm.</summary>
    public static Field<Distance> SleeveLength { get; } =
        new("sleeveLength", "length of the sleeve", 10, 400, 0.5, "steel rule");

    /// <summary>Sleeve outside diameter, mm.</summary>
    public static Field<Distance> SleeveOutside { get; } =
        new("sleeveOutside", "outside diameter of the sleeve", 10, 150, 0.05, "caliper");

    /// <summary>Sleeve fit, mm. When not given, <see cref="UsualSleeveFit"/>.</summary>
    public static Field<Distance> SleeveFit { get; } =
        new("sleeveFit", "bore of the sleeve wider than the bar by", 0, 2, 0.05, "caliper");

    /// <summary>Sleeve fit taken when none is given, mm on the diameter: slides by hand. Common practice, no source.</summary>
    public const double UsualSleeveFit = 0.1;

    /// <summary>Inner boot bore, mm.</summary>
    public static Field<Distance> InnerBootBore { get; } =
        new("innerBootBore", "small bore of the inner boot", 8, 150, 0.5, "caliper");

    /// <summary>Outer boot bore, mm.</summary>
    public static Field<Distance> OuterBootBore { get; } =
        new("outerBootBore", "small bore of the outer boot", 8, 150, 0.5, "caliper");

    /// <summary>Boot slide room, mm. When not given, <see cref="UsualBootSlideRoom"/>.</summary>
    public static Field<Distance> BootSlideRoom { get; } =
        new("bootSlideRoom", "room for a boot to slide back", 0, 300);

    /// <summary>Root gap taken when none is given, mm. Common practice, no source.</summary>
    public const double UsualRootGap = 2;

    /// <summary>Shrinkage taken when none is given, mm: middle of two handbook estimates (0.66 and 1.42 mm) for an 8 mm deep
    /// 60° groove in 25 mm bar, and of the 1.5 mm low end of a third; the sample replaces it.</summary>
    public const double UsualShrinkage = 1.2;

    /// <summary>Heat band taken when none is given, mm on each side. Common practice, no source; the etched sample replaces it.</summary>
    public const double UsualHeatBand = 20;

    /// <summary>Boot slide room taken when none is given, mm. Common practice, no source.</summary>
    public const double UsualBootSlideRoom = 40;
}
