namespace Shaftwright.Truing;

/// <summary>One harmonic with its uncertainty along and across its own direction.</summary>
/// <param name="Offset">Size and direction, mm.</param>
/// <param name="Along">Standard uncertainty of the size, mm.</param>
/// <param name="Sideways">Standard uncertainty across it, mm: divided by the size, that of the direction.</param>
/// <param name="Mean">Standard uncertainty in any one direction, mm.</param>
/// <param name="HasDirection">False when its own uncertainty could have made it, so that it points nowhere.</param>
internal readonly record struct FirstPart(
    Across Offset,
    double Along,
    double Sideways,
    double Mean,
    bool HasDirection
)
{
    public static FirstPart Of(HarmonicFit fit, double[] variances, int order = 1)
    {
        var part = fit.Part(order);
        var (aa, ab, bb) = fit.Covariance(order, variances);
        var half = (aa - bb) / 2;
        var worst = (aa + bb) / 2 + Math.Sqrt(half * half + ab * ab);
        var mean = Math.Sqrt((aa + bb) / 2);
        var e = part.Size;
        // Along a direction that is not known, the worst one counts.
        if (e <= 2 * Math.Sqrt(worst))
            return new(part, Math.Sqrt(worst), Math.Sqrt(worst), mean, false);
        var (ux, uy) = (part.Toward0 / e, part.Toward90 / e);
        return new(
            part,
            Math.Sqrt(ux * ux * aa + 2 * ux * uy * ab + uy * uy * bb),
            Math.Sqrt(uy * uy * aa - 2 * ux * uy * ab + ux * ux * bb),
            mean,
            true
        );
    }
}
