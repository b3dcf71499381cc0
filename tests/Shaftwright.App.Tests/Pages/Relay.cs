using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Shaftwright.App.Tests.Pages;

/// <summary>Stands at one address before a program that serves, hands its answers on, and can change a file on the way: as
/// another build of it would be there, or as a bad line would spoil it.</summary>
internal sealed partial class Relay : IDisposable
{
    private const string Sheet = "/css/app.css";

    private readonly HttpListener _listener = new();
    private readonly HttpClient _program;
    private volatile bool _spoils;
    private volatile string? _added;

    public Relay(Uri program, int port)
    {
        _program = new() { BaseAddress = program };
        Address = string.Create(CultureInfo.InvariantCulture, $"http://localhost:{port}/");
        _listener.Prefixes.Add(Address);
        _listener.Start();
        _ = Serve();
    }

    /// <summary>Where it is, with a slash at its end.</summary>
    public string Address { get; }

    /// <summary>From now on another build is served: its style sheet says something more, and its worker knows of it.</summary>
    public void Build(string added) => _added = added;

    /// <summary>While set, the style sheet arrives changed, and no worker knows of it.</summary>
    public void Spoil(bool spoils) => _spoils = spoils;

    public void Dispose()
    {
        // Close waits for whoever still talks to it.
        _listener.Abort();
        _program.Dispose();
    }

    private async Task Serve()
    {
        while (_listener.IsListening)
        {
            HttpListenerContext context;
            try
            {
                context = await _listener.GetContextAsync();
            }
            catch (Exception e) when (e is HttpListenerException or ObjectDisposedException)
            {
                return;
            }
            _ = Task.Run(() => Hand(context));
        }
    }

    private async Task Hand(HttpListenerContext context)
    {
        var (request, response) = (context.Request, context.Response);
        try
        {
            var path = request.Url!.PathAndQuery;
            using var asked = new HttpRequestMessage(new(request.HttpMethod), path.TrimStart('/'));
            if (request.HasEntityBody)
            {
                asked.Content = new StreamContent(request.InputStream);
                asked.Content.Headers.TryAddWithoutValidation("Content-Type", request.ContentType);
            }
            if (request.Headers["Shaftwright-Book"] is { } book)
                asked.Headers.TryAddWithoutValidation("Shaftwright-Book", book);
            using var answer = await _program.SendAsync(asked);
            var body = await answer.Content.ReadAsByteArrayAsync();
            if (IsSheet().IsMatch(path) || path == "/worker.js")
                body = await Changed(path, body);
            response.StatusCode = (int)answer.StatusCode;
            foreach (var name in (string[])["Content-Security-Policy", "Cache-Control"])
            {
                if (answer.Headers.TryGetValues(name, out var values))
                    response.Headers[name] = string.Join(", ", values);
            }
            response.ContentType = answer.Content.Headers.ContentType?.ToString();
            response.ContentLength64 = body.Length;
            await response.OutputStream.WriteAsync(body);
            response.Close();
        }
        catch (Exception e) when (e is HttpRequestException or HttpListenerException or IOException)
        {
            // The browser has gone, or the program has: either way there is nobody to answer.
            response.Abort();
        }
    }

    private async Task<byte[]> Changed(string path, byte[] body)
    {
        if (path != "/worker.js")
            return
            [
                .. body,
                .. Encoding.UTF8.GetBytes((_added ?? "") + (_spoils ? "/* spoilt */" : "")),
            ];
        if (_added is not { } added)
            return body;
        var sheet = await _program.GetByteArrayAsync(new Uri(Sheet[1..], UriKind.Relative));
        var text = Encoding
            .UTF8.GetString(body)
            .Replace(
                Hash(sheet),
                Hash([.. sheet, .. Encoding.UTF8.GetBytes(added)]),
                StringComparison.Ordinal
            )
            .Replace(
                "const BUILD = \"",
                $"const BUILD = \"next-{added.Length}-",
                StringComparison.Ordinal
            );
        return Encoding.UTF8.GetBytes(text);
    }

    // By its plain name or by one with a fingerprint: which of them a worker asks for is the build's business.
    [GeneratedRegex(@"^/css/app(\.\w+)?\.css$")]
    private static partial Regex IsSheet();

    private static string Hash(byte[] body) => Convert.ToBase64String(SHA256.HashData(body));
}
