using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>What a magnetic particle test needs: steel that magnetises, two directions, a field that was seen.</summary>
internal static class MagneticRules
{
    public static IEnumerable<Objection> Of(RunFacts facts) =>
        facts.LookedAt is null
            ? Filler(facts)
            :
            [
                .. Filler(facts),
                .. Directions(facts),
                .. Field(facts.Times),
                .. RunJudge.Skipped(facts, TestStep.Cleaned),
            ];

    private static IEnumerable<Objection> Filler(RunFacts facts)
    {
        if (facts.Austenitic == true && facts.Conditions.Places.Any(IsWeld))
            yield return Objection.Fail(
                "austenitic-filler",
                $"The filler was austenitic. It does not magnetise, and its edge against the steel shows lines that are no cracks.",
                $"Test the welds with penetrant.",
                TestLimits.Field
            );
        else if (facts.Austenitic is null && facts.Conditions.Places.Any(IsWeld))
            yield return Objection.Lack(
                "filler-unknown",
                $"Whether the filler was austenitic is not noted; if it was, magnetic particle shows nothing in the weld.",
                $"Try a magnet on a bead of it, and write down what it is. Until then the test shows nothing clean.",
                TestLimits.Field
            );
    }

    private static bool IsWeld(Place place) =>
        place is Place.ButtWeld or Place.SleeveInnerEnd or Place.SleeveOuterEnd;

    private static IEnumerable<Objection> Directions(RunFacts facts)
    {
        if (facts.Times.When(TestStep.MagnetisedOnce) is null)
            yield return Objection.Fail(
                "one-direction-only",
                $"It was magnetised in one direction only. A crack along the field does not show.",
                $"Magnetise and look across the first direction as well.",
                TestLimits.Field
            );
        else if (facts.Conditions.BetweenDirections is { } angle)
        {
            var apart = Math.Min(angle.Value, Math.PI - angle.Value);
            if (apart < TestLimits.LeastBetweenDirections - 1e-9)
                yield return Objection.Fail(
                    "directions-too-close",
                    $"The two directions were {Say.Angle(angle.Value)} apart. A crack between them lies within {Say.Angle(TestLimits.LeastCrackToField)} of both, and does not show.",
                    $"Do it again, about 90° apart.",
                    TestLimits.Field + ", and own derivation from it"
                );
        }
    }

    private static IEnumerable<Objection> Field(StepTimes times)
    {
        if (times.When(TestStep.FieldChecked) is null)
            yield return Objection.Lack(
                "field-not-checked",
                $"No field indicator was laid on, so whether the field was strong enough is not known.",
                $"Note it if it was done. Otherwise do it again with an indicator on the weld, or with a test piece that has a known crack: until then the test shows nothing clean.",
                TestLimits.Field
            );
        if (times.When(TestStep.Demagnetised) is null)
            yield return Objection.Doubt(
                "not-demagnetised",
                $"It is not noted as demagnetised.",
                $"Demagnetise it before it is welded or fitted.",
                TestLimits.Practice
            );
    }
}
