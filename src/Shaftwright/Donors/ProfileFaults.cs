using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Donors;

/// <summary>What no shaft can look like. A donor of which such a thing was written down is refused with the place, because nobody
/// can tell which of the numbers is wrong.</summary>
public static class ProfileFaults
{
    /// <summary>Every fault of a profile, in order along the shaft; empty when it can be.</summary>
    /// <param name="shaft">The shaft as walked.</param>
    public static IReadOnlyList<Sentence> Of(DonorShaft shaft)
    {
        ArgumentNullException.ThrowIfNull(shaft);
        var faults = new List<Sentence>();
        var from = 0.0;
        for (var i = 0; i < shaft.Zones.Count; i++)
        {
            var zone = shaft.Zones[i];
            if (zone.Until is not { } until)
                break;
            if (until.Value <= from)
            {
                faults.Add(
                    $"stretch {i + 1} ends at {Say.Length(until.Value)}, before the one in front of it ends at {Say.Length(from)}"
                );
                continue;
            }
            Zone(zone, from, faults);
            from = until.Value;
        }
        Hardened(shaft, from, faults);
        Bores(shaft, from, faults);
        return faults;
    }

    private static void Zone(ShaftZone zone, double from, List<Sentence> faults)
    {
        if (zone is { Kind: ZoneKind.Spline, RootDiameter: { } root, Diameter: { } over })
        {
            if (root.Value >= over.Value)
                faults.Add(
                    $"the spline from {Say.Length(from)} is {Say.Diameter(root.Value)} at its root and {Say.Diameter(over.Value)} over its teeth"
                );
        }
        if (zone is { Fillet: { } fillet } && fillet.Value >= zone.Until!.Value - from)
            faults.Add(
                $"the fillet of {Say.Length(fillet.Value)} at {Say.Length(from)} is longer than the stretch it lies in"
            );
    }

    private static void Hardened(DonorShaft shaft, double length, List<Sentence> faults)
    {
        var zones = shaft
            .Hardened.Where(h => h is { From: not null, To: not null })
            .OrderBy(h => h.From!.Value)
            .ToList();
        for (var i = 0; i < zones.Count; i++)
        {
            var (from, to) = (zones[i].From!.Value, zones[i].To!.Value);
            if (from >= to)
                faults.Add(
                    $"a hardened zone runs from {Say.Length(from)} back to {Say.Length(to)}"
                );
            if (i > 0 && from < zones[i - 1].To!.Value)
                faults.Add(
                    $"two hardened zones overlap from {Say.Length(from)} to {Say.Length(Math.Min(to, zones[i - 1].To!.Value))}"
                );
            if (length > 0 && from >= length)
                faults.Add(
                    $"a hardened zone begins at {Say.Length(from)}, beyond the end of what was walked at {Say.Length(length)}"
                );
        }
    }

    private static void Bores(DonorShaft shaft, double length, List<Sentence> faults)
    {
        foreach (var bore in shaft.Bores)
        {
            if (bore is not { From: { } from, To: { } to, Diameter: { } d })
                continue;
            if (length > 0 && from.Value >= length)
                faults.Add(
                    $"a hollow begins at {Say.Length(from.Value)}, beyond the end of what was walked at {Say.Length(length)}"
                );
            var at = 0.0;
            foreach (var zone in shaft.Zones)
            {
                if (zone is not { Until: { } until })
                    break;
                var thin = (zone.RootDiameter ?? zone.Diameter)?.Value;
                if (
                    thin is { } outside
                    && from.Value < until.Value
                    && to.Value > at
                    && d.Value >= outside
                )
                {
                    faults.Add(
                        $"the hollow of {Say.Diameter(d.Value)} at {Say.Length(Math.Max(at, from.Value))} is no thinner than the {Say.Diameter(outside)} around it"
                    );
                    break;
                }
                at = until.Value;
            }
        }
    }
}
