using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>How cracks are looked for.</summary>
public enum TestMethod
{
    /// <summary>Red penetrant and white developer, in white light.</summary>
    ColourPenetrant,

    /// <summary>Fluorescent penetrant, in the dark under UV-A.</summary>
    FluorescentPenetrant,

    /// <summary>Magnetic particle, seen in white light: dry powder or black ink.</summary>
    MagneticParticle,

    /// <summary>Fluorescent magnetic particle, in the dark under UV-A.</summary>
    FluorescentMagneticParticle,
}

/// <summary>The steps of a test. Penetrant: cleaned to final look. Magnetic particle: field checked to demagnetised.</summary>
public enum TestStep
{
    /// <summary>Cleaned; one later in the same test begins it again.</summary>
    Cleaned,

    /// <summary>Dry.</summary>
    Dried,

    /// <summary>Penetrant put on; the dwell begins.</summary>
    PenetrantOn,

    /// <summary>Excess penetrant taken off; the dwell ends.</summary>
    Removed,

    /// <summary>Dry again.</summary>
    DriedAgain,

    /// <summary>Developer on; development begins.</summary>
    DeveloperOn,

    /// <summary>Looked at while the developer dried.</summary>
    FirstLook,

    /// <summary>Looked at after development.</summary>
    FinalLook,

    /// <summary>Field indicator laid on and seen to show the field.</summary>
    FieldChecked,

    /// <summary>Magnetised in one direction, particles on, looked at.</summary>
    MagnetisedOnce,

    /// <summary>Magnetised across the first direction, particles on, looked at.</summary>
    MagnetisedAcross,

    /// <summary>Demagnetised.</summary>
    Demagnetised,

    /// <summary>Cleaned up and protected.</summary>
    CleanedUp,
}

/// <summary>Places on the shaft that are tested, those that weigh most first.</summary>
public enum Place
{
    /// <summary>The butt weld and the bar beside it.</summary>
    ButtWeld,

    /// <summary>The sleeve's seam and toe at its inner end.</summary>
    SleeveInnerEnd,

    /// <summary>The sleeve's seam and toe at its outer end.</summary>
    SleeveOuterEnd,

    /// <summary>The inner spline.</summary>
    InnerSpline,

    /// <summary>The outer spline.</summary>
    OuterSpline,

    /// <summary>Plain bar elsewhere.</summary>
    Bar,
}

/// <summary>A step that was done, and when.</summary>
public sealed record StepDone : IEntry
{
    /// <inheritdoc/>
    public string Id { get; init; } = "";

    /// <summary>Which step.</summary>
    public TestStep Step { get; init; }

    /// <summary>When, with the offset of the clock that said so.</summary>
    public DateTimeOffset At { get; init; }

    /// <inheritdoc/>
    public string Corrects { get; init; } = "";

    /// <inheritdoc/>
    public bool Withdrawn { get; init; }
}

/// <summary>One mark that the test showed, as measured. Its size is that of the bleed-out, not of the flaw.</summary>
public sealed record Indication : IEntry
{
    /// <inheritdoc/>
    public string Id { get; init; } = "";

    /// <summary>Where it is.</summary>
    public Place Place { get; init; }

    /// <summary>Its middle, from the shaft's inner end.</summary>
    public Measured<Distance>? Position { get; init; }

    /// <summary>Angle of its middle round the shaft, from the painted mark.</summary>
    public Measured<Angle>? Angle { get; init; }

    /// <summary>Its length.</summary>
    public Measured<Distance>? Length { get; init; }

    /// <summary>Its width.</summary>
    public Measured<Distance>? Width { get; init; }

    /// <summary>Its direction: 0 along the shaft, 90° round it, positive turning towards larger angles.</summary>
    public Measured<Angle>? Direction { get; init; }

    /// <summary>True when it was recognised as a crack; null when not known.</summary>
    public bool? Crack { get; init; }

    /// <inheritdoc/>
    public string Corrects { get; init; } = "";

    /// <inheritdoc/>
    public bool Withdrawn { get; init; }
}

/// <summary>What was noted about a test. Notes add to each other: of each thing the last note that says it counts.</summary>
public sealed record TestNote : IEntry
{
    /// <inheritdoc/>
    public string Id { get; init; } = "";

