using Shaftwright.Geometry;
using Shaftwright.Measures;

namespace Shaftwright.Truing.Pressing;

/// <summary>One stroke as the belief takes it. Lengths mm, loads N.</summary>
/// <param name="Curve">The beam it was made on.</param>
/// <param name="Depth">Past contact; null when only the load is known.</param>
/// <param name="DepthUncertainty">Standard uncertainty of it, with that of finding contact.</param>
/// <param name="Load">Gauge; null when not read.</param>
/// <param name="LoadUncertainty">Standard uncertainty of it.</param>
/// <param name="Seen">What moved at the dial in the direction of pressing; null when it was not read.</param>
/// <param name="OtherSeen">What moved if the reading after it lies on the other side; null when the side is known.</param>
/// <param name="SeenUncertainty">Standard uncertainty of it.</param>
/// <param name="Cosine">Of the angle to the stroke before it in the same place; null when nothing was pressed there.</param>
/// <param name="Lever">Moment under the ram of the stroke before it, over that of this one, at the same load: other blocks.</param>
internal sealed record BeliefStroke(
    PressCurve Curve,
    double? Depth,
    double DepthUncertainty,
    double? Load,
    double LoadUncertainty,
    double? Seen,
    double? OtherSeen,
    double SeenUncertainty,
    double? Cosine,
    double Lever = 1
);

/// <summary>How hard this shaft is to bend in this press: every yield strength (as a factor on what was first taken) and every
/// give of the press that is thought possible, each with its weight after the strokes so far.</summary>
/// <remarks>
/// <para>Bayes' rule on a grid, without chance: the first grid covers the range of the steel and a margin; where the strokes leave
/// weight, a finer one is laid and reckoned again from the first stroke. Each stroke weighs a grid point by how well it foresaw
/// what the dial then said; errors of depth and contact are summed over three points (Gauss–Hermite), the model's own as a share
/// of the set. A fiftieth is kept for a misread number, so that one slip cannot rule out the truth.</para>
/// <para>Source: own derivation. Assumes that the yield range holds the truth or misses it by little, and that the press gives in
/// proportion to the load.</para>
/// </remarks>
internal sealed class PressBelief
{
    private const int Yields = 41;
    private const int Gives = 5;
    private const double Slip = 0.02;

    // Three points that stand for a normal error: Abramowitz and Stegun, table 25.10.
    private static readonly (double At, double Weight)[] s_error =
    [
        (-1.7320508075688772, 1 / 6.0),
        (0, 2 / 3.0),
        (1.7320508075688772, 1 / 6.0),
    ];

    private readonly double[] _yield = new double[Yields * Gives];
    private readonly double[] _give = new double[Yields * Gives];
    private readonly double[] _weight = new double[Yields * Gives];
    private readonly PressHistory[] _history = new PressHistory[Yields * Gives];
    private readonly double _low;
    private readonly double _high;

    private PressBelief(Band range) => (_low, _high) = (range.Low, range.High);

    /// <summary>The belief after some strokes.</summary>
    /// <param name="range">Range of the yield factor before any stroke.</param>
    /// <param name="strokes">The strokes, oldest first.</param>
    public static PressBelief After(Band range, IReadOnlyList<BeliefStroke> strokes)
    {
        var belief = new PressBelief(range);
        // A range from a book may miss: 15 % more on both sides, fading out.
        var (from, to) = (range.Low / 1.15, range.High * 1.15);
        belief.Lay(from, to, strokes);
        for (var pass = 0; pass < 2 && strokes.Count > 0; pass++)
        {
            var step = Math.Pow(to / from, 1.0 / (Yields - 1));
            var (low, high) = (to, from);
            for (var i = 0; i < Yields; i++)
            {
                double row = 0;
                for (var j = 0; j < Gives; j++)
                    row += belief._weight[i * Gives + j];
                if (row < 1e-4)
                    continue;
                low = Math.Min(low, belief._yield[i * Gives]);
                high = Math.Max(high, belief._yield[i * Gives]);
            }
            if (low > high || (low / step <= from * 1.001 && high * step >= to / 1.001))
                break;
            (from, to) = (Math.Max(from, low / step), Math.Min(to, high * step));
            belief.Lay(from, to, strokes);
        }
        return belief;
    }

