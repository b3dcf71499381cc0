using System.Text.Json.Serialization;

namespace Shaftwright.JobFile.Exchange;

/// <summary>What became of the pairing code made last.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<CodeState>))]
public enum CodeState
{
    /// <summary>None was made since the program started.</summary>
    [JsonStringEnumMemberName("none")]
    None,

    /// <summary>It waits for its device.</summary>
    [JsonStringEnumMemberName("waiting")]
    Waiting,

    /// <summary>A device has used it.</summary>
    [JsonStringEnumMemberName("used")]
    Used,

    /// <summary>Its time is over.</summary>
    [JsonStringEnumMemberName("expired")]
    Expired,

    /// <summary>Too many wrong codes were tried meanwhile: it was withdrawn.</summary>
    [JsonStringEnumMemberName("withdrawn")]
    Withdrawn,
}

/// <summary>The garage link, as the laptop's own page shows it.</summary>
/// <param name="On">True when the program was started with <c>--lan</c>.</param>
/// <param name="Addresses">Where a phone finds the laptop; the likeliest first.</param>
/// <param name="Moved">True when the laptop has other addresses by now than those it serves at.</param>
/// <param name="Authority">Name of the authority, as a phone lists it; null when the link is off.</param>
/// <param name="Fingerprint">SHA-256 of the authority's certificate, in hexadecimal pairs; null when the link is off.</param>
/// <param name="Code">What became of the code made last.</param>
/// <param name="Devices">The phones, last seen first.</param>
public sealed record LinkReply(
    bool On,
    IReadOnlyList<AddressReply> Addresses,
    bool Moved,
    string? Authority,
    string? Fingerprint,
    CodeState Code,
    IReadOnlyList<DeviceReply> Devices
);

/// <summary>One address of the laptop.</summary>
/// <param name="Url">The address, with a slash at its end.</param>
/// <param name="Plain">True when it is not encrypted.</param>
/// <param name="ByName">True when it is the machine's name instead of a number.</param>
/// <param name="Trust">Picture of the address of the page by which a phone gets the authority; one text a row, <c>1</c> is dark, quiet
/// margin included.</param>
public sealed record AddressReply(string Url, bool Plain, bool ByName, IReadOnlyList<string> Trust);

/// <summary>A paired phone.</summary>
/// <param name="Id">Names it in requests; lets nobody in.</param>
/// <param name="Name">What its user calls it.</param>
/// <param name="Plain">True when it was paired over a plain connection.</param>
/// <param name="PairedAt">When it was paired.</param>
/// <param name="LastSeen">When it last asked for something, to the minute.</param>
/// <param name="RevokedAt">When it was taken off; null while it may come in.</param>
public sealed record DeviceReply(
    string Id,
    string Name,
    bool Plain,
    DateTimeOffset PairedAt,
    DateTimeOffset LastSeen,
    DateTimeOffset? RevokedAt
);

/// <summary>A code to pair one phone.</summary>
/// <param name="Url">The address with the code, as the picture holds it. The code stands behind #, so that it is sent to nobody by
/// opening the address.</param>
/// <param name="Picture">The same as a QR picture; rows as in <see cref="AddressReply"/>.</param>
/// <param name="Typed">The same code for thumbs.</param>
/// <param name="Expires">When it is good no longer, by the laptop's clock.</param>
public sealed record CodeReply(
    string Url,
    IReadOnlyList<string> Picture,
    string Typed,
    DateTimeOffset Expires
);

/// <summary>How whoever asks stands with the laptop.</summary>
/// <param name="Laptop">True when it asks from the laptop itself.</param>
/// <param name="Plain">True when the connection is not encrypted.</param>
/// <param name="Paired">True when it may read and change the job book.</param>
/// <param name="Name">What it is called in the laptop's list; null when it is not paired.</param>
/// <param name="Why">Why it is not paired, in words; null when it is.</param>
/// <param name="Authority">Name of the laptop's authority; null when the link is off.</param>
/// <param name="Fingerprint">SHA-256 of the authority's certificate; null when the link is off.</param>
public sealed record HereReply(
    bool Laptop,
    bool Plain,
    bool Paired,
    string? Name,
    string? Why,
    string? Authority,
    string? Fingerprint
);

/// <summary>A phone asks to be paired.</summary>
/// <param name="Code">Either text of the code.</param>
/// <param name="Name">What its user calls it.</param>
public sealed record PairRequest(string? Code, string? Name);

/// <summary>The laptop's page asks for a code.</summary>
/// <param name="At">One of the laptop's addresses, for the picture.</param>
public sealed record CodeRequest(string? At);

/// <summary>The garage link as JSON, with metadata made by the compiler.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(LinkReply))]
[JsonSerializable(typeof(CodeReply))]
[JsonSerializable(typeof(HereReply))]
[JsonSerializable(typeof(PairRequest))]
[JsonSerializable(typeof(CodeRequest))]
public sealed partial class LinkJson : JsonSerializerContext;
