using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>Light to see marks by: enough of it for colours, as little as can be for fluorescence.</summary>
internal static class SightRules
{
    public static IEnumerable<Objection> Of(RunFacts facts) =>
        facts.LookedAt is null ? []
        : facts.Method.IsFluorescent() ? Dark(facts.Conditions)
        : White(facts.Conditions);

    private static IEnumerable<Objection> White(TestConditions c)
    {
        if (c.Light is not { } light)
            yield return Objection.Lack(
                "light-unknown",
                $"The light at the part is not noted; {Say.Light(TestLimits.LeastWhiteLight)} is asked for.",
                $"Write down the light in lx if it was measured; a lamp that stands as it stood can be measured now. Otherwise look again under a measured light: until then the test shows nothing clean.",
                TestLimits.Sight
            );
        else if (light.Value < TestLimits.LeastWhiteLight)
            yield return Objection.Fail(
                "too-dark",
                $"Only {Say.Light(light.Value)} at the part; {Say.Light(TestLimits.LeastWhiteLight)} is asked for.",
                $"Bring the lamp closer and look again while the developer is good; otherwise begin again.",
                TestLimits.Sight
            );
    }

    private static IEnumerable<Objection> Dark(TestConditions c)
    {
        if (c.UltraViolet is null || c.Light is null)
            yield return Objection.Lack(
                "light-unknown",
                $"UV-A or stray light at the part is not noted; {Say.UltraViolet(TestLimits.LeastUltraViolet)} at least and {Say.Light(TestLimits.MostStrayLight)} at most are asked for.",
                $"Write down both if they were measured. Otherwise darken the place, let your eyes get used to it, measure both and look again: until then the test shows nothing clean.",
                TestLimits.Sight
            );
        if (c.UltraViolet is { } uv && uv.Value < TestLimits.LeastUltraViolet)
            yield return Objection.Fail(
                "uv-too-weak",
                $"Only {Say.UltraViolet(uv.Value)} of UV-A at the part; {Say.UltraViolet(TestLimits.LeastUltraViolet)} is asked for.",
                $"Bring the lamp closer or change it, and look again.",
                TestLimits.Sight
            );
        if (c.Light is { } stray && stray.Value > TestLimits.MostStrayLight)
            yield return Objection.Fail(
                "too-bright",
                $"{Say.Light(stray.Value)} of stray light at the part; {Say.Light(TestLimits.MostStrayLight)} is the most.",
                $"Darken the place and look again.",
                TestLimits.Sight
            );
    }
}
