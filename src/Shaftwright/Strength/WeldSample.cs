using Shaftwright.Measures;

namespace Shaftwright.Strength;

/// <summary>How deep a sample was fused at one place round it.</summary>
public sealed record SampleFusion
{
    /// <summary>Angle from the sample's mark.</summary>
    public Measured<Angle>? Angle { get; init; }

    /// <summary>Fused depth from the surface.</summary>
    public Measured<Distance>? Depth { get; init; }
}

/// <summary>One hardness reading across a sample.</summary>
public sealed record SampleHardness
{
    /// <summary>Distance from the middle of the weld along the bar; towards the inner-end piece it is negative.</summary>
    public Measured<Distance>? From { get; init; }

    /// <summary>What was read.</summary>
    public Measured<Vickers>? Hardness { get; init; }
}

/// <summary>A joint welded from the same offcuts with the same set-up, cut through, etched and measured.</summary>
public sealed record WeldSample
{
    /// <summary>When it was measured.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Id of its photo in the job book.</summary>
    public string Photo { get; init; } = "";

    /// <summary>True if it was made of offcuts of both donors.</summary>
    public bool? SameSteel { get; init; }

    /// <summary>True if it was prepared, heated and welded as the shaft is.</summary>
    public bool? SameSetUp { get; init; }

    /// <summary>True if a crack was seen on the etched face.</summary>
    public bool? Cracked { get; init; }

    /// <summary>Fusion depth round it.</summary>
    public IReadOnlyList<SampleFusion> Fusion { get; init; } = [];

    /// <summary>Hardness across it.</summary>
    public IReadOnlyList<SampleHardness> Hardness { get; init; } = [];

    /// <summary>True when it is dated later than it is: then it replaces nothing. Found by the evaluation, never typed.</summary>
    internal bool IsAhead { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        for (var i = 0; i < Fusion.Count; i++)
        {
            check.Range($"{path}.fusion[{i}]", SampleFields.Angle, Fusion[i].Angle);
            check.Range($"{path}.fusion[{i}]", SampleFields.Depth, Fusion[i].Depth);
        }
        for (var i = 0; i < Hardness.Count; i++)
        {
            check.Range($"{path}.hardness[{i}]", SampleFields.From, Hardness[i].From);
            check.Range($"{path}.hardness[{i}]", SampleFields.Hardness, Hardness[i].Hardness);
        }
    }
}

/// <summary>The questions of <see cref="WeldSample"/>.</summary>
public static class SampleFields
{
    /// <summary>Angle round the sample, rad.</summary>
    public static Field<Angle> Angle { get; } =
        new("angle", "angle from the sample's mark", -4 * Math.PI, 4 * Math.PI, 5 * Math.PI / 180);

    /// <summary>Fused depth, mm.</summary>
    public static Field<Distance> Depth { get; } =
        new("depth", "fused depth from the surface", 0, 60, 0.3, "steel rule on the etched face");

    /// <summary>Distance from the weld's middle, mm.</summary>
    public static Field<Distance> From { get; } =
        new(
            "from",
            "from the middle of the weld, inner side negative",
            -120,
            120,
            0.5,
            "steel rule"
        );

    /// <summary>Vickers hardness.</summary>
    public static Field<Vickers> Hardness { get; } =
        new("hardness", "hardness of the etched face", 80, 900, 15, "laboratory");

    /// <summary>Fusion depths below which a sample says too little of the way round.</summary>
    public const int FewestPlaces = 4;
}
