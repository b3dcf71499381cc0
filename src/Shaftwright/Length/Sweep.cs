using Shaftwright.Corner;

namespace Shaftwright.Length;

/// <summary>Finds where a smooth function of travel is smallest over the readings of one set, never beyond them.</summary>
internal static class Sweep
{
    private const int Intervals = 32;
    private const double GoldenShare = 0.38196601125010515;

    /// <summary>The smallest value and its travel. On a fitted set every dip of a grid is refined by golden section, to better
    /// than 1e-9 mm in the value; where the readings stand alone only they are looked at.</summary>
    public static (double Travel, double Value) Smallest(
        ReadingSet set,
        double[] values,
        Func<double, double> f
    )
    {
        if (!set.Fitted)
        {
            var best = (Travel: double.NaN, Value: double.PositiveInfinity);
            for (var k = 0; k < set.Readings.Length; k++)
            {
                var t = set.Travel(values, k);
                if (f(t) is var v && v < best.Value)
                    best = (t, v);
            }
            return best;
        }
        var from = set.Travel(values, 0);
        var to = set.Travel(values, set.Readings.Length - 1);
        var step = (to - from) / Intervals;
        Span<double> grid = stackalloc double[Intervals + 1];
        for (var i = 0; i <= Intervals; i++)
            grid[i] = f(i == Intervals ? to : from + i * step);

        var smallest =
            grid[0] <= grid[Intervals]
                ? (Travel: from, Value: grid[0])
                : (Travel: to, Value: grid[Intervals]);
        for (var i = 0; i <= Intervals; i++)
        {
            var left = i > 0 ? grid[i - 1] : double.PositiveInfinity;
            var right = i < Intervals ? grid[i + 1] : double.PositiveInfinity;
            if (grid[i] > left || grid[i] > right)
                continue;
            var dip = Golden(
                f,
                from + Math.Max(0, i - 1) * step,
                Math.Min(to, from + (i + 1) * step)
            );
            if (dip.Value < smallest.Value)
                smallest = dip;
        }
        return smallest;
    }

    private static (double Travel, double Value) Golden(Func<double, double> f, double a, double b)
    {
        var x = a + GoldenShare * (b - a);
        var y = b - GoldenShare * (b - a);
        var fx = f(x);
        var fy = f(y);
        // The value settles with the square of the bracket: 1e-6 of travel is far below 1e-9 of length.
        while (b - a > 1e-6)
        {
            if (fx <= fy)
            {
                b = y;
                (y, fy) = (x, fx);
                x = a + GoldenShare * (b - a);
                fx = f(x);
            }
            else
            {
                a = x;
                (x, fx) = (y, fy);
                y = b - GoldenShare * (b - a);
                fy = f(y);
            }
        }
        return fx <= fy ? (x, fx) : (y, fy);
    }
}
