using Microsoft.Playwright;
using Shaftwright.App.Tests.Api;

namespace Shaftwright.App.Tests.Pages;

/// <summary>Pages kept on the phone: opened anew with the laptop gone, and exchanged whole for a newer build.</summary>
[Collection(PageTests.Name)]
public sealed class OpenedAnewTests(Bench bench) : IDisposable
{
    private readonly string _memory = Directory
        .CreateTempSubdirectory("shaftwright-phone-")
        .FullName;

    public void Dispose() => Directory.Delete(_memory, recursive: true);

    [Fact]
    public async Task Opened_LaptopGoneAndBrowserStartedAnew_ShowsTheJobAndTakesAnEntryThatArrives()
    {
        using var book = new TempBook();
        var port = FreePort();
        string job;
        await using (await Served.Start(book.Folder, "--demo", "--port", port))
        {
            using var laptop = new Laptop(At(port));
            job = await laptop.Begin(
                "Curlew, no laptop",
                new()
                {
                    ["weld"] = new System.Text.Json.Nodes.JsonObject
                    {
                        ["innerDiameter"] = "26.2 mm",
                    },
                }
            );
            await using var first = await bench.Phone(_memory, At(port));
            await first.Open();
            await Phone
                .Expect(first.Page.GetByRole(AriaRole.Link, new() { Name = "Curlew, no laptop" }))
                .ToBeVisibleAsync();
            await WholeOn(first);
            Assert.DoesNotContain(
                await first.Page.EvaluateAsync<string[]>(KeptAddresses),
                a => a.Contains("/api/", StringComparison.Ordinal)
            );
        }

        await using (var phone = await bench.Phone(_memory, At(port)))
        {
            await phone.Open();
            await phone.Asked("What is in front of you?");
            await WholeOn(phone);
            await phone
                .Page.GetByRole(AriaRole.Link, new() { Name = "Curlew, no laptop" })
                .ClickAsync();
            await phone.Asked("Curlew, no laptop");
            // Any address of the pages opens, not only the first.
            await phone.Open($"job/{job}/ends-in-a-vee");
            await phone.Type("Outer (wheel) piece", "25.3");
            await phone.Next("Which feeler blades are on hand?");
            await phone.Follow("job/" + job);
            await Phone
                .Expect(
                    phone.Page.GetByText("One entry is on this phone, not sent to the laptop yet")
                )
                .ToBeVisibleAsync();
        }

        await using (await Served.Start(book.Folder, "--demo", "--port", port))
        {
            using var laptop = new Laptop(At(port));
            await using var again = await bench.Phone(_memory, At(port));
            await again.Open("job/" + job);
            await laptop.Until(job, d => (string?)d["weld"]!["outerDiameter"] == "25.3 mm");
            await Phone
                .Expect(again.Page.GetByText("All of it is sent to the laptop"))
                .ToBeVisibleAsync();
        }
    }

    [Fact]
    public async Task NewerBuild_PageOpen_IsTakenAtTheNextOpeningWholeAndTheOldOneGoes()
    {
        using var relay = new Relay(new Uri(bench.Address), int.Parse(FreePort(), null));
        await using var phone = await bench.Phone(_memory, relay.Address);
        await phone.Open();
        await WholeOn(phone);
        await phone.Open(); // The first opening came from the laptop; from now on it comes from the phone.
        relay.Build("/* the next build */");
        // As a hand that takes the phone up again.
        await phone.Page.EvaluateAsync("() => dispatchEvent(new Event('online'))");
        await Phone
            .Expect(phone.Page.GetByText("A newer Shaftwright is on this phone."))
            .ToBeVisibleAsync();
        Assert.DoesNotContain("the next build", await Sheet(phone), StringComparison.Ordinal);
        Assert.Equal(2, (await Builds(phone)).Length);

        // Opened again, not reloaded: the driver loses a page for good that reloads while its worker changes.
        await phone.Close();
        await phone.Open();
        await WholeOn(phone);
        Assert.Contains("the next build", await Sheet(phone), StringComparison.Ordinal);
        await Phone.Expect(phone.Page.GetByText("A newer Shaftwright")).ToHaveCountAsync(0);
        Assert.StartsWith(
            "shaftwright next-",
            Assert.Single(await Builds(phone)),
            StringComparison.Ordinal
        );

        relay.Build("/* the one after */");
        await phone.Page.EvaluateAsync("() => dispatchEvent(new Event('online'))");
        await phone.Press("Open it now");
        // It reloads itself; looked at on a page of its own, for the same reason.
        await phone.Close();
        await phone.Open();
        await Phone.Expect(phone.Page.GetByText("A newer Shaftwright")).ToHaveCountAsync(0);
        await WholeOn(phone);
        Assert.Contains("the one after", await Sheet(phone), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fetching_FileThatIsNotTheBuilds_IsNotKeptAndIsFetchedAgainAtTheNextOpening()
    {
        using var relay = new Relay(new Uri(bench.Address), int.Parse(FreePort(), null));
        relay.Spoil(true);
        await using var phone = await bench.Phone(_memory, relay.Address);
        await phone.Open();
        await Phone
            .Expect(phone.Page.GetByText("It could not be fetched whole"))
            .ToBeVisibleAsync();
        Assert.DoesNotContain(
            await phone.Page.EvaluateAsync<string[]>(KeptAddresses),
            a => a.Contains("/css/app.", StringComparison.Ordinal)
        );
        relay.Spoil(false);
        await phone.Open();
        await WholeOn(phone);
        Assert.DoesNotContain("spoilt", await Sheet(phone), StringComparison.Ordinal);
    }

    private const string KeptAddresses = """
        async () => {
          const all = [];
          for (const name of await caches.keys())
            for (const request of await (await caches.open(name)).keys()) all.push(request.url);
          return all;
        }
        """;

    private static Task WholeOn(Phone phone) =>
        Phone.Expect(phone.Page.GetByText("Opens without the laptop.")).ToBeVisibleAsync();

    private static Task<string> Sheet(Phone phone) =>
        phone.Page.EvaluateAsync<string>("async () => (await fetch('/css/app.css')).text()");

    private static Task<string[]> Builds(Phone phone) =>
        phone.Page.EvaluateAsync<string[]>("() => caches.keys()");

    private static string At(string port) => $"http://localhost:{port}/";

    private static string FreePort() => Served.Text(Served.FreePort());
}
