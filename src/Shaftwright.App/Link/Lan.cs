using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Https;

namespace Shaftwright.App.Link;

/// <summary>What <c>--lan</c> opens: the addresses phones are served at, and what the laptop shows there to prove that it is itself.</summary>
internal sealed partial class Lan : IDisposable
{
    /// <summary>The folder of the keys, in the folder of the job book.</summary>
    public const string Folder = "link";

    private readonly IReadOnlyList<IPAddress> _addresses;
    private readonly LaptopCertificate _certificate;
    private readonly Door _safe;
    private readonly Door? _plain;

    /// <param name="folder">Folder of the job book; the keys are kept in a folder of their own in it.</param>
    /// <param name="addresses">Where phones are served.</param>
    /// <param name="plain">Whether they are served without encryption too.</param>
    public Lan(string folder, IReadOnlyList<IPAddress> addresses, bool plain)
    {
        var keys = Path.Combine(folder, Folder);
        var name = MachineName();
        _addresses = addresses;
        Authority = Authority.Open(keys);
        _certificate = new(Authority, keys, addresses, name);
        // Made now, so that a folder that cannot be written is told at the start and not to the first phone.
        _certificate.Current();
        _safe = new(laptop: false, plain: false) { Name = name };
        _plain = plain ? new(laptop: false, plain: true) { Name = name } : null;
    }

    /// <summary>Who vouches for the laptop.</summary>
    public Authority Authority { get; }

    /// <summary>True when the laptop has other addresses by now: a phone that looks for it at the new one finds nothing.</summary>
    public bool Moved =>
        !_addresses.All(IPAddress.IsLoopback)
        && !PrivateNetworks.Here().ToHashSet().IsSupersetOf(_addresses);

    /// <summary>Each address a phone may open once the program listens; numbers first, encrypted first.</summary>
    public IEnumerable<(Uri Url, Door Door, bool ByName)> Addresses =>
        from door in (Door?[])[_safe, _plain]
        where door is not null
        from at in door
            .Listening.Select(e => (Url: door.Address(e), ByName: false))
            .Concat(ByName(door))
        select (at.Url, door, at.ByName);

    /// <summary>Listens at every address.</summary>
    /// <param name="kestrel">The server.</param>
    /// <param name="port">Port of the encrypted door; the plain one has the next. 0 for any free one.</param>
    public void Listen(KestrelServerOptions kestrel, int port)
    {
        var https = new HttpsConnectionAdapterOptions
        {
            ServerCertificateSelector = (_, _) => _certificate.Current(),
        };
        foreach (var address in _addresses)
        {
            kestrel.Listen(
                address,
                port,
                listen =>
                {
                    _safe.Mark(listen);
                    listen.UseHttps(https);
                }
            );
            if (_plain is not null)
                kestrel.Listen(address, port == 0 ? 0 : port + 1, _plain.Mark);
        }
    }

    public void Dispose()
    {
        _certificate.Dispose();
        Authority.Dispose();
    }

    /// <summary>The name is the same at every address; where ports differ, only the first would answer to it.</summary>
    private static IEnumerable<(Uri Url, bool ByName)> ByName(Door door) =>
        door.Name is { } name
        && door.Listening.Select(e => e.Port).Distinct().ToList() is [var port]
            ? [(door.Address(name, port), true)]
            : [];

    /// <summary>This machine's name in the house (RFC 6762); null when it has none that can stand in an address.</summary>
    private static string? MachineName()
    {
        var name = Dns.GetHostName().Split('.')[0].ToLowerInvariant();
        return HostLabel().IsMatch(name) ? $"{name}.{NameLimits.Domain}" : null;
    }

    [GeneratedRegex("^[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?$")]
    private static partial Regex HostLabel();
}
