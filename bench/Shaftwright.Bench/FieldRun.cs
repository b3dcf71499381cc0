using System.Diagnostics;
using System.Globalization;
using Shaftwright.Strength.TorsionField;

namespace Shaftwright.Bench;

/// <summary>One torsion field of about 100,000 unknowns, assembled and solved side by side in one run: ours, SciPy's sparse direct
/// solver and FreeFEM where Debian's python3-scipy and freefem++ are there. All take the same nodes and the same order: SciPy the same
/// nine-node elements, FreeFEM each of them as two triangles of six nodes.</summary>
internal static class FieldRun
{
    private const int Times = 3;

    public static void Go()
    {
        var outline = Outline.Groove(30, 2, 0.5);
        var grid = MeridianGrid.Of(outline, 7);
        var folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            Write(grid, folder);
            var (ours, stiffness) = Ours(grid);
            Say($"ours, {grid.Nodes} nodes", ours, 1, stiffness);
            Other("SciPy splu", "/usr/bin/python3", "field.py", folder, ours);
            Other("FreeFEM", "/usr/bin/FreeFem++", "field.edp", folder, ours);
            var begun = Stopwatch.GetTimestamp();
            var peak = TorsionFieldSolver.Peak(outline)!;
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"a groove to 0.2 %: {Stopwatch.GetElapsedTime(begun).TotalMilliseconds:f0} ms, Kts {peak.Factor:f3} ± {peak.Error:f3}, {peak.Unknowns} nodes"
                )
            );
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static (double Seconds, double Stiffness) Ours(MeridianGrid grid)
    {
        var best = double.PositiveInfinity;
        var stiffness = 0.0;
        for (var i = 0; i < Times; i++)
        {
            var begun = Stopwatch.GetTimestamp();
            stiffness = TorsionSolve.On(grid)!.Stiffness;
            best = Math.Min(best, Stopwatch.GetElapsedTime(begun).TotalSeconds);
        }
        return (best, stiffness);
    }

    private static void Say(string what, double seconds, double ratio, double stiffness) =>
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{what, -28}{seconds, 8:f2} s  × {ratio, 6:f2}  stiffness {stiffness:f6}"
            )
        );

    /// <summary>The nodes for SciPy as they are, for FreeFEM as triangles of the corners.</summary>
    private static void Write(MeridianGrid grid, string folder)
    {
        using (var file = new StreamWriter(Path.Combine(folder, "nodes.txt")))
        {
            file.WriteLine(Line(grid.Columns, grid.Rows));
            for (var i = 0; i < grid.Nodes; i++)
            {
                var (z, r) = grid.Node(i);
                file.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{z:R} {r:R}"));
            }
        }
        var (columns, rows) = (grid.Along + 1, grid.Across + 1);
        using var mesh = new StreamWriter(Path.Combine(folder, "field.msh"));
        mesh.WriteLine(Line(columns * rows, 2 * grid.Along * grid.Across, 2 * grid.Across));
        for (var i = 0; i < columns; i++)
        {
            for (var j = 0; j < rows; j++)
            {
                var (z, r) = grid.Node(2 * i * grid.Rows + 2 * j);
                mesh.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{z:R} {r:R} 0"));
            }
        }
        for (var i = 0; i < grid.Along; i++)
        {
            for (var j = 0; j < grid.Across; j++)
            {
                var n = i * rows + j + 1;
                mesh.WriteLine(Line(n, n + rows, n + rows + 1, 0));
                mesh.WriteLine(Line(n, n + rows + 1, n + 1, 0));
            }
        }
        for (var j = 1; j < rows; j++)
        {
            mesh.WriteLine(Line(j, j + 1, 1));
            mesh.WriteLine(Line((columns - 1) * rows + j, (columns - 1) * rows + j + 1, 2));
        }
    }

    private static string Line(params int[] numbers) =>
        string.Join(' ', numbers.Select(n => n.ToString(CultureInfo.InvariantCulture)));

    private static void Other(
        string what,
        string program,
        string script,
        string folder,
        double ours
    )
    {
        if (!File.Exists(program))
        {
            Console.WriteLine($"{what, -28}not here");
            return;
        }
        var start = new ProcessStartInfo(program, [Path.Combine(AppContext.BaseDirectory, script)])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
        };
        using var process = Process.Start(start)!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var result = said.Split('\n')
            .SingleOrDefault(l => l.StartsWith("best ", StringComparison.Ordinal));
        if (result?.Split(' ') is [_, var seconds, var stiffness])
        {
            var time = double.Parse(seconds, CultureInfo.InvariantCulture);
            Say(what, time, time / ours, double.Parse(stiffness, CultureInfo.InvariantCulture));
        }
        else
            Console.WriteLine($"{what, -28}failed: {said}");
    }
}
