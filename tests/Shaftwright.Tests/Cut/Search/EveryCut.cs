using Shaftwright.Cut;
using Shaftwright.Cut.Search;
using Shaftwright.Donors;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Tests.Cut.Search;

/// <summary>The search written a second time, as one would without thinking: every pair of ends, and cuts a fixed step apart.</summary>
internal sealed class EveryCut
{
    /// <summary>Every goal of one cut of one pair.</summary>
    public sealed record Tried(
        double Spare,
        double Step,
        double Carries,
        double Softened,
        double Scrap,
        double Yardstick
    )
    {
        public double Cost(SearchGoal goal) =>
            goal switch
            {
                SearchGoal.Step => Step,
                SearchGoal.Strength => -Carries,
                SearchGoal.Softened => Softened,
                SearchGoal.Scrap => Scrap,
                _ => Yardstick,
            };
    }

    private readonly ShelfRequest _request;
    private readonly List<(ShelfDonor Donor, bool Far, DonorProfile Profile)> _ends = [];

    public EveryCut(ShelfRequest request)
    {
        _request = request;
        foreach (var donor in request.Shelf.Donors)
        {
            if (ProfileFaults.Of(donor.Shaft!).Count > 0)
                continue;
            foreach (var far in new[] { false, true })
            {
                if ((far ? donor.FarEnd : donor.WalkedEnd) is null)
                    continue;
                if (ShelfProfiles.ShaftFrom(donor, far) is not { } shaft)
                    continue;
                // The profile by way of the numbers as typed, not by turning the plain ones round.
                _ends.Add((donor, far, DonorsSolver.Solve(new() { InnerEnd = shaft }).InnerEnd!));
            }
        }
    }

    /// <summary>What was asked in the tests, in numbers.</summary>
    private double GapLeft => _request.Cut.RootGap!.Value - _request.Cut.Shrinkage!.Value;

    /// <summary>The least cost of each goal over all sound cuts of a grid; empty when there is none.</summary>
    public Dictionary<SearchGoal, double> Least(double grid)
    {
        var least = new Dictionary<SearchGoal, double>();
        foreach (var inner in _ends)
        {
            foreach (var outer in _ends)
            {
                if (inner.Donor == outer.Donor && inner.Far == outer.Far)
                    continue;
                var together = _request.Cut.OverallLength!.Value - GapLeft;
                if (inner.Donor == outer.Donor && together + 4 > Whole(inner.Donor))
                    continue;
                // Off the round tenths, so that no sample falls on a boundary by chance.
                for (var x = grid * 0.3137; x < together; x += grid)
                {
                    var tried = Try(inner, outer, x);
                    if (tried.Spare < 1e-6)
                        continue;
                    foreach (var goal in Enum.GetValues<SearchGoal>())
                    {
                        if (!least.TryGetValue(goal, out var before) || tried.Cost(goal) < before)
                            least[goal] = tried.Cost(goal);
                    }
                }
            }
        }
        return least;
    }

    /// <summary>One choice, judged again: at the cut, and a hair to each side of it on either piece, since where two stretches meet
    /// with less than a step either of their readings is right.</summary>
    public List<Tried> Judge(ShelfChoice choice)
    {
        double[] hairs = [0, -1e-8, 1e-8];
        return
        [
            .. from dx in hairs
            from dy in hairs
            select Try(
                _ends.Single(e => e.Donor.Id == choice.Inner.Id && e.Far == choice.Inner.Far),
                _ends.Single(e => e.Donor.Id == choice.Outer.Id && e.Far == choice.Outer.Far),
                choice.InnerAt + dx,
                dy
            ),
        ];
    }

    private static double Whole(ShelfDonor donor) => donor.Shaft!.Zones[^1].Until!.Value;

