using System.Globalization;
using Shaftwright.Cut;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Weld;

/// <summary>The groove in numbers.</summary>
public sealed record PreparationNumbers
{
    /// <summary>Depth of the groove on the smaller piece, mm, radially.</summary>
    public required double Depth { get; init; }

    /// <summary>Bevel of each end, rad.</summary>
    public required double Bevel { get; init; }

    /// <summary>Root gap, mm.</summary>
    public required double Gap { get; init; }

    /// <summary>Flat left in the middle, mm across.</summary>
    public required double Flat { get; init; }

    /// <summary>Height of the cap, mm.</summary>
    public required double Cap { get; init; }

    /// <summary>Diameter at the weld, mm: of the smaller piece.</summary>
    public required double Diameter { get; init; }

    /// <summary>Metal to be filled in, mm³.</summary>
    public required double Volume { get; init; }

    /// <summary>Cross-section of the groove with its cap, mm².</summary>
    public required double Area { get; init; }

    /// <summary>Cross-section of one bead, mm².</summary>
    public required Band Bead { get; init; }

    /// <summary>Fewest runs.</summary>
    public required int FewestRuns { get; init; }

    /// <summary>Most runs.</summary>
    public required int MostRuns { get; init; }

    /// <summary>Rod used up, mm; null when its diameter is not known.</summary>
    public Band? FillerLength { get; init; }

    /// <summary>Share of a solid bar's elastic torque that a ring fused as deep as the groove carries, 0 to 1.</summary>
    public required double ShareOfGroove { get; init; }

    /// <summary>Share that the fusion depth carries which the strength counts, 0 to 1.</summary>
    public required double ShareCounted { get; init; }

    /// <summary>How much the weld draws the ends together, mm, from the least of three estimates to the most.</summary>
    public required Band Shrinkage { get; init; }

    /// <summary>Overall length to set in the vee before tacking, mm, so that it comes out as aimed at; null when no length is aimed at.</summary>
    public Band? SetOverall { get; init; }

    /// <summary>TIG current by the rule of thumb for the root run, A; null for another process.</summary>
    public double? TigAmps { get; init; }

    /// <summary>What to know of it.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];
}

/// <summary>Volume, runs, rod, share of torque and shrinkage of the groove that was ground.</summary>
/// <remarks>Two pieces of different diameter share one groove: each gives half of the groove it would make with itself, which is
/// exact for the two bevels and the gap (Pappus on each half). Shrinkage: Blodgett 0.10·A/t, Spraragen and Ettinger
/// 0.2·A/t + 0.05·g (from memory), and 1.5 to 3 mm for a 60° V butt, which its own source calls hardly predictable (TWI).</remarks>
internal static class PreparationSolver
{
    private const string Practice = "common practice, no source";

    /// <summary>Shrinkage of a 60° V butt by a welding institute's rule, mm.</summary>
    private static readonly Band s_institute = new(1.5, 3);

