using System.Globalization;
using Shaftwright.JobFile.Exchange;

namespace Shaftwright.App.Api;

/// <summary>The indicator's readings for the pages. Who asks with <c>after=N</c> is answered when there is something newer, or
/// after some seconds.</summary>
internal static class IndicatorApi
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(8);
    private static readonly TimeSpan s_look = TimeSpan.FromMilliseconds(40);

    private static readonly IndicatorReply s_none = new("none", 0, null, 0, 0, null, null);

    /// <summary>Maps it, and begins to read where there is a device.</summary>
    /// <param name="app">The program.</param>
    /// <param name="path">The device; null for none.</param>
    public static void Map(WebApplication app, string? path)
    {
        IndicatorFeed? feed = null;
        var stopping = app.Lifetime.ApplicationStopping;
        if (path is not null)
        {
            feed = new IndicatorFeed(path, TimeProvider.System);
            stopping.Register(feed.Stop);
        }
        app.MapGet(
            "/api/indicator",
            async context =>
            {
                var now = feed?.Now() ?? s_none;
                if (
                    feed is not null
                    && long.TryParse(
                        context.Request.Query["after"],
                        NumberStyles.None,
                        CultureInfo.InvariantCulture,
                        out var after
                    )
                )
                {
                    var began = TimeProvider.System.GetTimestamp();
                    while (
                        now.Seq == after
                        && !stopping.IsCancellationRequested
                        && TimeProvider.System.GetElapsedTime(began) < s_patience
                    )
                    {
                        await Task.Delay(s_look, context.RequestAborted);
                        now = feed.Now();
                    }
                }
                context.Response.Headers.CacheControl = "no-store";
                await context.Response.WriteAsJsonAsync(now, ExchangeJson.Default.IndicatorReply);
            }
        );
    }
}
