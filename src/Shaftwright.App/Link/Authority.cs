using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Shaftwright.App.Link;

/// <summary>The laptop's own certificate authority: made on this machine, for this machine, and trusted by the phones it is installed on.</summary>
internal sealed class Authority : IDisposable
{
    private const string FileName = "authority.pem";

    /// <summary>How long phones trust it before it has to be installed again.</summary>
    private const int Years = 10;

    /// <summary>Longest life of what it signs. Phones refuse more than 398 days from public authorities (CA/Browser Forum baseline
    /// requirements, 6.3.2); a day is kept for clocks that differ.</summary>
    public static readonly TimeSpan LeafLife = TimeSpan.FromDays(397);

    /// <summary>Phones whose clock is behind still take a certificate made just now.</summary>
    private static readonly TimeSpan s_slack = TimeSpan.FromDays(1);

    private readonly X509Certificate2 _own;

    private Authority(X509Certificate2 own)
    {
        _own = own;
        Name = own.GetNameInfo(X509NameType.SimpleName, forIssuer: false);
        Fingerprint = string.Join(
            ' ',
            Convert
                .ToHexString(own.GetCertHash(HashAlgorithmName.SHA256))
                .Chunk(2)
                .Select(p => new string(p))
        );
    }

    /// <summary>What a phone lists it as.</summary>
    public string Name { get; }

    /// <summary>SHA-256 of the certificate, in pairs, as phones show it.</summary>
    public string Fingerprint { get; }

    /// <summary>The certificate to install, without its key (DER).</summary>
    public byte[] Certificate => _own.RawData;

    /// <summary>Opens the authority of a folder; makes one when there is none, or when it is about to end.</summary>
    public static Authority Open(string folder)
    {
        var file = Path.Combine(folder, FileName);
        if (File.Exists(file))
        {
            var pem = KeyFile.Read(file);
            var own = X509Certificate2.CreateFromPem(pem, pem);
            if (own.NotAfter.ToUniversalTime() - DateTime.UtcNow > LeafLife)
                return new(own);
            own.Dispose();
        }
        KeyFile.MakeFolder(folder);
        KeyFile.Write(file, Make());
        var made = KeyFile.Read(file);
        return new(X509Certificate2.CreateFromPem(made, made));
    }

    /// <summary>Signs a certificate for this machine; certificate and key as PEM.</summary>
    public string Vouch(IEnumerable<IPAddress> addresses, string? name)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest(
            "CN=Shaftwright on this laptop",
            key,
            HashAlgorithmName.SHA256
        );
        var names = new SubjectAlternativeNameBuilder();
        foreach (var address in addresses)
            names.AddIpAddress(address);
        if (name is not null)
            names.AddDnsName(name);
        var extensions = request.CertificateExtensions;
        extensions.Add(names.Build());
        extensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        extensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, true));
        extensions.Add(new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1")], false)); // serverAuth
        extensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, false));
        extensions.Add(
            X509AuthorityKeyIdentifierExtension.CreateFromCertificate(_own, true, false)
        );
        var from = DateTimeOffset.UtcNow - s_slack;
        using var leaf = request.Create(_own, from, from + LeafLife, Serial());
        return Pem(leaf, key);
    }

    /// <summary>True when this authority, and not one that was here before, signed a certificate.</summary>
    public bool Signed(X509Certificate2 leaf)
    {
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Add(_own);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.DisableCertificateDownloads = true;
        return chain.Build(leaf);
    }

    public void Dispose() => _own.Dispose();

    private static string Make()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var today = DateTimeOffset.UtcNow;
        var name = new X500DistinguishedNameBuilder();
        // Told apart in a phone's list from another laptop's, and from an older one of this laptop.
        var machine = Environment.MachineName;
        name.AddCommonName(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Shaftwright on {machine[..Math.Min(machine.Length, 30)]}, {today:yyyy-MM-dd}"
            )
        );
        var request = new CertificateRequest(name.Build(), key, HashAlgorithmName.SHA256);
        var extensions = request.CertificateExtensions;
        // It signs certificates of machines and no further authority.
        extensions.Add(new X509BasicConstraintsExtension(true, true, 0, true));
        extensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, true));
        extensions.Add(NameLimits.Extension());
        extensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, false));
        using var own = request.CreateSelfSigned(today - s_slack, today.AddYears(Years));
        return Pem(own, key);
    }

    private static string Pem(X509Certificate2 certificate, ECDsa key) =>
        certificate.ExportCertificatePem() + "\n" + key.ExportPkcs8PrivateKeyPem() + "\n";

    /// <summary>A positive number of 127 bits (RFC 5280, 4.1.2.2).</summary>
    private static byte[] Serial()
    {
        var serial = RandomNumberGenerator.GetBytes(16);
        serial[0] = (byte)((serial[0] & 0x7F) | 0x40);
        return serial;
    }
}
