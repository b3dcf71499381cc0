using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>Doors opened on a job: what was typed becomes part of it, no more and no less, while others work on it too.</summary>
[Collection(PageTests.Name)]
public class DoorOnAJobTests(Bench bench)
{
    private const string Inner = "Inner (power unit) piece";
    private const string Outer = "Outer (wheel) piece";
    private const string Vee = "ends-in-a-vee";
    private const string Readings = "Turn the shaft, read the dial.";

    private static JsonObject TwoDiameters =>
        new()
        {
            ["weld"] = new JsonObject
            {
                ["innerDiameter"] = "26.2 mm",
                ["outerDiameter"] = "25.3 mm",
            },
        };

    [Fact]
    public async Task CarOnStands_DroopWithoutItsTravel_WaitsOnThePhoneAndIsNoReadingOfTheJob()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, no travel");
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Curlew, no travel");
        await phone.Follow($"job/{job}/car-on-stands/droop");
        await phone.Type("Goes in", "14");
        await phone.Type("Comes out", "10");
        await phone.Next("Set the wheel at ride height.");
        await Kept(phone);
        await Phone.Expect(Box(phone, "Goes in")).ToHaveValueAsync("");
        await phone.Next("Lift the wheel to full bump.");
        await phone.Type("Wheel centre above ride height", "70");
        await phone.Type("Goes in", "13");
        await phone.Type("Comes out", "12");
        await phone.Next("What moves at the power unit?");

        var bump = await laptop.Until(job, d => TravelsOf(d).Contains("70 mm"));
        Assert.Equal(["70 mm"], TravelsOf(bump));

