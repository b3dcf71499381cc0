using Shaftwright.Findings;

namespace Shaftwright.Corner;

/// <summary>Solver of the stage.</summary>
public static class CornerSolver
{
    /// <summary>Solves.</summary>
    public static CornerResult Solve(CornerInput corner) => new() { Findings = [] };
}
