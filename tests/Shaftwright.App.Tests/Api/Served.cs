using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;

namespace Shaftwright.App.Tests.Api;

/// <summary>The real program, serving.</summary>
internal sealed class Served : IAsyncDisposable
{
    private static readonly string s_program = typeof(Served)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(a => a.Key == "Shaftwright.App")
        .Value!;

    private readonly Process _process;
    private readonly Task<string> _error;

    private Served(Process process, Task<string> error, Uri address, IReadOnlyList<Uri> phones)
    {
        _process = process;
        _error = error;
        Address = address;
        Phones = phones;
        Client = NewClient();
    }

    /// <summary>Where it says it is.</summary>
    public Uri Address { get; }

    /// <summary>Where it says that phones find it, with <c>--lan</c>.</summary>
    public IReadOnlyList<Uri> Phones { get; }

    public int Port => Address.Port;

    public HttpClient Client { get; }

    /// <summary>Starts it and waits until it says where it is.</summary>
    public static async Task<Served> Start(string data, params string[] more)
    {
        var process = Launch(["serve", "--data", data, .. more]);
        var error = process.StandardError.ReadToEndAsync();
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(
            TestContext.Current.CancellationToken
        );
        patience.CancelAfter(TimeSpan.FromMinutes(1));
        if (
            await process.StandardOutput.ReadLineAsync(patience.Token) is not { } line
            || !line.StartsWith("Shaftwright is at http://", StringComparison.Ordinal)
        )
        {
            process.Kill();
            throw new InvalidOperationException($"It did not serve: {await error}");
        }
        var phones =
            more.Contains("--lan")
            && await process.StandardOutput.ReadLineAsync(patience.Token) is { } further
                ? further.Split(' ').Where(w => w.Contains("://", StringComparison.Ordinal))
                : [];
        return new(
            process,
            error,
            new Uri(line.Split(' ')[3]),
            [.. phones.Select(w => new Uri(w))]
        );
    }

    /// <summary>Starts it and kills it so much later, whatever it has come to.</summary>
    public static async Task StartAndKill(string data, TimeSpan later)
    {
        using var process = Launch(["serve", "--data", data, "--port", "0"]);
        await Task.Delay(later, TestContext.Current.CancellationToken);
        process.Kill();
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>A port that nothing listens at, below those that the system hands to clients: a client that knocks while the program
    /// is down must not be given that port itself.</summary>
    public static int FreePort()
    {
        while (true)
        {
            var port = RandomNumberGenerator.GetInt32(20000, 30000);
            using var probe = new TcpListener(IPAddress.Loopback, port);
            try
            {
                probe.Start();
                return port;
            }
            catch (SocketException)
            {
                // Another one, then.
            }
        }
    }

    public static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    public HttpClient NewClient() =>
        new() { BaseAddress = Address, Timeout = TimeSpan.FromMinutes(1) };

    /// <summary>Sends edits; answers one reply an edit.</summary>
    public async Task<JsonArray> Post(JsonArray edits, HttpClient? client = null)
    {
        using var content = new StringContent(edits.ToJsonString());
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        using var response = await (client ?? Client).PostAsync(
            new Uri("api/edits", UriKind.Relative),
            content,
            TestContext.Current.CancellationToken
        );
        response.EnsureSuccessStatusCode();
        return (await Json(response)).AsArray();
    }

    public async Task<JsonNode> Get(string path)
    {
        using var response = await Client.GetAsync(
            new Uri(path, UriKind.Relative),
            TestContext.Current.CancellationToken
        );
        response.EnsureSuccessStatusCode();
        return await Json(response);
    }

    /// <summary>Everything that ever arrived, in order.</summary>
    public async Task<List<JsonNode>> History()
    {
        var all = new List<JsonNode>();
        for (long since = 0; ; )
        {
            var page = await Get(
                string.Create(CultureInfo.InvariantCulture, $"api/edits?since={since}")
            );
            all.AddRange(page["edits"]!.AsArray().Select(e => e!));
            if (!page["more"]!.GetValue<bool>())
                return all;
            since = page["latest"]!.GetValue<long>();
        }
    }

    /// <summary>Sends a request as it stands, letter by letter, and answers the whole reply.</summary>
    public async Task<string> Raw(string request)
    {
        var cancel = TestContext.Current.CancellationToken;
        using var tcp = new TcpClient();
        await tcp.ConnectAsync(IPAddress.Loopback, Port, cancel);
        await using var stream = tcp.GetStream();
        await stream.WriteAsync(
            Encoding.Latin1.GetBytes(request.ReplaceLineEndings("\r\n")),
            cancel
        );
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return await reader.ReadToEndAsync(cancel);
    }

    /// <summary>Ends it with no warning, as a pulled plug or the system's memory keeper does.</summary>
    public void Kill() => _process.Kill();

    /// <summary>Asks it to end, by a signal's name; answers its exit code and its words.</summary>
    public async Task<(int Code, string Error)> Signal(string name)
    {
        using var kill = Process.Start("kill", [$"-{name}", Text(_process.Id)]);
        await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(
            TestContext.Current.CancellationToken
        );
        patience.CancelAfter(TimeSpan.FromMinutes(1));
        await _process.WaitForExitAsync(patience.Token);
        return (_process.ExitCode, await _error);
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        if (!_process.HasExited)
            _process.Kill();
        await _process.WaitForExitAsync(CancellationToken.None);
        _process.Dispose();
    }

    public static async Task<JsonNode> Json(HttpResponseMessage response) =>
        JsonNode.Parse(
            await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)
        )!;

    private static Process Launch(string[] args)
    {
        var start = new ProcessStartInfo("dotnet", [s_program, .. args])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        return Process.Start(start)!;
    }
}
