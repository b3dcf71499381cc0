using Shaftwright.Strength;

namespace Shaftwright.Fit;

/// <summary>Torsion of round bars past first yield, the metal taken as perfectly plastic.</summary>
/// <remarks>With ρ the radius down to which it has yielded, θ/θy = R/ρ, and
/// T = 2πτy[(ρ⁴ − r₀⁴)/(4ρ) + (R³ − ρ³)/3], r₀ the radius of the bore; for a solid bar T = (4/3)Ty[1 − ¼(θy/θ)³].
/// Unloading is elastic. No hardening, no stress concentration: real steel stands a little more. Source: any
/// strength-of-materials text; derived. Check values: Published/plastic-torsion.json.</remarks>
public static class PlasticTorsion
{
    /// <summary>Torque at a twist.</summary>
    /// <param name="shearYield">τy, MPa.</param>
    /// <param name="D">Outside diameter, mm.</param>
    /// <param name="bore">Bore, mm; 0 for solid bar.</param>
    /// <param name="twist">Twist as a multiple of the twist at first yield, 0 or more; infinite for the limit.</param>
    /// <returns>N·mm.</returns>
    public static double Torque(double shearYield, double D, double bore, double twist)
    {
        if (twist <= 1)
            return twist * RoundSection.YieldTorque(shearYield, D, bore);
        var (R, r0) = (D / 2, bore / 2);
        var rho = Math.Max(r0, R / twist);
        var core = rho > 0 ? (rho * rho * rho * rho - r0 * r0 * r0 * r0) / (4 * rho) : 0;
        return 2 * Math.PI * shearYield * (core + (R * R * R - rho * rho * rho) / 3);
    }

    /// <summary>Torque at which all of the section has yielded, Tp = (2π/3)τy(R³ − r₀³): it carries no more.</summary>
    /// <param name="shearYield">τy, MPa.</param>
    /// <param name="D">Outside diameter, mm.</param>
    /// <param name="bore">Bore, mm.</param>
    /// <returns>N·mm.</returns>
    public static double FullTorque(double shearYield, double D, double bore = 0) =>
        Torque(shearYield, D, bore, double.PositiveInfinity);

    /// <summary>Twist at a torque, as a multiple of the twist at first yield; infinite from <see cref="FullTorque"/> up.</summary>
    /// <param name="shearYield">τy, MPa.</param>
    /// <param name="D">Outside diameter, mm.</param>
    /// <param name="bore">Bore, mm.</param>
    /// <param name="torque">N·mm.</param>
    public static double Twist(double shearYield, double D, double bore, double torque)
    {
        var first = RoundSection.YieldTorque(shearYield, D, bore);
        if (torque <= first)
            return torque / first;
        if (torque >= FullTorque(shearYield, D, bore))
            return double.PositiveInfinity;
        if (bore <= 0)
            return Math.Cbrt(1 / (4 * (1 - 0.75 * torque / first)));
        // T falls as ρ grows from the bore to the surface; halved until no double lies between.
        var (low, high) = (bore / 2, D / 2);
        while (true)
        {
            var rho = (low + high) / 2;
            if (rho <= low || rho >= high)
                return D / 2 / rho;
            if (Torque(shearYield, D, bore, D / 2 / rho) > torque)
                low = rho;
            else
                high = rho;
        }
    }

    /// <summary>Twist that stays when a torque is taken off, as a multiple of the twist at first yield: θ/θy − T/Ty.</summary>
    /// <param name="shearYield">τy, MPa.</param>
    /// <param name="D">Outside diameter, mm.</param>
    /// <param name="bore">Bore, mm.</param>
    /// <param name="torque">N·mm.</param>
    public static double Set(double shearYield, double D, double bore, double torque) =>
        // Rounding at first yield may leave a hair below nothing.
        Math.Max(
            0,
            Twist(shearYield, D, bore, torque)
                - torque / RoundSection.YieldTorque(shearYield, D, bore)
        );

    /// <summary>Stress that stays at a radius when a twist is taken off again, τ_loaded − T·r/J.</summary>
    /// <param name="shearYield">τy, MPa.</param>
    /// <param name="D">Outside diameter, mm.</param>
    /// <param name="bore">Bore, mm.</param>
    /// <param name="twist">The twist, as a multiple of that at first yield.</param>
    /// <param name="r">Radius, mm.</param>
    /// <returns>MPa; against the twist where negative.</returns>
    public static double ResidualStress(
        double shearYield,
        double D,
        double bore,
        double twist,
        double r
    ) =>
        Math.Min(1, twist * r / (D / 2)) * shearYield
        - Torque(shearYield, D, bore, twist) * r / RoundSection.SecondMoment(D, bore);
}
