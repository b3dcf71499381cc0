using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>A steel's composition, mass per cent; an element not named counts as 0.</summary>
/// <param name="C">Carbon.</param>
/// <param name="Si">Silicon.</param>
/// <param name="Mn">Manganese.</param>
/// <param name="Cr">Chromium.</param>
/// <param name="Mo">Molybdenum.</param>
/// <param name="Ni">Nickel.</param>
/// <param name="Cu">Copper.</param>
/// <param name="V">Vanadium.</param>
public readonly record struct Composition(
    double C,
    double Si = 0,
    double Mn = 0,
    double Cr = 0,
    double Mo = 0,
    double Ni = 0,
    double Cu = 0,
    double V = 0
)
{
    /// <summary>Carbon equivalent of the International Institute of Welding, mass %:
    /// CE = C + Mn/6 + (Cr+Mo+V)/5 + (Ni+Cu)/15.</summary>
    /// <remarks>Source: EN 1011-2:2001, C.2.1 (formula from public restatements; the clause was not read). Its preheat charts hold
    /// for C 0.05–0.25 and CE 0.30–0.70 (from memory). Check values: Published/weldability.json.</remarks>
    public double CarbonEquivalent => C + Mn / 6 + (Cr + Mo + V) / 5 + (Ni + Cu) / 15;

    /// <summary>Cracking parameter, mass %: Pcm = C + Si/30 + (Mn+Cu+Cr)/20 + Ni/60 + Mo/15 + V/10 (no boron).</summary>
    /// <remarks>Source: Ito and Bessyo, as restated in a review of carbon equivalents. Meant for C up to about 0.18 (from memory):
    /// shown for shaft steels, not decided on.</remarks>
    public double CrackingParameter =>
        C + Si / 30 + (Mn + Cu + Cr) / 20 + Ni / 60 + Mo / 15 + V / 10;

    /// <summary>Carbon equivalent of method B, mass %: CET = C + (Mn+Mo)/10 + (Cr+Cu)/20 + Ni/40.</summary>
    /// <remarks>Source: EN 1011-2:2001, C.3 (from memory). Valid for C 0.05–0.32 and the limits of <see cref="CetLimitsBroken"/>.</remarks>
    public double Cet => C + (Mn + Mo) / 10 + (Cr + Cu) / 20 + Ni / 40;

    /// <summary>Which limits of the CET formula this composition breaks, in words; empty when none.</summary>
    /// <remarks>Source: EN 1011-2:2001, C.3 (from memory): C 0.05–0.32, Si ≤ 0.80, Mn 0.50–1.90, Cr ≤ 1.50, Ni ≤ 2.50, Mo ≤ 0.75,
    /// Cu ≤ 0.70, V ≤ 0.18.</remarks>
    public IReadOnlyList<string> CetLimitsBroken
    {
        get
        {
            var broken = new List<string>();
            void Within(string name, double value, double low, double high)
            {
                if (value < low - 1e-12 || value > high + 1e-12)
                    broken.Add(
                        FormattableString.Invariant(
                            $"{name} {value:0.00} % (the formula holds for {low:0.00} to {high:0.00} %)"
                        )
                    );
            }
            Within("carbon", C, 0.05, 0.32);
            Within("silicon", Si, 0, 0.80);
            Within("manganese", Mn, 0.50, 1.90);
            Within("chromium", Cr, 0, 1.50);
            Within("nickel", Ni, 0, 2.50);
            Within("molybdenum", Mo, 0, 0.75);
            Within("copper", Cu, 0, 0.70);
            Within("vanadium", V, 0, 0.18);
            return broken;
        }
    }
}

/// <summary>A steel whose composition is known as a range: every element between its low and its high.</summary>
/// <param name="Low">Lowest of each element.</param>
/// <param name="High">Highest of each element.</param>
public sealed record CompositionBand(Composition Low, Composition High)
{
    /// <summary>The range of a quantity that rises with every element.</summary>
    public Band Of(Func<Composition, double> rising)
    {
        ArgumentNullException.ThrowIfNull(rising);
        return new(rising(Low), rising(High));
    }

    /// <summary>The range that holds either of two steels.</summary>
    public static CompositionBand Either(CompositionBand a, CompositionBand b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return new(Each(a.Low, b.Low, Math.Min), Each(a.High, b.High, Math.Max));
    }

    private static Composition Each(
        Composition a,
        Composition b,
        Func<double, double, double> pick
    ) =>
        new(
            pick(a.C, b.C),
            pick(a.Si, b.Si),
            pick(a.Mn, b.Mn),
            pick(a.Cr, b.Cr),
            pick(a.Mo, b.Mo),
            pick(a.Ni, b.Ni),
            pick(a.Cu, b.Cu),
            pick(a.V, b.V)
        );
}
