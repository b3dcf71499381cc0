using System.Net;
using System.Runtime.Versioning;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Shaftwright.App.Tests.Api;
using Shaftwright.App.Tests.Verbs;

namespace Shaftwright.App.Tests.Link;

/// <summary>What the authority vouches for, what it cannot, and how its keys are kept.</summary>
public class AuthorityTests(GarageFixture fixture) : IClassFixture<GarageFixture>
{
    [Fact]
    public async Task Laptop_ToAPhoneThatTrustsTheAuthority_ProvesItself()
    {
        var garage = fixture.Garage;
        // The client checks chain, dates, use and address; nothing is switched off.
        using var phone = garage.Phone();
        using var response = await Garage.Get(phone, "");
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);

        using var leaf = await Shown(garage.Served.Phones[0]);
        Assert.True(leaf.NotAfter - leaf.NotBefore <= TimeSpan.FromDays(397));
        Assert.True(leaf.MatchesHostname(Garage.LaptopAddress));
        Assert.False(leaf.MatchesHostname("127.0.0.3"));
        Assert.False(leaf.MatchesHostname("bank.example"));
        Assert.False(
            leaf.Extensions.OfType<X509BasicConstraintsExtension>().Single().CertificateAuthority
        );
        Assert.Equal(
            ["1.3.6.1.5.5.7.3.1"],
            leaf.Extensions.OfType<X509EnhancedKeyUsageExtension>()
                .Single()
                .EnhancedKeyUsages.Cast<Oid>()
                .Select(o => o.Value)
        );
    }

    [Fact]
    public async Task Laptop_ToAPhoneThatTrustsAnother_IsNotBelieved()
    {
        var garage = fixture.Garage;
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        // By the same name, as a neighbour would.
        var request = new CertificateRequest(
            garage.Root.SubjectName,
            key,
            HashAlgorithmName.SHA256
        );
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        using var other = request.CreateSelfSigned(
            DateTimeOffset.UtcNow.AddDays(-1),
            DateTimeOffset.UtcNow.AddDays(1)
        );
        using var phone = new HttpClient(Garage.Handler(null, other)) { BaseAddress = garage.Safe };
        await Assert.ThrowsAsync<HttpRequestException>(() => Garage.Get(phone, ""));
    }

    [Theory]
    [InlineData("laptop.local", true)]
    [InlineData("192.168.1.20", true)]
    [InlineData("10.255.0.1", true)]
    [InlineData("172.31.255.254", true)]
    [InlineData("fd00:1234::1", true)]
    [InlineData("172.32.0.1", false)]
    [InlineData("11.0.0.1", false)]
    [InlineData("192.169.0.1", false)]
    [InlineData("8.8.8.8", false)]
    [InlineData("2001:db8::1", false)]
    [InlineData("fe00::1", false)]
    [InlineData("bank.example", false)]
    [InlineData("local.bank.example", false)]
    [InlineData("notlocal", false)]
    public async Task Authority_WhoeverHasItsKey_VouchesOnlyForTheHouse(string name, bool holds)
    {
        // Signed with the real key: what a thief of the laptop could do at worst.
        var garage = fixture.Garage;
        var pem = await File.ReadAllTextAsync(
            Path.Combine(garage.Keys, "authority.pem"),
            TestContext.Current.CancellationToken
        );
        using var authority = X509Certificate2.CreateFromPem(pem, pem);
        using var leaf = Sign(authority, name, isAuthority: false);
        var (built, status) = Chain(leaf, garage.Root);
        Assert.Equal(holds, built);
        if (!holds)
            Assert.True(
                status.HasFlag(X509ChainStatusFlags.HasNotPermittedNameConstraint)
                    || status.HasFlag(X509ChainStatusFlags.InvalidNameConstraints),
                $"{status}"
            );
    }

    [Fact]
    public async Task Authority_WithAnotherOneUnderIt_IsNotBelieved()
    {
        var garage = fixture.Garage;
        var pem = await File.ReadAllTextAsync(
            Path.Combine(garage.Keys, "authority.pem"),
            TestContext.Current.CancellationToken
        );
        using var authority = X509Certificate2.CreateFromPem(pem, pem);
        using var under = Sign(authority, "under.local", isAuthority: true);
        using var leaf = Sign(under, "laptop.local", isAuthority: false);
        Assert.False(Chain(leaf, garage.Root, under).Built);
    }

    [Fact]
    [UnsupportedOSPlatform("windows")]
    public async Task Keys_InTheFolder_AreTheOwnersAlone()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no such modes.");
        const UnixFileMode Owner = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using var book = new TempBook();
        var keys = Path.Combine(book.Folder, "link");
        var file = Path.Combine(keys, "authority.pem");
        await using (await Start(book)) { }
        Assert.Equal(Owner | UnixFileMode.UserExecute, File.GetUnixFileMode(keys));
        Assert.Equal(
            ["authority.pem", "laptop.pem"],
            Directory.GetFiles(keys).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        Assert.All(Directory.GetFiles(keys), f => Assert.Equal(Owner, File.GetUnixFileMode(f)));

        // Copied by a careless hand, it is closed again.
        File.SetUnixFileMode(file, Owner | UnixFileMode.GroupRead | UnixFileMode.OtherRead);
        await using (await Start(book)) { }
        Assert.Equal(Owner, File.GetUnixFileMode(file));
    }

    [Fact]
    public async Task Certificates_StartedAgain_StayUntilTheyDoNotFit()
    {
        using var book = new TempBook();
        var leafFile = Path.Combine(book.Folder, "link", "laptop.pem");
        var cancel = TestContext.Current.CancellationToken;
        X509Certificate2 root;
        string first;
        await using (var served = await Start(book))
        {
            root = await Garage.RootOf(served);
            first = (await Shown(served.Phones[0])).Thumbprint;
        }
        await using (var served = await Start(book))
        {
            Assert.Equal(root, await Garage.RootOf(served));
            Assert.Equal(first, (await Shown(served.Phones[0])).Thumbprint);
        }
        // At another address: another certificate, the same authority.
        await using (var served = await Start(book, "127.0.0.9"))
        {
            Assert.Equal(root, await Garage.RootOf(served));
            using var moved = await Shown(served.Phones[0]);
            Assert.True(moved.MatchesHostname("127.0.0.9"));
            Assert.False(moved.MatchesHostname(Garage.LaptopAddress));
            Assert.True(Chain(moved, root).Built);
        }
        // Nearly over, and damaged.
        var pem = await File.ReadAllTextAsync(
            Path.Combine(book.Folder, "link", "authority.pem"),
            cancel
        );
        using var authority = X509Certificate2.CreateFromPem(pem, pem);
        using var ending = Sign(authority, Garage.LaptopAddress, isAuthority: false, days: 29);
        using var key = ending.GetECDsaPrivateKey()!;
        await File.WriteAllTextAsync(
            leafFile,
            ending.ExportCertificatePem() + "\n" + key.ExportPkcs8PrivateKeyPem(),
            cancel
        );
        await using (var served = await Start(book))
        {
            using var renewed = await Shown(served.Phones[0]);
            Assert.NotEqual(ending.Thumbprint, renewed.Thumbprint);
            Assert.True(renewed.NotAfter > DateTime.Now.AddDays(390));
        }
        await File.WriteAllTextAsync(leafFile, "not a certificate", cancel);
        await using (var served = await Start(book))
        {
            using var mended = await Shown(served.Phones[0]);
            Assert.True(Chain(mended, root).Built);
        }
        root.Dispose();
    }

    [Fact]
    public async Task Authority_Damaged_IsLeftAsItIsAndToldInWords()
    {
        // Phones trust this one. A new one in its place would look like somebody who poses as the laptop.
        using var book = new TempBook();
        var file = Path.Combine(book.Folder, "link", "authority.pem");
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        await File.WriteAllTextAsync(file, "damaged", TestContext.Current.CancellationToken);
        var ran = await Shell.Run([
            "serve",
            "--port",
            "0",
            "--data",
            book.Folder,
            "--lan",
            Garage.LaptopAddress,
        ]);
        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.StartsWith("The keys of the garage link in ", ran.Error, StringComparison.Ordinal);
        Assert.Equal(
            "damaged",
            await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken)
        );
    }

    private static Task<Served> Start(TempBook book, string at = Garage.LaptopAddress) =>
        Served.Start(book.Folder, "--port", "0", "--lan", at);

    /// <summary>The certificate a door shows, believed or not.</summary>
    private static async Task<X509Certificate2> Shown(Uri door)
    {
        X509Certificate2? shown = null;
        using var handler = new HttpClientHandler
        {
            ServerCertificateCustomValidationCallback = (_, certificate, _, _) =>
            {
                shown = X509CertificateLoader.LoadCertificate(certificate!.RawData);
                return true;
            },
        };
        using var client = new HttpClient(handler);
        using var response = await client.GetAsync(door, TestContext.Current.CancellationToken);
        return shown!;
    }

    private static (bool Built, X509ChainStatusFlags Status) Chain(
        X509Certificate2 leaf,
        X509Certificate2 root,
        params X509Certificate2[] between
    )
    {
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Add(root);
        chain.ChainPolicy.ExtraStore.AddRange(between);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        var built = chain.Build(leaf);
        return (
            built,
            chain.ChainStatus.Aggregate(default(X509ChainStatusFlags), (all, s) => all | s.Status)
        );
    }

    private static X509Certificate2 Sign(
        X509Certificate2 authority,
        string name,
        bool isAuthority,
        int days = 300
    )
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Signed by hand", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        if (IPAddress.TryParse(name, out var address))
            names.AddIpAddress(address);
        else
            names.AddDnsName(name);
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(
            new X509BasicConstraintsExtension(isAuthority, false, 0, true)
        );
        using var signed = request.Create(
            authority,
            DateTimeOffset.UtcNow.AddHours(-1),
            DateTimeOffset.UtcNow.AddDays(days),
            [1, 2, 3, 4]
        );
        return signed.CopyWithPrivateKey(key);
    }
}
