namespace Shaftwright.Records.Devices;

/// <summary>A code that lets one device in, once. Either text does, and then both are used up.</summary>
/// <param name="Scanned">128 random bits, for a picture that a camera reads.</param>
/// <param name="Typed">40 random bits in eight letters and digits that nobody confuses, for thumbs: <c>K7QM-2XWP</c>.</param>
/// <param name="Expires">When it is good no longer.</param>
public sealed record PairingCode(string Scanned, string Typed, DateTimeOffset Expires);

/// <summary>The answer to a code that was tried.</summary>
public enum CodeAnswer
{
    /// <summary>It is the one, and is used up now.</summary>
    Good,

    /// <summary>It is not the one.</summary>
    Wrong,

    /// <summary>It was used already.</summary>
    Used,

    /// <summary>It came too late, or a newer one was made since.</summary>
    Expired,

    /// <summary>It was withdrawn because too many wrong ones were tried.</summary>
    Withdrawn,

    /// <summary>Too many wrong ones came from that address: nothing from there is looked at for a while.</summary>
    Held,
}
