using Shaftwright.Measures;

namespace Shaftwright.Strength;

/// <summary>What is known of the weld when the shaft's strength is judged.</summary>
public sealed record StrengthInput
{
    /// <summary>Fusion depth from the surface. Null takes a share of the radius between <see cref="StrengthFields.LeastFusion"/> and
    /// <see cref="StrengthFields.MostFusion"/>, of which the low end counts.</summary>
    public Measured<Distance>? FusionDepth { get; init; }

    /// <summary>True if the fusion depth was measured on an etched sample of the same steels.</summary>
    public bool FusionFromSample { get; init; }

    /// <summary>The sample. Its readings go before <see cref="FusionDepth"/> and before the guess of the softened metal.</summary>
    public WeldSample? Sample { get; init; }

    /// <summary>What was seen of the sleeve.</summary>
    public SleeveSeams? Sleeve { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, StrengthFields.FusionDepth, FusionDepth);
        Sample?.Check(check, path + ".sample");
    }
}

/// <summary>The questions of <see cref="StrengthInput"/>.</summary>
public static class StrengthFields
{
    /// <summary>Fusion depth, mm.</summary>
    public static Field<Distance> FusionDepth { get; } =
        new(
            "fusionDepth",
            "fusion depth from the surface",
            0.5,
            60,
            1,
            "guess; an etched sample does better"
        );

    /// <summary>Smallest fusion depth assumed, share of the radius. Common practice, no source: a low guess until a sample is etched.</summary>
    public const double LeastFusion = 0.3;

    /// <summary>Largest fusion depth assumed, share of the radius. Common practice, no source.</summary>
    public const double MostFusion = 0.7;

    /// <summary>Range of stress intensity below which no crack in steel grows in air, N/mm^1.5, however high the mean load.
    /// Source: BS 7910, threshold for R of 0.5 and more, as an open code quotes it.</summary>
    public const double LowThreshold = 63;

    /// <summary>The same where the load falls to nothing or turns round, N/mm^1.5. Source: BS 7910, R below 0, from memory.</summary>
    public const double HighThreshold = 170;
}
