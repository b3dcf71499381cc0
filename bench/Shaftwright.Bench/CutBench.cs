using BenchmarkDotNet.Attributes;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Bench;

/// <summary>Where to cut two donors: exact search over breakpoints against trying every tenth of a millimetre through the same rules.</summary>
[MemoryDiagnoser]
public class CutBench
{
    private const double Overall = 439;
    private readonly DonorsResult _donors = Workflow.Evaluate(Demo.Job).Donors!;

    [Benchmark]
    public double Shaftwright_ExactSearch() =>
        CutSolver.Solve(_donors, Demo.Job.Cut!, Overall).InnerAt!.Value;

    [Benchmark(Baseline = true)]
    public double EveryTenthOfAMillimetre()
    {
        var best = double.NaN;
        var least = double.PositiveInfinity;
        for (var x = 90.0; x < 340; x += 0.1)
        {
            var tried = CutSolver.Solve(
                _donors,
                Demo.Job.Cut! with
                {
                    InnerCutAt = Measured<Distance>.Of(Math.Round(x, 1), Distance.Mm),
                },
                Overall
            );
            if (
                tried.Checks.All(c => c.Holds || !c.Heavy)
                && tried.DiameterStep is { } step
                && step < least
            )
                (best, least) = (x, step);
        }
        return best;
    }
}
