using Shaftwright.Corner;
using Shaftwright.Measures;

namespace Shaftwright.Length;

/// <summary>The instant answer beside the drawn cars: sensitivities times standard uncertainties.</summary>
internal sealed class FirstOrder
{
    private readonly Dictionary<int, double> _balance = [];
    private readonly Dictionary<int, double> _tightest = [];

    /// <summary>Standard uncertainty of the balanced length, mm; NaN without a window.</summary>
    public double Uncertainty { get; private init; } = double.NaN;

    /// <summary>Chance of passing a limit with the length judged.</summary>
    public double Chance { get; private init; }

    public static FirstOrder Of(
        LengthNumbers numbers,
        LengthResult result,
        double margin,
        double making,
        double length
    )
    {
        List<SetEnvelope> envelopes =
        [
            .. numbers.Sets.Select(s => new SetEnvelope(s, numbers, numbers.Values)),
        ];
        var first = new FirstOrder
        {
            Chance = new LengthChoices(envelopes, numbers, margin, making).OfViolation(length),
            Uncertainty = double.NaN,
        };
        if (result is { HasWindow: true, Shortest: { } s, Longest: { } l })
        {
            var (_, parts) = Balance.Of(envelopes, numbers, s.Length, l.Length);
            first = new FirstOrder
            {
                Chance = first.Chance,
                Uncertainty = LengthChoices.Root(parts),
            };
            Fill(first._balance, parts);
        }
        var tightest = envelopes
            .SelectMany(e => Bound.Of(e, numbers, margin))
            .Where(b => b.Margin == margin && b.StandardUncertainty > 0)
            .MinBy(b => b.Inside(length) / b.StandardUncertainty);
        if (tightest is not null)
            Fill(first._tightest, tightest.Parts);
        return first;
    }

    /// <summary>Its share of the variance of the balanced length, 0 to 1.</summary>
    public double ShareOfBalance(UncertainValue value) => _balance.GetValueOrDefault(value.Place);

    /// <summary>Its share of the variance of the side most likely to be passed, 0 to 1.</summary>
    public double ShareOfTightest(UncertainValue value) => _tightest.GetValueOrDefault(value.Place);

    /// <summary>Where the cars say something else than first order does, beyond what counting explains.</summary>
    public Sentence? Against(double spread, Counted chance, long cars)
    {
        // A standard deviation of n cars is itself known to about 1/√(2n) of it.
        var known = spread / Math.Sqrt(2.0 * cars);
        if (
            double.IsFinite(Uncertainty)
            && Math.Abs(spread - Uncertainty) > Math.Max(0.05 * Uncertainty, 4 * known) + 0.005
        )
            return $"First order says the length is sure to ± {Say.Length(2 * Uncertainty)}, the cars say ± {Say.Length(2 * spread)}. First order holds each binding height still; from car to car it moves. Believe the cars.";
        var (high, low) = (Math.Max(chance.Value, Chance), Math.Min(chance.Value, Chance));
        // First order adds up the places, so it may say up to twice as much where two places go together.
        if (high - low > 4 * chance.StandardUncertainty + 0.005 && high > 2 * low)
            return $"First order says the chance of passing a limit is {Say.Chance(Chance)}, the cars say {Say.Chance(chance.Value)}. Believe the cars.";
        return null;
    }

    private static void Fill(Dictionary<int, double> into, IReadOnlyList<Contribution> parts)
    {
        var all = parts.Sum(p => p.Effect * p.Effect);
        foreach (var part in parts)
        {
            if (part.Value is { } value && all > 0)
                into[value.Place] = part.Effect * part.Effect / all;
        }
    }
}
