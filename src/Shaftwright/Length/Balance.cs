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
    /// <returns>The length, mm, and what makes it uncertain.</returns>
    /// <remarks>The least plunge left inwards falls and the least left outwards rises with the length, so their difference has one
    /// zero, found to 1e-10 mm by regula falsi with the Illinois rule (Dowell and Jarratt, BIT 11, 1971). If the window's end by
    /// angle lies beyond it, that end is taken.</remarks>
    public static (double Length, IReadOnlyList<Contribution> Parts) Of(
        IReadOnlyList<SetEnvelope> envelopes,
        LengthNumbers numbers,
        double shortest,
        double longest
    )
    {
        var found = Length(envelopes, numbers.Values, shortest, longest);
        return (
            found,
            Parts(
                numbers,
                Least(envelopes, numbers.Values, found, true),
                Least(envelopes, numbers.Values, found, false),
                found
            )
        );
    }

    /// <summary>The length alone, mm.</summary>
    /// <param name="envelopes">All sets.</param>
    /// <param name="values">The values they were built from.</param>
    /// <param name="shortest">Where to look from, mm.</param>
    /// <param name="longest">Where to look to, mm.</param>
    /// <param name="enough">How exactly, mm.</param>
    public static double Length(
        IReadOnlyList<SetEnvelope> envelopes,
        double[] values,
        double shortest,
        double longest,
        double enough = 1e-10
    )
    {
        double Difference(double length) =>
            Least(envelopes, values, length, true).Left
            - Least(envelopes, values, length, false).Left;

        var atShortest = Difference(shortest);
        var atLongest = Difference(longest);
        return atShortest <= 0 ? shortest
            : atLongest >= 0 ? longest
            : Zero(Difference, shortest, longest, atShortest, atLongest, enough);
    }

    /// <summary>Where least plunge is left inwards (or outwards) with a length, refined between the readings.</summary>
    public static (SetEnvelope Envelope, double Travel, double Left) Tightest(
        IReadOnlyList<SetEnvelope> envelopes,
        double[] values,
        double length,
        bool goesIn
    )
    {
        var least = Least(envelopes, values, length, goesIn);
        return (least.Envelope, least.Travel, least.Left);
    }

    private readonly record struct LeastLeft(SetEnvelope Envelope, double Travel, double Left);

    private static LeastLeft Least(
        IReadOnlyList<SetEnvelope> envelopes,
        double[] values,
        double length,
        bool goesIn
    )
    {
        var least = new LeastLeft(envelopes[0], 0, double.PositiveInfinity);
        foreach (var e in envelopes)
        {
            var (t, left) = goesIn
                ? Sweep.Smallest(e, values, x => e.LeftIn(length, x), least.Left)
                : Sweep.Smallest(e, values, x => e.LeftOut(length, x), least.Left);
            if (left < least.Left)
                least = new LeastLeft(e, t, left);
        }
        return least;
    }

    /// <summary>The zero moves by −(∂gap/∂value)/(∂gap/∂length) for each value; the binding heights stand still to first order.</summary>
    private static List<Contribution> Parts(
        LengthNumbers numbers,
        LeastLeft inwards,
        LeastLeft outwards,
        double length
    )
    {
        double Gap(SetEnvelope atIn, SetEnvelope atOut, double l) =>
            atIn.LeftIn(l, inwards.Travel) - atOut.LeftOut(l, outwards.Travel);
        const double Step = 1e-3;
        var slope =
            (
                Gap(inwards.Envelope, outwards.Envelope, length + Step)
                - Gap(inwards.Envelope, outwards.Envelope, length - Step)
            ) / (2 * Step);
        var parts = new List<Contribution>();
        foreach (var value in numbers.Uncertain)
        {
            if (
                !LengthUncertainty.Concerns(inwards.Envelope.Set, value)
                && !LengthUncertainty.Concerns(outwards.Envelope.Set, value)
            )
                continue;
            var (upIn, downIn) = LengthUncertainty.Nudged(numbers, inwards.Envelope.Set, value);
            var (upOut, downOut) = ReferenceEquals(inwards.Envelope, outwards.Envelope)
                ? (upIn, downIn)
                : LengthUncertainty.Nudged(numbers, outwards.Envelope.Set, value);
            var effect =
                LengthUncertainty.Effect(Gap(upIn, upOut, length), Gap(downIn, downOut, length))
                / slope;
            if (effect != 0)
                parts.Add(new(value, effect));
        }
        foreach (var end in (ReadOnlySpan<LeastLeft>)[inwards, outwards])
        {
            // Half of a bound's own interpolation error reaches the balance between two bounds.
            var between =
                InterpolationError.HalfWidth(end.Envelope.Set, numbers.Values, end.Travel, length)
                / Math.Sqrt(3)
                / 2;
            if (between > 0)
                parts.Add(new(null, between));
        }
        return parts;
    }

    private static double Zero(
        Func<double, double> f,
        double a,
        double b,
        double fa,
        double fb,
        double enough
    )
    {
        for (var i = 0; i < 100 && Math.Abs(b - a) > enough; i++)
        {
            var x = b - fb * (b - a) / (fb - fa);
            var fx = f(x);
            if (Math.Abs(fx) < enough / 10)
                return x;
            if (fx * fb < 0)
                (a, fa) = (b, fb);
            else
                fa /= 2;
            (b, fb) = (x, fx);
        }
        return b;
    }
}
