using System.Globalization;
using Shaftwright.Car;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Strength;

/// <summary>What the stage says.</summary>
internal sealed class StrengthFindings(List<Finding> findings)
{
    private const string Steels =
        "steel ranges of docs/strength.md (Fett 2009 from SAE J413; EN 10083-3 data sheets; some from memory)";
    private const string Practice = "common practice, no source";

    public void Weakest(SectionMargin s)
    {
        Sentence margin = s.Margin is { } m
            ? (Sentence)$", {Factors(m)} times the torque in the shaft"
            : $"";
        Add(
            Severity.Note,
            "weakest-place",
            $"The weakest place is the {Where(s)}, {Say.Length(s.Diameter)} thick, {Say.Length(s.At)} from the inner end. It first yields at {Say.Torque(s.YieldTorque.Low)} to {Say.Torque(s.YieldTorque.High)}{margin}.",
            $"Ask whether that is where you want it to fail first: a place you can see and check beats one under a sleeve.",
            Steels
        );
    }

    public void Margins(IReadOnlyList<SectionMargin> sections, DonorsResult donors)
    {
        var fails = sections.Where(s => s.Margin is { High: < 1 }).ToList();
        var may = sections.Where(s => s.Margin is { Low: < 1, High: >= 1 }).ToList();
        if (fails.Count > 0)
            Add(
                Severity.Stop,
                "yields",
                $"Even with the strongest steel it can be, this yields at the torque in the shaft: {List(fails)}.",
                $"Use thicker or harder donors there, move the cut so that the heat falls on thicker bar, fuse deeper and prove it on a sample, or take torque out of the shaft.",
                Steels
            );
        if (may.Count > 0)
            Add(
                Severity.Caution,
                "may-yield",
                $"If the steel is at the low end of what it can be, this yields: {List(may)}.",
                Settle(may, donors),
                Steels
            );
    }

    public void NoTorque() =>
        Add(
            Severity.Caution,
            "torque-unknown",
            $"The torque in the shaft is not known, so there are yield torques here but no margins.",
            $"Describe the car: engine, ratios, tyres.",
            Practice
        );

    public void Yardstick(CarResult? car)
    {
        if (car?.ThisCar is null)
            return;
        if (car is { NewOverInnerDonor: null, NewOverOuterDonor: null })
            Add(
                Severity.Note,
                "no-yardstick",
                $"Neither donor's own car is described. Where the steel is a guess, comparing the new torque with the one the part was made for is the most believable check there is.",
                $"Describe the cars the donors came from: torque, lowest gear, final drive, tyres.",
                Practice
            );
        foreach (
            var (end, ratio) in new[]
            {
                ("inner-end", car.NewOverInnerDonor),
                ("outer-end", car.NewOverOuterDonor),
            }
        )
        {
            if (ratio is not { High: > 1 } r)
                continue;
            Sentence how =
                r.Low > 1 ? (Sentence)$"{Factors(r)} times" : $"up to {Say.Factor(r.High)} times";
            Add(
                Severity.Caution,
                "more-than-donor",
                $"The {end} piece gets {how} the torque that its own car could put into it.",
                $"Its spline, stub and joint are then used beyond what their maker had in mind. Look for a donor from a stronger car, or shorten the time between crack tests.",
                "the car stage's sums for both cars"
            );
        }
    }

    public void Fusion(StrengthInput strength)
    {
        if (strength is { FusionDepth: not null, FusionFromSample: true })
            return;
        if (SampleReadings.Of(strength.Sample) is { Fusion: not null })
            return;
        Sentence taken = strength.FusionDepth is null
            ? (Sentence)
                $"How deep the weld fuses is not known: somewhere from {Say.Share(StrengthFields.LeastFusion)} to {Say.Share(StrengthFields.MostFusion)} of the radius, and the low end counts."
            : $"The fusion depth is a guess until it is seen on a sample, so its low end counts.";
        Add(
            Severity.Note,
            "fusion-guessed",
            taken,
            $"Weld a sample from the offcuts with the same set-up, cut it through, etch it and measure the fused depth.",
            Practice
        );
    }

