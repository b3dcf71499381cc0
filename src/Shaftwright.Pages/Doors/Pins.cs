namespace Shaftwright.Pages.Doors;

/// <summary>Which question each record of a list belongs to. Settled when a door opens on a job and held from then on, so that
/// what is typed changes the record it was typed for, wherever that stands by now and whatever it says.</summary>
/// <typeparam name="T">The record. Two are the same when they say the same.</typeparam>
/// <param name="alike">By what two that do not say the same are still one, changed; the surest first. Without any, its place in
/// the list tells.</param>
public sealed class Pins<T>(params Func<T, T, bool>[] alike)
    where T : notnull
{
    private IReadOnlyList<T> _known = [];
    private IReadOnlyList<string?> _keys = [];

    /// <summary>Lets go of all.</summary>
    public void Free() => Hold([], []);

    /// <summary>Holds on to records.</summary>
    /// <param name="records">The records.</param>
    /// <param name="keys">For each the question it belongs to; null for none.</param>
    public void Hold(IReadOnlyList<T> records, IReadOnlyList<string?> keys) =>
        (_known, _keys) = (records, keys);

    /// <summary>For each record of a list, which may have been changed elsewhere since, the question it belongs to; null for
    /// none that is held.</summary>
    public string?[] In(IReadOnlyList<T> records)
    {
        ArgumentNullException.ThrowIfNull(records);
        var keys = new string?[records.Count];
        var left = Enumerable.Range(0, _known.Count).ToHashSet();
        var open = Enumerable.Range(0, records.Count).ToHashSet();
        foreach (
            var i in open.Where(i => i < _known.Count && _known[i].Equals(records[i])).ToList()
        )
            Give(i, i);
        GiveThose((known, now) => known.Equals(now));
        foreach (var are in alike)
            GiveThose(are);
        // As many as before: what is not known by its words was changed where it stands.
        if (alike.Length == 0 && records.Count == _known.Count)
        {
            foreach (var i in open.Where(left.Contains).ToList())
                Give(i, i);
        }
        return keys;

        void GiveThose(Func<T, T, bool> are)
        {
            foreach (var i in open.Order().ToList())
            {
                var one = left.Where(k => are(_known[k], records[i])).DefaultIfEmpty(-1).Min();
                if (one >= 0)
                    Give(i, one);
            }
        }

        void Give(int record, int known)
        {
            keys[record] = _keys[known];
            open.Remove(record);
            left.Remove(known);
        }
    }
}
