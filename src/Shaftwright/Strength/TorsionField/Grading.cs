namespace Shaftwright.Strength.TorsionField;

/// <summary>Divides a length into steps that are small beside the places where much happens and grow away from them.</summary>
/// <remarks>Halving every step keeps the same law, so that grids of one family differ by their fineness alone and their answers
/// can be compared.</remarks>
internal static class Grading
{
    /// <summary>How much longer a step may be for each mm that it lies from a place of small steps.</summary>
    public const double Growth = 0.35;
    private const int Samples = 400;

    /// <summary>The ends of the steps as shares of the length, from 0 to 1.</summary>
    /// <param name="length">What is divided, mm, more than 0.</param>
    /// <param name="largest">Largest step, mm.</param>
    /// <param name="fineness">1 for the coarsest grid of the family, 2 for half its steps, and so on.</param>
    /// <param name="small">Places, mm from the start, and the step wanted there, mm.</param>
    public static double[] Steps(
        double length,
        double largest,
        int fineness,
        params ReadOnlySpan<(double At, double Step)> small
    )
    {
        // How many steps lie before a place: the integral of one over the step wanted there.
        var before = new double[Samples + 1];
        var last = 1 / Wanted(0, largest, small);
        for (var i = 1; i <= Samples; i++)
        {
            var middle = 1 / Wanted((i - 0.5) * length / Samples, largest, small);
            var next = 1 / Wanted(i * length / Samples, largest, small);
            before[i] = before[i - 1] + (last + 4 * middle + next) / 6 * (length / Samples);
            last = next;
        }
        var count = Math.Max(1, (int)Math.Ceiling(before[^1] - 1e-9)) * fineness;
        var steps = new double[count + 1];
        for (int i = 1, k = 1; i < count; i++)
        {
            var wanted = before[^1] * i / count;
            while (before[k] < wanted)
                k++;
            steps[i] = (k - 1 + (wanted - before[k - 1]) / (before[k] - before[k - 1])) / Samples;
        }
        steps[count] = 1;
        return steps;
    }

    private static double Wanted(
        double x,
        double largest,
        ReadOnlySpan<(double At, double Step)> small
    )
    {
        var step = largest;
        foreach (var (at, least) in small)
            step = Math.Min(step, least + Growth * Math.Abs(x - at));
        return step;
    }
}
