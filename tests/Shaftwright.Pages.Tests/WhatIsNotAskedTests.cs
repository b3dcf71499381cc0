using Shaftwright.Pages.Doors;

namespace Shaftwright.Pages.Tests;

/// <summary>A door takes nothing out of a job that it did not ask about.</summary>
public class WhatIsNotAskedTests
{
    [Fact]
    public async Task TwoShafts_OverallLengthChanged_LeavesZonesAndHardenedStretchesAsTheyAre()
    {
        const string Shafts = """
            {"donors":{"innerEnd":{"name":"a","steel":"mediumCarbon","zones":[
                {"kind":"spline","until":"30 mm","diameter":"27 mm","rootDiameter":"24 mm"},
                {"kind":"plain","until":"200 mm","diameter":"26 mm","endDiameter":"25 mm"},
                {"kind":"groove","until":"203 mm"}],"hardened":[{"from":"20 mm"},{"from":"150 mm","to":"170 mm"}]},
              "outerEnd":{"name":"b","zones":[{"kind":"plain","until":"250 mm","diameter":"25 mm"},{"kind":"plain"}]}},
             "cut":{"overallLength":"380 mm","rootGap":"2 mm"}}
            """;
        await using var hand = await Hand.At<TwoShafts>(Shafts);
        await hand.Type("overall", "381 mm");
        Same(Shafts.Replace("380", "381", StringComparison.Ordinal), hand);
    }

    [Fact]
    public async Task TwoShafts_FirstHardenedStretchEmptied_LeavesTheSecondAlone()
    {
        const string Shafts = """
            {"donors":{"innerEnd":{"name":"a","zones":[{"kind":"plain","until":"200 mm","diameter":"26 mm"}],
              "hardened":[{"from":"20 mm","to":"60 mm"},{"from":"150 mm","to":"170 mm","caseDepth":"2 mm"}]}},
             "cut":{"overallLength":"380 mm"}}
            """;
        await using var hand = await Hand.At<TwoShafts>(Shafts);
        await hand.Type("inner/hard/from", "");
        await hand.Type("inner/hard/to", "");
        await hand.Type("overall", "381 mm");
        Same(
            Shafts
                .Replace("380", "381", StringComparison.Ordinal)
                .Replace("""{"from":"20 mm","to":"60 mm"},""", "", StringComparison.Ordinal),
            hand
        );
        await hand.Type("inner/hard/from", "20 mm");
        await hand.Type("inner/hard/to", "60 mm");
        Same(Shafts.Replace("380", "381", StringComparison.Ordinal), hand);
    }

    [Fact]
    public async Task TwoShafts_PlaceOpenedAndLeftEmpty_IsNoneOfTheShaft()
    {
        const string Shafts = """
            {"donors":{"innerEnd":{"name":"a","zones":[{"kind":"plain","until":"200 mm","diameter":"26 mm"}]}}}
            """;
        await using var hand = await Hand.At<TwoShafts>(Shafts);
        await hand.Type("inner/1/kind", "Plain");
        await hand.Type("inner/1/until", "240 mm");
        Same(Shafts, hand);
        await hand.Type("inner/1/diameter", "25 mm");
        Same(
            Shafts.Replace(
                "}]",
                """},{"kind":"plain","until":"240 mm","diameter":"25 mm"}]""",
                StringComparison.Ordinal
            ),
            hand
        );
    }

    [Theory]
    [InlineData("\"bladeSet\":\"listed\",")]
    [InlineData("\"bladeSet\":\"metric20\",")]
    [InlineData("")]
    public async Task EndsInAVee_DiameterOrSetChanged_LeavesTheListOfBlades(string set)
    {
        var weld =
            "{\"weld\":{\"innerDiameter\":\"26.2 mm\",\"outerDiameter\":\"25.3 mm\","
            + set
            + "\"blades\":[\"0.05 mm\",\"0.4 mm\",\"0.45 mm\"]}}";
        await using var hand = await Hand.At<EndsInAVee>(weld);
        await hand.Type("outer", "25.4 mm");
        Same(weld.Replace("25.3", "25.4", StringComparison.Ordinal), hand);
        await hand.Type("set", "Metric13");
        await hand.Type("blades", "0.05; 0.4o; 0.45");
        Assert.Equal(3, hand.Job.Weld!.Blades.Count);
        await hand.Type("blades", "0.05; 0.41; 0.45");
        Assert.Equal("0.41", hand.Job.Weld!.Blades[1].Typed.Split(' ')[0]);
    }

    private static void Same(string expected, Hand hand) =>
        Assert.Equal(Hand.Written(Hand.Read(expected)), Hand.Written(hand.Job));
}
