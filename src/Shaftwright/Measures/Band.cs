namespace Shaftwright.Measures;

/// <summary>A range that surely, or as good as surely, holds a value that is not known better.</summary>
/// <param name="Low">Smallest, in the unit its owner states.</param>
/// <param name="High">Largest.</param>
public readonly record struct Band(double Low, double High)
{
    /// <summary>A value known exactly.</summary>
    public static Band Exactly(double value) => new(value, value);

    /// <summary>Both ends times a positive factor.</summary>
    public static Band operator *(Band band, double factor) =>
        new(band.Low * factor, band.High * factor);

    /// <summary>Product of two positive ranges.</summary>
    public static Band operator *(Band a, Band b) => new(a.Low * b.Low, a.High * b.High);

    /// <summary>Quotient of two positive ranges: the smallest and largest it can be.</summary>
    public static Band operator /(Band a, Band b) => new(a.Low / b.High, a.High / b.Low);
}
