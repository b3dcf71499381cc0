using System.Text.Json.Nodes;
using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Measures;
using Shaftwright.Pages.Doors;

namespace Shaftwright.Pages.Tests;

/// <summary>The stands door on a job: each question belongs to one reading for as long as the door is open.</summary>
public class CarOnStandsTests
{
    private const string Travel = "droop/travel";

    private const string FiveHeights = """
        {"corner":{"trialLength":"404 mm","readings":[
          {"travel":"-95 mm","in":"12.5 mm","out":"6.5 mm","innerAngle":"13°"},
          {"travel":"-45 mm","in":"8.5 mm","out":"16.5 mm","innerAngle":"5.5°"},
          {"travel":"0 mm","in":"8 mm","out":"18 mm","innerAngle":"0°"},
          {"travel":"40 mm","in":"10.5 mm","out":"14 mm","innerAngle":"6.5°"},
          {"travel":"80 mm","in":"15.5 mm","out":"4 mm","innerAngle":"12.5°"}],
          "conditions":{"stubPushedHome":true}}}
        """;

    private const string SteepDroop = """
        {"corner":{"trialLength":"412 mm","readings":[
          {"travel":"-90 mm","in":"14 mm","out":"10 mm","innerAngle":"12°","outerAngle":"44°"},
          {"travel":"0 mm","in":"10 mm","out":"16 mm","innerAngle":"3°","outerAngle":"5°"},
          {"travel":"70 mm","in":"13 mm","out":"12 mm","innerAngle":"11°","outerAngle":"20°"}]},
         "joints":{"inner":{"kind":"plungingTripod","angleLimit":"22°"},"outer":{"kind":"fixed","angleLimit":"40°"}}}
        """;

    [Fact]
    public async Task Droop_TypoPutRight_OnAJobWithFiveHeights_ChangesNoOtherReading()
    {
        await using var hand = await Hand.At<CarOnStands>(FiveHeights);
        await hand.Type(Travel, "40 mm");
        Assert.Equal(["-40 mm", "-45 mm", "0 mm", "40 mm", "80 mm"], Travels(hand));
        await hand.Type(Travel, "95 mm");
        Assert.Equal(Of(FiveHeights), Readings(hand));
    }

    [Fact]
    public async Task Droop_EmptiedOnAJobWithFiveHeights_LeavesTheNextLowestAlone()
    {
        await using var hand = await Hand.At<CarOnStands>(FiveHeights);
        await hand.Type("droop/in", "");
        await hand.Type("droop/out", "");
        await hand.Type("ride/in", "8.5 mm");
        await hand.Type("ride/in", "8.2 mm");
        Assert.Equal(
            Of(
                FiveHeights
                    .Replace("\"in\":\"12.5 mm\",\"out\":\"6.5 mm\",", "", StringComparison.Ordinal)
                    .Replace("\"in\":\"8 mm\"", "\"in\":\"8.2 mm\"", StringComparison.Ordinal)
            ),
            Readings(hand)
        );
        await hand.Type("droop/in", "12.5 mm");
        await hand.Type("droop/out", "6.5 mm");
        await hand.Type("ride/in", "8 mm");
        Assert.Equal(Of(FiveHeights), Readings(hand));
    }

    [Fact]
    public async Task DroopTravel_EmptiedAndTypedAgain_KeepsTheAnglesReadThere()
    {
        await using var hand = await Hand.At<CarOnStands>(SteepDroop);
        var stops = Stops(hand);
        Assert.NotEmpty(stops);
        await hand.Type(Travel, "");
        Assert.Equal(Of(SteepDroop), Readings(hand));
        Assert.Equal("", hand.Shown(Travel));
        Assert.Equal(stops, Stops(hand));
        await hand.Type(Travel, "92 mm");
        Assert.Equal(
            Of(SteepDroop.Replace("-90 mm", "-92 mm", StringComparison.Ordinal)),
            Readings(hand)
        );
        Assert.Equal(stops.Count, Stops(hand).Count);
    }

    [Fact]
    public async Task InAndOut_Emptied_TakeOnlyThemselvesOut()
    {
        const string Rich = """
            {"corner":{"trialLength":"412 mm","readings":[
              {"travel":"-90 mm","in":"14 mm","out":"10 mm","distance":"410 mm","innerAngle":"12°","outerAngle":"15°"},
              {"travel":"70 mm","in":"13 mm","out":"12 mm"}]}}
            """;
        await using var hand = await Hand.At<CarOnStands>(Rich);
        foreach (var key in (string[])["droop/in", "droop/out", "bump/in", "bump/out"])
            await hand.Type(key, "");
        // A reading of which nothing is left but its height is none.
        Assert.Equal(
            Of(
                """
                {"corner":{"readings":[{"travel":"-90 mm","distance":"410 mm","innerAngle":"12°","outerAngle":"15°"}]}}
                """
            ),
            Readings(hand)
        );
    }

