using Microsoft.Playwright;
using Shaftwright.App.Tests.Api;

namespace Shaftwright.App.Tests.Pages;

/// <summary>Two job books served one after the other at one address, as a real one and the demo are.</summary>
[Collection(PageTests.Name)]
public class TwoBooksTests(Bench bench)
{
    [Fact]
    public async Task EntryForOneBook_AnotherServedMeanwhile_WaitsForItsOwn()
    {
        using var mine = new TempBook();
        using var other = new TempBook();
        var port = Served.Text(Served.FreePort());
        await using var phone = await bench.Phone($"http://localhost:{port}/");
        string job;
        await using (await Served.Start(mine.Folder, "--port", port))
        {
            await phone.Open("ends-in-a-vee");
            await phone.Type("Inner (power unit) piece", "26.2");
            await phone.Type("Outer (wheel) piece", "25.3");
            await phone.Follow("ends-in-a-vee/answer");
        }
        await phone.Type("A name for the job", "Heron, for my own book");
        await phone.Press("Keep as a new job");
        await phone.Asked("Heron, for my own book");
        job = new Uri(phone.Page.Url).Segments[^1];

        await using (var demo = await Served.Start(other.Folder, "--demo", "--port", port))
        {
            // The page is still open, and sends when it is looked at again.
            await phone.Page.EvaluateAsync("() => dispatchEvent(new Event('focus'))");
            await Phone
                .Expect(phone.Page.GetByText("The laptop serves another job book now"))
                .ToBeVisibleAsync();
            Assert.DoesNotContain((await demo.Get("api/jobs")).AsArray(), j => j.Text("id") == job);

            // Opened anew it is the other book's page, and shows none of the first one's jobs.
            await phone.Press("Open that one");
            await Phone
                .Expect(phone.Page.GetByRole(AriaRole.Link, new() { Name = "Plover, left rear" }))
                .ToBeVisibleAsync();
            await Phone.Expect(phone.Page.GetByText("Heron, for my own book")).ToHaveCountAsync(0);
            await phone.Open("ends-in-a-vee");
            await Phone
                .Expect(
                    phone.Page.GetByRole(
                        AriaRole.Textbox,
                        new() { Name = "Inner (power unit) piece", Exact = true }
                    )
                )
                .ToHaveValueAsync("");
            Assert.DoesNotContain((await demo.Get("api/jobs")).AsArray(), j => j.Text("id") == job);
        }

        await using var again = await Served.Start(mine.Folder, "--port", port);
        await phone.Open("job/" + job);
        await phone.Asked("Heron, for my own book");
        await Phone
            .Expect(phone.Page.GetByText("All of it is sent to the laptop"))
            .ToBeVisibleAsync();
        Assert.Equal(
            "Heron, for my own book",
            (await again.Get("api/jobs/" + job))["document"].Text("name")
        );
        Assert.DoesNotContain(
            (await again.Get("api/jobs?putAway=true")).AsArray(),
            j => j.Text("id").StartsWith("demo-", StringComparison.Ordinal)
        );
    }
}
