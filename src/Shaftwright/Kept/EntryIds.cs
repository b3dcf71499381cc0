using Shaftwright.Measures;

namespace Shaftwright.Kept;

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
