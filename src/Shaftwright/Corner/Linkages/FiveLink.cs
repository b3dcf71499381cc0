namespace Shaftwright.Corner.Linkages;

/// <summary>Five rods, each with a ball at both ends; one of them may come from a rack.</summary>
public static class FiveLink
{
    /// <summary>Makes one.</summary>
    /// <param name="wheelCentre">Wheel centre at ride height, mm.</param>
    /// <param name="links">The five rods.</param>
    /// <exception cref="ArgumentException">There are not five.</exception>
    public static Linkage Of(Geometry.Vec3 wheelCentre, IReadOnlyList<Constraint> links) =>
        new("five links", wheelCentre, links);
}
