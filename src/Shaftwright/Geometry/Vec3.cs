using System.Runtime.CompilerServices;

namespace Shaftwright.Geometry;

/// <summary>A point or a direction in space. Axes: ISO 8855, x forward, y left, z up.</summary>
/// <param name="X">Forward, mm for a point.</param>
/// <param name="Y">Left.</param>
/// <param name="Z">Up.</param>
public readonly record struct Vec3(double X, double Y, double Z)
{
    /// <summary>The origin, or no direction.</summary>
    public static Vec3 Zero => default;

    /// <summary>Forward, length 1.</summary>
    public static Vec3 Forward => new(1, 0, 0);

    /// <summary>Left, length 1.</summary>
    public static Vec3 Left => new(0, 1, 0);

    /// <summary>Up, length 1.</summary>
    public static Vec3 Up => new(0, 0, 1);

    /// <summary>Length; for a difference of points the distance, mm.</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>Scalar product.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Dot(Vec3 b) => X * b.X + Y * b.Y + Z * b.Z;

    /// <summary>Vector product, right-handed.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec3 Cross(Vec3 b) => new(Y * b.Z - Z * b.Y, Z * b.X - X * b.Z, X * b.Y - Y * b.X);

    /// <summary>The direction of it, length 1; NaN for the zero vector.</summary>
    public Vec3 Unit() => this * (1 / Length);

    /// <summary>Two directions of length 1 across this one and across each other.</summary>
    /// <remarks>Built on the axis that this direction is least along, so that no direction is a bad one.</remarks>
    public (Vec3 First, Vec3 Second) Across()
    {
        var (x, y, z) = (Math.Abs(X), Math.Abs(Y), Math.Abs(Z));
        var axis =
            x <= y && x <= z ? Forward
            : y <= z ? Left
            : Up;
        var first = Cross(axis).Unit();
        return (first, Cross(first).Unit());
    }

    /// <summary>Angle to another direction, rad, 0 to π; accurate for small angles too.</summary>
    public double AngleTo(Vec3 b) => Math.Atan2(Cross(b).Length, Dot(b));

    /// <summary>Sum.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 operator +(Vec3 a, Vec3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 operator -(Vec3 a, Vec3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The other way.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 operator -(Vec3 a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Scaled.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 operator *(Vec3 a, double k) => new(a.X * k, a.Y * k, a.Z * k);
}
