using System.Text.RegularExpressions;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;

namespace Shaftwright.App.Tests.Pages;

/// <summary>The route card of a demo job, on the screen and on paper.</summary>
[Collection(PageTests.Name)]
public partial class RouteCardPageTests(Bench bench)
{
    internal const string Demo = "job/demo-grass-track-left-rear";

    /// <summary>A job of the laptop comes a moment after the page.</summary>
    internal static async Task OpenDemo(Phone phone)
    {
        await phone.Open(Demo);
        await Phone
            .Expect(
                phone.Page.GetByRole(
                    AriaRole.Heading,
                    new() { Level = 1, Name = "Plover, left rear" }
                )
            )
            .ToBeVisibleAsync();
    }

    [Fact]
    public async Task DemoJob_Opened_ShowsOperationsWithStatesInWordsAndOneNextStep()
    {
        await using var phone = await bench.Phone();
        await OpenDemo(phone);
        var operations = await phone.Page.Locator(".op h2").AllInnerTextsAsync();
        Assert.InRange(operations.Count, 20, 40);
        Assert.All(operations, o => Assert.Matches(State(), Phone.Plain(o)));
        Assert.Equal(1, await phone.Page.Locator(".next").CountAsync());
        Assert.StartsWith(
            "Next ",
            Phone.Plain(await phone.Page.Locator(".next").InnerTextAsync()),
            StringComparison.Ordinal
        );
        // The operation that is next comes open, and no other.
        Assert.Equal(1, await phone.Page.Locator(".op:not(.folded)").CountAsync());
    }

    [Fact]
    public async Task DemoJob_Printed_HasItsNameAndItsLengthOnPaper()
    {
        await using var phone = await bench.Phone();
        await OpenDemo(phone);
        var length = Length().Match(Phone.Plain(await phone.Page.Locator("main").InnerTextAsync()));
        Assert.True(length.Success, "The card does not say how long the shaft is made.");
        var printed = await phone.Page.PdfAsync(new() { Format = "A4" });
        using var pdf = PdfDocument.Open(printed);
        var text = Phone.Plain(
            string.Join(' ', pdf.GetPages().Select(p => ContentOrderTextExtractor.GetText(p)))
        );
        Assert.Contains("Plover, left rear", text, StringComparison.Ordinal);
        Assert.Contains(length.Groups["mm"].Value, text, StringComparison.Ordinal);
        // Folded on the screen, whole on paper: places to sign in ink, and no buttons.
        Assert.Contains("Date", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Sign off", text, StringComparison.Ordinal);
    }

    [GeneratedRegex(
        "(to do|needs readings|look over and sign|stopped|held|signed|not in this job)$",
        RegexOptions.IgnoreCase
    )]
    private static partial Regex State();

    [GeneratedRegex(@"Make it (?<mm>\d+(\.\d)?) mm")]
    private static partial Regex Length();
}
