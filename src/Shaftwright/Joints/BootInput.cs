using Shaftwright.Measures;

namespace Shaftwright.Joints;

/// <summary>A joint's boot: where it is clamped, and what it can do.</summary>
public sealed record BootInput
{
    /// <summary>From the joint centre to the middle of the large clamp, towards the middle of the shaft, joint straight and at mid-stroke.</summary>
    public Measured<Distance>? LargeClamp { get; init; }

    /// <summary>From the joint centre to the middle of the small clamp on the shaft, towards the middle of the shaft.</summary>
    public Measured<Distance>? SmallClamp { get; init; }

    /// <summary>Shortest that its axis may become between the clamps before its folds are solid.</summary>
    public Measured<Distance>? Shortest { get; init; }

    /// <summary>Longest before its folds are flat.</summary>
    public Measured<Distance>? Longest { get; init; }

    /// <summary>Largest angle it may work at.</summary>
    public Measured<Angle>? AngleLimit { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, BootFields.LargeClamp, LargeClamp);
        check.Range(path, BootFields.SmallClamp, SmallClamp);
        check.Range(path, BootFields.Shortest, Shortest);
        check.Range(path, BootFields.Longest, Longest);
        check.Range(path, BootFields.AngleLimit, AngleLimit);
    }

    /// <summary>Length of its axis between the clamps, mm.</summary>
    /// <param name="plunge">Plunge of this joint out of its housing, mm; 0 for a fixed joint.</param>
    /// <param name="angle">Joint angle, rad.</param>
    /// <param name="share">Share of the plunge that the joint's centre moves in its housing; see <see cref="PlungeLimits.Share"/>.</param>
    /// <returns>mm; null when a clamp's place is not known.</returns>
    /// <remarks>The clamps stand p and q from the point the joint bends about, with the joint's angle between: law of cosines,
    /// p² + q² − 2pq·cos φ. Own derivation from rigid-body geometry; the folds' own shape is not described.</remarks>
    public double? LengthAt(double plunge, double angle, double share)
    {
        if (LargeClamp is not { } large || SmallClamp is not { } small)
            return null;
        var p = large.Value - share * plunge;
        var q = small.Value + (1 - share) * plunge;
        return Math.Sqrt(Math.Max(0, p * p + q * q - 2 * p * q * Math.Cos(angle)));
    }
}

/// <summary>The questions of <see cref="BootInput"/>.</summary>
public static class BootFields
{
    private const double Degree = Math.PI / 180;

    /// <summary>Large clamp, mm.</summary>
    public static Field<Distance> LargeClamp { get; } =
        new("largeClamp", "joint centre to the boot's large clamp", -50, 150, 1, "steel rule");

    /// <summary>Small clamp, mm.</summary>
    public static Field<Distance> SmallClamp { get; } =
        new("smallClamp", "joint centre to the boot's small clamp", 10, 400, 1, "steel rule");

    /// <summary>Shortest, mm.</summary>
    public static Field<Distance> Shortest { get; } =
        new("shortest", "boot pushed together, clamp to clamp", 5, 400, 1, "steel rule");

    /// <summary>Longest, mm.</summary>
    public static Field<Distance> Longest { get; } =
        new("longest", "boot pulled out, clamp to clamp", 5, 400, 1, "steel rule");

    /// <summary>Largest angle, rad.</summary>
    public static Field<Angle> AngleLimit { get; } =
        new("angleLimit", "largest angle of the boot", 1 * Degree, 60 * Degree);
}
