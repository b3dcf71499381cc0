using System.Globalization;

namespace Shaftwright.Measures;

/// <summary>Reads what people write on the back of a hand: <c>27,30 mm</c>, <c>1 1/2 in</c>, <c>431 ± 1 mm</c>, <c>12° 30′</c>.</summary>
internal static class MeasureText
{
    public static Reading<T> Read<T>(string text, Unit bare, string field)
        where T : IDimension<T>
    {
        ArgumentNullException.ThrowIfNull(text);
        var typed = text.Trim();
        Reading<T> Refuse(string problem, string? accepted = null) =>
            new(null, new Refusal(field, typed, problem, accepted ?? T.Examples));

        if (typed.Length == 0)
            return Refuse("is empty");
        if (typed.Length > 60)
            return Refuse("is too long to be one measurement");

        // "±", "+/-" and "+-" all part the value from its half-width.
        var flat = typed
            .Replace("+/-", "±", StringComparison.Ordinal)
            .Replace("+-", "±", StringComparison.Ordinal);
        var parts = flat.Split('±');
        if (parts.Length > 2)
            return Refuse("has more than one ±");

        var value = Amount<T>(parts[0], out var valueUnit);
        if (value.Problem is { } wrong)
            return Refuse(wrong, value.Accepted);
        Amounts spread = default;
        Unit? spreadUnit = null;
        if (parts.Length == 2)
        {
            spread = Amount<T>(parts[1], out spreadUnit);
            if (spread.Problem is { } also)
                return Refuse(also, spread.Accepted);
            if (spread.Number < 0)
                return Refuse("has a negative ±");
        }

        // "431 ± 1 mm": one unit stands for both numbers.
        var unit = valueUnit ?? spreadUnit ?? bare;
        try
        {
            var internalValue = unit.ToInternal(value.Number) + value.Minor;
            double? half =
                parts.Length == 2
                    ? (spreadUnit ?? unit).ToInternal(spread.Number) + spread.Minor
                    : null;
            return new(new Measured<T>(typed, internalValue, half, unit), null);
        }
        catch (OverflowException)
        {
            return Refuse("is too large");
        }
    }

    private readonly record struct Amounts(
        decimal Number,
        double Minor,
        string? Problem,
        string? Accepted
    );

    private static Amounts Amount<T>(string text, out Unit? unit)
        where T : IDimension<T>
    {
        unit = null;
        var body = text.Trim();
        var split = UnitStart(body);
        var numberText = body[..split].Trim();
        var unitText = body[split..].Trim();
        var problem = Number(numberText, out var number, out var accepted);
        if (problem is not null)
            return new(0, 0, problem, accepted);
        if (unitText.Length == 0)
            return new(number, 0, null, null);

        // 12° 30′: a second number after the unit is its smaller neighbour.
        var second = unitText.AsSpan().IndexOfAnyInRange('0', '9');
        if (
            second > 0
            && typeof(T) == typeof(Angle)
            && Find<T>(unitText[..second], out var major) is null
        )
        {
            unit = major;
            var minutes = unitText[second..].TrimEnd('\'', '′', ' ');
            if (
                unit == Angle.Degree
                && Number(minutes, out var m, out _) is null
                && m is >= 0 and < 60
                && unitText[^1] is '\'' or '′'
            )
                return new(
                    number,
                    (number < 0 || numberText.StartsWith('-') ? -1 : 1)
                        * Angle.Arcminute.ToInternal(m),
                    null,
                    null
                );
            return new(0, 0, "is not degrees and minutes", null);
        }
        var unknown = Find<T>(unitText, out unit);
        return unknown is null
            ? new(number, 0, null, null)
            : new(0, 0, unknown.Value.Problem, unknown.Value.Accepted);
    }

    /// <summary>Where the number ends: after the last character that can belong to one.</summary>
    private static int UnitStart(string text)
    {
        var i = 0;
        while (
            i < text.Length
            && (
                char.IsAsciiDigit(text[i])
                || text[i] is '.' or ',' or '/' or ' ' or '-' or '−' or '+'
            )
        )
            i++;
        // A hyphen or blank that leads into the unit belongs to neither.
        return i;
    }

