using System.Diagnostics;
using System.Globalization;

namespace Shaftwright.Bench;

/// <summary>The position solve, side by side in one run: ours, MathNet's nonlinear solver, SciPy's fsolve where Debian's python3-scipy
/// is there, the closed form of the single arm, and many cars over the cores.</summary>
internal static class PositionRun
{
    private const int Positions = 189;
    private const int Cars = 20_000;

    public static void Go()
    {
        var bench = new LinkageBench();
        var ours = Best(bench.Shaftwright_WishboneGrid, 200) / Positions;
        var library = Best(bench.GeneralLibrary_WishboneGrid, 10) / Positions;
        var arm = Best(bench.Shaftwright_SwingArm, 2000) / 21;
        var closed = Best(bench.ClosedForm_SwingArm, 20000) / 21;
        Say("double wishbone, ours", ours, 1, bench.Shaftwright_WishboneGrid());
        Say("MathNet Broyden", library, library / ours, bench.GeneralLibrary_WishboneGrid());
        if (SciPy() is var (seconds, sum))
            Say("SciPy fsolve", seconds, seconds / ours, sum);
        else
            Console.WriteLine(
                "SciPy fsolve                  not here (apt-get install python3-scipy)"
            );
        Say("single arm, ours", arm, arm / closed, bench.Shaftwright_SwingArm());
        Say("single arm, closed form", closed, 1, bench.ClosedForm_SwingArm());
        var before = GC.GetAllocatedBytesForCurrentThread();
        bench.Shaftwright_WishboneGrid();
        Console.WriteLine(
            $"bytes a grid                  {GC.GetAllocatedBytesForCurrentThread() - before}"
        );
        for (var threads = 1; threads <= Environment.ProcessorCount; threads *= 2)
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Cars} cars × {Positions}, {threads} threads  {Many(threads):f2} s"
                )
            );
    }

    private static void Say(string what, double seconds, double ratio, double sum) =>
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{what, -28}{seconds * 1e9, 12:f1} ns a position  × {ratio, 8:f1}  sum {sum:f6}"
            )
        );

    private static double Best(Func<double> grid, int times)
    {
        var best = double.PositiveInfinity;
        for (var k = 0; k < 15; k++)
        {
            var begun = Stopwatch.GetTimestamp();
            for (var i = 0; i < times; i++)
                grid();
            best = Math.Min(best, Stopwatch.GetElapsedTime(begun).TotalSeconds / times);
        }
        return best;
    }

    private static double Many(int threads)
    {
        var begun = Stopwatch.GetTimestamp();
        Parallel.For(
            0,
            threads,
            new ParallelOptions { MaxDegreeOfParallelism = threads },
            _ =>
            {
                var own = new LinkageBench();
                for (var i = 0; i < Cars / threads; i++)
                    own.Shaftwright_WishboneGrid();
            }
        );
        return Stopwatch.GetElapsedTime(begun).TotalSeconds;
    }

    private static (double Seconds, double Sum)? SciPy()
    {
        var script = Path.Combine(AppContext.BaseDirectory, "positions.py");
        var start = new ProcessStartInfo("/usr/bin/python3", [script])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        try
        {
            using var python = Process.Start(start)!;
            var said = python.StandardOutput.ReadToEnd().Split(' ');
            python.WaitForExit();
            return python.ExitCode == 0
                ? (
                    double.Parse(said[0], CultureInfo.InvariantCulture),
                    double.Parse(said[1], CultureInfo.InvariantCulture)
                )
                : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
