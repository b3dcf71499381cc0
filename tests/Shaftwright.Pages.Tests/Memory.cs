using System.Text.Json.Nodes;
using Microsoft.JSInterop;

namespace Shaftwright.Pages.Tests;

/// <summary>A device's memory without a device: what <c>device.js</c> promises, held in a dictionary.</summary>
internal sealed class Memory : IJSRuntime, IJSObjectReference
{
    private readonly Dictionary<string, (string Text, int Version)> _documents = [];
    private readonly JsonArray _outbox = [];

    /// <summary>Drafts by key.</summary>
    public Dictionary<string, string> Drafts { get; } = [];

    /// <summary>Another device changes a job, and this one has fetched it.</summary>
    public void Arrives(string id, string text) =>
        _documents[id] = (text, _documents.GetValueOrDefault(id).Version + 1);

    public ValueTask<T> InvokeAsync<T>(string identifier, object?[]? args) =>
        ValueTask.FromResult(Does(identifier, args ?? []) is { } done ? (T)done : default(T)!);

    public ValueTask<T> InvokeAsync<T>(string identifier, CancellationToken _, object?[]? args) =>
        InvokeAsync<T>(identifier, args);

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private object? Does(string what, object?[] args)
    {
        switch (what)
        {
            case "import":
                return this;
            case "touch":
                return true;
            case "settings":
                return "[]";
            case "draft":
                return Drafts.GetValueOrDefault((string)args[0]!);
            case "drafts":
                return new JsonArray([
                    .. Drafts.Select(d => new JsonObject { ["key"] = d.Key, ["text"] = d.Value }),
                ]).ToJsonString();
            case "keepDraft":
                KeepDraft((string)args[0]!, (string?)args[1]);
                return null;
            case "documents":
                return new JsonArray([
                    .. _documents.Select(d => new JsonObject
                    {
                        ["id"] = d.Key,
                        ["text"] = d.Value.Text,
                        ["version"] = d.Value.Version,
                    }),
                ]).ToJsonString();
            case "outbox":
                return _outbox.ToJsonString();
            case "keep":
                return Keep((string)args[0]!, (string)args[1]!, (int)args[2]!, (string)args[4]!);
            case "open" or "openBook" or "setting" or "lead" or "focusOn":
                return null;
            default:
                throw new InvalidOperationException($"A door asks nothing like \"{what}\".");
        }
    }

    private bool Keep(string id, string text, int expected, string drafts)
    {
        if (_documents.GetValueOrDefault(id).Version != expected)
            return false;
        _documents[id] = (text, expected + 1);
        foreach (var draft in JsonNode.Parse(drafts)!.AsArray())
            KeepDraft((string)draft!["key"]!, (string?)draft["text"]);
        return true;
    }

    private void KeepDraft(string key, string? text)
    {
        if (text is null)
            Drafts.Remove(key);
        else
            Drafts[key] = text;
    }
}
