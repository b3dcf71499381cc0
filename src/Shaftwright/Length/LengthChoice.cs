namespace Shaftwright.Length;

/// <summary>Ways to pick one length out of the window.</summary>
public enum Aim
{
    /// <summary>As much plunge left at the one end of the stroke as at the other, over all positions.</summary>
    Balanced,

    /// <summary>The joint at the middle of its stroke at ride height.</summary>
    Centred,

    /// <summary>Both ends of the window as many of their own standard uncertainties away.</summary>
    EquallySure,

    /// <summary>Least chance that any position passes a limit.</summary>
    MostLikely,
}

/// <summary>A length picked in one of those ways.</summary>
/// <param name="Aim">Which way.</param>
/// <param name="Length">mm, joint centre to joint centre.</param>
/// <param name="StandardUncertainty">Of the length itself, from the readings, first order; mm.</param>
/// <param name="ChanceOfViolation">Chance that some position passes a limit with its margin, first order, 0 to 1.</param>
/// <param name="Works">True when it lies in the window.</param>
public sealed record LengthChoice(
    Aim Aim,
    double Length,
    double StandardUncertainty,
    double ChanceOfViolation,
    bool Works
);
