using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Shaftwright.App.Link;

/// <summary>The certificate the laptop shows to phones: kept beside the authority, and made anew when it does not fit any more.</summary>
/// <param name="authority">Who signs it.</param>
/// <param name="folder">Where it is kept.</param>
/// <param name="addresses">What it is for.</param>
/// <param name="name">The machine's name in the house, if it has one that can stand in an address.</param>
internal sealed class LaptopCertificate(
    Authority authority,
    string folder,
    IReadOnlyList<IPAddress> addresses,
    string? name
) : IDisposable
{
    private const string FileName = "laptop.pem";

    /// <summary>What must be left of its life, so that a program that runs for weeks never shows one that has ended.</summary>
    private static readonly TimeSpan s_renew = TimeSpan.FromDays(30);

    private readonly Lock _lock = new();
    private X509Certificate2? _current;

    /// <summary>The certificate with its key. Asked at each connection.</summary>
    public X509Certificate2 Current()
    {
        lock (_lock)
        {
            if (_current is not null && !IsEnding(_current))
                return _current;
            // The one before may still be in the hands of a connection that is being made: it is left to the collector.
            return _current = Kept() ?? Made();
        }
    }

    public void Dispose() => _current?.Dispose();

    private string File => Path.Combine(folder, FileName);

    private X509Certificate2? Kept()
    {
        if (!System.IO.File.Exists(File))
            return null;
        try
        {
            var kept = Load(KeyFile.Read(File));
            if (!IsEnding(kept) && Fits(kept) && authority.Signed(kept))
                return kept;
            kept.Dispose();
        }
        catch (CryptographicException)
        {
            // Damaged, or written by another hand. It is ours to make anew.
        }
        return null;
    }

    private X509Certificate2 Made()
    {
        var pem = authority.Vouch(addresses, name);
        KeyFile.Write(File, pem);
        return Load(pem);
    }

    private bool Fits(X509Certificate2 kept)
    {
        var names = kept.Extensions.OfType<X509SubjectAlternativeNameExtension>().SingleOrDefault();
        return names is not null
            && names.EnumerateIPAddresses().ToHashSet().SetEquals(addresses)
            && names.EnumerateDnsNames().SequenceEqual(name is null ? [] : [name]);
    }

    private static bool IsEnding(X509Certificate2 certificate) =>
        certificate.NotAfter.ToUniversalTime() - DateTime.UtcNow < s_renew;

    private static X509Certificate2 Load(string pem)
    {
        var certificate = X509Certificate2.CreateFromPem(pem, pem);
        if (!OperatingSystem.IsWindows())
            return certificate;
        // Windows' TLS takes no key that lives in memory only.
        using (certificate)
            return X509CertificateLoader.LoadPkcs12(
                certificate.Export(X509ContentType.Pkcs12),
                null
            );
    }
}
