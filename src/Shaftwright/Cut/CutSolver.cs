using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Cut;

/// <summary>Chooses, or judges, where two donors are cut and joined.</summary>
/// <remarks>With the inner donor cut at x and the outer at y, each from its own joint end, root gap g and shrinkage s, the welded
/// shaft is T = x + g + y − s long. So y follows from x, and one number is sought. Method: docs/cut.md.</remarks>
public static class CutSolver
{
    /// <summary>Solves the stage.</summary>
    /// <param name="donors">The donors in plain numbers.</param>
    /// <param name="cut">What was decided.</param>
    /// <param name="overall">Overall length from the length stage, mm; null when it has none. A typed one goes first.</param>
    /// <param name="heat">How far the heat reached on the sample; null without one, and then the typed or the usual width counts.</param>
    /// <returns>The place, every rule at it, and the shaft it makes; without a place, which rule forbids and by how much.</returns>
    public static CutResult Solve(
        DonorsResult donors,
        CutInput cut,
        double? overall,
        MeasuredHeat? heat = null
    )
    {
        ArgumentNullException.ThrowIfNull(donors);
        ArgumentNullException.ThrowIfNull(cut);
        var findings = new List<Finding>();
        var plan = new JoinPlan(cut, heat);
        var say = new CutFindings(plan, findings);
        var length = cut.OverallLength?.Value ?? overall;
        var result = new CutResult
        {
            Proposed = cut.InnerCutAt is null,
            Overall = length,
            Heat = heat,
            OverallPlusMinus = plan.PlusMinus,
            Findings = findings,
        };
        if (donors is not { InnerEnd: { } innerEnd, OuterEnd: { } outerEnd })
        {
            say.DonorMissing();
            return result;
        }
        say.Assumed(cut, heat);
        say.Measured(cut, heat);
        var inner = new Piece(ShaftEnd.Inner, innerEnd, plan);
        var outer = new Piece(ShaftEnd.Outer, outerEnd, plan);
        var possible = Placing.Possible(inner, outer);
        if (possible.Count > 0)
            result = result with
            {
                OverallPossible = new Band(
                    possible[0].From + plan.GapLeft,
                    possible.Max(p => p.To) + plan.GapLeft
                ),
            };
        if (length is not { } T)
        {
            say.LengthUnknown(result.OverallPossible);
            return result;
        }
        if (cut.OverallLength is { } asked && overall is { } found)
            say.TwoLengths(asked.Value, found);

        return cut.InnerCutAt is { } chosen
            ? Judge(result, inner, outer, plan, T, chosen.Value, say)
            : Propose(result, inner, outer, plan, T, possible, say);
    }

    private static CutResult Propose(
        CutResult result,
        Piece inner,
        Piece outer,
        JoinPlan plan,
        double T,
        IReadOnlyList<(double From, double To)> possible,
        CutFindings say
    )
    {
        var together = plan.PiecesTogether(T);
        if (Placing.SmallestStep(inner, outer, together) is not { } place)
        {
            say.NoPlace(inner, outer, T, possible);
            return result;
        }
        return Placed(result, inner, outer, plan, T, place.InnerAt, say) with
        {
            InnerDiameter = place.InnerDiameter,
            OuterDiameter = place.OuterDiameter,
        };
    }

    private static CutResult Judge(
        CutResult result,
        Piece inner,
        Piece outer,
        JoinPlan plan,
        double T,
        double x,
        CutFindings say
    )
    {
        var judged = Placed(result, inner, outer, plan, T, x, say);
        var broken = judged.Checks.Where(c => c.Heavy && !c.Holds).ToList();
        if (broken.Count == 0 && judged.Made is not null)
            return judged;
        double? nearest = null;
        foreach (var (from, to, _, _) in Placing.Sound(inner, outer, plan.PiecesTogether(T)))
        {
            var near = Math.Clamp(x, from, to);
            if (nearest is not { } n || Math.Abs(near - x) < Math.Abs(n - x))
                nearest = near;
        }
        say.BreaksRule(broken, x, nearest, judged, inner, outer);
        return judged;
    }

    private static CutResult Placed(
        CutResult result,
        Piece inner,
        Piece outer,
        JoinPlan plan,
        double T,
        double x,
        CutFindings say
    )
    {
        var y = plan.PiecesTogether(T) - x;
        var innerBar = inner.StretchAt(x);
        var outerBar = outer.StretchAt(y);
        var checks = new List<CutCheck>();
        if (x > 0)
            checks.AddRange(CutRules.Checks(inner, plan, x));
        if (y > 0)
            checks.AddRange(CutRules.Checks(outer, plan, y));
        say.Weighed(checks);
        say.Boots(inner, outer);
        say.UnderSleeve(inner, x);
        say.UnderSleeve(outer, y);
        if (innerBar is { } a && outerBar is { } b)
            say.Step(a.At(x), b.At(y));
        say.TackFirst(T);
        return result with
        {
            InnerAt = x,
            OuterAt = y,
            InnerDiameter = innerBar?.At(x),
            OuterDiameter = outerBar?.At(y),
            Checks = checks,
            Marks = Marking.Of(inner, outer, x, y, plan),
            Made =
                innerBar is null || outerBar is null || !Assembly.HasBothEnds(x, y, T)
                    ? null
                    : Assembly.Shaft(inner.Donor, outer.Donor, x, y, T, plan),
        };
    }
}
