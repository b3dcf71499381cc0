using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>What holds one hub: a carrier and five conditions, or four when a beam carries two wheels. A new kind of suspension is
/// one small file that lists its conditions.</summary>
public sealed class Linkage
{
    /// <summary>Makes one.</summary>
    /// <param name="name">What it is called in the trade.</param>
    /// <param name="wheelCentre">Wheel centre at ride height, mm.</param>
    /// <param name="holds">The conditions: five, or four with another wheel.</param>
    /// <param name="otherWheelCentre">The other wheel of a beam, mm; null for one wheel.</param>
    /// <exception cref="ArgumentException">The number of conditions does not leave one movement a wheel, or a rod has no length.</exception>
    public Linkage(
        string name,
        Vec3 wheelCentre,
        IEnumerable<Constraint> holds,
        Vec3? otherWheelCentre = null
    )
    {
        Name = name;
        WheelCentre = wheelCentre;
        OtherWheelCentre = otherWheelCentre;
        List<Constraint> all = [.. holds, Constraint.Height(wheelCentre, Driver.Travel)];
        if (otherWheelCentre is { } other)
            all.Add(Constraint.Height(other, Driver.OtherTravel));
        if (all.Count != 6)
            throw new ArgumentException(
                $"A carrier has six ways to move; {all.Count} conditions with the travel do not place it.",
                nameof(holds)
            );
        if (all.Exists(c => c.Hold == Hold.Rod && (c.Carrier - c.Chassis).Length == 0))
            throw new ArgumentException("A rod's two ends are one point.", nameof(holds));
        Constraints = all;
    }

    /// <summary>What it is called in the trade.</summary>
    public string Name { get; }

    /// <summary>Wheel centre at ride height, mm.</summary>
    public Vec3 WheelCentre { get; }

    /// <summary>The other wheel of a beam, mm; null for one wheel.</summary>
    public Vec3? OtherWheelCentre { get; }

    /// <summary>The six conditions, the wheels' heights among them.</summary>
    public IReadOnlyList<Constraint> Constraints { get; }

    /// <summary>The same linkage mirrored to the other side of the car. Geometry may be mirrored; parts never.</summary>
    public Linkage Mirrored()
    {
        return new(
            Name,
            Flip(WheelCentre),
            Constraints
                .Where(c => c.Driver is not (Driver.Travel or Driver.OtherTravel))
                .Select(c =>
                    c with
                    {
                        Chassis = Flip(c.Chassis),
                        Carrier = Flip(c.Carrier),
                        Normal = Flip(c.Normal),
                        // The rack moves the same way whichever side is looked at.
                        Along = c.Driver == Driver.Rack ? -Flip(c.Along) : Flip(c.Along),
                    }
                ),
            OtherWheelCentre is { } other ? Flip(other) : null
        );

        static Vec3 Flip(Vec3 a) => a with { Y = -a.Y };
    }
}
