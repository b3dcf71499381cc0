using Shaftwright.Geometry;

namespace Shaftwright.Length;

/// <summary>The lengths that each way of picking gives, and how likely each is to pass a limit.</summary>
internal sealed class LengthChoices
{
    /// <summary>No end of a window is known better than this, mm: paint, burrs, the joints themselves. Common practice, no source.</summary>
    private const double LeastUncertainty = 0.05;

    /// <summary>Below this chance the normal tail's own error (1e-7) decides, not the readings.</summary>
    private const double TooSmallToRank = 1e-5;

    private readonly IReadOnlyList<SetEnvelope> _envelopes;
    private readonly LengthNumbers _numbers;
    private readonly List<Bound> _limits;
    private readonly List<Bound> _stops;
    private readonly double _making;

    /// <param name="envelopes">All sets.</param>
    /// <param name="numbers">The values behind them.</param>
    /// <param name="margin">Plunge kept unused, mm.</param>
    /// <param name="making">Standard uncertainty of the finished shaft about the length it is made to, mm.</param>
    public LengthChoices(
        IReadOnlyList<SetEnvelope> envelopes,
        LengthNumbers numbers,
        double margin,
        double making
    )
    {
        (_envelopes, _numbers, _making) = (envelopes, numbers, making);
        _limits = [.. envelopes.SelectMany(e => Bound.Everywhere(e, numbers, margin))];
        _stops =
            margin > 0 ? [.. envelopes.SelectMany(e => Bound.Everywhere(e, numbers, 0))] : _limits;
    }

    /// <summary>Chance that some position passes a limit with its margin.</summary>
    /// <param name="length">mm.</param>
    public double OfViolation(double length) => Chance(_limits, length);

    /// <summary>Chance that some position reaches the stop itself.</summary>
    /// <param name="length">mm.</param>
    public double OfContact(double length) => Chance(_stops, length);

    /// <summary>All of them, the balanced first.</summary>
    /// <param name="shortest">Short end of the window, mm.</param>
    /// <param name="longest">Long end, mm.</param>
    public IReadOnlyList<LengthChoice> All(double shortest, double longest)
    {
        LengthChoice Choice(Aim aim, double length, double u) =>
            new(aim, length, u, OfViolation(length), length >= shortest && length <= longest);
        var (balanced, u) = Balance.Of(_envelopes, _numbers, shortest, longest);
        var all = new List<LengthChoice> { Choice(Aim.Balanced, balanced, Root(u)) };
        if (Centred() is var (centred, centredUncertainty))
            all.Add(Choice(Aim.Centred, centred, centredUncertainty));
        var sure = EquallySure(shortest, longest);
        all.Add(Choice(Aim.EquallySure, sure, Between(sure)));
        var likely = MostLikely(shortest, longest, sure);
        all.Add(Choice(Aim.MostLikely, likely, Between(likely)));
        return all;
    }

    /// <summary>Sum of the chances at every reading, and between readings where something binds there: to first order not less
    /// than the chance that any of these places is passed, whatever they have in common. What a limit does at places in
    /// between is not counted a second time.</summary>
    private double Chance(List<Bound> bounds, double length)
    {
        var sum = 0.0;
        foreach (var bound in bounds)
        {
            var u = double.Hypot(_making, bound.StandardUncertainty);
            if (u > 0)
                sum += Normal.Below(-bound.Inside(length) / u);
            else if (bound.Inside(length) < 0)
                sum += 1;
        }
        return Math.Min(1, sum);
    }

    /// <summary>At ride height, or the nearest height read, with the wheel straight.</summary>
    private (double Length, double StandardUncertainty)? Centred()
    {
        if (
            _envelopes
                .Where(e => e.Set is { Fitted: true, Steering: Corner.Steering.Straight })
                .MinBy(e => e.Set.Form)
            is not { } e
        )
            return null;
        var travel = Math.Clamp(0, e.Pieces[0], e.Pieces[^1]);
        var square = 0.0;
        foreach (var value in _numbers.Uncertain.Where(v => LengthUncertainty.Concerns(e.Set, v)))
        {
            var (up, down) = LengthUncertainty.Nudged(_numbers, e.Set, value);
            var effect = LengthUncertainty.Effect(up.Centred(travel), down.Centred(travel));
            square += effect * effect;
        }
        return (e.Centred(travel), Math.Sqrt(square));
    }

    private static double Sureness(Bound bound) =>
        Math.Max(LeastUncertainty, bound.StandardUncertainty);

    private double Nearest(double length, bool isLongest) =>
        _limits.Where(b => b.IsLongest == isLongest).Min(b => b.Inside(length) / Sureness(b));

    /// <summary>The one falls and the other rises with the length: bisection, to 1e-9 mm.</summary>
    private double EquallySure(double shortest, double longest)
    {
        var (low, high) = (shortest, longest);
        while (high - low > 1e-9)
        {
            var middle = (low + high) / 2;
            if (middle <= low || middle >= high)
                break;
            if (Nearest(middle, true) > Nearest(middle, false))
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }

    /// <summary>Inside the window every normal tail is convex in the length, so their sum has one smallest value: golden section.</summary>
    private double MostLikely(double shortest, double longest, double sure)
    {
        if (OfViolation(sure) < TooSmallToRank)
            return sure;
        const double Golden = 0.6180339887498949;
        var (a, b) = (shortest, longest);
        var (x, y) = (b - Golden * (b - a), a + Golden * (b - a));
        var (fx, fy) = (OfViolation(x), OfViolation(y));
        for (var i = 0; i < 60 && b - a > 1e-4; i++)
        {
            if (fx <= fy)
            {
                (b, y, fy) = (y, x, fx);
                x = b - Golden * (b - a);
                fx = OfViolation(x);
            }
            else
            {
                (a, x, fx) = (x, y, fy);
                y = a + Golden * (b - a);
                fy = OfViolation(y);
            }
        }
        return (a + b) / 2;
    }

    /// <summary>Uncertainty of a length that stands between the two nearest bounds by the inverse of their uncertainties; what both
    /// share, such as the trial length, counts as shared.</summary>
    private double Between(double length)
    {
        Bound Near(bool isLongest) =>
            _limits
                .Where(b => b.IsLongest == isLongest)
                .MinBy(b => b.Inside(length) / Sureness(b))!;
        var (over, under) = (Near(true), Near(false));
        var weight = Sureness(under) / (Sureness(over) + Sureness(under));
        var effects = new Dictionary<int, double>();
        var own = 0.0;
        foreach (
            var (part, share) in over
                .Parts.Select(p => (p, weight))
                .Concat(under.Parts.Select(p => (p, 1 - weight)))
        )
        {
            if (part.Value is { } value)
                effects[value.Place] = effects.GetValueOrDefault(value.Place) + share * part.Effect;
            else
                own += share * part.Effect * share * part.Effect;
        }
        return Math.Sqrt(own + effects.Values.Sum(x => x * x));
    }

    /// <summary>Standard uncertainty of independent parts.</summary>
    public static double Root(IEnumerable<Contribution> parts) =>
        Math.Sqrt(parts.Sum(p => p.Effect * p.Effect));
}
