namespace Shaftwright.Strength.TorsionField;

/// <summary>The unfused root of a butt weld as a flat round crack across the axis: how sharply torque works at its edge.</summary>
/// <remarks>
/// Mode III: K = τ·√(πc)·F(c/R), τ = T·c/J in the ring at the crack's edge, J that of the ring. F from the field: the work that
/// the crack gives up as it grows, K² = 2G·(½T²·dC/dc)/(2πc) with C the twist for a torque of one. For a small crack F is
/// 4/(3π), the exact value of a flat round crack in a bar without end. Source: derived; the energy method in any text of
/// fracture mechanics.
/// </remarks>
public static class RootCrack
{
    /// <summary>F(c/R), at once: a curve through the field's own values.</summary>
    /// <param name="share">c/R: radius of the unfused core over that of the bar, from 0 to 1.</param>
    /// <remarks>Within 0.1 % of <see cref="FactorByField"/> from 0.02 to 0.98.</remarks>
    public static double Factor(double share)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(share);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(share, 1);
        var x = share;
        return Math.Sqrt(1 - x)
            * (
                0.424413
                + x * (0.204377 + x * (0.239252 + x * (-0.138018 + x * (0.048525 - x * 0.140843))))
            );
    }

    /// <summary>K at the edge of the unfused core.</summary>
    /// <param name="T">Torque, N·mm.</param>
    /// <param name="radius">Radius of the bar, mm.</param>
    /// <param name="fusionDepth">From the surface, mm, more than 0; from the radius up there is no crack.</param>
    /// <returns>Mode III, N/mm^1.5.</returns>
    public static double Intensity(double T, double radius, double fusionDepth)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(fusionDepth);
        var c = Math.Max(0, radius - fusionDepth);
        var stress = T * c / RoundSection.SecondMoment(2 * radius, 2 * c);
        return stress * Math.Sqrt(Math.PI * c) * Factor(c / radius);
    }

    /// <summary>F(c/R), from the field.</summary>
    /// <param name="share">c/R: radius of the unfused core over that of the bar, more than 0 and less than 1.</param>
    /// <param name="fineness">Of the grid: 1, 2, 4, …</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is not between 0.02 and 0.98.</exception>
    public static double FactorByField(double share, int fineness = 2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(share, 0.02);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(share, 0.98);
        // A bar of radius 1; G drops out.
        var near = Math.Min(share, 1 - share);
        var move = 0.02 * near;
        var (less, more) = (Stiffness(share - move), Stiffness(share + move));
        // C = 1/(πG·S) with both halves of the bar; its slope over c.
        var slope = (1 / more - 1 / less) / (2 * move * Math.PI);
        var K = Math.Sqrt(slope / (2 * Math.PI * share));
        var J = Math.PI / 2 * (1 - Math.Pow(share, 4));
        return K / (share / J * Math.Sqrt(Math.PI * share));

        double Stiffness(double crack)
        {
            var (grid, row) = MeridianGrid.BesideCrack(1, 3, crack, near / 200, fineness);
            return TorsionSolve.On(grid, row)!.Stiffness;
        }
    }
}
