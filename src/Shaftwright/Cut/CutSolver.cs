using Shaftwright.Donors;
using Shaftwright.Findings;

namespace Shaftwright.Cut;

/// <summary>Solver of the stage.</summary>
public static class CutSolver
{
    /// <summary>Solves.</summary>
    public static CutResult Solve(DonorsResult donors, CutInput cut, double? overall) =>
        new() { Findings = [] };
}