    /// <summary>The yield factor, 5 to 95 %.</summary>
    public Band Yield => Quantiles(i => _yield[i]);

    private void Lay(double from, double to, IReadOnlyList<BeliefStroke> strokes)
    {
        var best = double.NegativeInfinity;
        for (var i = 0; i < Yields; i++)
        {
            var s = from * Math.Pow(to / from, i / (Yields - 1.0));
            for (var j = 0; j < Gives; j++)
            {
                var at = i * Gives + j;
                _yield[at] = s;
                _give[at] = PressLimits.MostGive * j / (Gives - 1);
                _history[at] = default;
                _weight[at] = Math.Log(Before(s));
            }
        }
        foreach (var stroke in strokes)
        {
            for (var at = 0; at < _weight.Length; at++)
                _weight[at] += Take(at, stroke);
        }
        for (var at = 0; at < _weight.Length; at++)
            best = Math.Max(best, _weight[at]);
        double sum = 0;
        for (var at = 0; at < _weight.Length; at++)
            sum += _weight[at] = Math.Exp(_weight[at] - best);
        for (var at = 0; at < _weight.Length; at++)
            _weight[at] /= sum;
    }

    /// <summary>Weight of a yield factor before any stroke: even within the range on a scale of ratios, fading beyond it.</summary>
    private double Before(double s)
    {
        var beyond = Math.Max(Math.Log(_low / s), Math.Log(s / _high));
        return beyond <= 0 ? 1 : Math.Exp(-0.5 * (beyond / 0.06) * (beyond / 0.06)) + 1e-12;
    }

    /// <summary>Logarithm of how well a grid point foresaw a stroke; its history goes on from it.</summary>
    private double Take(int at, BeliefStroke stroke)
    {
        var (s, give, curve) = (_yield[at], _give[at], stroke.Curve);
        _history[at] = stroke.Cosine is { } turned
            ? _history[at].Towards(turned, stroke.Lever)
            : default;
        var history = _history[at];
        var middle = 0.0;
        double likely = 0;
        for (var z = 0; z < s_error.Length; z++)
        {
            var (error, weight) = s_error[z];
            double load;
            if (stroke.Depth is { } depth)
                load = history.LoadOf(
                    curve,
                    Math.Max(0, depth + error * stroke.DepthUncertainty) / s,
                    give
                );
            else
                load = Math.Max(0, stroke.Load!.Value + error * stroke.LoadUncertainty) / s;
            if (z == 1)
                middle = load;
            if (stroke.Seen is not { } seen)
                continue;
            var foreseen = s * history.Seen(curve, load);
            var spread = Spread(foreseen, stroke.SeenUncertainty);
            var fits = stroke.OtherSeen is { } other
                ? (Density(seen - foreseen, spread) + Density(other - foreseen, spread)) / 2
                : Density(seen - foreseen, spread);
            if (stroke is { Depth: not null, Load: { } gauge })
                // Only its shape counts: a gauge cannot make the dial less likely than a slip.
                fits *= Density(gauge - s * load, stroke.LoadUncertainty) * stroke.LoadUncertainty;
            likely += weight * fits;
        }
        _history[at] = history.After(middle);
        return stroke.Seen is null ? 0 : Math.Log((1 - Slip) * likely + Slip * 0.05);
    }

    /// <summary>Chance that a stroke moves the dial by more than so much.</summary>
    public double ChanceOver(NextStroke next, double depth, double seen)
    {
        double chance = 0;
        Each(
            next,
            depth,
            (_, weight, foreseen, _) =>
            {
                var spread = Spread(foreseen, 0.002);
                chance += weight * Normal.Below((foreseen - seen) / spread);
            }
        );
        return chance;
    }

