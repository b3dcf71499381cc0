namespace Shaftwright.Truing;

/// <summary>How many harmonics a turn's readings show, and which readings stand alone.</summary>
/// <remarks>
/// <para>Never more than the readings can tell apart: order K above 1 is tried while there are at least 2K + 4 places (three are left
/// to check) and half its wave is as wide as the widest gap. An order above that would come out as a lower one.</para>
/// <para>Choice: for each K, readings are left out one by one, the worst first (largest r²/(1 − h)), up to a quarter of the
/// places, twelve at most, and never with fewer than six. Of all those the smallest n ln s² + χ²/s² + 9.21 (K − 1) + 16 × left out is taken,
/// s² = max(1, χ²/freedom): 9.21 is the 1 % point of χ² with the two parts of a harmonic, 16 is four standard deviations
/// squared. Where the runner-up, with another idea of what stands alone, is within 6 (twenty to one in likelihood), the choice
/// is called open. Source: the Gaussian likelihood; the prices are ours.</para>
/// <para>From there, with the scale s held, Tukey's biweight (c = 4.685) is iterated: J. W. Tukey; the constant for 95 %
/// efficiency, from memory. A reading that ends with a weight below 0.05, four scales off, is a blip.</para>
/// </remarks>
internal sealed class TurnFit
{
    private const int HighestTried = 6;
    private const double Harmonic = 9.21;
    private const double LeftOut = 16;
    private const double Open = 6;
    private const double Tukey = 4.685;
    private const int MostLeftOut = 12;

    private TurnFit(HarmonicFit fit, double[] weights, double[] variances, int highest)
    {
        Fit = fit;
        Weights = weights;
        Variances = variances;
        HighestOrder = highest;
    }

    /// <summary>The fit.</summary>
    public HarmonicFit Fit { get; }

    /// <summary>What each reading counted for.</summary>
    public double[] Weights { get; }

    /// <summary>Variance of each reading, widened to the scatter, mm².</summary>
    public double[] Variances { get; }

    /// <summary>The highest order the readings can tell apart.</summary>
    public int HighestOrder { get; }

    /// <summary>χ² of what is left over its freedom, before widening; 0 when nothing is left to check.</summary>
    public double Scatter { get; private init; }

    /// <summary>Order of another explanation that is about as likely, and how many readings it leaves out; null when there is none.</summary>
    public (int Order, int LeftOut)? Else { get; private init; }

    /// <summary>True for a reading that stands alone.</summary>
    public bool IsBlip(int i) => Weights[i] < 0.05;

    /// <summary>Fits. Null when the angles do not fix a first harmonic.</summary>
    /// <param name="points">The readings.</param>
    /// <param name="same">Angles nearer than this are one place, rad.</param>
    public static TurnFit? Of(IReadOnlyList<Point> points, double same)
    {
        var n = points.Count;
        var ones = new double[n];
        Array.Fill(ones, 1);
        if (HarmonicFit.Of(points, ones, 1) is not { } plain)
            return null;
        var variances = VariancesBy(plain, points);
        var highest = HighestFor(points, ones, same);
        var most =
            n >= 6
                ? Math.Min(MostLeftOut, Round.Of([.. points.Select(p => p.Angle)], same).Places / 4)
                : 0;

        Candidate? best = null;
        var all = new List<Candidate>();
        for (var order = 1; order <= highest; order++)
        {
            var weights = (double[])ones.Clone();
            for (var left = 0; ; left++)
            {
                if (HarmonicFit.Of(points, weights, order) is not { } fit)
                    break;
                var candidate = Candidate.Of(fit, weights, variances, left);
                all.Add(candidate);
                if (best is null || candidate.Cost < best.Cost)
                    best = candidate;
                if (left == most || Worst(candidate, variances) is not { } worst)
                    break;
                weights = (double[])weights.Clone();
                weights[worst] = 0;
                if (HighestFor(points, weights, same) < order)
                    break;
            }
        }
        // The plain fit is always among them.
        var taken = best!;
        var other = all.Where(c =>
                c.Cost < taken.Cost + Open
                && !c.SameLeftOut(taken)
                && (c.Left > 0 || taken.Left > 0)
            )
            .MinBy(c => c.Cost);
        return Refined(points, taken, variances, highest, other);
    }

