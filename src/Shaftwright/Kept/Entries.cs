namespace Shaftwright.Kept;

/// <summary>Which entries of a record count.</summary>
public static class Entries
{
    /// <summary>The entries that stand, each at the place of the first entry it goes back to.</summary>
    /// <param name="entries">All of them, in the order they were written down.</param>
    /// <returns>Without those that a later one corrects, itself or through what was put in their place, and without withdrawn ones. A correction of an entry that is not there
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
                at[i] = at[j];
                // And whatever was put in its place since: two devices may correct one entry, and the later word counts.
                for (var k = 0; k < i; k++)
                    stands[k] &= at[k] != at[i];
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
