using System.Globalization;
using System.Text.Json.Nodes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile;

/// <summary>Entries of lists, which another device may have moved: what they are told by, and where they are.</summary>
public static class ListEntry
{
    private const string ById = "id ";

    // Between what an entry is told by and its mark.
    private const string MarkedBy = " \u2016 ";

    /// <summary>What an entry is told by among those of its list: its id, the travel and steering of a reading at the car, the
    /// angle of one under the dial. Empty when there is nothing it could be told by.</summary>
    /// <param name="entry">The entry.</param>
    public static string Told(JsonNode? entry) =>
        entry is not JsonObject o ? ""
        : o["id"] is JsonValue id ? ById + id
        : o["angle"] is JsonValue angle ? $"angle {angle}"
        : o["travel"] is JsonValue travel
            ? $"travel {travel}, steering {o["steering"] ?? "straight"}"
        : "";

    /// <summary>Whether each entry of a list is told from every other.</summary>
    /// <param name="list">The list.</param>
    public static bool AllTold(JsonArray list)
    {
        ArgumentNullException.ThrowIfNull(list);
        var seen = new HashSet<string>(StringComparer.Ordinal) { "" };
        return list.All(e => seen.Add(Told(e)));
    }

    /// <summary>A path as it is in a document now: its numbers put right by what the entries were told by, and by what they and their
    /// neighbours said. Null when an entry is not there any more, or cannot be told from another.</summary>
    /// <param name="document">The document.</param>
    /// <param name="tokens">The path.</param>
    /// <param name="entries">What its numbers meant; null to leave them.</param>
    public static string[]? Find(
        JsonObject document,
        IReadOnlyList<string> tokens,
        IReadOnlyList<string>? entries
    )
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(tokens);
        var found = tokens.ToArray();
        if (entries is null || entries.All(e => e.Length == 0))
            return found;
        JsonNode? at = Written(document);
        var number = 0;
        for (var i = 0; i < found.Length && at is not null; i++)
        {
            if (at is JsonArray list)
            {
                var entry = number < entries.Count ? entries[number] : "";
                number++;
                if (found[i] != "-" && entry.Length > 0)
                {
                    if (Place(list, entry) is not (>= 0 and var place))
                        return null;
                    found[i] = place.ToString(CultureInfo.InvariantCulture);
                }
                var index = Index(found[i]);
                at = index >= 0 && index < list.Count ? list[index] : null;
            }
            else
                at =
                    at is JsonObject owner && owner.TryGetPropertyValue(found[i], out var next)
                        ? next
                        : null;
        }
        // With the last of its entries a list goes too.
        return entries.Skip(number).Any(e => e.Length > 0) ? null : found;
    }

    /// <summary>What the numbers of a path mean in a document, for <see cref="Edit.Entries"/>; null when there are none.</summary>
    /// <param name="document">The document.</param>
    /// <param name="tokens">The path.</param>
    public static IReadOnlyList<string>? Of(JsonObject document, IReadOnlyList<string> tokens)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(tokens);
        var entries = new List<string>();
        JsonNode? at = Written(document);
        foreach (var token in tokens)
        {
            if (at is JsonArray list)
            {
                var index = Index(token);
                at = index >= 0 && index < list.Count ? list[index] : null;
                entries.Add(
                    at is null ? ""
                    : Told(at) is var told && told.StartsWith(ById, StringComparison.Ordinal) ? told
                    : $"{(list.Count(e => Told(e) == told) == 1 ? told : "")}{MarkedBy}{EntryMark.Of(list, index)}"
                );
            }
            else
                at =
                    at is JsonObject owner && owner.TryGetPropertyValue(token, out var next)
                        ? next
                        : null;
        }
        return entries.Count > 0 ? entries : null;
    }

    /// <summary>Where an entry is by what it is told by, if that is one, else by its mark; −1 for nowhere.</summary>
    private static int Place(JsonArray list, string entry)
    {
        var (told, mark) = entry.Split(MarkedBy) is [var first, var second]
            ? (first, EntryMark.Read(second))
            : (entry, null);
        if (told.Length > 0)
        {
            var all = list.Select(Told).ToList();
            var place = all.IndexOf(told);
            if (place >= 0 && all.LastIndexOf(told) == place)
                return place;
        }
        return mark?.In(list) ?? -1;
    }

    /// <summary>The document as it is written, so that one measure is one text wherever it was typed.</summary>
    private static JsonObject Written(JsonObject document) =>
        JobJson.Read(document).Document is { } read ? JobJson.WriteObject(read) : document;

    /// <summary>Where a new entry belongs: readings under the dial go by their angle where the list does, everything else goes last.</summary>
    internal static int PlaceOf(JsonArray list, JsonNode entry)
    {
        if (Angle(entry) is not { } mine)
            return list.Count;
        var angles = list.Select(Angle).ToList();
        for (var i = 0; i < angles.Count; i++)
        {
            if (angles[i] is null || (i > 0 && angles[i] < angles[i - 1]))
                return list.Count;
        }
        var before = angles.FindIndex(a => a > mine);
        return before < 0 ? list.Count : before;
    }

    private static double? Angle(JsonNode? entry) =>
        entry is JsonObject o && o["id"] is null && o["angle"] is JsonValue angle
            ? Measured<Angle>.Read(angle.ToString(), "angle").Measure?.Value
            : null;

    internal static int Index(string token) =>
        token.Length is > 0 and <= 5
        && (token.Length == 1 || token[0] != '0')
        && token.AsSpan().IndexOfAnyExceptInRange('0', '9') < 0
            ? int.Parse(token, CultureInfo.InvariantCulture)
            : -1;
}
