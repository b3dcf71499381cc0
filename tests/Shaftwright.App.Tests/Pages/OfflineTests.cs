using System.Text.Json;

namespace Shaftwright.App.Tests.Pages;

/// <summary>What holds without a network: the answer, the entry on the phone, and the way to the laptop later.</summary>
[Collection(PageTests.Name)]
public class OfflineTests(Bench bench)
{
    /// <summary>
    /// Writes down, in one list and in order, when a transaction that puts an entry into the outbox is complete, and when the
    /// screen first says that an entry is on this phone.
    /// </summary>
    private const string Witness = """
        window.seen = [];
        const plain = IDBDatabase.prototype.transaction;
        IDBDatabase.prototype.transaction = function (stores, mode, options) {
          const t = plain.call(this, stores, mode, options);
          if (mode === 'readwrite' && [].concat(stores).includes('outbox') && [].concat(stores).includes('drafts'))
            t.addEventListener('complete', () => window.seen.push('kept'));
          return t;
        };
        new MutationObserver(() => {
          if (!window.seen.includes('said') && document.body?.innerText.includes('on this phone, not sent'))
            window.seen.push('said');
        }).observe(document, { subtree: true, childList: true, characterData: true });
        """;

    [Fact]
    public async Task CarOnStands_WithoutNetworkAfterOpening_AnswersAsWithIt()
    {
        await using var phone = await bench.Phone();
        await phone.Open();
        await phone.Context.SetOfflineAsync(true);
        await phone
            .Page.GetByRole(Microsoft.Playwright.AriaRole.Link, new() { Name = "A car on stands" })
            .ClickAsync();
        var sentence = await Stands.SixReadings(phone);
        Stands.IsRight(sentence);
        await Phone.Expect(phone.Page.GetByText("What is left of the joint")).ToBeVisibleAsync();
        await phone.Shoot("car-on-stands");
    }

    [Fact]
    public async Task KeepAsANewJob_WithoutNetwork_IsOnDiskBeforeItIsSaidAndArrivesLater()
    {
        await using var phone = await bench.Phone();
        await phone.Context.AddInitScriptAsync(Witness);
        await phone.Open("ends-in-a-vee");
        await phone.Type("Inner (power unit) piece", "26.2");
        await phone.Type("Outer (wheel) piece", "25.3");
        await phone.Press("Next");
        await phone.Press("Next");
        await phone.Asked("What is the angle of the vee?");
        await phone.Answer();
        await phone.Context.SetOfflineAsync(true);
        await phone.Type("A name for the job", "Heron, kept in the dark");
        await phone.Press("Keep as a new job");
        await phone.Asked("Heron, kept in the dark");
        await Phone
            .Expect(phone.Page.GetByText("on this phone, not sent to the laptop yet").First)
            .ToBeVisibleAsync();

        Assert.Equal(
            ["kept", "said"],
            (await phone.Page.EvaluateAsync<string[]>("window.seen"))[..2]
        );
        var rows = await phone.Rows("outbox");
        Assert.NotEmpty(rows);
        var id = new Uri(phone.Page.Url).Segments[^1];
        Assert.All(rows, r => Assert.Equal(id, (string?)r!["jobId"]));
        Assert.All(rows, r => Assert.Equal("waiting", (string?)r!["state"]));
        using var laptop = new HttpClient { BaseAddress = new Uri(bench.Address) };
        using var before = await laptop.GetAsync(
            new Uri("api/jobs/" + id, UriKind.Relative),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(System.Net.HttpStatusCode.NotFound, before.StatusCode);

        await phone.Context.SetOfflineAsync(false);
        await Phone
            .Expect(phone.Page.GetByText("All of it is sent to the laptop"))
            .ToBeVisibleAsync();
        using var arrived = JsonDocument.Parse(
            await laptop.GetStringAsync(
                new Uri("api/jobs/" + id, UriKind.Relative),
                TestContext.Current.CancellationToken
            )
        );
        var document = arrived.RootElement.GetProperty("document");
        Assert.Equal("Heron, kept in the dark", document.GetProperty("name").GetString());
        Assert.Equal(
            "25.3 mm",
            document.GetProperty("weld").GetProperty("outerDiameter").GetString()
        );
        Assert.Empty(await phone.Rows("outbox"));
    }

    [Fact]
    public async Task Draft_PageClosedMidEntry_IsThereWhenReopened()
    {
        await using var phone = await bench.Phone();
        await phone.Open("car-on-stands");
        await phone.Type("Joint centre to joint centre", "412");
        await phone.Next("Let the wheel hang at full droop.");
        // Not even a number yet: a slip is kept as it was typed, to be put right.
        await phone.Type("Goes in", "1o");
        await Phone.Expect(phone.Page.GetByText("Kept on this phone")).ToBeVisibleAsync();
        await phone.Close();

        await phone.Open("car-on-stands/droop");
        await Phone
            .Expect(
                phone.Page.GetByRole(
                    Microsoft.Playwright.AriaRole.Textbox,
                    new() { Name = "Goes in", Exact = true }
                )
            )
            .ToHaveValueAsync("1o");
        await phone.Open("car-on-stands");
        await Phone
            .Expect(
                phone.Page.GetByRole(
                    Microsoft.Playwright.AriaRole.Textbox,
                    new() { Name = "Joint centre to joint centre", Exact = true }
                )
            )
            .ToHaveValueAsync("412");
    }
}
