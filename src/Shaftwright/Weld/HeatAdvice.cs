using System.Globalization;
using Shaftwright.Cut;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>What the heat of the weld says beside its numbers, by the operation it belongs to.</summary>
internal sealed class HeatAdvice
{
    private const string Practice = "common practice, no source";
    private const string Formula =
        "EN 1011-2:2001, Annex C, C.3 (from memory; validity limits from memory)";
    private const string Handbooks = "arc-welding handbooks (from memory)";

    /// <summary>Hardness beside a weld from which hydrogen cracks are likely without control, HV. Common practice, no source.</summary>
    public const double Brittle = 350;

    public List<Finding> OfPreheat { get; } = [];
    public List<Finding> OfWelding { get; } = [];
    public List<Finding> OfTempering { get; } = [];

    public void Preheat(
        HeatNumbers n,
        SteelGuess inner,
        SteelGuess outer,
        HeatPlan heat,
        ArcInput arc,
        Filler filler
    )
    {
        var alike = inner.Words == outer.Words && inner.CarbonEquivalent == outer.CarbonEquivalent;
        foreach (
            var (end, steel) in new[]
            {
                (alike ? "each" : "the inner-end", inner),
                ("the outer-end", outer),
            }.Take(alike ? 1 : 2)
        )
        {
            if (steel.IsGuess && steel.Candidates.Count > 1)
                Add(
                    OfPreheat,
                    Severity.Caution,
                    "steel-guessed",
                    $"The steel of {end} piece is {steel.Words}: carbon equivalent {To(steel.CarbonEquivalent, Say.Content)}. The most demanding steel it can be counts.",
                    $"Have an offcut analysed, or ask the part's maker. A plainer steel needs less preheat; treat it as hardenable until you know.",
                    "ranges of listed shaft steels, docs/weld.md"
                );
        }
        foreach (
            var (end, against) in new[]
            {
                ("inner-end", inner.Against),
                ("outer-end", outer.Against),
            }
        )
        {
            if (against is not null)
                Add(
                    OfPreheat,
                    Severity.Caution,
                    "low-carbon-doubtful",
                    $"The {end} piece is said to be low-carbon steel, but {against}. Taken for low-carbon, a shaft steel cracks beside the weld.",
                    $"Have an offcut analysed and type its carbon. Until then weld it as a steel that hardens: preheat, cool slowly, temper. A spark test beside a known piece tells the two apart roughly.",
                    Practice
                );
        }
        if (n.Preheat.Low > n.InterpassLimit - HeatSolver.Clear)
            Add(
                OfPreheat,
                Severity.Stop,
                "preheat-over-temper",
                $"The handbooks ask for {To(n.Preheat, Say.Temperature)}, but a piece tempered at so little may see {Say.Temperature(n.InterpassLimit)} at most: both cannot be kept.",
                $"Do not weld this bar as it is. Take another donor, or have the whole shaft hardened and tempered again by those who can.",
                Handbooks
            );
        if (n.Diameter is null)
            Add(
                OfPreheat,
                Severity.Note,
                "weld-diameter-missing",
                $"The diameter at the weld is not known, so the formula, the cooling and the warming of the bar are not worked out.",
                $"Measure both ends, or settle the cut.",
                Practice
            );
        else if (n.MethodBLimits.Count > 0)
            Add(
                OfPreheat,
                Severity.Caution,
                "preheat-extrapolated",
                $"The formula (EN 1011-2 method B) says {Asks(n.MethodB)}. It does not hold here: {string.Join("; ", n.MethodBLimits)}.",
                $"Go by the handbook band, {To(n.Preheat, Say.Temperature)}, and prove it on a sample of the same offcuts.",
                Formula
            );
        else
            Add(
                OfPreheat,
                Severity.Note,
                "preheat-formula",
                $"The formula (EN 1011-2 method B) says {Asks(n.MethodB)}, inside its limits.",
                $"Take the higher of it and the handbook band.",
                Formula
            );
        if (arc.Hydrogen == HydrogenScale.Unknown)
            Add(
                OfPreheat,
                Severity.Note,
                "hydrogen-assumed",
                $"How much hydrogen the filler brings is not known: {OneDecimal(n.Hydrogen.Low)} to {OneDecimal(n.Hydrogen.High)} ml/100 g is taken.",
                arc.Process is ArcProcess.Tig or ArcProcess.Mag
                    ? (Sentence)
                        $"Clean, dry wire from a closed packet is scale D. Wipe rod and joint bright."
                    : $"Use TIG or solid wire, or basic electrodes dried as their packet says. No cellulosic or rutile electrodes on a shaft.",
                "EN 1011-2:2001, Table C.2 (public restatement)"
            );
        if (filler.Kind == FillerKind.Austenitic)
            Add(
                OfPreheat,
                Severity.Caution,
                "austenitic-filler",
                $"An austenitic filler (stainless, nickel) holds hydrogen and stays soft, but it rules out magnetic crack testing there, its strength is its own and not the bar's, and tempering can make its border brittle.",
                $"Test by penetrant only, judge the ring by that filler's strength, and keep the preheat for the bar's sake.",
                Practice
            );
        if (heat.Preheat is { } chosen)
        {
            if (chosen.Value < n.Preheat.Low - 0.5)
                Add(
                    OfPreheat,
                    Severity.Caution,
                    "preheat-low",
                    $"{Say.Temperature(chosen.Value)} is under the handbooks' {To(n.Preheat, Say.Temperature)}.",
                    $"Heat to at least {Say.Temperature(n.Preheat.Low)}, right through the bar, or prove the lower one on a sample.",
                    Handbooks
                );
            if (chosen.Value > n.InterpassLimit)
                Add(
                    OfPreheat,
                    Severity.Caution,
                    "preheat-high",
                    $"{Say.Temperature(chosen.Value)} is over the highest temperature between runs, {Say.Temperature(n.InterpassLimit)}.",
                    $"Stay under it: what is gained against cracking is lost in hardness and in the parts beside.",
                    Handbooks
                );
        }
    }

