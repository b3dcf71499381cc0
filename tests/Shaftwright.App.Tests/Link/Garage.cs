using System.Net;
using System.Net.Http.Headers;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using System.Text.Json.Nodes;
using Shaftwright.App.Tests.Api;

namespace Shaftwright.App.Tests.Link;

/// <summary>The real program with <c>--lan --plain</c> at a loopback address that is not the laptop's own: as good as a network for
/// everything but a browser's idea of what is secure.</summary>
internal sealed class Garage : IAsyncDisposable
{
    public const string LaptopAddress = "127.0.0.2";

    private readonly TempBook _book;

    private Garage(TempBook book, Served served, X509Certificate2 root)
    {
        _book = book;
        Served = served;
        Root = root;
    }

    /// <summary>The program; its client is the laptop's own.</summary>
    public Served Served { get; }

    /// <summary>The authority, as the laptop hands it out.</summary>
    public X509Certificate2 Root { get; }

    /// <summary>Where phones find it.</summary>
    public Uri Safe => Served.Phones.First(a => a.Scheme == "https");

    /// <summary>The same without encryption.</summary>
    public Uri Plain => Served.Phones.First(a => a.Scheme == "http");

    /// <summary>Folder of the keys.</summary>
    public string Keys => Path.Combine(_book.Folder, "link");

    public static async Task<Garage> Open()
    {
        var book = new TempBook();
        var served = await Served.Start(
            book.Folder,
            "--port",
            "0",
            "--lan",
            LaptopAddress,
            "--plain"
        );
        return new(book, served, await RootOf(served));
    }

    public static async Task<X509Certificate2> RootOf(Served served) =>
        X509CertificateLoader.LoadCertificate(
            await served.Client.GetByteArrayAsync(
                new Uri("api/link/authority.crt", UriKind.Relative),
                TestContext.Current.CancellationToken
            )
        );

    /// <summary>A phone that trusts the authority and nothing else, with a memory for cookies.</summary>
    /// <param name="at">Where it goes; null for the encrypted door.</param>
    /// <param name="from">The phone's own address.</param>
    public HttpClient Phone(Uri? at = null, string? from = null) =>
        new(Handler(from, Root)) { BaseAddress = at ?? Safe };

    /// <summary>What a phone sends by.</summary>
    public static SocketsHttpHandler Handler(string? from, params X509Certificate2[] trusted)
    {
        return new()
        {
            SslOptions = new SslClientAuthenticationOptions
            {
                CertificateChainPolicy = Policy(trusted),
            },
            ConnectCallback = async (context, cancel) =>
            {
                var socket = new Socket(SocketType.Stream, ProtocolType.Tcp);
                try
                {
                    if (from is not null)
                        socket.Bind(new IPEndPoint(IPAddress.Parse(from), 0));
                    await socket.ConnectAsync(context.DnsEndPoint, cancel);
                    return new NetworkStream(socket, ownsSocket: true);
                }
                catch
                {
                    socket.Dispose();
                    throw;
                }
            },
        };
    }

    /// <summary>Somebody who reaches the encrypted door and then says whatever Host he likes. To the client it is a plain address:
    /// it would not connect where the certificate does not name the Host.</summary>
    public HttpClient Caller() =>
        new(
            new SocketsHttpHandler
            {
                ConnectCallback = async (context, cancel) =>
                {
                    var socket = new Socket(SocketType.Stream, ProtocolType.Tcp);
                    await socket.ConnectAsync(IPAddress.Parse(LaptopAddress), Safe.Port, cancel);
                    var tls = new SslStream(new NetworkStream(socket, ownsSocket: true));
                    await tls.AuthenticateAsClientAsync(
                        new SslClientAuthenticationOptions
                        {
                            TargetHost = LaptopAddress,
                            CertificateChainPolicy = Policy(Root),
                        },
                        cancel
                    );
                    return tls;
                },
            }
        )
        {
            BaseAddress = new UriBuilder(Safe) { Scheme = "http" }.Uri,
        };

    /// <summary>A code, as the laptop's page gets one.</summary>
    public async Task<JsonNode> Code(Uri? at = null)
    {
        using var response = await Post(
            Served.Client,
            "api/link/code",
            new JsonObject { ["at"] = (at ?? Safe).AbsoluteUri }
        );
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return await Served.Json(response);
    }

    /// <summary>Pairs a phone with a code.</summary>
    public static Task<HttpResponseMessage> Pair(
        HttpClient phone,
        string code,
        string? name = "Bench phone"
    ) => Post(phone, "api/link/pair", new JsonObject { ["code"] = code, ["name"] = name });

    /// <summary>A paired phone.</summary>
    public async Task<HttpClient> PairedPhone(string name = "Bench phone", Uri? at = null)
    {
        var phone = Phone(at);
        using var response = await Pair(phone, (await Code(at)).Text("typed"), name);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return phone;
    }

    /// <summary>The list of phones, as the laptop's page shows it.</summary>
    public async Task<JsonArray> Devices() => (await Served.Get("api/link"))["devices"]!.AsArray();

    public static async Task<HttpResponseMessage> Post(
        HttpClient client,
        string path,
        JsonNode body
    )
    {
        using var content = new StringContent(body.ToJsonString());
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        return await client.PostAsync(
            new Uri(path, UriKind.Relative),
            content,
            TestContext.Current.CancellationToken
        );
    }

    public static Task<HttpResponseMessage> Get(HttpClient client, string path) =>
        client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);

    private static X509ChainPolicy Policy(params X509Certificate2[] trusted)
    {
        var policy = new X509ChainPolicy
        {
            TrustMode = X509ChainTrustMode.CustomRootTrust,
            RevocationMode = X509RevocationMode.NoCheck,
        };
        policy.CustomTrustStore.AddRange(trusted);
        return policy;
    }

    public async ValueTask DisposeAsync()
    {
        await Served.DisposeAsync();
        Root.Dispose();
        _book.Dispose();
    }
}
