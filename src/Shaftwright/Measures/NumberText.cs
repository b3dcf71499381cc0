using System.Buffers;
using System.Globalization;

namespace Shaftwright.Measures;

/// <summary>What is wrong with a text, and what would be accepted; null for the usual examples.</summary>
internal sealed record Refused(string Problem, string? Accepted = null);

/// <summary>Reads a number as written in a workshop: <c>27.3</c>, <c>27,3</c>, <c>1.234,5</c>, <c>3/8</c>, <c>1 3/8</c>, <c>1-3/8</c>.</summary>
internal static class NumberText
{
    private static readonly SearchValues<char> s_number = SearchValues.Create("0123456789.,/ -+");
    private static readonly SearchValues<char> s_decimal = SearchValues.Create("0123456789.");
    private static readonly Refused s_none = new("has no number");
    private static readonly Refused s_wrong = new("is not a number");

    /// <summary>Where the number ends and its unit begins: after the last character that can belong to a number.</summary>
    public static int End(string text)
    {
        var end = text.AsSpan().IndexOfAnyExcept(s_number);
        return end < 0 ? text.Length : end;
    }

    /// <summary>Reads it; null when it was read.</summary>
    public static Refused? Read(string text, out decimal number)
    {
        number = 0;
        if (text.Length == 0)
            return s_none;
        var negative = text[0] == '-';
        var t = text[0] is '-' or '+' ? text[1..].TrimStart() : text;
        if (t.Length == 0)
            return s_none;
        var refused = t.Contains('/', StringComparison.Ordinal)
            ? Fraction(t, out number)
            : Decimal(t, out number);
        if (negative)
            number = -number;
        return refused;
    }

    private static Refused? Fraction(string text, out decimal number)
    {
        number = 0;
        decimal whole = 0;
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        var (before, bottomText) = (text[..slash], text[(slash + 1)..]);
        var apart = before.LastIndexOfAny([' ', '-']);
        if (
            !Digits(before[(apart + 1)..], out var top)
            || !Digits(bottomText, out var bottom)
            || (apart >= 0 && !Digits(before[..apart].TrimEnd(' '), out whole))
        )
            return new("is not a fraction");
        if (bottom == 0)
            return new("divides by zero");
        // "1 5/4" is more likely a slip than two and a quarter.
        if (apart >= 0 && top >= bottom)
            return new("is not a fraction");
        number = whole + top / bottom;
        return null;
    }

    private static Refused? Decimal(string t, out decimal number)
    {
        number = 0;
        var (comma, point) = (t.LastIndexOf(','), t.LastIndexOf('.'));
        string plain;
        if (comma >= 0 && point >= 0)
        {
            // The later sign is the decimal one; the other must part thousands.
            var at = Math.Max(comma, point);
            if (!Thousands(t[..at], comma > point ? '.' : ','))
                return s_wrong;
            plain =
                t[..at].Replace(comma > point ? "." : ",", "", StringComparison.Ordinal)
                + "."
                + t[(at + 1)..];
        }
        else if (comma >= 0)
        {
            if (t[0] != '0' && Thousands(t, ','))
            {
                var whole = t.Replace(",", "", StringComparison.Ordinal);
                return t.IndexOf(',', StringComparison.Ordinal) == comma
                    ? new(
                        "can be read two ways",
                        $"{t.Replace(',', '.')} if the comma is a decimal comma, or {whole} if it parts thousands"
                    )
                    : new("has commas", $"{whole}, without them");
            }
            plain = t.Replace(',', '.');
        }
        else
        {
            plain = t;
        }
        if (
            plain.AsSpan().IndexOfAnyExcept(s_decimal) >= 0
            || plain.IndexOf('.', StringComparison.Ordinal) != plain.LastIndexOf('.')
            || plain == "."
        )
            return s_wrong;
        return decimal.TryParse(
            plain,
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out number
        )
            ? null
            : new("is too large");
    }

    /// <summary>True for one to three digits and then groups of three.</summary>
    private static bool Thousands(string text, char sign)
    {
        var groups = text.Split(sign);
        return groups.Length > 1
            && groups[0].Length is >= 1 and <= 3
            && groups.Skip(1).All(g => g.Length == 3)
            && groups.All(g => g.All(char.IsAsciiDigit));
    }

    private static bool Digits(string text, out decimal number)
    {
        number = 0;
        return text.Length is > 0 and <= 9
            && text.AsSpan().IndexOfAnyExceptInRange('0', '9') < 0
            && decimal.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);
    }
}
