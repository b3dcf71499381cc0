using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>The linkage as the readings at the car corrected it.</summary>
/// <remarks>With x = mean + L·z the measured points say z = 0 ± 1, and each reading y says h(x) = y ± u. The best z has the least
/// |z|² + Σ((y − h)/u)², found by Levenberg and Marquardt; what is known after it is the inverse of I + JᵀJ, J the slopes of h/u over
/// z at the best z. The readings' heights are uncertain too: u² takes in the slope over travel times the height's own uncertainty.
/// A reading that stays more than 3 of its u off is taken out, the worst first, and all is fitted again: it is named, not believed.
/// Source: Levenberg 1944, Marquardt 1963 (from memory); Bayes's rule for normal errors, JCGM 101:2008 and Gelman et al., Bayesian
/// Data Analysis, ch. 14 (from memory); own derivation, docs/linkages.md.</remarks>
internal sealed record Correction(
    LinkageModel Model,
    IReadOnlyList<ReadingFit> Readings,
    IReadOnlyList<CorrectedCoordinate> Moved,
    bool Settled
)
{
    /// <summary>A reading this many of its standard uncertainties off does not fit.</summary>
    public const double DoesNotFit = 3;

    private const double Nudge = 1e-4;

    /// <summary>Corrects a linkage; null when nothing was read that says anything of it.</summary>
    public static Correction? Of(LinkageModel model, IReadOnlyList<LinkageReading> readings)
    {
        var used = readings.ToList();
        var left = new List<LinkageReading>();
        if (used.Count == 0)
            return null;
        Fit? fit;
        while (true)
        {
            fit = Best(model, used);
            if (fit is null)
                return null;
            var worst = Enumerable.Range(0, used.Count).MaxBy(i => Math.Abs(fit.Off[i]));
            // More than a third of them cannot all be slips: then it is the points that are wrong, and that is said instead.
            if (Math.Abs(fit.Off[worst]) <= DoesNotFit || 3 * (left.Count + 1) > readings.Count)
                break;
            left.Add(used[worst]);
            used.RemoveAt(worst);
        }
        var n = model.Mean.Length;
        var mean = model.Coordinates(fit.Z);
        var factor = new double[n, n];
        var half = Symmetric.Factor(Symmetric.Inverse(Symmetric.Factor(fit.Normal)!))!;
        for (var i = 0; i < n; i++)
        for (var j = 0; j < n; j++)
        for (var k = 0; k < n; k++)
            factor[i, j] += model.Factor[i, k] * half[k, j];
        var after = model.With(mean, factor);
        return new(
            after,
            [
                .. readings.Select(r =>
                {
                    var at = used.IndexOf(r);
                    var (read, said, u) = Said(after, mean, r);
                    return new ReadingFit(r.Reading, r.Words, read, said, u, at < 0);
                }),
            ],
            [
                .. Enumerable
                    .Range(0, n)
                    .Where(i => model.StandardUncertainty[i] > 0)
                    .Select(i => new CorrectedCoordinate(
                        model.Words[i],
                        model.Mean[i],
                        mean[i],
                        model.StandardUncertainty[i],
                        after.StandardUncertainty[i],
                        model.IsAngle(i)
                    )),
            ],
            fit.Settled
        );
    }

    private sealed class Fit(double[] z, double[,] normal, double[] off, bool settled)
    {
        public double[] Z => z;

        public double[,] Normal => normal;

        public double[] Off => off;

        public bool Settled => settled;
    }

    private static (double Read, double Said, double U) Said(
        LinkageModel model,
        double[] x,
        LinkageReading r
    )
    {
        var path = new LinkagePath(new LinkageCar(model, x), r.Place);
        var line = path.Line(r.Travel);
        // Half a millimetre either way: the slope of what is read over the height it was read at.
        var slope = r.Of(path.Line(r.Travel + 0.5)) - r.Of(path.Line(r.Travel - 0.5));
        var u = double.IsFinite(slope)
            ? double.Hypot(r.Uncertainty, slope * r.TravelUncertainty)
            : r.Uncertainty;
        return (r.ReadAt(line), r.Of(line), Math.Max(u, 1e-9));
    }

    private static Fit? Best(LinkageModel model, List<LinkageReading> readings)
    {
        var n = model.Mean.Length;
        var z = new double[n];
        // Uncertainties at the measured points; they change little on the way.
        var u = readings.ConvertAll(r => Said(model, model.Mean, r).U);
        double[]? Off(double[] at)
        {
            var car = new LinkageCar(model, model.Coordinates(at));
            var paths = new Dictionary<LinkagePlace, LinkagePath>();
            var off = new double[readings.Count];
            for (var i = 0; i < off.Length; i++)
            {
                var r = readings[i];
                if (!paths.TryGetValue(r.Place, out var path))
                    paths[r.Place] = path = new(car, r.Place);
                var line = path.Line(r.Travel);
                off[i] = (r.ReadAt(line) - r.Of(line)) / u[i];
                if (!double.IsFinite(off[i]))
                    return null;
            }
            return off;
        }
        static double Squares(double[] at, double[] off) =>
            at.Sum(v => v * v) + off.Sum(v => v * v);

        if (Off(z) is not { } here)
            return null;
        var damping = 1e-3;
        var settled = false;
        var (normal, right) = Slopes(n, z, here, Off, model);
        for (var i = 0; i < 60 && !settled; i++)
        {
            var damped = (double[,])normal.Clone();
            for (var k = 0; k < n; k++)
                damped[k, k] *= 1 + damping;
            var step = Symmetric.Solve(Symmetric.Factor(damped)!, right);
            double[] next = [.. z.Select((v, k) => v + step[k])];
            var off = Off(next);
            var size = Math.Sqrt(step.Sum(v => v * v));
            if (off is null || Squares(next, off) > Squares(z, here) * (1 + 1e-12))
            {
                damping *= 10;
                // The step cannot be told from rounding any more: it is at the bottom.
                settled = size < 1e-7;
                if (damping > 1e12)
                    break;
                continue;
            }
            (z, here) = (next, off);
            damping = Math.Max(damping / 10, 1e-12);
            settled = size < 1e-7;
            (normal, right) = Slopes(n, z, here, Off, model);
        }
        return new(z, normal, here, settled);
    }

    /// <summary>I + JᵀJ and what pulls z.</summary>
    private static (double[,] Normal, double[] Right) Slopes(
        int n,
        double[] z,
        double[] off,
        Func<double[], double[]?> offAt,
        LinkageModel model
    )
    {
        var slopes = new double[off.Length, n];
        for (var k = 0; k < n; k++)
        {
            if (!model.Moves(k))
                continue;
            var moved = (double[])z.Clone();
            moved[k] = z[k] + Nudge;
            var up = offAt(moved);
            moved[k] = z[k] - Nudge;
            var down = offAt(moved);
            for (var i = 0; up is not null && down is not null && i < off.Length; i++)
                slopes[i, k] = (up[i] - down[i]) / (2 * Nudge);
        }
        var normal = new double[n, n];
        var right = new double[n];
        for (var k = 0; k < n; k++)
        {
            normal[k, k] = 1;
            right[k] = -z[k];
            for (var i = 0; i < off.Length; i++)
            {
                right[k] -= slopes[i, k] * off[i];
                for (var j = 0; j < n; j++)
                    normal[k, j] += slopes[i, k] * slopes[i, j];
            }
        }
        return (normal, right);
    }
}
