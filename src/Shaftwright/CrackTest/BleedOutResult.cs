using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>Why a photo could not be measured, or that it was.</summary>
public enum BleedOutOutcome
{
    /// <summary>Measured, for a person to correct.</summary>
    Measured,

    /// <summary>The bytes do not make a photo of that size, or red was asked of one without colour.</summary>
    NoPhoto,

    /// <summary>The known width is not one: its ends are less than 10 pixels apart, or it is not a positive length.</summary>
    NoScale,

    /// <summary>Nothing stands out from its surroundings where it was pointed.</summary>
    NothingThere,

    /// <summary>What stands out reaches the edge of the photo, so its size is not in it.</summary>
    CutOff,
}

/// <summary>A bleed-out as a photo shows it. It is a proposal to be corrected, and never an acceptance.</summary>
/// <param name="Outcome">Whether it was measured.</param>
/// <param name="Area">mm²; 0 when not measured.</param>
/// <param name="AreaPlusMinus">Bound of its error, mm².</param>
/// <param name="Length">Largest distance across it, mm.</param>
/// <param name="Width">Smallest distance between two parallels that hold it, mm.</param>
/// <param name="PlusMinus">Bound of the error of length and width from pixels and scale, mm.</param>
/// <param name="Direction">Direction of the length, rad from the photo's horizontal, downwards positive, −π/2 to π/2.</param>
/// <param name="Pixels">Pixels in it.</param>
/// <param name="Contrast">How far it stands out, in standard deviations of what surrounds it.</param>
/// <param name="Outline">Corners of its convex outline, pixels, to draw over the photo.</param>
/// <param name="Words">The answer in a sentence or two.</param>
public sealed record BleedOutResult(
    BleedOutOutcome Outcome,
    double Area,
    double AreaPlusMinus,
    double Length,
    double Width,
    double PlusMinus,
    double Direction,
    int Pixels,
    double Contrast,
    IReadOnlyList<PhotoPoint> Outline,
    Sentence Words
);
