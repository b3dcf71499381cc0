using System.Net;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Shaftwright.App.Link;

/// <summary>Where a request came in: by what the laptop listens at, not by what the request says of itself.</summary>
/// <param name="laptop">True for loopback: the laptop's own pages and programs.</param>
/// <param name="plain">True when nothing is encrypted.</param>
internal sealed class Door(bool laptop, bool plain)
{
    private readonly List<ListenOptions> _listening = [];

    /// <summary>True for loopback.</summary>
    public bool Laptop => laptop;

    /// <summary>True when whoever is in the network can read along.</summary>
    public bool Plain => plain;

    /// <summary>The machine's name in the house, by which a phone may call it too; null when it has none.</summary>
    public string? Name { get; init; }

    /// <summary>Where it listens, once it does.</summary>
    public IEnumerable<IPEndPoint> Listening => _listening.Select(l => l.IPEndPoint!);

    private string Scheme => laptop || plain ? Uri.UriSchemeHttp : Uri.UriSchemeHttps;

    /// <summary>The door a request came in by.</summary>
    public static Door Of(HttpContext context) => context.Features.GetRequiredFeature<Door>();

    /// <summary>Marks everything that comes in where this listens.</summary>
    public void Mark(ListenOptions listen)
    {
        _listening.Add(listen);
        listen.Use(next =>
            connection =>
            {
                connection.Features.Set(this);
                return next(connection);
            }
        );
    }

    /// <summary>The address to open, for an end point of this door.</summary>
    public Uri Address(IPEndPoint at) => new($"{Scheme}://{at}/");

    /// <summary>The address to open by the machine's name.</summary>
    public Uri Address(string name, int port) => new UriBuilder(Scheme, name, port).Uri;

    /// <summary>The address to open instead, for a connection that came in here.</summary>
    public Uri Here(ConnectionInfo connection) =>
        laptop
            ? Address("localhost", connection.LocalPort)
            : Address(new IPEndPoint(connection.LocalIpAddress!, connection.LocalPort));

    /// <summary>Whether a Host names this machine as it was reached. Any other name is one that somebody else points here.</summary>
    public bool IsNamed(HostString host, ConnectionInfo connection) =>
        (host.Port ?? (Scheme == Uri.UriSchemeHttp ? 80 : 443)) == connection.LocalPort
        && (
            laptop
                ? host.Host is "localhost" or "127.0.0.1" or "[::1]"
                : host.Host.Equals(Name, StringComparison.OrdinalIgnoreCase)
                    || (
                        IPAddress.TryParse(host.Host, out var address)
                        && address.Equals(connection.LocalIpAddress)
                    )
        );

    /// <summary>Whether an Origin is this program's own pages, as they were reached.</summary>
    public bool IsOrigin(string? origin, ConnectionInfo connection) =>
        Uri.TryCreate(origin, UriKind.Absolute, out var from)
        && from.Scheme == Scheme
        && IsNamed(new HostString(from.Host, from.Port), connection);
}
