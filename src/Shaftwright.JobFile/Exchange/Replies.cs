using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Shaftwright.Measures;

namespace Shaftwright.JobFile.Exchange;

/// <summary>What became of an edit that was sent.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<Taken>))]
public enum Taken
{
    /// <summary>It is in the book, on disk.</summary>
    [JsonStringEnumMemberName("applied")]
    Applied,

    /// <summary>It had been in the book already and changed nothing this time.</summary>
    [JsonStringEnumMemberName("already")]
    Already,

    /// <summary>It could not be applied. The book keeps what was sent, beside the reasons.</summary>
    [JsonStringEnumMemberName("refused")]
    Refused,
}

/// <summary>The answer to one edit that was sent.</summary>
/// <param name="Id">Its id; null when it had none that could be read.</param>
/// <param name="Outcome">What became of it. A device may forget an edit that is applied or was already.</param>
/// <param name="Seq">Its place in the book's history; null when refused.</param>
/// <param name="Revision">The job's revision after it; null when refused.</param>
/// <param name="Refusals">Why it was refused; empty when accepted.</param>
public sealed record EditReply(
    Guid? Id,
    Taken Outcome,
    long? Seq,
    long? Revision,
    IReadOnlyList<Refusal> Refusals
)
{
    /// <summary>True when it is in the book.</summary>
    [JsonIgnore]
    public bool Accepted => Outcome != Taken.Refused;

    /// <summary>The refusals in sentences; null when accepted.</summary>
    public string? Reason => Refusals.Count == 0 ? null : string.Join(' ', Refusals);
}

/// <summary>A line of the list of jobs.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What the fabricator calls it.</param>
/// <param name="About">The car, in a line.</param>
/// <param name="Revision">How many edits it has had.</param>
/// <param name="Updated">When the last one arrived.</param>
/// <param name="PutAway">When it was put away; null while it is on the bench.</param>
public sealed record JobListing(
    string Id,
    string Name,
    string About,
    long Revision,
    DateTimeOffset Updated,
    DateTimeOffset? PutAway
);

/// <summary>One job.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Revision">How many edits it has had.</param>
/// <param name="Seq">Place in the history of its last edit; ask for edits since this one.</param>
/// <param name="Updated">When that edit arrived.</param>
/// <param name="Document">The job document.</param>
public sealed record JobReply(
    string Id,
    long Revision,
    long Seq,
    DateTimeOffset Updated,
    JsonNode Document
);

/// <summary>An edit with its place in the history.</summary>
/// <param name="Seq">Its place; grows by arrival.</param>
/// <param name="AppliedAt">When it arrived, by the server's clock.</param>
/// <param name="Edit">The edit.</param>
public sealed record AppliedEdit(long Seq, DateTimeOffset AppliedAt, Edit Edit);

/// <summary>A stretch of the history.</summary>
/// <param name="Edits">In order.</param>
/// <param name="Latest">Place of the last one in <paramref name="Edits"/>, or what was asked since when there is none.</param>
/// <param name="More">True when there are more after these.</param>
public sealed record HistoryReply(IReadOnlyList<AppliedEdit> Edits, long Latest, bool More);

/// <summary>Something that was sent and could not be taken.</summary>
/// <param name="RefusedAt">When, by the server's clock.</param>
/// <param name="Raw">What was sent.</param>
/// <param name="Refusals">Why it was refused.</param>
public sealed record RefusedEntry(
    DateTimeOffset RefusedAt,
    string Raw,
    IReadOnlyList<Refusal> Refusals
);

/// <summary>The answer to a photo that was sent.</summary>
/// <param name="Name">Its name: the SHA-256 of its bytes.</param>
/// <param name="Outcome">Whether it came now or had been there. Either way it is on disk.</param>
public sealed record PhotoReply(string Name, Taken Outcome);

/// <summary>That the program is there.</summary>
/// <param name="Program">"Shaftwright".</param>
/// <param name="Version">Its version.</param>
/// <param name="Demo">True when it serves demo jobs from a book of their own.</param>
/// <param name="Book">Which job book it serves.</param>
public sealed record HealthReply(string Program, string Version, bool Demo, string Book)
{
    /// <summary>Header by which a request says which book it is meant for; one meant for another is not served (409).</summary>
    public const string BookHeader = "Shaftwright-Book";
}

/// <summary>How it stands with the indicator that the laptop reads.</summary>
/// <param name="State"><c>none</c>: none is read; <c>waiting</c>: it is being opened; <c>open</c>; <c>gone</c>: it cannot be
/// opened, or was unplugged, and is tried again.</param>
/// <param name="Seq">Grows with every line and every change of state; ask for what comes after it.</param>
/// <param name="Text">The last reading as sent, with its unit; null when there is none since it was opened.</param>
/// <param name="AgeMs">How long ago it came, ms.</param>
/// <param name="StillMs">How long the readings have stood still, ms.</param>
/// <param name="Refused">Why the last line was refused, in words; null when it was taken.</param>
/// <param name="Trouble">Why it is gone, in words.</param>
public sealed record IndicatorReply(
    string State,
    long Seq,
    string? Text,
    long AgeMs,
    long StillMs,
    string? Refused,
    string? Trouble
);

/// <summary>Why a request was not served, in words.</summary>
/// <param name="Problem">What is wrong.</param>
/// <param name="Accepted">What would be served.</param>
public sealed record TroubleReply(string Problem, string Accepted);

/// <summary>The replies as JSON, with metadata made by the compiler.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(IReadOnlyList<EditReply>))]
[JsonSerializable(typeof(IReadOnlyList<JobListing>))]
[JsonSerializable(typeof(JobReply))]
[JsonSerializable(typeof(HistoryReply))]
[JsonSerializable(typeof(IReadOnlyList<RefusedEntry>))]
[JsonSerializable(typeof(PhotoReply))]
[JsonSerializable(typeof(HealthReply))]
[JsonSerializable(typeof(IndicatorReply))]
[JsonSerializable(typeof(CarsRequest))]
[JsonSerializable(typeof(CarsReply))]
[JsonSerializable(typeof(TroubleReply))]
public sealed partial class ExchangeJson : JsonSerializerContext;
