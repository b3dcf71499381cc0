namespace Shaftwright.Truing;

/// <summary>What vees make of the lobes of a bar.</summary>
/// <remarks>
/// <para>A section r = R + c cos nθ that turns in a vee of half-angle α touches each face where the face's normal points. Its
/// middle rises along the bisector by c cos(nβ)/sin α × cos nθ, β = 90° + α. A dial on the bisector over the vee sees its own
/// form beside that: K_n = 1 + cos(nβ)/sin α. K_1 = 0: a bow does not show over its vee.</para>
/// <para>Read elsewhere, on two vees, a bow shows in full, and the lobes at the vees leak in, shared by lever arm. If the bar
/// is alike all along, the shares add up to one and every order reads K_n times itself wherever the dial stands; if it is round
/// where it lies, the dial reads the form itself.</para>
/// <para>Valid for lobes small beside R, both faces at α to the bisector, the dial on the bisector, no friction. Source: own
/// derivation; matches the summit-method factors of ISO 4292 as remembered, from memory. Check values:
/// Published/vee-sensitivity.json.</para>
/// </remarks>
public static class VeeSensitivity
{
    /// <summary>How far the middle of an n-lobed section moves along the bisector, per unit of the lobes' amplitude.</summary>
    /// <param name="order">n, from 1.</param>
    /// <param name="veeAngle">Angle between the faces, rad, above 0 and below π.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Leak(int order, double veeAngle)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(order, 1);
        if (!(veeAngle > 0 && veeAngle < Math.PI))
            throw new ArgumentOutOfRangeException(
                nameof(veeAngle),
                veeAngle,
                "Between 0 and a half turn."
            );
        var half = veeAngle / 2;
        return Math.Cos(order * (Math.PI / 2 + half)) / Math.Sin(half);
    }

    /// <summary>K_n: what a dial on the bisector over the vee shows, per unit of the lobes' amplitude, with its sign.</summary>
    /// <param name="order">n, from 1.</param>
    /// <param name="veeAngle">Angle between the faces, rad, above 0 and below π.</param>
    public static double Over(int order, double veeAngle) => 1 + Leak(order, veeAngle);

    /// <summary>Part of the reading at a station that comes from lobes at the two vees, mm.</summary>
    /// <param name="order">n, from 1.</param>
    /// <param name="veeAngle">Angle between the faces, rad; the same at both.</param>
    /// <param name="first">Lobes at the first vee, mm, as the cosine and sine part of nθ.</param>
    /// <param name="second">The same at the second.</param>
    /// <param name="station">Position of the dial, mm.</param>
    /// <param name="firstAt">Position of the first vee, mm.</param>
    /// <param name="secondAt">Position of the second, mm; not the first's.</param>
    public static Across Elsewhere(
        int order,
        double veeAngle,
        Across first,
        Across second,
        double station,
        double firstAt,
        double secondAt
    )
    {
        var share = (station - firstAt) / (secondAt - firstAt);
        return Leak(order, veeAngle) * ((1 - share) * first + share * second);
    }
}
