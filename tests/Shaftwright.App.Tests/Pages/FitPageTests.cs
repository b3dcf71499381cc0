using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>The shaft fitted step by step, each noted with what was found at it.</summary>
[Collection(PageTests.Name)]
public class FitPageTests(Bench bench)
{
    [Fact]
    public async Task Fit_StepByStep_IsNotedInOrderAndAFailedPullStaysInTheRecord()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, fitted");
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Follow($"job/{job}/fit");
        await phone.Asked("Paint a line along it");
        await phone.Look("fit-line");
        foreach (
            var next in (string[])
                [
                    "Boots and clamps on",
                    "Joints on, new clips",
                    "Grease, and close the boots",
                    "Car on stands",
                ]
        )
        {
            await phone.Press("Done");
            await phone.Asked(next);
        }
        // What can hurt stands at the step where it can, and nowhere else.
        await Phone.Expect(phone.Page.Locator("p.caution")).ToContainTextAsync("Rated stands");
        foreach (var next in (string[])["Seal land and seal", "Inner end in", "Pull check"])
        {
            await phone.Press("Done");
            await phone.Asked(next);
        }
        await Phone.Expect(phone.Page.Locator("p.caution")).ToHaveCountAsync(0);
        await phone.Type("Pulled with", "150");
        await phone.Pick("No");
        await phone.Press("Done");
        await phone.Follow($"job/{job}/fit/pull-check");
        await Phone.Expect(phone.Page.Locator(".answer")).ToContainTextAsync("new clip");
        await phone.Look("fit-pull");
        await phone.Follow("job/" + job);
        await phone.Look("fit-card");

        // Put in again, pulled again: both stand.
        await phone.Follow($"job/{job}/fit/pull-check");
        await phone.Type("Pulled with", "150");
        await phone.Pick("Yes");
        await phone.Press("Done again");
        await phone.Asked("Outer end in, nut on");
        var document = await laptop.Until(job, d => Done(d).Count == 9);
        Assert.Equal(
            [
                "paintLine",
                "boots",
                "joints",
                "grease",
                "stands",
                "seal",
                "innerIn",
                "pullCheck",
                "pullCheck",
            ],
            Done(document).Select(d => (string?)d["step"])
        );
        Assert.Equal([false, true], Done(document)[^2..].Select(d => (bool)d["pullHeld"]!));
        // A slip put right is a third entry that names the second, and not another pull.
        await phone.Follow($"job/{job}/fit/pull-check");
        await phone.Press("Put it right");
        await phone.Type("Pulled with", "180");
        await phone.Press("Keep it so");
        document = await laptop.Until(job, d => Done(d).Count == 10);
        Assert.Equal((string?)Done(document)[8]["id"], (string?)Done(document)[9]["corrects"]);
        Assert.Equal("180 N", (string?)Done(document)[9]["pull"]);
        Assert.Equal((string?)Done(document)[8]["at"], (string?)Done(document)[9]["at"]);
        await phone.Follow($"job/{job}/fit/answer");
        await phone.Look("fit-list");
    }

    private static List<JsonNode> Done(JsonNode document) =>
        [.. (document["fit"]?["done"]?.AsArray() ?? []).Select(d => d!)];
}
