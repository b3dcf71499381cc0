using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Shaftwright.Measures;

namespace Shaftwright.JobFile;

/// <summary>One change of one field, made on one device. It is kept on the device first and then sent; wherever it arrives,
/// it is applied once, by its id.</summary>
/// <param name="Id">Its own id, made on the device.</param>
/// <param name="JobId">The job: 1 to 64 letters, digits, <c>-</c> and <c>_</c>.</param>
/// <param name="At">When it was made, by the device's clock. For people; the order is the order of arrival.</param>
/// <param name="Device">Which device made it, up to 64 characters.</param>
/// <param name="Path">RFC 6901 JSON Pointer into the document; <c>""</c> is the whole document, a last token <c>-</c> appends to a list.</param>
/// <param name="Value">What stands there from now on; null removes it.</param>
/// <param name="Was">What the device saw there before, or null. Where something else stands when the edit arrives, both are kept
/// and a person is asked (<see cref="OpenConflict"/>).</param>
public sealed record Edit(
    Guid Id,
    string JobId,
    DateTimeOffset At,
    string Device,
    string Path,
    JsonNode? Value = null,
    JsonNode? Was = null
)
{
    /// <summary>True when the device saw that nothing stood there. Neither this nor <see cref="Was"/> says that nobody looked: such
    /// an edit of a program is applied to whatever stands there.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool WasEmpty { get; init; }

    /// <summary>Which entries the numbers in <see cref="Path"/> meant on the device (<see cref="ListEntry.Told"/>), one for each
    /// number, in order; empty text for one that cannot be told. By them an entry is found where another device has moved
    /// it. Null from programs, whose numbers count as they are.</summary>
    public IReadOnlyList<string>? Entries { get; init; }

    /// <summary>Ids of the conflicts that were seen open at this place, and that this edit settles.</summary>
    public IReadOnlyList<Guid>? Settles { get; init; }

    /// <summary>True when the device says what it saw.</summary>
    [JsonIgnore]
    public bool Looked => Was is not null || WasEmpty;
}

/// <summary>What became of an edit: the new document, or why it was refused and nothing changed.</summary>
/// <param name="Document">The changed document, a new object; null when refused.</param>
/// <param name="Refusals">Why; empty when accepted.</param>
public sealed record EditOutcome(JsonObject? Document, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>True when the edit was applied.</summary>
    public bool Accepted => Document is not null;
}

/// <summary>An edit that cannot be applied, with the reasons.</summary>
/// <param name="refusals">The reasons.</param>
public sealed class EditRefusedException(IReadOnlyList<Refusal> refusals)
    : Exception(string.Join(" ", refusals))
{
    /// <summary>The reasons.</summary>
    public IReadOnlyList<Refusal> Refusals { get; } = refusals;
}