    private static TurnFit Refined(
        IReadOnlyList<Point> points,
        Candidate taken,
        double[] variances,
        int highest,
        Candidate? other
    )
    {
        var (fit, weights) = (taken.Fit, taken.Weights);
        // With one number or none to check, a small residual says nothing about its reading.
        if (points.Count >= 6 && taken.Freedom >= 2)
        {
            for (var pass = 0; pass < 40; pass++)
            {
                var next = new double[weights.Length];
                for (var i = 0; i < next.Length; i++)
                {
                    var u = fit.Residuals[i] / (Tukey * Math.Sqrt(taken.Scale * variances[i]));
                    next[i] = Math.Abs(u) < 1 ? (1 - u * u) * (1 - u * u) : 0;
                }
                if (HarmonicFit.Of(points, next, fit.Order) is not { } again)
                    break;
                var moved = (again.Part(1) - fit.Part(1)).Size;
                (fit, weights) = (again, next);
                if (moved < 1e-12)
                    break;
            }
        }
        var final = VariancesBy(fit, points);
        for (var i = 0; i < final.Length; i++)
            final[i] *= taken.Scale;
        return new(fit, weights, final, highest)
        {
            Scatter = taken.Freedom > 0 ? taken.Misfit / taken.Freedom : 0,
            Else = other is null ? null : (other.Fit.Order, other.Left),
        };
    }

    /// <summary>Variance of each reading: its dial's, and its angle's by the slope there, mm².</summary>
    private static double[] VariancesBy(HarmonicFit fit, IReadOnlyList<Point> points)
    {
        var variances = new double[points.Count];
        for (var i = 0; i < variances.Length; i++)
        {
            var (dial, angle) = (
                points[i].DialUncertainty,
                fit.SlopeAt(points[i].Angle) * points[i].AngleUncertainty
            );
            variances[i] = dial * dial + angle * angle;
        }
        return variances;
    }

    private static int HighestFor(IReadOnlyList<Point> points, double[] weights, double same)
    {
        var round = Round.Of(
            [.. points.Where((_, i) => weights[i] > 0).Select(p => p.Angle)],
            same
        );
        if (!round.GoesRound)
            return 0;
        var order = 1;
        while (
            order < HighestTried
            && 2 * (order + 1) + 4 <= round.Places
            && (order + 1) * round.WidestGap <= Math.PI + 0.01
        )
            order++;
        return order;
    }

    private static int? Worst(Candidate candidate, double[] variances)
    {
        int? worst = null;
        var most = 0.0;
        for (var i = 0; i < variances.Length; i++)
        {
            var free = 1 - candidate.Fit.Leverages[i];
            if (candidate.Weights[i] <= 0 || free < 1e-6)
                continue;
            var r = candidate.Fit.Residuals[i];
            if (r * r / (free * variances[i]) is var gain && gain > most)
                (worst, most) = (i, gain);
        }
        return worst;
    }

    private sealed class Candidate
    {
        public required HarmonicFit Fit { get; init; }

        public required double[] Weights { get; init; }

        public int Left { get; init; }

        public double Misfit { get; init; }

        public int Freedom { get; init; }

        public double Scale { get; init; }

        public double Cost { get; init; }

        public static Candidate Of(HarmonicFit fit, double[] weights, double[] variances, int left)
        {
            var misfit = 0.0;
            for (var i = 0; i < weights.Length; i++)
                if (weights[i] > 0)
                    misfit += fit.Residuals[i] * fit.Residuals[i] / variances[i];
            var freedom = weights.Length - left - 2 * fit.Order - 1;
            var scale = freedom > 0 ? Math.Max(1, misfit / freedom) : 1;
            return new()
            {
                Fit = fit,
                Weights = weights,
                Left = left,
                Misfit = misfit,
                Freedom = freedom,
                Scale = scale,
                Cost =
                    weights.Length * Math.Log(scale)
                    + misfit / scale
                    + Harmonic * (fit.Order - 1)
                    + LeftOut * left,
            };
        }

        public bool SameLeftOut(Candidate other) => Weights.AsSpan().SequenceEqual(other.Weights);
    }
}
