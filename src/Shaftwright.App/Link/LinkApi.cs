using System.Globalization;
using System.Net;
using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.Http.Features;
using Shaftwright.App.Api;
using Shaftwright.JobFile.Exchange;
using Shaftwright.Records.Devices;

namespace Shaftwright.App.Link;

/// <summary>The garage link over HTTP: what the laptop's page Phones does, and how a phone is paired.</summary>
internal static class LinkApi
{
    /// <summary>Largest request here, bytes: a code and a name.</summary>
    public const int MostBody = 4096;

    /// <summary>Browsers keep a cookie for 400 days at most (RFC 6265bis, 5.5); it is renewed when the page is opened.</summary>
    private static readonly TimeSpan s_cookieLife = TimeSpan.FromDays(400);

    public static void Map(WebApplication app, GarageLink link)
    {
        var api = app.MapGroup("/api/link");
        api.MapGet("", context => Send(context, Shown(link), LinkJson.Default.LinkReply))
            .WithMetadata(Reach.Laptop);
        api.MapPost("/code", context => Code(context, link)).WithMetadata(Reach.Laptop);
        api.MapPost("/devices/{id}/off", context => Revoke(context, link, off: true))
            .WithMetadata(Reach.Laptop);
        api.MapPost("/devices/{id}/in", context => Revoke(context, link, off: false))
            .WithMetadata(Reach.Laptop);
        api.MapGet("/here", context => WhoIsHere(context, link)).WithMetadata(Reach.Anyone);
        api.MapPost("/pair", context => Pair(context, link)).WithMetadata(Reach.Anyone);
        api.MapGet("/authority.crt", context => Certificate(context, link))
            .WithMetadata(Reach.Anyone);
    }

    private static LinkReply Shown(GarageLink link) =>
        new(
            link.Lan is not null,
            [
                .. (link.Lan?.Addresses ?? []).Select(a => new AddressReply(
                    a.Url.AbsoluteUri,
                    a.Door.Plain,
                    a.ByName,
                    QrPicture.Of(a.Url.AbsoluteUri + "trust")
                )),
            ],
            link.Lan?.Moved ?? false,
            link.Lan?.Authority.Name,
            link.Lan?.Authority.Fingerprint,
            link.Codes.State,
            [
                .. link
                    .Devices.All()
                    .Select(d => new DeviceReply(
                        d.Id,
                        d.Name,
                        d.Plain,
                        d.PairedAt,
                        d.LastSeen,
                        d.RevokedAt
                    )),
            ]
        );

