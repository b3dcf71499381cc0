using Shaftwright.Pages.Doors;

namespace Shaftwright.Pages.Tests;

/// <summary>The length judged on many cars, where no laptop answers.</summary>
public sealed class ManyCarsTests
{
    private const string Stages = """
        {"corner":{"trialLength":"450 mm","readings":[
          {"travel":"-70 mm","in":"14 mm","out":"9 mm","innerAngle":"12°"},
          {"travel":"0 mm","in":"9 mm","out":"14 mm","innerAngle":"2°"},
          {"travel":"70 mm","in":"14 mm","out":"9 mm","innerAngle":"12°"}]}}
        """;

    [Fact]
    public async Task ManyCars_WithoutALaptop_RunFewerHereAndSaySo()
    {
        await using var hand = await Hand.At<CarOnStands>(Stages, at: "answer");
        Assert.Contains("Try it on many cars", await hand.Screen(), StringComparison.Ordinal);
        var run = Task.CompletedTask;
        await hand.Use<ManyCars>(cars => run = cars.Start());
        await run;
        var screen = await hand.Screen();
        Assert.Contains("Of 2\u00a0000 cars that fit", screen, StringComparison.Ordinal);
        Assert.Contains("The laptop does not answer.", screen, StringComparison.Ordinal);
        Assert.Contains("Where the doubt comes from", screen, StringComparison.Ordinal);

        // Another number: what was drawn no longer belongs to it.
        await hand.Type("ride/in", "8");
        Assert.DoesNotContain("Of 2\u00a0000 cars", await hand.Screen(), StringComparison.Ordinal);
    }
}
