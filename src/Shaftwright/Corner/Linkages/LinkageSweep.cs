using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>A path of travel that the linkage is looked at along.</summary>
/// <param name="Place">What stands still.</param>
/// <param name="Travels">The travels asked for, in order, mm; the first and last are its ends.</param>
internal sealed record SweptPath(LinkagePlace Place, IReadOnlyList<double> Travels);

/// <summary>Where the linkage ends before a position that was asked for.</summary>
/// <param name="Place">What stood still.</param>
/// <param name="Asked">Travel asked for, mm.</param>
/// <param name="Reached">Where it ended: travel, rack and the other wheel.</param>
/// <param name="End">Locked, or loose at ride height.</param>
internal sealed record PathEnd(LinkagePlace Place, double Asked, Drive Reached, MoveEnd End);

/// <summary>Which paths a linkage is looked at along: travel and locks less what cannot happen together, or the positions listed.</summary>
internal static class LinkageSweep
{
    /// <summary>So far inside a lock a path ends, mm: at the lock itself nothing has a slope.</summary>
    private const double InsideLock = 0.01;

    /// <summary>The paths asked for.</summary>
    public static IReadOnlyList<SweptPath> Asked(LinkageInput input) =>
        input.Positions.Count > 0 ? Listed(input) : Ranged(input);

    /// <summary>What stands still at a listed position.</summary>
    public static LinkagePlace PlaceOf(PositionInput p) =>
        new(p.Rack?.Value ?? 0, p.PowerUnit, 0, p.OtherTravel?.Value ?? 0);

    /// <summary>The paths cut at any lock, with each lock named.</summary>
    public static (IReadOnlyList<SweptPath> Paths, IReadOnlyList<PathEnd> Ends) Reached(
        LinkageCar car,
        IReadOnlyList<SweptPath> asked
    )
    {
        var paths = new List<SweptPath>();
        var ends = new List<PathEnd>();
        foreach (var path in asked)
        {
            var (from, to) = (path.Travels[0], path.Travels[^1]);
            var (low, high) = (End(car, path.Place, from), End(car, path.Place, to));
            foreach (var end in new[] { low, high })
                if (end is not null && !ends.Contains(end))
                    ends.Add(end);
            if (low is { Reached.Travel: 0 } || high is { Reached.Travel: 0 })
                continue;
            // A lock below ride height cuts the low end, one above it the high end; whichever end was asked for beyond it.
            if (low is not null)
                from =
                    low.Reached.Travel < 0
                        ? Math.Max(from, low.Reached.Travel + InsideLock)
                        : to + 1;
            if (high is not null)
                to =
                    high.Reached.Travel > 0
                        ? Math.Min(to, high.Reached.Travel - InsideLock)
                        : from - 1;
            if (from > to)
                continue;
            double[] inside =
            [
                from,
                .. path.Travels.Where(t => t > from && t < to),
                .. to > from ? [to] : Array.Empty<double>(),
            ];
            paths.Add(path with { Travels = inside });
        }
        return (paths, ends);
    }

    private static PathEnd? End(LinkageCar car, LinkagePlace place, double travel)
    {
        var move = new LinkagePath(car, place).MoveTo(travel);
        return move.End == MoveEnd.Reached ? null : new(place, travel, move.Drive, move.End);
    }

    private static List<SweptPath> Listed(LinkageInput input) =>
        [
            .. input
                .Positions.Where(p => p.Travel is not null)
                .GroupBy(PlaceOf)
                .Select(g => new SweptPath(
                    g.Key,
                    [.. g.Select(p => p.Travel!.Value).Distinct().Order()]
                )),
        ];

    private static List<SweptPath> Ranged(LinkageInput input)
    {
        var paths = new List<SweptPath>();
        if (input.Droop is not { } droop || input.Bump is not { } bump)
            return paths;
        var (from, to) = (-droop.Value, bump.Value);
        var (left, right) = (input.RackLeft?.Value ?? 0, -(input.RackRight?.Value ?? 0));
        double[] racks = LinkageKinds.Steers(input.Kind)
            ? [.. new[] { right, right / 2, 0, left / 2, left }.Distinct()]
            : [0];
        double[] others = input.Kind == LinkageKind.Beam ? [0, 1, -1] : [0];
        foreach (var state in States(input))
        foreach (var rack in racks)
        foreach (var other in others)
        foreach (var (low, high) in Kept(input, rack, from, to))
        {
            double[] travels =
                low < 0 && high > 0 ? [low, 0, high]
                : low < high ? [low, high]
                : [low];
            paths.Add(new(new(rack, state, other), travels));
        }
        return paths;
    }

    private static IEnumerable<PowerUnitState> States(LinkageInput input)
    {
        yield return PowerUnitState.AtRest;
        if (input.Driving is not null)
            yield return PowerUnitState.Driving;
        if (input.Overrun is not null)
            yield return PowerUnitState.Overrun;
    }

    /// <summary>The travels left at a rack when what cannot happen is taken out.</summary>
    private static List<(double Low, double High)> Kept(
        LinkageInput input,
        double rack,
        double from,
        double to
    )
    {
        List<(double Low, double High)> kept = [(from, to)];
        foreach (var n in input.Never)
        {
            if (
                rack < (n.RackFrom?.Value ?? double.NegativeInfinity)
                || rack > (n.RackTo?.Value ?? double.PositiveInfinity)
            )
                continue;
            var low = n.TravelFrom?.Value ?? double.NegativeInfinity;
            var high = n.TravelTo?.Value ?? double.PositiveInfinity;
            kept =
            [
                .. kept.SelectMany(k =>
                    new[] { (k.Low, Math.Min(k.High, low)), (Math.Max(k.Low, high), k.High) }.Where(
                        x => x.Item1 <= x.Item2 && (x.Item1 < x.Item2 || k.Low == k.High)
                    )
                ),
            ];
        }
        return kept;
    }
}
