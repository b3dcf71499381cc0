using Shaftwright.Pages.Doors;

namespace Shaftwright.Pages.Tests;

/// <summary>What was typed at a door and the job would not take: the route card says so, and leads back to it.</summary>
public class KeptBackTests
{
    private const string Shafts = """
        {"donors":{"innerEnd":{"name":"a","zones":[
          {"kind":"spline","until":"30 mm","diameter":"27 mm"},
          {"kind":"plain","until":"200 mm","diameter":"26 mm"}]}}}
        """;

    [Fact]
    public async Task ASlipOfThePen_IsSaidAtItsOperation_UntilItIsPutRight()
    {
        await using var hand = await Hand.At<TwoShafts>(Shafts, at: "inner-end");
        await hand.Type("inner/1/diameter", "26,4,4 mm");
        var at = Operation(await hand.Card(), "walk-donors");
        Assert.Contains(
            "“26,4,4 mm”, typed for the inner-end shaft's place 2, its diameter, is only on this phone and not in the job.",
            at,
            StringComparison.Ordinal
        );
        Assert.Contains("Wanted: ", at, StringComparison.Ordinal);
        Assert.Contains("href=\"job/1/two-shafts/inner-end\"", at, StringComparison.Ordinal);
        await hand.Type("inner/1/diameter", "26.4 mm");
        Assert.DoesNotContain("not in the job", await hand.Card(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task OutOfOrder_IsSaidWithWhatTheJobSays()
    {
        await using var hand = await Hand.At<TwoShafts>(Shafts, at: "inner-end");
        await hand.Refused("inner/1/until", "20 mm");
        var at = Operation(await hand.Card(), "walk-donors");
        Assert.Contains("“20 mm”, typed for", at, StringComparison.Ordinal);
        Assert.Contains("does not l", at, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ItsPlaceTakenOutElsewhere_IsSaid_AndPutAway_IsGone()
    {
        await using var hand = await Hand.At<TwoShafts>(Shafts, at: "inner-end");
        await hand.Use<TwoShafts>(d => d.Draft.Set("inner/1/diameter", "26.4 mm"));
        await hand.Elsewhere(job => job["donors"]!["innerEnd"]!["zones"]!.AsArray().RemoveAt(1));
        await hand.Use<TwoShafts>(d => d.Draft.Settle());
        Assert.Contains(
            "The place it was typed at (Plain to 200 mm, ⌀ 26 mm) was taken out elsewhere.",
            Operation(await hand.Card(), "walk-donors"),
            StringComparison.Ordinal
        );
        await hand.Use<Walk>(w => w.Empty(1));
        Assert.DoesNotContain("not in the job", await hand.Card(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task NoDroopAtAll_IsSaidWhereTheCarIsMeasured()
    {
        await using var hand = await Hand.At<CarOnStands>("{}", at: "droop");
        await hand.Type("droop/travel", "0 mm");
        var at = Operation(await hand.Card(), "measure-car");
        Assert.Contains("“0 mm”, typed for", at, StringComparison.Ordinal);
        Assert.Contains("href=\"job/1/car-on-stands/droop\"", at, StringComparison.Ordinal);
    }

    [Fact]
    public async Task APlaceHalfWalked_IsNoRefusal()
    {
        await using var hand = await Hand.At<TwoShafts>(Shafts, at: "inner-end");
        await hand.Use<Walk>(w => _ = w.Add());
        await hand.Type("inner/2/until", "300 mm");
        Assert.True(hand.Leaves);
        Assert.DoesNotContain("not in the job", await hand.Card(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("car-on-stands/droop", "measure-car")]
    [InlineData("two-shafts/outer-end", "walk-donors")]
    [InlineData("two-shafts/answer", "cut")]
    [InlineData("ends-in-a-vee/inner", "set-up")]
    [InlineData("under-the-dial/readings?turn=t1", "true-butt")]
    [InlineData("under-the-dial/readings?turn=new&moment=Sleeved", "true-sleeved")]
    [InlineData("weld-to-test/steps?test=x&for=crack-test-butt", "crack-test-butt")]
    [InlineData("the-moon", null)]
    public void OperationAt_AScreen_IsWhereItsReadingsBelong(string screen, string? operation)
    {
        var job = Hand.Read("""{"truing":{"turns":[{"id":"t1","moment":"buttWelded"}]}}""");
        Assert.Equal(operation, Cards.Ways.OperationAt(screen, job, Codes(job)));
    }

    private static List<string> Codes(Job job) =>
        [
            .. JobFile
                .RouteCard.Of(JobFile.JobDocument.Empty with { Job = job }, Workflow.Evaluate(job))
                .Operations.Select(o => o.Code),
        ];

    /// <summary>What stands at an operation before the part that folds away.</summary>
    private static string Operation(string card, string code)
    {
        var from = card.IndexOf($"id=\"{code}\"", StringComparison.Ordinal);
        return card[from..card.IndexOf($"id=\"{code}-more\"", StringComparison.Ordinal)];
    }
}
