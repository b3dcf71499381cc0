using System.Text.Json;
using System.Text.Json.Nodes;
using Shaftwright.JobFile.Shapes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile;

/// <summary>Applies edits to job documents. Pure: the document given is never changed.</summary>
/// <remarks><para>An edit that says what its device saw (<see cref="Edit.Looked"/>) never overwrites what it did not see: where
/// something else stands by now, that stays, and the edit's value is kept beside it as an open conflict
/// (<see cref="OpenConflict"/>) for a person to settle. The same value in another spelling is no conflict. What two devices
/// add to a list is both kept.</para>
/// <para>An edit that does not say what it saw, as of a program, sets the field. One that says so inside a list, and not which
/// entries it means, is refused where something else stands: a reading must not land beside another travel.</para>
/// <para>Sign-offs, strokes of the press and the entries of tests and fitting are only ever added to
/// (<see cref="KeptRecords"/>). A wrong one is corrected or withdrawn by a later one.</para></remarks>
public static partial class Edits
{
    private const int MostTokens = 16;

    /// <summary>Applies an edit to a document.</summary>
    /// <param name="document">The document before; not changed.</param>
    /// <param name="edit">The edit.</param>
    /// <returns>The document after, a new object.</returns>
    /// <exception cref="EditRefusedException">The edit cannot be applied, or what came of it could not be read.</exception>
    public static JsonObject Apply(JsonObject document, Edit edit) =>
        TryApply(document, edit) is { Document: { } changed }
            ? changed
            : throw new EditRefusedException(TryApply(document, edit).Refusals);

    /// <summary>Applies an edit to a document, or says why not.</summary>
    /// <param name="document">The document before; not changed. Null for a job that is not there yet, which only an edit of path <c>""</c> can begin.</param>
    /// <param name="edit">The edit.</param>
    /// <param name="who">Who set what stands in a field, by its path and value, for whoever knows; asked when a conflict opens.</param>
    public static EditOutcome TryApply(
        JsonObject? document,
        Edit edit,
        Func<string, JsonNode?, Setter?>? who = null
    )
    {
        ArgumentNullException.ThrowIfNull(edit);
        var log = new List<Refusal>();
        // Text and back makes a copy whose names are known to be single, wherever the nodes came from.
        var before = document is null ? null : Copy(document, log);
        var value = edit.Value is null ? null : Copy(edit.Value, log);
        if (log.Count > 0)
            return new(null, log);

        // Read before the copy is changed in place.
        var had = before is null ? null : JobJson.Read((JsonObject)before).Document;
        JsonNode? after;
        if (edit.Path.Length == 0)
            after = value;
        else if (before is null)
            return Refuse(
                edit.Path,
                edit.JobId,
                "is a job that is not here",
                "first an edit of path \"\" with the whole job"
            );
        else if (FieldPath.Tokens(edit.Path, MostTokens) is not { } tokens)
            return Refuse(
                "path",
                edit.Path,
                "is not a JSON Pointer",
                "\"\" or tokens after \"/\", such as /corner/readings/2/in"
            );
        else
        {
            after = before;
            if (Lay((JsonObject)before, tokens, value, edit, who) is { } refusal)
                return new(null, [refusal]);
        }
        if (after is not JsonObject changed)
            return Refuse(
                edit.Path,
                after is null ? "" : Shown(after),
                after is null ? "would erase the job" : "is not a job",
                "a job, {…}; to put a job away set /records/putAway"
            );

        var reading = JobJson.Read(changed);
        if (reading.Document is not { } read)
            return new(null, reading.Refusals);
        return had is not null && KeptRecords.Lost(had, read) is { } lost
            ? new(null, [lost])
            : new(changed, []);
    }

    /// <summary>Sets a field of a document in place; nothing is checked. For whoever makes several edits out of one change: each is
    /// made on what those before it leave.</summary>
    /// <param name="document">The document; changed.</param>
    /// <param name="path">The field, as of <see cref="Edit.Path"/>.</param>
    /// <param name="value">What stands there from now on; null removes it.</param>
    public static void SetIn(JsonObject document, string path, JsonNode? value)
    {
        ArgumentNullException.ThrowIfNull(document);
        if (FieldPath.Tokens(path, MostTokens) is { } tokens)
            Set(document, tokens, value);
    }

