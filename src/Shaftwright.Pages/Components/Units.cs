using System.Globalization;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Components;

/// <summary>What a box shows of a typed text, and what it keeps. The unit stands beside the box, so a bare number is typed;
/// it is kept with the unit, or it would change its meaning when mm is switched to inches.</summary>
public static class Units
{
    /// <summary>The text with its unit: as typed when it names one, else with <paramref name="bare"/>.</summary>
    public static string WithUnit(string typed, Unit bare)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(bare);
        var text = typed.Trim();
        if (text.Length == 0 || bare.Symbol.Length == 0 || HasUnit(text))
            return text;
        return bare.Symbol == "°" ? text + "°" : text + " " + bare.Symbol;
    }

    /// <summary>The text without the unit that stands beside the box.</summary>
    public static string WithoutUnit(string kept, Unit bare)
    {
        ArgumentNullException.ThrowIfNull(kept);
        ArgumentNullException.ThrowIfNull(bare);
        if (bare.Symbol.Length == 0 || !kept.EndsWith(bare.Symbol, StringComparison.Ordinal))
            return kept;
        var rest = kept[..^bare.Symbol.Length].TrimEnd();
        return HasUnit(rest) ? kept : rest;
    }

    /// <summary>The usual ± of a field in the reader's units: "± 0.5 mm".</summary>
    public static string Give<T>(double plusMinus, Unit bare)
        where T : IDimension<T>
    {
        ArgumentNullException.ThrowIfNull(bare);
        var unit = bare == Distance.Inch ? Distance.Thou : bare;
        var number = unit.FromInternal(plusMinus);
        var digits = number switch
        {
            >= 1 => "0.#",
            _ => "0.###",
        };
        if (unit == Distance.Thou)
            digits = number >= 10 ? "0" : "0.#";
        var text = number.ToString(digits, CultureInfo.InvariantCulture);
        return "± "
            + text
            + unit.Symbol switch
            {
                "" => "",
                "°" => "°",
                _ => "\u00a0" + unit.Symbol,
            };
    }

    private static bool HasUnit(string text) =>
        text.AsSpan().IndexOfAnyExcept("0123456789.,/ +-−±".AsSpan()) >= 0;
}
