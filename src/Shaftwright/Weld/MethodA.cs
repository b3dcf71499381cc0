namespace Shaftwright.Weld;

/// <summary>The one table of EN 1011-2 method A that is held here: how thick a joint may be in all before it asks for preheat.</summary>
/// <remarks>Source: EN 1011-2:2001, Table C.1 (the standard's page in stored text). Method A covers CE 0.30–0.70 and C 0.05–0.25
/// (from memory): most shaft steels lie outside it, so it is a check on thin low-carbon sleeves, never on a shaft. Check values:
/// Published/preheat-method-a.json.</remarks>
public static class MethodA
{
    // CE 0.49 at 1 and 2 kJ/mm, CE 0.43 at 1 and 2 kJ/mm; rows from the most hydrogen to the least.
    private static readonly double[][] s_thickness =
    [
        [25, 50, 40, 80],
        [30, 55, 50, 90],
        [35, 65, 60, 100],
        [50, 100, 100, 100],
        [60, 100, 100, 100],
    ];

    /// <summary>Combined thickness of a butt between equal bars or plates, mm: 2t.</summary>
    /// <remarks>Source: EN 1011-2, sum of the parent thicknesses that meet, each averaged over 75 mm from the weld (75 mm from
    /// memory).</remarks>
    public static double ButtThickness(double thickness) => 2 * thickness;

    /// <summary>Combined thickness of a T-joint, mm: 3t.</summary>
    public static double TeeThickness(double thickness) => 3 * thickness;

    /// <summary>Most combined thickness that is welded without preheat, mm; null when the table does not reach the case.</summary>
    /// <param name="carbonEquivalent">CE, mass %; up to 0.49. Between the two columns the worse one is taken.</param>
    /// <param name="scale">Hydrogen scale.</param>
    /// <param name="heatInput">Q, kJ/mm, at least 1. Between the two columns the worse one is taken.</param>
    public static double? WithoutPreheat(
        double carbonEquivalent,
        HydrogenScale scale,
        double heatInput
    )
    {
        var row = scale switch
        {
            HydrogenScale.A => 0,
            HydrogenScale.B => 1,
            HydrogenScale.C => 2,
            HydrogenScale.D => 3,
            HydrogenScale.E => 4,
            _ => -1,
        };
        if (row < 0 || !(carbonEquivalent <= 0.49) || !(heatInput >= 1))
            return null;
        var column = (carbonEquivalent > 0.43 ? 0 : 2) + (heatInput >= 2 ? 1 : 0);
        return s_thickness[row][column];
    }
}
