namespace Shaftwright.Weld;

/// <summary>The rule of thumb for TIG current.</summary>
public static class TigCurrent
{
    /// <summary>Thickness above which the rule no longer describes one run, mm. Common practice, no source.</summary>
    public const double Most = 3.2;

    /// <summary>Current for a run on steel, A: one ampere for each thousandth of an inch, I = t/0.0254.</summary>
    /// <param name="thickness">t, mm.</param>
    /// <remarks>Source: several welding-supply charts. A workshop chart gives 55–75 A at 2 mm and 80–110 A at 3 mm: the rule sits
    /// at the top of the band. Beyond about 3 mm it no longer describes one run: use several. Check values:
    /// Published/tig-current.json.</remarks>
    public static double Amps(double thickness) => thickness / 0.0254;
}
