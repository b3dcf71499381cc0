using System.Net;
using System.Net.NetworkInformation;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shaftwright.App.Tests.Api;
using Shaftwright.App.Tests.Pages;

namespace Shaftwright.App.Tests.Link;

/// <summary>A real browser as the phone, another as the laptop, and the real listener on the network between them.</summary>
/// <remarks>The phone's browser goes past the certificate as a hand would; that the certificate holds is shown in
/// <see cref="AuthorityTests"/>, where nothing is gone past.</remarks>
[Collection(PageTests.Name)]
public class PhonePairingTests(Bench bench)
{
    [Fact]
    public async Task Phone_PairedFromTheScreen_SendsItsEntriesAndLosesNoneWhenTakenOff()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(
            book.Folder,
            "--port",
            "0",
            "--lan",
            LanAddress()
        );
        await using var laptop = await bench.Desk(served.Address.AbsoluteUri);
        await laptop.Open();
        await laptop.Page.GetByRole(AriaRole.Link, new() { Name = "Phones" }).ClickAsync();
        await Phone.Expect(laptop.Page.GetByText("No phone is paired.")).ToBeVisibleAsync();
        await laptop.Press("A phone that was never here");
        await Phone
            .Expect(laptop.Page.GetByText("The fingerprint to compare with"))
            .ToBeVisibleAsync();
        await laptop.Shoot("phones-trust");
        Assert.EndsWith("/trust", await Scan(laptop), StringComparison.Ordinal);
        await IsSound(laptop);
        await laptop.Press("Next: pair");
        await Phone.Expect(laptop.Page.GetByText("Good for one phone")).ToBeVisibleAsync();
        await laptop.Shoot("phones-pair");
        await IsSound(laptop);

        // What the camera reads from the screen is all the phone gets.
        var read = await Scan(laptop);
        await using var phone = await bench.Phone(served.Phones[0].AbsoluteUri, overlooks: true);
        await phone.Open(read);
        await phone.Asked("Pair this phone with the laptop");
        await phone.Shoot("pair");
        await IsSound(phone);
        await phone.Type("What do you call this phone?", "Bench phone");
        await phone.Press("Pair");
        await phone.Asked("This phone is paired as “Bench phone”.");
        await Phone.Expect(laptop.Page.GetByText("Paired: Bench phone.")).ToBeVisibleAsync();
        Assert.Equal("", await phone.Page.EvaluateAsync<string>("document.cookie"));

        await phone.Press("What is in front of you?");
        await phone.Asked("What is in front of you?");
        await Phone
            .Expect(phone.Page.GetByText("Paired as “Bench phone”, encrypted"))
            .ToBeVisibleAsync();
        await phone.Shoot("paired-home");
        await IsSound(phone);
        var job = await Keep(phone, "Plover, from the phone");
        await Arrived(served, job);

        await laptop.Press("Done");
        await laptop.Press("Take off Bench phone");
        await Phone.Expect(laptop.Page.GetByText("may not come in")).ToBeVisibleAsync();
        await phone.Follow("");
        var late = await Keep(phone, "Plover, taken off");
        await Phone
            .Expect(phone.Page.GetByText("is not paired with the laptop any more"))
            .ToBeVisibleAsync();
        await phone.Shoot("not-paired");
        Assert.NotEmpty(await phone.Rows("outbox"));
        Assert.DoesNotContain(await Jobs(served), j => j == late);

