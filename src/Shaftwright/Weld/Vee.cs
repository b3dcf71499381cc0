namespace Shaftwright.Weld;

/// <summary>A round bar in a vee block, its two faces perhaps shimmed.</summary>
/// <remarks>α is half the included angle, r the bar's radius, tL and tR the shims. Each face touches the bar, so the bar's
/// centre stands r + t from it; with unit normals (∓cos α, sin α) that gives, from the apex of the vee,
/// y = (2r + tL + tR) / (2 sin α) and x = (tL − tR) / (2 cos α), x away from the thicker shim.
/// Valid while the bar touches both faces. Exact for round bars. Source: own derivation, plane geometry; checked against
/// circles made tangent to two lines (tests, VeeTests).</remarks>
public static class Vee
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

    /// <summary>Height of a vee's apex over the table from a plain bar laid in it, mm: H − d/2 − d/(2 sin α).</summary>
    /// <param name="heightOverBar">H, table to the top of the bar, mm.</param>
    /// <param name="bar">d, mm.</param>
    /// <param name="vee">Included angle, rad.</param>
    public static double ApexHeight(double heightOverBar, double bar, double vee) =>
        heightOverBar - bar / 2 - bar / (2 * Math.Sin(vee / 2));

    /// <summary>Tilt of the axis of a tapered piece that lies on both faces of a vee, against the line of the vee, rad:
    /// sin τ = sin β / sin α, rising towards the thick end.</summary>
    /// <param name="halfAngle">β, half the taper's included angle, rad, 0 or more; less than α.</param>
    /// <param name="vee">Included angle, rad.</param>
    /// <remarks>A cone touches a plane along a line through its own apex. Touching both faces, its apex lies on the line where
    /// they meet, and its axis makes the angle β with each face: a·n = sin α · sin τ = sin β. The height of the axis over the
    /// apex of the vee, where the piece has radius r, is r·cos β / sin α; with shims t on both faces, t / sin α more. Own
    /// derivation; checked against a cone laid in by trial (tests, TaperTests).</remarks>
    public static double TaperTilt(double halfAngle, double vee) =>
        Math.Asin(Math.Min(1, Math.Sin(halfAngle) / Math.Sin(vee / 2)));

    /// <summary>Height of the axis of a tapered piece over the apex of the vee where its radius is r, mm: (r·cos β + t) / sin α.</summary>
    /// <param name="radius">r, mm.</param>
    /// <param name="shim">t on both faces, mm.</param>
    /// <param name="halfAngle">β, rad.</param>
    /// <param name="vee">Included angle, rad.</param>
    public static double TaperHeight(double radius, double shim, double halfAngle, double vee) =>
        (radius * Math.Cos(halfAngle) + shim) / Math.Sin(vee / 2);
}
