using Shaftwright.Measures;

namespace Shaftwright.Joints;

/// <summary>A joint centre found from two measured positions of the shaft: housing held, shaft swung level from one to the other,
/// the straight way of two marks on top of the shaft measured.</summary>
/// <remarks>Both marks turn by the same angle about the centre, so their chords are as their distances from it, and no angle
/// need be read: R = a·n/(f − n), with a the distance between the marks, n and f the chords of the near and the far one.
/// Marks on top of the shaft stand over its axis, so that its thickness does not enter. Own derivation.</remarks>
public sealed record CentreSwing
{
    /// <summary>From the locating feature to the near mark, towards the middle of the shaft.</summary>
    public Measured<Distance>? SeatToMark { get; init; }

    /// <summary>From the near mark to the far one.</summary>
    public Measured<Distance>? MarksApart { get; init; }

    /// <summary>Straight way of the near mark between the two positions.</summary>
    public Measured<Distance>? ChordNear { get; init; }

    /// <summary>Straight way of the far mark.</summary>
    public Measured<Distance>? ChordFar { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, SwingFields.SeatToMark, SeatToMark);
        check.Range(path, SwingFields.MarksApart, MarksApart);
        check.Range(path, SwingFields.ChordNear, ChordNear);
        check.Range(path, SwingFields.ChordFar, ChordFar);
    }

    /// <summary>Joint centre beyond the locating feature, away from the middle of the shaft, with its standard uncertainty, mm;
    /// null when something is missing or the far mark did not move further than the near one.</summary>
    public (double SeatToCentre, double StandardUncertainty)? Centre()
    {
        if (
            SeatToMark is not { } mark
            || MarksApart is not { Value: > 0 } apart
            || ChordNear is not { Value: > 0 } near
            || ChordFar is not { } far
            || far.Value <= near.Value
        )
            return null;
        var (a, n, f) = (apart.Value, near.Value, far.Value);
        var radius = a * n / (f - n);
        var square =
            Square(SwingFields.SeatToMark.StandardUncertainty(mark))
            + Square(n / (f - n) * SwingFields.MarksApart.StandardUncertainty(apart))
            + Square(a * f / Square(f - n) * SwingFields.ChordNear.StandardUncertainty(near))
            + Square(a * n / Square(f - n) * SwingFields.ChordFar.StandardUncertainty(far));
        return (radius - mark.Value, Math.Sqrt(square));
    }

    private static double Square(double x) => x * x;
}

/// <summary>The questions of <see cref="CentreSwing"/>.</summary>
public static class SwingFields
{
    /// <summary>Seat to near mark, mm.</summary>
    public static Field<Distance> SeatToMark { get; } =
        new("seatToMark", "locating feature to the near mark", 0, 600, 0.3, "caliper");

    /// <summary>Between the marks, mm.</summary>
    public static Field<Distance> MarksApart { get; } =
        new("marksApart", "near mark to far mark", 20, 800, 0.5, "steel rule");

    /// <summary>Chord of the near mark, mm.</summary>
    public static Field<Distance> ChordNear { get; } =
        new("chordNear", "way of the near mark", 1, 600, 0.5, "steel rule");

    /// <summary>Chord of the far mark, mm.</summary>
    public static Field<Distance> ChordFar { get; } =
        new("chordFar", "way of the far mark", 1, 900, 0.5, "steel rule");
}