    public void Places(HeatNumbers n)
    {
        var hot = n.Places.Where(p => p.Comes.High > p.Allowed).ToList();
        if (hot.Count > 0)
            Add(
                OfPreheat,
                Severity.Caution,
                "heat-reaches",
                $"If preheat and welding last, the heat can bring {List(hot, p => p.Comes)}.",
                $"Strip joints and boots first. Heat briskly and over a short length, wrap wet cloth between, and touch a temperature crayon to each of these places.",
                "steady conduction along a bar, docs/weld.md; limits common practice, no source"
            );
    }

    public void Welding(HeatNumbers n, HeatPlan heat, WeldAround around)
    {
        if (!n.HeatInputKnown)
            Add(
                OfWelding,
                Severity.Note,
                "heat-input-assumed",
                $"Voltage, current and speed are not all known: {Two(n.HeatInput.Low)} to {Two(n.HeatInput.High)} kJ/mm of heat input is taken.",
                $"Read the meter and time one lap on the sample, and type them in.",
                Practice
            );
        else
            Add(
                OfWelding,
                Severity.Note,
                "heat-input",
                $"Heat input {Two(n.HeatInput.Low)} to {Two(n.HeatInput.High)} kJ/mm; arc energy {Two(n.ArcEnergy!.Value)} kJ/mm, which is the same without the efficiency of the process.",
                $"See which of the two a procedure quotes before you compare.",
                "EN 1011-1, Table 1 (as listed in a steelmaker's welding guide)"
            );
        if (n is { Dueren: { } duren, Yurioka: { } yurioka, Cooling: { } t })
        {
            var low = Math.Min(duren.Low, yurioka.Low);
            var high = Math.Max(duren.High, yurioka.High);
            Add(
                OfWelding,
                high > Brittle ? Severity.Caution : Severity.Note,
                "hardness-as-welded",
                $"Beside the weld, before tempering: {Say.Vickers(low)} to {Say.Vickers(high)} (one method says {To(duren, Say.Vickers)}, the other {To(yurioka, Say.Vickers)}), cooling from 800 to 500 °C in {OneDecimal(t.Low)} to {OneDecimal(t.High)} s.",
                high > Brittle
                    ? (Sentence)
                        $"Over about {Say.Vickers(Brittle)} to 400 it can crack from hydrogen, also days later: preheat, cool slowly, temper. Plate formulas on a bar: a hardness row across a sample is better than both."
                    : $"A hardness row across a sample is better than both formulas.",
                "EN 1011-2:2001, Annex D (public restatement); Düren; Yurioka et al. 1987 (coefficients from memory); no method is good to better than some 28 HV (Nicholas and Abson, 2008)"
            );
        }
        if (n is { LapWarming: { } lap, BeadsInOneGo: { } beads })
            Add(
                OfWelding,
                Severity.Caution,
                "lap-warms",
                $"One lap warms the heated bar by {Kelvin(lap)}; between runs it may be at most {Say.Temperature(n.InterpassLimit)}.",
                beads == 0
                    ? (Sentence)
                        $"Less than a quarter lap fits in one go. Measure before every bead, and wait."
                    : $"About {beads} quarter {(beads == 1 ? "bead" : "beads")} in one go from the middle of the preheat, then measure and wait. Never quench it.",
                "own derivation: the lap's heat into the heated length of bar, nothing lost; limit: "
                    + Handbooks
            );
        if (heat.Interpass is { } read && read.Value > n.InterpassLimit)
            Add(
                OfWelding,
                Severity.Caution,
                "interpass-over",
                $"{Say.Temperature(read.Value)} was read between runs, over {Say.Temperature(n.InterpassLimit)}.",
                $"Count the bar beside the weld as softer than planned, and let the sample or a hardness reading say how much.",
                Handbooks
            );
        if (Math.Max(heat.Interpass?.Value ?? 0, heat.Preheat?.Value ?? 0) > CoolingTime.Doubtful)
            Add(
                OfWelding,
                Severity.Note,
                "cooling-doubtful",
                $"Above about {Say.Temperature(CoolingTime.Doubtful)} the formulas of cooling are doubtful; at 500 °C they have no answer.",
                $"Do not read the hardness from them.",
                "EN 1011-2:2001, Annex D (public restatement)"
            );
        Softened(n, around);
        Add(
            OfWelding,
            Severity.Note,
            "cool-slowly",
            $"Hydrogen leaves while the bar is warm.",
            $"After the last run hold it at about {Say.Temperature(250)} for two hours if you can, then let it cool wrapped or in dry sand, out of any draught.",
            "welding handbooks (from memory)"
        );
    }