    /// <summary>Chance that the surface strains by more than so much.</summary>
    public double ChanceStrained(NextStroke next, double depth, double strain)
    {
        double chance = 0;
        Each(
            next,
            depth,
            (at, weight, _, load) =>
                chance += _yield[at] * next.Curve.Strain(load) > strain ? weight : 0
        );
        return chance;
    }

    /// <summary>What a stroke is expected to do: seen and load as 5 to 95 %, set and strain as the mean.</summary>
    public (Band Seen, Band Load, double Set, double Strain) Foresee(NextStroke next, double depth)
    {
        var seen = new List<(double, double)>();
        var loads = new List<(double, double)>();
        double set = 0,
            strain = 0;
        Each(
            next,
            depth,
            (at, weight, foreseen, load) =>
            {
                var spread = Spread(foreseen, 0.002);
                foreach (var (error, share) in s_error)
                    seen.Add((foreseen + error * spread, weight * share));
                loads.Add((_yield[at] * load, weight));
                set += weight * _yield[at] * HistoryFor(at, next).Set(next.Curve, load);
                strain += weight * _yield[at] * next.Curve.Strain(load);
            }
        );
        return (Quantiles(seen), Quantiles(loads), set, strain);
    }

    private void Each(NextStroke next, double depth, Action<int, double, double, double> take)
    {
        var uncertainty = next.DepthUncertainty(depth);
        for (var at = 0; at < _weight.Length; at++)
        {
            // What weighs next to nothing decides nothing.
            if (_weight[at] < 1e-6)
                continue;
            var (s, history) = (_yield[at], HistoryFor(at, next));
            foreach (var (error, weight) in s_error)
            {
                var load = history.LoadOf(
                    next.Curve,
                    Math.Max(0, depth + error * uncertainty) / s,
                    _give[at]
                );
                take(at, weight * _weight[at], s * history.Seen(next.Curve, load), load);
            }
        }
    }

    private PressHistory HistoryFor(int at, NextStroke next) =>
        next.Cosine is { } turned ? _history[at].Towards(turned, next.Lever) : default;

    private static double Spread(double foreseen, double reading) =>
        Math.Sqrt(reading * reading + Square(PressLimits.Model * foreseen) + 1e-6);

    private static double Density(double off, double spread)
    {
        var z = off / spread;
        return Math.Exp(-0.5 * z * z) / (spread * 2.5066282746310002);
    }

    private Band Quantiles(Func<int, double> of) =>
        Quantiles([.. Enumerable.Range(0, _weight.Length).Select(i => (of(i), _weight[i]))]);

    private static Band Quantiles(List<(double Value, double Weight)> values)
    {
        values.Sort((a, b) => a.Value.CompareTo(b.Value));
        double low = values[0].Value,
            high = values[^1].Value,
            sum = 0;
        var found = false;
        foreach (var (value, weight) in values)
        {
            sum += weight;
            if (!found && sum >= 0.05)
                (low, found) = (value, true);
            if (sum >= 0.95)
            {
                high = value;
                break;
            }
        }
        return new(low, Math.Max(low, high));
    }

    private static double Square(double x) => x * x;
}

/// <summary>The stroke that is being chosen.</summary>
/// <param name="Curve">The beam it is made on.</param>
/// <param name="Reading">Standard uncertainty of depth and contact, mm.</param>
/// <param name="Cosine">Of the angle to the stroke before it in the same place; null when nothing was pressed there.</param>
/// <param name="Lever">Moment under the ram of the stroke before it, over that of this one, at the same load: other blocks.</param>
internal sealed record NextStroke(
    PressCurve Curve,
    double Reading,
    double? Cosine,
    double Lever = 1
)
{
    /// <summary>Standard uncertainty of what a depth means, mm.</summary>
    public double DepthUncertainty(double depth) => Of(Reading, depth, Cosine);

    /// <summary>The same for any stroke: the farther it turns from the one before, the less is known of where bent metal yields.</summary>
    public static double Of(double reading, double depth, double? cosine)
    {
        var turn = PressLimits.TurnedBack * depth * Math.Min(1, 1 - (cosine ?? 1));
        return Math.Sqrt(reading * reading + turn * turn);
    }
}
