namespace Shaftwright.Truing;

/// <summary>Harmonics fitted to readings round a shaft by plain least squares: every reading counts once, and the order is yours.</summary>
/// <remarks>The stage itself goes by this fit, and then judges how many harmonics the readings show and which of them stand alone.
/// y = m + Σ (a_k cos kθ + b_k sin kθ), by Gram and Schmidt on the columns, k from 1. Checked on certified sets:
/// Published/strd-polynomials.json.</remarks>
public sealed record PlainFit
{
    private PlainFit(double middle, IReadOnlyList<Across> parts, IReadOnlyList<double> residuals) =>
        (Middle, Parts, Residuals) = (middle, parts, residuals);

    /// <summary>m, in the unit of the readings.</summary>
    public double Middle { get; }

    /// <summary>a_k and b_k, from k = 1 on.</summary>
    public IReadOnlyList<Across> Parts { get; }

    /// <summary>Each reading less the fit.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>Fits; null when the readings cannot tell the unknowns apart.</summary>
    /// <param name="readings">Angle, rad, and what was read there.</param>
    /// <param name="order">The highest k, from 1.</param>
    /// <exception cref="ArgumentNullException"><paramref name="readings"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="order"/> is below 1.</exception>
    public static PlainFit? Of(IReadOnlyList<(double Angle, double Read)> readings, int order)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentOutOfRangeException.ThrowIfLessThan(order, 1);
        var ones = new double[readings.Count];
        Array.Fill(ones, 1);
        return
            HarmonicFit.Of(
                [.. readings.Select((r, i) => new Point(r.Angle, r.Read, 0, 1, i))],
                ones,
                order
            )
                is { } fit
            ? new(fit.Middle, [.. Enumerable.Range(1, order).Select(fit.Part)], [.. fit.Residuals])
            : null;
    }
}
