using Microsoft.Playwright;
using Shaftwright.Drawings;

namespace Shaftwright.App.Tests.Drawings;

/// <summary>A real browser, for what only a real browser can tell: how wide letters come out, and where pages break.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async ValueTask InitializeAsync()
    {
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(
            new()
            {
                ExecutablePath =
                    Environment.GetEnvironmentVariable("SHAFTWRIGHT_CHROMIUM")
                    ?? "/usr/bin/chromium",
                Args = ["--no-sandbox", "--disable-dev-shm-usage"],
            }
        );
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
    }

    /// <summary>A page of a given width showing some HTML.</summary>
    internal async Task<IPage> Show(string html, int width = 390)
    {
        var page = await _browser!.NewPageAsync(
            new()
            {
                ViewportSize = new() { Width = width, Height = 844 },
            }
        );
        await page.SetContentAsync(html);
        return page;
    }

    /// <summary>Drawings one below the other, as wide as a telephone's page lets them be.</summary>
    internal static string PageOf(IEnumerable<(string Name, Drawing Drawing)> drawings) =>
        "<!doctype html><meta charset=utf-8><style>body{margin:16px}"
        + DrawingStyle.Css
        + "</style>"
        + string.Concat(drawings.Select((d, i) => SvgWriter.Write(d.Drawing, "d" + i)));
}
