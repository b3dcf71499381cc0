namespace Shaftwright.App.Tests.Pages;

/// <summary>The six readings the first door is for, and what they must come to.</summary>
internal static class Stands
{
    /// <summary>Types them behind the first door, already open, and returns the answer.</summary>
    public static async Task<string> SixReadings(Phone phone)
    {
        await phone.Asked("How long is the trial shaft?");
        await phone.Type("Joint centre to joint centre", "412");
        await phone.Next("Let the wheel hang at full droop.");
        await phone.Type("Wheel centre below ride height", "90");
        await InOut(phone, "14", "10");
        await phone.Next("Set the wheel at ride height.");
        await InOut(phone, "10", "16");
        await phone.Next("Lift the wheel to full bump.");
        await phone.Type("Wheel centre above ride height", "70");
        await InOut(phone, "13", "12");
        await phone.Next("What moves at the power unit?");
        await phone.Next("How much should stay unused?");
        return await phone.Answer();
    }

    /// <summary>
    /// The longest that goes in everywhere read is 412 + 10 − 3, at ride height; the shortest that stays in everywhere is
    /// 412 − 10 + 3, at droop. Both stops are read alike, so the balance is near the middle, 412.
    /// </summary>
    public static void IsRight(string sentence)
    {
        Assert.StartsWith("Make it ", sentence, StringComparison.Ordinal);
        Assert.Contains(
            " mm joint centre to joint centre, give or take ",
            sentence,
            StringComparison.Ordinal
        );
        Assert.InRange(Phone.Numbers(sentence)[0], 411, 413);
    }

    private static async Task InOut(Phone phone, string goesIn, string comesOut)
    {
        await phone.Type("Goes in", goesIn);
        await phone.Type("Comes out", comesOut);
    }
}
