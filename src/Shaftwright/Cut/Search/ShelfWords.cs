using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Cut.Search;

/// <summary>What the search says of a choice.</summary>
internal static class ShelfWords
{
    /// <summary>What it leads in.</summary>
    public static Sentence Why(IReadOnlyList<GoalValue> values)
    {
        List<Sentence> leads = [.. values.Where(v => v.Leads).Select(Leads)];
        return leads.Count == 0
            ? $"It leads in nothing alone, and loses little anywhere."
            : (Sentence)$"{Join(leads)}.";
    }

    /// <summary>What it gives up; null when it leads in everything.</summary>
    public static Sentence? GivesUp(IReadOnlyList<GoalValue> values)
    {
        List<Sentence> lost = [.. values.Where(v => !v.Leads).Select(Lost)];
        return lost.Count == 0 ? null : (Sentence)$"It gives up: {Join(lost)}.";
    }

    private static Sentence Leads(GoalValue v) =>
        v.Goal switch
        {
            SearchGoal.Step => $"the diameters match to {Say.Fine(v.Value)}",
            SearchGoal.Strength => $"weld and sleeve ends carry {Say.Torque(v.Value)} at least",
            SearchGoal.Softened when v.Value < 0.05 => $"no hardened metal is softened",
            SearchGoal.Softened => $"only {Say.Length(v.Value)} of hardened metal is softened",
            SearchGoal.Scrap when v.Value < 0.5 => $"nothing goes to scrap",
            SearchGoal.Scrap => $"only {Say.Length(v.Value)} goes to scrap",
            _ => $"it asks no more than {Say.Factor(v.Value)} of what the donors carried",
        };

    private static Sentence Lost(GoalValue v) =>
        v.Goal switch
        {
            SearchGoal.Step =>
                $"the diameters differ by {Say.Fine(v.Value)} where {Say.Fine(v.Best)} can be had",
            SearchGoal.Strength =>
                $"weld and sleeve ends carry {Say.Torque(v.Value)} where {Say.Torque(v.Best)} can be had",
            SearchGoal.Softened =>
                $"{Say.Length(v.Value)} of hardened metal is softened where {Say.Length(v.Best)} would do",
            SearchGoal.Scrap =>
                $"{Say.Length(v.Value)} goes to scrap where {Say.Length(v.Best)} would do",
            _ =>
                $"it asks {Say.Factor(v.Value)} of what the donors carried where {Say.Factor(v.Best)} can be had",
        };

    public static Sentence Join(IReadOnlyList<Sentence> parts, string by = "; ")
    {
        var all = Sentence.Plain("");
        for (var i = 0; i < parts.Count; i++)
        {
            if (i > 0)
                all.AppendLiteral(by);
            all.AppendFormatted(parts[i]);
        }
        return all;
    }
}
