using BenchmarkDotNet.Attributes;
using MathNet.Numerics;

namespace Shaftwright.Bench;

/// <summary>Eight dial readings: our stage, whole (fit, uncertainty, verdict, words), against a general library's fit alone.</summary>
[MemoryDiagnoser]
public class TruingBench
{
    private readonly Job _job = new() { Truing = Demo.Job.Truing };
    private readonly double[] _angle =
    [
        .. Demo.Job.Truing!.Turns[0].Readings.Select(r => r.Angle!.Value),
    ];
    private readonly double[] _dial =
    [
        .. Demo.Job.Truing!.Turns[0].Readings.Select(r => r.Dial!.Value),
    ];

    [Benchmark]
    public double Shaftwright_WholeStage() =>
        Workflow.Evaluate(_job).Truing!.Turns[0].Offset!.Value;

    [Benchmark(Baseline = true)]
    public double GeneralLibrary_FitOnly()
    {
        var c = MathNet.Numerics.Fit.LinearCombination(_angle, _dial, _ => 1, Math.Cos, Math.Sin);
        return double.Hypot(c[1], c[2]);
    }
}
