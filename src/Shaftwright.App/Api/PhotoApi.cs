using System.Globalization;
using Microsoft.Net.Http.Headers;
using Shaftwright.JobFile.Exchange;
using Shaftwright.Records;

namespace Shaftwright.App.Api;

/// <summary>Photos over HTTP: in by the hash of their bytes, out as pictures and as nothing else.</summary>
internal static class PhotoApi
{
    private const string Jpeg = "image/jpeg";

    public static void Map(RouteGroupBuilder api, JobBook book)
    {
        api.MapPut("/photos/{name}", context => Take(context, book));
        api.MapGet("/photos/{name}", context => Give(context, book));
    }

    private static async Task Take(HttpContext context, JobBook book)
    {
        var request = context.Request;
        if (Name(context) is not { } name)
        {
            await NoName(context);
            return;
        }
        if (
            !MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
            || !type.MediaType.Equals(Jpeg, StringComparison.OrdinalIgnoreCase)
        )
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status415UnsupportedMediaType,
                "That is not sent as a photo.",
                "Content-Type: image/jpeg"
            );
            return;
        }
        if (request.ContentLength > PhotoFile.MostBytes)
        {
            await TooLarge(context);
            return;
        }
        using var body = new MemoryStream();
        var chunk = new byte[64 * 1024];
        for (int n; (n = await request.Body.ReadAsync(chunk, context.RequestAborted)) > 0; )
        {
            if (body.Length + n > PhotoFile.MostBytes)
            {
                await TooLarge(context);
                return;
            }
            body.Write(chunk, 0, n);
        }
        var bytes = body.ToArray();
        var (width, height, problem) = PhotoFile.Look(bytes, name);
        if (problem is not null)
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status400BadRequest,
                $"That photo {problem}.",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"a whole JPEG without notes of the camera, up to {PhotoFile.MostSide} pixels a side, under the SHA-256 of its bytes"
                )
            );
            return;
        }
        // Answered only after the book has it on disk.
        var fresh = book.Keep(name, bytes, width, height);
        context.Response.Headers.CacheControl = "no-store";
        await context.Response.WriteAsJsonAsync(
            new PhotoReply(name, fresh ? Taken.Applied : Taken.Already),
            ExchangeJson.Default.PhotoReply
        );
    }

    private static Task Give(HttpContext context, JobBook book)
    {
        if (Name(context) is not { } name)
            return NoName(context);
        if (book.Photo(name) is not { } bytes)
            return Troubles.Answer(
                context,
                StatusCodes.Status404NotFound,
                "That photo is not in the book. The device that took it may not have sent it yet.",
                "the name of a photo that has arrived"
            );
        var headers = context.Response.Headers;
        context.Response.ContentType = Jpeg;
        context.Response.ContentLength = bytes.Length;
        // Whatever it is that somebody sent, no browser takes it for a page.
        headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
        headers.ContentDisposition = $"inline; filename=\"{name}.jpg\"";
        headers.CacheControl = "no-store";
        return context.Response.Body.WriteAsync(bytes, context.RequestAborted).AsTask();
    }

    private static string? Name(HttpContext context) =>
        context.GetRouteValue("name") is string name && PhotoFile.IsName(name) ? name : null;

    private static Task NoName(HttpContext context) =>
        Troubles.Answer(
            context,
            StatusCodes.Status400BadRequest,
            "That is not the name of a photo.",
            "the SHA-256 of its bytes, 64 small hexadecimal digits"
        );

    private static Task TooLarge(HttpContext context) =>
        Troubles.Answer(
            context,
            StatusCodes.Status413PayloadTooLarge,
            "That photo is too large.",
            string.Create(
                CultureInfo.InvariantCulture,
                $"up to {PhotoFile.MostBytes / 1024 / 1024} MB"
            )
        );
}
