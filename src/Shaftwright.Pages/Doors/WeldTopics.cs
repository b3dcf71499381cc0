using System.Globalization;
using Shaftwright.Cut;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Weld;

namespace Shaftwright.Pages.Doors;

/// <summary>The pages of the weld. Each is opened from its operation on the route card.</summary>
public static partial class WeldTopics
{
    private static readonly Option[] s_families =
    [
        new("", "Don't know", "then what the donors say counts"),
        new(nameof(SteelFamily.MediumCarbon), "Plain medium carbon", "1040 to 1050, C45, EN8"),
        new(nameof(SteelFamily.CarbonManganese), "Carbon-manganese", "1541"),
        new(nameof(SteelFamily.ChromiumMolybdenum), "Chromium-molybdenum", "4140, 42CrMo4"),
        new(nameof(SteelFamily.NickelChromiumMolybdenum), "Nickel-chromium-molybdenum", "4340"),
        new(nameof(SteelFamily.LowCarbon), "Low carbon", "mild steel"),
    ];

    private static readonly Option[] s_processes =
    [
        new("", "Don't know"),
        new(nameof(ArcProcess.Tig), "TIG"),
        new(nameof(ArcProcess.Mag), "MIG or MAG"),
        new(nameof(ArcProcess.Mma), "Stick"),
    ];

    private static readonly Option[] s_hydrogen =
    [
        new("", "Don't know"),
        new(nameof(HydrogenScale.E), "E", "3 ml/100 g and less, proven"),
        new(nameof(HydrogenScale.D), "D", "up to 5: clean solid wire"),
        new(nameof(HydrogenScale.C), "C", "up to 10"),
        new(nameof(HydrogenScale.B), "B", "up to 15"),
        new(nameof(HydrogenScale.A), "A", "more than 15"),
    ];

    private static readonly Option[] s_fillers =
    [
        new("", "Don't know"),
        new(nameof(FillerKind.Ferritic), "Steel", "plain or low-alloy"),
        new(nameof(FillerKind.Austenitic), "Stainless or nickel", "no magnetic test there"),
    ];

    private static readonly Option[] s_ways =
    [
        new("", "Not decided"),
        new(nameof(PackingWay.BothFaces), "Both faces"),
        new(nameof(PackingWay.UnderBlock), "Under the block"),
        new(nameof(PackingWay.OneFace), "One face, block moved"),
    ];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<WeldTopic> All { get; } =
    [
        Groove(),
        Vees(),
        Preheat(),
        Sample(),
        Tacks(),
        Beads(),
        Temper(),
        Sleeve(),
        Look(),
        LookAtEnds(),
    ];

    /// <summary>One of them; the first when there is none of that name.</summary>
    public static WeldTopic Of(string? slug) => All.FirstOrDefault(t => t.Slug == slug) ?? All[0];

    internal static Job Sampled(Job j, Func<WeldSample, WeldSample> f) =>
        j with
        {
            Strength = (j.Strength ?? new()) with { Sample = f(j.Strength?.Sample ?? new()) },
        };

    internal static Job Welded(Job j, Func<WeldInput, WeldInput> f) =>
        j with
        {
            Weld = f(j.Weld ?? new()),
        };

    private static Job Prepared(Job j, Func<Preparation, Preparation> f) =>
        Welded(j, w => w with { Preparation = f(w.Preparation ?? new()) });

    private static Job Filled(Job j, Func<Filler, Filler> f) =>
        Welded(j, w => w with { Filler = f(w.Filler ?? new()) });

    private static Job Arced(Job j, Func<ArcInput, ArcInput> f) =>
        Welded(j, w => w with { Arc = f(w.Arc ?? new()) });

    private static Job Heated(Job j, Func<HeatPlan, HeatPlan> f) =>
        Welded(j, w => w with { Heat = f(w.Heat ?? new()) });

    private static string Name<E>(E? value, E silent)
        where E : struct, Enum =>
        value is { } v && !EqualityComparer<E>.Default.Equals(v, silent) ? v.ToString() : "";

    private static E Pick<E>(string text)
        where E : struct, Enum => Enum.TryParse<E>(text, out var picked) ? picked : default;

    private static string Between(int a, int b) =>
        a == b
            ? a.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{a} to {b}");

    private static Sentence Bearings(IEnumerable<Bead> beads)
    {
        var all = Sentence.Plain("");
        var first = true;
        foreach (var b in beads)
        {
            all = first ? (Sentence)$"{Say.Bearing(b.At)}" : $"{all}, {Say.Bearing(b.At)}";
            first = false;
        }
        return all;
    }

    private static Sentence Says(PackingPlan plan, PackingWay? way)
    {
        var choice =
            plan.Choices.FirstOrDefault(c => c.Way == way)
            ?? plan.Choices.Single(c => c.Way == PackingWay.BothFaces);
        return choice.Way switch
        {
            PackingWay.UnderBlock => $"{Say.Fine(choice.Pack)} under the whole block",
            PackingWay.OneFace =>
                $"{Say.Fine(choice.Pack)} on one face, the block {Say.Fine(choice.BlockAside)} towards the pack",
            _ => $"{Say.Fine(choice.Pack)} on each face",
        };
    }
}
