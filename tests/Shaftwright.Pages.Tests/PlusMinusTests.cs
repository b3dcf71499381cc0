using Shaftwright.Pages.Doors;

namespace Shaftwright.Pages.Tests;

/// <summary>A value and its ± are one measure: the job holds what the screen shows, no more and no less.</summary>
public class PlusMinusTests
{
    private const string Two = """
        {"weld":{"innerDiameter":"26.2 ± 0.05 mm","outerDiameter":"25.3 mm"}}
        """;

    [Fact]
    public async Task TypedWithTheValue_GoesWithIt_WhenTheValueIsTypedAnew()
    {
        await using var hand = await Hand.At<EndsInAVee>(Two);
        await hand.Type("outer", "25.35 ± 0.005 mm");
        Assert.Equal("25.35 ± 0.005 mm", Outer(hand));
        await hand.Type("outer", "25.4 mm");
        Assert.Equal("25.4 mm", Outer(hand));
        await hand.Type("outer", "25.35 ± 0.005 mm");
        await hand.Type("outer", "25.35 mm");
        Assert.Equal("25.35 mm", Outer(hand));
        Assert.False(hand.Leaves);
    }

    [Fact]
    public async Task Undone_IsWhatStoodThereBefore()
    {
        await using var hand = await Hand.At<EndsInAVee>(Two);
        await hand.Type("outer", "25.35 ± 0.005 mm");
        await hand.Type("outer", "25.4 mm");
        await hand.Undo();
        Assert.Equal("25.35 ± 0.005 mm", Outer(hand));
        await hand.Undo();
        Assert.Equal("25.3 mm", Outer(hand));
        Assert.False(hand.Leaves);
    }

    [Fact]
    public async Task InABoxOfItsOwn_StaysWhileItIsOnTheScreen()
    {
        await using var hand = await Hand.At<EndsInAVee>(Two);
        Assert.Equal("0.05 mm", hand.Shown("inner" + Draft.PlusMinus));
        await hand.Type("inner", "26.4 mm");
        Assert.Equal("26.4 ± 0.05 mm", Inner(hand));
        await hand.Type("inner" + Draft.PlusMinus, "");
        Assert.Equal("26.4 mm", Inner(hand));
        await hand.Type("inner", "26.5 +/- 0.01 mm");
        Assert.False(hand.Leaves);
        await hand.Open<EndsInAVee>();
        Assert.Equal(
            ("26.5 mm", "0.01 mm"),
            (hand.Shown("inner"), hand.Shown("inner" + Draft.PlusMinus))
        );
    }

    [Fact]
    public async Task ChangedElsewhere_IsFollowed_ThoughItWasTypedWithTheValue()
    {
        await using var hand = await Hand.At<EndsInAVee>(Two);
        await hand.Type("outer", "25.35 ± 0.005 mm");
        await hand.Elsewhere(job => job["weld"]!["outerDiameter"] = "25.35 ± 0.01 mm");
        await hand.Type("inner", "26.4 mm");
        Assert.Equal("25.35 ± 0.01 mm", Outer(hand));
        Assert.Equal("0.01 mm", hand.Shown("outer" + Draft.PlusMinus));
    }

    private static string Inner(Hand hand) => hand.Job.Weld!.InnerDiameter!.Typed;

    private static string Outer(Hand hand) => hand.Job.Weld!.OuterDiameter!.Typed;
}
