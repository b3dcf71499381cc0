using Shaftwright.JobFile.Exchange;
using Shaftwright.Records;

namespace Shaftwright.App.Api;

/// <summary>Keeps what is meant for another job book from the one served. A page stays open while another comes to be served at its
/// address; what it holds is not for that one.</summary>
internal sealed class RightBook(RequestDelegate next, JobBook book)
{
    public Task InvokeAsync(HttpContext context) =>
        IsForAnother(context)
            ? Troubles.Answer(
                context,
                StatusCodes.Status409Conflict,
                "That is meant for another job book than the one served here.",
                "the id of this book, from api/health, or none"
            )
            : next(context);

    /// <summary>Which book is served, and how a phone is paired with it, is answered to those of another book too.</summary>
    private bool IsForAnother(HttpContext context) =>
        context.Request.Headers.TryGetValue(HealthReply.BookHeader, out var meant)
        && meant != book.Id
        && context.Request.Path.StartsWithSegments("/api", out var rest)
        && rest != "/health"
        && !rest.StartsWithSegments("/link");
}
