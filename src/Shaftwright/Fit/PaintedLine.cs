namespace Shaftwright.Fit;

/// <summary>A straight line painted along a shaft: once the shaft has twisted for good, the line's far end lies beside where it was.</summary>
/// <remarks>Offset = twist × D/2 round the surface; a line over two diameters is read on one of them. Plane geometry.</remarks>
public static class PaintedLine
{
    /// <summary>Permanent twist that an offset means.</summary>
    /// <param name="offset">Round the surface, mm.</param>
    /// <param name="D">Diameter where it is read, mm.</param>
    /// <returns>rad.</returns>
    public static double Twist(double offset, double D) => 2 * offset / D;

    /// <summary>Offset that a permanent twist makes.</summary>
    /// <param name="twist">rad.</param>
    /// <param name="D">Diameter where it is read, mm.</param>
    /// <returns>mm round the surface.</returns>
    public static double Offset(double twist, double D) => twist * D / 2;
}
