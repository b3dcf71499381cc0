using BenchmarkDotNet.Attributes;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using Shaftwright.Corner;

namespace Shaftwright.Bench;

/// <summary>The window of lengths of the demo's five readings: our stage, whole (window, balance, uncertainty, chance, what is
/// left), against only the window and the balance done with a general-purpose library's fits, minimiser and root finder.</summary>
[MemoryDiagnoser]
public class LengthBench
{
    private readonly Job _job = Demo.Job;
    private readonly double[] _travel = [.. Demo.Job.Corner!.Readings.Select(r => r.Travel!.Value)];
    private readonly double[] _in = [.. Demo.Job.Corner!.Readings.Select(r => r.In!.Value)];
    private readonly double[] _out = [.. Demo.Job.Corner!.Readings.Select(r => r.Out!.Value)];
    private readonly double[] _angle =
    [
        .. Demo.Job.Corner!.Readings.Select(r => r.InnerAngle!.Value),
    ];
    private readonly double _trial = Demo.Job.Corner!.TrialLength!.Value;

    [Benchmark]
    public double Shaftwright_WholeStage() => Workflow.Evaluate(_job).Length!.Make!.Value;

    [Benchmark(Baseline = true)]
    public double GeneralLibrary_WindowAndBalanceOnly()
    {
        Func<double, double> Curve(Func<int, double> square)
        {
            var fit = MathNet.Numerics.Fit.PolynomialFunc(
                _travel,
                [.. Enumerable.Range(0, _travel.Length).Select(square)],
                3
            );
            return fit;
        }
        var across = Curve(k => Math.Pow(_trial * Math.Sin(_angle[k]), 2));
        var goesIn = Curve(k => Math.Pow(_trial + _in[k], 2));
        var comesOut = Curve(k => Math.Pow(_trial - _out[k], 2));
        double Longest(double t, double off) => Bound(goesIn(t), across(t), -2.4 - off);
        double Shortest(double t, double off) => Bound(comesOut(t), across(t), 2 + off);
        var low = _travel.Min();
        var high = _travel.Max();
        double Smallest(Func<double, double> f)
        {
            var best = double.PositiveInfinity;
            // The library's minimiser finds one dip; it is started in each quarter as one would do by hand.
            for (var k = 0; k < 4; k++)
            {
                var a = low + (high - low) * k / 4;
                var b = low + (high - low) * (k + 1) / 4;
                var found = GoldenSectionMinimizer.Minimum(
                    ObjectiveFunction.ScalarValue(f),
                    a,
                    b,
                    1e-8,
                    1000,
                    0
                );
                best = Math.Min(
                    best,
                    Math.Min(found.FunctionInfoAtMinimum.Value, Math.Min(f(a), f(b)))
                );
            }
            return best;
        }
        var longest = Smallest(t => Longest(t, 3));
        var shortest = -Smallest(t => -Shortest(t, 3));
        return FindRoots.OfFunction(
            l => Smallest(t => Longest(t, 0) - l) - Smallest(t => l - Shortest(t, 0)),
            shortest,
            longest,
            1e-10
        );
    }

    private static double Bound(double square, double across, double shift)
    {
        var r2 = Math.Max(0, across);
        var w = Math.Sqrt(Math.Max(0, square - r2)) + shift;
        return Math.Sqrt(w * w + r2);
    }
}
