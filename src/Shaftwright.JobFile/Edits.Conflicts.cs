using System.Text.Json.Nodes;
using Shaftwright.JobFile.Shapes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile;

/// <summary>Who set a field, and when.</summary>
/// <param name="Device">The device.</param>
/// <param name="At">When, by its clock.</param>
public sealed record Setter(string Device, DateTimeOffset At);

// What happens where two devices changed one field.
public static partial class Edits
{
    private const string Records = "records";
    private const string Conflicts = "conflicts";

    /// <summary>Lays an edit into a document: sets its field, or keeps its value as a conflict beside what stands.</summary>
    private static Refusal? Lay(
        JsonObject root,
        string[] path,
        JsonNode? value,
        Edit edit,
        Func<string, JsonNode?, Setter?>? who
    )
    {
        if (path is [Records, Conflicts, ..])
            return new(
                "records.conflicts",
                edit.Path,
                "is not written by hand",
                "an edit of the field itself that names the conflict in \"settles\""
            );
        if (ListEntry.Find(root, path, edit.Entries) is not { } tokens)
        {
            // Whose entry is gone can only be put away.
            if (edit is { Value: null, Settles.Count: > 0 })
            {
                Forget(root, edit.Settles);
                return null;
            }
            return new(
                string.Join('.', path),
                edit.Path,
                "belongs to an entry that was changed or taken out elsewhere",
                "the same again, on the entry as it stands now"
            );
        }
        // Inside a list a program's number may mean another entry by now.
        if (!edit.Looked || path[^1] == "-" || (edit.Entries is null && InList(root, tokens)))
        {
            if (Set(root, tokens, value, edit.Was) is { } moved)
                return moved;
            Settled(root, tokens, edit);
            return null;
        }

        var stands = Get(root, tokens);
        // Somebody else has settled what this one settles.
        var late = edit.Settles?.Any(id => Open(root, id) is null) == true;
        if (!late && Sees(root, tokens, stands, edit.Was))
        {
            if (!Same(stands, value) && Set(root, tokens, value) is { } refusal)
                return refusal;
        }
        else if (!Sees(root, tokens, stands, value))
            return Merge(root, tokens, stands, edit.Was, value, edit, who);
        else
            Withdraw(root, Pointer(tokens), edit.Was, edit);
        Settled(root, tokens, edit);
        return null;
    }

    private static bool Sees(JsonObject root, string[] tokens, JsonNode? stands, JsonNode? seen) =>
        Same(stands, seen) || SameMeaning(root, tokens, seen);

    /// <summary>Member by member where they are records, so that what only one of two devices touched is no conflict; and what both
    /// added to a list is added.</summary>
    private static Refusal? Merge(
        JsonObject root,
        string[] tokens,
        JsonNode? stands,
        JsonNode? was,
        JsonNode? value,
        Edit edit,
        Func<string, JsonNode?, Setter?>? who
    )
    {
        if (
            stands is JsonArray list
            && value is JsonArray longer
            && Added(was, longer) is { } added
        )
        {
            foreach (var entry in added.Where(e => !list.Any(there => Same(there, e))))
            {
                if (Set(root, [.. tokens, "-"], entry?.DeepClone()) is { } full)
                    return full;
            }
            return null;
        }
        if (
            stands is not JsonObject now
            || value is not JsonObject set
            || !(was is null or JsonObject)
        )
            return Hold(root, tokens, stands, was, value, edit, who);
        var then = (JsonObject?)was ?? [];
        foreach (var name in then.Select(m => m.Key).Union(set.Select(m => m.Key)).ToList())
        {
            var (before, after, here) = (then[name], set[name], now[name]);
            string[] at = [.. tokens, name];
            if (Same(before, after) || Sees(root, at, here, after))
                continue;
            var refusal = Sees(root, at, here, before)
                ? Set(root, at, after?.DeepClone())
                : Merge(root, at, here, before, after, edit, who);
            if (refusal is not null)
                return refusal;
        }
        Settled(root, tokens, edit);
        return null;
    }

    /// <summary>What a device added to a list behind what it saw there; null when it did something else.</summary>
    private static List<JsonNode?>? Added(JsonNode? was, JsonArray value)
    {
        if (was is null)
            return [.. value];
        return
            was is JsonArray then
            && then.Count <= value.Count
            && !then.Where((e, i) => !Same(e, value[i])).Any()
            ? [.. value.Skip(then.Count)]
            : null;
    }

