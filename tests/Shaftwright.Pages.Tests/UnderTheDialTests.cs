using Shaftwright.Measures;
using Shaftwright.Pages.Doors;
using Shaftwright.Truing;

namespace Shaftwright.Pages.Tests;

/// <summary>Turn after turn under the dial: what a new one takes over, and what it must not.</summary>
public class UnderTheDialTests
{
    private const string Bent = """
        {"truing":{"turns":[{"id":"one","moment":"buttWelded","afterStroke":2,"support":"vees","veeAngle":"90°",
        "station":"140 mm","firstSupportAt":"60 mm","secondSupportAt":"410 mm","limit":"0.12 mm",
        "readings":[{"angle":"0°","dial":"0.10 mm"},{"angle":"120°","dial":"0.20 mm"},{"angle":"240°","dial":"0.05 mm"}]}],
        "weldAt":"228 mm","overallLength":"470 mm"}}
        """;

    [Fact]
    public async Task AnotherStation_OfTheSameState_SharesItsSupportsLayerAndStrokes()
    {
        await using var hand = await Hand.At<UnderTheDial>(Bent, "turn=two&like=one", "readings");
        await hand.Type("station", "250");
        for (var i = 0; i < 3; i++)
            await hand.Type($"r/{45 * i}°/dial", "0.1");
        var (one, two) = (hand.Job.Truing!.Turns[0], hand.Job.Truing.Turns[1]);
        Assert.Equal("two", two.Id);
        Assert.Equal(250, two.Station!.Value);
        Assert.Equal(3, two.Readings.Count);
        Assert.Equal(one with { Id = two.Id, Station = two.Station, Readings = two.Readings }, two);
        Assert.Equal(228, hand.Job.Truing.WeldAt!.Value);
    }

    [Fact]
    public async Task ANewTurn_FromTheCard_TakesItsMomentAndOnlyTheSupports()
    {
        await using var hand = await Hand.At<UnderTheDial>(
            Bent,
            "turn=two&moment=Sleeved",
            "readings"
        );
        await hand.Type("r/0°/dial", "0.1");
        var two = hand.Job.Truing!.Turns[1];
        Assert.Equal(Moment.Sleeved, two.Moment);
        Assert.Equal(60, two.FirstSupportAt!.Value);
        Assert.Equal(Support.Vees, two.Support);
        // A pressed shaft is never called the unpressed one, nor is another moment's limit taken.
        Assert.Null(two.AfterStroke);
        Assert.Null(two.Limit);
        Assert.Null(two.Station);
    }

    [Fact]
    public async Task Counts_EmptiedAndNonsense_AreNotCounted()
    {
        await using var hand = await Hand.At<UnderTheDial>(Bent, "turn=one");
        await hand.Type("strokes", "3");
        Assert.Equal(3, hand.Job.Truing!.Turns[0].AfterStroke);
        await hand.Type("strokes", "");
        Assert.Null(hand.Job.Truing.Turns[0].AfterStroke);
        await hand.Type("layer", "2");
        Assert.Equal(2, hand.Job.Truing.Turns[0].Layer);
        await hand.Undo();
        Assert.Null(hand.Job.Truing.Turns[0].Layer);
    }

    [Fact]
    public async Task Kept_InAJobThatKnowsTheWeld_TakesNothingOutOfIt()
    {
        await using var hand = await Hand.Without<UnderTheDial>("readings");
        for (var i = 0; i < 4; i++)
            await hand.Type($"r/{45 * i}°/dial", "0.1");
        var kept = hand.Door.Hand(Hand.Read(Bent), "new");
        Assert.Equal(["one", "new"], kept.Truing!.Turns.Select(t => t.Id));
        Assert.Equal(228, kept.Truing.WeldAt!.Value);
        Assert.Equal(470, kept.Truing.OverallLength!.Value);
    }
}
