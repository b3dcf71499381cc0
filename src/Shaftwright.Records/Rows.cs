using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Shaftwright.JobFile;
using Shaftwright.JobFile.Exchange;

namespace Shaftwright.Records;

/// <summary>Times in the book: UTC, sortable as text.</summary>
internal static class BookTime
{
    public static string Write(DateTimeOffset at) =>
        at.ToString("yyyy-MM-dd'T'HH:mm:ss.fffffff", CultureInfo.InvariantCulture)
        + (at.Offset == TimeSpan.Zero ? "Z" : at.ToString("zzz", CultureInfo.InvariantCulture));

    public static DateTimeOffset Read(string text) =>
        DateTimeOffset.Parse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
}

// Dapper fills these by name; a positional record would have to guess the type of an expression column.
internal sealed record JobLine
{
    public required string Id { get; init; }
    public required string Name { get; init; }
    public required string About { get; init; }
    public long Revision { get; init; }
    public required string Updated { get; init; }
    public string? PutAway { get; init; }

    public JobListing ToListing() =>
        new(
            Id,
            Name,
            About,
            Revision,
            BookTime.Read(Updated),
            PutAway is null ? null : BookTime.Read(PutAway)
        );
}

internal sealed record JobRow
{
    public required string Id { get; init; }
    public long Revision { get; init; }
    public long Seq { get; init; }
    public required string Updated { get; init; }
    public required string Document { get; init; }

    public JobReply ToReply() =>
        new(Id, Revision, Seq, BookTime.Read(Updated), JsonNode.Parse(Document)!);
}

internal sealed record EditRow
{
    public long Seq { get; init; }
    public required string Id { get; init; }
    public required string Job { get; init; }
    public required string At { get; init; }
    public required string Device { get; init; }
    public required string Path { get; init; }
    public string? Value { get; init; }
    public string? Was { get; init; }
    public bool WasEmpty { get; init; }
    public string? Entries { get; init; }
    public string? Settles { get; init; }
    public required string AppliedAt { get; init; }

    private static List<string>? Texts(string? json) =>
        json is null ? null : [.. JsonNode.Parse(json)!.AsArray().Select(t => (string)t!)];

    public AppliedEdit ToApplied() =>
        new(
            Seq,
            BookTime.Read(AppliedAt),
            new Edit(
                Guid.Parse(Id),
                Job,
                BookTime.Read(At),
                Device,
                Path,
                Value is null ? null : JsonNode.Parse(Value),
                Was is null ? null : JsonNode.Parse(Was)
            )
            {
                WasEmpty = WasEmpty,
                Entries = Texts(Entries),
                Settles = Texts(Settles)?.ConvertAll(Guid.Parse),
            }
        );
}

internal sealed record RefusedRow
{
    public required string RefusedAt { get; init; }
    public required string Raw { get; init; }
    public required string Refusals { get; init; }

    public RefusedEntry ToEntry() =>
        new(
            BookTime.Read(RefusedAt),
            Raw,
            JsonSerializer.Deserialize(Refusals, ExchangeJson.Default.IReadOnlyListRefusal) ?? []
        );
}
