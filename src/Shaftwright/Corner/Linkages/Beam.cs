using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>A beam that carries both wheels, held by four rods, or by three and a link across: the two wheels' heights place it.</summary>
public static class Beam
{
    /// <summary>Makes one, seen from one wheel.</summary>
    /// <param name="wheelCentre">This wheel's centre at ride height, mm.</param>
    /// <param name="otherWheelCentre">The other wheel's centre at ride height, mm.</param>
    /// <param name="links">The four rods.</param>
    /// <exception cref="ArgumentException">There are not four.</exception>
    public static Linkage Of(
        Vec3 wheelCentre,
        Vec3 otherWheelCentre,
        IReadOnlyList<Constraint> links
    ) => new("beam", wheelCentre, links, otherWheelCentre);
}
