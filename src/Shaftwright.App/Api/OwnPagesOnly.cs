using Microsoft.Extensions.Primitives;
using Shaftwright.App.Link;

namespace Shaftwright.App.Api;

/// <summary>Lets through what comes from this program's own pages, and from programs that name no page.</summary>
/// <remarks>A page of any site in a browser that reaches this port can send to it too: by a name that it points here (so the Host is
/// checked), or by posting across origins (so the Origin is).</remarks>
internal sealed class OwnPagesOnly(RequestDelegate next, ContentPolicy policy)
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

        var door = Door.Of(context);
        if (!door.IsNamed(request.Host, context.Connection))
            return Troubles.Answer(
                context,
                StatusCodes.Status421MisdirectedRequest,
                $"This is not {request.Host.Value}.",
                door.Here(context.Connection).AbsoluteUri
            );
        if (
            !HttpMethods.IsGet(request.Method)
            && !HttpMethods.IsHead(request.Method)
            && !FromOurPages(context, door)
        )
            return Troubles.Answer(
                context,
                StatusCodes.Status403Forbidden,
                "Another site may not change anything here.",
                "requests from Shaftwright's own pages, or from programs on this machine"
            );
        return next(context);
    }

    /// <summary>A browser always says where a change comes from; a program says nothing.</summary>
    private static bool FromOurPages(HttpContext context, Door door)
    {
        var headers = context.Request.Headers;
        if (
            headers.TryGetValue("Sec-Fetch-Site", out var site)
            && site != "same-origin"
            && site != "none"
        )
            return false;
        return StringValues.IsNullOrEmpty(headers.Origin)
            || door.IsOrigin(headers.Origin, context.Connection);
    }
}
