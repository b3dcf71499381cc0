using Shaftwright.Measures;

namespace Shaftwright.Fit;

/// <summary>The questions of <see cref="FitInput"/> and <see cref="FitDone"/>.</summary>
public static class FitFields
{
    private const double Degree = Math.PI / 180;

    /// <summary>Hub nut by its maker, N·mm.</summary>
    public static Field<Torque> HubNutByMaker { get; } =
        new("hubNutByMaker", "hub nut torque by its maker", 10_000, 1_000_000);

    /// <summary>Hub nut as tightened, N·mm.</summary>
    public static Field<Torque> HubNut { get; } =
        new("hubNut", "torque given to the hub nut", 0, 1_000_000);

    /// <summary>Pull by the maker, N.</summary>
    public static Field<Force> PullByMaker { get; } =
        new("pullByMaker", "pull the inner end must stand by its maker", 10, 5000);

    /// <summary>Pull given, N.</summary>
    public static Field<Force> Pull { get; } =
        new("pull", "pull given to the inner end", 0, 5000, 10, "spring balance");

    /// <summary>Left in, mm.</summary>
    public static Field<Distance> LeftIn { get; } =
        new("leftIn", "how far it still goes in, where least is left", 0, 100, 0.5, "steel rule");

    /// <summary>Left out, mm.</summary>
    public static Field<Distance> LeftOut { get; } =
        new(
            "leftOut",
            "how far it still comes out, where least is left",
            0,
            100,
            0.5,
            "steel rule"
        );

    /// <summary>Diameter at the line, mm.</summary>
    public static Field<Distance> LineDiameter { get; } =
        new("lineDiameter", "diameter where the painted line is read", 8, 150, 0.05, "caliper");

    /// <summary>Offset of the line, mm.</summary>
    public static Field<Distance> LineOffset { get; } =
        new(
            "lineOffset",
            "offset of the painted line from straight, round the shaft",
            -200,
            200,
            0.5,
            "straight-edge and steel rule"
        );

    /// <summary>Proof torque, N·mm.</summary>
    public static Field<Torque> ProofTorque { get; } =
        new("proofTorque", "proof torque", 10_000, 10_000_000);

    /// <summary>Twist left after the proof, rad.</summary>
    public static Field<Angle> ProofSet { get; } =
        new(
            "proofSet",
            "twist left after the proof torque",
            0,
            90 * Degree,
            0.5 * Degree,
            "angle gauge"
        );

    /// <summary>Pull taken when the maker's is not known, N: a firm pull by hand. Common practice, no source.</summary>
    public const double UsualPull = 100;
}
