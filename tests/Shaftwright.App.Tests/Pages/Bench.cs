using System.Diagnostics;
using System.Reflection;
using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>The real program serving a book of its own, and one browser: as a laptop in a workshop and a phone beside it.</summary>
public sealed class Bench : IAsyncLifetime
{
    private static readonly string s_program = typeof(Bench)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(a => a.Key == "Shaftwright.App")
        .Value!;

    private static readonly string[] s_asRoot = ["--no-sandbox", "--disable-dev-shm-usage"];

    private static string Chromium =>
        Environment.GetEnvironmentVariable("SHAFTWRIGHT_CHROMIUM") ?? "/usr/bin/chromium";

    private readonly string _book = Directory.CreateTempSubdirectory("shaftwright-pages-").FullName;
    private Process? _server;
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>Where the pages are, with a slash at its end.</summary>
    public string Address { get; private set; } = "";

    public async ValueTask InitializeAsync()
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        string[] args = [s_program, "serve", "--port", "0", "--data", _book, "--demo"];
        foreach (var arg in args)
            start.ArgumentList.Add(arg);
        _server = Process.Start(start)!;
        var complaints = _server.StandardError.ReadToEndAsync();
        // It says where it is only after it listens.
        var said =
            await _server.StandardOutput.ReadLineAsync()
            ?? throw new InvalidOperationException(
                "The program did not serve: " + await complaints
            );
        Address = said.Split(' ').Single(w => w.StartsWith("http://", StringComparison.Ordinal));

        // A machine busy with other tests takes its time to start .NET in the browser; nothing here is about speed.
        Assertions.SetDefaultExpectTimeout(30_000);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(
            new() { ExecutablePath = Chromium, Args = s_asRoot }
        );
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
        if (_server is not null)
        {
            _server.Kill(entireProcessTree: true);
            await _server.WaitForExitAsync();
            _server.Dispose();
        }
        Directory.Delete(_book, recursive: true);
    }

    /// <summary>A phone that has never been here before. It does not keep the pages: fetching all of them costs each test the
    /// time that only those of <see cref="OpenedAnewTests"/> need.</summary>
    /// <param name="address">Where the pages are; null for this bench's.</param>
    /// <param name="overlooks">True to go past a certificate that the browser does not know, as a hand would.</param>
    internal Task<Phone> Phone(string? address = null, bool overlooks = false) =>
        Hold(
            new()
            {
                BaseURL = address ?? Address,
                ViewportSize = new() { Width = Pages.Phone.Width, Height = 844 },
                HasTouch = true,
                IsMobile = true,
                IgnoreHTTPSErrors = overlooks,
            }
        );

    /// <summary>A phone with a browser of its own, whose memory outlives it: opened again on the same folder it is the same
    /// phone.</summary>
    /// <param name="memory">The folder.</param>
    /// <param name="address">Where the pages are.</param>
    internal async Task<Phone> Phone(string memory, string address) =>
        new(
            await _playwright!.Chromium.LaunchPersistentContextAsync(
                memory,
                new()
                {
                    ExecutablePath = Chromium,
                    Args = s_asRoot,
                    BaseURL = address,
                    ViewportSize = new() { Width = Pages.Phone.Width, Height = 844 },
                    HasTouch = true,
                    IsMobile = true,
                }
            )
        );

    /// <summary>The browser of the laptop itself.</summary>
    /// <param name="address">Where the pages are.</param>
    internal Task<Phone> Desk(string address) =>
        Hold(
            new()
            {
                BaseURL = address,
                ViewportSize = new() { Width = 1280, Height = 900 },
            }
        );

    private async Task<Phone> Hold(BrowserNewContextOptions options)
    {
        options.ServiceWorkers = ServiceWorkerPolicy.Block;
        return new(await _browser!.NewContextAsync(options));
    }
}

/// <summary>All page tests share one bench, and take turns at it: the machine has two cores.</summary>
[CollectionDefinition(Name)]
public sealed class PageTests : ICollectionFixture<Bench>
{
    public const string Name = "Pages";
}
