using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>Ways in which the body holds the carrier.</summary>
public enum Hold
{
    /// <summary>A rod of fixed length from a chassis point to a carrier point, a ball at each end.</summary>
    Rod,

    /// <summary>A carrier point stays in a plane of the chassis.</summary>
    Plane,

    /// <summary>A chassis point stays in a plane of the carrier, as a strut's top mount stays on the strut's line by two of these.</summary>
    CarrierPlane,
}

/// <summary>What moves the chassis side of a hold.</summary>
public enum Driver
{
    /// <summary>Nothing: it stays.</summary>
    None,

    /// <summary>The steering rack.</summary>
    Rack,

    /// <summary>The travel of this wheel.</summary>
    Travel,

    /// <summary>The travel of the wheel at the other end of a beam.</summary>
    OtherTravel,
}

/// <summary>One scalar condition on where the carrier can be. Six of them, travel included, place it.</summary>
/// <remarks>Points and directions are those of the car at ride height, mm, ISO 8855.</remarks>
/// <param name="Hold">Kind of condition.</param>
/// <param name="Chassis">Point of the chassis: a rod's inner end, or a point of the plane.</param>
/// <param name="Carrier">Point of the carrier: a rod's outer end, or what stays in the plane.</param>
/// <param name="Normal">Normal of the plane, length 1; unused for a rod.</param>
/// <param name="Driver">What moves the chassis side.</param>
/// <param name="Along">Which way the driver moves it, length 1; the zero vector when nothing does.</param>
public readonly record struct Constraint(
    Hold Hold,
    Vec3 Chassis,
    Vec3 Carrier,
    Vec3 Normal,
    Driver Driver,
    Vec3 Along
)
{
    /// <summary>A rod between two balls.</summary>
    /// <param name="chassis">Inner end.</param>
    /// <param name="carrier">Outer end.</param>
    public static Constraint Rod(Vec3 chassis, Vec3 carrier) =>
        new(Hold.Rod, chassis, carrier, Vec3.Zero, Driver.None, Vec3.Zero);

    /// <summary>A track rod from the end of a rack.</summary>
    /// <param name="rackEnd">Inner end, rack centred.</param>
    /// <param name="carrier">Outer end.</param>
    /// <param name="rack">Direction in which the rack moves to the left, length 1.</param>
    public static Constraint TrackRod(Vec3 rackEnd, Vec3 carrier, Vec3 rack) =>
        new(Hold.Rod, rackEnd, carrier, Vec3.Zero, Driver.Rack, rack);

    /// <summary>A carrier point that stays where it is on the chassis, as on a ball: three conditions.</summary>
    public static IEnumerable<Constraint> Ball(Vec3 point) =>
        new[] { Vec3.Forward, Vec3.Left, Vec3.Up }.Select(n => Plane(point, n));

    /// <summary>A carrier point that stays on a line of the chassis: two conditions.</summary>
    /// <param name="point">The point, on the line.</param>
    /// <param name="line">Direction of the line.</param>
    public static IEnumerable<Constraint> OnLine(Vec3 point, Vec3 line)
    {
        var (a, b) = line.Unit().Across();
        return [Plane(point, a), Plane(point, b)];
    }

    /// <summary>A chassis point that stays on a line of the carrier: two conditions.</summary>
    /// <param name="point">The chassis point.</param>
    /// <param name="carrier">Another point of that line, on the carrier.</param>
    public static IEnumerable<Constraint> LineThrough(Vec3 point, Vec3 carrier)
    {
        var (a, b) = (point - carrier).Unit().Across();
        return
        [
            new(Hold.CarrierPlane, point, carrier, a, Driver.None, Vec3.Zero),
            new(Hold.CarrierPlane, point, carrier, b, Driver.None, Vec3.Zero),
        ];
    }

    /// <summary>The wheel's height.</summary>
    /// <param name="wheelCentre">Wheel centre at ride height.</param>
    /// <param name="driver">Whose travel.</param>
    internal static Constraint Height(Vec3 wheelCentre, Driver driver) =>
        new(Hold.Plane, wheelCentre, wheelCentre, Vec3.Up, driver, Vec3.Up);

    private static Constraint Plane(Vec3 point, Vec3 normal) =>
        new(Hold.Plane, point, point, normal, Driver.None, Vec3.Zero);
}
