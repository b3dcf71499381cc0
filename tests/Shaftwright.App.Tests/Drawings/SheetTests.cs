using Shaftwright.Drawings;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;

namespace Shaftwright.App.Tests.Drawings;

public class SheetTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Theory]
    [InlineData(Samples.GrassTrack, Display.Metric)]
    [InlineData(Samples.GrassTrack, Display.Inch)]
    [InlineData(Samples.Pickup, Display.Metric)]
    public async Task Sheet_PrintedToPdf_ReadsBackWithNamesAndNumbers(
        string example,
        Display display
    )
    {
        var document = Samples.Example(example);
        var result = Workflow.Evaluate(document.Job);
        using var pdf = await Print(document, display);
        var text = string.Concat(pdf.GetPages().Select(Read));
        void Says(string words) =>
            Assert.True(text.Contains(Squeezed(words), StringComparison.Ordinal), words);

        Says(document.Job.Name);
        Says(RouteCard.Prevails);
        Says(StageAnswers.Length(result)!.In(display));
        foreach (var operation in RouteCard.Of(document, result).Operations)
        {
            Says(operation.Title);
            foreach (var caution in operation.Cautions)
                Says(caution);
        }
        if (result.Strength is { } strength)
            Says(Say.Length(strength.Weakest!.At).In(display));
    }

    [Fact]
    public async Task Sheet_PrintedToPdf_HasEveryLetterInsideItsMargins()
    {
        using var pdf = await Print(Samples.Example(Samples.GrassTrack), Display.Metric);
        Assert.True(pdf.NumberOfPages > 3);
        foreach (var page in pdf.GetPages())
        {
            // A4 in points, margins of 14 mm at the sides; half a millimetre for a letter's overhang.
            const double mm = 72 / 25.4;
            Assert.Equal(210 * mm, page.Width, 0);
            Assert.Equal(297 * mm, page.Height, 0);
            Assert.All(
                page.Letters,
                l =>
                    Assert.InRange(
                        l.BoundingBox.Left,
                        13.5 * mm,
                        page.Width - 13.5 * mm - Math.Max(0, l.BoundingBox.Width - mm)
                    )
            );
            Assert.Contains(
                "page " + page.Number,
                ContentOrderTextExtractor.GetText(page),
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public async Task Sheet_PrintedToPdf_KeepsEachOperationOnOnePage()
    {
        var document = Samples.Example(Samples.GrassTrack);
        using var pdf = await Print(document, Display.Metric);
        var pages = pdf.GetPages().Select(Read).ToList();
        foreach (
            var operation in RouteCard.Of(document, Workflow.Evaluate(document.Job)).Operations
        )
        {
            var first = pages.FindIndex(p =>
                p.Contains(Squeezed(operation.WhatToDo), StringComparison.Ordinal)
            );
            Assert.True(first >= 0, operation.Title + " is cut in two.");
            foreach (var caution in operation.Cautions)
                Assert.Contains(Squeezed(caution), pages[first], StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Sheet_OnATelephone_NeedsNoSidewaysScrolling()
    {
        var html = Html(Samples.Example(Samples.GrassTrack), Display.Metric);
        var page = await chromium.Show(html);
        var wide = await page.EvaluateAsync<int>("document.documentElement.scrollWidth");
        Assert.True(wide <= 390, $"The sheet is {wide} px wide on a 390 px screen.");
    }

    [Fact]
    public void Html_HostileWords_AreWordsAndNotMarkup()
    {
        const string hostile = "</style><script>alert(1)</script>\"'&\\";
        var document = new JobDocument(
            new Job { Name = hostile, About = hostile },
            new JobRecords
            {
                SignOffs =
                [
                    new("1", "length", new(2026, 5, 2, 9, 30, 0, TimeSpan.Zero), hostile, hostile),
                ],
            }
        );
        var html = Html(document, Display.Metric);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(1, html.Split("</style>").Length - 1);
    }

    private static string Html(JobDocument document, Display display) =>
        Sheet.Html(document, Workflow.Evaluate(document.Job), display);

    private async Task<PdfDocument> Print(JobDocument document, Display display)
    {
        var page = await chromium.Show(Html(document, display), 800);
        return PdfDocument.Open(
            await page.PdfAsync(new() { PreferCSSPageSize = true, PrintBackground = true })
        );
    }

    /// <summary>A page's words, twice: as they run across it, and without the column of states and signatures beside them.</summary>
    private static string Read(Page page)
    {
        const double signatures = 210 - 14 - 47 - 1;
        var column = page.GetWords()
            .Where(w => w.BoundingBox.Left < signatures * 72 / 25.4)
            .GroupBy(w => Math.Round(w.Letters[0].StartBaseLine.Y / 2))
            .OrderByDescending(line => line.Key)
            .SelectMany(line => line.OrderBy(w => w.BoundingBox.Left))
            .Select(w => w.Text);
        return Squeezed(ContentOrderTextExtractor.GetText(page))
            + "|"
            + Squeezed(string.Concat(column));
    }

    /// <summary>Letters and digits only: a PDF keeps no spaces, and a line break may fall anywhere.</summary>
    private static string Squeezed(string text) =>
        string.Concat(
            // Printed words keep their ligatures.
            text.Replace("ﬃ", "ffi", StringComparison.Ordinal)
                .Replace("ﬄ", "ffl", StringComparison.Ordinal)
                .Replace("ﬀ", "ff", StringComparison.Ordinal)
                .Replace("ﬁ", "fi", StringComparison.Ordinal)
                .Replace("ﬂ", "fl", StringComparison.Ordinal)
                .Where(c => char.IsLetterOrDigit(c) || c is '.' or '−')
        );
}
