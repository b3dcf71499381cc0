namespace Shaftwright.Strength.TorsionField;

/// <summary>The greatest shear stress at the surface of a closed round part in torsion, and how sure it is.</summary>
/// <param name="Peak">Greatest stress for a torque of one, MPa for each N·mm.</param>
/// <param name="Factor">Kts: <paramref name="Peak"/> over the stress in a plain bar of the least diameter.</param>
/// <param name="Error">Estimated error of <paramref name="Factor"/>, from the last two grids.</param>
/// <param name="AtZ">Where it is along the axis, mm.</param>
/// <param name="AtR">Where it is from the axis, mm.</param>
/// <param name="Unknowns">Nodes of the last grid.</param>
/// <param name="Reached">True if the error asked for was reached.</param>
public sealed record PeakStress(
    double Peak,
    double Factor,
    double Error,
    double AtZ,
    double AtR,
    int Unknowns,
    bool Reached
);
