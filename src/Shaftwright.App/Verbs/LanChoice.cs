using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using Shaftwright.App.Link;

namespace Shaftwright.App.Verbs;

/// <summary>From what <c>serve</c> was asked to where phones are served.</summary>
internal static class LanChoice
{
    /// <summary>Port for phones; 0 for any free one.</summary>
    public static int Port(ServeOptions options) =>
        options.LanPort ?? (options.Port == 0 ? 0 : options.Port + 1);

    /// <summary>Opens what <c>--lan</c> asks for; null when it does not.</summary>
    /// <exception cref="BadInputException">It cannot be had.</exception>
    public static Lan? Open(ServeOptions options, string folder)
    {
        if (!options.Lan)
            return options.Plain || options.LanPort is not null
                ? throw new BadInputException(
                    "--plain and --lan-port say how phones are served. Say that they are, with --lan."
                )
                : null;
        var last = Port(options) + (options.Plain ? 1 : 0);
        if (last > 65535)
            throw new BadInputException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"There is no port {last} for phones. Choose a lower one with --lan-port."
                )
            );
        try
        {
            return new(folder, Addresses(options.LanAddress), options.Plain);
        }
        catch (Exception e)
            when (e is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new BadInputException(
                $"The keys of the garage link in {Path.Combine(folder, Lan.Folder)} cannot be read or kept: {e.Message} "
                    + "Put them right; or move that folder away for new ones, which every phone has to get to know again."
            );
        }
    }

    private static IReadOnlyList<IPAddress> Addresses(string? asked)
    {
        if (asked is null)
            return PrivateNetworks.Here() is { Count: > 0 } here
                ? here
                : throw new BadInputException(
                    "This machine has no address in a private network (10…, 172.16… to 172.31…, 192.168…, fd…). "
                        + "Join the garage's network, or make one with the laptop's own hotspot."
                );
        if (!IPAddress.TryParse(asked, out var address))
            throw new BadInputException(
                $"“{asked}” is no address. An address is four numbers, such as 192.168.1.20."
            );
        // The laptop's own door stands at these.
        if (address.Equals(IPAddress.Loopback) || address.Equals(IPAddress.IPv6Loopback))
            throw new BadInputException($"{asked} is this machine alone: no phone finds it there.");
        if (!PrivateNetworks.Hold(address))
            throw new BadInputException(
                $"{asked} is not in a private network. Phones are served only at 10…, 172.16… to 172.31…, 192.168… or fd…, so that nothing is offered to the open internet by mistake."
            );
        return [address];
    }
}
