using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>An entry of a record that is corrected by a later entry and never erased.</summary>
public interface IEntry
{
    /// <summary>A stable id, unique within the stage.</summary>
    string Id { get; }

    /// <summary>Id of the earlier entry that this one puts right; empty when it is new.</summary>
    string Corrects { get; }

    /// <summary>True when what it corrects did not happen at all: both then stand in the record and count for nothing.</summary>
    bool Withdrawn { get; }
}

/// <summary>Which entries of a record count.</summary>
public static class Entries
{
    /// <summary>The entries that stand, each at the place of the first entry it goes back to.</summary>
    /// <param name="entries">All of them, in the order they were written down.</param>
    /// <returns>Without those that a later one corrects and without withdrawn ones. A correction of an entry that is not there
    /// stands at its own place; taking back a correction does not bring back what it corrected.</returns>
    public static IReadOnlyList<T> Standing<T>(IReadOnlyList<T> entries)
        where T : class, IEntry
    {
        ArgumentNullException.ThrowIfNull(entries);
        // Only a later entry corrects an earlier one, so two that name each other cannot both vanish.
        var at = new int[entries.Count];
        var stands = new bool[entries.Count];
        for (var i = 0; i < entries.Count; i++)
        {
            (at[i], stands[i]) = (i, true);
            if (entries[i].Corrects.Length == 0)
                continue;
            for (var j = i - 1; j >= 0; j--)
            {
                if (!string.Equals(entries[j].Id, entries[i].Corrects, StringComparison.Ordinal))
                    continue;
                stands[j] = false;
                at[i] = at[j];
                break;
            }
        }
        return
        [
            .. Enumerable
                .Range(0, entries.Count)
                .Where(i => stands[i] && !entries[i].Withdrawn)
                .OrderBy(i => at[i])
                .Select(i => entries[i]),
        ];
    }
}

/// <summary>Refuses entries without an id, and ids that two entries share: a correction must know what it corrects.</summary>
/// <param name="check">Where refusals are collected.</param>
internal sealed class EntryIds(InputCheck check)
{
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);

    /// <summary>Looks at the entries of one list.</summary>
    public void Of<T>(IReadOnlyList<T> entries, string path)
        where T : class, IEntry
    {
        for (var i = 0; i < entries.Count; i++)
        {
            var id = entries[i].Id;
            check.That(
                id.Length > 0 && _seen.Add(id),
                $"{path}[{i}].id",
                id,
                id.Length == 0 ? "is empty" : "is another entry's id",
                "an id of its own"
            );
        }
    }
}
