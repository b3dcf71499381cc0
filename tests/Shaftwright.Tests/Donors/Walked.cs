using CsCheck;
using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Donors;

/// <summary>Shafts for tests, as a person would type them.</summary>
internal static class Walked
{
    public static Measured<Distance> Mm(double mm) => Measured<Distance>.Of(mm, Distance.Mm);

    /// <summary>Without doubt, so that a sum of a textbook stands beside one number.</summary>
    public static Measured<Distance> Exactly(double mm) =>
        Measured<Distance>.Of(mm, Distance.Mm, 0);

    public static ShaftZone Zone(
        ZoneKind kind,
        double until,
        double diameter,
        double? end = null,
        double? root = null
    ) =>
        new()
        {
            Kind = kind,
            Until = Mm(until),
            Diameter = Exactly(diameter),
            EndDiameter = end is { } e ? Exactly(e) : null,
            RootDiameter = root is { } r ? Exactly(r) : null,
        };

    public static HardenedZone Hard(double from, double to, double? depth = null) =>
        new()
        {
            From = Mm(from),
            To = Mm(to),
            CaseDepth = depth is { } d ? Measured<Distance>.Of(d, Distance.Mm, 0) : null,
        };

    /// <summary>Spline to 40, clip groove to 43, bar of the given diameter, boot seat from 90 to 105, bar to the end.</summary>
    public static DonorShaft Usual(double diameter, double length) =>
        new()
        {
            Zones =
            [
                Zone(ZoneKind.Spline, 40, 26, root: 24),
                Zone(ZoneKind.Groove, 43, 22),
                Zone(ZoneKind.Plain, 90, diameter),
                Zone(ZoneKind.BootSeat, 105, diameter - 1),
                Zone(ZoneKind.Plain, length, diameter),
            ],
        };

    public static DonorsInput Pair(DonorShaft inner, DonorShaft outer) =>
        new() { InnerEnd = inner, OuterEnd = outer };

    /// <summary>Random shafts of tenths of a millimetre, mostly bar, with every kind of zone in them.</summary>
    public static Gen<DonorShaft> Random { get; } =
        from zones in Gen.Select(
            Gen.Frequency(
                (5, Gen.Const(ZoneKind.Plain)),
                (3, Gen.Const(ZoneKind.Taper)),
                (1, Gen.Const(ZoneKind.Spline)),
                (1, Gen.Const(ZoneKind.Groove)),
                (1, Gen.Const(ZoneKind.BootSeat)),
                (1, Gen.Const(ZoneKind.Step))
            ),
            Gen.Int[10, 1500],
            Gen.Int[200, 300],
            Gen.Int[-15, 15],
            Gen.Bool
        ).Array[1, 6]
        from hard in Gen.Int[0, 3000].Array[0, 1]
        select new DonorShaft
        {
            Zones = Zones(zones),
            Hardened = [.. hard.Select(h => Hard(h / 10.0, h / 10.0 + 60, 3))],
        };

    private static List<ShaftZone> Zones((ZoneKind, int, int, int, bool)[] parts)
    {
        var zones = new List<ShaftZone>();
        var at = 0;
        var before = 250;
        foreach (var (kind, length, diameter, change, follows) in parts)
        {
            at += length;
            var d = follows ? before : diameter;
            var end = kind == ZoneKind.Taper ? d + change : d;
            zones.Add(
                Zone(
                    kind,
                    at / 10.0,
                    d / 10.0,
                    kind == ZoneKind.Taper ? end / 10.0 : null,
                    kind == ZoneKind.Spline ? d / 10.0 - 2 : null
                )
            );
            before = end;
        }
        return zones;
    }
}
