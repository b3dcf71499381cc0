using Shaftwright.Measures;

namespace Shaftwright.Length;

/// <summary>What is asked of the length beside the readings.</summary>
public sealed record LengthInput
{
    /// <summary>Plunge to keep unused at each stop.</summary>
    public Measured<Distance>? Margin { get; init; }

    /// <summary>A joint-centre length already decided on, to be judged instead of proposed.</summary>
    public Measured<Distance>? Chosen { get; init; }

    /// <summary>Which of the lengths that work is made when none is chosen.</summary>
    public Aim Aim { get; init; }

    /// <summary>How far off the finished shaft may come out each way, joint centre to joint centre: cut, shims, shrinkage of the weld.</summary>
    public Measured<Distance>? Making { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, LengthFields.Making, Making);
        check.Range(path, LengthFields.Margin, Margin);
        check.Range(path, LengthFields.Chosen, Chosen);
    }
}

/// <summary>The questions of <see cref="LengthInput"/>.</summary>
public static class LengthFields
{
    /// <summary>Margin, mm. When not given, <see cref="UsualMargin"/>.</summary>
    public static Field<Distance> Margin { get; } =
        new("margin", "plunge to keep unused at each stop", 0, 30);

    /// <summary>Length already chosen, mm.</summary>
    public static Field<Distance> Chosen { get; } =
        new("chosen", "joint-centre length already chosen", 50, 2000, 0.5, "steel rule");

    /// <summary>How far off the finished shaft may come out, mm.</summary>
    public static Field<Distance> Making { get; } =
        new("making", "how far off the finished shaft may come out, each way", 0, 10);

    /// <summary>Margin taken when none is given, mm. Common practice, no source.</summary>
    public const double UsualMargin = 3;
}