    /// <summary>Places that were looked at, all round; empty when this note does not say.</summary>
    public IReadOnlyList<Place> Places { get; init; } = [];

    /// <summary>Shortest dwell the maker of the penetrant asks for.</summary>
    public Measured<Duration>? MakersDwell { get; init; }

    /// <summary>Shortest development the maker asks for.</summary>
    public Measured<Duration>? MakersDevelopment { get; init; }

    /// <summary>Temperature of the part.</summary>
    public Measured<Temperature>? PartTemperature { get; init; }

    /// <summary>White light at the part; for the fluorescent methods the stray light left.</summary>
    public Measured<Illuminance>? Light { get; init; }

    /// <summary>UV-A at the part, for the fluorescent methods.</summary>
    public Measured<Irradiance>? UltraViolet { get; init; }

    /// <summary>Magnetic: angle between the two directions of magnetising.</summary>
    public Measured<Angle>? BetweenDirections { get; init; }

    /// <inheritdoc/>
    public string Corrects { get; init; } = "";

    /// <inheritdoc/>
    public bool Withdrawn { get; init; }
}

/// <summary>A photo of a test. The picture itself lies beside the job, under its hash.</summary>
public sealed record PhotoTaken : IEntry
{
    /// <inheritdoc/>
    public string Id { get; init; } = "";

    /// <summary>SHA-256 of the picture's bytes, 64 small hexadecimal digits: its name, and the proof that it is this one.</summary>
    public string Sha256 { get; init; } = "";

    /// <summary>When it was taken or chosen.</summary>
    public DateTimeOffset At { get; init; }

    /// <inheritdoc/>
    public string Corrects { get; init; } = "";

    /// <inheritdoc/>
    public bool Withdrawn { get; init; }
}

/// <summary>One test: what was noted of it, its steps and what was seen. All of it grows and nothing in it changes.</summary>
public sealed record TestRun : IEntry
{
    /// <inheritdoc/>
    public string Id { get; init; } = "";

    /// <summary>How.</summary>
    public TestMethod Method { get; init; }

    /// <summary>What was noted, in the order written down.</summary>
    public IReadOnlyList<TestNote> Notes { get; init; } = [];

    /// <summary>Steps done, in the order written down.</summary>
    public IReadOnlyList<StepDone> Steps { get; init; } = [];

    /// <summary>Marks seen, in the order written down.</summary>
    public IReadOnlyList<Indication> Indications { get; init; } = [];

    /// <summary>Photos taken, in the order written down. Nothing is judged by them.</summary>
    public IReadOnlyList<PhotoTaken> Photos { get; init; } = [];

    /// <inheritdoc/>
    public string Corrects { get; init; } = "";

    /// <inheritdoc/>
    public bool Withdrawn { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        for (var i = 0; i < Notes.Count; i++)
        {
            var (note, at) = (Notes[i], $"{path}.notes[{i}]");
            check.Range(at, CrackTestFields.MakersDwell, note.MakersDwell);
            check.Range(at, CrackTestFields.MakersDevelopment, note.MakersDevelopment);
            check.Range(at, CrackTestFields.PartTemperature, note.PartTemperature);
            check.Range(at, CrackTestFields.Light, note.Light);
            check.Range(at, CrackTestFields.UltraViolet, note.UltraViolet);
            check.Range(at, CrackTestFields.BetweenDirections, note.BetweenDirections);
        }
        for (var i = 0; i < Indications.Count; i++)
        {
            var (mark, at) = (Indications[i], $"{path}.indications[{i}]");
            check.Range(at, CrackTestFields.Position, mark.Position);
            check.Range(at, CrackTestFields.MarkAngle, mark.Angle);
            check.Range(at, CrackTestFields.Length, mark.Length);
            check.Range(at, CrackTestFields.Width, mark.Width);
            check.Range(at, CrackTestFields.Direction, mark.Direction);
        }
        for (var i = 0; i < Photos.Count; i++)
            check.That(
                Photos[i].Sha256 is { Length: 64 } name && name.All(char.IsAsciiHexDigitLower),
                $"{path}.photos[{i}].sha256",
                Photos[i].Sha256,
                "is not the name of a photo",
                "the SHA-256 of its bytes, 64 small hexadecimal digits"
            );
    }
}
