using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.JSInterop;

namespace Shaftwright.Pages.Outbox;

/// <summary>The device's own memory, through <c>device.js</c>. Each write is done only when the device has it on its disk.</summary>
public sealed class DeviceStore(IJSRuntime js)
{
    private IJSObjectReference? _module;

    private IJSObjectReference Module =>
        _module ?? throw new InvalidOperationException("The device's memory is not open yet.");

    /// <summary>True on a phone or tablet.</summary>
    public bool Touch { get; private set; }

    /// <summary>What the device is called in a sentence.</summary>
    public string Word => Touch ? "phone" : "computer";

    private const string BookKey = "book";

    /// <summary>The job book that the jobs, entries and drafts kept here belong to. Those of another book are kept beside them
    /// and are neither shown nor sent while this one is open.</summary>
    public string Book { get; private set; } = "";

    /// <summary>Opens what belongs to the device itself. Done once, before the first page, so that nothing has to be fetched
    /// later.</summary>
    public async Task Open()
    {
        _module = await js.InvokeAsync<IJSObjectReference>("import", "./device.js");
        await _module.InvokeVoidAsync("open");
        Touch = await _module.InvokeAsync<bool>("touch");
    }

    /// <summary>True when a job book was opened here before.</summary>
    public async Task<bool> KnowsBook() => (await Settings()).ContainsKey(BookKey);

    /// <summary>Opens what belongs to a job book.</summary>
    /// <param name="served">The book that the laptop serves; null when it does not say: then the one opened last counts.</param>
    /// <returns>False when no book is known.</returns>
    public async Task<bool> OpenBook(string? served)
    {
        var last = (await Settings()).GetValueOrDefault(BookKey);
        if ((served ?? last) is not { } book)
            return false;
        if (book != last)
            await Set(BookKey, book);
        await Module.InvokeVoidAsync("openBook", book);
        Book = book;
        return true;
    }

    /// <summary>Every setting kept.</summary>
    public async Task<IReadOnlyDictionary<string, string>> Settings()
    {
        var rows = JsonSerializer.Deserialize(
            await Module.InvokeAsync<string>("settings"),
            DeviceJson.Default.SettingRowArray
        );
        return (rows ?? []).ToDictionary(r => r.Key, r => r.Value);
    }

    /// <summary>Keeps one setting.</summary>
    public ValueTask Set(string key, string value) => Module.InvokeVoidAsync("setting", key, value);

    /// <summary>What was typed behind a door and not yet kept in a job; null if nothing.</summary>
    public ValueTask<string?> Draft(string key) => Module.InvokeAsync<string?>("draft", key);

    /// <summary>Every draft on this device.</summary>
    public async Task<IReadOnlyList<DraftRow>> Drafts() =>
        JsonSerializer.Deserialize(
            await Module.InvokeAsync<string>("drafts"),
            DeviceJson.Default.DraftRowArray
        ) ?? [];

    /// <summary>Keeps what is being typed; null forgets it.</summary>
    public ValueTask KeepDraft(string key, string? text) =>
        Module.InvokeVoidAsync("keepDraft", key, text);

    /// <summary>Every job document on this device.</summary>
    public async Task<IReadOnlyList<DocumentRow>> Documents() =>
        JsonSerializer.Deserialize(
            await Module.InvokeAsync<string>("documents"),
            DeviceJson.Default.DocumentRowArray
        ) ?? [];

    /// <summary>Every entry not yet taken by the laptop, oldest first.</summary>
    public async Task<IReadOnlyList<OutboxRow>> Outbox() =>
        JsonSerializer.Deserialize(
            await Module.InvokeAsync<string>("outbox"),
            DeviceJson.Default.OutboxRowArray
        ) ?? [];

    /// <summary>Keeps edits and the document they make, together or not at all.</summary>
    /// <param name="id">The job.</param>
    /// <param name="text">The document as JSON.</param>
    /// <param name="expected">Version of the document the edits were applied to; 0 for a new one.</param>
    /// <param name="edits">The entries.</param>
    /// <param name="drafts">Drafts that change with them, in the same transaction.</param>
    /// <returns>False when another tab kept a newer version meanwhile; nothing was written then.</returns>
    public ValueTask<bool> Keep(
        string id,
        string text,
        int expected,
        IReadOnlyList<OutboxRow> edits,
        IReadOnlyList<DraftRow> drafts
    ) =>
        Module.InvokeAsync<bool>(
            "keep",
            id,
            text,
            expected,
            JsonSerializer.Serialize([.. edits], DeviceJson.Default.OutboxRowArray),
            JsonSerializer.Serialize([.. drafts], DeviceJson.Default.DraftRowArray)
        );

