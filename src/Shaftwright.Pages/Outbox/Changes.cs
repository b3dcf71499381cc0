using System.Globalization;
using System.Text.Json.Nodes;
using Shaftwright.JobFile;

namespace Shaftwright.Pages.Outbox;

/// <summary>What differs between two documents, as edits: one for each field, so that two people who work on the same job,
/// one at the car and one at the bench, do not write over each other.</summary>
public static class Changes
{
    /// <summary>The edits that turn one document into the other, in an order in which they can be applied.</summary>
    /// <param name="jobId">The job.</param>
    /// <param name="before">The document before; null for a new one.</param>
    /// <param name="after">The document after.</param>
    /// <param name="at">When.</param>
    /// <param name="device">On which device.</param>
    public static IReadOnlyList<Edit> Between(
        string jobId,
        JsonObject? before,
        JsonObject after,
        DateTimeOffset at,
        string device
    )
    {
        ArgumentNullException.ThrowIfNull(after);
        var edits = new List<Edit>();
        if (before is null)
            edits.Add(new(Guid.NewGuid(), jobId, at, device, "", after.DeepClone()));
        else
            Walk("", before, after, Into(edits, before, jobId, at, device));
        return edits;
    }

    /// <summary>The same in whole stages: one edit for each member of the document that differs.</summary>
    public static IReadOnlyList<Edit> ByStage(
        string jobId,
        JsonObject before,
        JsonObject after,
        DateTimeOffset at,
        string device
    )
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var edits = new List<Edit>();
        var add = Into(edits, before, jobId, at, device);
        foreach (var name in before.Select(p => p.Key).Union(after.Select(p => p.Key)))
        {
            if (!JsonNode.DeepEquals(before[name], after[name]))
                add("/" + Token(name), after[name], before[name]);
        }
        return edits;
    }

    /// <summary>Each edit says what was seen where it goes, and which entries and open conflicts were there: what another device
    /// did meanwhile is then noticed wherever the edit arrives.</summary>
    private static Action<string, JsonNode?, JsonNode?> Into(
        List<Edit> edits,
        JsonObject before,
        string jobId,
        DateTimeOffset at,
        string device
    )
    {
        // What an entry says changes with every edit of it.
        var now = (JsonObject)before.DeepClone();
        return (path, value, was) =>
        {
            edits.Add(
                new(Guid.NewGuid(), jobId, at, device, path, value?.DeepClone(), was?.DeepClone())
                {
                    WasEmpty = was is null && !path.EndsWith("/-", StringComparison.Ordinal),
                    Entries = ListEntry.Of(now, FieldPath.Tokens(path, 16) ?? []),
                    Settles = Disagreements.OpenAt(before, path),
                }
            );
            Edits.SetIn(now, path, value?.DeepClone());
        };
    }

    private static void Walk(
        string path,
        JsonNode before,
        JsonNode after,
        Action<string, JsonNode?, JsonNode?> add
    )
    {
        switch (before, after)
        {
            case (JsonObject a, JsonObject b):
                foreach (var (name, value) in b)
                {
                    var at = path + "/" + Token(name);
                    if (!a.TryGetPropertyValue(name, out var old) || old is null)
                    {
                        // Records only grow: the first sign-off is added like every later one, or two first ones would
                        // write over each other.
                        if (
                            at.StartsWith("/records", StringComparison.Ordinal)
                            && Empty(value) is { } none
                        )
                            Walk(at, none, value!, add);
                        else
                            add(at, value, null);
                    }
                    else if (value is not null)
                        Walk(at, old, value, add);
                }
                foreach (var (name, old) in a)
                {
                    if (!b.ContainsKey(name))
                        add(path + "/" + Token(name), null, old);
                }
                break;
            case (JsonArray a, JsonArray b) when ListEntry.AllTold(a) && ListEntry.AllTold(b):
                WalkTold(path, a, b, add);
                break;
            case (JsonArray a, JsonArray b) when a.Count <= b.Count:
                // Places that were there keep their number; new ones come behind them.
                for (var i = 0; i < b.Count; i++)
                {
                    if (i >= a.Count)
                        add(path + "/-", b[i], null);
                    else if (a[i] is { } old && b[i] is { } value)
                        Walk(
                            path + "/" + i.ToString(CultureInfo.InvariantCulture),
                            old,
                            value,
                            add
                        );
                }
                break;
            default:
                if (!Same(before, after))
                    add(path, after, before);
                break;
        }
    }

    /// <summary>A list whose entries are told by what they are: each is changed, taken out or added, wherever it stands. One that is
    /// told by something else now, in the same place, was changed in just that.</summary>
    private static void WalkTold(
        string path,
        JsonArray before,
        JsonArray after,
        Action<string, JsonNode?, JsonNode?> add
    )
    {
        var now = after.Select(ListEntry.Told).ToList();
        var then = before.Select(ListEntry.Told).ToList();
        var gone = new List<int>();
        var used = new HashSet<int>();
        for (var i = 0; i < before.Count; i++)
        {
            var to = now.IndexOf(then[i]);
            if (to < 0 && i < after.Count && !then.Contains(now[i]))
                to = i;
            if (to < 0)
                gone.Add(i);
            else if (used.Add(to))
                Walk(
                    $"{path}/{i.ToString(CultureInfo.InvariantCulture)}",
                    before[i]!,
                    after[to]!,
                    add
                );
        }
        // From the end, so that the numbers before stay true.
        for (var i = gone.Count - 1; i >= 0; i--)
            add($"{path}/{gone[i].ToString(CultureInfo.InvariantCulture)}", null, before[gone[i]]);
        for (var i = 0; i < after.Count; i++)
        {
            if (!used.Contains(i))
                add(path + "/-", after[i], null);
        }
    }

    /// <summary>440 and "440 mm" are one measure: what nobody touched keeps the text that it was typed with.</summary>
    private static bool Same(JsonNode a, JsonNode b) =>
        JsonNode.DeepEquals(a, b)
        || (a is JsonValue && b is JsonValue && Units.Same(a.ToString(), b.ToString()));

    private static JsonNode? Empty(JsonNode? like) =>
        like switch
        {
            JsonObject => new JsonObject(),
            JsonArray => new JsonArray(),
            _ => null,
        };

    private static string Token(string name) =>
        name.Replace("~", "~0", StringComparison.Ordinal)
            .Replace("/", "~1", StringComparison.Ordinal);
}
