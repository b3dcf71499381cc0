using Shaftwright.Cut;
using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>One place read by the dial after tacking, to tell an offset of the two pieces from a tilt.</summary>
public sealed record TackNote
{
    /// <summary>On which piece.</summary>
    public ShaftEnd Piece { get; init; }

    /// <summary>Distance from the joint.</summary>
    public Measured<Distance>? FromJoint { get; init; }

    /// <summary>Total run-out there, largest reading less smallest.</summary>
    public Measured<Distance>? RunOut { get; init; }

    /// <summary>Angle from the mark where it stands highest.</summary>
    public Measured<Angle>? HighPoint { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, DialNoteFields.FromJoint, FromJoint);
        check.Range(path, DialNoteFields.RunOut, RunOut);
        check.Range(path, DialNoteFields.HighPoint, HighPoint);
    }
}

/// <summary>Run-out read between layers of beads, cooled to the same warmth each time, at one and the same place.</summary>
public sealed record LayerNote
{
    /// <summary>How many layers were on: 0 when only tacked.</summary>
    public int Layers { get; init; }

    /// <summary>How many beads of the next layer were on besides, 0 to 3, when it was read bead by bead.</summary>
    public int Beads { get; init; }

    /// <summary>Where the last layer began, from the mark, or with <see cref="Beads"/> where the last bead lies; null takes the place
    /// that was proposed.</summary>
    public Measured<Angle>? BegunAt { get; init; }

    /// <summary>Total run-out.</summary>
    public Measured<Distance>? RunOut { get; init; }

    /// <summary>Angle from the mark where it stands highest.</summary>
    public Measured<Angle>? HighPoint { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, DialNoteFields.BegunAt, BegunAt);
        check.Range(path, DialNoteFields.RunOut, RunOut);
        check.Range(path, DialNoteFields.HighPoint, HighPoint);
    }
}

/// <summary>The questions of <see cref="TackNote"/> and <see cref="LayerNote"/>.</summary>
public static class DialNoteFields
{
    /// <summary>Distance from the joint, mm.</summary>
    public static Field<Distance> FromJoint { get; } =
        new("fromJoint", "dial from the joint", 0, 2000, 1, "steel rule");

    /// <summary>Run-out, mm.</summary>
    public static Field<Distance> RunOut { get; } =
        new("runOut", "total run-out", 0, 20, 0.015, "dial indicator, 0.01 divisions");

    /// <summary>High point, rad.</summary>
    public static Field<Angle> HighPoint { get; } =
        new(
            "highPoint",
            "where it stands highest, from the mark",
            -4 * Math.PI,
            4 * Math.PI,
            10 * Math.PI / 180,
            "by eye against a dial of marks"
        );

    /// <summary>Beginning of a layer, rad.</summary>
    public static Field<Angle> BegunAt { get; } =
        new("begunAt", "where that layer began, from the mark", -4 * Math.PI, 4 * Math.PI);

    /// <summary>Most beads of a layer after which it is not whole yet.</summary>
    public const int MostBeads = 3;

    /// <summary>Most layers that are planned.</summary>
    public const int MostLayers = 40;
}