    /// <summary>That the unfused core is a crack, and how hard it is worked.</summary>
    /// <param name="root">The core; null where there is none to speak of.</param>
    /// <param name="weld">The weld as a section, with its sleeve where that counts.</param>
    public void Root(UnfusedRoot? root, SectionMargin? weld)
    {
        if (root is null)
            return;
        if (root.MayBeAll)
        {
            // Where even the best that the numbers allow does not hold, there is nothing to be careful with.
            var never = weld is { YieldTorque.High: <= 0 } or { Margin.High: < 1 };
            Add(
                never ? Severity.Stop : Severity.Caution,
                "nothing-fused",
                $"By these numbers the weld may have fused nothing: the depth, less what it can be off, is no more than 0. Up to {Say.Diameter(root.Diameter.High)} across would be one crack, and no torque is too small to work it.",
                $"Fuse deeper, or measure the depth more closely on a sample cut through and etched. Until then count on no weld there.",
                "the depth and its ±; own field of the torsion, docs/torsion-field.md"
            );
            return;
        }
        if (root.Intensity is not { } intensity)
        {
            Add(
                Severity.Caution,
                "root-unfused",
                $"The weld leaves a core of {Say.Diameter(root.Diameter.Low)} to {Say.Diameter(root.Diameter.High)} unfused. It is a crack; how hard its edge is worked is not known without the torque in the shaft.",
                $"Describe the car, so that the crack can be judged. Nobody can see this place from outside.",
                "own field of the torsion, docs/torsion-field.md"
            );
            return;
        }
        Sentence worked =
            $"The weld leaves a core of {Say.Diameter(root.Diameter.Low)} to {Say.Diameter(root.Diameter.High)} unfused. It is a crack, and the torque in the shaft works its edge at {Say.StressIntensity(intensity.Low)} to {Say.StressIntensity(intensity.High)}.";
        Sentence grows =
            $"Cracks in steel begin to grow somewhere from {Say.StressIntensity(StrengthFields.LowThreshold)} to {Say.StressIntensity(StrengthFields.HighThreshold)} when the load comes and goes.";
        const string source =
            "own field of the torsion, docs/torsion-field.md; thresholds as in BS 7910, the upper from memory";
        if (intensity.High < StrengthFields.LowThreshold)
            Add(
                Severity.Note,
                "root-rests",
                $"{worked} {grows}",
                $"Keep it so: more torque or a shallower weld changes it.",
                source
            );
        else
            Add(
                Severity.Caution,
                "root-works",
                $"{worked} {grows}",
                $"Fuse deeper and prove it on a sample. Nobody can see this place from outside: retire the shaft by count. A crack in twist turns and rubs, so this is a bound and tells no life.",
                source
            );
    }

