using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>What a piece's steel can be: one or more compositions as ranges, kept apart so that no steel is made up of two.</summary>
/// <param name="Candidates">Each steel it can be.</param>
/// <param name="Words">How it is known, as one would say it.</param>
/// <param name="IsGuess">True when nothing but a class, a hardness or nothing at all is known.</param>
/// <param name="Alloyed">True when one of the candidates is a chromium-molybdenum steel.</param>
/// <param name="Handbook">Preheat that arc-welding handbooks give for the most demanding of the candidates, °C.</param>
/// <param name="Against">What the donors stage holds against low-carbon steel that was said at the weld, as one would say it; null
/// when nothing does.</param>
public sealed record SteelGuess(
    IReadOnlyList<CompositionBand> Candidates,
    string Words,
    bool IsGuess,
    bool Alloyed,
    Band Handbook,
    string? Against = null
)
{
    /// <summary>Most carbon that a steel can hold and still not harden beside a weld to speak of, mass %. Common practice, no source.</summary>
    public const double MostLowCarbon = 0.25;

    /// <summary>Whether it can harden beside a weld, so that the weld has to be tempered.</summary>
    public bool Hardens => Carbon.High > MostLowCarbon + 1e-9;

    /// <summary>Carbon equivalent of the International Institute of Welding, mass %.</summary>
    public Band CarbonEquivalent => Of(c => c.CarbonEquivalent);

    /// <summary>CET, mass %.</summary>
    public Band Cet => Of(c => c.Cet);

    /// <summary>Cracking parameter Pcm, mass %.</summary>
    public Band CrackingParameter => Of(c => c.CrackingParameter);

    /// <summary>Carbon, mass %.</summary>
    public Band Carbon => Of(c => c.C);

    /// <summary>Range of a quantity that rises with every element, over all candidates.</summary>
    public Band Of(Func<Composition, double> rising)
    {
        ArgumentNullException.ThrowIfNull(rising);
        var bands = Candidates.Select(c => c.Of(rising)).ToList();
        return new(bands.Min(b => b.Low), bands.Max(b => b.High));
    }

    /// <summary>The limits of the CET formula that it breaks or can break, in words.</summary>
    public IReadOnlyList<string> CetLimitsBroken
    {
        get
        {
            var named = new Dictionary<string, string>(StringComparer.Ordinal);
            foreach (
                var limit in Candidates.SelectMany(c =>
                    c.High.CetLimitsBroken.Concat(c.Low.CetLimitsBroken)
                )
            )
                named.TryAdd(MethodB.NameOf(limit), limit);
            return [.. named.Values];
        }
    }
}

/// <summary>From what is known of a piece's steel to what it can be.</summary>
/// <remarks>Ranges of the families: data sheets of 1045, 1541, 4140, 42CrMo4, 4340 and EN8 (docs/weld.md says which were seen
/// and which stand from memory).</remarks>
public static class SteelGuesses
{
    private static readonly CompositionBand s_medium = new(
        new(0.36, 0.10, 0.60),
        new(0.50, 0.40, 1.00)
    );

    private static readonly CompositionBand s_manganese = new(
        new(0.36, 0.15, 1.35),
        new(0.44, 0.40, 1.65)
    );

    private static readonly CompositionBand s_chromium = new(
        new(0.38, 0.10, 0.60, 0.80, 0.15),
        new(0.45, 0.40, 1.00, 1.20, 0.30)
    );

    private static readonly CompositionBand s_nickel = new(
        new(0.38, 0.15, 0.60, 0.70, 0.20, 1.65),
        new(0.43, 0.35, 0.80, 0.90, 0.30, 2.00)
    );

    private static readonly CompositionBand s_low = new(new(0.05, 0, 0.30), new(0.25, 0.55, 1.60));

    // The donors stage calls 0.35 to 0.55 % carbon medium.
    private static readonly CompositionBand s_anyMedium = new(
        new(0.35, 0.10, 0.60),
        new(0.55, 0.40, 1.00)
    );

    // Arc-welding handbooks, from memory: 1045 100 to 200 °C, 4140 175 to 250, 4340 about 300; 1541 between by its CE.
    private static readonly Band s_mediumHeat = new(100, 200);
    private static readonly Band s_manganeseHeat = MethodB.HandbookBand(0.65);
    private static readonly Band s_chromiumHeat = new(175, 250);
    private static readonly Band s_nickelHeat = new(275, 325);

    // Low-carbon steel asks for no more than dryness at this size. Common practice, no source.
    private static readonly Band s_lowHeat = new(20, 100);

    /// <summary>Least carbon that can have made a hardness, mass %: C = ((HRC − 20)/60)².</summary>
    /// <param name="hrc">Rockwell C of the hardest place.</param>
    /// <remarks>From HRC = 20 + 60√C for fully hardened, untempered steel up to about 0.6 % C (rule of the hardening shop, from
    /// memory). Tempered or partly hardened steel is softer, so this is a least, never a best estimate.</remarks>
    public static double LeastCarbon(double hrc) => hrc <= 20 ? 0 : Math.Pow((hrc - 20) / 60, 2);

