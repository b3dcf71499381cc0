using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>The two joint centres and their axes at one position: what a shaft of any length does there.</summary>
/// <param name="Inner">Inner joint centre at mid-plunge, mm.</param>
/// <param name="InnerAxis">Its axis, length 1, pointing outboard.</param>
/// <param name="Outer">Outer joint centre, mm.</param>
/// <param name="OuterAxis">Its axis, length 1, pointing outboard.</param>
/// <remarks>Plunging centre P = I + s·a_i with |O − P| = L, so s = d_a − √(L² − r²), d = O − I, d_a = d·a_i and r what is left of d
/// across a_i. Source: own derivation, docs/linkages.md; check values: kinematics.md 1 to 3.</remarks>
public readonly record struct ShaftLine(Vec3 Inner, Vec3 InnerAxis, Vec3 Outer, Vec3 OuterAxis)
{
    /// <summary>Straight distance between the centres D, mm.</summary>
    public double Distance => (Outer - Inner).Length;

    /// <summary>Part of it along the inner axis d_a, mm.</summary>
    public double Axial => (Outer - Inner).Dot(InnerAxis);

    /// <summary>Part of it across the inner axis r, mm.</summary>
    public double Across => (Outer - Inner).Cross(InnerAxis).Length;

    /// <summary>Plunge s of a shaft, mm, from mid-stroke, positive outboard.</summary>
    /// <param name="length">Joint centre to joint centre L, mm.</param>
    /// <returns>NaN when the shaft is shorter than <see cref="Across"/>: it does not reach.</returns>
    public double Plunge(double length) => Axial - Math.Sqrt(length * length - Across * Across);

    /// <summary>Angle φ at the inner joint, rad; NaN when the shaft does not reach.</summary>
    /// <param name="length">Joint centre to joint centre L, mm.</param>
    public double InnerAngle(double length) => Math.Asin(Across / length);

    /// <summary>Angle ψ at the outer joint, rad; NaN when the shaft does not reach.</summary>
    /// <param name="length">Joint centre to joint centre L, mm.</param>
    public double OuterAngle(double length) => OuterAngleAt(Plunge(length));

    /// <summary>Angle ψ at the outer joint with the inner centre at a plunge, rad.</summary>
    /// <param name="plunge">mm from mid-stroke, positive outboard.</param>
    public double OuterAngleAt(double plunge) =>
        (Outer - Inner - InnerAxis * plunge).AngleTo(OuterAxis);
}
