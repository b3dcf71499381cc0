namespace Shaftwright.Strength.TorsionField;

/// <summary>The stress field of a closed round part in torsion, by finite elements on grids halved until the answer stands.</summary>
/// <remarks>For closed round parts only: nothing of halves, seams or splines is in it. Elastic. A sharp inward corner has no
/// greatest stress; give it the radius of a standard's reference notch, and use that standard's curve with it.</remarks>
public static class TorsionFieldSolver
{
    /// <summary>Finds the greatest stress at a surface.</summary>
    /// <param name="outline">The surface.</param>
    /// <param name="error">Error of the factor that is good enough, as a share of it.</param>
    /// <param name="mostNodes">Nodes that may be used at most.</param>
    /// <returns>Null if no grid could be laid.</returns>
    public static PeakStress? Peak(Outline outline, double error = 2e-3, int mostNodes = 200_000)
    {
        ArgumentNullException.ThrowIfNull(outline);
        PeakStress? last = null;
        for (var fineness = 1; ; fineness *= 2)
        {
            var grid = MeridianGrid.Of(outline, fineness);
            if (last is not null && grid.Nodes > mostNodes)
                return last;
            if (TorsionSolve.On(grid) is not { } solve)
                return last;
            var (z, r, peak) = Highest(solve.AlongSurface());
            var factor = peak * Math.PI * Math.Pow(outline.Least, 3) / 2;
            // Halving the steps takes two thirds of the error away, or more: no more than half of the change is left.
            var rest = last is null ? double.PositiveInfinity : Math.Abs(factor - last.Factor) / 2;
            last = new(peak, factor, rest, z, r, grid.Nodes, rest <= error * factor);
            if (last.Reached)
                return last;
        }
    }

    /// <summary>The top of a parabola through the greatest and its neighbours.</summary>
    private static (double Z, double R, double Stress) Highest(
        IReadOnlyList<(double Z, double R, double Stress)> along
    )
    {
        var top = 0;
        for (var i = 1; i < along.Count; i++)
        {
            if (along[i].Stress > along[top].Stress)
                top = i;
        }
        if (top == 0 || top == along.Count - 1)
            return along[top];
        var (before, at, after) = (along[top - 1], along[top], along[top + 1]);
        var (a, b) = (Distance(before, at), Distance(at, after));
        var (fa, fb) = (before.Stress - at.Stress, after.Stress - at.Stress);
        var bend = (fa / a + fb / b) / (a + b);
        if (!(bend < 0))
            return at;
        var slope = (fb / b * a - fa / a * b) / (a + b);
        var x = Math.Clamp(-slope / (2 * bend), -a, b);
        return (at.Z, at.R, at.Stress + slope * x + bend * x * x);
    }

    private static double Distance(
        (double Z, double R, double Stress) a,
        (double Z, double R, double Stress) b
    ) => Math.Sqrt((a.Z - b.Z) * (a.Z - b.Z) + (a.R - b.R) * (a.R - b.R));
}
