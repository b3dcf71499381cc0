namespace Shaftwright.Strength.TorsionField;

/// <summary>The grid of nine-node quadrilaterals on half a section of a round part, from its axis to its surface.</summary>
/// <remarks>Lines run from the axis to the surface; nodes are numbered along them, so that numbers of one element lie no more than
/// two lines apart and the matrix stays narrow. Beside a step the lines lean, so that they reach an upright face from inside the
/// metal.</remarks>
public sealed class MeridianGrid
{
    // How far the foot of a line moves along the axis for each mm that the surface rises.
    private const double Lean = 0.6;

    private MeridianGrid(int along, int across)
    {
        Along = along;
        Across = across;
        Rows = 2 * across + 1;
        Columns = 2 * along + 1;
        Z = new double[Rows * Columns];
        R = new double[Rows * Columns];
    }

    /// <summary>Elements along the axis.</summary>
    public int Along { get; }

    /// <summary>Elements from the axis to the surface.</summary>
    public int Across { get; }

    /// <summary>Nodes on a line from the axis to the surface.</summary>
    public int Rows { get; }

    /// <summary>Lines of nodes.</summary>
    public int Columns { get; }

    /// <summary>Nodes in all. Node <c>column × Rows + row</c>; row 0 on the axis, the last on the surface.</summary>
    public int Nodes => Z.Length;

    /// <summary>Where a node is.</summary>
    /// <param name="node">Its number.</param>
    /// <returns>Along the axis and from it, mm.</returns>
    public (double Z, double R) Node(int node) => (Z[node], R[node]);

    /// <summary>Place of each node along the axis, mm.</summary>
    internal double[] Z { get; }

    /// <summary>Distance of each node from the axis, mm.</summary>
    internal double[] R { get; }

