using Shaftwright.Measures;

namespace Shaftwright.Donors;

/// <summary>Zones as walked, laid end to end.</summary>
internal static class CaliperWalk
{
    /// <summary>Lays the zones end to end from the joint end. The walk ends at the first zone whose end is not known, because
    /// nothing beyond it can be placed. Empty when no zone has both an end and a diameter.</summary>
    public static IReadOnlyList<Stretch> Stretches(
        IReadOnlyList<ShaftZone> zones,
        DonorFindings say
    )
    {
        var placed = new List<(ShaftZone Zone, double From, double To)>();
        var from = 0.0;
        for (var i = 0; i < zones.Count; i++)
        {
            if (zones[i].Until is not { } until)
            {
                say.EndMissing(i, zones[i].Kind, from);
                break;
            }
            if (until.Value <= from)
            {
                say.OutOfOrder(i, zones[i].Kind, until.Value);
                continue;
            }
            placed.Add((zones[i], from, until.Value));
            from = until.Value;
        }
        if (!placed.Exists(p => p.Zone.Diameter is not null))
            return [];

        var stretches = new List<Stretch>(placed.Count);
        for (var i = 0; i < placed.Count; i++)
            stretches.Add(One(placed, i, say));
        return stretches;
    }

    private static Stretch One(
        List<(ShaftZone Zone, double From, double To)> placed,
        int i,
        DonorFindings say
    )
    {
        var (zone, from, to) = placed[i];
        var guessed = zone.Diameter is null;
        if (guessed)
            say.DiameterMissing(zone.Kind, from, to);
        var diameter = zone.Diameter?.Value ?? Neighbour(placed, i);
        var doubt = Doubt(DonorFields.Diameter, zone.Diameter);
        var end = diameter;
        if (zone.Kind == ZoneKind.Taper)
        {
            if (zone.EndDiameter is { } measured)
            {
                end = measured.Value;
                doubt = Math.Max(doubt, Doubt(DonorFields.EndDiameter, measured));
            }
            else
            {
                var next = i + 1 < placed.Count ? placed[i + 1].Zone.Diameter : null;
                say.TaperEndMissing(from, to, next?.Value);
                guessed |= next is null;
                end = next?.Value ?? diameter;
                doubt = Math.Max(doubt, Doubt(DonorFields.Diameter, next));
            }
        }
        var root = zone.Kind == ZoneKind.Spline ? zone.RootDiameter : null;
        if (zone.Kind == ZoneKind.Spline && root is null)
            say.RootMissing(from, to);
        return new Stretch(
            zone.Kind,
            from,
            to,
            diameter,
            end,
            root?.Value,
            guessed,
            doubt,
            Doubt(DonorFields.RootDiameter, root)
        )
        {
            Fillet = zone.Fillet?.Value ?? 0,
        };
    }

    /// <summary>The ± of a diameter. One of more than half the bar is no measurement; it is cut there so that a bar is left.</summary>
    private static double Doubt(Field<Distance> field, Measured<Distance>? diameter) =>
        diameter is null
            ? 0
            : Math.Min(diameter.PlusMinus ?? field.UsualPlusMinus, diameter.Value / 2);

    /// <summary>Diameter of the nearest zone that has one, the one before first.</summary>
    private static double Neighbour(List<(ShaftZone Zone, double From, double To)> placed, int i)
    {
        for (var step = 1; step < placed.Count; step++)
        {
            if (i - step >= 0 && placed[i - step].Zone is { Diameter: { } before } b)
                return b.Kind == ZoneKind.Taper ? (b.EndDiameter ?? before).Value : before.Value;
            if (i + step < placed.Count && placed[i + step].Zone.Diameter is { } after)
                return after.Value;
        }
        throw new InvalidOperationException("At least one zone has a diameter.");
    }
}
