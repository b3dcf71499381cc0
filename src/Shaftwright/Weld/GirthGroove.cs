namespace Shaftwright.Weld;

/// <summary>A V groove all round a bar: how much metal fills it.</summary>
/// <param name="Diameter">D, mm.</param>
/// <param name="Depth">h, measured radially, mm; at most D/2.</param>
/// <param name="Bevel">φ, each end's bevel from its end face, rad; the included angle is 2φ.</param>
/// <param name="Gap">g, root gap, mm.</param>
/// <param name="Cap">c, height of a parabolic cap, mm.</param>
/// <remarks>The cap counts as wide as the groove's mouth, 2h·tan φ + g: what laps over the edges is not counted, since nobody knows
/// it beforehand (<see cref="LapVolume"/> says what it would add). Own derivation by Pappus; equal to the integral over the groove's width at each radius. Taking the area times πD instead
/// is a third too high on a small bar. Check values: Published/girth-groove.json.</remarks>
public readonly record struct GirthGroove(
    double Diameter,
    double Depth,
    double Bevel,
    double Gap,
    double Cap
)
{
    /// <summary>w, width of the groove at the bar's surface, mm: the cap counts as wide.</summary>
    public double CapWidth => 2 * Depth * Math.Tan(Bevel) + Gap;

    /// <summary>Cross-section, mm²: h²·tan φ + g·h + (2/3)·w·c.</summary>
    public double Area => Depth * Depth * Math.Tan(Bevel) + Gap * Depth + 2.0 / 3 * CapWidth * Cap;

    /// <summary>Volume of groove and gap, without the cap, mm³: 2π(R − h/3)·h²·tan φ + 2π(R − h/2)·g·h.</summary>
    public double GrooveVolume =>
        2
        * Math.PI
        * (
            (Diameter / 2 - Depth / 3) * Depth * Depth * Math.Tan(Bevel)
            + (Diameter / 2 - Depth / 2) * Gap * Depth
        );

    /// <summary>Volume with the cap, mm³: plus 2π(R + 0.4c)·(2/3)·w·c.</summary>
    public double Volume =>
        GrooveVolume + 2 * Math.PI * (Diameter / 2 + 0.4 * Cap) * (2.0 / 3 * CapWidth * Cap);

    /// <summary>What one more millimetre of cap over each edge adds, mm³: 2π(R + 0.4c)·(2/3)·2·c.</summary>
    public double LapVolume => 2 * Math.PI * (Diameter / 2 + 0.4 * Cap) * (2.0 / 3 * 2 * Cap);

    /// <summary>Filler rod used up, mm.</summary>
    /// <param name="rodDiameter">mm.</param>
    /// <param name="yield">Share of the rod that ends in the joint, 0 to 1.</param>
    public double FillerLength(double rodDiameter, double yield) =>
        Volume / (Math.PI * rodDiameter * rodDiameter / 4 * yield);

    /// <summary>Runs needed, for a bead of this cross-section, mm².</summary>
    public int Passes(double beadArea) => (int)Math.Ceiling(Area / beadArea - 1e-9);

    /// <summary>Shrinkage along the shaft by three handbook estimates that do not agree, mm, smallest and largest: 0.10·A/h
    /// (Blodgett, quoted), 0.2·A/h + 0.05·g (Spraragen and Ettinger, from memory).</summary>
    public Measures.Band Shrinkage
    {
        get
        {
            var blodgett = 0.10 * Area / Depth;
            var spraragen = 0.2 * Area / Depth + 0.05 * Gap;
            return new(Math.Min(blodgett, spraragen), Math.Max(blodgett, spraragen));
        }
    }

    /// <summary>Share of a solid bar's elastic torque that a fused ring carries, 1 − (1 − w/R)⁴.</summary>
    /// <param name="fusedDepth">w, mm from the surface.</param>
    /// <param name="diameter">D, mm.</param>
    public static double FusedShare(double fusedDepth, double diameter) =>
        1 - Math.Pow(1 - Math.Min(1, 2 * fusedDepth / diameter), 4);
}
