using Shaftwright.Cut;
using Shaftwright.Findings;

namespace Shaftwright.Weld;

/// <summary>Solver of the stage.</summary>
public static class WeldSolver
{
    /// <summary>Solves.</summary>
    public static WeldResult Solve(WeldInput weld, CutResult? cut) => new() { Findings = [] };
}
