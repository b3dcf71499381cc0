using System.Text.Json.Nodes;
using Shaftwright.Pages.Doors;

namespace Shaftwright.Pages.Tests;

/// <summary>The shaft walked on one device while another changes its list: what is typed belongs to the place it was read at.</summary>
public class ShaftPlacesTests
{
    private const string Three = """
        {"donors":{"innerEnd":{"name":"a","zones":[
          {"kind":"spline","until":"30 mm","diameter":"27 mm"},
          {"kind":"plain","until":"200 mm","diameter":"26 mm"},
          {"kind":"plain","until":"300 mm","diameter":"25 mm"}]}}}
        """;

    private const string Groove = """{"kind":"groove","until":"33 mm","diameter":"24 mm"}""";

    [Fact]
    public async Task TypedAndNotLeft_AGrooveComesInBefore_GoesToThePlaceItWasReadAt()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Use<TwoShafts>(d => d.Draft.Set("inner/2/diameter", "24.8 mm"));
        await hand.Elsewhere(job => Zones(job).Insert(1, JsonNode.Parse(Groove)));
        Assert.Equal("24.8 mm", hand.Shown("inner/2/diameter"));
        Assert.Equal("300 mm", hand.Shown("inner/2/until"));
        Assert.Contains("Place 4: what is here?", await hand.Screen(), StringComparison.Ordinal);
        await hand.Use<TwoShafts>(d => d.Draft.Settle());
        Assert.Equal(["30 27", "33 24", "200 26", "300 24.8"], Said(hand));
        Assert.False(hand.Leaves);
    }

    [Fact]
    public async Task ThePlaceInHand_AGrooveComesInBefore_StaysInHand()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Elsewhere(job => Zones(job).Insert(1, JsonNode.Parse(Groove)));
        await hand.Type("inner/2/diameter", "24.8 mm");
        await hand.Type("inner/1/until", "205 mm");
        Assert.Equal(["30 27", "33 24", "205 26", "300 24.8"], Said(hand));
        var screen = await hand.Screen();
        Assert.Contains("2. Groove to 33 mm, ⌀ 24 mm", screen, StringComparison.Ordinal);
        Assert.Contains("4. Plain to 300 mm, ⌀ 24.8 mm", screen, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TypedAndNotLeft_ThePlaceIsTakenOutElsewhere_IsInNoShaft_AndIsKept()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Use<TwoShafts>(d => d.Draft.Set("inner/1/diameter", "24.8 mm"));
        await hand.Elsewhere(job => Zones(job).RemoveAt(1));
        await hand.Use<TwoShafts>(d => d.Draft.Settle());
        Assert.Equal(["30 27", "300 25"], Said(hand));
        Assert.Contains(Lost, await hand.Screen(), StringComparison.Ordinal);
        // Opened anew, and with another place where it stood, it is offered to none.
        await hand.Open<TwoShafts>(at: "inner-end");
        await hand.Elsewhere(job => Zones(job).Insert(1, JsonNode.Parse(Groove)));
        await hand.Type("inner/name", "b");
        Assert.Equal(["30 27", "33 24", "300 25"], Said(hand));
        Assert.Empty(hand.Door.Clashes);
        Assert.Contains(Lost, await hand.Screen(), StringComparison.Ordinal);
        Assert.True(hand.Leaves);
    }

    [Fact]
    public async Task APlaceIsReplacedElsewhere_WhatWasTypedAtTheOldOne_IsNotHandedOn()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Use<TwoShafts>(d => d.Draft.Set("inner/1/diameter", "24.8 mm"));
        await hand.Elsewhere(job => Zones(job)[1] = JsonNode.Parse(Groove));
        await hand.Use<TwoShafts>(d => d.Draft.Settle());
        Assert.Equal(["30 27", "33 24", "300 25"], Said(hand));
        Assert.Contains(Lost, await hand.Screen(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task APlaceIsPutRightElsewhere_GoesByTheSameNumber()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Elsewhere(job =>
        {
            Zones(job)[1]!["until"] = "210 mm";
            Zones(job)[2]!["diameter"] = "25.2 mm";
            Zones(job).Insert(1, JsonNode.Parse(Groove));
        });
        await hand.Type("inner/1/diameter", "26.1 mm");
        await hand.Type("inner/2/until", "310 mm");
        Assert.Equal(["30 27", "33 24", "210 26.1", "310 25.2"], Said(hand));
    }

    [Fact]
    public async Task TakenOutHere_AndUndone_IsBackWhereItWas_AlsoBesideANewOne()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Use<Walk>(w => w.TakeOut(1));
        Assert.Equal(["30 27", "300 25"], Said(hand));
        await hand.Elsewhere(job => Zones(job).Insert(1, JsonNode.Parse(Groove)));
        await hand.Undo();
        Assert.Equal(["30 27", "200 26", "300 25"], Said(hand).Where(z => z != "33 24"));
        Assert.Equal(4, Said(hand).Count);
        Assert.False(hand.Leaves);
    }

    [Fact]
    public async Task APlaceAddedHere_WhileOneIsAddedElsewhere_BothStay()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Use<Walk>(w => _ = w.Add());
        await hand.Elsewhere(job => Zones(job).Insert(1, JsonNode.Parse(Groove)));
        await hand.Type("inner/3/until", "400 mm");
        await hand.Type("inner/3/diameter", "28 mm");
        Assert.Equal(["30 27", "33 24", "200 26", "300 25", "400 28"], Said(hand));
        Assert.False(hand.Leaves);
    }

    [Fact]
    public async Task Refused_OutOfOrder_ThenMore_ThenPutRight_IsTheSamePlace()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Refused("inner/1/until", "20 mm");
        await hand.Refused("inner/1/diameter", "25.5 mm");
        Assert.Equal(["30 27", "200 26", "300 25"], Said(hand));
        await hand.Type("inner/1/until", "210 mm");
        Assert.Equal(["30 27", "210 25.5", "300 25"], Said(hand));
        Assert.False(hand.Leaves);
    }

    [Fact]
    public async Task Refused_AGrooveComesInWhileTheDoorIsShut_IsAtItsPlaceWhenOpenedAnew()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Type("inner/2/diameter", "25.5 mm");
        await hand.Refused("inner/2/until", "150 mm");
        await hand.Shut();
        await hand.Elsewhere(job => Zones(job).Insert(1, JsonNode.Parse(Groove)));
        await hand.Open<TwoShafts>(at: "inner-end");
        Assert.Contains(
            "4. Plain to 150 mm, ⌀ 25.5 mm",
            await hand.Screen(),
            StringComparison.Ordinal
        );
        Assert.Contains("Place 4: what is here?", await hand.Screen(), StringComparison.Ordinal);
        Assert.Empty(hand.Door.Clashes);
        await hand.Type("inner/2/until", "310 mm");
        Assert.Equal(["30 27", "33 24", "200 26", "310 25.5"], Said(hand));
        Assert.False(hand.Leaves);
    }

    [Fact]
    public async Task RefusedDiameter_PutRightElsewhereWhileTheDoorIsShut_IsStillAtItsPlace()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Type("inner/2/diameter", "24.8.5 mm");
        await hand.Shut();
        await hand.Elsewhere(job =>
        {
            Zones(job)[2]!["diameter"] = "24.9 mm";
            Zones(job).Insert(1, JsonNode.Parse(Groove));
        });
        await hand.Open<TwoShafts>(at: "inner-end");
        Assert.DoesNotContain(
            "was taken out elsewhere",
            await hand.Screen(),
            StringComparison.Ordinal
        );
        var (key, typed) = Assert.Single(hand.Door.Clashes);
        Assert.Equal(("inner/2/diameter", "24.8.5 mm"), (key, typed.Text));
        Assert.Equal("24.9 mm", hand.Shown("inner/2/diameter"));
    }

    [Fact]
    public async Task Undo_OfACorrectionOfWhatWasRefused_GoesBackToWhatTheJobSaid_InBoxAndJob()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Type("inner/2/diameter", "24,5,5 mm");
        await hand.Type("inner/1/diameter", "26.4 mm");
        await hand.Type("inner/2/diameter", "24,55 mm");
        Assert.Equal(["30 27", "200 26.4", "300 24,55"], Said(hand));
        await hand.Undo();
        Assert.Equal("25 mm", hand.Shown("inner/2/diameter"));
        Assert.Equal(["30 27", "200 26.4", "300 25"], Said(hand));
        await hand.Undo();
        Assert.Equal(["30 27", "200 26", "300 25"], Said(hand));
        Assert.False(hand.Leaves);
        // Opened with the slip in its box, there is nothing typed to go back to but what the job says.
        await hand.Type("inner/2/diameter", "24,5,5 mm");
        await hand.Open<TwoShafts>(at: "inner-end");
        await hand.Type("inner/2/diameter", "24,55 mm");
        await hand.Undo();
        Assert.Equal(["30 27", "200 26", "300 25"], Said(hand));
        Assert.Equal("25 mm", hand.Shown("inner/2/diameter"));
    }

    [Fact]
    public async Task APlaceHalfTyped_OneComesInWhileTheDoorIsShut_StaysAPlaceOfItsOwn()
    {
        await using var hand = await Hand.At<TwoShafts>(Three, at: "inner-end");
        await hand.Use<Walk>(w => _ = w.Add());
        await hand.Shut();
        await hand.Elsewhere(job => Zones(job).Insert(1, JsonNode.Parse(Groove)));
        await hand.Open<TwoShafts>(at: "inner-end");
        await hand.Type("inner/3/until", "400 mm");
        await hand.Type("inner/3/diameter", "28 mm");
        Assert.Equal(["30 27", "33 24", "200 26", "300 25", "400 28"], Said(hand));
        Assert.False(hand.Leaves);
    }

    [Fact]
    public async Task TheJobComesAfterTheDoorWasOpened_ItsLastPlaceIsInHand()
    {
        await using var hand = await Hand.At<TwoShafts>("{}", at: "inner-end");
        await hand.Elsewhere(job => job["donors"] = JsonNode.Parse(Three)!["donors"]!.DeepClone());
        Assert.Contains("Place 3: what is here?", await hand.Screen(), StringComparison.Ordinal);
    }

    private const string Lost =
        "“24.8 mm” is kept on this phone and is in no shaft: the place it was typed at (Plain to 200 mm, ⌀ 26 mm) was taken out elsewhere.";

    private static JsonArray Zones(JsonObject job) =>
        job["donors"]!["innerEnd"]!["zones"]!.AsArray();

    private static List<string> Said(Hand hand) =>
        [
            .. hand.Job.Donors!.InnerEnd!.Zones.Select(z =>
                $"{z.Until} {z.Diameter}".Replace(" mm", "", StringComparison.Ordinal)
            ),
        ];
}
