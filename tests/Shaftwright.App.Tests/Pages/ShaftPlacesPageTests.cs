using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>The walk along a shaft of a job, by hand, while another device walks it too.</summary>
[Collection(PageTests.Name)]
public class ShaftPlacesPageTests(Bench bench)
{
    private static JsonArray Zones(string bar) =>
        [
            Zone("spline", "30 mm", "27 mm"),
            Zone("plain", "200 mm", "26 mm"),
            Zone("plain", "300 mm", bar),
        ];

    [Fact]
    public async Task DiameterHalfTyped_AnotherDevicePutsAPlaceIn_GoesToThePlaceItIsReadAt()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, walked by two", Donors(Zones("25 mm")));
        await using var phone = await Walking(job, "Curlew, walked by two");
        await phone.Type("Diameter", "24.");
        var four = Zones("25 mm");
        four.Insert(1, Zone("groove", "33 mm", "24 mm"));
        await laptop.Set(job, "/donors/innerEnd/zones", four);
        await Laptop.Reaches(phone, job, "33 mm");
        await Phone.Expect(phone.Page.GetByText("Place 4: what is here?")).ToBeVisibleAsync();
        // The cursor is where it was: the hand goes on.
        await phone.Page.Keyboard.TypeAsync("8");
        await phone.Page.Keyboard.PressAsync("Enter");
        var said = await laptop.Until(job, d => Diameters(d).Contains("24.8 mm"));
        Assert.Equal(["27 mm", "24 mm", "26 mm", "24.8 mm"], Diameters(said));
    }

    [Fact]
    public async Task SlipOfThePen_IsOnTheRouteCard_WhichLeadsBackToItsBox()
    {
        using var laptop = new Laptop(bench.Address);
        var job = await laptop.Begin("Curlew, a slip at a place", Donors(Zones("25 mm")));
        await using var phone = await Walking(job, "Curlew, a slip at a place");
        // The ± opens as a box in the place of a button: what is typed at once is meant for it.
        await phone.Press("Diameter: ± 0.05 mm, caliper. Change it");
        await phone.Page.Keyboard.TypeAsync("0.1");
        await Phone.Expect(phone.Page.GetByLabel("give or take")).ToHaveValueAsync("0.1");
        await phone.Type("Diameter", "24.8.5");
        await phone.Follow("job/" + job);
        var card = phone.Page.Locator("#walk-donors");
        await Phone
            .Expect(card)
            .ToContainTextAsync(
                "typed for the inner-end shaft's place 3, its diameter, is only on this phone and not in the job."
            );
        await phone.Look("route-card-kept-back");
        await card.GetByRole(AriaRole.Link, new() { Name = "Put it right" }).ClickAsync();
        var box = phone.Page.GetByRole(AriaRole.Textbox, new() { Name = "Diameter", Exact = true });
        await Phone.Expect(box).ToBeFocusedAsync();
        await Phone.Expect(box).ToHaveValueAsync("24.8.5");
        await phone.Type("Diameter", "24.85");
        await phone.Page.Keyboard.PressAsync("Enter");
        await laptop.Until(
            job,
            d => Diameters(d)[2]!.StartsWith("24.85", StringComparison.Ordinal)
        );
        await phone.Follow("job/" + job);
        await Phone.Expect(card).Not.ToContainTextAsync("not in the job");
    }

    private async Task<Phone> Walking(string job, string name)
    {
        var phone = await bench.Phone();
        await phone.Open("job/" + job);
        await phone.Asked(name);
        await phone.Follow($"job/{job}/two-shafts/inner-end");
        await phone.Asked("Walk the shaft that gives the inner (power unit) end.");
        return phone;
    }

    private static JsonObject Donors(JsonArray zones) =>
        new()
        {
            ["donors"] = new JsonObject
            {
                ["innerEnd"] = new JsonObject { ["name"] = "a", ["zones"] = zones },
            },
        };

    private static JsonObject Zone(string kind, string until, string diameter) =>
        new()
        {
            ["kind"] = kind,
            ["until"] = until,
            ["diameter"] = diameter,
        };

    private static List<string?> Diameters(JsonNode document) =>
        [
            .. document["donors"]!["innerEnd"]!["zones"]!
                .AsArray()
                .Select(z => (string?)z!["diameter"]),
        ];
}
