using System.Security.Cryptography;
using System.Text.Json.Nodes;

namespace Shaftwright.App.Tests.Api;

/// <summary>The service worker's list is what the program serves: nothing missing, nothing more, every hash right.</summary>
public class WorkerTests
{
    [Fact]
    public async Task Worker_NamesEveryFileOfThePagesWithItsHash()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder, "--port", "0");
        var cancel = TestContext.Current.CancellationToken;
        using var answer = await served.Client.GetAsync(
            new Uri("worker.js", UriKind.Relative),
            cancel
        );
        Assert.Equal("text/javascript", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal("no-cache", answer.Headers.CacheControl?.ToString());
        var script = await answer.Content.ReadAsStringAsync(cancel);
        var list = script.Split("const FILES = ")[1].Split(";\n")[0];
        var files = JsonNode
            .Parse(list)!
            .AsArray()
            .Select(f => f!.AsArray().Select(t => (string)t!).ToList())
            .ToList();

        foreach (var file in files)
        {
            var body = await served.Client.GetByteArrayAsync(
                new Uri(file[1], UriKind.Relative),
                cancel
            );
            Assert.Equal(file[0], "sha256-" + Convert.ToBase64String(SHA256.HashData(body)));
        }
        var addresses = files.SelectMany(f => f.Skip(1)).ToList();
        Assert.Equal(addresses.Count, addresses.Distinct().Count());
        string[] needed =
        [
            "index.html",
            "app.webmanifest",
            "device.js",
            "offline.js",
            "css/app.css",
            "icons/shaft-192.png",
            "_framework/blazor.webassembly.js",
            "_framework/dotnet.js",
            "_framework/Shaftwright.wasm",
            "_framework/Shaftwright.Pages.wasm",
        ];
        Assert.All(needed, n => Assert.Contains(n, addresses));
        Assert.DoesNotContain(addresses, a => a.StartsWith("api", StringComparison.Ordinal));

        var manifest = JsonNode.Parse(
            await served.Client.GetStringAsync(new Uri("app.webmanifest", UriKind.Relative), cancel)
        )!;
        Assert.Equal("standalone", (string?)manifest["display"]);
        Assert.All(
            manifest["icons"]!.AsArray(),
            i => Assert.Contains((string)i!["src"]!, addresses)
        );
    }
}
