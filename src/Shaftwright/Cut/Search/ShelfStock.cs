using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Cut.Search;

/// <summary>Every end on the shelf that could serve, and for the others why not.</summary>
internal sealed class ShelfStock
{
    private readonly ShelfRequest _request;
    private readonly JoinPlan _plan;
    private readonly List<SearchPiece> _inner = [];
    private readonly List<SearchPiece> _outer = [];

    /// <summary>For each shaft what was said against its ends, the nearest to usable last.</summary>
    private readonly List<(int Near, Sentence Why)>[] _against;

    public ShelfStock(ShelfRequest request, JoinPlan plan)
    {
        _request = request;
        _plan = plan;
        _against = new List<(int, Sentence)>[request.Shelf.Donors.Count];
        for (var i = 0; i < _against.Length; i++)
        {
            _against[i] = [];
            Take(i, request.Shelf.Donors[i]);
        }
    }

    /// <summary>Ends that fit the inner joint and have a sound cut.</summary>
    public IReadOnlyList<SearchPiece> Inner => _inner;

    /// <summary>Ends that fit the outer joint and have a sound cut.</summary>
    public IReadOnlyList<SearchPiece> Outer => _outer;

    /// <summary>True when both ends of some pair can be held against what the donors carried.</summary>
    public bool AnyYardstick =>
        _inner.Exists(p => p.Yardstick is not null) && _outer.Exists(p => p.Yardstick is not null);

    public DonorPick Pick(SearchPiece piece)
    {
        var donor = _request.Shelf.Donors[piece.Donor];
        return new(donor.Id, donor.Called, piece.Far, donor.Place);
    }

    /// <summary>What must be known of a pair beside its numbers.</summary>
    public IReadOnlyList<Sentence> Mind(Found f)
    {
        var mind = new List<Sentence>();
        var donors = new[] { f.Inner.Donor, f.Outer.Donor }
            .Distinct()
            .Select(i => _request.Shelf.Donors[i]);
        foreach (var donor in donors)
        {
            if (donor.Condition == DonorCondition.Bent)
                mind.Add($"{donor.Called} is bent: straighten it before you measure and cut.");
            if (donor.Condition == DonorCondition.Unsaid)
                mind.Add(
                    $"Nobody has looked {donor.Called} over: clean it, and look along it and at both splines before you cut."
                );
            if (
                donor.Side != Side.Unsaid
                && _request.Side != Side.Unsaid
                && donor.Side != _request.Side
            )
                mind.Add(
                    $"{donor.Called} was a {Words(donor.Side)} shaft and goes to the {Words(_request.Side)}: it is twisted the other way than all its life. Test it for cracks before you cut."
                );
        }
        if (f.Inner.Donor == f.Outer.Donor)
            mind.Add($"One shaft gives both ends: it is cut twice and its middle is left over.");
        return mind;
    }

    /// <summary>Shafts that cannot be used whatever the length.</summary>
    public IReadOnlyList<ShelfRejection> Unusable()
    {
        var used = _inner.Concat(_outer).Select(p => p.Donor).ToHashSet();
        return
        [
            .. Enumerable
                .Range(0, _against.Length)
                .Where(i => !used.Contains(i))
                .Select(i => Rejection(i, Nearest(i), fits: false)),
        ];
    }

