namespace Shaftwright.Truing.Pressing;

/// <summary>A cross-section in bending: how sharply it curves under a moment, and which part of that stays.</summary>
/// <remarks>Elastic, then plastic, perfectly or with a straight line of hardening; plane sections stay plane; no residual stress to
/// begin with.</remarks>
public abstract class BendSection
{
    /// <summary>Young's modulus of steel, MPa. Common practice, no source; 200 to 210 GPa for all shaft steels.</summary>
    public const double Steel = 205000;

    /// <summary>Bending stiffness EI, N·mm².</summary>
    public abstract double Stiffness { get; }

    /// <summary>Moment at which it first yields anywhere, N·mm.</summary>
    public abstract double YieldMoment { get; }

    /// <summary>Moment that it cannot exceed, N·mm; infinite where it hardens.</summary>
    public abstract double FullMoment { get; }

    /// <summary>Half its height, mm: strain at the surface is this times the curvature.</summary>
    public abstract double Radius { get; }

    /// <summary>Curvature under a moment, 1/mm.</summary>
    /// <param name="moment">N·mm, from 0 to below <see cref="FullMoment"/>.</param>
    /// <returns>1/mm; positive infinity from the full moment up.</returns>
    public abstract double Curvature(double moment);

    /// <summary>Curvature that stays when the moment is let go, 1/mm: release is elastic.</summary>
    /// <param name="moment">N·mm.</param>
    public double Kept(double moment) =>
        moment <= YieldMoment ? 0 : Curvature(moment) - moment / Stiffness;
}
