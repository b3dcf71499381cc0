using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using Shaftwright.App.Tests.Api;
using Shaftwright.App.Tests.Verbs;

namespace Shaftwright.App.Tests.Link;

/// <summary>One program for all of the class: nothing here may change its book.</summary>
public sealed class GarageFixture : IAsyncLifetime
{
    internal Garage Garage { get; private set; } = null!;

    /// <summary>A paired phone, encrypted.</summary>
    internal HttpClient Paired { get; private set; } = null!;

    /// <summary>A paired phone on the plain door.</summary>
    internal HttpClient PairedPlain { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Garage = await Garage.Open();
        Paired = await Garage.PairedPhone();
        PairedPlain = await Garage.PairedPhone("Plain phone", Garage.Plain);
        await Garage.Served.Post([Sent.Begin(RefusalFixture.Job)]);
    }

    public async ValueTask DisposeAsync()
    {
        Paired.Dispose();
        PairedPlain.Dispose();
        await Garage.DisposeAsync();
    }
}

/// <summary>What the network sends and must not get.</summary>
public class LinkRefusalTests(GarageFixture fixture) : IClassFixture<GarageFixture>
{
    private Garage Garage => fixture.Garage;

    public static TheoryData<bool> Doors => [false, true];

    [Theory]
    [MemberData(nameof(Doors))]
    public async Task Request_WithoutAToken_GetsTheProgramAndNothingOfAUsers(bool plain)
    {
        using var stranger = Stranger(plain);
        foreach (
            var path in (string[])
                ["", "pair", "trust", "css/app.css", "api/link/here", "api/link/authority.crt"]
        )
        {
            using var response = await Garage.Get(stranger, path);
            Assert.True(HttpStatusCode.OK == response.StatusCode, path);
            Assert.DoesNotContain(
                RefusalFixture.Job + "\"",
                await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken),
                StringComparison.Ordinal
            );
        }
        foreach (
            var path in (string[])
                [
                    "api/health",
                    "api/jobs",
                    "API/Jobs",
                    "%61pi/jobs",
                    "api/jobs/kept",
                    "api/jobs/kept/file",
                    "api/edits",
                    "api/refused",
                    "api/nothing",
                    "api/",
                ]
        )
            await Refused(
                await Garage.Get(stranger, path),
                HttpStatusCode.Unauthorized,
                "not paired"
            );
        await Refused(
            await Garage.Post(stranger, "api/edits", Renamed()),
            HttpStatusCode.Unauthorized,
            "not paired"
        );
        Assert.Single(await Garage.Served.History());
    }

    [Theory]
    [MemberData(nameof(Doors))]
    public async Task Management_FromTheNetwork_IsRefusedEvenToAPairedPhone(bool plain)
    {
        var id = (await Garage.Devices())[0].Text("id");
        var at = new JsonObject { ["at"] = Garage.Safe.AbsoluteUri };
        using var stranger = Stranger(plain);
        foreach (var phone in (HttpClient[])[Paired(plain), stranger])
        {
            const string Words = "at the laptop itself";
            await Refused(await Garage.Get(phone, "api/link"), HttpStatusCode.Forbidden, Words);
            await Refused(await Garage.Get(phone, "api/link/"), HttpStatusCode.Forbidden, Words);
            await Refused(
                await Garage.Post(phone, "api/link/code", at.DeepClone()),
                HttpStatusCode.Forbidden,
                Words
            );
            foreach (var what in (string[])["off", "in"])
                await Refused(
                    await Garage.Post(phone, $"api/link/devices/{id}/{what}", new JsonObject()),
                    HttpStatusCode.Forbidden,
                    Words
                );
        }
        Assert.Equal("used", (await Garage.Served.Get("api/link")).Text("code"));
        Assert.All(await Garage.Devices(), d => Assert.Null(d!["revokedAt"]));
    }

    [Theory]
    [InlineData("attacker.example")]
    [InlineData("attacker.example:{port}")]
    [InlineData("localhost:{port}")] // The laptop's own name: not from the network.
    [InlineData("127.0.0.1:{port}")]
    [InlineData("127.0.0.3:{port}")]
    [InlineData("127.0.0.2")]
    [InlineData("127.0.0.2:1")]
    [InlineData("127.0.0.2.attacker.example:{port}")]
    [InlineData("other.local:{port}")]
    public async Task Request_ToAForeignHost_IsRefused(string host)
    {
        using var overTls = Garage.Caller();
        foreach (var caller in (HttpClient[])[overTls, fixture.PairedPlain])
        {
            var port = Served.Text(caller.BaseAddress!.Port);
            foreach (
                var path in (string[])["", "api/jobs", "api/link/here", "api/link/authority.crt"]
            )
            {
                using var request = new HttpRequestMessage(
                    HttpMethod.Get,
                    new Uri(path, UriKind.Relative)
                );
                request.Headers.Host = host.Replace("{port}", port, StringComparison.Ordinal);
                await Refused(
                    await Send(caller, request),
                    HttpStatusCode.MisdirectedRequest,
                    "This is not "
                );
            }
        }
        // The same caller by the right name is let on: it is the Host that was refused.
        using var right = await Garage.Get(overTls, "api/link/here");
        Assert.Equal(HttpStatusCode.OK, right.StatusCode);
    }

    [Theory]
    [InlineData("GET / HTTP/1.1\r\nHost: 127.0.0.2\r\n\r\n")]
    [InlineData("\u0016\u0003\u0001 not a greeting of TLS")]
    public async Task Noise_AtTheEncryptedDoor_IsHungUpOnAndTheNextIsServed(string noise)
    {
        using (var tcp = new TcpClient())
        {
            var cancel = TestContext.Current.CancellationToken;
            await tcp.ConnectAsync(IPAddress.Parse(Garage.LaptopAddress), Garage.Safe.Port, cancel);
            await using var stream = tcp.GetStream();
            await stream.WriteAsync(Encoding.Latin1.GetBytes(noise), cancel);
            tcp.Client.Shutdown(SocketShutdown.Send);
            using var answer = new MemoryStream();
            try
            {
                await stream.CopyToAsync(answer, cancel);
            }
            catch (IOException)
            {
                // Hung up on with words still unread.
            }
            Assert.DoesNotContain(
                "HTTP",
                Encoding.Latin1.GetString(answer.ToArray()),
                StringComparison.Ordinal
            );
        }
        Assert.Equal(HttpStatusCode.OK, (await Garage.Get(fixture.Paired, "api/jobs")).StatusCode);
    }

    [Fact]
    public async Task Request_ByTheMachinesNameInTheHouse_IsServed()
    {
        var named = Garage.Served.Phones.SingleOrDefault(a =>
            a.Scheme == "https" && a.Host.EndsWith(".local", StringComparison.Ordinal)
        );
        Assert.SkipWhen(named is null, "This machine's name cannot stand in an address.");
        using var caller = Garage.Caller();
        using var request = new HttpRequestMessage(
            HttpMethod.Get,
            new Uri("api/link/here", UriKind.Relative)
        );
        request.Headers.Host = named.Authority;
        using var response = await Send(caller, request);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
    }

    [Theory]
    [InlineData("Origin", "http://attacker.example")]
    [InlineData("Origin", "{other}")] // The other door: another origin, though the same machine.
    [InlineData("Origin", "http://localhost:{laptop}")]
    [InlineData("Origin", "null")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task Change_FromAnotherSite_IsRefusedAndChangesNothing(string header, string value)
    {
        foreach (var plain in (bool[])[false, true])
        {
            var other = plain ? Garage.Safe : Garage.Plain;
            var said = value
                .Replace(
                    "{other}",
                    other.GetLeftPart(UriPartial.Authority),
                    StringComparison.Ordinal
                )
                .Replace("{laptop}", Served.Text(Garage.Served.Port), StringComparison.Ordinal);
            using var edit = Change("api/edits", Renamed(), plain);
            edit.Headers.Add(header, said);
            await Refused(
                await Send(Paired(plain), edit),
                HttpStatusCode.Forbidden,
                "Another site"
            );
            using var pair = Change(
                "api/link/pair",
                new JsonObject { ["code"] = "x", ["name"] = "x" },
                plain
            );
            pair.Headers.Add(header, said);
            await Refused(
                await Send(Paired(plain), pair),
                HttpStatusCode.Forbidden,
                "Another site"
            );
        }
        Assert.Single(await Garage.Served.History());
    }

    [Theory]
    [InlineData("cross-site")]
    [InlineData("same-site")]
    public async Task Reading_ForAnotherSitesPage_IsRefused(string site)
    {
        using var request = new HttpRequestMessage(
            HttpMethod.Get,
            new Uri(Garage.Safe, "api/jobs")
        );
        request.Headers.Add("Sec-Fetch-Site", site);
        await Refused(
            await Send(fixture.Paired, request),
            HttpStatusCode.Forbidden,
            "Another site"
        );
    }

    [Fact]
    public async Task Management_FromAnotherSitesPageOnTheLaptop_IsRefused()
    {
        foreach (
            var origin in (string[])
                ["http://attacker.example", Garage.Safe.GetLeftPart(UriPartial.Authority)]
        )
        {
            using var request = new HttpRequestMessage(
                HttpMethod.Post,
                new Uri("api/link/code", UriKind.Relative)
            )
            {
                Content = Json(new JsonObject { ["at"] = Garage.Safe.AbsoluteUri }),
            };
            request.Headers.Add("Origin", origin);
            await Refused(
                await Send(Garage.Served.Client, request),
                HttpStatusCode.Forbidden,
                "Another site"
            );
        }
    }

    [Fact]
    public async Task Reply_ToAnyOrigin_CarriesNoCorsPermission()
    {
        foreach (var method in (HttpMethod[])[HttpMethod.Options, HttpMethod.Get])
        foreach (var path in (string[])["api/jobs", "api/link/pair", "api/link/here"])
        {
            using var request = new HttpRequestMessage(method, new Uri(Garage.Safe, path));
            request.Headers.Add("Origin", "https://attacker.example");
            request.Headers.Add("Access-Control-Request-Method", "POST");
            using var response = await Send(fixture.Paired, request);
            Assert.DoesNotContain(
                response.Headers,
                h => h.Key.StartsWith("Access-Control", StringComparison.OrdinalIgnoreCase)
            );
            Assert.Equal(
                ["same-origin"],
                response.Headers.GetValues("Cross-Origin-Resource-Policy")
            );
            Assert.Equal(["nosniff"], response.Headers.GetValues("X-Content-Type-Options"));
        }
    }

    [Theory]
    [InlineData("{\"code\":\"x\",\"name\":\"{4096}\"}", HttpStatusCode.RequestEntityTooLarge)]
    [InlineData("", HttpStatusCode.BadRequest)]
    [InlineData("[]", HttpStatusCode.BadRequest)]
    [InlineData("null", HttpStatusCode.BadRequest)]
    [InlineData("{\"code\":1}", HttpStatusCode.BadRequest)]
    [InlineData("{\"code\":", HttpStatusCode.BadRequest)]
    public async Task Pair_WithABodyThatIsNone_IsRefused(string body, HttpStatusCode status)
    {
        using var stranger = Stranger(false);
        using var request = new HttpRequestMessage(
            HttpMethod.Post,
            new Uri(Garage.Safe, "api/link/pair")
        )
        {
            Content = new StringContent(
                body.Replace("{4096}", new string('x', 4096), StringComparison.Ordinal),
                Encoding.UTF8,
                "application/json"
            ),
        };
        await Refused(await Send(stranger, request), status, "");
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    public async Task Pair_AsAFormOfAnotherSiteCouldSend_IsRefused(string type)
    {
        using var stranger = Stranger(false);
        using var request = new HttpRequestMessage(
            HttpMethod.Post,
            new Uri(Garage.Safe, "api/link/pair")
        )
        {
            Content = new StringContent("{\"code\":\"x\",\"name\":\"x\"}", Encoding.UTF8, type),
        };
        await Refused(
            await Send(stranger, request),
            HttpStatusCode.UnsupportedMediaType,
            "not sent as JSON"
        );
    }

    [Fact]
    public async Task Edits_TooLargeOrFromAStranger_AreRefused()
    {
        var large = new string(' ', 4 * 1024 * 1024) + "[]";
        using var paired = new HttpRequestMessage(
            HttpMethod.Post,
            new Uri(Garage.Safe, "api/edits")
        )
        {
            Content = new StringContent(large, Encoding.UTF8, "application/json"),
        };
        paired.Headers.ExpectContinue = true;
        await Refused(
            await Send(fixture.Paired, paired),
            HttpStatusCode.RequestEntityTooLarge,
            "too large"
        );
        // A stranger is turned away before its body is looked at.
        using var stranger = Stranger(false);
        using var strange = new HttpRequestMessage(
            HttpMethod.Post,
            new Uri(Garage.Safe, "api/edits")
        )
        {
            Content = new StringContent(large, Encoding.UTF8, "application/json"),
        };
        strange.Headers.ExpectContinue = true;
        await Refused(await Send(stranger, strange), HttpStatusCode.Unauthorized, "not paired");
    }

    [Theory]
    [InlineData("..%2f..%2flink%2fauthority.pem")]
    [InlineData("link/authority.pem")]
    [InlineData("%2e%2e/link/authority.pem")]
    [InlineData("_framework/..%2f..%2f..%2fjobbook.db")]
    [InlineData("jobbook.db")]
    [InlineData("api/link/..%2f..%2fauthority.pem")]
    [InlineData("api/jobs/..%2f..%2fjobbook.db/file")]
    [InlineData("Shaftwright.App.runtimeconfig.json")]
    public async Task Request_OfAFileOutsideThePages_NeverGetsIt(string path)
    {
        foreach (var phone in (HttpClient[])[fixture.Paired, fixture.PairedPlain])
        {
            using var response = await Garage.Get(phone, path);
            var said = await response.Content.ReadAsStringAsync(
                TestContext.Current.CancellationToken
            );
            Assert.DoesNotContain("PRIVATE KEY", said, StringComparison.Ordinal);
            Assert.DoesNotContain("SQLite format", said, StringComparison.Ordinal);
            Assert.DoesNotContain("runtimeOptions", said, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Authority_AsItIsHandedOut_HasItsTypeAndNoKey()
    {
        using var stranger = Stranger(false);
        using var response = await Garage.Get(stranger, "api/link/authority.crt");
        Assert.Equal("application/x-x509-ca-cert", response.Content.Headers.ContentType!.MediaType);
        Assert.Equal(
            "shaftwright.crt",
            response.Content.Headers.ContentDisposition!.FileName!.Trim('"')
        );
        Assert.Equal(
            Garage.Root.RawData,
            await response.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)
        );
        var pair = Garage.Root.GetCertHashString(
            System.Security.Cryptography.HashAlgorithmName.SHA256
        );
        using var here = await Garage.Get(stranger, "api/link/here");
        Assert.Equal(
            pair,
            (await Served.Json(here)).Text("fingerprint").Replace(" ", "", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("--plain")]
    [InlineData("--lan-port 5000")]
    [InlineData("--lan 127.0.0.1")]
    [InlineData("--lan ::1")]
    [InlineData("--lan 8.8.8.8")]
    [InlineData("--lan 0.0.0.0")]
    [InlineData("--lan garage")]
    [InlineData("--lan 192.168.255.254")] // Not this machine's.
    [InlineData("--lan 127.0.0.2 --lan-port 65535 --plain")]
    [InlineData("--lan 127.0.0.2 --lan-port x")]
    public async Task Serve_WithALinkThatCannotBe_EndsWithCodeTwoAndWords(string args)
    {
        using var book = new TempBook();
        var ran = await Shell.Run([
            "serve",
            "--port",
            "0",
            "--data",
            book.Folder,
            .. args.Split(' '),
        ]);
        Assert.Equal(2, ran.Code);
        Assert.Equal("", ran.Out);
        Assert.DoesNotContain("fault of its own", ran.Error, StringComparison.Ordinal);
        Assert.NotEmpty(ran.Error.Trim());
    }

    [Fact]
    public async Task Link_WithoutLan_IsOffAndHandsOutNoCode()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--port", "0");
        var shown = await served.Get("api/link");
        Assert.False(shown["on"]!.GetValue<bool>());
        Assert.Empty(shown["addresses"]!.AsArray());
        await Refused(
            await Garage.Post(served.Client, "api/link/code", new JsonObject { ["at"] = "x" }),
            HttpStatusCode.Conflict,
            "not served now"
        );
        await Refused(
            await Garage.Get(served.Client, "api/link/authority.crt"),
            HttpStatusCode.NotFound,
            "no authority"
        );
        Assert.False(Directory.Exists(Path.Combine(book.Folder, "link")));
    }

    private HttpClient Stranger(bool plain) => Garage.Phone(plain ? Garage.Plain : Garage.Safe);

    private HttpClient Paired(bool plain) => plain ? fixture.PairedPlain : fixture.Paired;

    private static JsonArray Renamed() => new(Sent.Edit(RefusalFixture.Job, "/name", "Changed"));

    private HttpRequestMessage Change(string path, JsonNode body, bool plain) =>
        new(HttpMethod.Post, new Uri(plain ? Garage.Plain : Garage.Safe, path))
        {
            Content = Json(body),
        };

    private static StringContent Json(JsonNode body) =>
        new(
            body.ToJsonString(),
            new System.Net.Http.Headers.MediaTypeHeaderValue("application/json")
        );

    private static Task<HttpResponseMessage> Send(HttpClient client, HttpRequestMessage request) =>
        client.SendAsync(request, TestContext.Current.CancellationToken);

    private static async Task Refused(
        HttpResponseMessage response,
        HttpStatusCode status,
        string problem
    )
    {
        using (response)
        {
            var said = await response.Content.ReadAsStringAsync(
                TestContext.Current.CancellationToken
            );
            Assert.True(
                status == response.StatusCode,
                $"{response.RequestMessage?.RequestUri} {response.StatusCode}: {said}"
            );
            var trouble = JsonNode.Parse(said)!;
            Assert.Contains(problem, trouble.Text("problem"), StringComparison.Ordinal);
            Assert.NotEmpty(trouble.Text("problem"));
            Assert.NotEmpty(trouble.Text("accepted"));
        }
    }
}
