using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Cut.Search;

/// <summary>Both sides of a car, and spares, from one shelf.</summary>
public static class ShelfShare
{
    /// <summary>Searches.</summary>
    /// <param name="jobs">What is asked for each job. All look at the shelf of the first.</param>
    /// <param name="spares">How many spares of each.</param>
    /// <returns>A plan in which no end is used twice, with what is lacking.</returns>
    /// <exception cref="ArgumentException">No job is given.</exception>
    public static ShareResult Solve(IReadOnlyList<ShelfRequest> jobs, int spares)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        if (jobs.Count == 0)
            throw new ArgumentException("At least one job is needed.", nameof(jobs));
        var shelf = jobs[0].Shelf;
        var findings = new List<Finding>();
        var ways = new List<IReadOnlyList<ShareCut>>();
        var like = new List<int>();
        var asked = new List<(int Job, int Spare)>();
        var lost = 0.0;
        for (var j = 0; j < jobs.Count; j++)
        {
            var plan = new JoinPlan(jobs[j].Cut, heat: null);
            lost = Math.Max(lost, plan.Kerf + 2 * plan.Facing);
            var made = Ways(jobs[j] with { Shelf = shelf }, plan);
            var first = ways.Count;
            for (var s = 0; s <= spares; s++)
            {
                ways.Add(made);
                like.Add(first);
                asked.Add((j, s));
            }
        }
        var share = new ShareOut(
            ways,
            like,
            [.. shelf.Donors.Select(d => ShelfProfiles.Walked(d) ?? 0)],
            lost
        );
        var cuts = share.Solve();
        DonorPick Pick(int donor, bool far) =>
            new(shelf.Donors[donor].Id, shelf.Donors[donor].Called, far, shelf.Donors[donor].Place);
        var shafts = new List<SharedShaft>();
        for (var i = 0; i < cuts.Count; i++)
            shafts.Add(
                new(
                    asked[i].Job,
                    asked[i].Spare,
                    cuts[i],
                    cuts[i] is { } a ? Pick(a.Inner, a.InnerFar) : null,
                    cuts[i] is { } b ? Pick(b.Outer, b.OuterFar) : null
                )
            );
        var missing = cuts.Count(c => c is null);
        if (missing > 0)
            findings.Add(
                new(
                    Severity.Stop,
                    Stage.Cut,
                    "share-not-all",
                    $"The shelf makes {cuts.Count - missing} of the {cuts.Count} shafts asked for.",
                    $"Find another donor, or make the rest with a tube between two stub ends.",
                    "geometry of the pieces"
                )
            );
        if (!share.Proven)
            findings.Add(
                new(
                    Severity.Note,
                    Stage.Cut,
                    "share-not-proven",
                    $"This plan is good, but a better one is not ruled out: the shelf is too large to look at every choice.",
                    $"Leave out shafts you would not use anyway, and ask again.",
                    "branch and bound, docs/shelf.md"
                )
            );
        return new()
        {
            Shafts = shafts,
            Carries = cuts.OfType<ShareCut>().Select(c => (double?)c.Carries).Min(),
            Proven = share.Proven,
            Looked = share.Looked,
            Findings = findings,
        };
    }

    /// <summary>For each pair that makes the length its strongest cut with most to spare, and the two ends of the range of cuts
    /// that carry as much: the ones that leave most of the one or the other shaft.</summary>
    private static List<ShareCut> Ways(ShelfRequest request, JoinPlan plan)
    {
        var ways = new List<ShareCut>();
        if ((request.Cut.OverallLength?.Value ?? request.SeatToSeat) is not { } span)
            return ways;
        var stock = new ShelfStock(request, plan);
        var lost = plan.Kerf + 2 * plan.Facing;
        foreach (var i in stock.Inner)
        {
            foreach (var o in stock.Outer)
            {
                var search = new PairSearch([i], [o], span - plan.GapLeft, lost, request.Metal);
                if (search.InTurn([SearchGoal.Strength, SearchGoal.Step]) is not { } turn)
                    continue;
                var f = turn.At;
                foreach (var u in new SortedSet<double> { f.U, f.From, f.To })
                    ways.Add(
                        new(
                            i.Donor,
                            i.Far,
                            u + i.Stub,
                            o.Donor,
                            o.Far,
                            span - plan.GapLeft - u + o.Stub,
                            -f.Span.Cost(SearchGoal.Strength, u),
                            f.Span.Cost(SearchGoal.Step, u)
                        )
                    );
            }
        }
        return ways;
    }
}