    /// <summary>Every shaft that is in no choice.</summary>
    public IReadOnlyList<ShelfRejection> Rejected(
        IReadOnlyList<ShelfChoice> choices,
        Dictionary<SearchGoal, double> best,
        double together
    )
    {
        var chosen = choices
            .SelectMany(c => new[] { c.Inner.Id, c.Outer.Id })
            .ToHashSet(StringComparer.Ordinal);
        var pieces = _inner.Concat(_outer).ToLookup(p => p.Donor);
        var reach = (Inner: Reach(_inner), Outer: Reach(_outer));
        var rejected = new List<ShelfRejection>();
        for (var i = 0; i < _against.Length; i++)
        {
            if (chosen.Contains(_request.Shelf.Donors[i].Id))
                continue;
            if (!pieces[i].Any())
            {
                rejected.Add(Rejection(i, Nearest(i), fits: false));
                continue;
            }
            var reaching = pieces[i]
                .Where(p => Misses(p, together, reach.Inner, reach.Outer) is null)
                .ToList();
            rejected.Add(
                reaching.Count == 0
                    ? Rejection(
                        i,
                        Misses(pieces[i].First(), together, reach.Inner, reach.Outer)!,
                        fits: false
                    )
                    : Rejection(i, Beaten(reaching, best), fits: true)
            );
        }
        return rejected;
    }

    private ShelfRejection Rejection(int donor, Sentence why, bool fits) =>
        new(_request.Shelf.Donors[donor].Id, _request.Shelf.Donors[donor].Called, why, fits);

    /// <summary>What stands against the end that comes nearest to being of use; all of it where two come as near.</summary>
    private Sentence Nearest(int donor)
    {
        var near = _against[donor].Max(a => a.Near);
        return ShelfWords.Join(
            [.. _against[donor].Where(a => a.Near == near).Select(a => a.Why).Distinct()],
            " "
        );
    }

    private static (double Low, double High) Reach(List<SearchPiece> pieces) =>
        pieces.Count == 0
            ? (double.NaN, double.NaN)
            : (pieces.Min(p => p.Low), pieces.Max(p => p.High));

    /// <summary>What a piece lacks of the length with any partner; null when one can make it up.</summary>
    private static Sentence? Misses(
        SearchPiece p,
        double together,
        (double Low, double High) inner,
        (double Low, double High) outer
    )
    {
        var partner = p.Piece.End == ShaftEnd.Inner ? outer : inner;
        if (double.IsNaN(partner.Low))
            return $"Nothing on the shelf can be its other half.";
        if (p.High + partner.High < together - Piece.Rounding)
            return $"It is too short: with the longest partner {Say.Length(together - p.High - partner.High)} is lacking.";
        if (p.Low + partner.Low > together + Piece.Rounding)
            return $"It is too long where it may be cut: with the shortest partner {Say.Length(p.Low + partner.Low - together)} is too much.";
        return null;
    }

    private static Sentence Beaten(List<SearchPiece> pieces, Dictionary<SearchGoal, double> best)
    {
        if (best.Count == 0)
            return $"It could be cut, but nothing that fits goes with it.";
        var carries = pieces.Max(p => p.Carries);
        if (best.TryGetValue(SearchGoal.Strength, out var strongest) && carries < -strongest * 0.99)
            return $"It could be used. Where it may be cut it carries {Say.Torque(carries)} at most beside the weld, and {Say.Torque(-strongest)} can be had.";
        var softens = pieces.Min(p => p.Softens);
        if (best.TryGetValue(SearchGoal.Softened, out var least) && softens > least + 1)
            return $"It could be used, but {Say.Length(softens)} of its hardened metal would be softened at least, and {Say.Length(least)} will do.";
        return $"It could be used. It leads in nothing that is asked of a pair.";
    }

    private void Take(int index, ShelfDonor donor)
    {
        var against = _against[index];
        if (donor.Condition == DonorCondition.Scrap)
        {
            against.Add((0, $"It is set aside as scrap."));
            return;
        }
        if (donor.Shaft is not { Zones.Count: > 0 } shaft)
        {
            against.Add((0, $"It has not been walked with a caliper."));
            return;
        }
        var faults = ProfileFaults.Of(shaft);
        if (faults.Count > 0)
        {
            against.Add(
                (1, $"As written down it cannot be: {ShelfWords.Join(faults)}. Measure that again.")
            );
            return;
        }
        if (DonorsSolver.Profile(shaft, new DonorFindings(donor.Called, [])) is not { } profile)
        {
            against.Add((1, $"No stretch of it has both an end and a diameter."));
            return;
        }
        if (donor is { WalkedEnd: null, FarEnd: null })
            against.Add((1, $"Nothing says which joint goes on either end."));
        Take(index, donor, shaft, profile, donor.WalkedEnd, far: false);
        Take(index, donor, shaft, profile, donor.FarEnd, far: true);
    }

