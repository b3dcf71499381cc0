using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>The pages of the weld, from the route card's operations to their answers, on a phone.</summary>
[Collection(PageTests.Name)]
public class WeldPageTests(Bench bench)
{
    private static JsonObject Two25 =>
        new()
        {
            ["weld"] = new JsonObject { ["innerDiameter"] = "25 mm", ["outerDiameter"] = "25 mm" },
        };

    [Fact]
    public async Task Preheat_OfKnownSteels_SaysTheBandAndThatTheFormulaIsOutsideItsRange()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Siskin, preheat", Two25);
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Siskin, preheat");
        await phone.Follow($"job/{job}/weld/preheat/inner-steel");
        await phone.Asked("What is the inner piece made of?");
        // Nothing known: the most demanding steel counts.
        Assert.StartsWith(
            "Preheat to at least 275 °C and at most 300 °C",
            await phone.Sentence(),
            StringComparison.Ordinal
        );
        await phone.Pick("Plain medium carbon");
        await phone.Next("What is the outer piece made of?");
        await phone.Pick("Chromium-molybdenum");
        await phone.Next("How is the arc run?");
        await phone.Pick("TIG");
        await phone.Type("Arc voltage", "12");
        await phone.Type("Current", "120");
        await phone.Type("Speed along the joint", "100");
        await phone.Next("What will you heat to, and over what length?");
        await phone.Type("Preheat", "200");
        var said = await phone.Answer();
        Assert.StartsWith(
            "Preheat to at least 175 °C and at most 250 °C",
            said,
            StringComparison.Ordinal
        );
        Assert.Matches("the formula says .* and is outside its range \\(carbon", said);
        var weld = (
            await laptop.Until(job, d => (string?)d["weld"]?["heat"]?["preheat"] == "200 °C")
        )["weld"]!;
        Assert.Equal(
            ("mediumCarbon", "chromiumMolybdenum", "tig", "12 V", "120 A", "100 mm/min"),
            (
                (string?)weld["innerSteel"]!["family"],
                (string?)weld["outerSteel"]!["family"],
                (string?)weld["arc"]!["process"],
                (string?)weld["arc"]!["volts"],
                (string?)weld["arc"]!["amps"],
                (string?)weld["arc"]!["speed"]
            )
        );
        Assert.Equal("25 mm", (string?)weld["innerDiameter"]);
        await phone.Shoot("weld-preheat");
    }

    [Fact]
    public async Task Beads_AfterTheDial_BeginAtTheHighPointAndGoOneByOne()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Siskin, beads", Two25);
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Siskin, beads");
        await phone.Follow($"job/{job}/weld/beads/layers");
        await phone.Asked("What does the dial say, layer by layer?");
        await phone.Type("Run-out after tacking", "0.24");
        await phone.Type("Where it stands highest after tacking", "90");
        Assert.StartsWith("Layer 1: begin at 90°", await phone.Answer(), StringComparison.Ordinal);
        await phone.Press("First bead");
        var bead = phone.Page.Locator(".beads .bead");
        await Phone.Expect(bead).ToContainTextAsync("Bead 1 of 4: at 90°");
        await phone.Press("Next bead");
        await Phone.Expect(bead).ToHaveTextAsync("Bead 2 of 4: at 270°, opposite to the last.");
        await laptop.Until(
            job,
            d =>
                d["weld"]?["layers"]?.AsArray() is [{ } note]
                && (string?)note["runOut"] == "0.24 mm"
                && (string?)note["highPoint"] == "90°"
        );
        // The next layer, and what this one did.
        await phone.Follow($"job/{job}/weld/beads/layers");
        await phone.Type("Run-out after layer 1", "0.10");
        await phone.Type("Where it stands highest after layer 1", "90");
        Assert.StartsWith("Layer 2: begin at 90°", await phone.Answer(), StringComparison.Ordinal);
        await Phone
            .Expect(phone.Page.GetByText("a layer moved the axis", new() { Exact = false }).First)
            .ToBeAttachedAsync();
        await phone.Shoot("weld-beads");
        // Whoever reads bead by bead is asked on within the layer, and told which quarter comes next.
        await phone.Follow($"job/{job}/weld/beads/layers");
        await phone.Type("Run-out after bead 1 of layer 2, if you read it bead by bead", "0.06");
        await phone.Type("Where it stands highest after bead 1 of layer 2", "270");
        Assert.StartsWith(
            "Layer 2, bead 2: at 270°",
            await phone.Answer(),
            StringComparison.Ordinal
        );
        await Phone.Expect(bead).ToHaveTextAsync("Layer 2: 3 beads to come.");
        await laptop.Until(
            job,
            d =>
                d["weld"]
                    ?["layers"]?.AsArray()
                    .Any(n => (int?)n!["beads"] == 1 && (int?)n["layers"] == 1)
                    is true
        );
    }

    [Fact]
    public async Task Sample_CutAndEtched_CountsOnceItIsSaidToBeAlike()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Siskin, sample", Two25);
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Siskin, sample");
        await phone.Follow($"job/{job}/weld/sample/fusion");
        await phone.Asked("How deep is it fused, round the section?");
        foreach (var (at, depth) in new[] { (0, "6.4"), (90, "6.1"), (180, "5.8"), (270, "6.2") })
            await phone.Type($"Fused depth at {at}°", depth);
        await phone.Press("Next");
        await phone.Asked("How hard is it, across the weld?");
        Assert.Contains("replaces no guess yet", await phone.Sentence(), StringComparison.Ordinal);
        await phone.Follow($"job/{job}/weld/sample/alike");
        await Say(phone, "Made of offcuts of both donors?", "Yes");
        await Say(phone, "Ground, heated and welded as the shaft will be?", "Yes");
        await Say(phone, "Any crack on the etched face?", "No");
        await Phone.Expect(phone.Page.Locator(".answer p").First).ToContainTextAsync("5.5");
        var sample = (
            await laptop.Until(job, d => (bool?)d["strength"]?["sample"]?["cracked"] == false)
        )["strength"]!["sample"]!;
        Assert.Equal(4, sample["fusion"]!.AsArray().Count);
        Assert.Equal("180°", (string?)sample["fusion"]![2]!["angle"]);
        Assert.True((bool?)sample["sameSteel"]);
        await Say(phone, "Any crack on the etched face?", "Yes");
        await Phone
            .Expect(phone.Page.Locator(".answer p").First)
            .ToContainTextAsync("do not weld the shaft this way");
    }

    [Fact]
    public async Task RouteCard_OfTheDemo_OpensEachPageOfTheWeld()
    {
        await using var phone = await bench.Phone();
        await RouteCardPageTests.OpenDemo(phone);
        foreach (
            var (operation, link) in new[]
            {
                ("prepare-ends", "The groove and the filler"),
                ("weld-sample", "What the sample gave"),
                ("set-up", "Packing, two vees, a taper"),
                ("check-tacks", "The dial on both sides"),
                ("preheat", "Steel, arc and preheat"),
                ("weld", "Bead by bead"),
                ("temper", "Between runs and after"),
                ("sleeve", "The sleeve's seams"),
            }
        )
            await Phone
                .Expect(phone.Page.Locator($"#{operation}-more a", new() { HasText = link }))
                .ToHaveAttributeAsync("href", new System.Text.RegularExpressions.Regex("/weld/"));
        await phone.Page.Locator("#preheat h2 button").ClickAsync();
        await phone
            .Page.Locator("#preheat-more a", new() { HasText = "Steel, arc and preheat" })
            .ClickAsync();
        await phone.Asked("What is the inner piece made of?");
    }

    private static Task Say(Phone phone, string legend, string word) =>
        phone
            .Page.GetByRole(AriaRole.Group, new() { Name = legend })
            .GetByText(word, new() { Exact = true })
            .ClickAsync();

    [Fact]
    public async Task Seam_MeasuredWithAGauge_IsALevelOrSaysWhatToDo()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Siskin, seam", Two25);
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Siskin, seam");
        await phone.Follow($"job/{job}/weld/seam/asked");
        await phone.Asked("Which level is asked, and how deep is the weld?");
        await phone.Type("How deep it is fused, by the sample", "8");
        await phone.Next("All round the seam with a glass: what is there?");
        await phone.Page.Locator("label[for=q-butt-crack-no]").ClickAsync();
        await phone.Type("Deepest undercut; 0 for none", "0.9");
        await phone.Type("Largest pore in the surface; 0 for none", "0");
        await phone.Look("seam-seen");
        await phone.Next("How do cap and surfaces stand?");
        await phone.Type("How far the cap stands over the metal", "1.5");
        await phone.Type("How wide the cap is", "12");
        await phone.Type(
            "One surface beside the other, half the difference of diameters taken off",
            "0.1"
        );
        Assert.StartsWith(
            "Not level B at the butt",
            await phone.Answer(),
            StringComparison.Ordinal
        );
        await Phone.Expect(phone.Page.GetByText("Blend it out lengthwise")).ToBeVisibleAsync();
        await phone.Look("seam-answer");
        await phone.Follow($"job/{job}/weld/seam/seen");
        await phone.Type("Deepest undercut; 0 for none", "0.1");
        await phone.Follow($"job/{job}/weld/seam/answer");
        await Phone
            .Expect(phone.Page.Locator(".answer p").First)
            .ToContainTextAsync("Level B at the butt.");
        var seam = (
            await laptop.Until(job, d => (string?)d["weld"]?["seams"]?[0]?["undercut"] == "0.1 mm")
        )["weld"]!["seams"]![0]!;
        Assert.Equal(
            ("butt", "8 mm", "12 mm", false),
            (
                (string?)seam["place"],
                (string?)seam["depth"],
                (string?)seam["capWidth"],
                seam["cracked"]!.GetValue<bool>()
            )
        );
    }

    [Fact]
    public async Task Sample_Photographed_ShowsItAndKeepsItsName()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Siskin, sample photo", Two25);
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Siskin, sample photo");
        await phone.Follow($"job/{job}/weld/sample/alike");
        await phone.Asked("Is it the shaft in small?");
        var jpeg = Convert.FromBase64String(
            await phone.Page.EvaluateAsync<string>(
                """
                () => {
                  const c = document.createElement('canvas');
                  c.width = 400;
                  c.height = 300;
                  c.getContext('2d').fillRect(100, 100, 80, 60);
                  return c.toDataURL('image/jpeg').split(',')[1];
                }
                """
            )
        );
        await phone
            .Page.Locator(".photo-taker input")
            .First.SetInputFilesAsync(
                new FilePayload
                {
                    Name = "etched.jpg",
                    MimeType = "image/jpeg",
                    Buffer = jpeg,
                }
            );
        await Phone.Expect(phone.Page.Locator(".photo img")).ToBeVisibleAsync();
        await Phone.Expect(phone.Page.Locator(".photo")).ToContainTextAsync("The laptop has it");
        await phone.Look("sample-photo");
        await laptop.Until(job, d => ((string?)d["strength"]?["sample"]?["photo"])?.Length == 64);
        await phone.Press("Take it away");
        await Phone.Expect(phone.Page.Locator(".photo")).ToHaveCountAsync(0);
        await laptop.Until(job, d => d["strength"]?["sample"]?["photo"] is null);
    }
}
