using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>Two phones on one job, both without a network: nothing is lost, and where they disagree a person says which counts.</summary>
[Collection(PageTests.Name)]
public class TwoDevicesTests(Bench bench)
{
    private const string Inner = "Inner (power unit) piece";

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task BothChangeOneFieldAndAddAReading_InEitherOrder_KeepBothAndSettleOnOne(
        bool firstIsBackFirst
    )
    {
        using var laptop = new Laptop(bench.Address);
        var name = "Heron, two phones " + (firstIsBackFirst ? "one" : "two");
        var job = await laptop.Begin(
            name,
            new()
            {
                ["weld"] = new JsonObject
                {
                    ["innerDiameter"] = "26.2 mm",
                    ["outerDiameter"] = "25.3 mm",
                },
                ["corner"] = JsonNode.Parse(
                    """{"trialLength":"412 mm","readings":[{"travel":"0 mm","steering":"straight","in":"10 mm","out":"16 mm"}]}"""
                ),
            }
        );
        await using var first = await bench.Phone();
        await using var second = await bench.Phone();
        foreach (var phone in (Phone[])[first, second])
        {
            await phone.Open("job/" + job);
            await phone.Asked(name);
            await phone.Context.SetOfflineAsync(true);
        }
        await Change(first, job, "27.30", "droop", "Wheel centre below ride height", "90");
        await Change(second, job, "27.40", "bump", "Wheel centre above ride height", "70");

        var (early, late) = firstIsBackFirst ? (first, second) : (second, first);
        var (stands, other) = firstIsBackFirst ? ("27.30", "27.40") : ("27.40", "27.30");
        await Return(early);
        await Return(late);
        await Laptop.Reaches(early, job, "conflicts");
        await Laptop.Reaches(late, job, "conflicts");
        var document = await laptop.Document(job);
        Assert.Equal(stands + " mm", (string?)document["weld"]!["innerDiameter"]);
        Assert.True(
            document["corner"]!["readings"]!
                .AsArray()
                .Select(r => (string?)r!["travel"])
                .Order(StringComparer.Ordinal)
                .SequenceEqual(["-90 mm", "0 mm", "70 mm"]),
            document.ToJsonString()
        );

        // On the card of both it is what comes next, and says which is used until then.
        foreach (var phone in (Phone[])[early, late])
        {
            await Phone
                .Expect(phone.Page.Locator(".next"))
                .ToContainTextAsync("Two devices disagree");
            await Phone
                .Expect(phone.Page.Locator(".disputed"))
                .ToContainTextAsync($"Until you say, {stands} mm is used.");
        }
        await early.Shoot("two-devices");

        // At the field too, and there it is settled.
        await early.Follow($"job/{job}/ends-in-a-vee");
        await Phone
            .Expect(early.Page.Locator(".disputed"))
            .ToContainTextAsync("this phone says " + stands);
        await early.Press($"Use {other} mm");
        await Phone.Expect(early.Page.Locator(".disputed")).ToHaveCountAsync(0);
        await Phone
            .Expect(early.Page.GetByRole(AriaRole.Textbox, new() { Name = Inner, Exact = true }))
            .ToHaveValueAsync(other);
        await laptop.Until(job, d => d["records"] is null);
        await late.Page.EvaluateAsync("() => dispatchEvent(new Event('focus'))");
        await Phone.Expect(late.Page.Locator(".disputed")).ToHaveCountAsync(0);
        Assert.Equal(await Held(early, job), await Held(late, job));
        Assert.Contains($"\"{other} mm\"", await Held(late, job), StringComparison.Ordinal);
    }

    private static async Task Change(
        Phone phone,
        string job,
        string inner,
        string at,
        string label,
        string travel
    )
    {
        await phone.Follow($"job/{job}/ends-in-a-vee");
        await phone.Type(Inner, inner);
        await phone.Next("Which feeler blades are on hand?");
        await phone.Follow($"job/{job}/car-on-stands/{at}");
        await phone.Type(label, travel);
        await phone.Type("Goes in", "14");
        await phone.Type("Comes out", "10");
        await phone.Page.Locator("form .steps button[type=submit]").ClickAsync();
        // All of it is in the job on this phone before the hand goes on.
        await Laptop.Reaches(phone, job, $"\"{(at == "droop" ? "-" : "")}{travel} mm\"");
        await Laptop.Reaches(phone, job, "\"10 mm\"}");
        await phone.Follow("job/" + job);
        await Phone
            .Expect(phone.Page.GetByText("not sent to the laptop yet").First)
            .ToBeVisibleAsync();
    }

    private static async Task Return(Phone phone)
    {
        await phone.Context.SetOfflineAsync(false);
        await phone.Page.EvaluateAsync("() => dispatchEvent(new Event('focus'))");
        await Phone
            .Expect(phone.Page.GetByText("All of it is sent to the laptop"))
            .ToBeVisibleAsync();
    }

    private static async Task<string> Held(Phone phone, string job) =>
        (string)(await phone.Rows("documents")).Single(r => (string?)r!["id"] == job)!["text"]!;
}
