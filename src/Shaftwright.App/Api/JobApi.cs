using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.Json.Serialization.Metadata;
using Microsoft.Net.Http.Headers;
using Shaftwright.JobFile;
using Shaftwright.JobFile.Exchange;
using Shaftwright.Records;

namespace Shaftwright.App.Api;

/// <summary>The job book over HTTP, for the pages and for programs on this machine.</summary>
internal static class JobApi
{
    /// <summary>Largest request, bytes.</summary>
    public const int MostBody = 4 * 1024 * 1024;

    /// <summary>Most edits in one request.</summary>
    public const int MostEdits = 500;

    private static readonly UTF8Encoding s_utf8 = new(false, throwOnInvalidBytes: true);

    public static void Map(WebApplication app, JobBook book, bool demo)
    {
        var health = new HealthReply("Shaftwright", Version(), demo, book.Id);
        app.Use(
            (context, next) => MeantForAnother(context, book) ? Another(context) : next(context)
        );
        var api = app.MapGroup("/api");
        api.MapGet("/health", context => Send(context, health, ExchangeJson.Default.HealthReply));
        api.MapGet(
            "/jobs",
            context =>
                Send(
                    context,
                    book.Jobs(context.Request.Query["putAway"] == "true"),
                    ExchangeJson.Default.IReadOnlyListJobListing
                )
        );
        api.MapGet("/jobs/{id}", context => OneJob(context, book));
        api.MapGet("/jobs/{id}/file", context => OneFile(context, book));
        api.MapGet("/edits", context => History(context, book));
        api.MapPost("/edits", context => Take(context, book));
        api.MapGet(
            "/refused",
            context =>
                Send(
                    context,
                    book.Refused(Asked(context, "job")),
                    ExchangeJson.Default.IReadOnlyListRefusedEntry
                )
        );
        PhotoApi.Map(api, book);
        api.Map(
            "/{**rest}",
            context =>
                Troubles.Answer(
                    context,
                    StatusCodes.Status404NotFound,
                    $"There is no {context.Request.Method} {context.Request.Path} here.",
                    "GET health, jobs, jobs/ID, jobs/ID/file, edits?since=N&job=ID, refused, photos/SHA256; POST edits; PUT photos/SHA256"
                )
        );
    }

    /// <summary>A page stays open while another book comes to be served at its address; what it holds is not for that one.
    /// Which book is served is answered to anyone.</summary>
    private static bool MeantForAnother(HttpContext context, JobBook book) =>
        context.Request.Headers.TryGetValue(HealthReply.BookHeader, out var meant)
        && meant != book.Id
        && context.Request.Path.StartsWithSegments("/api", out var rest)
        && rest != "/health";

    private static Task Another(HttpContext context) =>
        Troubles.Answer(
            context,
            StatusCodes.Status409Conflict,
            "That is meant for another job book than the one served here.",
            "the id of this book, from api/health, or none"
        );

    private static Task OneJob(HttpContext context, JobBook book) =>
        book.Find((string)context.GetRouteValue("id")!) is { } job
            ? Send(context, job, ExchangeJson.Default.JobReply)
            : NoSuchJob(context);

    /// <summary>The job as its file, to keep or to send on.</summary>
    private static Task OneFile(HttpContext context, JobBook book)
    {
        var id = (string)context.GetRouteValue("id")!;
        if (book.Find(id) is not { } job)
            return NoSuchJob(context);
        // What cannot be read any more is still the user's: it is handed out as it stands.
        var text = JobJson.Read(job.Document.AsObject()).Document is { } document
            ? JobJson.Write(document)
            : job.Document.ToJsonString();
        var response = context.Response;
        response.ContentType = "application/json; charset=utf-8";
        response.Headers.CacheControl = "no-store";
        response.Headers.ContentDisposition = $"attachment; filename=\"{id}.swjob.json\"";
        return response.WriteAsync(text, context.RequestAborted);
    }

    private static Task History(HttpContext context, JobBook book)
    {
        var since = Asked(context, "since") ?? "0";
        return long.TryParse(since, NumberStyles.None, CultureInfo.InvariantCulture, out var seq)
            ? Send(
                context,
                book.Since(seq, Asked(context, "job")),
                ExchangeJson.Default.HistoryReply
            )
            : Troubles.Answer(
                context,
                StatusCodes.Status400BadRequest,
                "\"since\" is not a place in the history.",
                "a whole number, 0 for all"
            );
    }

    private static async Task Take(HttpContext context, JobBook book)
    {
        if (!IsJson(context.Request.ContentType))
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status415UnsupportedMediaType,
                "That is not sent as JSON.",
                "Content-Type: application/json"
            );
            return;
        }
        if (await Body(context) is not { } text)
            return;
        var edits = EditJson.Read(text, out var refusals);
        if (refusals.Count > 0 || edits.Count > MostEdits)
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status400BadRequest,
                refusals.Count > 0 ? string.Join(' ', refusals) : $"That is {edits.Count} edits.",
                $"a JSON list of up to {MostEdits} edits"
            );
            return;
        }
        // Answered only after the book has them on disk.
        await Send(context, book.Apply(edits), ExchangeJson.Default.IReadOnlyListEditReply);
    }

    private static bool IsJson(string? contentType) =>
        MediaTypeHeaderValue.TryParse(contentType, out var type)
        && type.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase)
        && (
            !type.Charset.HasValue
            || type.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase)
        );

    private static async Task<string?> Body(HttpContext context)
    {
        try
        {
            using var reader = new StreamReader(context.Request.Body, s_utf8, false);
            return await reader.ReadToEndAsync(context.RequestAborted);
        }
        catch (DecoderFallbackException)
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status400BadRequest,
                "That is not text in UTF-8.",
                "JSON in UTF-8"
            );
            return null;
        }
    }

    private static string? Asked(HttpContext context, string name) =>
        context.Request.Query[name] is [{ Length: > 0 } value, ..] ? value : null;

    private static Task NoSuchJob(HttpContext context) =>
        Troubles.Answer(
            context,
            StatusCodes.Status404NotFound,
            "There is no such job in the book.",
            "an id from api/jobs"
        );

    private static Task Send<T>(HttpContext context, T reply, JsonTypeInfo<T> type)
    {
        context.Response.Headers.CacheControl = "no-store";
        return context.Response.WriteAsJsonAsync(reply, type);
    }

    private static string Version() =>
        typeof(JobApi)
            .Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()
            ?.InformationalVersion.Split('+')[0]
        ?? "";
}
