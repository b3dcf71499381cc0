using System.Text.Json.Nodes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile;

/// <summary>Records that only grow: sign-offs, and what was written down at the bench while testing and fitting.</summary>
/// <remarks>An entry stands where it stood and says what it said, to the last letter typed. It is put right by a later entry
/// that names it, so that anybody can read later what was believed when.</remarks>
internal static class KeptRecords
{
    private const string ByEntry =
        "a later entry with \"corrects\": its id, and \"withdrawn\": true if it did not happen";

    // A list that only grows, and how its entries are put right.
    private static readonly (string[] Path, string Remedy)[] s_lists =
    [
        (
            ["records", "signOffs"],
            "a later sign-off of the same operation with \"withdrawn\": true"
        ),
        (["press", "strokes"], ByEntry),
        (["crackTest", "work"], ByEntry),
        (["crackTest", "tests"], ByEntry),
        (["crackTest", "decisions"], ByEntry),
        (["fit", "done"], ByEntry),
    ];

    /// <summary>The refusal when an entry that was there is changed or gone, else null.</summary>
    /// <param name="had">The document before.</param>
    /// <param name="has">The document after.</param>
    public static Refusal? Lost(JobDocument had, JobDocument has)
    {
        // In the written form, where what means the same reads the same.
        var (before, after) = (JobJson.WriteObject(had), JobJson.WriteObject(has));
        foreach (var (path, remedy) in s_lists)
        {
            if (
                List(before, path) is { } old
                && Lost(old, List(after, path), string.Join('.', path), remedy) is { } lost
            )
                return lost;
        }
        return null;
    }

    private static Refusal? Lost(JsonArray had, JsonArray? has, string path, string remedy)
    {
        for (var i = 0; i < had.Count; i++)
        {
            var now = i < has?.Count ? has[i] : null;
            if (Lost((JsonObject)had[i]!, now as JsonObject, $"{path}[{i}]", remedy) is { } lost)
                return lost;
        }
        return null;
    }

    /// <summary>An entry's own words stay; lists of entries in it may grow.</summary>
    private static Refusal? Lost(JsonObject had, JsonObject? has, string path, string remedy)
    {
        foreach (var (name, old) in had)
        {
            var now = has?[name];
            if (old is JsonArray { Count: > 0 } list && list[0] is JsonObject)
            {
                if (
                    has is not null
                    && Lost(list, now as JsonArray, $"{path}.{name}", remedy) is { } lost
                )
                    return lost;
            }
            else if (!JsonNode.DeepEquals(old, now))
                return Refuse();
        }
        return
            has is null
            || has.Any(m =>
                !had.ContainsKey(m.Key) && !(m.Value is JsonArray a && a[0] is JsonObject)
            )
            ? Refuse()
            : null;

        Refusal Refuse() =>
            new(
                path,
                (string?)had["id"] ?? "",
                "was written down and cannot be changed or erased",
                remedy
            );
    }

    private static JsonArray? List(JsonObject document, string[] path)
    {
        JsonNode? at = document;
        foreach (var name in path)
            at = at?[name];
        return at as JsonArray;
    }
}