    private static Refusal? Set(
        JsonObject root,
        string[] tokens,
        JsonNode? value,
        JsonNode? was = null
    )
    {
        JsonNode at = root;
        var path = "";
        var inList = false;
        for (var i = 0; ; i++)
        {
            var token = tokens[i];
            var last = i == tokens.Length - 1;
            JsonNode? next;
            int index = -1;
            if (at is JsonObject owner)
            {
                path = path.Length == 0 ? token : path + "." + token;
                owner.TryGetPropertyValue(token, out next);
            }
            else if (at is JsonArray list)
            {
                inList = true;
                index = token == "-" ? list.Count : Index(token);
                path += $"[{token}]";
                if (index < 0 || index > list.Count)
                    return new(path, token, "is not a place in the list", Places(list.Count));
                next = index < list.Count ? list[index] : null;
            }
            else
                return new(
                    path,
                    Shown(at),
                    "is a single value and has no parts",
                    "the path of a field"
                );

            if (last)
            {
                if (
                    inList
                    && was is not null
                    && !Same(next, was)
                    && !SameMeaning(root, tokens, was)
                )
                    return new(
                        path,
                        Shown(next),
                        $"is not what was seen there ({Shown(was)})",
                        "the same edit, made on the list as it stands now"
                    );
                return Put(at, token, index, value);
            }
            if (next is null)
            {
                if (value is null)
                    return null; // Nothing to remove: it is as asked.
                next =
                    tokens[i + 1] == "-" || Index(tokens[i + 1]) == 0
                        ? new JsonArray()
                        : new JsonObject();
                Put(at, token, index, next);
            }
            at = next;
        }
    }

    private static Refusal? Put(JsonNode at, string token, int index, JsonNode? value)
    {
        if (at is JsonArray list)
        {
            if (value is null && index < list.Count)
                list.RemoveAt(index);
            else if (value is not null && index < list.Count)
                list[index] = value;
            else if (value is not null)
                list.Insert(token == "-" ? ListEntry.PlaceOf(list, value) : list.Count, value);
        }
        else if (value is null)
            ((JsonObject)at).Remove(token);
        else
            ((JsonObject)at)[token] = value;
        return null;
    }

    /// <summary>Whether two nodes say the same. 440 and "440" do: both are what was typed.</summary>
    private static bool Same(JsonNode? a, JsonNode? b) =>
        (a, b) switch
        {
            (null, null) => true,
            (JsonValue x, JsonValue y) => string.Equals(
                x.ToString(),
                y.ToString(),
                StringComparison.Ordinal
            ),
            (JsonArray x, JsonArray y) => x.Count == y.Count
                && !x.Where((n, i) => !Same(n, y[i])).Any(),
            (JsonObject x, JsonObject y) => x.Count == y.Count
                && x.All(p => y.TryGetPropertyValue(p.Key, out var other) && Same(p.Value, other)),
            _ => false,
        };

    /// <summary>Whether the document would mean the same with <paramref name="value"/> in that place: another spelling of the same
    /// measure, or words written out that another device left out because they are usual.</summary>
    private static bool SameMeaning(JsonObject root, string[] tokens, JsonNode? value)
    {
        if (tokens.AsSpan(..^1).Contains("-"))
            return false; // An entry just begun was not there to be seen.
        var seen = (JsonObject)root.DeepClone();
        JsonNode? at = seen;
        foreach (var token in tokens[..^1])
        {
            at = at switch
            {
                JsonArray list when Index(token) is var i && i >= 0 && i < list.Count => list[i],
                JsonObject owner => owner[token],
                _ => null,
            };
        }
        if (at is not (JsonArray or JsonObject))
            return false;
        if (
            at is JsonArray entries
            && Index(tokens[^1]) is var place
            && !(place >= 0 && place < entries.Count)
        )
            return false;
        Put(at, tokens[^1], at is JsonArray ? Index(tokens[^1]) : -1, value?.DeepClone());
        return JobJson.Read(root).Document is { } now
            && JobJson.Read(seen).Document is { } then
            && JobJson.Meaning(now) == JobJson.Meaning(then);
    }

    private static int Index(string token) => ListEntry.Index(token);

    private static string Places(int count) =>
        count == 0
            ? "0 or - (the list is empty)"
            : $"0 to {count - 1}, or {count} or - for a new one";

    private static string Shown(JsonNode? node) =>
        node switch
        {
            null => "nothing",
            JsonObject => "{…}",
            JsonArray => "[…]",
            _ => Shape<int>.Clip(node.ToString()),
        };

    private static JsonNode? Copy(JsonNode node, List<Refusal> log)
    {
        if (JobJson.ToText(node, log) is not { } text)
            return null;
        using var parsed = JsonText.Parse(text, log);
        return parsed is null ? null : JsonNode.Parse(text);
    }

    private static EditOutcome Refuse(string path, string value, string problem, string accepted) =>
        new(
            null,
            [new Refusal(path.Length == 0 ? JsonText.Whole : path, value, problem, accepted)]
        );
}
