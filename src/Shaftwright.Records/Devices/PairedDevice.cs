namespace Shaftwright.Records.Devices;

/// <summary>A phone that was paired with the laptop.</summary>
/// <param name="Id">Names it in the list; lets nobody in.</param>
/// <param name="Name">What its user calls it.</param>
/// <param name="Plain">True when it was paired over an unencrypted connection.</param>
/// <param name="PairedAt">When it was paired.</param>
/// <param name="LastSeen">When it last asked for something, to the minute.</param>
/// <param name="RevokedAt">When it was taken off the list; null while it may come in.</param>
public sealed record PairedDevice(
    string Id,
    string Name,
    bool Plain,
    DateTimeOffset PairedAt,
    DateTimeOffset LastSeen,
    DateTimeOffset? RevokedAt
);

/// <summary>Whether whoever shows a token may come in.</summary>
public enum Admission
{
    /// <summary>Yes.</summary>
    Known,

    /// <summary>No token, or none that was ever given out, or one that a newer pairing replaced.</summary>
    Unknown,

    /// <summary>It was taken off the list.</summary>
    Revoked,

    /// <summary>It is too old: <see cref="PairedDevices.PlainLife"/> or <see cref="PairedDevices.UnusedLife"/> has passed.</summary>
    Expired,
}
