namespace Shaftwright.Corner.Linkages;

/// <summary>What sets a linkage: travel and rack, each 0 at ride height with the wheels straight.</summary>
/// <param name="Travel">This wheel centre's height over ride height, mm; bump positive.</param>
/// <param name="Rack">Rack displacement, mm; positive to the left.</param>
/// <param name="OtherTravel">The other wheel's height, mm; counts for a beam alone.</param>
public readonly record struct Drive(double Travel, double Rack = 0, double OtherTravel = 0)
{
    internal double Of(Driver driver) =>
        driver switch
        {
            Driver.Travel => Travel,
            Driver.Rack => Rack,
            Driver.OtherTravel => OtherTravel,
            _ => 0,
        };

    internal Drive Towards(Drive end, double share) =>
        new(
            Travel + (end.Travel - Travel) * share,
            Rack + (end.Rack - Rack) * share,
            OtherTravel + (end.OtherTravel - OtherTravel) * share
        );

    internal double DistanceTo(Drive b) =>
        Math.Max(
            Math.Abs(Travel - b.Travel),
            Math.Max(Math.Abs(Rack - b.Rack), Math.Abs(OtherTravel - b.OtherTravel))
        );

    internal Drive Less(Drive b) =>
        new(Travel - b.Travel, Rack - b.Rack, OtherTravel - b.OtherTravel);

    internal double Dot(Drive b) => Travel * b.Travel + Rack * b.Rack + OtherTravel * b.OtherTravel;
}
