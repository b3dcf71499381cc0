namespace Shaftwright.App.Tests.Pages;

/// <summary>Each door from the first page to its answer, typed as at the bench.</summary>
[Collection(PageTests.Name)]
public class DoorTests(Bench bench)
{
    [Fact]
    public async Task EndsInAVee_TwoDiameters_SaysTheShimUnderTheThinnerPiece()
    {
        await using var phone = await bench.Phone();
        await phone.Door("Ends in a vee");
        await phone.Type("Inner (power unit) piece", "26.2");
        await phone.Type("Outer (wheel) piece", "25.3");
        await phone.Next("Which feeler blades are on hand?");
        await phone.Next("What is the angle of the vee?");
        await phone.Type("Included angle of the vee", "90");
        var sentence = await phone.Answer();

        // (26.2 − 25.3) / 2, whatever the vee's angle: both packs lie along the vee's faces, square to them.
        Assert.StartsWith(
            "Under the outer piece, on each face of the vee, put 0.45 mm",
            sentence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task EndsInAVee_InInches_TakesAndSaysInchesAndThou()
    {
        await using var phone = await bench.Phone();
        await phone.Open("ends-in-a-vee");
        await phone.Press("inch");
        await phone.Type("Inner (power unit) piece", "1 1/32");
        await phone.Type("Outer (wheel) piece", "1");
        await phone.Press("Next");
        await phone.Press("Next");
        var sentence = await phone.Answer();

        // Half of 1/32 in is 15.625 thou.
        Assert.Contains("thou", sentence, StringComparison.Ordinal);
        Assert.InRange(Phone.Numbers(sentence)[0], 15.5, 15.7);
    }

    [Fact]
    public async Task UnderTheDial_AWaveOfATenth_SaysTwoTenthsHighAtItsCrest()
    {
        await using var phone = await bench.Phone();
        await phone.Door("A shaft under the dial");
        await phone.Pick("Butt welded and cold");
        await phone.Next("What carries the shaft while it turns?");
        await phone.Pick("between centres");
        await phone.Next("Where does the dial stand?");
        await phone.Type("From the inner end to the dial", "210");
        await phone.Next("Turn the shaft, read the dial.");
        // 0.1 sin θ, read to hundredths: out of centre by 0.1, so it runs out by twice that, and is high at 90°.
        string[] readings = ["0", "0.07", "0.10", "0.07", "0", "-0.07", "-0.10", "-0.07"];
        for (var i = 0; i < readings.Length; i++)
        {
            await phone.Type($"Reading {i + 1} of 8: turn to {45 * i}°", readings[i]);
            if (i + 1 < readings.Length)
                await phone.Page.Keyboard.PressAsync("Enter");
        }
        await phone.Page.Keyboard.PressAsync("Enter");
        await phone.Asked("How much run-out do you accept?");
        var sentence = await phone.Answer();

        Assert.Contains("it runs out 0.20 mm", sentence, StringComparison.Ordinal);
        Assert.Contains("high at 90° from the mark", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TwoShafts_WalkedWithTheCaliper_SaysTwoCutsThatMakeTheLength()
    {
        await using var phone = await bench.Phone();
        await phone.Door("Two shafts on the bench");
        await Walk(phone, ("30", "28.0"), ("400", "26.0"));
        await phone.Next("Walk the shaft that gives the outer (wheel) end.");
        await Walk(phone, ("40", "30.0"), ("350", "26.0"));
        await phone.Next("How long must the finished shaft be?");
        await phone.Type("Shaft end to shaft end", "500");
        await phone.Next("Is there a sleeve?");
        await phone.Pick("No sleeve");
        var sentence = await phone.Answer();

        Assert.StartsWith("Cut the inner-end shaft at", sentence, StringComparison.Ordinal);
        var cuts = Phone.Numbers(sentence);
        // Both pieces and the 2 mm gap, less the 1.2 mm the weld draws in, are the 500 mm asked for.
        Assert.Equal(500 - 2 + 1.2, cuts[0] + cuts[1], 0.11);
        // And each is in plain bar, clear by the 20 mm heat band of its spline and of where it was last measured.
        Assert.InRange(cuts[0], 30 + 20, 400 - 20);
        Assert.InRange(cuts[1], 40 + 20, 350 - 20);
    }

    [Fact]
    public async Task CarOnStands_SixReadings_SaysTheLengthBetweenTheStops()
    {
        await using var phone = await bench.Phone();
        await phone.Door("A car on stands");
        var sentence = await Stands.SixReadings(phone);
        Stands.IsRight(sentence);
    }

    private static async Task Walk(
        Phone phone,
        (string Until, string Across) spline,
        (string Until, string Across) bar
    )
    {
        await phone.Press("First place, at the joint end");
        await phone.Type("Ends, from the joint end, at", spline.Until);
        await phone.Type("Diameter over the teeth", spline.Across);
        await phone.Press("Next place along");
        await phone.Type("Ends, from the joint end, at", bar.Until);
        await phone.Type("Diameter", bar.Across);
    }
}
