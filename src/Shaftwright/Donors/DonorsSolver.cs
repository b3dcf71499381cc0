using Shaftwright.Findings;

namespace Shaftwright.Donors;

/// <summary>Solver of the stage.</summary>
public static class DonorsSolver
{
    /// <summary>Solves.</summary>
    public static DonorsResult Solve(DonorsInput donors) => new() { Findings = [] };
}
