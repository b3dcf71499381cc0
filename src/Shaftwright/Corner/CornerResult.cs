using Shaftwright.Corner.Linkages;
using Shaftwright.Findings;

namespace Shaftwright.Corner;

/// <summary>Which way a set of readings was taken.</summary>
public enum ReadingForm
{
    /// <summary>In and out of a trial shaft.</summary>
    InAndOut,

    /// <summary>Distance and inner angle.</summary>
    DistanceAndAngle,
}

/// <summary>A polynomial in travel fitted to one quantity by least squares.</summary>
/// <remarks>Travel is scaled to −1…1 over the readings, so that the fit is well conditioned.</remarks>
public sealed class TravelCurve
{
    private readonly double[] _c;
    private readonly double _middle;
    private readonly double _half;

    internal TravelCurve(double[] coefficients, double middle, double half)
    {
        _c = coefficients;
        _middle = middle;
        _half = half;
    }

    /// <summary>Degree of the polynomial.</summary>
    public int Degree => _c.Length - 1;

    /// <summary>The value at a travel, mm.</summary>
    public double At(double travel)
    {
        var x = (travel - _middle) / _half;
        var value = 0.0;
        for (var i = _c.Length - 1; i >= 0; i--)
            value = value * x + _c[i];
        return value;
    }
}

/// <summary>One fitted set: the readings of one form at one steering position.</summary>
/// <param name="Form">How they were read.</param>
/// <param name="Steering">Steering.</param>
/// <param name="ReadingIndexes">Which readings of the corner, in order of travel.</param>
/// <param name="FromTravel">Lowest travel read, mm.</param>
/// <param name="ToTravel">Highest travel read, mm.</param>
/// <param name="Fitted">False when there are too few travels to fit; then the readings stand alone.</param>
/// <param name="Degree">Degree of the fit in travel.</param>
/// <param name="Residuals">Reading minus fit, as a length in mm, one a reading (of the worse of its two curves).</param>
/// <param name="LargestInterpolationError">Largest half-width of what the curve may be off between readings, mm.</param>
public sealed record FittedSet(
    ReadingForm Form,
    Steering Steering,
    IReadOnlyList<int> ReadingIndexes,
    double FromTravel,
    double ToTravel,
    bool Fitted,
    int Degree,
    IReadOnlyList<double> Residuals,
    double LargestInterpolationError
);

/// <summary>The answer of the corner stage: the fitted sets and what to know of them.</summary>
public sealed record CornerResult
{
    /// <summary>The fitted sets.</summary>
    public IReadOnlyList<FittedSet> Sets { get; init; } = [];

    /// <summary>What the linkage does; null when none is entered or it cannot be set up.</summary>
    public LinkageResult? Linkage { get; init; }

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
