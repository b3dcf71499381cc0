using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>What family a piece's steel belongs to, when that much is known.</summary>
public enum SteelFamily
{
    /// <summary>Not known: what the donors stage says of the piece counts.</summary>
    Unknown,

    /// <summary>Plain medium-carbon steel: 1040 to 1050, C45, EN8.</summary>
    MediumCarbon,

    /// <summary>Medium carbon with more manganese: 1541.</summary>
    CarbonManganese,

    /// <summary>Chromium-molybdenum steel: 4140, 42CrMo4.</summary>
    ChromiumMolybdenum,

    /// <summary>Nickel-chromium-molybdenum steel: 4340.</summary>
    NickelChromiumMolybdenum,

    /// <summary>Low-carbon steel.</summary>
    LowCarbon,
}

/// <summary>The steel of one piece, as far as it is known: an analysis, a family, or nothing beyond what the donors stage holds.</summary>
public sealed record WeldSteel
{
    /// <summary>Its family.</summary>
    public SteelFamily Family { get; init; }

    /// <summary>Carbon.</summary>
    public Measured<Content>? Carbon { get; init; }

    /// <summary>Silicon.</summary>
    public Measured<Content>? Silicon { get; init; }

    /// <summary>Manganese.</summary>
    public Measured<Content>? Manganese { get; init; }

    /// <summary>Chromium.</summary>
    public Measured<Content>? Chromium { get; init; }

    /// <summary>Molybdenum.</summary>
    public Measured<Content>? Molybdenum { get; init; }

    /// <summary>Nickel.</summary>
    public Measured<Content>? Nickel { get; init; }

    /// <summary>Copper.</summary>
    public Measured<Content>? Copper { get; init; }

    /// <summary>Vanadium.</summary>
    public Measured<Content>? Vanadium { get; init; }

    /// <summary>Temperature it was last tempered at by its maker, if that is known.</summary>
    public Measured<Temperature>? TemperedAt { get; init; }

    /// <summary>True when at least one element was typed.</summary>
    public bool HasAnalysis =>
        Carbon is not null
        || Silicon is not null
        || Manganese is not null
        || Chromium is not null
        || Molybdenum is not null
        || Nickel is not null
        || Copper is not null
        || Vanadium is not null;

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, WeldSteelFields.Carbon, Carbon);
        check.Range(path, WeldSteelFields.Silicon, Silicon);
        check.Range(path, WeldSteelFields.Manganese, Manganese);
        check.Range(path, WeldSteelFields.Chromium, Chromium);
        check.Range(path, WeldSteelFields.Molybdenum, Molybdenum);
        check.Range(path, WeldSteelFields.Nickel, Nickel);
        check.Range(path, WeldSteelFields.Copper, Copper);
        check.Range(path, WeldSteelFields.Vanadium, Vanadium);
        check.Range(path, WeldSteelFields.TemperedAt, TemperedAt);
    }
}

/// <summary>The questions of <see cref="WeldSteel"/>. The usual ± is that of a hand-held analyser, from memory.</summary>
public static class WeldSteelFields
{
    private const string Analyser = "hand-held analyser";

    /// <summary>Carbon, mass %.</summary>
    public static Field<Content> Carbon { get; } =
        new("carbon", "carbon in the steel", 0, 1.2, 0.03, Analyser);

    /// <summary>Silicon, mass %.</summary>
    public static Field<Content> Silicon { get; } =
        new("silicon", "silicon in the steel", 0, 2.5, 0.03, Analyser);

    /// <summary>Manganese, mass %.</summary>
    public static Field<Content> Manganese { get; } =
        new("manganese", "manganese in the steel", 0, 3, 0.05, Analyser);

    /// <summary>Chromium, mass %.</summary>
    public static Field<Content> Chromium { get; } =
        new("chromium", "chromium in the steel", 0, 6, 0.05, Analyser);

    /// <summary>Molybdenum, mass %.</summary>
    public static Field<Content> Molybdenum { get; } =
        new("molybdenum", "molybdenum in the steel", 0, 2, 0.02, Analyser);

    /// <summary>Nickel, mass %.</summary>
    public static Field<Content> Nickel { get; } =
        new("nickel", "nickel in the steel", 0, 6, 0.05, Analyser);

    /// <summary>Copper, mass %.</summary>
    public static Field<Content> Copper { get; } =
        new("copper", "copper in the steel", 0, 1, 0.03, Analyser);

    /// <summary>Vanadium, mass %.</summary>
    public static Field<Content> Vanadium { get; } =
        new("vanadium", "vanadium in the steel", 0, 0.5, 0.02, Analyser);

    /// <summary>Tempering temperature, °C.</summary>
    public static Field<Temperature> TemperedAt { get; } =
        new("temperedAt", "temperature the piece was last tempered at", 100, 720, 10, "data sheet");
}
