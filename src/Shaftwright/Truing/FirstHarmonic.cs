namespace Shaftwright.Truing;

/// <summary>One reading in plain numbers.</summary>
/// <param name="Angle">rad, 0 to 2π.</param>
/// <param name="Dial">mm.</param>
/// <param name="AngleUncertainty">Standard uncertainty of the angle, rad.</param>
/// <param name="DialUncertainty">Standard uncertainty of the dial, mm.</param>
internal readonly record struct Point(
    double Angle,
    double Dial,
    double AngleUncertainty,
    double DialUncertainty
);

/// <summary>The part of a turn's readings that goes once round: y = m + a cos θ + b sin θ, by least squares.</summary>
/// <remarks>
/// <para>Angles may stand anywhere and repeat. The two columns and the readings are taken from their means first, which leaves
/// two normal equations; they are well conditioned while the readings go round more than half of the shaft.</para>
/// <para>Uncertainty: each reading has its dial's and, by the slope of the fit at it, its angle's. If the readings scatter more
/// about the fit than that (an oval, a blip), all are widened to the scatter. These pass through the same linear equations to a
/// and b, and to first order to offset and direction. Source: JCGM 100:2008 (GUM), 5.1.2 and 5.2.2; the widening is the usual
/// external consistency (Birge) ratio, from memory.</para>
/// <para>Accuracy: agrees with an independent least squares to 1e-12 mm on the tests' problems.</para>
/// </remarks>
internal sealed class FirstHarmonic
{
    private FirstHarmonic(double mean, double a, double b, double[] residuals, double[] leverages)
    {
        Mean = mean;
        A = a;
        B = b;
        Residuals = residuals;
        Leverages = leverages;
    }

    /// <summary>m, mm.</summary>
    public double Mean { get; }

    /// <summary>Cosine part, mm.</summary>
    public double A { get; }

    /// <summary>Sine part, mm.</summary>
    public double B { get; }

    /// <summary>√(a² + b²), mm.</summary>
    public double Offset => Math.Sqrt(A * A + B * B);

    /// <summary>Where the surface stands highest, rad, 0 to 2π.</summary>
    public double HighPoint => Turn(Math.Atan2(B, A));

    /// <summary>Reading less fit, mm, in the order of the readings.</summary>
    public double[] Residuals { get; }

    /// <summary>How much each reading pulls its own fit, 0 to 1.</summary>
    public double[] Leverages { get; }

    /// <summary>Sum of the squares of the residuals, mm².</summary>
    public double SquareSum => Residuals.Sum(r => r * r);

    /// <summary>Standard uncertainty of the offset, mm.</summary>
    public double OffsetUncertainty { get; private set; }

    /// <summary>Standard uncertainty across the offset, mm: divided by it, that of the direction.</summary>
    public double SidewaysUncertainty { get; private set; }

    /// <summary>False when the offset's own uncertainty could have made it, so that it points nowhere.</summary>
    public bool HasDirection { get; private set; }

    /// <summary>An angle brought to 0 up to 2π, rad.</summary>
    public static double Turn(double angle)
    {
        var turn = angle % Math.Tau;
        if (turn < 0)
            turn += Math.Tau;
        return turn >= Math.Tau ? 0 : turn;
    }

    /// <summary>Fits. Null when the angles do not fix the three unknowns.</summary>
    /// <param name="points">The readings.</param>
    public static FirstHarmonic? Fit(IReadOnlyList<Point> points)
    {
        var n = points.Count;
        if (n < 3)
            return null;
        double meanC = 0,
            meanS = 0,
            meanY = 0;
        foreach (var p in points)
        {
            meanC += Math.Cos(p.Angle) / n;
            meanS += Math.Sin(p.Angle) / n;
            meanY += p.Dial / n;
        }
        double cc = 0,
            cs = 0,
            ss = 0,
            cy = 0,
            sy = 0;
        foreach (var p in points)
        {
            var (c, s, y) = (Math.Cos(p.Angle) - meanC, Math.Sin(p.Angle) - meanS, p.Dial - meanY);
            cc += c * c;
            cs += c * s;
            ss += s * s;
            cy += c * y;
            sy += s * y;
        }
        var det = cc * ss - cs * cs;
        if (det <= 1e-12 * (cc + ss) * (cc + ss))
            return null;
        var (a, b) = ((ss * cy - cs * sy) / det, (cc * sy - cs * cy) / det);

        var residuals = new double[n];
        var leverages = new double[n];
        for (var i = 0; i < n; i++)
        {
            var (c, s) = (Math.Cos(points[i].Angle) - meanC, Math.Sin(points[i].Angle) - meanS);
            residuals[i] = points[i].Dial - meanY - a * c - b * s;
            leverages[i] = 1.0 / n + (ss * c * c - 2 * cs * c * s + cc * s * s) / det;
        }
        var fit = new FirstHarmonic(meanY - a * meanC - b * meanS, a, b, residuals, leverages);
        fit.Propagate(points, meanC, meanS, (cc, cs, ss, det));
        return fit;
    }

    private void Propagate(
        IReadOnlyList<Point> points,
        double meanC,
        double meanS,
        (double CC, double CS, double SS, double Det) normal
    )
    {
        var n = points.Count;
        var variances = points
            .Select(p =>
            {
                var slope = B * Math.Cos(p.Angle) - A * Math.Sin(p.Angle);
                return Square(p.DialUncertainty) + Square(slope * p.AngleUncertainty);
            })
            .ToArray();
        var expected = variances.Average();
        var found = n > 3 ? SquareSum / (n - 3) : 0;
        var widen = found > expected && expected > 0 ? found / expected : 1;

        // Each reading's pull on a and b gives their covariance.
        double aa = 0,
            ab = 0,
            bb = 0;
        for (var i = 0; i < n; i++)
        {
            var (c, s) = (Math.Cos(points[i].Angle) - meanC, Math.Sin(points[i].Angle) - meanS);
            var onA = (normal.SS * c - normal.CS * s) / normal.Det;
            var onB = (normal.CC * s - normal.CS * c) / normal.Det;
            aa += onA * onA * variances[i] * widen;
            ab += onA * onB * variances[i] * widen;
            bb += onB * onB * variances[i] * widen;
        }
        var worst = (aa + bb) / 2 + Math.Sqrt(Square((aa - bb) / 2) + ab * ab);
        var e = Offset;
        HasDirection = e > 2 * Math.Sqrt(worst);
        if (!HasDirection)
        {
            // Along a direction that is not known, the worst one counts.
            OffsetUncertainty = SidewaysUncertainty = Math.Sqrt(worst);
            return;
        }
        var (ux, uy) = (A / e, B / e);
        OffsetUncertainty = Math.Sqrt(ux * ux * aa + 2 * ux * uy * ab + uy * uy * bb);
        SidewaysUncertainty = Math.Sqrt(uy * uy * aa - 2 * ux * uy * ab + ux * ux * bb);
    }

    private static double Square(double x) => x * x;
}