    /// <summary>What the sample settled, or why it settles nothing.</summary>
    public void Sample(WeldSample? sample, MadeShaft made, SectionMargin? ring)
    {
        if (sample is null)
            return;
        if (sample.Cracked == true)
        {
            Add(
                Severity.Stop,
                "sample-cracked",
                $"A crack was seen on the etched sample{Of(sample)}.",
                $"Do not weld the shaft this way. Change preheat, filler or steel, and weld a new sample.",
                Practice
            );
            return;
        }
        if (sample.IsAhead)
        {
            Add(
                Severity.Caution,
                "sample-ahead-of-now",
                $"The sample is dated {sample.At?.ToString("d MMM yyyy HH:mm", CultureInfo.InvariantCulture)}, which is still to come: it replaces no guess.",
                $"Correct the date it was measured on.",
                Practice
            );
            return;
        }
        if (!SampleReadings.MayReplace(sample))
        {
            Add(
                Severity.Caution,
                "sample-not-alike",
                $"The sample{Of(sample)} replaces no guess: it has not been said that it is of the same offcuts and was welded as the shaft is.",
                $"Answer both. If one is no, weld another sample.",
                Practice
            );
            return;
        }
        var read = SampleReadings.Of(sample)!;
        if (read.Fusion is { } depth)
        {
            var deeper = ring is not null && depth.Low > ring.Diameter / 2 + FusionDepths.Beyond;
            if (deeper)
                Add(
                    Severity.Caution,
                    "sample-too-deep",
                    $"The sample{Of(sample)} is said to be fused {Say.Length(depth.Low)} deep, more than the bar's half thickness of {Say.Length(ring!.Diameter / 2)}: it counts for no more than the low guess.",
                    $"Measure again, from the surface inwards.",
                    Practice
                );
            else if (read.AllRound)
                Add(
                    Severity.Note,
                    "sample-fusion",
                    $"Fusion depth {Say.Length(depth.Low)} counts: the least of {read.Places} reading(s) on the sample{Of(sample)}, less what the reading can be off.",
                    $"Weld the shaft as the sample was welded, nothing changed.",
                    "the sample"
                );
            if (!read.AllRound)
                Add(
                    Severity.Caution,
                    "sample-few-places",
                    $"Read at {read.Places} place(s) round the sample, not all round: it counts for no more than the low guess{(ring is null ? (Sentence)$"" : $", {Say.Length(StrengthFields.LeastFusion * ring.Diameter / 2)}")}.",
                    $"Cut it again across and along, and read at least {SampleFields.FewestPlaces} places all round, with their angles.",
                    Practice
                );
        }
        foreach (var (inner, end) in new[] { (true, "inner-end"), (false, "outer-end") })
        {
            if (read.Softest(inner) is { } soft)
                Add(
                    Severity.Note,
                    "sample-softened",
                    $"On the {end} side the sample{Of(sample)} is softest at {Say.Vickers(soft.Low)} to {Say.Vickers(soft.High)}; that metal counts in the heat, not the guess.",
                    $"If the shaft is tempered otherwise than the sample, read it again.",
                    "the sample; ASTM E140 Table 1 (from memory), then " + Steels
                );
        }
        if (read.Hardest is { } hard && hard > BrittleSample)
            Add(
                Severity.Caution,
                "sample-hard",
                $"The sample{Of(sample)} reads up to {Say.Vickers(hard)}: a brittle zone where hydrogen cracks begin.",
                $"Preheat hotter, cool slower, temper, and read a new sample. Over about {Say.Vickers(BrittleSample)} is too hard to leave.",
                Practice
            );
    }

    /// <summary>Hardness on a sample that is too hard to leave, HV. Common practice, no source.</summary>
    private const double BrittleSample = 400;

    private static string Of(WeldSample sample) =>
        (
            sample.At is { } at
                ? " of "
                    + at.ToString("d MMMM yyyy", System.Globalization.CultureInfo.InvariantCulture)
                : " (no date)"
        )
        + (
            sample.Photo.Length == 0 ? ", no photo"
            // A hash is known by its first digits; all of it would fill two lines.
            : sample.Photo.Length == 64 ? $", photo {sample.Photo[..8]}"
            : ", photo " + sample.Photo
        );

    /// <summary>What a sleeve earns, and what is still open before it may earn anything.</summary>
    public void Sleeve(
        MadeShaft made,
        SleeveSeams? seams,
        SectionMargin? ring,
        SectionMargin? sleeved
    )
    {
        if (made.SleeveFrom is null)
            return;
        if (sleeved is not null)
        {
            Add(
                Severity.Caution,
                "sleeve-counts",
                $"Every seam of the sleeve stands as closed and tested, so it shares the torque over the butt: {Say.Torque(sleeved.YieldTorque.Low)} to {Say.Torque(sleeved.YieldTorque.High)} at first yield{(ring is null ? (Sentence)$"" : $", against {Say.Torque(ring.YieldTorque.Low)} to {Say.Torque(ring.YieldTorque.High)} alone")}. The bar at both of its ends still takes all of it.",
                $"Seams are fillets with their own notches, and those are not counted. Look at their toes first at every inspection.",
                "own derivation: two tubes twisted alike; sleeve as low-carbon tube, yield 235 to 355 MPa"
            );
            return;
        }
        var open = seams is null ? ["nothing was said of its seams"] : seams.Open;
        Sentence why =
            open.Count == 0
                ? (Sentence)$"its outside diameter is not known, or it adds nothing to the ring"
                : $"{string.Join("; ", open)}";
        Add(
            seams is { Closed: false } or { NoCraterAtToe: false }
                ? Severity.Caution
                : Severity.Note,
            "sleeve-no-credit",
            $"The sleeve earns nothing here ({why}): the full torque runs through the bar at both of its ends, and the butt weld is judged as if it stood alone.",
            $"Judge the shaft by the sections named. A sleeve counts only with every seam closed, clear of starts, stops and craters, vented, closed last and tested.",
            Practice
        );
    }

