using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Donors;

/// <summary>A shaft on the shelf, seen from either of its ends, as far as it is still there and good.</summary>
public static class ShelfProfiles
{
    /// <summary>The shaft as one would write it down if it were walked from that end, up to the first stretch that is gone.</summary>
    /// <param name="donor">The shaft.</param>
    /// <param name="far">True for the end it was not walked from.</param>
    /// <returns>Numbers that follow from what was typed where the shaft is turned round; null when it was not walked, when that
    /// end is gone, or when it is seen from the far end and was not walked to it.</returns>
    public static DonorShaft? ShaftFrom(ShelfDonor donor, bool far)
    {
        ArgumentNullException.ThrowIfNull(donor);
        if (donor.Shaft is not { Zones.Count: > 0 } shaft)
            return null;
        if (far && (shaft.Zones.Any(z => z.Until is null) || !InOrder(shaft.Zones)))
            return null;
        var turned = far ? Turned(shaft) : shaft;
        if (Left(donor, far) is not { } left)
            return turned;
        if (left <= 0)
            return null;
        var zones = new List<ShaftZone>();
        var from = 0.0;
        foreach (var zone in turned.Zones)
        {
            if (zone.Until is not { } until || until.Value <= left)
            {
                zones.Add(zone);
                from = zone.Until?.Value ?? from;
                continue;
            }
            if (from >= left)
                break;
            zones.Add(Shortened(zone, from, left));
            break;
        }
        return turned with
        {
            Zones = zones,
            Hardened = [.. turned.Hardened.Where(h => !(h.From?.Value >= left))],
            Bores = [.. turned.Bores.Where(b => !(b.From?.Value >= left))],
        };
    }

    /// <summary>Up to where the shaft is still there and good, from one of its ends, mm; null when nothing of it is gone.</summary>
    /// <param name="donor">The shaft.</param>
    /// <param name="far">True for the end it was not walked from.</param>
    public static double? Left(ShelfDonor donor, bool far)
    {
        ArgumentNullException.ThrowIfNull(donor);
        if (donor.Gone.Count == 0)
            return null;
        if (!far)
            return donor.Gone.Min(g => g.From?.Value ?? 0);
        if (Walked(donor) is not { } length)
            return null;
        return donor.Gone.Min(g => length - Math.Min(length, g.To?.Value ?? length));
    }

    /// <summary>How far the shaft was walked, mm; null when it was not.</summary>
    /// <param name="donor">The shaft.</param>
    public static double? Walked(ShelfDonor donor)
    {
        ArgumentNullException.ThrowIfNull(donor);
        double? length = null;
        foreach (var zone in donor.Shaft?.Zones ?? [])
        {
            if (zone.Until is not { } until)
                break;
            length = Math.Max(length ?? 0, until.Value);
        }
        return length;
    }

    /// <summary>The profile of the walked end turned round, in plain numbers.</summary>
    internal static DonorProfile Turned(DonorProfile profile)
    {
        var length = profile.Length;
        var stretches = new List<Stretch>(profile.Stretches.Count);
        for (var i = profile.Stretches.Count - 1; i >= 0; i--)
        {
            var s = profile.Stretches[i];
            stretches.Add(
                s with
                {
                    From = length - s.To,
                    To = length - s.From,
                    Diameter = s.EndDiameter,
                    EndDiameter = s.Diameter,
                    Fillet = i + 1 < profile.Stretches.Count ? profile.Stretches[i + 1].Fillet : 0,
                }
            );
        }
        return profile with
        {
            Stretches = stretches,
            Hardened =
            [
                .. profile
                    .Hardened.Reverse()
                    .Select(h => h with { From = length - h.To, To = length - h.From }),
            ],
            Hollows =
            [
                .. profile
                    .Hollows.Reverse()
                    .Select(h => h with { From = length - h.To, To = length - h.From }),
            ],
        };
    }

    /// <summary>The part of a profile up to a place.</summary>
    internal static DonorProfile UpTo(DonorProfile profile, double left)
    {
        if (left >= profile.Length)
            return profile;
        return profile with
        {
            Stretches =
            [
                .. profile
                    .Stretches.Where(s => s.From < left)
                    .Select(s => s.To <= left ? s : s with { To = left, EndDiameter = s.At(left) }),
            ],
            Hardened =
            [
                .. profile
                    .Hardened.Where(h => h.From < left)
                    .Select(h => h with { To = Math.Min(h.To, left) }),
            ],
            Hollows =
            [
                .. profile
                    .Hollows.Where(h => h.From < left)
                    .Select(h => h with { To = Math.Min(h.To, left) }),
            ],
        };
    }

    private static bool InOrder(IReadOnlyList<ShaftZone> zones)
    {
        for (var i = 1; i < zones.Count; i++)
        {
            if (zones[i].Until!.Value <= zones[i - 1].Until!.Value)
                return false;
        }
        return true;
    }

    private static DonorShaft Turned(DonorShaft shaft)
    {
        var length = shaft.Zones[^1].Until!;
        var zones = new List<ShaftZone>(shaft.Zones.Count);
        for (var i = shaft.Zones.Count - 1; i >= 0; i--)
        {
            var zone = shaft.Zones[i];
            var from = i == 0 ? 0 : shaft.Zones[i - 1].Until!.Value;
            zones.Add(
                zone with
                {
                    Until = i == 0 ? length : From(length.Value - from, zone.Until!),
                    Diameter =
                        zone.Kind == ZoneKind.Taper
                            ? zone.EndDiameter
                                ?? (i + 1 < shaft.Zones.Count ? shaft.Zones[i + 1].Diameter : null)
                            : zone.Diameter,
                    EndDiameter = zone.Kind == ZoneKind.Taper ? zone.Diameter : null,
                    Fillet = i + 1 < shaft.Zones.Count ? shaft.Zones[i + 1].Fillet : null,
                }
            );
        }
        return shaft with
        {
            Zones = zones,
            Hardened =
            [
                .. shaft
                    .Hardened.Reverse()
                    .Select(h =>
                        h with
                        {
                            From = h.To is { } to
                                ? From(Math.Max(0, length.Value - to.Value), to)
                                : null,
                            To = h.From is { } a ? From(length.Value - a.Value, a) : null,
                        }
                    ),
            ],
            Bores =
            [
                .. shaft
                    .Bores.Reverse()
                    .Select(b =>
                        b with
                        {
                            From = b.To is { } to
                                ? From(Math.Max(0, length.Value - to.Value), to)
                                : null,
                            To = b.From is { } a ? From(length.Value - a.Value, a) : null,
                        }
                    ),
            ],
        };
    }

    private static ShaftZone Shortened(ShaftZone zone, double from, double left)
    {
        var until = zone.Until!;
        var shorter = zone with { Until = From(left, until) };
        if (zone is not { Kind: ZoneKind.Taper, Diameter: { } a, EndDiameter: { } b })
            return shorter;
        var share = (left - from) / (until.Value - from);
        return shorter with { EndDiameter = From(a.Value + (b.Value - a.Value) * share, b) };
    }

    /// <summary>A length that follows from measured ones, in the unit and with the ± of the one it comes from.</summary>
    private static Measured<Distance> From(double mm, Measured<Distance> like) =>
        Measured<Distance>.Of(
            like.Unit.FromInternal(mm),
            like.Unit,
            like.PlusMinus is { } a ? like.Unit.FromInternal(a) : null
        );
}
