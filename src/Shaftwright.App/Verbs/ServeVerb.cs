using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Connections;
using Shaftwright.App.Api;
using Shaftwright.App.Link;
using Shaftwright.Records;

namespace Shaftwright.App.Verbs;

/// <summary><c>serve</c>: the pages, the job book and the API between them, for this machine; with <c>--lan</c> for paired phones too.</summary>
public static class ServeVerb
{
    /// <summary>Serves until it is told to stop (Ctrl+C, SIGTERM, or <paramref name="cancel"/>).</summary>
    /// <param name="options">What was asked.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>0 when it was told to stop; 2, with words on <see cref="ServeOptions.Error"/>, when it could not start.</returns>
    public static async Task<int> RunAsync(ServeOptions options, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (options.DataFolder() is not { } folder)
            return await Failed(
                options,
                "This system names no folder for your own data. Say where the job book is kept with --data DIR."
            );
        JobBook book;
        try
        {
            book = JobBook.Open(folder);
            if (options.Demo)
                DemoJobs.AddMissing(book);
        }
        catch (JobBookException e)
        {
            return await Failed(options, e.Message);
        }
        using (book)
        {
            using var lan = LanChoice.Open(options, folder);
            await using var app = Build(options, book, lan);
            try
            {
                await app.StartAsync(cancel);
            }
            catch (Exception e) when (e is IOException or SocketException)
            {
                return await Failed(options, WhyNot(options, e));
            }
            var address = Address(app);
            await options.Out.WriteLineAsync($"Shaftwright is at {address} (jobs in {folder})");
            if (lan is not null)
                await options.Out.WriteLineAsync(ForPhones(lan, address));
            await options.Out.FlushAsync(cancel);
            if (options.Open)
                Desktop.Open(address);
            await app.WaitForShutdownAsync(cancel);
        }
        return 0;
    }

    private static WebApplication Build(ServeOptions options, JobBook book, Lan? lan)
    {
        var builder = WebApplication.CreateSlimBuilder(
            new WebApplicationOptions
            {
                // The files beside the program, wherever it was started from and whoever started it.
                ApplicationName = typeof(ServeVerb).Assembly.GetName().Name,
                ContentRootPath = AppContext.BaseDirectory,
                EnvironmentName = Environments.Production,
            }
        );
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = JobApi.MostBody;
            var laptop = new Door(laptop: true, plain: true);
            if (options.Port == 0)
                kestrel.Listen(IPAddress.Loopback, 0, laptop.Mark);
            else
                kestrel.ListenLocalhost(options.Port, laptop.Mark);
            lan?.Listen(kestrel, LanChoice.Port(options));
        });
        if (lan is not null)
            builder.WebHost.UseKestrelHttpsConfiguration();
        builder.Logging.ClearProviders();
        builder.Logging.AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        // Says that the address is set twice, or that there is no IPv6 here; neither is a person's concern.
        builder.Logging.AddFilter("Microsoft.AspNetCore.Server.Kestrel", LogLevel.Error);
        // Why it did not start is said once, in words, and not before them as a stack trace.
        builder.Logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);

        var app = builder.Build();
        var link = new GarageLink(book, lan);
        app.UseMiddleware<OwnPagesOnly>(ContentPolicy.For(app.Environment.WebRootFileProvider));
        app.UseMiddleware<Troubles>();
        app.UseMiddleware<RightBook>(book);
        app.UseMiddleware<PairedOnly>(link);
        JobApi.Map(app, book, options.Demo);
        LinkApi.Map(app, link);
        IndicatorApi.Map(app, options.Indicator);
        if (File.Exists(Path.Combine(AppContext.BaseDirectory, Assets)))
        {
            app.MapStaticAssets().WithMetadata(Reach.Anyone);
            OfflineWorker.Map(app);
            // Asked anew each time, so that a new build is seen at once; its parts are kept by their names.
            app.MapFallbackToFile(
                    "index.html",
                    new StaticFileOptions
                    {
                        OnPrepareResponse = page =>
                            page.Context.Response.Headers.CacheControl = "no-cache",
                    }
                )
                .WithMetadata(Reach.Anyone);
        }
        return app;
    }

    /// <summary>The list of the pages' files that the build puts beside the program. Without it the API is served alone.</summary>
    private static string Assets =>
        $"{typeof(ServeVerb).Assembly.GetName().Name}.staticwebassets.endpoints.json";

    private static string Address(WebApplication app)
    {
        // The laptop's own door was opened first.
        var bound = app.Urls.First();
        return $"http://localhost:{Text(BindingAddress.Parse(bound).Port)}/";
    }

    private static string ForPhones(Lan lan, string address) =>
        $"Phones in this network: {string.Join("  ", lan.Addresses.Select(a => a.Url.AbsoluteUri))}\n"
        + $"To pair one, open {address}phones on this laptop.";

    private static string WhyNot(ServeOptions options, Exception e)
    {
        var (port, phones) = (Text(options.Port), LanChoice.Port(options));
        var (ports, other) = options.Lan
            ? (
                $"One of the ports {port} (this machine) and {Text(phones)} (phones{(options.Plain ? ", and the one after" : "")})",
                "--port N --lan-port N"
            )
            : (
                $"Port {port}",
                $"--port {Text(options.Port < 65535 ? options.Port + 1 : UsualOther)}"
            );
        return e is AddressInUseException || e.InnerException is AddressInUseException
            ? $"{ports} is taken by another program, perhaps another Shaftwright. Close it, or choose another: {other}"
            : $"{ports} cannot be served: {e.Message} Choose another: {other}";
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private const int UsualOther = 8080;

    private static async Task<int> Failed(ServeOptions options, string words)
    {
        await options.Error.WriteLineAsync(words);
        return 2;
    }
}
