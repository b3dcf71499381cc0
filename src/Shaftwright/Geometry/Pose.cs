using System.Runtime.CompilerServices;

namespace Shaftwright.Geometry;

/// <summary>Where a rigid body is: turned by a unit quaternion (W, V), then moved so that its reference point lies at
/// <see cref="At"/>.</summary>
/// <param name="At">Place of the reference point, mm.</param>
/// <param name="W">Cosine of half the turn.</param>
/// <param name="V">Axis of the turn times the sine of half of it.</param>
public readonly record struct Pose(Vec3 At, double W, Vec3 V)
{
    /// <summary>Not turned, reference point at a place.</summary>
    public static Pose Straight(Vec3 at) => new(at, 1, Vec3.Zero);

    /// <summary>A direction of the body as it stands now.</summary>
    /// <param name="direction">As it was when the body was not turned.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec3 Turn(Vec3 direction)
    {
        var t = V.Cross(direction) * 2;
        return direction + t * W + V.Cross(t);
    }

    /// <summary>A point of the body as it stands now, mm.</summary>
    /// <param name="arm">From the reference point to it when the body was not turned, mm.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec3 Place(Vec3 arm) => At + Turn(arm);

    /// <summary>Moved by <paramref name="shift"/> and turned further by the rotation vector <paramref name="turn"/> about the
    /// reference point, exactly.</summary>
    /// <param name="shift">mm.</param>
    /// <param name="turn">rad, in the directions of space.</param>
    public Pose Then(Vec3 shift, Vec3 turn)
    {
        var square = turn.Dot(turn) / 4;
        double w,
            s;
        if (square < 2.5e-3)
        {
            // Power series, right to double precision for half a turn below 0.05 rad; and sin(x)/x fails at 0.
            w = 1 - square / 2 * (1 - square / 12 * (1 - square / 30 * (1 - square / 56)));
            s = 0.5 * (1 - square / 6 * (1 - square / 20 * (1 - square / 42)));
        }
        else
        {
            var half = Math.Sqrt(square);
            w = Math.Cos(half);
            s = Math.Sin(half) / (2 * half);
        }
        var v = turn * s;
        var nw = w * W - v.Dot(V);
        var nv = V * w + v * W + v.Cross(V);
        // Rounding is taken out at every step, or a long path would stretch the body.
        var k = 1 / Math.Sqrt(nw * nw + nv.Dot(nv));
        return new(At + shift, nw * k, nv * k);
    }
}