    /// <summary>Takes over the laptop's answers to entries.</summary>
    public ValueTask Answered(IReadOnlyList<EditAnswer> answers) =>
        Module.InvokeVoidAsync(
            "answered",
            JsonSerializer.Serialize([.. answers], DeviceJson.Default.EditAnswerArray)
        );

    /// <summary>Lets a refused entry go.</summary>
    public ValueTask LetGo(string id) => Module.InvokeVoidAsync("letGo", id);

    /// <summary>Takes a document from the laptop unless entries of that job still wait here.</summary>
    public async ValueTask<Received> Receive(string id, string text) =>
        await Module.InvokeAsync<string>("receive", id, text) switch
        {
            "taken" => Received.Taken,
            "same" => Received.Same,
            _ => Received.Held,
        };

    /// <summary>Has <c>Nudge</c> called on the listener whenever it is worth trying to send.</summary>
    public ValueTask Watch<TListener>(DotNetObjectReference<TListener> listener)
        where TListener : class => Module.InvokeVoidAsync("watch", listener);

    /// <summary>Puts the cursor in the first empty box of the page, or on its heading.</summary>
    public ValueTask Lead() => Module.InvokeVoidAsync("lead");

    /// <summary>Puts the cursor on one element.</summary>
    public ValueTask FocusOn(string id) => Module.InvokeVoidAsync("focusOn", id);

    /// <summary>Opens the browser's own print window.</summary>
    public ValueTask Print() => Module.InvokeVoidAsync("print");
}

/// <summary>What became of a document from the laptop.</summary>
public enum Received
{
    /// <summary>It is on the device now.</summary>
    Taken,

    /// <summary>It was there already, letter for letter.</summary>
    Same,

    /// <summary>Entries of that job still wait here and would be lost under it.</summary>
    Held,
}

/// <summary>A setting on the device.</summary>
/// <param name="Key">Its name.</param>
/// <param name="Value">Its value.</param>
public sealed record SettingRow(string Key, string Value);

/// <summary>A draft on the device.</summary>
/// <param name="Key">Its door, and the job and part it is opened on.</param>
/// <param name="Text">What was typed; null forgets it.</param>
public sealed record DraftRow(string Key, string? Text);

/// <summary>A job document on the device.</summary>
/// <param name="Id">The job.</param>
/// <param name="Text">The document as JSON.</param>
/// <param name="Version">Counts up with each change on this device.</param>
public sealed record DocumentRow(string Id, string Text, int Version);

/// <summary>An entry that the laptop has not taken yet.</summary>
/// <param name="Id">The edit's id.</param>
/// <param name="JobId">The job it belongs to.</param>
/// <param name="Path">What it changes, as a JSON Pointer.</param>
/// <param name="Text">The edit as JSON, as it is sent.</param>
/// <param name="State"><c>waiting</c> or <c>refused</c>.</param>
/// <param name="Reason">Why the laptop refused it.</param>
public sealed record OutboxRow(
    string Id,
    string JobId,
    string Path,
    string Text,
    string State = "waiting",
    string? Reason = null
)
{
    /// <summary>True when the laptop would not take it.</summary>
    [JsonIgnore]
    public bool Refused => State == "refused";
}

/// <summary>The laptop's answer to one entry.</summary>
/// <param name="Id">The edit's id.</param>
/// <param name="Taken">True when it has it, now or from an earlier try.</param>
/// <param name="Reason">Why not.</param>
public sealed record EditAnswer(string Id, bool Taken, string? Reason);

/// <summary>How rows cross to the browser. Generated, because trimming forbids looking types up at run time.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(SettingRow[]))]
[JsonSerializable(typeof(DocumentRow[]))]
[JsonSerializable(typeof(OutboxRow[]))]
[JsonSerializable(typeof(EditAnswer[]))]
[JsonSerializable(typeof(DraftRow[]))]
internal sealed partial class DeviceJson : JsonSerializerContext;
