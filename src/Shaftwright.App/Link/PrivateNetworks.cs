using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Shaftwright.App.Link;

/// <summary>The networks inside a house, which no router on the internet forwards (RFC 1918, RFC 4193, RFC 3927), and loopback.</summary>
/// <remarks>Phones are served at such addresses only, and the authority vouches for no other: a laptop that stands on the open
/// internet by mistake offers nothing there.</remarks>
internal static class PrivateNetworks
{
    /// <summary>The networks.</summary>
    public static readonly IReadOnlyList<IPNetwork> All =
    [
        IPNetwork.Parse("10.0.0.0/8"),
        IPNetwork.Parse("172.16.0.0/12"),
        IPNetwork.Parse("192.168.0.0/16"),
        IPNetwork.Parse("169.254.0.0/16"),
        IPNetwork.Parse("127.0.0.0/8"),
        IPNetwork.Parse("fc00::/7"),
    ];

    /// <summary>True for an address in one of them.</summary>
    public static bool Hold(IPAddress address) => All.Any(n => n.Contains(address));

    /// <summary>This machine's addresses in them, loopback left out. Those behind a router first, because a phone is likeliest there;
    /// then four numbers before eight, because somebody may have to type them.</summary>
    public static IReadOnlyList<IPAddress> Here() =>
        [
            .. NetworkInterface
                .GetAllNetworkInterfaces()
                .Where(n => n.OperationalStatus == OperationalStatus.Up)
                .Select(n => n.GetIPProperties())
                .OrderBy(p => p.GatewayAddresses.Count > 0 ? 0 : 1)
                .SelectMany(p => p.UnicastAddresses)
                .Select(a => a.Address)
                .Where(a => !IPAddress.IsLoopback(a) && Hold(a))
                .OrderBy(a => a.AddressFamily == AddressFamily.InterNetwork ? 0 : 1)
                .Distinct(),
        ];
}