    private void Softened(HeatNumbers n, WeldAround around)
    {
        foreach (var s in n.Softened)
        {
            var end = s.End == ShaftEnd.Inner ? "inner-end" : "outer-end";
            if (s.Measured)
            {
                Add(
                    OfWelding,
                    Severity.Note,
                    "softened-measured",
                    $"On the {end} piece the sample was soft to {Say.Length(s.Length.High)} from the middle of the weld.",
                    around.Cut?.Heat is null
                        ? (Sentence)
                            $"Read farther out, until two readings agree with the bar: then the cut goes by it."
                        : $"The cut goes by the sample already; nothing to type.",
                    "the sample"
                );
                continue;
            }
            var band = around.Cut?.Made?.HeatBand;
            var wider = band is { } b && s.Length.High > b;
            Add(
                OfWelding,
                wider ? Severity.Caution : Severity.Note,
                "softened-length",
                $"On the {end} piece the heat softens {To(s.Length, Say.Length)} from the middle of the weld ({s.How}). The low end is one run on a thick body, the high end a whole lap along the bar.",
                wider
                    ? (Sentence)
                        $"The cut counts {Say.Length(band!.Value)}. Measure the hardness across a sample, or type the high end as the heat band."
                    : $"A hardness row across a sample replaces the estimate.",
                "own derivation from heat conduction, docs/weld.md; threshold from memory"
            );
        }
    }

