using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Shaftwright.Measures;
using Shaftwright.Pages.Components;
using Shaftwright.Pages.Doors;

namespace Shaftwright.Pages.Tests;

/// <summary>Which place around the shaft is in hand, and what the keypad does to what was read there already.</summary>
public partial class DialInHandTests
{
    private const string Turn = "turn=x1";

    private const string ThreeRead = """
        {"truing":{"turns":[{"id":"x1","moment":"buttWelded","support":"centres","readings":[
          {"angle":"0°","dial":"0.1 mm"},{"angle":"45°","dial":"0.2 mm"},{"angle":"90°","dial":"0.3 mm"}]}]}}
        """;

    [Fact]
    public async Task Opened_TheFirstOpenPlaceIsInHand_AndTheKeypadTypesThere()
    {
        await using var hand = await Hand.At<UnderTheDial>(ThreeRead, Turn, "readings");
        Assert.Equal("135°", await InHand(hand));
        await Press(hand, "0", ".", "7");
        Assert.Equal("135°", await InHand(hand));
        Assert.Equal("0.1 mm 0.2 mm 0.3 mm 0.7 mm", Dials(hand));
    }

    [Theory]
    [InlineData("12", "30°")]
    [InlineData("6", "60°")]
    [InlineData("4", "180°")]
    public async Task AnotherNumberPicked_TheFirstOpenPlaceIsInHand(string count, string open)
    {
        await using var hand = await Hand.At<UnderTheDial>(ThreeRead, Turn, "readings");
        await hand.Use<UnderTheDial>(d => _ = d.Touch("r/45°"));
        Assert.Equal("45°", await InHand(hand));
        await hand.Type("count", count);
        Assert.Equal(open, await InHand(hand));
        await Press(hand, "7");
        Assert.StartsWith("0.1 mm", Dials(hand), StringComparison.Ordinal);
        Assert.Contains("0.2 mm", Dials(hand), StringComparison.Ordinal);
        Assert.Contains("7 mm", Dials(hand), StringComparison.Ordinal);
    }

    [Fact]
    public async Task CameToByNext_APlaceReadAlready_BeginsANewValue_AndGoesOnWithThat()
    {
        await using var hand = await Hand.At<UnderTheDial>(ThreeRead, Turn, "readings");
        await hand.Use<UnderTheDial>(d => _ = d.Touch("r/0°"));
        await hand.Use<Pad>(p => _ = p.OnNext.InvokeAsync());
        Assert.Equal("45°", await InHand(hand));
        await Press(hand, "0", ".", "1", "7");
        Assert.Equal("0.1 mm 0.17 mm 0.3 mm", Dials(hand));
    }

    [Fact]
    public async Task Touched_APlaceReadAlready_BeginsANewValue_AndDeleteTakesOneSignBack()
    {
        await using var hand = await Hand.At<UnderTheDial>(ThreeRead, Turn, "readings");
        await hand.Use<UnderTheDial>(d => _ = d.Touch("r/0°"));
        await Press(hand, "0", ".", "7");
        Assert.Equal("0.7 mm 0.2 mm 0.3 mm", Dials(hand));
        await hand.Use<Pad>(p => _ = p.OnNext.InvokeAsync());
        await Press(hand, "⌫", "4");
        Assert.Equal("0.7 mm 0.4 mm 0.3 mm", Dials(hand));
        // Typed here a moment ago it is read as well, once it is touched again.
        await hand.Use<UnderTheDial>(d => _ = d.Touch("r/45°"));
        await Press(hand, "5");
        Assert.Equal("0.7 mm 5 mm 0.3 mm", Dials(hand));
    }

    [Fact]
    public async Task SwitchedToInchInMidValue_TheKeypadGoesOnInTheUnitItBeganIn()
    {
        await using var hand = await Hand.At<UnderTheDial>(ThreeRead, Turn, "readings");
        await hand.Use<Pad>(p => p.Press("0"));
        await hand.Use<Pad>(p => p.Press("."));
        await hand.Use<Pad>(p => p.Press("1"));
        await hand.Use<UnderTheDial>(d => _ = d.Preferences.Show(Display.Inch));
        await Press(hand, "2");
        Assert.Equal("0.1 mm 0.2 mm 0.3 mm 0.12 mm", Dials(hand));
        await Press(hand, "⌫", "⌫");
        Assert.Equal("0. mm", hand.Shown("r/135°/dial"));
        await hand.Use<UnderTheDial>(d => _ = d.Touch("r/90°"));
        await Press(hand, "1", "2");
        Assert.Equal("12 thou", hand.Shown("r/90°/dial"));
    }

    [Fact]
    public async Task ReadElsewhereMeanwhile_ThePlaceInHandStays_AndBeginsANewValue()
    {
        await using var hand = await Hand.At<UnderTheDial>(ThreeRead, Turn, "readings");
        await hand.Elsewhere(document =>
        {
            foreach (var angle in (string[])["135°", "30°"])
                document["truing"]!["turns"]![0]!["readings"]!
                    .AsArray()
                    .Add((JsonNode)new JsonObject { ["angle"] = angle, ["dial"] = "0.5 mm" });
        });
        Assert.Equal("135°", await InHand(hand));
        await Press(hand, "0", ".", "4");
        Assert.Equal("135°", await InHand(hand));
        Assert.Equal("0.1 mm 0.2 mm 0.3 mm 0.4 mm 0.5 mm", Dials(hand));
    }

    [Fact]
    public async Task AllRead_NoneIsInHand_UntilOneIsTouched()
    {
        await using var hand = await Hand.At<UnderTheDial>(ThreeRead, Turn, "readings");
        for (var i = 3; i < 8; i++)
            await hand.Type($"r/{45 * i}°/dial", "0.4 mm");
        await hand.Open<UnderTheDial>(Turn, "readings");
        Assert.Null(await InHand(hand));
        Assert.Contains("All are read.", await hand.Screen(), StringComparison.Ordinal);
        Assert.False(hand.Door.Handles());
        await hand.Use<UnderTheDial>(d => _ = d.Touch("r/90°"));
        Assert.Equal("90°", await InHand(hand));
    }

    private static async Task Press(Hand hand, params string[] keys)
    {
        foreach (var key in keys)
            await hand.Use<Pad>(p => p.Press(key));
        await hand.Use<UnderTheDial>(d => d.Draft.Settle());
    }

    /// <summary>The angle whose box is on the screen; null when none is.</summary>
    private static async Task<string?> InHand(Hand hand) =>
        Box().Match(await hand.Screen()) is { Success: true } box ? box.Groups[1].Value : null;

    private static string Dials(Hand hand) =>
        string.Join(' ', hand.Job.Truing!.Turns[0].Readings.Select(r => r.Dial!.Typed));

    [GeneratedRegex("<input id=\"q-r-([^\"]*)-dial\"")]
    private static partial Regex Box();
}
