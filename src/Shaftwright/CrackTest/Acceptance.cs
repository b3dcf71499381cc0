namespace Shaftwright.CrackTest;

/// <summary>Sizes of marks that the levels accept.</summary>
/// <remarks>Source: ISO 23277 (penetrant) and ISO 23278 (magnetic particle), Table 1, both <b>from memory</b>; the definition of a
/// linear mark, longer than three times its width, looked up in a text identical to ISO 23277. Have somebody read the standards
/// before a level is quoted. Sizes are those of the mark, not of the flaw. Check values: Published/crack-acceptance.json.</remarks>
public static class Acceptance
{
    /// <summary>What the sources of the levels are called.</summary>
    public static string Source(TestMethod method) =>
        method.IsMagnetic() ? "ISO 23278, Table 1, from memory" : "ISO 23277, Table 1, from memory";

    // Far below any rule, so that 3 × 0.8 is 2.4.
    internal const double Hair = 1e-9;

    // By level 1, 2, 3.
    private static readonly double[] s_penetrantLines = [2, 4, 8];
    private static readonly double[] s_penetrantRound = [4, 6, 8];
    private static readonly double[] s_magneticLines = [1.5, 3, 6];
    private static readonly double[] s_magneticRound = [2, 3, 4];

    /// <summary>Whether a mark is linear: longer than three times its width. With the width unknown it counts as linear.</summary>
    /// <param name="length">mm.</param>
    /// <param name="width">mm; null when not measured.</param>
    public static bool IsLinear(double length, double? width) =>
        width is not { } w || length > 3 * w + Hair;

    /// <summary>Longest mark that a level accepts, mm.</summary>
    /// <param name="method">How it was found.</param>
    /// <param name="level">The level. With X, lines are judged by level 1.</param>
    /// <param name="linear">Whether it is a line.</param>
    public static double Largest(TestMethod method, AcceptanceLevel level, bool linear)
    {
        var row = (method.IsMagnetic(), linear) switch
        {
            (false, true) => s_penetrantLines,
            (false, false) => s_penetrantRound,
            (true, true) => s_magneticLines,
            (true, false) => s_magneticRound,
        };
        var column = level switch
        {
            AcceptanceLevel.One => 0,
            AcceptanceLevel.Two => 1,
            AcceptanceLevel.TwoX => linear ? 0 : 1,
            AcceptanceLevel.ThreeX when linear => 0,
            _ => 2,
        };
        return row[column];
    }

    /// <summary>Whether a level accepts a mark.</summary>
    /// <param name="method">How it was found.</param>
    /// <param name="level">The level.</param>
    /// <param name="length">Largest dimension, mm.</param>
    /// <param name="width">mm; null when not measured.</param>
    /// <param name="crack">True when it was recognised as a crack: no level accepts one (ISO 5817, no. 100, from memory).</param>
    public static bool Accepts(
        TestMethod method,
        AcceptanceLevel level,
        double length,
        double? width,
        bool crack = false
    ) => !crack && length <= Largest(method, level, IsLinear(length, width)) + Hair;
}
