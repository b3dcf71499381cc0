namespace Shaftwright.Cut.Search;

/// <summary>A pair and the inner cut, from the seat of the inner joint, mm.</summary>
/// <param name="Inner">Gives the inner end.</param>
/// <param name="Outer">Gives the outer end.</param>
/// <param name="Span">Both between two breaks.</param>
/// <param name="From">The first cut that is as good.</param>
/// <param name="To">The last.</param>
internal readonly record struct Found(
    SearchPiece Inner,
    SearchPiece Outer,
    PairSpan Span,
    double From,
    double To
)
{
    /// <summary>Of the cuts that are as good, the one whose tightest rule has most to spare; on a mark of the rule if one lies
    /// there, since nobody scribes a hundredth.</summary>
    public double U
    {
        get
        {
            var free = Span.Freest(From, To);
            foreach (var digits in new[] { 1, 2 })
            {
                var mark = Math.Round(free + Inner.Stub, digits) - Inner.Stub;
                if (mark >= From && mark <= To)
                    return mark;
            }
            return free;
        }
    }
}

/// <summary>Finds the best pair of pieces and the best cut of it, over all pairs and all cuts.</summary>
/// <remarks>One pass finds the least cost of one goal among all cuts that keep the limits of the goals before it. Pieces are
/// taken in the order of the best each can do in the goal; since a pair does no better than either of its pieces, the pass ends
/// as soon as no piece left can beat what was found. Pairs that cannot make the length, or keep a limit, are passed over by their
/// bounds. What remains is worked through span by span, each settled exactly.</remarks>
internal sealed class PairSearch(
    IReadOnlyList<SearchPiece> inner,
    IReadOnlyList<SearchPiece> outer,
    double together,
    double lostBetween,
    HeatedMetal metal
)
{
    /// <summary>How many times a pair was worked through.</summary>
    public long Worked { get; private set; }

    /// <summary>From seat to seat along the two pieces, mm.</summary>
    public double Together => together;

    /// <summary>What makes no difference at the bench, in the goal's unit.</summary>
    public static double Slack(SearchGoal goal, double best) =>
        goal switch
        {
            // A caliper's worth.
            SearchGoal.Step => 0.05,
            SearchGoal.Strength => Math.Abs(best) * 0.01,
            SearchGoal.Softened => 1,
            SearchGoal.Scrap => 5,
            _ => Math.Abs(best) * 0.01,
        };

    /// <summary>The least cost of each goal in turn, each among the cuts that keep what the goals before it found; and the pair
    /// with all its cuts that keep them. Null when there is no sound cut.</summary>
    public (IReadOnlyList<double> Best, Found At)? InTurn(IReadOnlyList<SearchGoal> goals)
    {
        var limits = new List<(SearchGoal, double)>();
        var best = new List<double>();
        Found last = default;
        foreach (var goal in goals)
        {
            if (Pass(goal, limits) is not { } found)
                return null;
            best.Add(found.Cost);
            limits.Add((goal, found.Cost + Slack(goal, found.Cost) + 1e-9));
            last = found.At;
        }
        var (from, to) = (last.From, last.To);
        var (final, limit) = limits[^1];
        last.Span.Narrow(final, limit, ref from, ref to);
        return (best, last with { From = from, To = to });
    }

    private (double Cost, Found At)? Pass(
        SearchGoal goal,
        List<(SearchGoal Goal, double Limit)> limits
    )
    {
        var (ins, outs) = (Sorted(inner, goal, limits), Sorted(outer, goal, limits));
        var best = double.PositiveInfinity;
        Found? at = null;
        // A shaft that gives both ends wastes less than its two pieces would alone, so it goes first and outside the bounds.
        var byDonor = outs.ToLookup(o => o.Donor);
        foreach (var i in ins)
        {
            foreach (var o in byDonor[i.Donor])
                Work(i, o);
        }
        foreach (var i in ins)
        {
            // Sorted by diameter, a thicker piece may still meet a thinner one; only a perfect match ends that pass.
            if (
                outs.Length == 0
                || (goal == SearchGoal.Step ? best <= 0 : Bound(goal, i, outs[0]) >= best)
            )
                break;
            foreach (var o in outs)
            {
                if (
                    goal == SearchGoal.Step
                        ? best <= 0 || o.Thin - i.Thick >= best
                        : Bound(goal, i, o) >= best
                )
                    break;
                if (i.Donor != o.Donor && Bound(goal, i, o) < best)
                    Work(i, o);
            }
        }
        return at is { } f ? (best, f) : null;

        void Work(SearchPiece i, SearchPiece o)
        {
            if (!CanMeet(i, o) || !CanKeep(i, o, limits))
                return;
            Worked++;
            foreach (var si in i.Spans)
            {
                foreach (var so in o.Spans)
                    Try(i, o, si, so);
            }
        }

        void Try(SearchPiece i, SearchPiece o, CutSpan si, CutSpan so)
        {
            var span = new PairSpan(i, o, si, so, together, metal);
            var (from, to) = (span.From, span.To);
            if (from > to)
                return;
            foreach (var (g, limit) in limits)
            {
                if (!span.Narrow(g, limit, ref from, ref to))
                    return;
            }
            var cost = span.Least(goal, from, to);
            if (cost >= best)
                return;
            best = cost;
            at = new Found(i, o, span, from, to);
        }
    }

    /// <summary>Whether the two can make the length between them, the saw's share of a shaft that gives both ends included.</summary>
    private bool CanMeet(SearchPiece i, SearchPiece o)
    {
        if (
            i.Low + o.Low > together + Piece.Rounding
            || i.High + o.High < together - Piece.Rounding
        )
            return false;
        return i.Donor != o.Donor
            || (i.Far != o.Far && together + i.Stub + o.Stub + lostBetween <= i.Walked);
    }

    private static bool CanKeep(
        SearchPiece i,
        SearchPiece o,
        List<(SearchGoal Goal, double Limit)> limits
    )
    {
        foreach (var (goal, limit) in limits)
        {
            if (Bound(goal, i, o) > limit)
                return false;
        }
        return true;
    }

    /// <summary>No cut of the pair costs less.</summary>
    private static double Bound(SearchGoal goal, SearchPiece i, SearchPiece o) =>
        goal switch
        {
            SearchGoal.Step => Math.Max(0, Math.Max(i.Thin - o.Thick, o.Thin - i.Thick)),
            SearchGoal.Softened => i.Softens + o.Softens,
            SearchGoal.Scrap => i.Donor == o.Donor ? 0 : i.Scraps + o.Scraps,
            _ => Math.Max(Bound(goal, i), Bound(goal, o)),
        };

    private static double Bound(SearchGoal goal, SearchPiece p) =>
        goal switch
        {
            SearchGoal.Step => p.Thin,
            SearchGoal.Strength => -p.Carries,
            SearchGoal.Softened => p.Softens,
            SearchGoal.Scrap => p.Scraps,
            _ => p.Yardstick ?? double.PositiveInfinity,
        };

    /// <summary>The pieces that can keep the limits alone, the best in the goal first.</summary>
    private static SearchPiece[] Sorted(
        IReadOnlyList<SearchPiece> pieces,
        SearchGoal goal,
        List<(SearchGoal Goal, double Limit)> limits
    )
    {
        var sorted = new List<SearchPiece>(pieces.Count);
        foreach (var piece in pieces)
        {
            var keeps = true;
            foreach (var (g, limit) in limits)
                keeps &= g is SearchGoal.Step or SearchGoal.Scrap || Bound(g, piece) <= limit;
            if (keeps)
                sorted.Add(piece);
        }
        var keys = sorted.ConvertAll(p => Bound(goal, p)).ToArray();
        var order = sorted.ToArray();
        // Array.Sort is not stable; the order of the shelf settles what is alike.
        var index = Enumerable.Range(0, order.Length).ToArray();
        Array.Sort(index, (a, b) => keys[a] != keys[b] ? keys[a].CompareTo(keys[b]) : a - b);
        return [.. index.Select(k => order[k])];
    }
}