    private void Take(
        int index,
        ShelfDonor donor,
        DonorShaft shaft,
        DonorProfile profile,
        DonorEnd? end,
        bool far
    )
    {
        if (end is null)
            return;
        var which = far ? "far" : "walked";
        var against = _against[index];
        if (far && shaft.Zones.Any(z => z.Until is null))
        {
            against.Add((2, $"It was not walked to its far end."));
            return;
        }
        var whole = far ? ShelfProfiles.Turned(profile) : profile;
        if (ShelfProfiles.Left(donor, far) is { } left)
        {
            if (left <= 0)
            {
                var gone = Gone(donor, far);
                against.Add(
                    (
                        2,
                        $"Its {which} end is {(gone?.Why == GoneWhy.Damaged ? "damaged" : "gone")}{(gone?.Note.Length > 0 ? $" ({gone.Note})" : "")}."
                    )
                );
                return;
            }
            whole = ShelfProfiles.UpTo(whole, left);
        }
        // What is left of a donor is worth keeping when a joint still goes on its other end.
        var other = far ? donor.WalkedEnd : donor.FarEnd;
        var keeps = other is not null && ShelfProfiles.Left(donor, !far) is not <= 0;
        foreach (var role in new[] { ShaftEnd.Inner, ShaftEnd.Outer })
        {
            var joint = role == ShaftEnd.Inner ? _request.Joints?.Inner : _request.Joints?.Outer;
            if (EndFit.Against(end, shaft, far, joint) is { } no)
            {
                against.Add((3, $"Its {which} end {no}."));
                continue;
            }
            double stub = 0;
            if (_request.Cut.OverallLength is null)
            {
                if ((end.SeatToEnd ?? joint?.SeatToEnd) is not { } beyond)
                {
                    against.Add(
                        (4, $"Nothing says how far its {which} end stands beyond the joint's seat.")
                    );
                    continue;
                }
                stub = beyond.Value;
            }
            var piece = new Piece(role, whole, _plan);
            if (!piece.Runs.Any(r => r.Sound))
            {
                against.Add((5, NoCut(piece, which)));
                continue;
            }
            (role == ShaftEnd.Inner ? _inner : _outer).Add(
                new SearchPiece(
                    index,
                    far,
                    piece,
                    _plan,
                    profile.Length,
                    stub,
                    _request.Metal,
                    _request.Torque / donor.Carried?.Value,
                    keeps ? null : whole.Length - stub
                )
            );
        }
    }

    private static string Words(Side side) => side == Side.Left ? "left" : "right";

    private static GoneStretch? Gone(ShelfDonor donor, bool far) =>
        far
            ? donor.Gone.MaxBy(g => g.To?.Value ?? double.PositiveInfinity)
            : donor.Gone.MinBy(g => g.From?.Value ?? 0);

    /// <summary>The rule that forbids every cut of a piece, where it is missed by least.</summary>
    private static Sentence NoCut(Piece piece, string which)
    {
        if (piece.Runs.Count == 0)
            return $"From its {which} end there is no plain bar to cut in.";
        var run = piece.Runs.MinBy(r => r.Earliest - r.To);
        var rule = piece
            .Rules.Select(r => (Rule: r, Has: piece.Has(r, run.To)))
            .Where(r => r.Has is not null)
            .MinBy(r => r.Has!.Value - r.Rule.Needs);
        return $"From its {which} end no cut keeps every rule. Nearest is {Say.Length(run.To)}, where {Say.Length(run.Earliest - run.To)} is lacking: {rule.Rule.Words}.";
    }
}
