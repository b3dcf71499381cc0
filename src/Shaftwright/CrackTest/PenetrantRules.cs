using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>What ISO 3452 asks of a penetrant test: dwell, development, temperature.</summary>
internal static class PenetrantRules
{
    public static IEnumerable<Objection> Of(RunFacts facts) =>
        [.. Dwell(facts), .. Development(facts), .. Temperature(facts.Conditions), .. Looks(facts)];

    private static IEnumerable<Objection> Dwell(RunFacts facts)
    {
        var c = facts.Conditions;
        if (c.MakersDwell is { } makers && makers.Value > TestLimits.MostDwell)
            yield return Objection.Doubt(
                "maker-beyond-range",
                $"The maker asks for {Say.Time(makers.Value)}, more than the standard's range ends at, {Say.Time(TestLimits.MostDwell)}.",
                $"Read the can again; use a penetrant whose time lies in the range, and keep it wet.",
                TestLimits.Dwell
            );
        if (facts.Dwell is not { } dwell)
        {
            if (facts.LookedAt is not null)
                yield return Objection.Fail(
                    "dwell-unknown",
                    $"When the penetrant went on or came off is not noted, so the dwell is not known.",
                    $"Note the times if you know them; otherwise begin again.",
                    TestLimits.Dwell
                );
            yield break;
        }
        if (dwell < c.LeastDwell)
        {
            var byMaker = c.LeastDwell > TestLimits.LeastDwell;
            yield return Objection.Fail(
                "dwell-too-short",
                byMaker
                    ? $"It dwelt {Say.Time(dwell)}; the maker asks for {Say.Time(c.LeastDwell)} at least."
                    : (Sentence)
                        $"It dwelt {Say.Time(dwell)}; the least is {Say.Time(c.LeastDwell)}.",
                $"Clean it right down and begin again.",
                byMaker ? "the penetrant's maker; " + TestLimits.Dwell : TestLimits.Dwell
            );
        }
        else if (dwell > c.MostDwell)
            yield return Objection.Fail(
                "dwell-too-long",
                $"It dwelt {Say.Time(dwell)}, past the range that ends at {Say.Time(c.MostDwell)}: it dries on and will not wash out of a fine crack or off the surface.",
                $"Clean it right down and begin again.",
                TestLimits.Dwell
            );
        else if (c.MakersDwell is null)
            yield return Objection.Lack(
                "makers-dwell-unknown",
                $"It dwelt {Say.Time(dwell)}, inside the standard's range; what the maker of the penetrant asks for is not noted, and that may be longer.",
                $"Read the can and write down its time; {Say.Time(TestLimits.UsualDwell)} is usual. Until then the test shows nothing clean.",
                TestLimits.Dwell
            );
    }

    private static IEnumerable<Objection> Development(RunFacts facts)
    {
        var c = facts.Conditions;
        if (facts.Development is not { } development)
        {
            if (facts.LookedAt is not null)
                yield return Objection.Fail(
                    "development-unknown",
                    $"When the developer went on is not noted.",
                    $"Note the time if you know it; otherwise begin again.",
                    TestLimits.Development
                );
        }
        else if (development < c.LeastDevelopment)
            yield return Objection.Fail(
                "look-not-final",
                $"The last look came {Say.Time(development)} after the developer: not final before {Say.Time(c.LeastDevelopment)}.",
                $"Look again when it has developed, and note that; if it is past, begin again.",
                TestLimits.Development
            );
        else if (development > c.MostDevelopment)
            yield return Objection.Doubt(
                "look-late",
                $"The last look came {Say.Time(development)} after the developer, past the usual {Say.Time(c.MostDevelopment)}: marks have spread, and faint ones may be lost in it.",
                $"Marks then measure too large. If anything was doubtful, clean it and begin again.",
                TestLimits.Development
            );
    }

    private static IEnumerable<Objection> Temperature(TestConditions c)
    {
        if (c.PartTemperature is not { } t)
            yield return Objection.Lack(
                "temperature-unknown",
                $"The part's temperature is not noted. The times hold from {Say.Temperature(TestLimits.LeastTemperature)} to {Say.Temperature(TestLimits.MostTemperature)}.",
                $"Write down what it was if it was measured; otherwise measure it and begin again. Until then the test shows nothing clean.",
                TestLimits.Warmth
            );
        else if (t.Value < TestLimits.LeastTemperature)
            yield return Objection.Fail(
                "part-too-cold",
                $"The part was at {Say.Temperature(t.Value)}; the range begins at {Say.Temperature(TestLimits.LeastTemperature)}.",
                $"Warm it through and begin again. Colder work needs a penetrant proved for it by ISO 3452-6.",
                TestLimits.Warmth
            );
        else if (t.Value > TestLimits.MostTemperature)
            yield return Objection.Fail(
                "part-too-hot",
                $"The part was at {Say.Temperature(t.Value)}; the range ends at {Say.Temperature(TestLimits.MostTemperature)}.",
                $"Let it cool and begin again. Hotter work needs a penetrant proved for it by ISO 3452-5.",
                TestLimits.Warmth
            );
    }

    private static IEnumerable<Objection> Looks(RunFacts facts)
    {
        if (facts.LookedAt is null)
            return [];
        var skipped = RunJudge.Skipped(facts, TestStep.Cleaned, TestStep.Dried);
        return facts.Times.When(TestStep.FirstLook) is not null
            ? skipped
            :
            [
                Objection.Note(
                    "no-first-look",
                    $"No look while the developer dried: two marks may have run into one, or a drip looks like a line.",
                    $"Next time look at once, and again at the end.",
                    TestLimits.Practice
                ),
                .. skipped,
            ];
    }
}
