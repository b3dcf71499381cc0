using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>What to do at each step, and what can hurt there, each caution at one step only.</summary>
public static class StepWords
{
    /// <summary>What a step is called.</summary>
    public static string Name(TestStep step) =>
        step switch
        {
            TestStep.Cleaned => "Clean",
            TestStep.Dried => "Dry",
            TestStep.PenetrantOn => "Penetrant on",
            TestStep.Removed => "Take the excess off",
            TestStep.DriedAgain => "Dry again",
            TestStep.DeveloperOn => "Developer on",
            TestStep.FirstLook => "First look",
            TestStep.FinalLook => "Final look",
            TestStep.FieldChecked => "Check the field",
            TestStep.MagnetisedOnce => "Magnetise and look",
            TestStep.MagnetisedAcross => "Magnetise across and look",
            TestStep.Demagnetised => "Demagnetise",
            _ => "Clean up and protect",
        };

    /// <summary>What to do.</summary>
    /// <param name="step">The step.</param>
    /// <param name="method">The method of the test.</param>
    public static Sentence ToDo(TestStep step, TestMethod method) =>
        step switch
        {
            TestStep.Cleaned =>
                $"Clean to bare metal with solvent and a brush: no paint, scale, oil or slag. No blasting or hammering, which smears cracks shut.",
            TestStep.Dried => $"Let it dry right out: solvent left in a crack keeps the test out.",
            TestStep.PenetrantOn =>
                $"Penetrant on, all over the place to be tested and a hand's breadth beyond. Note the time.",
            TestStep.Removed =>
                $"Wipe with a dry lint-free cloth, then with one barely moist with remover of the same family. Never spray remover on the part.",
            TestStep.DriedAgain => $"Let it dry. No hard rubbing.",
            TestStep.DeveloperOn =>
                $"Shake well. A thin, even coat of developer from a distance, so that the metal just shows through. Note the time.",
            TestStep.FirstLook => $"Look while the developer dries: what bleeds first is deepest.",
            TestStep.FinalLook => $"Look after development and note every mark.",
            TestStep.FieldChecked =>
                $"Lay the field indicator on the place to be tested and see that it shows the field, in both directions.",
            TestStep.MagnetisedOnce =>
                $"Magnetise in one direction, particles on while the field is on, and look.",
            TestStep.MagnetisedAcross =>
                $"Turn the field about 90° and do it again: torsion cracks lie at 45°, and a crack along the field does not show.",
            TestStep.Demagnetised =>
                $"Demagnetise: a magnetic shaft collects swarf and bends the next arc.",
            _ => method.IsMagnetic()
                ? (Sentence)$"Wash the particles off and oil it."
                : $"Wash developer and penetrant off and oil it: both hold water and rust.",
        };

    /// <summary>What can hurt in a step; null when nothing new.</summary>
    public static string? Caution(TestStep step) =>
        step switch
        {
            TestStep.Cleaned =>
                "Cold part only, no flame or arc near: solvent and propellant burn. Ventilate, gloves. No chlorinated cleaner where anything will be welded again: under the arc it makes phosgene.",
            TestStep.MagnetisedOnce =>
                "Strong fields: not with a pacemaker or an implant, and keep watches and cards away.",
            TestStep.FinalLook or TestStep.MagnetisedAcross =>
                "A clean test is no proof of strength. A shaft with a crack is scrapped, not welded again.",
            _ => null,
        };
}