    public static (PreparationNumbers? Numbers, IReadOnlyList<Finding> Findings) Solve(
        WeldInput weld,
        WeldAround around
    )
    {
        var findings = new List<Finding>();
        void Add(Severity severity, string code, Sentence text, Sentence action, string source) =>
            findings.Add(new(severity, Stage.Weld, code, text, action, source));

        var preparation = weld.Preparation ?? new Preparation();
        var inner = around.Diameter(weld, ShaftEnd.Inner);
        var outer = around.Diameter(weld, ShaftEnd.Outer);
        if ((inner ?? outer) is not { } one || (outer ?? inner) is not { } two)
        {
            Add(
                Severity.Note,
                "preparation-diameter",
                $"The diameters at the weld are not known.",
                $"Measure both ends, or settle the cut.",
                Practice
            );
            return (null, findings);
        }
        if (preparation.Flat is not { } flat)
        {
            Add(
                Severity.Note,
                "preparation-unknown",
                $"How far the bevel goes in is not known: neither volume, runs nor shrinkage can be told.",
                $"Grind both ends alike, leave a flat in the middle you can measure across, and type it.",
                Practice
            );
            return (null, findings);
        }
        var small = Math.Min(one, two);
        if (flat.Value >= small)
        {
            Add(
                Severity.Caution,
                "no-groove",
                $"A flat of {Say.Length(flat.Value)} across a bar of {Say.Length(small)} leaves no groove: the weld would sit on the surface.",
                $"Grind a bevel, or measure the flat again.",
                Practice
            );
            return (null, findings);
        }
        var bevel = preparation.Bevel?.Value ?? PreparationFields.UsualBevel;
        var gap = around.CutInput?.RootGap?.Value ?? CutFields.UsualRootGap;
        var cap = preparation.Cap?.Value ?? 0;
        GirthGroove Groove(double d) => new(d, (d - flat.Value) / 2, bevel, gap, cap);
        var (a, b) = (Groove(one), Groove(two));
        var volume = (a.Volume + b.Volume) / 2;
        var area = (a.Area + b.Area) / 2;
        var depth = (small - flat.Value) / 2;
        var filler = weld.Filler ?? new Filler();
        var bead = Bead(filler);
        var fewest = (int)Math.Ceiling(area / bead.High - 1e-9);
        var most = (int)Math.Ceiling(area / bead.Low - 1e-9);
        var fusion = FusionDepths
            .Of(around.Strength ?? new StrengthInput(), small / 2, small / 2)
            .Low;
        var both = Groove(small).Shrinkage;
        var v60 = Math.Abs(2 * bevel - Math.PI / 3) < 10 * Math.PI / 180;
        var shrinkage = v60
            ? new Band(Math.Min(both.Low, s_institute.Low), Math.Max(both.High, s_institute.High))
            : both;
        var numbers = new PreparationNumbers
        {
            Depth = depth,
            Bevel = bevel,
            Gap = gap,
            Flat = flat.Value,
            Cap = cap,
            Diameter = small,
            Volume = volume,
            Area = area,
            Bead = bead,
            FewestRuns = fewest,
            MostRuns = most,
            FillerLength = filler.Diameter is { } rod
                ? new Band(
                    volume
                        / (Math.PI * rod.Value * rod.Value / 4 * PreparationFields.UsualYield.High),
                    volume
                        / (Math.PI * rod.Value * rod.Value / 4 * PreparationFields.UsualYield.Low)
                )
                : null,
            ShareOfGroove = GirthGroove.FusedShare(depth, small),
            ShareCounted = GirthGroove.FusedShare(fusion, small),
            Shrinkage = shrinkage,
            SetOverall = around.Cut?.Overall is { } overall
                ? new(overall + shrinkage.Low, overall + shrinkage.High)
                : null,
            TigAmps =
                weld.Arc?.Process == ArcProcess.Tig
                    ? TigCurrent.Amps(Math.Min(depth, TigCurrent.Most))
                    : null,
        };
        if (cap > 0)
            Add(
                Severity.Note,
                "cap-width",
                $"The cap, {Say.Length(cap)} high, is counted as a parabola as wide as the groove's mouth, {Say.Length((a.CapWidth + b.CapWidth) / 2)}. Every {Say.Length(1)} that it laps over both edges adds {((a.LapVolume + b.LapVolume) / 2).ToString("F0", CultureInfo.InvariantCulture)} mm³ of metal.",
                $"Have more rod at hand than that says, and measure the cap on the sample.",
                "own derivation by Pappus; the width is an assumption, common practice, no source"
            );
        if (preparation.Bevel is null)
            Add(
                Severity.Note,
                "bevel-assumed",
                $"A bevel of {Say.Angle(bevel)} on each end is taken, {Say.Angle(2 * bevel)} in all.",
                $"Measure it and type it: volume and shrinkage go with it.",
                Practice
            );
        Add(
            fusion < depth ? Severity.Caution : Severity.Note,
            "share-of-torque",
            $"Fused as deep as the groove, the ring carries {Say.Share(numbers.ShareOfGroove)} of what solid bar would; as deep as the strength counts ({Say.Length(fusion)}), {Say.Share(numbers.ShareCounted)}.",
            fusion < depth
                ? (Sentence)
                    $"A groove is not yet fusion: cut and etch a sample, and type how deep it was fused."
                : $"Keep the root clean and open, so that the shaft is fused as the sample was.",
            "own derivation: 1 − (1 − w/R)⁴ of an elastic ring"
        );
        var assumed = around.CutInput?.Shrinkage?.Value ?? CutFields.UsualShrinkage;
        var give = around.CutInput?.Shrinkage?.PlusMinus ?? CutFields.Shrinkage.UsualPlusMinus;
        var meets = assumed + give >= shrinkage.Low && assumed - give <= shrinkage.High;
        Sentence set = numbers.SetOverall is { } length
            ? (Sentence)
                $"Set {HeatAdvice.To(length, Say.Length)} overall in the vee, tack, measure again, and set the rest by the gap."
            : $"Set the length at fit-up, tack, and measure again.";
        Add(
            meets ? Severity.Note : Severity.Caution,
            "shrinkage",
            $"This groove draws the ends together by {HeatAdvice.To(shrinkage, Say.Length)}; the cut counts {Say.Length(assumed)}.",
            meets
                ? set
                : (Sentence)
                    $"{set} Type what the sample drew as the cut's shrinkage before you cut.",
            "0.10·A/t (Blodgett, quoted), 0.2·A/t + 0.05·g (from memory), 1.5–3 mm for a 60° V butt (TWI, which calls it hardly predictable)"
        );
        if (numbers.TigAmps is { } amps)
            Current(numbers, amps, weld.Arc!, Add);
        return (numbers with { Findings = findings }, findings);
    }

    private static void Current(
        PreparationNumbers n,
        double amps,
        ArcInput arc,
        Action<Severity, string, Sentence, Sentence, string> add
    )
    {
        Sentence typed = arc.Amps is { } set
            ? (Sentence)$" You set {Say.Current(set.Value)}."
            : $"";
        Sentence rule =
            n.Depth > TigCurrent.Most
                ? (Sentence)
                    $"The rule of thumb for TIG, one ampere for each thousandth of an inch, ends at about {Say.Length(TigCurrent.Most)}, where it says {Say.Current(amps)}; this groove is {Say.Length(n.Depth)} deep and takes several runs."
                : $"The rule of thumb for TIG, one ampere for each thousandth of an inch, says {Say.Current(amps)} for {Say.Length(n.Depth)}, which is at the top of what charts give.";
        add(
            Severity.Note,
            "tig-current",
            $"{rule}{typed}",
            $"Settle it on the sample: the etched depth decides, not the rule.",
            "welding-supply charts; a workshop chart gives 80–110 A at 3 mm"
        );
    }

    private static Band Bead(Filler filler)
    {
        if (filler is not { Diameter: { } d, RodPerBead: { } feed })
            return PreparationFields.UsualBead;
        var a = feed.PlusMinus ?? PreparationFields.RodPerBead.UsualPlusMinus;
        var rod = Math.PI * d.Value * d.Value / 4;
        return new(rod * Math.Max(0.1, feed.Value - a), rod * (feed.Value + a));
    }

    internal static string Count(int fewest, int most) =>
        fewest == most
            ? fewest.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{fewest} to {most}");
}
