using System.Net;
using System.Net.Http.Headers;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;

namespace Shaftwright.App.Tests.Api;

/// <summary>One program for all of the class: nothing here may change its book.</summary>
public sealed class RefusalFixture : IAsyncLifetime
{
    public const string Job = "kept";

    private readonly TempBook _book = new();

    internal Served Served { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Served = await Served.Start(_book.Folder, "--port", "0");
        await Served.Post([Sent.Begin(Job)]);
    }

    public async ValueTask DisposeAsync()
    {
        await Served.DisposeAsync();
        _book.Dispose();
    }
}

/// <summary>What the API does not serve, it refuses in words, and nothing changes.</summary>
public class RefusalTests(RefusalFixture fixture) : IClassFixture<RefusalFixture>
{
    private const string Json = "application/json";

    private Served Served => fixture.Served;

    [Theory]
    [InlineData("attacker.example")]
    [InlineData("attacker.example:{port}")]
    [InlineData("localhost.attacker.example:{port}")]
    [InlineData("127.0.0.1.attacker.example:{port}")]
    [InlineData("localhost")] // Port 80, which is somebody else's.
    [InlineData("localhost:1")]
    [InlineData("0.0.0.0:{port}")]
    public async Task Request_ToAForeignHost_IsRefused(string host)
    {
        foreach (var path in new[] { "/", "/api/jobs", "/api/edits" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, Relative(path));
            request.Headers.Host = host.Replace("{port}", Served.Text(Served.Port));
            await Refused(request, HttpStatusCode.MisdirectedRequest, "This is not ");
        }
    }