    private Tried Try(
        (ShelfDonor Donor, bool Far, DonorProfile Profile) inner,
        (ShelfDonor Donor, bool Far, DonorProfile Profile) outer,
        double x,
        double dy = 0
    )
    {
        var y = _request.Cut.OverallLength!.Value - GapLeft - x + dy;
        var spare = Math.Min(
            CutProperties.Spare(inner.Profile, x, _request.Cut),
            CutProperties.Spare(outer.Profile, y, _request.Cut)
        );
        if (spare < -1e-6)
            return new(spare, 0, 0, 0, 0, 0);
        var (a, b) = (At(inner.Profile, x), At(outer.Profile, y));
        var (softA, softB) = (
            _request.Metal.Softened(inner.Profile.Steel, ShaftEnd.Inner),
            _request.Metal.Softened(outer.Profile.Steel, ShaftEnd.Outer)
        );
        var thinner = Math.Min(a, b);
        var carries = new[]
        {
            RoundSection.YieldTorque(softA, Thinnest(inner.Profile, x)),
            RoundSection.YieldTorque(softB, Thinnest(outer.Profile, y)),
            RoundSection.FusedRingYieldTorque(Math.Min(softA, softB), thinner, 0.15 * thinner),
        }.Min();
        return new(
            spare,
            Math.Abs(a - b),
            carries,
            Softened(inner.Profile, x) + Softened(outer.Profile, y),
            inner.Donor == outer.Donor
                ? Math.Min(Whole(inner.Donor), inner.Profile.Length + outer.Profile.Length) - x - y
                : Scrap(inner.Donor, inner.Far, inner.Profile.Length - x)
                    + Scrap(outer.Donor, outer.Far, outer.Profile.Length - y),
            Math.Max(Over(inner.Donor), Over(outer.Donor))
        );
    }

    private static double Scrap(ShelfDonor donor, bool far, double rest) =>
        (far ? donor.WalkedEnd : donor.FarEnd) is null || ShelfProfiles.Left(donor, !far) <= 0
            ? rest
            : 0;

    private double Over(ShelfDonor donor) =>
        _request.Torque / donor.Carried?.Value ?? double.PositiveInfinity;

    private double Band => _request.Cut.HeatBand!.Value;

    private (double From, double To)[] Heated(double c)
    {
        var weld = c + GapLeft / 2;
        if (_request.Cut.SleeveLength is not { } sleeve)
            return [(weld - Band, c)];
        var end = weld - sleeve.Value / 2;
        return [(weld - Band, c), (end - Band, Math.Min(c, end + Band))];
    }

    private double Thinnest(DonorProfile donor, double c)
    {
        var thin = double.PositiveInfinity;
        foreach (var (from, to) in Heated(c))
        {
            foreach (var s in donor.Stretches.Where(s => s.To > from && s.From < to))
                thin = Math.Min(
                    thin,
                    Math.Min(s.At(Math.Max(s.From, from)), s.At(Math.Min(s.To, to)))
                        - s.DiameterDoubt
                );
        }
        return thin;
    }

    /// <summary>Hardened length under the two bands of heat, counted in slices: what both cover counts once.</summary>
    private double Softened(DonorProfile donor, double c)
    {
        var bands = new List<(double From, double To)> { (c - Band, c) };
        if (_request.Cut.SleeveLength is { } sleeve)
        {
            var end = c - (sleeve.Value / 2 - GapLeft / 2);
            bands.Add((end - Band, Math.Min(c, end + Band)));
        }
        var edges = bands
            .SelectMany(b => new[] { b.From, b.To })
            .Concat(donor.Hardened.SelectMany(h => new[] { h.From, h.To }))
            .Order()
            .ToList();
        var sum = 0.0;
        for (var i = 0; i + 1 < edges.Count; i++)
        {
            var m = (edges[i] + edges[i + 1]) / 2;
            if (
                bands.Exists(b => m > b.From && m < b.To)
                && donor.Hardened.Any(h => m > h.From && m < h.To)
            )
                sum += edges[i + 1] - edges[i];
        }
        return sum;
    }

    private static double At(DonorProfile donor, double c) =>
        donor
            .Stretches.First(s =>
                s.Kind is ZoneKind.Plain or ZoneKind.Taper && c >= s.From - 1e-9 && c <= s.To + 1e-9
            )
            .At(c);
}
