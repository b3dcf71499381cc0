namespace Shaftwright.Truing;

/// <summary>A size across the shaft with its direction round it, counted from the painted mark.</summary>
/// <param name="Toward0">Part towards the mark.</param>
/// <param name="Toward90">Part towards a quarter turn on from the mark, in the direction of numbering.</param>
/// <remarks>The unit is that of what it is used for: mm for an offset, rad for a kink, 1/mm for a curvature.</remarks>
public readonly record struct Across(double Toward0, double Toward90)
{
    /// <summary>How large.</summary>
    public double Size => Math.Sqrt(Toward0 * Toward0 + Toward90 * Toward90);

    /// <summary>Its direction from the mark, rad, 0 to 2π; 0 for no size.</summary>
    public double Direction => Turn(Math.Atan2(Toward90, Toward0));

    /// <summary>From a size and a direction, rad.</summary>
    public static Across Of(double size, double direction) =>
        new(size * Math.Cos(direction), size * Math.Sin(direction));

    /// <summary>Both together.</summary>
    public static Across operator +(Across a, Across b) =>
        new(a.Toward0 + b.Toward0, a.Toward90 + b.Toward90);

    /// <summary>One less the other.</summary>
    public static Across operator -(Across a, Across b) =>
        new(a.Toward0 - b.Toward0, a.Toward90 - b.Toward90);

    /// <summary>So many times.</summary>
    public static Across operator *(double times, Across a) =>
        new(times * a.Toward0, times * a.Toward90);

    /// <summary>An angle brought to 0 up to 2π, rad.</summary>
    public static double Turn(double angle)
    {
        var turn = angle % Math.Tau;
        if (turn < 0)
            turn += Math.Tau;
        return turn >= Math.Tau ? 0 : turn;
    }
}
