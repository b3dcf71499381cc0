using System.Globalization;
using Microsoft.Extensions.Primitives;

namespace Shaftwright.App.Api;

/// <summary>Lets through what comes from this machine's own pages and programs.</summary>
/// <remarks>The port listens on loopback, but a page of any site in the same browser can reach that too: by a name it points at
/// 127.0.0.1 (so the Host is checked), or by posting across origins (so the Origin is).</remarks>
internal sealed class LocalOnly(RequestDelegate next, ContentPolicy policy)
{
    public Task InvokeAsync(HttpContext context)
    {
        var (request, headers) = (context.Request, context.Response.Headers);
        headers.ContentSecurityPolicy = policy.Header;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";

        var port = context.Connection.LocalPort;
        if (!IsOurs(request.Host, port))
            return Troubles.Answer(
                context,
                StatusCodes.Status421MisdirectedRequest,
                $"This is not {request.Host.Value}.",
                string.Create(CultureInfo.InvariantCulture, $"http://localhost:{port}/")
            );
        if (
            !HttpMethods.IsGet(request.Method)
            && !HttpMethods.IsHead(request.Method)
            && !FromOurPages(request, port)
        )
            return Troubles.Answer(
                context,
                StatusCodes.Status403Forbidden,
                "Another site may not change anything here.",
                "requests from Shaftwright's own pages, or from programs on this machine"
            );
        return next(context);
    }

    private static bool IsOurs(HostString host, int port) =>
        host.Host is "localhost" or "127.0.0.1" or "[::1]" && (host.Port ?? 80) == port;

    /// <summary>A browser always says where a change comes from; a program says nothing.</summary>
    private static bool FromOurPages(HttpRequest request, int port)
    {
        if (
            request.Headers.TryGetValue("Sec-Fetch-Site", out var site)
            && site != "same-origin"
            && site != "none"
        )
            return false;
        var origin = request.Headers.Origin;
        return StringValues.IsNullOrEmpty(origin)
            || (
                Uri.TryCreate(origin, UriKind.Absolute, out var from)
                && from.Scheme == Uri.UriSchemeHttp
                && IsOurs(new HostString(from.Host, from.Port), port)
            );
    }
}