    private static Refusal? Hold(
        JsonObject root,
        string[] tokens,
        JsonNode? stands,
        JsonNode? was,
        JsonNode? value,
        Edit edit,
        Func<string, JsonNode?, Setter?>? who
    )
    {
        // What could not stand there is refused now, and not when somebody chooses it.
        var trial = (JsonObject)root.DeepClone();
        if (Set(trial, tokens, value?.DeepClone()) is { } misplaced)
            return misplaced;
        if (JobJson.Read(trial) is { Document: null } reading)
            return reading.Refusals[0];

        var path = Pointer(tokens);
        Forget(root, edit.Settles);
        Withdraw(root, path, was, edit);
        var list = List(root) ?? [];
        if (list.Any(c => (string?)c!["path"] == path && Same(c["value"], value)))
            return null;
        var setter = who?.Invoke(path, stands);
        var conflict = new OpenConflict(IdOf(edit, list).ToString(), path, edit.Device, edit.At)
        {
            Entries = ListEntry.Of(root, tokens) ?? [],
            Value = value?.DeepClone(),
            Was = was?.DeepClone(),
            StandsDevice = setter?.Device ?? "",
            StandsAt = setter?.At,
        };
        if (root[Records] is not JsonObject records)
            root[Records] = records = [];
        if (records[Conflicts] is not JsonArray conflicts)
            records[Conflicts] = conflicts = [];
        conflicts.Add((JsonNode)ConflictShape.Node(conflict));
        return null;
    }

    /// <summary>The edit's own id; an edit of a whole stage may bring several conflicts, each with an id of its own, the same wherever
    /// they are worked out.</summary>
    private static Guid IdOf(Edit edit, JsonArray open)
    {
        Span<byte> bytes = stackalloc byte[16];
        edit.Id.TryWriteBytes(bytes);
        var id = edit.Id;
        while (open.Any(c => (string?)c!["id"] == id.ToString()))
        {
            bytes[15] += 1;
            id = new Guid(bytes);
        }
        return id;
    }

    /// <summary>After a field was set: the conflicts that the edit settles go, and those whose value it is now; the others are with this
    /// value from now on.</summary>
    private static void Settled(JsonObject root, string[] tokens, Edit edit)
    {
        Forget(root, edit.Settles);
        if (List(root) is not { } list)
            return;
        var path = Pointer(tokens);
        foreach (var conflict in list.ToList())
        {
            if (
                FieldPath.Tokens((string?)conflict!["path"] ?? "", MostTokens) is not { } theirs
                || ListEntry.Find(root, theirs, EntriesOf(conflict)) is not { } at
                || Pointer(at) != path
            )
                continue;
            if (Sees(root, at, Get(root, at), conflict["value"]))
                list.Remove(conflict);
            else
                list[list.IndexOf(conflict)] = ConflictShape.StandsBy(
                    conflict,
                    edit.Device,
                    edit.At
                );
        }
        Tidy(root);
    }

    private static void Forget(JsonObject root, IReadOnlyList<Guid>? ids)
    {
        foreach (var id in ids ?? [])
        {
            if (Open(root, id) is { } conflict)
                List(root)!.Remove(conflict);
        }
        Tidy(root);
    }

    /// <summary>A device that has typed over its own value does not say that one any more.</summary>
    private static void Withdraw(JsonObject root, string path, JsonNode? was, Edit edit)
    {
        if (
            List(root) is { } list
            && list.FirstOrDefault(c =>
                (string?)c!["device"] == edit.Device
                && (string?)c["path"] == path
                && Same(c["value"], was)
            )
                is { } own
        )
            list.Remove(own);
        Tidy(root);
    }

    private static void Tidy(JsonObject root)
    {
        if (List(root) is { Count: 0 })
            ((JsonObject)root[Records]!).Remove(Conflicts);
        if (root[Records] is JsonObject { Count: 0 })
            root.Remove(Records);
    }

    private static JsonNode? Open(JsonObject root, Guid id) =>
        List(root)?.FirstOrDefault(c => (string?)c!["id"] == id.ToString());

    private static JsonArray? List(JsonObject root) =>
        (root[Records] as JsonObject)?[Conflicts] as JsonArray;

    private static List<string>? EntriesOf(JsonNode conflict) =>
        conflict["entries"] is JsonArray list ? [.. list.Select(e => (string?)e ?? "")] : null;

    /// <summary>What stands at a place; null for nothing.</summary>
    internal static JsonNode? Get(JsonObject root, string[] tokens)
    {
        JsonNode? at = root;
        foreach (var token in tokens)
        {
            at = at switch
            {
                JsonObject owner => owner[token],
                JsonArray list when Index(token) is var i && i >= 0 && i < list.Count => list[i],
                _ => null,
            };
        }
        return at;
    }

    private static bool InList(JsonObject root, string[] tokens)
    {
        JsonNode? at = root;
        foreach (var token in tokens)
        {
            if (at is JsonArray)
                return true;
            at = (at as JsonObject)?[token];
        }
        return false;
    }

    internal static string Pointer(IEnumerable<string> tokens) =>
        string.Concat(
            tokens.Select(t =>
                "/"
                + t.Replace("~", "~0", StringComparison.Ordinal)
                    .Replace("/", "~1", StringComparison.Ordinal)
            )
        );
}
