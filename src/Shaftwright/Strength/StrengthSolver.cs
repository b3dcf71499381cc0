using Shaftwright.Car;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;

namespace Shaftwright.Strength;

/// <summary>Solver of the stage.</summary>
public static class StrengthSolver
{
    /// <summary>Solves.</summary>
    public static StrengthResult Solve(
        MadeShaft made,
        DonorsResult donors,
        CarResult? car,
        StrengthInput strength
    ) => new() { Findings = [] };
}