    /// <summary>What a piece can be.</summary>
    /// <param name="steel">What was said at the weld; null for nothing.</param>
    /// <param name="known">What the donors stage holds; null for nothing.</param>
    public static SteelGuess Of(WeldSteel? steel, SteelKnown? known)
    {
        var family = steel?.Family ?? SteelFamily.Unknown;
        (string Words, bool Known)? against =
            family == SteelFamily.LowCarbon ? AgainstLowCarbon(known) : null;
        // What the donors stage knows outweighs a word that would let the weld go without preheat; an analysis outweighs both.
        if (against is { Known: true } && steel is not { HasAnalysis: true })
            family = SteelFamily.Unknown;
        var (candidates, words, alloyed, heat) = family switch
        {
            SteelFamily.MediumCarbon => (
                [s_medium],
                "plain medium-carbon steel",
                false,
                s_mediumHeat
            ),
            SteelFamily.CarbonManganese => (
                [s_manganese],
                "carbon-manganese steel",
                false,
                s_manganeseHeat
            ),
            SteelFamily.ChromiumMolybdenum => (
                [s_chromium],
                "chromium-molybdenum steel",
                true,
                s_chromiumHeat
            ),
            SteelFamily.NickelChromiumMolybdenum => (
                [s_nickel],
                "nickel-chromium-molybdenum steel",
                true,
                s_nickelHeat
            ),
            SteelFamily.LowCarbon => ([s_low], "low-carbon steel", false, s_lowHeat),
            _ => OfDonor(known),
        };
        if (steel is { HasAnalysis: true })
        {
            CompositionBand[] analysed = [.. candidates.Select(c => Analysed(steel, c))];
            return new(
                analysed,
                "by its analysis",
                IsGuess: false,
                steel.Chromium is { } cr ? cr.Value >= 0.5 : alloyed,
                MethodB.HandbookBand(analysed.Max(c => c.High.CarbonEquivalent)),
                against?.Words
            );
        }
        var hardest = Hardest(known);
        if (hardest is { } hrc && LeastCarbon(hrc) is var least)
        {
            // A piece measured this hard cannot hold less carbon than that.
            candidates =
            [
                .. candidates.Select(c =>
                    c with
                    {
                        Low = c.Low with { C = Math.Min(Math.Max(c.Low.C, least), c.High.C) },
                    }
                ),
            ];
            if (known is not { Class: not SteelClass.Unknown } && family == SteelFamily.Unknown)
                words = "known by its hardness only";
        }
        return new(candidates, words, IsGuess: true, alloyed, heat, against?.Words);
    }

    /// <summary>What speaks against low-carbon steel: the class of the donor, a hardness that so little carbon cannot make, or, where
    /// nothing is known, that shafts are hardly ever made of it.</summary>
    private static (string Words, bool Known) AgainstLowCarbon(SteelKnown? known) =>
        known switch
        {
            { Class: SteelClass.MediumCarbon } => (
                "the donor is noted as medium-carbon steel",
                true
            ),
            { Class: SteelClass.QuenchedTemperedAlloy } => (
                "the donor is noted as quenched and tempered alloy steel",
                true
            ),
            _ when Hardest(known) is { } hrc && LeastCarbon(hrc) > SteelGuess.MostLowCarbon => (
                "it was measured harder than so little carbon can make it",
                true
            ),
            _ => (
                "what the donor is made of is not noted, and driveshafts are hardly ever made of it",
                false
            ),
        };

    private static (
        CompositionBand[] Candidates,
        string Words,
        bool Alloyed,
        Band Handbook
    ) OfDonor(SteelKnown? known) =>
        known?.Class switch
        {
            SteelClass.MediumCarbon => (
                [s_anyMedium, s_manganese],
                "medium-carbon steel of some kind",
                false,
                s_manganeseHeat
            ),
            SteelClass.QuenchedTemperedAlloy => (
                [s_chromium],
                "quenched and tempered chromium-molybdenum steel",
                true,
                s_chromiumHeat
            ),
            _ => (
                [s_anyMedium, s_manganese, s_chromium, s_nickel],
                "any shaft steel",
                true,
                s_nickelHeat
            ),
        };

    private static double? Hardest(SteelKnown? known) =>
        (known?.SurfaceHrc?.Low, known?.CoreHrc?.Low) switch
        {
            ({ } a, { } b) => Math.Max(a, b),
            var (a, b) => a ?? b,
        };

    /// <summary>The analysis, and the family's range for what it does not name.</summary>
    private static CompositionBand Analysed(WeldSteel steel, CompositionBand otherwise)
    {
        (double Low, double High) Of(
            Field<Content> field,
            Measured<Content>? typed,
            Func<Composition, double> element
        )
        {
            if (typed is null)
                return (element(otherwise.Low), element(otherwise.High));
            var a = typed.PlusMinus ?? field.UsualPlusMinus;
            return (Math.Max(0, typed.Value - a), typed.Value + a);
        }
        var c = Of(WeldSteelFields.Carbon, steel.Carbon, e => e.C);
        var si = Of(WeldSteelFields.Silicon, steel.Silicon, e => e.Si);
        var mn = Of(WeldSteelFields.Manganese, steel.Manganese, e => e.Mn);
        var cr = Of(WeldSteelFields.Chromium, steel.Chromium, e => e.Cr);
        var mo = Of(WeldSteelFields.Molybdenum, steel.Molybdenum, e => e.Mo);
        var ni = Of(WeldSteelFields.Nickel, steel.Nickel, e => e.Ni);
        var cu = Of(WeldSteelFields.Copper, steel.Copper, e => e.Cu);
        var v = Of(WeldSteelFields.Vanadium, steel.Vanadium, e => e.V);
        return new(
            new(c.Low, si.Low, mn.Low, cr.Low, mo.Low, ni.Low, cu.Low, v.Low),
            new(c.High, si.High, mn.High, cr.High, mo.High, ni.High, cu.High, v.High)
        );
    }
}
