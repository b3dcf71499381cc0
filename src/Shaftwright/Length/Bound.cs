using Shaftwright.Corner;

namespace Shaftwright.Length;

/// <summary>What one set of readings forbids on one side: the longest or the shortest length, where, and how surely.</summary>
/// <param name="Envelope">The set's curves.</param>
/// <param name="IsLongest">True for the long side.</param>
/// <param name="Margin">Plunge kept unused, mm.</param>
/// <param name="Travel">Where it binds, mm.</param>
/// <param name="Length">The length, mm.</param>
internal sealed record Bound(
    SetEnvelope Envelope,
    bool IsLongest,
    double Margin,
    double Travel,
    double Length
)
{
    /// <summary>What makes it uncertain.</summary>
    public IReadOnlyList<Contribution> Parts { get; init; } = [];

    public ReadingSet Set => Envelope.Set;

    public double StandardUncertainty => Math.Sqrt(Parts.Sum(p => p.Effect * p.Effect));

    /// <summary>How far a length is inside it, mm; negative beyond it.</summary>
    public double Inside(double length) => IsLongest ? Length - length : length - Length;

    /// <summary>What it would be with other values, at the same travel.</summary>
    public double With(SetEnvelope envelope) =>
        IsLongest ? envelope.Longest(Travel, Margin) : envelope.Shortest(Travel, Margin);

    /// <summary>What binds.</summary>
    public Forbids Forbids =>
        IsLongest ? Forbids.JointBottoms
        : Envelope.ShortestByAngle(Travel) > Envelope.ShortestByPlunge(Travel, Margin)
            ? Envelope.OuterAngleBinds(Travel) ? Forbids.OuterAngle
                : Forbids.InnerAngle
        : Forbids.JointPullsOut;

    /// <summary>As an end of the window.</summary>
    public WindowEnd AsEnd() =>
        new(Length, StandardUncertainty, Travel, Set.Steering, Forbids) { Place = Set.Place };

    /// <summary>Both sides of a set, with the margin and at the stop itself, found and weighed.</summary>
    public static IEnumerable<Bound> Of(SetEnvelope envelope, LengthNumbers numbers, double margin)
    {
        List<Bound> bounds =
        [
            Find(envelope, numbers, true, margin),
            Find(envelope, numbers, false, margin),
        ];
        if (margin > 0)
            bounds.AddRange([Find(envelope, numbers, true, 0), Find(envelope, numbers, false, 0)]);
        return LengthUncertainty.Weigh(numbers, envelope.Set, bounds);
    }

    /// <summary>The same two sides at every reading, for the chance of passing a limit: readings err each for itself, so the chance
    /// is not that of the tightest alone. With what binds between readings added where that is a place of its own.</summary>
    public static IEnumerable<Bound> Everywhere(
        SetEnvelope envelope,
        LengthNumbers numbers,
        double margin
    )
    {
        // Nearer to a reading than this, the binding place is that reading's own doubt, counted once.
        const double Same = 1;
        var bounds = new List<Bound>();
        foreach (var isLongest in (ReadOnlySpan<bool>)[true, false])
        {
            var binding = Find(envelope, numbers, isLongest, margin);
            var travels = envelope
                .Set.Readings.Select((_, k) => envelope.Set.Travel(numbers.Values, k))
                .ToList();
            if (!travels.Exists(t => Math.Abs(t - binding.Travel) < Same))
                bounds.Add(binding);
            foreach (var t in travels)
                bounds.Add(
                    new Bound(
                        envelope,
                        isLongest,
                        margin,
                        t,
                        isLongest ? envelope.Longest(t, margin) : envelope.Shortest(t, margin)
                    )
                );
        }
        return LengthUncertainty.Weigh(numbers, envelope.Set, bounds);
    }

    private static Bound Find(SetEnvelope e, LengthNumbers numbers, bool isLongest, double margin)
    {
        if (isLongest)
        {
            var (at, longest) = Sweep.Smallest(e, numbers.Values, t => e.Longest(t, margin));
            return new Bound(e, true, margin, at, longest);
        }
        // The larger of two curves has a corner where they cross; each is smooth by itself, and the larger of their tops is the top.
        var plunge = Sweep.Smallest(e, numbers.Values, t => -e.ShortestByPlunge(t, margin));
        var angle = Sweep.Smallest(e, numbers.Values, t => -e.ShortestByAngle(t));
        var (travel, value) = angle.Value < plunge.Value ? angle : plunge;
        return new Bound(e, false, margin, travel, -value);
    }
}
