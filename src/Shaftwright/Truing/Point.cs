namespace Shaftwright.Truing;

/// <summary>One reading in plain numbers.</summary>
/// <param name="Angle">rad, 0 to 2π.</param>
/// <param name="Dial">mm.</param>
/// <param name="AngleUncertainty">Standard uncertainty of the angle, rad.</param>
/// <param name="DialUncertainty">Standard uncertainty of the dial, mm.</param>
/// <param name="Reading">Its place in the turn's list.</param>
internal readonly record struct Point(
    double Angle,
    double Dial,
    double AngleUncertainty,
    double DialUncertainty,
    int Reading
);
