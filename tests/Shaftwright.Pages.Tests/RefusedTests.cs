using System.Globalization;
using Shaftwright.Pages.Components;
using Shaftwright.Pages.Doors;

namespace Shaftwright.Pages.Tests;

/// <summary>What is typed and refused counts in no answer, and every answer says so before anything else.</summary>
public class RefusedTests
{
    private const string ReadAllRound = """
        {"truing":{"turns":[{"id":"x1","moment":"buttWelded","support":"centres","readings":[
          {"angle":"0°","dial":"0.01 mm"},{"angle":"45°","dial":"0.02 mm"},{"angle":"90°","dial":"0.95 mm"},
          {"angle":"135°","dial":"0.02 mm"},{"angle":"180°","dial":"0.01 mm"},{"angle":"225°","dial":"0 mm"},
          {"angle":"270°","dial":"0 mm"},{"angle":"315°","dial":"0 mm"}]}]}}
        """;

    [Fact]
    public async Task Dial_WithoutAJob_OneReadingRefused_TheAnswerSaysSoFirst_AndIsNoVerdict()
    {
        await using var hand = await Hand.Without<UnderTheDial>("readings");
        for (var i = 0; i < 8; i++)
            await hand.Type(Dial(45 * i), i == 2 ? "0.9.5 mm" : "0.0" + i / 4 + " mm");
        await hand.Open<UnderTheDial>(at: "answer");
        var screen = await hand.Screen();
        var slip = screen.IndexOf(
            "Refused: “0.9.5 mm”, typed for the reading at 90°. ",
            StringComparison.Ordinal
        );
        Assert.InRange(slip, 0, screen.IndexOf("it runs out", StringComparison.Ordinal));
        Assert.Contains("The answer goes without it.", screen, StringComparison.Ordinal);
        Assert.Contains(
            "Not settled. Without what was refused it runs out",
            string.Join(' ', screen.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("Good as it is", screen, StringComparison.Ordinal);
        Assert.Equal("under-the-dial/readings", Assert.Single(hand.Door.Slips).Where);

        await hand.Type(Dial(90), "0.01 mm");
        screen = await hand.Screen();
        Assert.Empty(hand.Door.Slips);
        Assert.Contains("Good as it is: it runs out", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("efused", screen, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Dial_OnAJob_AReadingTypedOverAndRefused_IsSaid_WithWhatTheJobStillSays()
    {
        await using var hand = await Hand.At<UnderTheDial>(ReadAllRound, "turn=x1", "readings");
        await hand.Type(Dial(90), "0.9.5 mm");
        Assert.Equal("0.95 mm", hand.Job.Truing!.Turns[0].Readings[2].Dial!.Typed);
        await hand.Open<UnderTheDial>("turn=x1", "answer");
        var screen = await hand.Screen();
        Assert.Contains(
            "“0.9.5 mm”, typed for the reading at 90°",
            screen,
            StringComparison.Ordinal
        );
        Assert.Contains("The job still says 0.95 mm there.", screen, StringComparison.Ordinal);
        Assert.Contains("Not settled.", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("Good as it is", screen, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Dial_WayBackToARefusedReading_HasItInHand()
    {
        await using var hand = await Hand.At<UnderTheDial>(ReadAllRound, "turn=x1", "readings");
        await hand.Type(Dial(90), "0.9.5 mm");
        await hand.Open<UnderTheDial>("turn=x1", "readings");
        Assert.Contains("id=\"q-r-90°-dial\"", await hand.Screen(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task CarOnStands_PlayAndMarginRefused_AllAreSaid_AndNothingIsCalledNotMeasured()
    {
        await using var hand = await Hand.Without<CarOnStands>("trial-shaft");
        foreach (
            var (key, text) in ((string, string)[])
                [
                    ("trial", "412"),
                    ("droop/travel", "90"),
                    ("droop/in", "14"),
                    ("droop/out", "10"),
                    ("ride/in", "10"),
                    ("ride/out", "16"),
                    ("bump/travel", "70"),
                    ("bump/in", "13"),
                    ("bump/out", "12"),
                ]
        )
            await hand.Type(key, text);
        await hand.Open<CarOnStands>(at: "play");
        foreach (var key in (string[])["float", "towards", "away"])
            await hand.Type(key, "4..5");
        // In sight at the next question already: the number is no order any more.
        Assert.DoesNotContain("Make it", await hand.Screen(), StringComparison.Ordinal);
        await hand.Open<CarOnStands>(at: "margin");
        await hand.Type("margin", "8..0");
        await hand.Open<CarOnStands>(at: "answer");
        Assert.Equal(["float", "towards", "away", "margin"], hand.Door.Slips.Select(s => s.Key));
        Assert.Equal(
            ["car-on-stands/play", "car-on-stands/margin"],
            hand.Door.Slips.Select(s => s.Where).Distinct()
        );
        var screen = await hand.Screen();
        Assert.Contains("“4..5”, typed for the end float.", screen, StringComparison.Ordinal);
        Assert.Contains("“8..0”, typed for what stays unused.", screen, StringComparison.Ordinal);
        Assert.Contains("it would be", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("Make it", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("not measured", screen, StringComparison.Ordinal);
        Assert.Contains(
            "Taken as nothing because what was typed was refused: the end float and how far",
            screen,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Because what was typed was refused: No end float",
            screen,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task HalfANumber_WhileItIsTyped_IsNoSlip_UntilTheBoxIsLeft()
    {
        await using var hand = await Hand.Without<EndsInAVee>();
        await hand.Type("inner", "26");
        await hand.Use<EndsInAVee>(d => d.Draft.Set("outer", "1/"));
        Assert.Empty(hand.Door.Slips);
        await hand.Use<EndsInAVee>(d => d.Draft.Settle());
        Assert.Equal("outer", Assert.Single(hand.Door.Slips).Key);
    }

    [Fact]
    public async Task ListedBlades_OneRefused_IsSaid_WhileTheListIsPicked()
    {
        await using var hand = await Hand.Without<EndsInAVee>();
        await hand.Type("inner", "26");
        await hand.Type("outer", "25");
        await hand.Type("set", "Listed");
        await hand.Type("blades", "0.05 0.1.0 0.20");
        await hand.Open<EndsInAVee>(at: "answer");
        Assert.Contains("Not settled.", await hand.Screen(), StringComparison.Ordinal);
        Assert.Contains("“0.1.0 mm”", Assert.Single(hand.Door.Slips).Why, StringComparison.Ordinal);
        await hand.Type("set", "Metric20");
        Assert.Empty(hand.Door.Slips);
    }

    private static string Dial(int degrees) =>
        string.Create(CultureInfo.InvariantCulture, $"r/{degrees}°/dial");
}
