using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>A shaft at the press, on a phone.</summary>
[Collection(PageTests.Name)]
public class NextStrokeTests(Bench bench)
{
    private static JsonObject Bent(bool? tempered = null)
    {
        var readings = new JsonArray();
        for (var i = 0; i < 8; i++)
            readings.Add(
                (JsonNode)
                    new JsonObject
                    {
                        ["angle"] = $"{45 * i}°",
                        ["dial"] =
                            Math.Round(0.5 * Math.Cos((45 * i - 90) * Math.PI / 180), 2)
                                .ToString(System.Globalization.CultureInfo.InvariantCulture)
                            + " mm",
                    }
            );
        var press = new JsonObject
        {
            ["diameter"] = "26 mm",
            ["length"] = "560 mm",
            ["steel"] = "mediumCarbon",
        };
        if (tempered is { } said)
            press["tempered"] = said;
        return new()
        {
            ["truing"] = new JsonObject
            {
                ["turns"] = new JsonArray(
                    new JsonObject
                    {
                        ["id"] = "t1",
                        ["moment"] = "buttWelded",
                        ["support"] = "centres",
                        ["station"] = "280 mm",
                        ["readings"] = readings,
                    }
                ),
            },
            ["press"] = press,
        };
    }

    [Fact]
    public async Task NextStroke_NotKnownToBeTempered_IsRefusedUntilItIsSaid()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Lapwing, untempered", Bent());
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Lapwing, untempered");
        await phone.Follow($"job/{job}/next-stroke/answer");
        await phone.Asked("The next stroke");
        Assert.Contains("Do not press it yet", await phone.Sentence(), StringComparison.Ordinal);
        await phone.Follow($"job/{job}/next-stroke/tempered");
        await phone.Asked("Was the weld tempered?");
        await phone.Page.Locator("label[for=q-tempered-yes]").ClickAsync();
        await phone.Follow($"job/{job}/next-stroke/answer");
        await Phone
            .Expect(phone.Page.Locator(".answer p").First)
            .ToContainTextAsync("past contact");
        await laptop.Until(job, d => d["press"]!["tempered"]?.GetValue<bool>() is true);
    }

    [Fact]
    public async Task NextStroke_KeptWithWhatTheDialSaidAfter_LearnsAndCanBeTakenBack()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Lapwing, at the press", Bent(tempered: true));
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Lapwing, at the press");
        // Over the limit it is what stops the job, so that it comes open.
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "The next stroke" }).ClickAsync();
        await phone.Asked("The next stroke");
        var first = Phone.Numbers(await phone.Sentence())[0];
        Assert.InRange(first, 1, 8);
        // The caution stands on this screen, once, and so does what the promise rests on.
        await Phone.Expect(phone.Page.GetByText("stand aside")).ToHaveCountAsync(1);
        await Phone.Expect(phone.Page.GetByText("not on your shaft")).ToHaveCountAsync(1);
        Assert.True(
            await phone.Page.EvaluateAsync<bool>(
                "() => document.documentElement.scrollWidth <= innerWidth"
            )
        );
        await phone.Shoot("next-stroke");
        await AccessTests.IsSound(phone, "the next stroke");
        await Phone
            .Expect(phone.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this stroke" }))
            .ToBeDisabledAsync();
        await phone.Type("Run-out now", "1");
        await phone.Type("High at, from the mark", "90");
        await phone.Press("Keep this stroke");
        await Phone
            .Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "One stroke so far" }))
            .ToBeVisibleAsync();
        // It left nothing, so the bar is harder than the low end and the next goes deeper.
        Assert.True(Phone.Numbers(await phone.Sentence())[0] > first);
        var kept = await laptop.Until(job, d => d["press"]?["strokes"] is JsonArray { Count: 1 });
        var stroke = kept["press"]!["strokes"]![0]!;
        Assert.Equal(("1 mm", "t1"), ((string?)stroke["runOutAfter"], (string?)stroke["turn"]));
        await Phone
            .Expect(
                phone.Page.GetByRole(AriaRole.Textbox, new() { Name = "Run-out now", Exact = true })
            )
            .ToHaveValueAsync("");

        await phone.Press("Take back the last stroke");
        await Phone
            .Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "One stroke so far" }))
            .ToHaveCountAsync(0);
        Assert.Equal(first, Phone.Numbers(await phone.Sentence())[0]);
        var back = await laptop.Until(job, d => d["press"]?["strokes"] is JsonArray { Count: 2 });
        Assert.True(back["press"]!["strokes"]![1]!["withdrawn"]!.GetValue<bool>());
    }

    /// <summary>Eight readings of a shaft 0.5 mm off its axis towards 90°, behind the door, without a job.</summary>
    private static async Task ReadWithoutAJob(Phone phone)
    {
        await phone.Open("under-the-dial/readings");
        await phone.Asked("Turn the shaft, read the dial.");
        string[] dial = ["0", "0.35", "0.5", "0.35", "0", "-0.35", "-0.5", "-0.35"];
        for (var i = 0; i < dial.Length; i++)
        {
            await phone.Type($"Reading {i + 1} of 8: turn to {45 * i}°", dial[i]);
            await phone.Page.Locator(".pad .on").ClickAsync();
        }
        await phone.Asked("How much run-out do you accept?");
        await phone.Answer();
    }

    [Fact]
    public async Task UnderTheDial_WithoutAJob_GoesOnToOtherStationsAndToThePressByItself()
    {
        using var laptop = new Laptop(bench.Address);
        await using var phone = await bench.Phone();
        await ReadWithoutAJob(phone);
        await phone.Look("dial-without-a-job");
        await phone.Press("Read another station");
        await phone.Asked("Where does the dial stand?");
        var job = phone.Page.Url.Split("/job/")[1].Split('/')[0];
        await laptop.Until(job, d => d["truing"]?["turns"] is JsonArray { Count: 1 });

        await ReadWithoutAJob(phone);
        await phone.Press("The next stroke");
        await phone.Asked("Was the weld tempered?");
        job = phone.Page.Url.Split("/job/")[1].Split('/')[0];
        await phone.Page.Locator("label[for=q-tempered-yes]").ClickAsync();
        await phone.Follow($"job/{job}/next-stroke/bar");
        await phone.Type("Diameter where it is bent", "26");
        await phone.Type("Length of the shaft", "560");
        await phone.Follow($"job/{job}/next-stroke/answer");
        await Phone
            .Expect(phone.Page.Locator(".answer p").First)
            .ToContainTextAsync("past contact");
        // The keypad types into the box in hand, and its Next goes on to the high point.
        Task Pad(string key) =>
            phone
                .Page.GetByRole(AriaRole.Group, new() { Name = "Keypad" })
                .GetByRole(AriaRole.Button, new() { Name = key, Exact = true })
                .ClickAsync();
        foreach (var key in new[] { "0", "Decimal point", "8", "Next", "9", "0" })
            await Pad(key);
        await phone.Look("stroke-keypad");
        ILocator Box(string name) =>
            phone.Page.GetByRole(AriaRole.Textbox, new() { Name = name, Exact = true });
        await Phone.Expect(Box("Run-out now")).ToHaveValueAsync("0.8");
        await Phone.Expect(Box("High at, from the mark")).ToHaveValueAsync("90");
        await phone.Press("Keep this stroke");
        await Phone
            .Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "One stroke so far" }))
            .ToBeVisibleAsync();
        var kept = await laptop.Until(job, d => d["press"]?["strokes"] is JsonArray { Count: 1 });
        var stroke = kept["press"]!["strokes"]![0]!;
        Assert.Equal(
            ("0.8 mm", "90°"),
            ((string?)stroke["runOutAfter"], (string?)stroke["highAfter"])
        );
        // Its time is kept with it: a crack test answers for it only when it comes later.
        Assert.True(
            DateTimeOffset.UtcNow
                - DateTimeOffset.Parse(
                    (string)stroke["at"]!,
                    System.Globalization.CultureInfo.InvariantCulture
                )
                < TimeSpan.FromMinutes(5)
        );
    }
}
