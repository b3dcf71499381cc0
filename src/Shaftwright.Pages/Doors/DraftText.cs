using System.Text.Json;
using System.Text.Json.Nodes;

namespace Shaftwright.Pages.Doors;

/// <summary>One thing typed behind a door that is not (yet) part of a job.</summary>
/// <param name="Text">What was typed; empty where the box was emptied.</param>
/// <param name="Over">What the job said there when it was typed; empty where it said nothing.</param>
/// <param name="Of">Where the door asks the same of several things, the one it was typed at, in the words the job had for it
/// then; empty otherwise.</param>
public sealed record Typed(string Text, string Over, string Of = "");

/// <summary>A draft as the device keeps it: only what was typed, each with what it was typed over, so that a change made
/// elsewhere meanwhile is not undone by it. JSON: a text typed where nothing stood, or a list of the text, what stood, and at which of
/// several things.</summary>
public static class DraftText
{
    /// <summary>As text; null when nothing was typed.</summary>
    public static string? Write(IReadOnlyDictionary<string, Typed> typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        if (typed.Count == 0)
            return null;
        var json = new JsonObject();
        foreach (var (key, (text, over, of)) in typed)
        {
            JsonNode said = JsonValue.Create(text);
            json[key] =
                of.Length > 0 ? new JsonArray(said, JsonValue.Create(over), JsonValue.Create(of))
                : over.Length > 0 ? new JsonArray(said, JsonValue.Create(over))
                : said;
        }
        return json.ToJsonString();
    }

    /// <summary>From text; empty when there is none, and without what is not readable.</summary>
    public static Dictionary<string, Typed> Read(string? text)
    {
        var typed = new Dictionary<string, Typed>();
        if (string.IsNullOrEmpty(text))
            return typed;
        try
        {
            foreach (var (key, node) in JsonNode.Parse(text) as JsonObject ?? [])
            {
                if (Said(node) is { } said)
                    typed[key] = new(said, "");
                else if (node is JsonArray { Count: 2 or 3 } list && Said(list[0]) is { } now)
                    typed[key] = new(
                        now,
                        Said(list[1]) ?? "",
                        list.Count > 2 ? Said(list[2]) ?? "" : ""
                    );
            }
        }
        catch (JsonException)
        {
            // Half a text is no draft; what could be read of it is none either.
            typed.Clear();
        }
        return typed;
    }

    private static string? Said(JsonNode? node) =>
        node is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;
}
