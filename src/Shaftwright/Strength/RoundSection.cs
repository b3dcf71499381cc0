namespace Shaftwright.Strength;

/// <summary>Torsion of round sections: the textbook formulas, linear in the radius up to first yield.</summary>
/// <remarks>Source: any strength-of-materials text; derived. No stress concentration. Check values:
/// Published/round-torsion.json, hardened-torsion.json, fused-ring.json.</remarks>
public static class RoundSection
{
    /// <summary>Polar second moment of area, J = π(D⁴ − d⁴)/32 with bore d.</summary>
    /// <param name="D">Outside diameter, mm.</param>
    /// <param name="bore">Bore, mm; 0 for solid bar.</param>
    /// <returns>mm⁴.</returns>
    public static double SecondMoment(double D, double bore = 0) =>
        Math.PI / 32 * (D * D * D * D - bore * bore * bore * bore);

    /// <summary>Shear stress at the surface, τ = T·D/(2J).</summary>
    /// <param name="T">Torque, N·mm.</param>
    /// <param name="D">Outside diameter, mm.</param>
    /// <param name="bore">Bore, mm; 0 for solid bar.</param>
    /// <returns>MPa.</returns>
    public static double SurfaceStress(double T, double D, double bore = 0) =>
        T * D / (2 * SecondMoment(D, bore));

    /// <summary>Torque at which the surface first yields, T = τy·2J/D.</summary>
    /// <param name="shearYield">Shear yield τy, MPa.</param>
    /// <param name="D">Outside diameter, mm.</param>
    /// <param name="bore">Bore, mm; 0 for solid bar.</param>
    /// <returns>N·mm.</returns>
    public static double YieldTorque(double shearYield, double D, double bore = 0) =>
        shearYield * 2 * SecondMoment(D, bore) / D;

    /// <summary>Torque at which a case-hardened bar first yields, at its surface or just under its case:
    /// T = min(τ_case·J/R, τ_core·J/(R − δ)).</summary>
    /// <param name="caseYield">Shear yield of the case, MPa.</param>
    /// <param name="coreYield">Shear yield of the core, MPa.</param>
    /// <param name="D">Diameter, mm.</param>
    /// <param name="depth">Depth of the case δ, mm; from the radius up the bar is all case.</param>
    /// <returns>N·mm.</returns>
    /// <remarks>Case and core share one shear modulus, so stress stays linear in the radius. Residual stress of hardening is left
    /// out: compression in the case helps, tension under it hurts. Source: derived; the same argument in graphs in Fett,
    /// Heat Treating Progress, October 2009.</remarks>
    public static double HardenedYieldTorque(
        double caseYield,
        double coreYield,
        double D,
        double depth
    )
    {
        var J = SecondMoment(D);
        var R = D / 2;
        var surface = caseYield * J / R;
        return depth >= R ? surface : Math.Min(surface, coreYield * J / (R - depth));
    }

    /// <summary>Torque at which the fused ring of a butt weld first yields: an annulus of the fusion depth, its core unfused.</summary>
    /// <param name="shearYield">Shear yield of the weld metal, MPa.</param>
    /// <param name="D">Diameter, mm: the smaller of the two ends.</param>
    /// <param name="fusionDepth">From the surface, mm; from the radius up the section is solid.</param>
    /// <returns>N·mm.</returns>
    /// <remarks>The unfused core is also a crack that faces the ring; this nominal sum hides that. Source: derived.</remarks>
    public static double FusedRingYieldTorque(double shearYield, double D, double fusionDepth) =>
        YieldTorque(shearYield, D, Math.Max(0, D - 2 * fusionDepth));
}
