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
    /// <summary>Adds to each bound of one set what makes it uncertain. The curves are built once a nudge for all of them.</summary>
    public static IEnumerable<Bound> Weigh(
        LengthNumbers numbers,
        ReadingSet set,
        List<Bound> bounds
    )
    {
        var parts = bounds.ConvertAll(_ => new List<Contribution>());
        foreach (var value in numbers.Uncertain)
        {
            if (!Concerns(set, value))
                continue;
            var (up, down) = Nudged(numbers, set, value);
            for (var i = 0; i < bounds.Count; i++)
            {
                if (Effect(bounds[i].With(up), bounds[i].With(down)) is not 0 and var effect)
                    parts[i].Add(new Contribution(value, effect));
            }
        }
        for (var i = 0; i < bounds.Count; i++)
        {
            var between =
                InterpolationError.HalfWidth(
                    set,
                    numbers.Values,
                    bounds[i].Travel,
                    bounds[i].Length
                ) / Math.Sqrt(3);
            if (between > 0)
                parts[i].Add(new Contribution(null, between));
            yield return bounds[i] with
            {
                Parts = parts[i],
            };
        }
    }

    /// <summary>The set's curves with one value nudged up and down by its standard uncertainty.</summary>
    public static (SetEnvelope Up, SetEnvelope Down) Nudged(
        LengthNumbers numbers,
        ReadingSet set,
        UncertainValue value
    )
    {
        var values = (double[])numbers.Values.Clone();
        values[value.Place] += value.StandardUncertainty;
        var up = new SetEnvelope(set, numbers, values);
        values[value.Place] = numbers.Values[value.Place] - value.StandardUncertainty;
        return (up, new SetEnvelope(set, numbers, values));
    }

    /// <summary>Half the difference of the two nudges; 0 where a nudge leaves nothing finite to compare.</summary>
    public static double Effect(double up, double down) =>
        double.IsFinite(up) && double.IsFinite(down) ? (up - down) / 2 : 0;

    public static bool Concerns(ReadingSet set, UncertainValue value) =>
        value.Reading is not { } i || Array.IndexOf(set.Readings, i) >= 0;
}
