using Shaftwright.Corner;

namespace Shaftwright.Length;

/// <summary>The length that leaves as much plunge at one end of the stroke as at the other, over all positions.</summary>
internal static class Balance
{
    /// <summary>Finds it inside the window.</summary>
    /// <param name="envelopes">All sets.</param>
    /// <param name="numbers">The values behind them.</param>
    /// <param name="shortest">Short end of the window, mm.</param>
    /// <param name="longest">Long end of the window, mm.</param>
    /// <returns>The length and its standard uncertainty, mm.</returns>
    /// <remarks>The least plunge left inwards falls and the least left outwards rises with the length, so their difference has one
    /// zero; it is found by bisection with secant steps to 1e-10 mm. If the window's end by angle lies beyond it, that end is taken.</remarks>
    public static (double Length, double StandardUncertainty) Of(
        List<SetEnvelope> envelopes,
        LengthNumbers numbers,
        double shortest,
        double longest
    )
    {
        (SetEnvelope Set, double Travel, double Left) Least(double length, bool goesIn)
        {
            (SetEnvelope, double, double Left) least = (envelopes[0], 0, double.PositiveInfinity);
            foreach (var e in envelopes)
            {
                var (t, left) = goesIn
                    ? Sweep.Smallest(e.Set, numbers.Values, x => e.LeftIn(length, x))
                    : Sweep.Smallest(e.Set, numbers.Values, x => e.LeftOut(length, x));
                if (left < least.Left)
                    least = (e, t, left);
            }
            return least;
        }
        double Difference(double length) => Least(length, true).Left - Least(length, false).Left;

        double a = shortest,
            b = longest;
        double fa = Difference(a),
            fb = Difference(b);
        var found =
            fa <= 0 ? a
            : fb >= 0 ? b
            : Zero(Difference, a, b, fa, fb);

        var atIn = Least(found, true);
        var atOut = Least(found, false);
        const double Step = 1e-3;
        double Gap(double[] values, double length) =>
            new SetEnvelope(atIn.Set.Set, numbers, values).LeftIn(length, atIn.Travel)
            - new SetEnvelope(atOut.Set.Set, numbers, values).LeftOut(length, atOut.Travel);
        var slope =
            (Gap(numbers.Values, found + Step) - Gap(numbers.Values, found - Step)) / (2 * Step);
        var square = 0.0;
        foreach (var value in numbers.Uncertain)
        {
            if (
                !LengthUncertainty.Concerns(atIn.Set.Set, value)
                && !LengthUncertainty.Concerns(atOut.Set.Set, value)
            )
                continue;
            var effect = LengthUncertainty.Effect(numbers, value, v => Gap(v, found)) / slope;
            square += effect * effect;
        }
        foreach (var end in new[] { atIn, atOut })
        {
            // Half of a bound's own interpolation error reaches the balance between two bounds.
            var between =
                InterpolationError.HalfWidth(end.Set.Set, numbers.Values, end.Travel, found)
                / Math.Sqrt(3)
                / 2;
            square += between * between;
        }
        return (found, Math.Sqrt(square));
    }

    private static double Zero(Func<double, double> f, double a, double b, double fa, double fb)
    {
        for (var i = 0; i < 200 && b - a > 1e-10; i++)
        {
            var secant = a - fa * (b - a) / (fb - fa);
            // A secant that keeps biting at one end is replaced by halving every other step.
            var x = i % 2 == 0 && secant > a && secant < b ? secant : (a + b) / 2;
            var fx = f(x);
            if (fx == 0)
                return x;
            if (fx > 0)
                (a, fa) = (x, fx);
            else
                (b, fb) = (x, fx);
        }
        return (a + b) / 2;
    }
}
