using System.Globalization;

namespace Shaftwright.Measures;

/// <summary>A unit of one dimension, with its exact factor to the internal unit of that dimension.</summary>
/// <remarks>A typed number is multiplied in decimal arithmetic by <see cref="Factor"/>, rounded once to double, and then
/// multiplied by <see cref="Scale"/>, which differs from 1 only where no decimal factor is exact (degrees to radians).
/// So 3 in is 76.2 mm to the last bit, which chained conversions through metres do not give.</remarks>
public sealed class Unit
{
    internal Unit(
        string symbol,
        decimal factor,
        string[] spellings,
        double scale = 1,
        decimal zero = 0
    )
    {
        Symbol = symbol;
        Factor = factor;
        Spellings = spellings;
        Scale = scale;
        Zero = zero;
    }

    /// <summary>The symbol as printed: <c>mm</c>, <c>in</c>, <c>N·m</c>.</summary>
    public string Symbol { get; }

    /// <summary>Internal units in one of this unit, before <see cref="Scale"/>; exact.</summary>
    public decimal Factor { get; }

    /// <summary>The factor that no decimal can carry; 1 for all but angles and degrees Fahrenheit.</summary>
    public double Scale { get; }

    /// <summary>What the unit shows where the internal unit shows 0: 32 for degrees Fahrenheit; 0 for all but temperatures.</summary>
    public decimal Zero { get; }

    /// <summary>True for a unit so small that, written once after a ±, it may be meant for the ± alone: 44 ± 30′.</summary>
    internal bool OftenOfDoubt { get; init; }

    /// <summary>Other ways of writing it that are accepted, without the signs of a product (N m, ft-lb).</summary>
    public IReadOnlyList<string> Spellings { get; }

    /// <summary>A typed decimal number of this unit in the internal unit.</summary>
    /// <exception cref="OverflowException">It is beyond what a decimal holds.</exception>
    public double ToInternal(decimal number) => DifferenceToInternal(number - Zero);

    /// <summary>A difference of two typed numbers of this unit, such as a ±, in the internal unit.</summary>
    /// <exception cref="OverflowException">It is beyond what a decimal holds.</exception>
    // Through text, because the framework's own cast from decimal rounds twice when the digits exceed a double's.
    public double DifferenceToInternal(decimal difference) =>
        double.Parse(
            (difference * Factor).ToString(CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture
        ) * Scale;

    /// <summary>A number of this unit in the internal unit.</summary>
    public double ToInternal(double number) => (number - (double)Zero) * (double)Factor * Scale;

    /// <summary>An internal value in this unit.</summary>
    public double FromInternal(double value) => value / Scale / (double)Factor + (double)Zero;

    /// <inheritdoc/>
    public override string ToString() => Symbol;
}
