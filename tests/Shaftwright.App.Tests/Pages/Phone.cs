using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>A phone and the hand that holds it. What it does, a person can do; it looks for nothing a person cannot see or hear
/// read out.</summary>
internal sealed partial class Phone(IBrowserContext context) : IAsyncDisposable
{
    /// <summary>Width of its screen, CSS px.</summary>
    public const int Width = 390;

    private IPage? _page;

    /// <summary>The page in hand.</summary>
    public IPage Page => _page ?? throw new InvalidOperationException("No page is open.");

    /// <summary>The phone's own memory, network and clock.</summary>
    public IBrowserContext Context => context;

    public async ValueTask DisposeAsync() =>
        await context.DisposeAsync().AsTask().WaitAsync(TimeSpan.FromMinutes(1));

    /// <summary>Opens an address and waits until the page is there to be used.</summary>
    public async Task Open(string at = "")
    {
        _page ??= await context.NewPageAsync();
        await Page.GotoAsync(at);
        await Expect(Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToBeVisibleAsync();
    }

    /// <summary>Goes to another address of the pages already open, as a link would: nothing is fetched anew.</summary>
    /// <param name="at">The address.</param>
    /// <param name="redirects">True where the page adds something to its address by itself.</param>
    public async Task Follow(string at, bool redirects = false)
    {
        await Page.EvaluateAsync("at => Blazor.navigateTo(at)", at);
        // A page that adds something to its address may have done so before anybody looked.
        await Page.WaitForURLAsync(url =>
        {
            var there = new Uri(url).PathAndQuery.TrimStart('/');
            return there.StartsWith(at + "?", StringComparison.Ordinal)
                || (!redirects && there == at);
        });
        await Expect(Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToBeVisibleAsync();
    }

    /// <summary>Closes the page, if one is open, as a phone does when it is short of memory; nothing is saved on the way.</summary>
    public async Task Close()
    {
        if (_page is not null)
            await _page.CloseAsync();
        _page = null;
    }

    /// <summary>Goes in by a door of the first page.</summary>
    public async Task Door(string named)
    {
        await Open();
        await Page.GetByRole(AriaRole.Link, new() { Name = named }).ClickAsync();
    }

    /// <summary>Types into the box with a label, key by key.</summary>
    public async Task Type(string label, string text)
    {
        var box = Page.GetByRole(AriaRole.Textbox, new() { Name = label, Exact = true });
        await box.ClickAsync();
        await box.FillAsync("");
        await box.PressSequentiallyAsync(text);
    }

    /// <summary>Picks one of a few words.</summary>
    public Task Pick(string words) =>
        Page.Locator("label", new() { HasText = words }).First.ClickAsync();

    /// <summary>Presses a button.</summary>
    public Task Press(string named) =>
        Page.GetByRole(AriaRole.Button, new() { Name = named, Exact = true }).ClickAsync();

    /// <summary>Waits for a question, so that what is typed goes into its boxes and not into those of the one before.</summary>
    public Task Asked(string question) =>
        Expect(Page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = question }))
            .ToBeVisibleAsync();

    /// <summary>On from one question, to the next that is named.</summary>
    public async Task Next(string question)
    {
        await Press("Next");
        await Asked(question);
    }

    /// <summary>On from the last question; returns the sentence of the answer.</summary>
    public async Task<string> Answer()
    {
        // The dial has a keypad with a Next of its own; the way on is the form's button.
        await Page.Locator("form .steps button[type=submit]").ClickAsync();
        await Page.WaitForURLAsync("**/answer");
        return await Sentence();
    }

    /// <summary>The sentence that stays in sight.</summary>
    public async Task<string> Sentence() =>
        Plain(await Page.Locator(".answer p").First.InnerTextAsync());

    /// <summary>What a phone that has met one book only keeps of a kind.</summary>
    public async Task<JsonArray> Rows(string kind) =>
        JsonNode
            .Parse(
                await Page.EvaluateAsync<string>(
                    """
                    async kind => {
                      const { name } = (await indexedDB.databases()).find(d => d.name.startsWith('shaftwright '));
                      return new Promise((resolve, reject) => {
                        const open = indexedDB.open(name);
                        open.onerror = () => reject(open.error);
                        open.onsuccess = () => {
                          const all = open.result.transaction(kind).objectStore(kind).getAll();
                          all.onsuccess = () => { open.result.close(); resolve(JSON.stringify(all.result)); };
                        };
                      });
                    }
                    """,
                    kind
                )
            )!
            .AsArray();

    /// <summary>Text with ordinary blanks, one at a time.</summary>
    public static string Plain(string text) => Blanks().Replace(text, " ").Trim();

    /// <summary>The numbers of a sentence, in order.</summary>
    public static double[] Numbers(string sentence) =>
        [
            .. Number()
                .Matches(sentence)
                .Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture)),
        ];

    /// <summary>Writes a picture for the handbook, when asked for: pictures differ from machine to machine, so they are made by
    /// hand and looked at.</summary>
    public async Task Shoot(string name)
    {
        if (Environment.GetEnvironmentVariable("SHAFTWRIGHT_SHOTS") is null)
            return;
        var folder = Path.Combine(Drawings.Samples.Repository, "docs", "images");
        Directory.CreateDirectory(folder);
        await Page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png") });
    }

    /// <summary>Writes what is on the whole page into a folder, when one is named, for a person to look at.</summary>
    public async Task Look(string name)
    {
        if (Environment.GetEnvironmentVariable("SHAFTWRIGHT_LOOK") is not { Length: > 0 } folder)
            return;
        Directory.CreateDirectory(folder);
        var size = Page.ViewportSize;
        foreach (var (width, height) in ((int, int)[])[(Width, 844), (1280, 900)])
        {
            await Page.SetViewportSizeAsync(width, height);
            await Page.ScreenshotAsync(
                new() { Path = Path.Combine(folder, $"{name}-{width}.png"), FullPage = true }
            );
        }
        await Page.SetViewportSizeAsync(size!.Width, size.Height);
    }

    /// <summary>Waits for something to be so.</summary>
    public static ILocatorAssertions Expect(ILocator locator) => Assertions.Expect(locator);

    [GeneratedRegex(@"[\s\u00a0\u202f]+")]
    private static partial Regex Blanks();

    [GeneratedRegex(@"\d+(\.\d+)?")]
    private static partial Regex Number();
}
