using System.Globalization;

namespace Shaftwright.Measures;

/// <summary>A measured value with its unit and, if known, its uncertainty, kept exactly as it was typed.</summary>
/// <typeparam name="T">The dimension, which fixes the internal unit.</typeparam>
/// <remarks>The number after ± is the most the value could be off: the half-width of a rectangular distribution, so the
/// standard uncertainty is a/√3. Source: JCGM 100:2008 (GUM), 4.3.7.</remarks>
public sealed record Measured<T>
    where T : IDimension<T>
{
    internal Measured(string typed, double value, double? plusMinus, Unit unit)
    {
        Typed = typed;
        Value = value;
        PlusMinus = plusMinus;
        Unit = unit;
    }

    /// <summary>What was typed, trimmed. Files and the database keep this.</summary>
    public string Typed { get; }

    /// <summary>The value in the internal unit of the dimension.</summary>
    public double Value { get; }

    /// <summary>Half-width of the interval that surely holds the value, internal unit; null when none was typed.</summary>
    public double? PlusMinus { get; }

    /// <summary>The unit it was typed in.</summary>
    public Unit Unit { get; }

    /// <summary>Standard uncertainty, internal unit.</summary>
    /// <param name="otherwise">Half-width to take when none was typed, internal unit.</param>
    public double StandardUncertainty(double otherwise) => (PlusMinus ?? otherwise) / Math.Sqrt(3);

    /// <summary>A measure from a number, written as a person would type it: 15 digits at most, 12 of them decimals.</summary>
    /// <param name="number">The number, in <paramref name="unit"/>; within ± 1e15.</param>
    /// <param name="unit">One of the dimension's units.</param>
    /// <param name="plusMinus">Half-width in the same unit, from 0 to 1e15, or null.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range or not a number.</exception>
    /// <exception cref="ArgumentException"><paramref name="unit"/> is of another dimension.</exception>
    public static Measured<T> Of(double number, Unit unit, double? plusMinus = null)
    {
        ArgumentNullException.ThrowIfNull(unit);
        // Written so that a NaN fails them.
        if (!(Math.Abs(number) <= Largest))
            throw new ArgumentOutOfRangeException(
                nameof(number),
                number,
                "A measure is a number within ± 1e15."
            );
        if (plusMinus is { } half && !(half >= 0 && half <= Largest))
            throw new ArgumentOutOfRangeException(
                nameof(plusMinus),
                half,
                "A ± is a number from 0 to 1e15."
            );
        if (!T.Units.Contains(unit))
            throw new ArgumentException($"{unit.Symbol} is not a unit of {T.Word}.", nameof(unit));
        var sign = unit.Symbol is "°" or "%" or "" ? unit.Symbol : " " + unit.Symbol;
        // A small unit stands on both numbers: after the ± alone it could be of the ± alone.
        var text = plusMinus is { } a
            ? $"{Plain(number)}{(unit.OftenOfDoubt ? sign : "")} ± {Plain(a)}{sign}"
            : Plain(number) + sign;
        return MeasureText.Read<T>(text, unit, typeof(T).Name).Required;
    }

    /// <summary>Reads a measure. A bare number is in the dimension's default unit.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="field">The field's name for a refusal.</param>
    public static Reading<T> Read(string text, string field) =>
        MeasureText.Read<T>(text, T.Units[0], field);

    /// <summary>The text as typed.</summary>
    public override string ToString() => Typed;

    private const double Largest = 1e15;

    private static string Plain(double number) =>
        ((decimal)number).ToString("0.############", CultureInfo.InvariantCulture);
}
