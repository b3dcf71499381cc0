using Shaftwright.Cut.Search;
using Shaftwright.Donors;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Bench;

/// <summary>A large shelf of shafts that could have come out of cars: two splined ends, two boot seats, bar of two diameters with a
/// taper between, hardened at both ends; a third of the ends fits each of three joints.</summary>
internal static class RandomShelf
{
    public static ShelfRequest Of(int donors, bool sleeve)
    {
        var random = new Random(20260503);
        return new()
        {
            Shelf = new()
            {
                Donors = [.. Enumerable.Range(0, donors).Select(i => Donor(i, random))],
            },
            Joints = new()
            {
                Inner = new() { Name = "inner 0" },
                Outer = new() { Name = "outer 0" },
            },
            Cut = new()
            {
                OverallLength = Mm(520),
                SleeveLength = sleeve ? Mm(90) : null,
                SleeveOutside = sleeve ? Mm(38) : null,
            },
            Torque = 600_000,
            Metal = new(
                (steel, _) => ShearYield.Softened(steel).Low,
                (yield, d) => RoundSection.YieldTorque(yield, d),
                (yield, d) => RoundSection.FusedRingYieldTorque(yield, d, 0.15 * d)
            ),
        };
    }

    private static ShelfDonor Donor(int i, Random random)
    {
        double Between(double low, double high) =>
            Math.Round(low + (high - low) * random.NextDouble(), 1);
        var (near, far) = (Between(21, 27), Between(21, 29));
        var length = Between(380, 760);
        return new()
        {
            Id = $"{i}",
            Condition = DonorCondition.Sound,
            Carried = Measured<Torque>.Of(Between(300, 900), Torque.NewtonMetre),
            WalkedEnd = new() { Fits = [$"inner {random.Next(3)}"] },
            FarEnd = new() { Fits = [$"outer {random.Next(3)}"] },
            Shaft = new()
            {
                Steel = (SteelClass)random.Next(3),
                Zones =
                [
                    Zone(ZoneKind.Spline, 42, 26, root: 24),
                    Zone(ZoneKind.Groove, 45, 20.5),
                    Zone(ZoneKind.Plain, 66, near),
                    Zone(ZoneKind.BootSeat, 82, near - 0.4),
                    Zone(ZoneKind.Plain, length * 0.45, near),
                    Zone(ZoneKind.Taper, length * 0.55, near, end: far),
                    Zone(ZoneKind.Plain, length - 82, far),
                    Zone(ZoneKind.BootSeat, length - 66, far - 0.4),
                    Zone(ZoneKind.Plain, length - 42, far),
                    Zone(ZoneKind.Spline, length, 25, root: 23),
                ],
                Hardened = [Hard(0, 110), Hard(length - 130, length)],
            },
        };
    }

    private static Measured<Distance> Mm(double mm) =>
        Measured<Distance>.Of(Math.Round(mm, 1), Distance.Mm);

    private static HardenedZone Hard(double from, double to) =>
        new() { From = Mm(from), To = Mm(to) };

    private static ShaftZone Zone(
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
            Diameter = Mm(diameter),
            EndDiameter = end is { } e ? Mm(e) : null,
            RootDiameter = root is { } r ? Mm(r) : null,
        };
}