    [Theory]
    [InlineData("localhost")]
    [InlineData("127.0.0.1")]
    [InlineData("[::1]")]
    public async Task Request_ToThisMachineByName_IsServed(string host)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, Relative("/api/health"));
        request.Headers.Host = $"{host}:{Served.Text(Served.Port)}";
        using var response = await Send(request);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.Equal("Shaftwright", (await Served.Json(response)).Text("program"));
    }

    [Theory]
    [InlineData("Origin", "http://attacker.example")]
    [InlineData("Origin", "http://attacker.example:{port}")]
    [InlineData("Origin", "https://localhost:{port}")]
    [InlineData("Origin", "http://localhost:1")]
    [InlineData("Origin", "null")]
    [InlineData("Origin", "file://")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task Post_FromAnotherSite_IsRefusedAndChangesNothing(string header, string value)
    {
        using var request = Post(Renamed(), Json);
        request.Headers.Add(header, value.Replace("{port}", Served.Text(Served.Port)));
        await Refused(request, HttpStatusCode.Forbidden, "Another site may not change anything");
        Assert.Single(await Served.History());
    }

    [Fact]
    public async Task Post_FromOurOwnPages_IsTaken()
    {
        using var request = Post("[]", Json);
        request.Headers.Add("Origin", $"http://localhost:{Served.Text(Served.Port)}");
        request.Headers.Add("Sec-Fetch-Site", "same-origin");
        using var response = await Send(request);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("multipart/form-data; boundary=x")]
    [InlineData("application/json; charset=utf-16")]
    [InlineData("application/jsonp")]
    public async Task Post_OfAnotherContentType_IsRefused(string? type)
    {
        using var request = Post(Renamed(), type);
        await Refused(request, HttpStatusCode.UnsupportedMediaType, "not sent as JSON");
        Assert.Single(await Served.History());
    }

    [Theory]
    [InlineData("")]
    [InlineData("[")]
    [InlineData("[{}")]
    [InlineData("{}")]
    [InlineData("null")]
    [InlineData("\"[]\"")]
    [InlineData("[] []")]
    [InlineData("[NaN]")]
    public async Task Post_OfWhatIsNoListInJson_IsRefused(string body)
    {
        using var request = Post(body, Json);
        await Refused(request, HttpStatusCode.BadRequest, "");
    }

    [Fact]
    public async Task Post_NestedBeyondMeasure_IsRefused()
    {
        using var request = Post(new string('[', 20000) + new string(']', 20000), Json);
        await Refused(request, HttpStatusCode.BadRequest, "");
    }

    [Fact]
    public async Task Post_NotInUtf8_IsRefused()
    {
        using var request = Post("", null);
        request.Content = new ByteArrayContent([(byte)'[', (byte)'"', 0xFF, (byte)'"', (byte)']']);
        request.Content.Headers.ContentType = new MediaTypeHeaderValue(Json);
        await Refused(request, HttpStatusCode.BadRequest, "not text in UTF-8");
    }

    [Fact]
    public async Task Post_OfTooManyEdits_IsRefusedWhole()
    {
        JsonArray edits =
        [
            .. Enumerable.Range(0, 501).Select(_ => Sent.Edit(RefusalFixture.Job, "/about", "x")),
        ];
        using var request = Post(edits.ToJsonString(), Json);
        await Refused(request, HttpStatusCode.BadRequest, "That is 501 edits.");
        Assert.Single(await Served.History());
    }

    [Fact]
    public async Task Post_SaidToBeTooLarge_IsRefusedBeforeItIsSent()
    {
        var reply = await Served.Raw(
            $"""
            POST /api/edits HTTP/1.1
            Host: localhost:{Served.Port}
            Content-Type: application/json
            Content-Length: {(4 * 1024 * 1024) + 1}


            """
        );
        Assert.StartsWith("HTTP/1.1 413 ", reply, StringComparison.Ordinal);
        Assert.Contains("That is too large.", reply, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_TooLargeWithoutSayingSo_IsRefused()
    {
        using var request = Post("", null);
        request.Headers.TransferEncodingChunked = true;
        request.Content = new StringContent(
            "[" + new string(' ', 4 * 1024 * 1024) + "]",
            Encoding.UTF8,
            Json
        );
        // The program stops listening at 4 MB; whether its answer is still heard depends on how much was on the way.
        try
        {
            await Refused(request, HttpStatusCode.RequestEntityTooLarge, "That is too large.");
        }
        catch (HttpRequestException e)
        {
            Assert.Null(e.StatusCode);
        }
        Assert.Single(await Served.History());
    }

    [Theory]
    [InlineData("GET", "/api/jobs/..%2f..%2fetc%2fpasswd")]
    [InlineData("GET", "/api/jobs/..%2f..%2fetc%2fpasswd/file")]
    [InlineData("GET", "/api/jobs/%2e%2e%2f%2e%2e%2fjobbook.db/file")]
    [InlineData("GET", "/api/jobs/..%5c..%5cjobbook.db/file")]
    [InlineData("GET", "/api/jobs/%00")]
    [InlineData("GET", "/api/jobs/none")]
    [InlineData("GET", "/api/jobs/kept/file/more")]
    [InlineData("GET", "/api/")]
    [InlineData("GET", "/api/nothing")]
    [InlineData("GET", "/api/nothing.json")]
    [InlineData("DELETE", "/api/jobs/kept")]
    [InlineData("PUT", "/api/jobs/kept")]
    [InlineData("POST", "/api/jobs")]
    [InlineData("GET", "/api/jobs/../nothing")]
    public async Task Request_OfAPathThatIsNotThere_IsAnsweredInWords(string method, string path)
    {
        var (status, body) = await Ask(method, path);
        Assert.True(status is 400 or 404, $"{status}");
        // A path that HTTP itself forbids is turned away before the program sees it.
        if (status == 404)
            InWords(JsonNode.Parse(body)!, "There is no");
    }

    [Theory]
    [InlineData("/../../../../../../etc/passwd")]
    [InlineData("/..%2f..%2f..%2f..%2f..%2f..%2fetc%2fpasswd")]
    [InlineData("/%2e%2e/%2e%2e/%2e%2e/%2e%2e/%2e%2e/etc/passwd")]
    [InlineData("/_framework/..%2f..%2fShaftwright.App.runtimeconfig.json")]
    [InlineData("/Shaftwright.App.runtimeconfig.json")]
    [InlineData("/jobbook.db")]
    [InlineData("//etc/passwd")]
    public async Task Request_OfAFileOutsideThePages_NeverGetsIt(string path)
    {
        var (status, body) = await Ask("GET", path);
        Assert.True(status is 200 or 400 or 404, $"{status}");
        Assert.DoesNotContain("root:", body, StringComparison.Ordinal);
        Assert.DoesNotContain("runtimeOptions", body, StringComparison.Ordinal);
        Assert.DoesNotContain("SQLite format", body, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("x")]
    [InlineData("-1")]
    [InlineData("1.5")]
    [InlineData("99999999999999999999")]
    public async Task History_SinceNoPlace_IsRefused(string since)
    {
        using var request = new HttpRequestMessage(
            HttpMethod.Get,
            Relative($"/api/edits?since={since}")
        );
        await Refused(request, HttpStatusCode.BadRequest, "not a place in the history");
    }

    [Fact]
    public async Task Reply_OfAnyKind_KeepsOtherSitesOut()
    {
        foreach (var path in new[] { "/api/jobs", "/api/nothing" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, Relative(path));
            using var response = await Send(request);
            var headers = response.Headers;
            Assert.StartsWith(
                "default-src 'none'; script-src 'self' ",
                Assert.Single(headers.GetValues("Content-Security-Policy")),
                StringComparison.Ordinal
            );
            Assert.Equal(["nosniff"], headers.GetValues("X-Content-Type-Options"));
            Assert.Equal(["same-origin"], headers.GetValues("Cross-Origin-Resource-Policy"));
            Assert.False(headers.Contains("Access-Control-Allow-Origin"));
            Assert.False(headers.Contains("Server"));
            Assert.True(headers.CacheControl!.NoStore);
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Connection_FromTheNetwork_IsRefused(bool anyPort)
    {
        var outward = NetworkInterface
            .GetAllNetworkInterfaces()
            .Where(n => n.OperationalStatus == OperationalStatus.Up)
            .SelectMany(n => n.GetIPProperties().UnicastAddresses)
            .Select(a => a.Address)
            .Where(a => !IPAddress.IsLoopback(a))
            .ToList();
        Assert.SkipWhen(outward.Count == 0, "This machine has no address but loopback.");
        using var book = new TempBook();
        var port = anyPort ? 0 : Served.FreePort();
        await using var served = await Served.Start(book.Folder, "--port", Served.Text(port));
        foreach (var address in outward)
        {
            using var tcp = new TcpClient(address.AddressFamily);
            var refused = await Assert.ThrowsAsync<SocketException>(async () =>
                await tcp.ConnectAsync(address, served.Port, TestContext.Current.CancellationToken)
            );
            Assert.Equal(SocketError.ConnectionRefused, refused.SocketErrorCode);
        }
    }

    private static string Renamed() =>
        new JsonArray(Sent.Edit(RefusalFixture.Job, "/name", "Changed")).ToJsonString();

    private static Uri Relative(string path) => new(path, UriKind.Relative);

    private static HttpRequestMessage Post(string body, string? type)
    {
        var content = new StringContent(body);
        content.Headers.Remove("Content-Type");
        if (type is not null)
            content.Headers.TryAddWithoutValidation("Content-Type", type);
        return new(HttpMethod.Post, Relative("/api/edits")) { Content = content };
    }

    private Task<HttpResponseMessage> Send(HttpRequestMessage request) =>
        Served.Client.SendAsync(request, TestContext.Current.CancellationToken);

    /// <summary>Sends a path that no client library has tidied.</summary>
    private async Task<(int Status, string Body)> Ask(string method, string path)
    {
        // HTTP/1.0, so that the body comes unchunked.
        var reply = await Served.Raw(
            $"""
            {method} {path} HTTP/1.0
            Host: localhost:{Served.Port}
            Content-Length: 0


            """
        );
        var blank = reply.IndexOf("\r\n\r\n", StringComparison.Ordinal);
        return (
            int.Parse(reply.AsSpan(9, 3), System.Globalization.CultureInfo.InvariantCulture),
            reply[(blank + 4)..]
        );
    }

    private async Task Refused(HttpRequestMessage request, HttpStatusCode status, string problem)
    {
        using var response = await Send(request);
        Assert.Equal(status, response.StatusCode);
        InWords(await Served.Json(response), problem);
    }

    private static void InWords(JsonNode trouble, string problem)
    {
        Assert.Contains(problem, trouble.Text("problem"), StringComparison.Ordinal);
        Assert.NotEmpty(trouble.Text("problem"));
        Assert.NotEmpty(trouble.Text("accepted"));
    }
}
