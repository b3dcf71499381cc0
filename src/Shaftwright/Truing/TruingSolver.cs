using Shaftwright.Findings;

namespace Shaftwright.Truing;

/// <summary>Solver of the stage.</summary>
public static class TruingSolver
{
    /// <summary>Solves.</summary>
    public static TruingResult Solve(TruingInput truing) => new() { Findings = [] };
}
