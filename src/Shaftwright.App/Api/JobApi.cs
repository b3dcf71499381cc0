using System.Globalization;
using System.Reflection;
using System.Text.Json.Serialization.Metadata;
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

    public static void Map(WebApplication app, JobBook book, bool demo)
    {
        var health = new HealthReply("Shaftwright", Version(), demo, book.Id);
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
        CarsApi.Map(api);
        api.Map(
            "/{**rest}",
            context =>
                Troubles.Answer(
                    context,
                    StatusCodes.Status404NotFound,
                    $"There is no {context.Request.Method} {context.Request.Path} here.",
                    "GET health, jobs, jobs/ID, jobs/ID/file, edits?since=N&job=ID, refused, photos/SHA256; POST edits, cars; PUT photos/SHA256"
                )
        );
    }

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
        if (await JsonBody.Text(context) is not { } text)
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
