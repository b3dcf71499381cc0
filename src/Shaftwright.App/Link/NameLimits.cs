using System.Formats.Asn1;
using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace Shaftwright.App.Link;

/// <summary>What the authority may vouch for at all (RFC 5280, 4.2.1.10): addresses in <see cref="PrivateNetworks"/> and names under
/// <c>.local</c>. A phone that trusts it trusts it for nothing else: with its key nobody can pretend to be a bank.</summary>
internal static class NameLimits
{
    private const string Oid = "2.5.29.30";
    private static readonly Asn1Tag s_permitted = new(TagClass.ContextSpecific, 0);
    private static readonly Asn1Tag s_dnsName = new(TagClass.ContextSpecific, 2);
    private static readonly Asn1Tag s_ipAddress = new(TagClass.ContextSpecific, 7);

    /// <summary>The one domain: names that a house gives itself (RFC 6762).</summary>
    public const string Domain = "local";

    /// <summary>The limits as a critical extension: who does not understand them must not trust the authority either.</summary>
    public static X509Extension Extension()
    {
        var asn = new AsnWriter(AsnEncodingRules.DER);
        using (asn.PushSequence())
        using (asn.PushSequence(s_permitted))
        {
            using (asn.PushSequence())
                asn.WriteCharacterString(UniversalTagNumber.IA5String, Domain, s_dnsName);
            foreach (var network in PrivateNetworks.All)
            {
                using (asn.PushSequence())
                    asn.WriteOctetString(AddressAndMask(network), s_ipAddress);
            }
        }
        return new(Oid, asn.Encode(), critical: true);
    }

    private static byte[] AddressAndMask(IPNetwork network)
    {
        var address = network.BaseAddress.GetAddressBytes();
        var both = new byte[2 * address.Length];
        address.CopyTo(both, 0);
        for (var bit = 0; bit < network.PrefixLength; bit++)
            both[address.Length + (bit / 8)] |= (byte)(0x80 >> (bit % 8));
        return both;
    }
}
