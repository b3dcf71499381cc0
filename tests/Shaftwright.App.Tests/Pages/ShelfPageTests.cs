using System.Text.Json.Nodes;
using Microsoft.Playwright;
using Shaftwright.App.Tests.Drawings;

namespace Shaftwright.App.Tests.Pages;

/// <summary>The shelf of a job: pasted, refused by line, searched, a pair taken and put back.</summary>
[Collection(PageTests.Name)]
public class ShelfPageTests(Bench bench)
{
    [Fact]
    public async Task Shelf_PastedIntoTheDemo_OffersPairsTakesOneAndUndoesIt()
    {
        using var laptop = new Laptop(bench.Address);
        await using var phone = await bench.Phone();
        var text = await File.ReadAllTextAsync(
            Path.Combine(Samples.Repository, "examples/grass-track-left-rear.swjob.json"),
            TestContext.Current.CancellationToken
        );
        var job = await laptop.Begin("Siskin, left", JsonNode.Parse(text)!.AsObject());
        await phone.Open($"job/{job}/shelf");
        var box = phone.Page.GetByLabel("Copy the rows");
        await box.FillAsync("shaft;what;until;diameter\nB9;plain;300;quarter\n");
        await phone.Press("Put them on the shelf");
        await Phone
            .Expect(phone.Page.Locator(".refusal"))
            .ToContainTextAsync("line 2, diameter: \"quarter\"");

        await box.FillAsync(
            await File.ReadAllTextAsync(
                Path.Combine(Samples.Repository, "examples/shelf.csv"),
                TestContext.Current.CancellationToken
            )
        );
        await phone.Press("Put them on the shelf");
        await Phone
            .Expect(phone.Page.Locator(".answer"))
            .ToContainTextAsync("Cut long shaft, both ends at");
        await Phone.Expect(phone.Page.Locator(".refusal")).ToHaveCountAsync(0);
        await phone.Look("shelf");
        await phone.Page.GetByText("Why not the other").ClickAsync();
        await Phone
            .Expect(phone.Page.Locator("details li").First)
            .ToContainTextAsync("the van's left shaft");
        await phone
            .Page.GetByRole(AriaRole.Button, new() { Name = "Take these two" })
            .First.ClickAsync();
        await Phone.Expect(phone.Page.Locator(".kept")).ToContainTextAsync("Taken");
        await laptop.Until(
            job,
            d => (string?)d["donors"]!["innerEnd"]!["name"] == "long shaft, both ends"
        );
        await phone.Press("Undo: the donors as they were");
        await laptop.Until(
            job,
            d => (string?)d["donors"]!["innerEnd"]!["name"] == "the van's left shaft"
        );
    }
}
