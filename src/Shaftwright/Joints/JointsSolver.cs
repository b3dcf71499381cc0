using Shaftwright.Findings;

namespace Shaftwright.Joints;

/// <summary>Solver of the stage.</summary>
public static class JointsSolver
{
    /// <summary>Solves.</summary>
    public static JointsResult Solve(JointsInput joints) => new() { Findings = [] };
}
