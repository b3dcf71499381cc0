using Shaftwright.Records;
using Shaftwright.Records.Devices;

namespace Shaftwright.App.Link;

/// <summary>The way from a phone to this laptop's job book: who may come in, and by which doors.</summary>
/// <param name="book">The book.</param>
/// <param name="lan">What <c>--lan</c> opened; null when it was not asked for. The list of phones is there all the same, so that one
/// can be taken off at any time.</param>
internal sealed class GarageLink(JobBook book, Lan? lan)
{
    /// <summary>What <c>--lan</c> opened, if anything.</summary>
    public Lan? Lan => lan;

    /// <summary>The phones that may come in.</summary>
    public PairedDevices Devices { get; } = new(book);

    /// <summary>The codes that let one more in.</summary>
    public PairingCodes Codes { get; } = new(TimeProvider.System);

    /// <summary>Name of the cookie that holds a phone's token. Two books at one address (a real one, the demo) have a token each. The
    /// browser itself keeps a <c>__Host-</c> cookie away from plain connections and from other hosts (RFC 6265bis, 4.1.3.2).</summary>
    public string Cookie(Door door)
    {
        var name = "shaftwright-" + book.Id[..8];
        return door.Plain ? name : "__Host-" + name;
    }

    /// <summary>Whether whoever asks may come in by the token it shows.</summary>
    public (Admission Answer, PairedDevice? Device) Admit(HttpContext context)
    {
        var door = Door.Of(context);
        return Devices.Admit(context.Request.Cookies[Cookie(door)], door.Plain);
    }
}
