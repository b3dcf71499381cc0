using Shaftwright.JobFile.Exchange;
using Shaftwright.Records;

namespace Shaftwright.App.Api;

/// <summary>Turns whatever goes wrong behind it into words, and the program keeps serving.</summary>
internal sealed partial class Troubles(RequestDelegate next, ILogger<Troubles> log)
{
    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context);
        }
        catch (JobBookException e)
        {
            await Answer(
                context,
                e.Trouble == BookTrouble.DiskFull
                    ? StatusCodes.Status507InsufficientStorage
                    : StatusCodes.Status503ServiceUnavailable,
                e.Message,
                "the same again, when that is put right"
            );
        }
        catch (BadHttpRequestException e)
        {
            await Answer(
                context,
                e.StatusCode,
                e.StatusCode == StatusCodes.Status413PayloadTooLarge
                    ? "That is too large."
                    : "That is not a request.",
                "up to 4 MB at a time"
            );
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Whoever asked has gone.
        }
#pragma warning disable CA1031 // Last resort: a fault of this program's own must not end the serving.
        catch (Exception e)
#pragma warning restore CA1031
        {
            Fault(log, context.Request.Path, e);
            await Answer(
                context,
                StatusCodes.Status500InternalServerError,
                "Shaftwright failed, and that is a fault of its own.",
                "the same again; if it stays, please report it"
            );
        }
    }

    /// <summary>Answers with a reason, unless an answer has begun.</summary>
    public static Task Answer(HttpContext context, int status, string problem, string accepted)
    {
        if (context.Response.HasStarted)
            return Task.CompletedTask;
        context.Response.StatusCode = status;
        context.Response.Headers.CacheControl = "no-store";
        return context.Response.WriteAsJsonAsync(
            new TroubleReply(problem, accepted),
            ExchangeJson.Default.TroubleReply
        );
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Failed at {Path}")]
    private static partial void Fault(ILogger log, string path, Exception e);
}
