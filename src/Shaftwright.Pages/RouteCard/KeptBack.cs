using Shaftwright.Pages.Components;
using Shaftwright.Pages.Doors;
using Shaftwright.Pages.Outbox;

namespace Shaftwright.Pages.Cards;

/// <summary>One thing typed on this device that a job would not take.</summary>
/// <param name="Operation">Code of the operation it belongs to; null when none is known.</param>
/// <param name="What">What it is, in a sentence: "the outer diameter".</param>
/// <param name="Text">What was typed.</param>
/// <param name="Why">Why the job does not have it, in a sentence.</param>
/// <param name="Where">Address of the screen it was typed on.</param>
public sealed record KeptBack(string? Operation, string What, string Text, string Why, string Where)
{
    /// <summary>What of the drafts on a device a job would not take.</summary>
    /// <param name="job">The job.</param>
    /// <param name="drafts">Every draft on the device.</param>
    /// <param name="operations">Codes of the route card's operations, in their order.</param>
    public static IReadOnlyList<KeptBack> Of(
        Shelved job,
        IReadOnlyList<DraftRow> drafts,
        IReadOnlyList<string> operations
    )
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(drafts);
        var back = new List<KeptBack>();
        foreach (var row in drafts)
        {
            // A draft goes by its door and its job, and what the job may hold many of.
            if (row.Key.Split(' ') is not [var door, var id, ..] || id != job.Id)
                continue;
            var typed = DraftText.Read(row.Text);
            foreach (var (key, one) in typed)
            {
                // A value and its ± are one measure.
                var value = key.EndsWith(Draft.PlusMinus, StringComparison.Ordinal)
                    ? key[..^Draft.PlusMinus.Length]
                    : key;
                if (one.Why.Length == 0 || (value != key && typed.ContainsKey(value)))
                    continue;
                var give = typed.GetValueOrDefault(value + Draft.PlusMinus)?.Text ?? "";
                var home = $"job/{id}/";
                var where = one.Where.StartsWith(home, StringComparison.Ordinal)
                    ? one.Where
                    : home + door;
                back.Add(
                    new(
                        Ways.OperationAt(where[home.Length..], job.Job, operations),
                        one.What,
                        value == key ? Units.Together(one.Text, give) : "± " + one.Text,
                        one.Why,
                        where
                    )
                );
            }
        }
        return back;
    }
}
