using System.Text.Json;
using System.Text.Json.Nodes;

namespace Shaftwright.Pages.Doors;

/// <summary>One thing typed behind a door that is not (yet) part of a job.</summary>
/// <param name="Text">What was typed; empty where the box was emptied.</param>
/// <param name="Over">What the job said there when it was typed; empty where it said nothing.</param>
public sealed record Typed(string Text, string Over)
{
    /// <summary>Where the door asks the same of several things, the one it was typed at, in the words the job had for it then;
    /// empty otherwise.</summary>
    public string Of { get; init; } = "";

    /// <summary>What it is, in a sentence: "the outer diameter".</summary>
    public string What { get; init; } = "";

    /// <summary>Address of the screen it was typed on.</summary>
    public string Where { get; init; } = "";

    /// <summary>Why the job does not have it, in a sentence; empty while nothing is against it.</summary>
    public string Why { get; init; } = "";
}

/// <summary>A draft as the device keeps it: only what was typed, each with what it was typed over, so that a change made
/// elsewhere meanwhile is not undone by it; and in words, so that the route card can say what waits without opening the door.
/// JSON: an object for each key, without what is empty.</summary>
public static class DraftText
{
    /// <summary>As text; null when nothing was typed.</summary>
    public static string? Write(IReadOnlyDictionary<string, Typed> typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        if (typed.Count == 0)
            return null;
        var json = new JsonObject();
        foreach (var (key, one) in typed)
        {
            var said = new JsonObject { ["text"] = one.Text };
            Say("over", one.Over);
            Say("of", one.Of);
            Say("what", one.What);
            Say("where", one.Where);
            Say("why", one.Why);
            json[key] = said;

            void Say(string name, string words)
            {
                if (words.Length > 0)
                    said[name] = words;
            }
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
                if (node is JsonObject said && Said(said, "text") is { } now)
                    typed[key] = new(now, Said(said, "over") ?? "")
                    {
                        Of = Said(said, "of") ?? "",
                        What = Said(said, "what") ?? "",
                        Where = Said(said, "where") ?? "",
                        Why = Said(said, "why") ?? "",
                    };
            }
        }
        catch (JsonException)
        {
            // Half a text is no draft; what could be read of it is none either.
            typed.Clear();
        }
        return typed;
    }

    private static string? Said(JsonObject of, string name) =>
        of[name] is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;
}
