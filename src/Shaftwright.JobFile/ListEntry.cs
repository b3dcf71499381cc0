using System.Globalization;
using System.Text.Json.Nodes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile;

/// <summary>Entries of lists, which another device may have moved: what they are told by, and where they are.</summary>
public static class ListEntry
{
    private const string ById = "id ";

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

    /// <summary>A path as it is in a document now: its numbers put right by what the entries are told by. Null when an entry that
    /// has an id is not there any more.</summary>
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
        JsonNode? at = document;
        for (int i = 0, number = 0; i < found.Length && at is not null; i++)
        {
            if (at is JsonArray list)
            {
                var told = number < entries?.Count ? entries[number] : "";
                number++;
                var index = Index(found[i]);
                if (
                    found[i] != "-"
                    && told.Length > 0
                    && Told(index >= 0 && index < list.Count ? list[index] : null) != told
                )
                {
                    var place = list.Select(Told).ToList().IndexOf(told);
                    if (place >= 0)
                        found[i] = place.ToString(CultureInfo.InvariantCulture);
                    else if (told.StartsWith(ById, StringComparison.Ordinal))
                        return null;
                }
                index = Index(found[i]);
                at = index >= 0 && index < list.Count ? list[index] : null;
            }
            else
                at =
                    at is JsonObject owner && owner.TryGetPropertyValue(found[i], out var next)
                        ? next
                        : null;
        }
        return found;
    }

    /// <summary>What the numbers of a path mean in a document, for <see cref="Edit.Entries"/>; null when there are none.</summary>
    /// <param name="document">The document.</param>
    /// <param name="tokens">The path.</param>
    public static IReadOnlyList<string>? Of(JsonObject document, IReadOnlyList<string> tokens)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(tokens);
        var entries = new List<string>();
        JsonNode? at = document;
        foreach (var token in tokens)
        {
            if (at is JsonArray list)
            {
                at = Index(token) is var i && i >= 0 && i < list.Count ? list[i] : null;
                entries.Add(AllTold(list) ? Told(at) : "");
            }
            else
                at =
                    at is JsonObject owner && owner.TryGetPropertyValue(token, out var next)
                        ? next
                        : null;
        }
        return entries.Count > 0 ? entries : null;
    }

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