    private static async Task Code(HttpContext context, GarageLink link)
    {
        if (await Asked(context, LinkJson.Default.CodeRequest) is not { } asked)
            return;
        if (link.Lan is null)
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status409Conflict,
                "Phones are not served now.",
                "Shaftwright started with: serve --lan"
            );
            return;
        }
        var at = link
            .Lan.Addresses.Select(a => a.Url.AbsoluteUri)
            .FirstOrDefault(a => a == asked.At);
        if (at is null)
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status400BadRequest,
                "Phones do not find the laptop at that address.",
                "{\"at\": one of the addresses from GET api/link}"
            );
            return;
        }
        var code = link.Codes.Make();
        // Behind #: a browser keeps that part to itself, so that it stands in no log and no Referer.
        var url = $"{at}pair#{code.Scanned}";
        await Send(
            context,
            new CodeReply(url, QrPicture.Of(url), code.Typed, code.Expires),
            LinkJson.Default.CodeReply
        );
    }

    private static Task Revoke(HttpContext context, GarageLink link, bool off) =>
        link.Devices.Revoke((string)context.GetRouteValue("id")!, off)
            ? Send(context, Shown(link), LinkJson.Default.LinkReply)
            : Troubles.Answer(
                context,
                StatusCodes.Status404NotFound,
                "There is no such phone in the list.",
                "an id from GET api/link"
            );

    private static Task WhoIsHere(HttpContext context, GarageLink link)
    {
        var door = Door.Of(context);
        if (door.Laptop)
            return Send(context, Here(link, door, null, null), LinkJson.Default.HereReply);
        var (answer, device) = link.Admit(context);
        if (answer != Admission.Known)
            return Send(
                context,
                Here(link, door, null, PairedOnly.WhyNot(answer)),
                LinkJson.Default.HereReply
            );
        SetCookie(context, link, context.Request.Cookies[link.Cookie(door)]!);
        return Send(context, Here(link, door, device!.Name, null), LinkJson.Default.HereReply);
    }

    private static async Task Pair(HttpContext context, GarageLink link)
    {
        var door = Door.Of(context);
        if (await Asked(context, LinkJson.Default.PairRequest) is not { } asked)
            return;
        if (door.Laptop)
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status409Conflict,
                "This is the laptop itself: it needs no pairing.",
                "the same from a phone"
            );
            return;
        }
        // Before the code, which is good only once.
        if (PairedDevices.NameFrom(asked.Name) is not { } name)
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status400BadRequest,
                "Give this phone a name, so that it can be told from others in the laptop's list.",
                $"up to {PairedDevices.LongestName} characters"
            );
            return;
        }
        var answer = link.Codes.Try(
            asked.Code ?? "",
            context.Connection.RemoteIpAddress ?? IPAddress.None
        );
        if (answer != CodeAnswer.Good)
        {
            await Refuse(context, answer);
            return;
        }
        var (token, device) = link.Devices.Pair(
            name,
            door.Plain,
            context.Request.Cookies[link.Cookie(door)]
        );
        SetCookie(context, link, token);
        await Send(context, Here(link, door, device.Name, null), LinkJson.Default.HereReply);
    }

    private static Task Refuse(HttpContext context, CodeAnswer answer)
    {
        var (status, problem) = answer switch
        {
            CodeAnswer.Used => (
                StatusCodes.Status410Gone,
                "That code was used already: each one lets in one phone, once."
            ),
            CodeAnswer.Expired => (
                StatusCodes.Status410Gone,
                "That code is too old: it is good for five minutes, and only until the next one is made."
            ),
            CodeAnswer.Withdrawn => (
                StatusCodes.Status410Gone,
                "That code was withdrawn: too many wrong ones were tried in this network meanwhile."
            ),
            CodeAnswer.Held => (
                StatusCodes.Status429TooManyRequests,
                "Too many wrong codes came from here. Nothing more is taken from this address for 15 minutes."
            ),
            _ => (StatusCodes.Status403Forbidden, "That is not the code the laptop shows."),
        };
        if (answer == CodeAnswer.Held)
            context.Response.Headers.RetryAfter = PairingCodes.Hold.TotalSeconds.ToString(
                CultureInfo.InvariantCulture
            );
        return Troubles.Answer(
            context,
            status,
            problem,
            "a new code from the page Phones on the laptop"
        );
    }

    /// <summary>The authority's certificate, with the type by which phones know what it is (RFC 8894 names it for an authority's).</summary>
    private static Task Certificate(HttpContext context, GarageLink link)
    {
        if (link.Lan is null)
            return Troubles.Answer(
                context,
                StatusCodes.Status404NotFound,
                "There is no authority: phones are not served now.",
                "Shaftwright started with: serve --lan"
            );
        var response = context.Response;
        response.ContentType = "application/x-x509-ca-cert";
        response.Headers.CacheControl = "no-store";
        response.Headers.ContentDisposition = "attachment; filename=\"shaftwright.crt\"";
        var certificate = link.Lan.Authority.Certificate;
        response.ContentLength = certificate.Length;
        return response.Body.WriteAsync(certificate, context.RequestAborted).AsTask();
    }

    private static HereReply Here(GarageLink link, Door door, string? name, string? why) =>
        new(
            door.Laptop,
            door.Plain && !door.Laptop,
            door.Laptop || name is not null,
            name,
            why,
            link.Lan?.Authority.Name,
            link.Lan?.Authority.Fingerprint
        );

    private static void SetCookie(HttpContext context, GarageLink link, string token)
    {
        var door = Door.Of(context);
        context.Response.Cookies.Append(
            link.Cookie(door),
            token,
            new CookieOptions
            {
                HttpOnly = true, // No script ever sees it.
                Secure = !door.Plain,
                SameSite = SameSiteMode.Strict,
                Path = "/",
                MaxAge = door.Plain ? PairedDevices.PlainLife : s_cookieLife,
                IsEssential = true,
            }
        );
    }

    private static Task<T?> Asked<T>(HttpContext context, JsonTypeInfo<T> type)
        where T : class
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = MostBody;
        return JsonBody.Read(context, type);
    }

    private static Task Send<T>(HttpContext context, T reply, JsonTypeInfo<T> type)
    {
        context.Response.Headers.CacheControl = "no-store";
        return context.Response.WriteAsJsonAsync(reply, type);
    }
}
