namespace Shaftwright.Strength.TorsionField;

/// <summary>One solve of the torsion of a round part on one grid.</summary>
/// <remarks>
/// Michell's equation: with ψ the angle by which a ring of the part turns, ∇·(r³∇ψ) = 0 over the half section; no stress crosses
/// a free surface, which is the natural condition; τ = G·r·∂ψ along the surface. Nine-node elements, 3 × 3 Gauss points. The
/// shear modulus drops out of stress for a given torque. Source: Timoshenko and Goodier, Theory of Elasticity, 3rd ed., §119
/// (from memory); derived.
/// </remarks>
public sealed class TorsionSolve
{
    private readonly MeridianGrid _grid;
    private readonly double[] _angle;

    private TorsionSolve(MeridianGrid grid, double[] angle, double stiffness)
    {
        _grid = grid;
        _angle = angle;
        Stiffness = stiffness;
    }

    /// <summary>∫r³|∇ψ|² over the half section for one radian from end to end, mm³. Times 2πG it is the torque for that
    /// radian.</summary>
    public double Stiffness { get; }

    /// <summary>Solves on a grid: the far end turned by one radian, the near end held.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="freeRows">Rows of the near end that are not held: a crack from the axis out to that row.</param>
    /// <returns>Null if the grid has a folded element.</returns>
    public static TorsionSolve? On(MeridianGrid grid, int freeRows = 0)
    {
        ArgumentNullException.ThrowIfNull(grid);
        // Only the lines between elements are solved for; those within are eliminated first, one by one.
        var rows = grid.Rows;
        var first = new int[(grid.Along + 1) * rows];
        for (var i = rows; i < first.Length; i++)
            first[i] = (i / rows - 1) * rows;
        var matrix = new BandMatrix(first);
        var inner = new InnerLine[grid.Along];
        for (var a = 0; a < grid.Along; a++)
        {
            inner[a] = new InnerLine(rows);
            if (!inner[a].AddTo(matrix, grid, a))
                return null;
        }
        var held = freeRows;
        for (var i = held; i < rows; i++)
        {
            for (var k = 0; k < 2 * rows; k++)
                matrix[Math.Max(i, k), Math.Min(i, k)] = 0;
            matrix[i, i] = 1;
        }
        var angle = new double[first.Length];
        var stiffness = HoldFarEnd(matrix, rows, angle);
        if (!matrix.Factor())
            return null;
        var right = (double[])angle.Clone();
        matrix.Solve(angle);
        // The energy by what the held end pushes back with.
        for (var i = 0; i < right.Length - rows; i++)
            stiffness -= right[i] * angle[i];
        var all = new double[grid.Nodes];
        for (var a = 0; a <= grid.Along; a++)
            angle.AsSpan(a * rows, rows).CopyTo(all.AsSpan(2 * a * rows));
        for (var a = 0; a < grid.Along; a++)
            inner[a]
                .Recover(angle.AsSpan(a * rows, 2 * rows), all.AsSpan((2 * a + 1) * rows, rows));
        return new(grid, all, stiffness);
    }

    /// <summary>Turns the last line by one: moves it to the right-hand side and holds it.</summary>
    /// <returns>What its own entries put into the energy.</returns>
    private static double HoldFarEnd(BandMatrix matrix, int rows, Span<double> right)
    {
        var far = right.Length - rows;
        var own = 0.0;
        for (var i = far; i < right.Length; i++)
        {
            var row = matrix.Row(i, far - rows);
            for (var k = 0; k < row.Length; k++)
            {
                var column = far - rows + k;
                if (column < far)
                    right[column] -= row[k];
                else
                    own += column == i ? row[k] : 2 * row[k];
            }
            row.Clear();
            matrix[i, i] = 1;
            right[i] = 1;
        }
        return own;
    }

    /// <summary>Shear stress along the surface for a torque of one, from the near end.</summary>
    /// <returns>Places of the surface, mm along the axis and from it, and the stress there, MPa for each N·mm.</returns>
    /// <remarks>At the two Gauss points of each element's edge, where the slope of a quadratic is better by an order.</remarks>
    public IReadOnlyList<(double Z, double R, double Stress)> AlongSurface()
    {
        var found = new List<(double, double, double)>();
        ReadOnlySpan<double> points = [-1 / Math.Sqrt(3), 1 / Math.Sqrt(3)];
        for (var a = 0; a < _grid.Along; a++)
        {
            var (n0, n1, n2) = (Surface(2 * a), Surface(2 * a + 1), Surface(2 * a + 2));
            foreach (var x in points)
            {
                var (s0, s1, s2) = (x - 0.5, -2 * x, x + 0.5);
                var (v0, v1, v2) = (x * (x - 1) / 2, 1 - x * x, x * (x + 1) / 2);
                var dz = s0 * _grid.Z[n0] + s1 * _grid.Z[n1] + s2 * _grid.Z[n2];
                var dr = s0 * _grid.R[n0] + s1 * _grid.R[n1] + s2 * _grid.R[n2];
                var slope =
                    (s0 * _angle[n0] + s1 * _angle[n1] + s2 * _angle[n2])
                    / Math.Sqrt(dz * dz + dr * dr);
                var z = v0 * _grid.Z[n0] + v1 * _grid.Z[n1] + v2 * _grid.Z[n2];
                var r = v0 * _grid.R[n0] + v1 * _grid.R[n1] + v2 * _grid.R[n2];
                found.Add((z, r, r * Math.Abs(slope) / (2 * Math.PI * Stiffness)));
            }
        }
        return found;

        int Surface(int column) => (column + 1) * _grid.Rows - 1;
    }

    /// <summary>Angle of a node, of the one radian from end to end.</summary>
    internal double Angle(int node) => _angle[node];
}
