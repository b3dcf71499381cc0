namespace Shaftwright.Measures;

/// <summary>Reads what people write on the back of a hand: <c>27,30 mm</c>, <c>1 1/2 in</c>, <c>431 ± 1 mm</c>, <c>12° 30′</c>.</summary>
/// <remarks>It never guesses: what can be read two ways is refused with both readings.</remarks>
internal static class MeasureText
{
    private const int MostCharacters = 60;

    private static readonly (string Sign, string Plain)[] s_signs =
    [
        ("\u00a0", " "),
        ("\u202f", " "),
        ("\u2009", " "),
        ("−", "-"),
        ("–", "-"),
        ("⁄", "/"),
        ("+/-", "±"),
        ("+-", "±"),
    ];

    private static readonly (char Sign, string Plain)[] s_fractions =
    [
        ('½', "1/2"),
        ('¼', "1/4"),
        ('¾', "3/4"),
        ('⅛', "1/8"),
        ('⅜', "3/8"),
        ('⅝', "5/8"),
        ('⅞', "7/8"),
    ];

    /// <summary>The measure, or why it is refused.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="bare">Unit of a number without one.</param>
    /// <param name="field">The field's name for a refusal.</param>
    public static Reading<T> Read<T>(string text, Unit bare, string field)
        where T : IDimension<T>
    {
        ArgumentNullException.ThrowIfNull(text);
        var typed = text.Trim();
        Reading<T> Refuse(Refused why) =>
            new(null, new Refusal(field, typed, why.Problem, why.Accepted ?? T.Examples));

        if (typed.Length == 0)
            return Refuse(new("is empty"));
        if (typed.Length > MostCharacters)
            return Refuse(new("is too long to be one measurement"));
        var parts = Plain(typed).Split('±');
        if (parts.Length > 2)
            return Refuse(new("has more than one ±"));
        if (Amount<T>(parts[0], out var value) is { } wrong)
            return Refuse(wrong);
        Amounts half = default;
        if (parts.Length == 2)
        {
            if (Amount<T>(parts[1], out half) is { } also)
                return Refuse(also);
            if (half.Negative)
                return Refuse(new("has a negative ±"));
            if (TwoWays(value, half, bare, parts) is { } ambiguous)
                return Refuse(ambiguous);
        }
        // "431 ± 1 mm" and "431 mm ± 1": one unit stands for both numbers.
        var unit = value.Unit ?? half.Unit ?? bare;
        try
        {
            double? plusMinus = parts.Length == 2 ? half.HalfWidth(half.Unit ?? unit) : null;
            return new(new Measured<T>(typed, value.In(unit), plusMinus, unit), null);
        }
        catch (OverflowException)
        {
            return Refuse(new("is too large"));
        }
    }

    /// <summary>One unit stands for both numbers, unless it may as well be meant for one of them.</summary>
    private static Refused? TwoWays(Amounts value, Amounts half, Unit bare, string[] parts)
    {
        // "0.9 ± 10 %": of the 0.9, or of one? "90 % ± 0.1": a tenth of one, or of a hundredth?
        var oneHasUnit = value.Unit is null != half.Unit is null;
        if (oneHasUnit && (value.Unit ?? half.Unit) == Ratio.Percent && bare != Ratio.Percent)
            return new(
                "has a ± that can be read two ways",
                "both in per cent, 90 % ± 10 %, or both without, 0.9 ± 0.1"
            );
        // "44 ± 30′": 44 degrees give or take half a degree, or 44 minutes?
        if (
            value.Unit is not null
            || half.Unit is not { OftenOfDoubt: true } small
            || small == bare
        )
            return null;
        var (number, doubt) = (parts[0].Trim(), parts[1].Trim());
        return new(
            "has a ± whose unit can be read two ways",
            $"{number} {bare.Symbol} ± {doubt}, or {number} {small.Symbol} ± {doubt}; write which"
        );
    }

    /// <summary>The many ways of writing one sign, made one.</summary>
    private static string Plain(string typed)
    {
        var plain = typed;
        foreach (var (sign, one) in s_signs)
            plain = plain.Replace(sign, one, StringComparison.Ordinal);
        foreach (var (sign, fraction) in s_fractions)
        {
            var at = plain.IndexOf(sign, StringComparison.Ordinal);
            if (at >= 0)
                plain =
                    plain[..at]
                    + (at > 0 && char.IsAsciiDigit(plain[at - 1]) ? " " : "")
                    + fraction
                    + plain[(at + 1)..];
        }
        return plain;
    }

    /// <summary>A number as typed, the minutes of arc after it, and its unit if it had one.</summary>
    private readonly record struct Amounts(
        decimal Number,
        decimal Minutes,
        bool Negative,
        Unit? Unit
    )
    {
        public double In(Unit unit)
        {
            var minor = Minutes == 0 ? 0 : Angle.Arcminute.ToInternal(Minutes);
            return unit.ToInternal(Number) + (Negative ? -minor : minor);
        }

        /// <summary>As a ±, which is a difference: ± 5 °F is 2.8 °C wide, not −15.</summary>
        public double HalfWidth(Unit unit) =>
            unit.DifferenceToInternal(Number)
            + (Minutes == 0 ? 0 : Angle.Arcminute.ToInternal(Minutes));
    }

    private static Refused? Amount<T>(string text, out Amounts amount)
        where T : IDimension<T>
    {
        amount = default;
        var body = text.Trim();
        var end = NumberText.End(body);
        var (numberText, unitText) = (body[..end].Trim(), body[end..].Trim());
        // "3/8-in": the hyphen leads into the unit.
        if (unitText.Length > 0 && numberText.Length > 1 && numberText[^1] == '-')
            numberText = numberText[..^1].TrimEnd();
        if (NumberText.Read(numberText, out var number) is { } wrong)
            return wrong;
        // The sign of −0° 30′ is not in its number.
        var negative =
            numberText[0] == '-'
            && (number != 0 || unitText.AsSpan().IndexOfAnyInRange('0', '9') > 0);
        if (unitText.Length == 0)
        {
            amount = new(number, 0, negative, null);
            return null;
        }
        if (
            typeof(T) == typeof(Angle)
            && unitText.AsSpan().IndexOfAnyInRange('0', '9') is > 0 and var at
        )
            return DegreesAndMinutes(number, negative, unitText, at, out amount);
        if (UnitText.Find<T>(unitText, out var unit) is { } unknown)
            return unknown;
        amount = new(number, 0, negative, unit);
        return null;
    }

    /// <summary>12° 30′: whole degrees, and less than sixty minutes with their sign.</summary>
    private static Refused? DegreesAndMinutes(
        decimal degrees,
        bool negative,
        string rest,
        int minutesAt,
        out Amounts amount
    )
    {
        amount = default;
        if (
            UnitText.Find<Angle>(rest[..minutesAt].TrimEnd(), out var major) is not null
            || major != Angle.Degree
            || rest[^1] is not ('\'' or '′' or '’')
            || NumberText.Read(rest[minutesAt..^1].TrimEnd(), out var minutes) is not null
            || minutes >= 60
            || degrees != decimal.Truncate(degrees)
        )
            return new("is not degrees and minutes");
        amount = new(degrees, minutes, negative, Angle.Degree);
        return null;
    }
}