    public void NotJudged(MadeShaft made)
    {
        var roots = made.Stretches.Count(s => s is { Kind: ZoneKind.Spline, RootDiameter: null });
        var unmeasured = made.Stretches.Count(s => s.Guessed);
        if (roots + unmeasured > 0)
            Add(
                Severity.Caution,
                "not-judged",
                $"Not judged for lack of a diameter: {roots} spline root(s), {unmeasured} other stretch(es). The weakest place named is the weakest of the rest.",
                $"Measure them.",
                Practice
            );
    }

    /// <summary>Once, what this layer is and is not.</summary>
    public void Limits(MadeShaft made, SampleReadings? sample)
    {
        Add(
            Severity.Note,
            "first-yield-only",
            $"These figures are where plain metal first yields under a steady torque. Steps, splines and grooves concentrate stress, and a shaft breaks by fatigue far below first yield if it is loaded often enough; neither is counted here.",
            $"Take a margin of 1 as the edge, not as enough. Inspect on time, and retire the shaft by count. This does not certify a part: the event's rules and a competent person decide.",
            "limits of the method, docs/strength.md"
        );
        if (sample?.Softest(true) is not null && sample.Softest(false) is not null)
            return;
        Add(
            Severity.Note,
            "softened-assumed",
            $"Within {Say.Length(made.HeatBand)} of a weld the metal is taken as soft as normalised or annealed stock, whatever it was before.",
            $"A hardness traverse on the etched sample replaces the guess. A hard reading there instead means a brittle zone: preheat, cool slowly, temper.",
            Practice
        );
    }

    private static Sentence Settle(List<SectionMargin> may, DonorsResult donors)
    {
        var hardness = new List<string>();
        if (donors.InnerEnd?.Steel.CoreHrc is null && may.Exists(s => s.End != ShaftEnd.Outer))
            hardness.Add("inner-end");
        if (donors.OuterEnd?.Steel.CoreHrc is null && may.Exists(s => s.End != ShaftEnd.Inner))
            hardness.Add("outer-end");
        Sentence settle = $"What would settle it:";
        if (hardness.Count > 0)
            settle.AppendLiteral(
                " the hardness of the cut face of the "
                    + string.Join(" and the ", hardness)
                    + " donor;"
            );
        if (may.Exists(s => s.Softened))
            settle.AppendLiteral(
                " an etched sample with hardness readings across weld and heat band;"
            );
        settle.AppendLiteral(" or a stronger section.");
        return settle;
    }

    /// <summary>The worst few by name, the rest by number: a list of ten is not read.</summary>
    private static Sentence List(List<SectionMargin> sections)
    {
        const int Named = 3;
        var all = Sentence.Plain("");
        foreach (var s in sections.OrderBy(s => s.Margin!.Value.Low).Take(Named))
        {
            if (s != sections.MinBy(t => t.Margin!.Value.Low))
                all.AppendLiteral("; ");
            all.AppendFormatted((Sentence)$"{Where(s)}, margin {Factors(s.Margin!.Value)}");
        }
        if (sections.Count > Named)
            all.AppendFormatted((Sentence)$"; and {sections.Count - Named} more");
        return all;
    }

    private static Sentence Factors(Band band) =>
        band.High - band.Low < 0.005
            ? (Sentence)$"{Say.Factor(band.Low)}"
            : $"{Say.Factor(band.Low)} to {Say.Factor(band.High)}";

    private static string Where(SectionMargin s) =>
        s.End switch
        {
            ShaftEnd.Inner => s.Words + " on the inner-end piece",
            ShaftEnd.Outer => s.Words + " on the outer-end piece",
            _ => s.Words,
        };

    private void Add(
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => findings.Add(new(severity, Stage.Strength, code, text, action, source));
}
