using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>Preheat temperature by EN 1011-2 method B, with every limit that the case breaks.</summary>
/// <param name="Temperature">°C, as the formula gives it; a value below the workshop's means that it asks for none.</param>
/// <param name="LimitsBroken">Limits of the formula that are broken, in words; not empty means that the number is an extrapolation.</param>
public sealed record MethodB(double Temperature, IReadOnlyList<string> LimitsBroken)
{
    /// <summary>Evaluates the formula.</summary>
    /// <param name="cet">CET, mass %.</param>
    /// <param name="thickness">d, mm.</param>
    /// <param name="hydrogen">HD, ml per 100 g of deposited metal.</param>
    /// <param name="heatInput">Q, kJ/mm.</param>
    /// <remarks>Tp = 697·CET + 160·tanh(d/35) + 62·HD^0.35 + (53·CET − 32)·Q − 328. Source: EN 1011-2:2001, Annex C, C.3 (from memory;
    /// the clause was not read). Valid for CET 0.20–0.50, d 10–90 mm, HD 1–20, Q 0.5–4.0 (from memory). Another expression in
    /// public text under the same name, with square roots and + 296, is not method B. Check values: Published/weldability.json.</remarks>
    public static MethodB Of(double cet, double thickness, double hydrogen, double heatInput)
    {
        var broken = new List<string>();
        void Within(string name, double value, double low, double high, string unit)
        {
            if (value < low - 1e-12 || value > high + 1e-12)
                broken.Add(
                    FormattableString.Invariant(
                        $"{name} {value:0.##}{unit} (the formula holds for {low:0.##} to {high:0.##}{unit})"
                    )
                );
        }
        Within("CET", cet, 0.20, 0.50, " %");
        Within("thickness", thickness, 10, 90, " mm");
        Within("hydrogen", hydrogen, 1, 20, " ml/100 g");
        Within("heat input", heatInput, 0.5, 4.0, " kJ/mm");
        return new(
            697 * cet
                + 160 * Math.Tanh(thickness / 35)
                + 62 * Math.Pow(hydrogen, 0.35)
                + (53 * cet - 32) * heatInput
                - 328,
            broken
        );
    }

    private static readonly System.Buffers.SearchValues<char> s_number =
        System.Buffers.SearchValues.Create("-0123456789");

    /// <summary>What a broken limit is about: its words up to its number.</summary>
    /// <param name="limit">One of <see cref="LimitsBroken"/>.</param>
    public static string NameOf(string limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        var number = limit.AsSpan().IndexOfAny(s_number);
        return number < 0 ? limit : limit[..number].TrimEnd();
    }

    /// <summary>The handbooks' band for a medium-carbon or low-alloy shaft steel by its carbon equivalent, °C.</summary>
    /// <remarks>Arc-welding handbooks (from memory): 1045 (CE 0.575) 100–200 °C, 4140 (CE 0.777) 175–250 °C, 4340 (CE 0.849) about
    /// 300 °C; straight lines between, the ends kept beyond.</remarks>
    public static Band HandbookBand(double carbonEquivalent)
    {
        double Between(double a, double b, double c) =>
            carbonEquivalent <= 0.575 ? a
            : carbonEquivalent <= 0.777 ? a + (b - a) * (carbonEquivalent - 0.575) / (0.777 - 0.575)
            : carbonEquivalent <= 0.849 ? b + (c - b) * (carbonEquivalent - 0.777) / (0.849 - 0.777)
            : c;
        return new(Between(100, 175, 275), Between(200, 250, 325));
    }
}
