using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.FileProviders;
using Shaftwright.App.Link;

namespace Shaftwright.App.Api;

/// <summary>The pages' service worker (<c>worker.js</c>), with the list of all that the pages are made of, each file with its
/// hash. The list is taken from what this program serves, so that it is right for a build and for a published program
/// alike: the list that the SDK can make leaves index.html out when another project publishes the pages.</summary>
/// <param name="Text">The script.</param>
internal sealed record OfflineWorker(string Text)
{
    /// <summary>Its address. It stands at the top, for a worker reaches what is at or below its own address.</summary>
    public const string Path = "/worker.js";

    private const string Body = "worker.js";

    // A script's own text, not part of a page: + and / of the hashes may stand as they are.
    private static readonly JsonSerializerOptions s_plain = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Serves it; made when it is first asked for.</summary>
    public static void Map(WebApplication app)
    {
        var worker = new Lazy<OfflineWorker>(() =>
            Of(
                app.Services.GetRequiredService<EndpointDataSource>()
                    .Endpoints.Select(e => e.Metadata.GetMetadata<StaticAssetDescriptor>())
                    .OfType<StaticAssetDescriptor>(),
                app.Environment.WebRootFileProvider
            )
        );
        app.MapGet(
                Path,
                context =>
                {
                    context.Response.ContentType = "text/javascript; charset=utf-8";
                    context.Response.Headers.CacheControl = "no-cache";
                    return context.Response.WriteAsync(worker.Value.Text, context.RequestAborted);
                }
            )
            .WithMetadata(Reach.Anyone);
    }

    /// <summary>Writes it for the files that are served.</summary>
    private static OfflineWorker Of(IEnumerable<StaticAssetDescriptor> served, IFileProvider pages)
    {
        var files = Files(served, pages);
        var list = JsonSerializer.Serialize(files, s_plain);
        using var stream = typeof(OfflineWorker).Assembly.GetManifestResourceStream(Body)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        var body = reader.ReadToEnd();
        var build = Convert.ToHexStringLower(
            SHA256.HashData(Encoding.UTF8.GetBytes(list + body)).AsSpan(0, 8)
        );
        return new($"const BUILD = \"{build}\";\nconst FILES = {list};\n{body}");
    }

    /// <summary>Each file once: its hash, the address it is kept under, its other addresses. Without what only a debugger
    /// asks for, and without copies compressed for the way.</summary>
    private static List<string[]> Files(
        IEnumerable<StaticAssetDescriptor> served,
        IFileProvider pages
    ) =>
        [
            .. served
                .Where(a => a.Selectors.Count == 0 && !IsAside(a.Route))
                .GroupBy(
                    a => a.AssetPath,
                    (_, all) => all.OrderBy(a => a.Route, StringComparer.Ordinal).ToList(),
                    StringComparer.Ordinal
                )
                .Select(all =>
                    (string[])[Hash(pages, all[0].AssetPath), .. all.Select(a => a.Route)]
                )
                .OrderBy(file => file[1], StringComparer.Ordinal),
        ];

    /// <summary>Of the file as it stands, as the browser will see it. A build's list of assets has no hashes while it runs from
    /// its source folders, and a published one has.</summary>
    private static string Hash(IFileProvider pages, string path)
    {
        using var file = pages.GetFileInfo(path).CreateReadStream();
        return "sha256-" + Convert.ToBase64String(SHA256.HashData(file));
    }

    private static bool IsAside(string route) =>
        System.IO.Path.GetExtension(route) is ".gz" or ".br" or ".pdb" or ".map";
}
