using Microsoft.Playwright;
using Shaftwright.App.Tests.Api;

namespace Shaftwright.App.Tests.Pages;

/// <summary>The dial at the bench: several stations of one shaft, the needle by thumb, and an indicator's own readings.</summary>
[Collection(PageTests.Name)]
public class DialPageTests(Bench bench)
{
    private const string Card = "job/demo-hill-climb-right-rear";

    [Fact]
    public async Task UnderTheDial_AnotherStationByNeedle_JoinsTheShaftsBow()
    {
        await using var phone = await bench.Phone();
        await phone.Open(Card);
        var operation = phone.Page.Locator("#true-butt");
        // What is stopped is next, so it lies open.
        await Phone.Expect(operation.Locator(".moment strong")).ToBeVisibleAsync();
        await Phone.Expect(operation.Locator(".moment strong")).ToHaveTextAsync("65°");
        await Phone.Expect(operation.Locator("svg.drawing")).ToContainTextAsync("HIGH towards 65°");
        await Look(phone, "card");

        await operation
            .GetByRole(AriaRole.Link, new() { Name = "Readings at 325 mm" })
            .ClickAsync();
        await phone.Asked("When is this?");
        await Phone
            .Expect(
                phone
                    .Page.GetByRole(
                        AriaRole.Group,
                        new() { Name = "Strokes of the press since the weld" }
                    )
                    .Locator("output")
            )
            .ToHaveTextAsync("0");
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "See the answer" }).ClickAsync();
        await Phone.Expect(phone.Page.Locator(".moment strong")).ToHaveTextAsync("66°");
        await Look(phone, "answer");
        await phone.Press("Read another station");
        await phone.Asked("Where does the dial stand?");
        await phone.Type("From the inner end to the dial", "270");
        await phone.Next("Turn the shaft, read the dial.");
        await phone.Press("Needle");
        // Read to the division by thumb: two to the right, then one left of zero.
        var right = phone.Page.GetByRole(AriaRole.Button, new() { Name = "One division right" });
        await right.ClickAsync();
        await right.ClickAsync();
        var box = phone.Page.GetByRole(
            AriaRole.Textbox,
            new() { Name = "Reading 1 of 8: turn to 0°", Exact = true }
        );
        await Phone.Expect(box).ToHaveValueAsync("0.02");
        await phone.Press("Undo");
        await Phone.Expect(box).ToHaveValueAsync("0.01");
        await Look(phone, "needle");
        // An axis 0.15 off towards 65°, at 270 mm: as the kink of the other stations has it.
        string[] dial = ["0.06", "0.14", "0.14", "0.05", "-0.06", "-0.14", "-0.14", "-0.05"];
        for (var i = 0; i < dial.Length; i++)
        {
            var slider = phone.Page.GetByRole(AriaRole.Slider);
            await slider.FillAsync(dial[i]);
            await Phone
                .Expect(phone.Page.Locator(".readings .place").Nth(i))
                .ToContainTextAsync(dial[i]);
            await phone.Page.Locator(".needle .on").ClickAsync();
        }
        await phone.Asked("How much run-out do you accept?");
        await phone.Page.Locator("form .steps button[type=submit]").ClickAsync();
        await Phone
            .Expect(
                phone.Page.GetByRole(
                    AriaRole.Heading,
                    new() { Name = "The whole shaft, from 5 stations" }
                )
            )
            .ToBeVisibleAsync();
        await Phone
            .Expect(phone.Page.Locator("main"))
            .ToContainTextAsync("It is a kink at the weld");
        await Look(phone, "shaft");
    }

    [Fact]
    public async Task UnderTheDial_AnIndicatorOnTheLaptop_IsTakenByATap()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals as Linux has them.");
        using var book = new TempBook();
        using var device = new Pty();
        await using var served = await Served.Start(
            book.Folder,
            "--port",
            "0",
            "--indicator",
            device.Path
        );
        await using var phone = await bench.Phone(served.Address.ToString());
        await phone.Open("under-the-dial/readings");
        await phone.Press("Indicator");
        device.Send("+0.012 mm\n+0.012 mm\n");
        await phone.Press("Take 0.012 mm");
        var places = phone.Page.Locator(".readings .place");
        await Phone.Expect(places.Nth(0)).ToContainTextAsync("0°: 0.012 mm");
        // It went on by itself to the next place.
        await Phone.Expect(places.Nth(1)).ToHaveAttributeAsync("aria-current", "true");
        device.Send("nonsense\n");
        await Phone
            .Expect(phone.Page.Locator(".indicator"))
            .ToContainTextAsync("does not end with mm or in");
        await Look(phone, "indicator");
        // Taken by itself, once it has moved and stands still.
        await phone.Page.GetByText("Take it when it stands still").ClickAsync();
        device.Send("0.034 mm\n");
        for (var i = 0; i < 100 && await places.Nth(1).InnerTextAsync() != "45°: 0.034 mm"; i++)
        {
            device.Send("0.034 mm\n");
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }
        await Phone.Expect(places.Nth(1)).ToContainTextAsync("45°: 0.034 mm");
        // Once, and not again at the next place.
        await Phone.Expect(places.Nth(2)).ToContainTextAsync("90°: –");
    }

    /// <summary>Writes a picture to be looked at, when a folder for it is named.</summary>
    private static async Task Look(Phone phone, string name)
    {
        if (Environment.GetEnvironmentVariable("SHAFTWRIGHT_LOOK") is not { } folder)
            return;
        foreach (var (wide, high) in new[] { (1280, 900), (Phone.Width, 844) })
        {
            await phone.Page.SetViewportSizeAsync(wide, high);
            await phone.Page.ScreenshotAsync(
                new()
                {
                    Path = Path.Combine(
                        folder,
                        FormattableString.Invariant($"dial-{name}-{wide}.png")
                    ),
                    FullPage = wide == Phone.Width,
                }
            );
        }
    }
}