        // Opened anew it still holds all of it, and says so where it is paired again.
        await phone.Open();
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "Pair it again" }).ClickAsync();
        await Phone.Expect(phone.Page.GetByText("taken off the laptop's list")).ToBeVisibleAsync();
        await Phone.Expect(phone.Page.GetByText("kept on this phone")).ToBeVisibleAsync();
        await laptop.Press("A phone that knows this laptop");
        var typed = await laptop.Page.Locator("p.code").InnerTextAsync();
        await phone.Type("The code on the laptop's page Phones", typed.ToLowerInvariant());
        await phone.Type("What do you call this phone?", "Bench phone");
        await phone.Shoot("pair-again");
        await phone.Press("Pair");
        await phone.Asked("This phone is paired as “Bench phone”.");
        await phone.Press("What is in front of you?");
        await Arrived(served, late);
        await Phone
            .Expect(phone.Page.GetByText("is not paired with the laptop"))
            .ToHaveCountAsync(0);
        await laptop.Shoot("phones-list");
    }

    [Fact]
    public async Task Phone_WithoutTheCodeOrFromAnotherSite_GetsNothing()
    {
        using var book = new TempBook();
        await using var served = await Served.Start(
            book.Folder,
            "--port",
            "0",
            "--plain",
            "--lan",
            LanAddress()
        );
        await served.Post([Sent.Begin("kept")]);
        var safe = served.Phones.First(a => a.Scheme == "https").AbsoluteUri;
        var plain = served.Phones.First(a => a.Scheme == "http");
        await using var phone = await bench.Phone(safe, overlooks: true);
        await phone.Open("job/kept");
        await phone.Asked("Pair this phone with the laptop");
        await phone.Type("The code on the laptop's page Phones", "AAAA-AAAA");
        await phone.Type("What do you call this phone?", "Stranger");
        await phone.Press("Pair");
        await Phone
            .Expect(phone.Page.GetByRole(AriaRole.Alert))
            .ToHaveTextAsync("That is not the code the laptop shows.");
        Assert.Equal(
            401,
            await phone.Page.EvaluateAsync<int>("async () => (await fetch('api/jobs')).status")
        );
        await phone.Open("phones");
        await phone.Asked("Pair this phone with the laptop");
        await phone.Open("trust");
        await phone.Asked("Let this phone know the laptop");
        await Phone
            .Expect(
                phone.Page.GetByRole(AriaRole.Link, new() { Name = "Download shaftwright.crt" })
            )
            .ToBeVisibleAsync();
        await phone.Shoot("trust");
        await IsSound(phone);
        var download = await phone.Page.RunAndWaitForDownloadAsync(() =>
            phone
                .Page.GetByRole(AriaRole.Link, new() { Name = "Download shaftwright.crt" })
                .ClickAsync()
        );
        Assert.Equal("shaftwright.crt", download.SuggestedFilename);
        using var root = await Garage.RootOf(served);
        Assert.Equal(
            root.RawData,
            await File.ReadAllBytesAsync(
                await download.PathAsync(),
                TestContext.Current.CancellationToken
            )
        );

        // A paired phone that strays to another site: what that site sends in its name is refused.
        using var made = await Garage.Post(
            served.Client,
            "api/link/code",
            new System.Text.Json.Nodes.JsonObject { ["at"] = safe }
        );
        await phone.Open((await Served.Json(made)).Text("url"));
        await phone.Type("What do you call this phone?", "Bench phone");
        await phone.Press("Pair");
        await phone.Asked("This phone is paired as “Bench phone”.");
        await phone.Context.RouteAsync(
            "http://attacker.example/",
            route =>
                route.FulfillAsync(
                    new()
                    {
                        ContentType = "text/html",
                        Body =
                            $"""<form method=post enctype=text/plain action="{safe}api/edits"><input name=x value=y><button>Win a prize</button></form>""",
                    }
                )
        );
        await phone.Page.GotoAsync("http://attacker.example/");
        await phone.Press("Win a prize");
        await Phone
            .Expect(phone.Page.GetByText("Another site may not change anything here."))
            .ToBeVisibleAsync();
        Assert.Single(await served.History());

        // The plain door says what it lacks before anybody pairs through it.
        await using var inTheClear = await bench.Phone(plain.AbsoluteUri);
        await inTheClear.Open();
        await Phone
            .Expect(inTheClear.Page.GetByText("This connection is not encrypted."))
            .ToBeVisibleAsync();
        await inTheClear.Shoot("pair-plain");
        await IsSound(inTheClear);
        if (!IPAddress.IsLoopback(IPAddress.Parse(plain.Host)))
            Assert.False(await inTheClear.Page.EvaluateAsync<bool>("isSecureContext"));
    }

    /// <summary>An address of this machine in a private network, as a phone would reach it; else another loopback one.</summary>
    internal static string LanAddress() =>
        NetworkInterface
            .GetAllNetworkInterfaces()
            .Where(n => n.OperationalStatus == OperationalStatus.Up)
            .SelectMany(n => n.GetIPProperties().UnicastAddresses)
            .Select(a => a.Address)
            .FirstOrDefault(a =>
                IPNetwork.Parse("192.168.0.0/16").Contains(a)
                || IPNetwork.Parse("172.16.0.0/12").Contains(a)
                || IPNetwork.Parse("10.0.0.0/8").Contains(a)
                || IPNetwork.Parse("fc00::/7").Contains(a)
            )
            ?.ToString()
        ?? Garage.LaptopAddress;

    /// <summary>Reads the picture on the screen as a camera would: from its pixels.</summary>
    private static async Task<string> Scan(Phone laptop)
    {
        var grey = await laptop.Page.EvaluateAsync<int[]>(
            """
            async () => {
              const svg = document.querySelector('svg.qr');
              const copy = svg.cloneNode(true);
              copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
              copy.setAttribute('width', 400);
              copy.setAttribute('height', 400);
              const image = new Image();
              image.src = 'data:image/svg+xml,' + encodeURIComponent(copy.outerHTML);
              await image.decode();
              const canvas = Object.assign(document.createElement('canvas'), { width: 400, height: 400 });
              const context = canvas.getContext('2d');
              context.drawImage(image, 0, 0);
              const rgba = context.getImageData(0, 0, 400, 400).data;
              return [...Array(160000).keys()].map(i => rgba[4 * i]);
            }
            """
        );
        return QrDecoder.Read([.. grey.Select(g => (byte)g)], 400);
    }

    private static async Task<string> Keep(Phone phone, string name)
    {
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "Ends in a vee" }).ClickAsync();
        await phone.Type("Inner (power unit) piece", "26.2");
        await phone.Type("Outer (wheel) piece", "25.3");
        await phone.Follow("ends-in-a-vee/answer");
        await phone.Type("A name for the job", name);
        await phone.Press("Keep as a new job");
        await phone.Asked(name);
        return new Uri(phone.Page.Url).Segments[^1];
    }

    private static async Task<List<string>> Jobs(Served served) =>
        [.. (await served.Get("api/jobs")).AsArray().Select(j => j.Text("id"))];

    private static async Task Arrived(Served served, string job)
    {
        for (var i = 0; !(await Jobs(served)).Contains(job); i++)
        {
            Assert.True(i < 150, "The laptop never had it.");
            await Task.Delay(200, TestContext.Current.CancellationToken);
        }
    }

    private static async Task IsSound(Phone phone)
    {
        Assert.Equal(
            await phone.Page.EvaluateAsync<int>("innerWidth"),
            await phone.Page.EvaluateAsync<int>("document.documentElement.scrollWidth")
        );
        var serious = (await phone.Page.RunAxe())
            .Violations.Where(v => v.Impact is "critical" or "serious")
            .SelectMany(v => v.Nodes.Select(n => $"{v.Id}: {v.Help}: {n.Html}"))
            .ToList();
        Assert.True(serious.Count == 0, string.Join('\n', serious));
    }
}