    private static string? Number(string text, out decimal number, out string? accepted)
    {
        number = 0;
        accepted = null;
        var t = text.Replace('−', '-').TrimEnd('-', ' ');
        if (t.Length == 0)
            return "has no number";
        var negative = t[0] == '-';
        if (t[0] is '-' or '+')
            t = t[1..].TrimStart();
        if (t.Length == 0)
            return "has no number";

        if (t.Contains('/', StringComparison.Ordinal))
        {
            // 3/8, 1 3/8 and 1-3/8.
            var words = t.Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries);
            var fraction = words[^1].Split('/');
            decimal whole = 0;
            if (
                words.Length > 2
                || fraction.Length != 2
                || !Digits(fraction[0], out var top)
                || !Digits(fraction[1], out var bottom)
                || (words.Length == 2 && !Digits(words[0], out whole))
            )
                return "is not a fraction";
            if (bottom == 0)
                return "divides by zero";
            number = whole + top / bottom;
        }
        else
        {
            var comma = t.LastIndexOf(',');
            var point = t.LastIndexOf('.');
            if (
                comma >= 0
                && point < 0
                && t.IndexOf(',') == comma
                && t.Length - comma == 4
                && comma is >= 1 and <= 3
                && t[0] != '0'
            )
            {
                accepted =
                    $"{t.Replace(',', '.')} if the comma is a decimal comma, or {t.Replace(",", "", StringComparison.Ordinal)} if it parts thousands";
                return "can be read two ways";
            }
            var normal = t;
            if (comma >= 0 && point >= 0)
                normal =
                    comma > point
                        ? t.Replace(".", "", StringComparison.Ordinal).Replace(',', '.')
                        : t.Replace(",", "", StringComparison.Ordinal);
            else if (comma >= 0)
                normal = t.Replace(',', '.');
            if (
                !normal.All(c => char.IsAsciiDigit(c) || c == '.')
                || !decimal.TryParse(
                    normal,
                    NumberStyles.AllowDecimalPoint,
                    CultureInfo.InvariantCulture,
                    out number
                )
            )
                return "is not a number";
        }
        if (negative)
            number = -number;
        return null;
    }

    private static bool Digits(string text, out decimal number)
    {
        number = 0;
        return text.Length is > 0 and <= 9
            && text.AsSpan().IndexOfAnyExceptInRange('0', '9') < 0
            && decimal.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);
    }

    private static (string Problem, string? Accepted)? Find<T>(string text, out Unit? unit)
        where T : IDimension<T>
    {
        var key = Key(text);
        foreach (var pair in T.Ambiguities)
        {
            // mPa is two things, MPA and mpa are one: case decides only where it must.
            var same = pair.Spelling.Any(char.IsUpper)
                ? string.Equals(key, pair.Spelling, StringComparison.Ordinal)
                : string.Equals(key, pair.Spelling, StringComparison.OrdinalIgnoreCase);
            if (same)
            {
                unit = null;
                return (
                    $"has a unit that can be read two ways, \"{text.Trim()}\"",
                    $"{pair.First}, or {pair.Second}; write which"
                );
            }
        }
        foreach (var candidate in T.Units)
        {
            if (
                string.Equals(key, Key(candidate.Symbol), StringComparison.OrdinalIgnoreCase)
                || candidate.Spellings.Any(s =>
                    string.Equals(key, Key(s), StringComparison.OrdinalIgnoreCase)
                )
            )
            {
                unit = candidate;
                return null;
            }
        }
        unit = null;
        return ($"is not a {T.Word} (unit \"{text.Trim()}\")", null);
    }

    /// <summary>A unit without its separators: N·m, N.m, N m, N*m and Nm are one.</summary>
    private static string Key(string text) =>
        string.Concat(
            text.Where(c =>
                c is not ('·' or '⋅' or '.' or '*' or '-' or '×' or ' ' or '\u00a0' or '\u202f')
            )
        );
}
