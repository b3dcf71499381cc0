using Shaftwright.Corner;

namespace Shaftwright.Length;

/// <summary>Finds where a smooth function of travel is smallest over the readings of one set, never beyond them.</summary>
internal static class Sweep
{
    /// <summary>Enough for curves of degree 3 and their roots, which have at most a few dips over the readings.</summary>
    private const int Intervals = 16;

    private const double GoldenShare = 0.38196601125010515;

    /// <summary>The smallest value and its travel. On a fitted set each smooth piece is walked on a grid and every dip of it
    /// refined, to better than 1e-9 mm in the value; where the readings stand alone only they are looked at.</summary>
    /// <param name="envelope">The set.</param>
    /// <param name="values">The values behind it.</param>
    /// <param name="f">What is to be smallest, against travel.</param>
    /// <param name="below">Only what is smaller than this matters: another set has it already. Where nothing is, it comes back.</param>
    public static (double Travel, double Value) Smallest(
        SetEnvelope envelope,
        double[] values,
        Func<double, double> f,
        double below = double.PositiveInfinity
    )
    {
        var best = (Travel: double.NaN, Value: below);
        if (!envelope.Set.Fitted)
        {
            for (var k = 0; k < envelope.Set.Readings.Length; k++)
            {
                var t = envelope.Set.Travel(values, k);
                if (f(t) is var v && v < best.Value)
                    best = (t, v);
            }
            return best;
        }
        for (var i = 1; i < envelope.Pieces.Count; i++)
        {
            var smallest = OnPiece(envelope.Pieces[i - 1], envelope.Pieces[i], f, best.Value);
            if (smallest.Value < best.Value)
                best = smallest;
        }
        return best;
    }

    private static (double Travel, double Value) OnPiece(
        double from,
        double to,
        Func<double, double> f,
        double below
    )
    {
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
            if (
                grid[i] > left
                || grid[i] > right
                || Hopeless(grid[i], left, right, Math.Min(below, smallest.Value))
            )
                continue;
            var dip = Refine(
                f,
                from + Math.Max(0, i - 1) * step,
                Math.Min(to, from + (i + 1) * step),
                Math.Min(to, from + i * step),
                grid[i]
            );
            if (dip.Value < smallest.Value)
                smallest = dip;
        }
        return smallest;
    }

    /// <summary>A dip cannot go deeper below its grid point than the larger step to its neighbours, unless the curve bends as no
    /// cubic does on this grid.</summary>
    private static bool Hopeless(double here, double left, double right, double best)
    {
        var rise =
            double.IsFinite(left) && double.IsFinite(right)
                ? Math.Max(left, right) - here
                : double.PositiveInfinity;
        return here - rise > best;
    }

    /// <summary>Successive parabolas guarded by golden section: Brent, Algorithms for Minimization without Derivatives, 1973, ch. 5.</summary>
    private static (double Travel, double Value) Refine(
        Func<double, double> f,
        double a,
        double b,
        double x,
        double fx
    )
    {
        // Where the across distance touches zero a curve may have a corner, of slope 0.1 at most: 1e-8 of travel is 1e-9 of length.
        const double Enough = 1e-8;
        double w = x,
            fw = fx,
            v = x,
            fv = fx,
            last = 0,
            step = 0;
        for (var i = 0; i < 100; i++)
        {
            var middle = (a + b) / 2;
            if (Math.Abs(x - middle) <= 2 * Enough - (b - a) / 2)
                break;
            var golden = true;
            if (Math.Abs(last) > Enough)
            {
                var r = (x - w) * (fx - fv);
                var q = (x - v) * (fx - fw);
                var p = (x - v) * q - (x - w) * r;
                q = 2 * (q - r);
                if (q > 0)
                    p = -p;
                q = Math.Abs(q);
                if (Math.Abs(p) < Math.Abs(q * last / 2) && p > q * (a - x) && p < q * (b - x))
                {
                    (last, step) = (step, p / q);
                    golden = false;
                }
            }
            if (golden)
            {
                last = x < middle ? b - x : a - x;
                step = GoldenShare * last;
            }
            var u = x + (Math.Abs(step) >= Enough ? step : Math.CopySign(Enough, step));
            u = Math.Clamp(u, a, b);
            var fu = f(u);
            if (fu <= fx)
            {
                if (u < x)
                    b = x;
                else
                    a = x;
                (v, fv, w, fw, x, fx) = (w, fw, x, fx, u, fu);
            }
            else
            {
                if (u < x)
                    a = u;
                else
                    b = u;
                if (fu <= fw || w == x)
                    (v, fv, w, fw) = (w, fw, u, fu);
                else if (fu <= fv || v == x || v == w)
                    (v, fv) = (u, fu);
            }
        }
        return (x, fx);
    }
}