        await Reopen(phone, job, "car-on-stands/ride-height");
        await Phone.Expect(Box(phone, "Goes in")).ToHaveValueAsync("");
        await phone.Press("Back");
        await phone.Asked("Let the wheel hang at full droop.");
        await Phone.Expect(Box(phone, "Goes in")).ToHaveValueAsync("14");
        await phone.Type("Wheel centre below ride height", "90");
        await phone.Next("Set the wheel at ride height.");
        var both = await laptop.Until(job, d => TravelsOf(d).Count == 2);
        Assert.Equal(["-90 mm", "70 mm"], TravelsOf(both).Order(StringComparer.Ordinal));
        var droop = both["corner"]!["readings"]!
            .AsArray()
            .Single(r => (string?)r!["travel"] == "-90 mm");
        Assert.Equal(("14 mm", "10 mm"), ((string?)droop!["in"], (string?)droop["out"]));
    }

    [Fact]
    public async Task CarOnStands_KeptAsANewJob_TakesAReadingWithoutTravelAlongOnThePhone()
    {
        using var laptop = new Laptop(bench.Address);
        await using var phone = await bench.Phone();
        await phone.Open("car-on-stands");
        await phone.Type("Joint centre to joint centre", "412");
        await phone.Next("Let the wheel hang at full droop.");
        await phone.Type("Goes in", "14");
        await phone.Follow("car-on-stands/answer");
        await phone.Type("A name for the job", "Curlew, handed on");
        await phone.Press("Keep as a new job");
        await phone.Asked("Curlew, handed on");
        var job = new Uri(phone.Page.Url).Segments[^1];
        await Phone
            .Expect(phone.Page.GetByText("All of it is sent to the laptop"))
            .ToBeVisibleAsync();
        Assert.Empty(TravelsOf(await laptop.Document(job)));
        await phone.Follow($"job/{job}/car-on-stands/droop");
        await Phone.Expect(Box(phone, "Goes in")).ToHaveValueAsync("14");
    }

    [Fact]
    public async Task UnderTheDial_ReadingByReading_KeepsEachAtItsAngle()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, under the dial");
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Curlew, under the dial");
        await phone.Follow($"job/{job}/under-the-dial/readings", redirects: true);
        await phone.Asked(Readings);
        await Read(phone, "Reading 1 of 8: turn to 0°", "0.11");
        await laptop.Until(job, d => AnglesOf(d).Count == 1);
        await Kept(phone);
        await Read(phone, "Reading 2 of 8: turn to 45°", "0.22");
        await Phone.Expect(Box(phone, "Reading 3 of 8: turn to 90°")).ToBeVisibleAsync();
        Assert.Equal(
            ["0° 0.11 mm", "45° 0.22 mm"],
            AnglesOf(await laptop.Until(job, d => AnglesOf(d).Count == 2))
        );
    }

    [Fact]
    public async Task UnderTheDial_FourOfEightAroundTheShaft_AreStillEightWhenReopened()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, every other one");
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Curlew, every other one");
        await phone.Follow($"job/{job}/under-the-dial/readings", redirects: true);
        await phone.Asked(Readings);
        for (var i = 0; i < 8; i += 2)
        {
            await phone.Page.Locator($"ol.readings li:nth-child({i + 1}) button").ClickAsync();
            await Read(phone, $"Reading {i + 1} of 8: turn to {45 * i}°", $"0.{i + 1}");
            await laptop.Until(job, d => AnglesOf(d).Count == 1 + i / 2);
        }
        string[] four = ["0° 0.1 mm", "90° 0.3 mm", "180° 0.5 mm", "270° 0.7 mm"];
        Assert.Equal(four, AnglesOf(await laptop.Document(job)));
        await Kept(phone);
        var at = phone.Page.Url;
        await phone.Close();
        await phone.Open(at);
        await phone.Asked(Readings);
        await Phone.Expect(phone.Page.Locator("ol.readings li")).ToHaveCountAsync(8);
        // One between them, and those that were there stay where they were read.
        await phone.Page.Locator("ol.readings li:nth-child(2) button").ClickAsync();
        await Read(phone, "Reading 2 of 8: turn to 45°", "0.2");
        Assert.Equal(
            ["0° 0.1 mm", "45° 0.2 mm", "90° 0.3 mm", "180° 0.5 mm", "270° 0.7 mm"],
            AnglesOf(await laptop.Until(job, d => AnglesOf(d).Count == 5))
        );
    }

    [Fact]
    public async Task UnderTheDial_OneRefused_LeavesTheOthersAtTheirAngles()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, a slip");
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Curlew, a slip");
        await phone.Follow($"job/{job}/under-the-dial/readings", redirects: true);
        await phone.Asked(Readings);
        await phone.Pick("12");
        await Read(phone, "Reading 1 of 12: turn to 0°", "0.11");
        await Read(phone, "Reading 2 of 12: turn to 30°", "oops");
        await Read(phone, "Reading 3 of 12: turn to 60°", "0.33");
        await Phone.Expect(Box(phone, "Reading 4 of 12: turn to 90°")).ToBeVisibleAsync();
        Assert.Equal(
            ["0° 0.11 mm", "60° 0.33 mm"],
            AnglesOf(await laptop.Until(job, d => AnglesOf(d).Count == 2))
        );
        await Kept(phone);
        var at = phone.Page.Url;
        await phone.Close();
        await phone.Open(at);
        await phone.Asked(Readings);
        await Phone
            .Expect(phone.Page.Locator("ol.readings li:nth-child(2)"))
            .ToHaveTextAsync("30°: oops");
        await Phone
            .Expect(phone.Page.Locator("ol.readings li:nth-child(3)"))
            .ToHaveTextAsync("60°: 0.33 mm");
    }

    [Fact]
    public async Task Draft_OfOneField_LeavesTheLaptopsChangeOfAnotherAlone()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, two fields", TwoDiameters);
        await using var phone = await bench.Phone();
        await OpenVee(phone, job, "Curlew, two fields");
        await phone.Type(Inner, "26.4");
        await Kept(phone);
        await phone.Close();
        await laptop.Change(job, "/weld/outerDiameter", "25.9 mm");

        await Reopen(phone, job, Vee, "25.9 mm");
        await Phone.Expect(Box(phone, Inner)).ToHaveValueAsync("26.4");
        await Phone.Expect(Box(phone, Outer)).ToHaveValueAsync("25.9");
        await phone.Type(Inner, "26.5");
        await phone.Next("Which feeler blades are on hand?");
        var weld = (
            await laptop.Until(job, d => (string?)d["weld"]!["innerDiameter"] == "26.5 mm")
        )["weld"]!;
        Assert.Equal("25.9 mm", (string?)weld["outerDiameter"]);
    }

    [Theory]
    [InlineData("Use 26.4 mm", "26.4")]
    [InlineData("Leave 26.3 mm", "26.3")]
    public async Task Draft_WhoseFieldWasChangedMeanwhile_AsksWhichOneCounts(
        string choice,
        string counts
    )
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, one field", TwoDiameters);
        await using var phone = await bench.Phone();
        await OpenVee(phone, job, "Curlew, one field");
        await phone.Type(Inner, "26.4");
        await Kept(phone);
        await phone.Close();
        await laptop.Change(job, "/weld/innerDiameter", "26.3 mm");

        await Reopen(phone, job, Vee, "26.3 mm");
        await Phone.Expect(Box(phone, Inner)).ToHaveValueAsync("26.3");
        await Phone.Expect(phone.Page.Locator(".clash")).ToContainTextAsync("26.4 mm");
        // Another field is kept without deciding this one.
        await phone.Type(Outer, "25.5");
        await phone.Next("Which feeler blades are on hand?");
        var weld = (
            await laptop.Until(job, d => (string?)d["weld"]!["outerDiameter"] == "25.5 mm")
        )["weld"]!;
        Assert.Equal("26.3 mm", (string?)weld["innerDiameter"]);

        // It waits for its answer, also over a closed page.
        await Reopen(phone, job, Vee);
        await Phone.Expect(phone.Page.Locator(".clash")).ToHaveCountAsync(1);
        await phone.Press(choice);
        await Phone.Expect(phone.Page.Locator(".clash")).ToHaveCountAsync(0);
        await Phone.Expect(Box(phone, Inner)).ToHaveValueAsync(counts);
        await laptop.Until(job, d => (string?)d["weld"]!["innerDiameter"] == counts + " mm");
        await Reopen(phone, job, Vee, counts + " mm");
        await Phone.Expect(Box(phone, Inner)).ToHaveValueAsync(counts);
        await Phone.Expect(phone.Page.Locator(".clash")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task LeftByALink_WhatWasKept_IsForgottenAsADraft()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, by a link", TwoDiameters);
        await using var phone = await bench.Phone();
        await OpenVee(phone, job, "Curlew, by a link");
        await phone.Type(Inner, "26.4");
        await Kept(phone);
        // The hand leaves the box and the page in one go.
        await phone.Page.EvaluateAsync(
            "() => { document.activeElement.blur(); Blazor.navigateTo(''); }"
        );
        await phone.Asked("What is in front of you?");
        await laptop.Until(job, d => (string?)d["weld"]!["innerDiameter"] == "26.4 mm");
        Assert.DoesNotContain(
            await phone.Rows("drafts"),
            r => ((string)r!["key"]!).Contains(job, StringComparison.Ordinal)
        );
        await laptop.Change(job, "/weld/innerDiameter", "26 mm");

        await Reopen(phone, job, Vee, "\"26 mm\"");
        await Phone.Expect(Box(phone, Inner)).ToHaveValueAsync("26");
        await Phone.Expect(phone.Page.Locator(".clash")).ToHaveCountAsync(0);
        await phone.Type(Outer, "25.5");
        await phone.Next("Which feeler blades are on hand?");
        var weld = (
            await laptop.Until(job, d => (string?)d["weld"]!["outerDiameter"] == "25.5 mm")
        )["weld"]!;
        Assert.Equal("26 mm", (string?)weld["innerDiameter"]);
    }

    [Fact]
    public async Task EmptiedField_PageClosed_IsStillEmptyWhenReopened()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, emptied", TwoDiameters);
        await using var phone = await bench.Phone();
        await OpenVee(phone, job, "Curlew, emptied");
        await phone.Type(Inner, "");
        await Kept(phone);
        await phone.Close();

        await Reopen(phone, job, Vee);
        await Phone.Expect(Box(phone, Inner)).ToHaveValueAsync("");
        await Phone.Expect(Box(phone, Outer)).ToHaveValueAsync("25.3");
        await phone.Type(Outer, "25.5");
        await phone.Next("Which feeler blades are on hand?");
        await laptop.Until(job, d => (string?)d["weld"]!["outerDiameter"] == "25.5 mm");
        Assert.Null((await laptop.Document(job))["weld"]!["innerDiameter"]);
    }

    [Fact]
    public async Task DoorWithoutAJob_PutIntoOneThatHasMore_TakesNothingOutOfIt()
    {
        using var laptop = new Laptop(bench.Address);
        var weld = TwoDiameters;
        weld["weld"]!["veeAngle"] = "90°";
        var job = await laptop.Begin("Curlew, added to", weld);
        await using var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked("Curlew, added to");
        await phone.Follow(Vee);
        await phone.Type(Inner, "27.1");
        await phone.Type(Outer, "25.9");
        await phone.Next("Which feeler blades are on hand?");
        await phone.Next("What is the angle of the vee?");
        await phone.Answer();
        await phone.Press("Curlew, added to");
        var held = (
            await laptop.Until(job, d => (string?)d["weld"]!["innerDiameter"] == "27.1 mm")
        )["weld"]!;
        Assert.Equal("25.9 mm", (string?)held["outerDiameter"]);
        Assert.Equal("90°", (string?)held["veeAngle"]);
    }

    [Fact]
    public async Task SlipOverAJobsValue_WaitsOnThePhone_AndTheJobKeepsItsValue()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, a slip", TwoDiameters);
        await using var phone = await bench.Phone();
        await OpenVee(phone, job, "Curlew, a slip");
        await phone.Type(Inner, "2o.2");
        await phone.Type(Outer, "25.5");
        await phone.Next("Which feeler blades are on hand?");
        var held = (
            await laptop.Until(job, d => (string?)d["weld"]!["outerDiameter"] == "25.5 mm")
        )["weld"]!;
        Assert.Equal("26.2 mm", (string?)held["innerDiameter"]);
        await Reopen(phone, job, Vee);
        await Phone.Expect(Box(phone, Inner)).ToHaveValueAsync("2o.2");
    }

    [Fact]
    public async Task Undo_AfterTheLaptopsChangeOfAnotherField_TakesBackOnlyWhatWasTypedHere()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, undone", TwoDiameters);
        await using var phone = await bench.Phone();
        await OpenVee(phone, job, "Curlew, undone");
        await phone.Type(Inner, "26.4");
        await phone.Next("Which feeler blades are on hand?");
        await laptop.Until(job, d => (string?)d["weld"]!["innerDiameter"] == "26.4 mm");
        await laptop.Change(job, "/weld/outerDiameter", "25.9 mm");
        await Laptop.Reaches(phone, job, "25.9 mm");
        await phone.Press("Undo");
        var weld = (
            await laptop.Until(job, d => (string?)d["weld"]!["innerDiameter"] == "26.2 mm")
        )["weld"]!;
        Assert.Equal("25.9 mm", (string?)weld["outerDiameter"]);
    }

    private static async Task OpenVee(Phone phone, string job, string name)
    {
        await phone.Open("job/" + job);
        await phone.Asked(name);
        await phone.Follow($"job/{job}/{Vee}");
        await Phone.Expect(Box(phone, Inner)).ToHaveValueAsync("26.2");
    }

    /// <summary>Opens a door of a job anew, after the phone has the laptop's latest.</summary>
    private static async Task Reopen(Phone phone, string job, string door, string? having = null)
    {
        await phone.Close();
        await phone.Open("");
        if (having is not null)
            await Laptop.Reaches(phone, job, having);
        await phone.Follow($"job/{job}/{door}");
    }

    /// <summary>Types a reading and goes on as Enter does.</summary>
    private static async Task Read(Phone phone, string label, string text)
    {
        await phone.Type(label, text);
        await phone.Page.Keyboard.PressAsync("Enter");
    }

    private static Task Kept(Phone phone) =>
        Phone
            .Expect(phone.Page.Locator("p.kept[role=status]"))
            .ToHaveTextAsync("Kept on this phone");

    private static ILocator Box(Phone phone, string label) =>
        phone.Page.GetByRole(AriaRole.Textbox, new() { Name = label, Exact = true });

    private static List<string?> TravelsOf(JsonNode document) =>
        [.. Each(document["corner"]?["readings"]).Select(r => (string?)r!["travel"])];

    private static List<string> AnglesOf(JsonNode document) =>
        [
            .. Each(document["truing"]?["turns"]?[0]?["readings"])
                .Select(r => $"{(string?)r!["angle"]} {(string?)r["dial"]}"),
        ];

    private static JsonArray Each(JsonNode? list) => list?.AsArray() ?? [];
}
