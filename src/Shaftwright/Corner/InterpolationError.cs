namespace Shaftwright.Corner;

/// <summary>How far a fitted curve may be from the truth between the readings.</summary>
/// <remarks>A polynomial of degree p fitted to a function f errs between its points like f⁽ᵖ⁺¹⁾/(p+1)! times the residual of
/// fitting tᵖ⁺¹ at the same points; for as many points as coefficients this is the textbook remainder of interpolation.
/// The derivative is not known from three readings, so it is taken from an arm: for the square of a distance to a point e
/// from the axis of an arm of radius R that leans β at ride height, |f‴| = 6·e·sin β/(R²·cos⁵β) and |f⁗| ≈ 6·e/R³.
/// With R 300, e 200, β 15° that is 0.004 and 4.4e-5. The choice of those is ours; a test draws random linkages against it.</remarks>
internal static class InterpolationError
{
    /// <summary>Third and fourth derivatives of D² with respect to travel that are allowed for, in mm²/mm³ and mm²/mm⁴.</summary>
    private const double Third = 0.004,
        Fourth = 5e-5;

    /// <summary>Half-width of the error of a length at a travel, mm; 0 at the points of an exact interpolation.</summary>
    /// <param name="set">The set.</param>
    /// <param name="values">The row of values.</param>
    /// <param name="travel">Where, mm.</param>
    /// <param name="length">The length itself, mm, for the step from square to length.</param>
    public static double HalfWidth(ReadingSet set, double[] values, double travel, double length) =>
        length > 0 ? SquareError(set, values)(travel) / (2 * length) : 0;

    /// <summary>Half-width of the error of a squared length against travel, mm².</summary>
    /// <param name="set">The set.</param>
    /// <param name="values">The row of values.</param>
    public static Func<double, double> SquareError(ReadingSet set, double[] values)
    {
        // A linkage is solved at every travel.
        if (!set.Fitted || set.Place is not null)
            return _ => 0;
        var order = set.Degree + 1;
        var t = set.Column(values, CornerNumbers.Travel);
        var power = new double[t.Length];
        // About the middle, so that the powers stay small.
        var middle = (t[0] + t[^1]) / 2;
        for (var k = 0; k < t.Length; k++)
            power[k] = Math.Pow(t[k] - middle, order);
        var fit = CurveFit.Fit(t, power, set.Degree);
        var share = order == 3 ? Third / 6 : Fourth / 24;
        return travel => share * Math.Abs(Math.Pow(travel - middle, order) - fit.At(travel));
    }
}
