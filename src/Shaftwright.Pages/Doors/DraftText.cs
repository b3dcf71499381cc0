using System.Text.Json;
using System.Text.Json.Nodes;

namespace Shaftwright.Pages.Doors;

/// <summary>One thing typed behind a door that is not (yet) part of a job.</summary>
/// <param name="Text">What was typed; empty where the box was emptied.</param>
/// <param name="Over">What the job said there when it was typed; empty where it said nothing.</param>
public sealed record Typed(string Text, string Over);

/// <summary>A draft as the device keeps it: only what was typed, each with what it was typed over, so that a change made
/// elsewhere meanwhile is not undone by it. JSON: a text typed where nothing stood, or a list of the text and what stood.</summary>
public static class DraftText
{
    /// <summary>As text; null when nothing was typed.</summary>
    public static string? Write(IReadOnlyDictionary<string, Typed> typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        if (typed.Count == 0)
            return null;
        var json = new JsonObject();
        foreach (var (key, (text, over)) in typed)
        {
            JsonNode said = JsonValue.Create(text);
            json[key] = over.Length == 0 ? said : new JsonArray(said, JsonValue.Create(over));
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
                else if (node is JsonArray { Count: 2 } two && Said(two[0]) is { } now)
                    typed[key] = new(now, Said(two[1]) ?? "");
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