    /// <summary>A grid that is fine at the turns of a surface.</summary>
    /// <param name="outline">The surface.</param>
    /// <param name="fineness">1 for the coarsest, then 2, 4, …</param>
    public static MeridianGrid Of(Outline outline, int fineness)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentOutOfRangeException.ThrowIfLessThan(fineness, 1);
        var largest = outline.Most / 3;
        var runs = outline.Runs;
        var feet = Feet(runs);
        var joints = Joints(runs, largest);
        var surface = new List<(double Z, double R, double Foot)>();
        var z = 0.0;
        for (var i = 0; i < runs.Count; i++)
        {
            var run = runs[i];
            var steps = Grading.Steps(
                run.Length,
                Math.Min(largest, Step(run)),
                fineness,
                (0, joints[i]),
                (run.Length, joints[i + 1])
            );
            for (var k = 0; k < steps.Length; k++)
            {
                if (k > 0)
                    Add((steps[k - 1] + steps[k]) / 2);
                if (k > 0 || i == 0)
                    Add(steps[k]);
            }
            z += run.Along;

            void Add(double share)
            {
                var at = run.At(share);
                var start = run.At(0);
                surface.Add((at.Z, at.R, feet[i](share, at.Z - start.Z, Math.Abs(at.R - start.R))));
            }
        }
        var finest = runs.Min(r => Math.Min(largest, Step(r)));
        var across = Grading.Steps(
            outline.Least,
            outline.Least / 3,
            fineness,
            (outline.Least, finest)
        );
        return Fill(surface, across);
    }

    /// <summary>A plain bar from z = 0, fine at one place of its first face: where a flat crack there ends.</summary>
    /// <param name="radius">Radius of the bar, mm.</param>
    /// <param name="length">Its length, mm.</param>
    /// <param name="crack">Distance of the place from the axis, mm.</param>
    /// <param name="finest">Step there, mm.</param>
    /// <param name="fineness">1 for the coarsest, then 2, 4, …</param>
    /// <returns>The grid and the row of nodes that lies at the place.</returns>
    public static (MeridianGrid Grid, int CrackRow) BesideCrack(
        double radius,
        double length,
        double crack,
        double finest,
        int fineness
    )
    {
        var inside = Grading.Steps(crack, radius / 3, fineness, (crack, finest));
        var outside = Grading.Steps(radius - crack, radius / 3, fineness, (0, finest));
        double[] across =
        [
            .. inside.Select(s => s * crack / radius),
            .. outside.Skip(1).Select(s => (crack + s * (radius - crack)) / radius),
        ];
        var along = Grading.Steps(length, radius / 3, fineness, (0, finest));
        var surface = new List<(double, double, double)>();
        for (var k = 0; k < along.Length; k++)
        {
            if (k > 0)
                Add((along[k - 1] + along[k]) / 2);
            Add(along[k]);
        }
        return (Fill(surface, across), 2 * (inside.Length - 1));

        void Add(double share) => surface.Add((share * length, radius, share * length));
    }

    private static MeridianGrid Fill(
        List<(double Z, double R, double Foot)> surface,
        double[] across
    )
    {
        var grid = new MeridianGrid((surface.Count - 1) / 2, across.Length - 1);
        for (var column = 0; column < grid.Columns; column++)
        {
            var (z, r, foot) = surface[column];
            for (var row = 0; row < grid.Rows; row++)
            {
                var share =
                    row % 2 == 0 ? across[row / 2] : (across[row / 2] + across[row / 2 + 1]) / 2;
                grid.Z[column * grid.Rows + row] = foot + share * (z - foot);
                grid.R[column * grid.Rows + row] = share * r;
            }
        }
        return grid;
    }

    /// <summary>The step wanted where runs meet: small beside a turn, and growing from there along the runs.</summary>
    private static double[] Joints(IReadOnlyList<Outline.IRun> runs, double largest)
    {
        var joints = new double[runs.Count + 1];
        Array.Fill(joints, largest);
        for (var i = 0; i < runs.Count; i++)
        {
            joints[i] = Math.Min(joints[i], Step(runs[i]));
            joints[i + 1] = Math.Min(joints[i + 1], Step(runs[i]));
        }
        for (var i = 0; i < runs.Count; i++)
            joints[i + 1] = Math.Min(joints[i + 1], joints[i] + Grading.Growth * runs[i].Length);
        for (var i = runs.Count - 1; i >= 0; i--)
            joints[i] = Math.Min(joints[i], joints[i + 1] + Grading.Growth * runs[i].Length);
        return joints;
    }

    private static double Step(Outline.IRun run) =>
        double.IsInfinity(run.Turn) ? double.PositiveInfinity : run.Length / 6;

    private static bool IsSteep(Outline.IRun run) =>
        !double.IsInfinity(run.Turn) || Math.Abs(run.Rise) > run.Along;

    /// <summary>For each run, where the lines that end on it stand on the axis. A line that ends on a rise stands behind it, one on a
    /// fall before it; level runs beside them make up for it.</summary>
    private static List<Func<double, double, double, double>> Feet(IReadOnlyList<Outline.IRun> runs)
    {
        var lost = new double[runs.Count];
        for (var i = 0; i < runs.Count; i++)
        {
            if (IsSteep(runs[i]))
                continue;
            for (var k = i - 1; k >= 0 && IsSteep(runs[k]); k--)
                lost[i] += Math.Max(0, runs[k].Rise);
            for (var k = i + 1; k < runs.Count && IsSteep(runs[k]); k++)
                lost[i] += Math.Max(0, -runs[k].Rise);
        }
        var lean = Lean;
        for (var i = 0; i < runs.Count; i++)
        {
            if (lost[i] > 0)
                lean = Math.Min(lean, 0.5 * runs[i].Along / lost[i]);
        }
        var feet = new List<Func<double, double, double, double>>();
        var foot = 0.0;
        for (var i = 0; i < runs.Count; i++)
        {
            var from = foot;
            if (IsSteep(runs[i]))
            {
                feet.Add((_, along, rise) => from + along + lean * rise);
                foot += runs[i].Along + lean * Math.Abs(runs[i].Rise);
            }
            else
            {
                var width = runs[i].Along - lean * lost[i];
                feet.Add((share, _, _) => from + share * width);
                foot += width;
            }
        }
        return feet;
    }
}
