namespace Shaftwright.Length;

/// <summary>What a set's curves are taken to be off between its readings on one drawn car, as lengths.</summary>
/// <param name="squareError">Half-width of the error of a squared length against travel, mm².</param>
/// <param name="over">Share of it at the long side, −1 to 1, ÷ twice the length, 1/mm.</param>
/// <param name="under">The same at the short side.</param>
internal sealed class CurveSlip(Func<double, double> squareError, double over, double under)
{
    /// <summary>mm, to add to the longest length.</summary>
    public double Over(double travel) => over * squareError(travel);

    /// <summary>mm, to add to the shortest.</summary>
    public double Under(double travel) => under * squareError(travel);
}
