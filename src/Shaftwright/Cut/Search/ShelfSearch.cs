using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Cut.Search;

/// <summary>Looks through the whole shelf for two ends and where to cut them.</summary>
/// <remarks>Exact: over all shafts, both ends of each, and every position between the breaks of their profiles, not over a grid.
/// Method and limits: docs/shelf.md.</remarks>
public static class ShelfSearch
{
    /// <summary>What each entry of the short list is chosen for, and what settles it among its equals.</summary>
    private static readonly SearchGoal[][] s_orders =
    [
        [SearchGoal.Step, SearchGoal.Strength, SearchGoal.Softened],
        [SearchGoal.Strength, SearchGoal.Step, SearchGoal.Softened],
        [SearchGoal.Softened, SearchGoal.Strength, SearchGoal.Step],
        [SearchGoal.Scrap, SearchGoal.Strength, SearchGoal.Step],
        [SearchGoal.Yardstick, SearchGoal.Strength, SearchGoal.Step],
    ];

    /// <summary>Searches.</summary>
    /// <param name="request">The shelf and what is asked of it.</param>
    /// <returns>The short list, and for every other shaft why it is not on it; with a finding when no length is known or no pair
    /// will do.</returns>
    public static ShelfResult Solve(ShelfRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var findings = new List<Finding>();
        var say = new ShelfFindings(findings);
        var plan = new JoinPlan(request.Cut, heat: null);
        var stock = new ShelfStock(request, plan);
        say.Joints(request);
        var typed = request.Cut.OverallLength?.Value;
        if ((typed ?? request.SeatToSeat) is not { } span)
        {
            say.LengthUnknown();
            return new() { Rejected = stock.Unusable(), Findings = findings };
        }
        var search = new PairSearch(
            stock.Inner,
            stock.Outer,
            span - plan.GapLeft,
            plan.Kerf + 2 * plan.Facing,
            request.Metal
        );
        var best = new Dictionary<SearchGoal, double>();
        var found = new List<Found>();
        foreach (var order in s_orders)
        {
            if (
                order[0] == SearchGoal.Yardstick && !stock.AnyYardstick
                || search.InTurn(order) is not { } turn
            )
                continue;
            best[order[0]] = turn.Best[0];
            found.Add(turn.At);
        }
        var choices = Choices(found, best, request, plan, stock);
        if (choices.Count == 0)
            say.NoPair(stock, span, plan);
        return new()
        {
            Choices = choices,
            Rejected = stock.Rejected(choices, best, span - plan.GapLeft),
            Pairs = (long)stock.Inner.Count * stock.Outer.Count,
            Worked = search.Worked,
            Findings = findings,
        };
    }

    private static List<ShelfChoice> Choices(
        List<Found> found,
        Dictionary<SearchGoal, double> best,
        ShelfRequest request,
        JoinPlan plan,
        ShelfStock stock
    )
    {
        List<SearchGoal> goals = [.. best.Keys];
        double Limit(SearchGoal g) => best[g] + PairSearch.Slack(g, best[g]) + 1e-6;
        // Two cuts of one pair are one choice when nobody could tell them apart by any goal, nor by what each leads in.
        bool Same(Found a, Found b) =>
            a.Inner == b.Inner
            && a.Outer == b.Outer
            && goals.TrueForAll(g =>
                Cost(g, a) == Cost(g, b)
                || Cost(g, a) <= Limit(g) == Cost(g, b) <= Limit(g)
                    && Math.Abs(Cost(g, a) - Cost(g, b)) <= PairSearch.Slack(g, best[g])
            );
        var apart = new List<Found>();
        foreach (var f in found)
        {
            if (!apart.Exists(a => Same(a, f)))
                apart.Add(f);
        }
        bool Beats(Found a, Found b) =>
            goals.TrueForAll(g => Cost(g, a) <= Cost(g, b) + 1e-9)
            && goals.Exists(g => Cost(g, a) < Cost(g, b) - PairSearch.Slack(g, best[g]));
        apart.RemoveAll(b => apart.Exists(a => Beats(a, b)));
        return [.. apart.Select(f => Choice(f, goals, best, request, plan, stock))];
    }

    private static double Cost(SearchGoal goal, Found f) => f.Span.Cost(goal, f.U);

    private static ShelfChoice Choice(
        Found f,
        List<SearchGoal> goals,
        Dictionary<SearchGoal, double> best,
        ShelfRequest request,
        JoinPlan plan,
        ShelfStock stock
    )
    {
        var x = f.U + f.Inner.Stub;
        var overall =
            (request.Cut.OverallLength?.Value ?? request.SeatToSeat!.Value)
            + f.Inner.Stub
            + f.Outer.Stub;
        var y = plan.PiecesTogether(overall) - x;
        var values = new List<GoalValue>();
        foreach (var goal in goals)
        {
            var cost = Cost(goal, f);
            if (!double.IsFinite(cost))
                continue;
            var sign = goal == SearchGoal.Strength ? -1 : 1;
            values.Add(
                new(
                    goal,
                    sign * cost,
                    sign * best[goal],
                    cost <= best[goal] + PairSearch.Slack(goal, best[goal]) + 1e-6
                )
            );
        }
        return new()
        {
            Inner = stock.Pick(f.Inner),
            Outer = stock.Pick(f.Outer),
            InnerAt = x,
            OuterAt = y,
            InnerDiameter = f.Span.InnerDiameter(f.U),
            OuterDiameter = f.Span.OuterDiameter(f.U),
            Overall = overall,
            Goals = values,
            Why = ShelfWords.Why(values),
            GivesUp = ShelfWords.GivesUp(values),
            Mind = stock.Mind(f),
        };
    }
}