    public void Tempering(HeatNumbers n, WeldInput weld, WeldAround around)
    {
        Add(
            OfTempering,
            Severity.Note,
            "temper-band",
            $"Temper the weld at {To(n.Temper, Say.Temperature)} for {Say.Time(n.TemperTime)}, before it is pressed.",
            $"Heat no wider than the weld and its heat band, hold by the clock, cool in still air right through. A heat treater's word on your steel goes before this.",
            "data sheet of 42CrMo4 (annealed 600–650 °C, hardened 500–550 °C); 15 °C under the maker's temper: a welding guide; 1 h per 25 mm, at least 1 h: from memory"
        );
        var hot = n.Places.Where(p => p.ComesTempering.High > p.Allowed).ToList();
        if (hot.Count > 0)
            Add(
                OfTempering,
                Severity.Caution,
                "temper-reaches",
                $"Held for an hour, tempering can bring {List(hot, p => p.ComesTempering)}.",
                $"Heat sinks or wet cloth between the weld and these places, a crayon on each, and stop when one melts.",
                "steady conduction along a bar, docs/weld.md; limits common practice, no source"
            );
        if (weld.Heat?.Temper is not { } chosen)
            return;
        foreach (
            var (end, steel) in new[]
            {
                ("inner-end", weld.InnerSteel),
                ("outer-end", weld.OuterSteel),
            }
        )
        {
            if (steel?.TemperedAt is not { } made)
                continue;
            var hours = (weld.Heat.TemperTime?.Value ?? n.TemperTime) / 3600;
            var here = Weld.Tempering.Parameter(chosen.Value, hours);
            // How long the maker tempered is seldom known; an hour is the least that is usual.
            var there = Weld.Tempering.Parameter(made.Value, 1);
            if (here >= there)
                Add(
                    OfTempering,
                    Severity.Caution,
                    "temper-over",
                    $"{Say.Temperature(chosen.Value)} for {Say.Time(hours * 3600)} goes past what the {end} piece was tempered at ({Say.Temperature(made.Value)}, an hour taken): P {Thousands(here)} against {Thousands(there)}. The bar itself gets softer.",
                    $"Temper cooler or shorter: at most {To(n.Temper, Say.Temperature)}.",
                    "Hollomon and Jaffe, Trans. AIME 162, 1945 (constant 20 from memory)"
                );
        }
        if (chosen.Value > 720)
            return;
        if (chosen.Value < n.Temper.Low - 0.5 || chosen.Value > n.Temper.High + 0.5)
            Add(
                OfTempering,
                Severity.Note,
                "temper-outside",
                $"{Say.Temperature(chosen.Value)} is outside {To(n.Temper, Say.Temperature)}.",
                chosen.Value < n.Temper.Low
                    ? (Sentence)
                        $"Cooler tempers less: a hardness reading must show that the weld came down."
                    : $"Hotter softens the bar beside the weld: read its hardness after.",
                "data sheet of 42CrMo4"
            );
    }

    private static Sentence Asks(Band celsius) =>
        celsius.High < BarHeat.Workshop ? (Sentence)$"no preheat"
        : celsius.Low < BarHeat.Workshop ? $"none to {Say.Temperature(celsius.High)}"
        : To(celsius, Say.Temperature);

    /// <summary>The hottest place of each kind: a list of six is not read.</summary>
    private static Sentence List(List<HotPlace> places, Func<HotPlace, Band> of)
    {
        var all = Sentence.Plain("");
        foreach (var kind in places.GroupBy(p => p.Words))
        {
            var p = kind.MaxBy(one => of(one).High)!;
            if (p.Words != places[0].Words)
                all.AppendLiteral("; ");
            all.AppendFormatted(
                (Sentence)
                    $"the {(p.End == ShaftEnd.Inner ? "inner" : "outer")} {p.Words} to {Say.Temperature(of(p).High)} (at most {Say.Temperature(p.Allowed)})"
            );
        }
        return all;
    }

    /// <summary>A range as one would say it; one number when both ends read alike.</summary>
    internal static Sentence To(Band band, Func<double, Shown> shown) =>
        shown(band.Low).ToString() == shown(band.High).ToString()
            ? (Sentence)$"{shown(band.High)}"
            : $"{shown(band.Low)} to {shown(band.High)}";

    private static string Kelvin(Band band) =>
        string.Create(CultureInfo.InvariantCulture, $"{band.Low:0} to {band.High:0} °C");

    private static string OneDecimal(double x) => x.ToString("0.0", CultureInfo.InvariantCulture);

    private static string Two(double x) => x.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Thousands(double x) => x.ToString("0", CultureInfo.InvariantCulture);

    private static void Add(
        List<Finding> to,
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => to.Add(new Finding(severity, Stage.Weld, code, text, action, source));
}
