using System.Text.Json.Nodes;

namespace Shaftwright.JobFile;

/// <summary>A value that one device set for a field while another had changed that field: the field keeps what stands in it, this
/// keeps the other, until a person settles it. The settling is an edit of the field that names this (<see cref="Edit.Settles"/>).</summary>
/// <param name="Id">Id of the edit that brought it.</param>
/// <param name="Path">The field, as a JSON Pointer into the document.</param>
/// <param name="Device">The device that set it.</param>
/// <param name="At">When, by that device's clock.</param>
public sealed record OpenConflict(string Id, string Path, string Device, DateTimeOffset At)
{
    /// <summary>Which entries the numbers in the path mean, as in <see cref="Edit.Entries"/>.</summary>
    public IReadOnlyList<string> Entries { get; init; } = [];

    /// <summary>What was set; null when the field was emptied.</summary>
    public JsonNode? Value { get; init; }

    /// <summary>What that device had seen there; null for nothing.</summary>
    public JsonNode? Was { get; init; }

    /// <summary>The device that set what stands in the field; empty when it is not known.</summary>
    public string StandsDevice { get; init; } = "";

    /// <summary>When that was; null when it is not known.</summary>
    public DateTimeOffset? StandsAt { get; init; }
}
