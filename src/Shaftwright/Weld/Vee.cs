namespace Shaftwright.Weld;

/// <summary>A round bar in a vee block, its two faces perhaps shimmed.</summary>
/// <remarks>α is half the included angle, r the bar's radius, tL and tR the shims. Each face touches the bar, so the bar's
/// centre stands r + t from it; with unit normals (∓cos α, sin α) that gives, from the apex of the vee,
/// y = (2r + tL + tR) / (2 sin α) and x = (tL − tR) / (2 cos α), x away from the thicker shim.
/// Valid while the bar touches both faces. Exact for round bars. Source: own derivation, plane geometry; checked against
/// circles made tangent to two lines (tests, VeeTests).</remarks>
internal static class Vee
{
    /// <summary>Where the centre of a bar stands: aside and up from the apex, mm.</summary>
    public static (double X, double Y) Centre(double radius, double left, double right, double vee)
    {
        var alpha = vee / 2;
        return (
            (left - right) / (2 * Math.Cos(alpha)),
            (2 * radius + left + right) / (2 * Math.Sin(alpha))
        );
    }

    /// <summary>How far the axis moves when the shims are off by these errors, mm.</summary>
    public static double Moved(double left, double right, double vee)
    {
        var (x, y) = Centre(0, left, right, vee);
        return Math.Sqrt(x * x + y * y);
    }

    /// <summary>Packing under the whole block that lifts as much as a shim on both faces, mm: t / sin α.</summary>
    public static double UnderBlock(double shim, double vee) => shim / Math.Sin(vee / 2);

    /// <summary>How far aside one shim of twice the thickness on one face throws the axis, mm: t / cos α. It regains the height.</summary>
    public static double OneFaceAside(double shim, double vee) => shim / Math.Cos(vee / 2);

    /// <summary>How far off the axis stays when the right shim goes on one face only, mm: t / sin 2α, low and aside together.</summary>
    public static double HalfDone(double shim, double vee) => shim / Math.Sin(vee);
}
