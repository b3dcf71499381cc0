using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Joints;

namespace Shaftwright.Length;

/// <summary>Solver of the stage.</summary>
public static class LengthSolver
{
    /// <summary>Solves.</summary>
    public static LengthResult Solve(
        CornerInput corner,
        JointsInput? joints,
        JointsResult? seats,
        LengthInput length
    ) => new() { Findings = [] };
}
