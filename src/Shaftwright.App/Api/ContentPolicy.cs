using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Extensions.FileProviders;

namespace Shaftwright.App.Api;

/// <summary>The Content-Security-Policy of the pages: nothing from anywhere but this program.</summary>
/// <param name="Header">The header's value.</param>
internal sealed partial record ContentPolicy(string Header)
{
    /// <summary>The policy for the pages that stand there. Scripts written in index.html (the map of module names that the build
    /// fills in) are let through by their hash; .NET in the browser needs <c>wasm-unsafe-eval</c> and no more. Styles may
    /// stand inline: drawings carry their own.</summary>
    public static ContentPolicy For(IFileProvider pages)
    {
        var hashes = "";
        var index = pages.GetFileInfo("index.html");
        if (index.Exists)
        {
            using var reader = new StreamReader(index.CreateReadStream());
            foreach (Match script in InlineScript().Matches(reader.ReadToEnd()))
            {
                // HTML parsers read CRLF as LF, and hash what they read.
                var text = script
                    .Groups["text"]
                    .Value.Replace("\r\n", "\n", StringComparison.Ordinal);
                hashes +=
                    $" 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}'";
            }
        }
        return new(
            $"default-src 'none'; script-src 'self' 'wasm-unsafe-eval'{hashes}; style-src 'self' 'unsafe-inline'; "
                + "img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; "
                + "base-uri 'self'; form-action 'none'; frame-ancestors 'none'"
        );
    }

    [GeneratedRegex(
        """<script(?![^>]*\ssrc\s*=)[^>]*>(?<text>.*?)</script>""",
        RegexOptions.Singleline | RegexOptions.IgnoreCase
    )]
    private static partial Regex InlineScript();
}
