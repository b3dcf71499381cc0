using Shaftwright.Corner;

namespace Shaftwright.Length;

/// <summary>One value's part in an uncertainty.</summary>
/// <param name="Value">Which; null for what the curve may be off between readings.</param>
/// <param name="Effect">Its effect on the length, mm: sensitivity times standard uncertainty.</param>
internal readonly record struct Contribution(UncertainValue? Value, double Effect);

/// <summary>First-order uncertainty by nudging each value by its standard uncertainty, both ways.</summary>
/// <remarks>Source: JCGM 100:2008 (GUM), 5.1.2 and the note of 5.1.3 (numerical sensitivity). At the travel that binds, the travel
/// itself is stationary or at an end, so that it may stand still while a value is nudged.</remarks>
internal static class LengthUncertainty
{
    /// <summary>Contributions to a length that depends on one set.</summary>
    public static List<Contribution> Of(
        LengthNumbers numbers,
        ReadingSet set,
        double travel,
        double length,
        Func<SetEnvelope, double> f
    )
    {
        var parts = new List<Contribution>();
        foreach (var value in numbers.Uncertain)
        {
            if (
                Concerns(set, value)
                && Effect(numbers, value, v => f(new SetEnvelope(set, numbers, v)))
                    is not 0
                        and var effect
            )
                parts.Add(new Contribution(value, effect));
        }
        var between =
            InterpolationError.HalfWidth(set, numbers.Values, travel, length) / Math.Sqrt(3);
        if (between > 0)
            parts.Add(new Contribution(null, between));
        return parts;
    }

    /// <summary>Half the difference of <paramref name="f"/> when one value is nudged up and down.</summary>
    public static double Effect(
        LengthNumbers numbers,
        UncertainValue value,
        Func<double[], double> f
    )
    {
        var nudged = (double[])numbers.Values.Clone();
        nudged[value.Place] = numbers.Values[value.Place] + value.StandardUncertainty;
        var up = f(nudged);
        nudged[value.Place] = numbers.Values[value.Place] - value.StandardUncertainty;
        var down = f(nudged);
        return double.IsFinite(up) && double.IsFinite(down) ? (up - down) / 2 : 0;
    }

    /// <summary>Root of the sum of squares, mm.</summary>
    public static double Total(IEnumerable<Contribution> parts) =>
        Math.Sqrt(parts.Sum(p => p.Effect * p.Effect));

    public static bool Concerns(ReadingSet set, UncertainValue value) =>
        value.Reading is not { } i || Array.IndexOf(set.Readings, i) >= 0;
}