    [Theory]
    [InlineData("+90 mm", "-90 mm")]
    [InlineData("+ 90 ± 1 mm", "-90 ± 1 mm")]
    public async Task DroopTravel_WithAPlusBeforeIt_IsBelowRideHeightAllTheSame(
        string typed,
        string kept
    )
    {
        await using var hand = await Hand.At<CarOnStands>(
            """{"corner":{"trialLength":"412 mm"}}"""
        );
        await hand.Type(Travel, typed);
        await hand.Type("droop/in", "14 mm");
        await hand.Type("droop/out", "10 mm");
        await hand.Type("bump/travel", "+70 mm");
        await hand.Type("bump/in", "13 mm");
        Assert.Equal([kept, "70 mm"], Travels(hand));
        Assert.False(hand.Leaves);
    }

    [Theory]
    [InlineData("droop", "0 mm", "below", 1)]
    [InlineData("droop", "-0 mm", "below", 1)]
    [InlineData("droop", "0 ± 2 mm", "below", 1)]
    [InlineData("bump", "0 mm", "above", 3)]
    public async Task Travel_OfNothing_IsRefused_AndNoQuestionTakesAnothersReading(
        string question,
        string typed,
        string way,
        int step
    )
    {
        await using var hand = await Hand.At<CarOnStands>(SteepDroop);
        await hand.Type(question + "/travel", typed);
        Assert.Equal(Of(SteepDroop), Readings(hand));
        await hand.Open<CarOnStands>(at: hand.Door.Steps[step].Slug);
        Assert.Equal(("10 mm", typed), (hand.Shown("ride/in"), hand.Shown(question + "/travel")));
        Assert.Contains(
            $"“{typed}” is too small. Wanted: how far {way} ride height, from 0.1 to 400 mm.",
            await hand.Screen(),
            StringComparison.Ordinal
        );
        await hand.Type("droop/in", "14.5 mm");
        Assert.Equal(
            ["-90 mm 14.5 mm", "0 mm 10 mm", "70 mm 13 mm"],
            Readings(hand).Select(r => $"{r.Travel} {r.In}")
        );
    }

    [Fact]
    public async Task Travel_OfNothing_TypedFirst_MakesNoReading()
    {
        await using var hand = await Hand.At<CarOnStands>(
            """{"corner":{"trialLength":"412 mm"}}"""
        );
        await hand.Type("droop/in", "14 mm");
        await hand.Type(Travel, "0");
        await hand.Type("bump/travel", "0");
        await hand.Type("bump/in", "13 mm");
        Assert.Empty(Readings(hand));
        Assert.True(hand.Leaves);
    }

    [Fact]
    public async Task Droop_ChangedElsewhereMeanwhile_FollowsItsOwnReading()
    {
        await using var hand = await Hand.At<CarOnStands>(FiveHeights);
        await hand.Elsewhere(job =>
        {
            var readings = job["corner"]!["readings"]!.AsArray();
            readings.RemoveAt(1);
            readings.Insert(0, JsonNode.Parse("""{"travel":"-20 mm","in":"9 mm","out":"17 mm"}"""));
            readings.Insert(
                0,
                JsonNode.Parse("""{"travel":"-110 mm","in":"14 mm","out":"5 mm"}""")
            );
        });
        Assert.Equal("95 mm", hand.Shown(Travel));
        await hand.Type(Travel, "96 mm");
        Assert.Equal(["-110 mm", "-20 mm", "-96 mm", "0 mm", "40 mm", "80 mm"], Travels(hand));
    }

    [Fact]
    public async Task DontKnow_PickedOverATripod_IsDontKnowInTheJob()
    {
        await using var hand = await Hand.At<CarOnStands>(SteepDroop);
        await hand.Type("inner/kind", "");
        var inner = hand.Document["joints"]!["inner"]!;
        Assert.Equal(JointKind.Unknown, hand.Job.Joints!.Inner!.Kind);
        Assert.Equal("22°", (string?)inner["angleLimit"]);
        await hand.Open<CarOnStands>();
        Assert.Equal("", hand.Shown("inner/kind"));
    }

    [Theory]
    [InlineData("shaft", "In and out read along the shaft")]
    [InlineData("innerAxis", "In and out read along the inner joint's axis")]
    public async Task Answer_SaysAlongWhichLineTheJobWasRead(string line, string said)
    {
        await using var hand = await Hand.At<CarOnStands>(
            FiveHeights.Replace(
                "\"readings\"",
                $"\"readAlong\":\"{line}\",\"readings\"",
                StringComparison.Ordinal
            ),
            at: "answer"
        );
        Assert.Contains(said, await hand.Screen(), StringComparison.Ordinal);
        Assert.Contains(
            "2 more readings of the job count too",
            await hand.Screen(),
            StringComparison.Ordinal
        );
    }

    private static List<string?> Travels(Hand hand) =>
        [.. hand.Document["corner"]!["readings"]!.AsArray().Select(r => (string?)r!["travel"])];

    private static IReadOnlyList<TrialReading> Readings(Hand hand) => hand.Job.Corner!.Readings;

    private static IReadOnlyList<TrialReading> Of(string job) => Hand.Read(job).Corner!.Readings;

    private static List<string> Stops(Hand hand) =>
        [
            .. (hand.Evaluated().Joints?.Findings ?? [])
                .Concat(hand.Evaluated().Length?.Findings ?? [])
                .Where(f => f.Severity == Severity.Stop)
                .Select(f => f.Text.In(Display.Metric)),
        ];
}
