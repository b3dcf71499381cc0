namespace Shaftwright.Corner.Linkages;

/// <summary>What stands still while a wheel goes through its travel.</summary>
/// <param name="Rack">Rack displacement, mm, to the left.</param>
/// <param name="PowerUnit">How the power unit stands.</param>
/// <param name="OtherShare">How much of this wheel's travel the other wheel of a beam makes: 0, 1, or −1 when it goes the other way.</param>
/// <param name="OtherTravel">What the other wheel stands at beside that, mm.</param>
public readonly record struct LinkagePlace(
    double Rack,
    PowerUnitState PowerUnit,
    double OtherShare = 0,
    double OtherTravel = 0
)
{
    internal Drive At(double travel) => new(travel, Rack, OtherShare * travel + OtherTravel);
}
