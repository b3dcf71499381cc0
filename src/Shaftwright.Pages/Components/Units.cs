using System.Buffers;
using System.Globalization;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Components;

/// <summary>What a box shows of a typed text, and what it keeps. The unit stands beside the box, so a bare number is typed;
/// it is kept with the unit, or it would change its meaning when mm is switched to inches.</summary>
public static class Units
{
    private static readonly SearchValues<char> s_inNumbers = SearchValues.Create("0123456789±");

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

    /// <summary>A kept text parted into its number and its unit, with the blank between them; all of it is number where more
    /// than one unit stands in it.</summary>
    public static (string Number, string Unit) Parted(string kept)
    {
        ArgumentNullException.ThrowIfNull(kept);
        var unit = UnitOf(kept);
        if (unit.AsSpan().ContainsAny(s_inNumbers))
            return (kept, "");
        var number = kept[..^unit.Length].TrimEnd();
        return (number, kept[number.Length..]);
    }

    /// <summary>A value and its ± as one text: "404 ± 0.5 mm" where both are in one unit.</summary>
    public static string Together(string value, string give)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(give);
        if (give.Length == 0 || HasGive(value))
            return value;
        var unit = UnitOf(give);
        // A small unit, written once, could be meant for the ± alone.
        return
            unit is "mm" or "in" or "°" or "N·m" or "lbf·ft" or "MPa" or "kg" or "HRC"
            && UnitOf(value) == unit
            ? value[..^unit.Length].TrimEnd() + " ± " + give
            : value + " ± " + give;
    }

    /// <summary>Whether a text carries a ± of its own.</summary>
    public static bool HasGive(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Contains('±', StringComparison.Ordinal)
            || text.Contains("+/-", StringComparison.Ordinal)
            || text.Contains("+-", StringComparison.Ordinal);
    }

    /// <summary>A typed text parted into its value and its ±, each with its unit; the ± is empty when none was typed.</summary>
    public static (string Value, string Give) Apart(string typed, Unit unit)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var flat = typed
            .Replace("+/-", "±", StringComparison.Ordinal)
            .Replace("+-", "±", StringComparison.Ordinal);
        var at = flat.IndexOf('±', StringComparison.Ordinal);
        return at < 0
            ? (WithUnit(typed, unit), "")
            : (WithUnit(flat[..at], unit), WithUnit(flat[(at + 1)..], unit));
    }

    /// <summary>Whether two texts of one field mean the same measure: 440 and "440 mm" do, where mm is the field's own unit.</summary>
    public static bool Same(string a, string b) => a == b || Plain(a) == Plain(b);

    private static string Plain(string text)
    {
        var (value, give) = Apart(text, Ratio.One);
        if (give.Length > 0 && UnitOf(value).Length == 0)
            value += UnitOf(give);
        return Bare(value) + "±" + Bare(give);
    }

    // A field has one dimension, so that a unit a bare number is taken in can only be that field's own.
    private static string Bare(string part)
    {
        var unit = UnitOf(part);
        var number = part[..^unit.Length].Trim().Replace('−', '-');
        return
            unit
                is "mm"
                    or "°"
                    or "N·m"
                    or "MPa"
                    or "kg"
                    or "HRC"
                    or "°C"
                    or "V"
                    or "A"
                    or "mm/min"
                    or "HV"
            ? number
            : number + " " + unit;
    }

    private static string UnitOf(string text)
    {
        var start = text.AsSpan().IndexOfAnyExcept("0123456789.,/ +-−±".AsSpan());
        return start < 0 ? "" : text[start..].Trim();
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

    private static bool HasUnit(string text) => UnitOf(text).Length > 0;
}
