using Shaftwright.Measures;

namespace Shaftwright.Car;

/// <summary>New torque over the torque that a donor was made for.</summary>
internal static class Yardstick
{
    /// <summary>The range of the ratio. Where neither car's launch factor was said, it is the same for both: one assumption
    /// about how a clutch is dropped, not two that could lie at opposite ends.</summary>
    /// <remarks>At one launch factor λ each end of a torque is min(λ·engine, cap). The quotient of two such is constant while
    /// neither or both are capped, rises with λ while only the donor's is, and falls while only this car's is; only one
    /// of the two comes first, so it is monotone in λ and its ends are all that is looked at.</remarks>
    public static Band? Ratio(CarSides? mine, CarSides? donor)
    {
        if (mine is null || donor is null)
            return null;
        if (!(mine.LaunchAssumed && donor.LaunchAssumed))
            return At(mine.Launch, donor.Launch);
        var soft = At(Band.Exactly(mine.Launch.Low), Band.Exactly(donor.Launch.Low));
        var harsh = At(Band.Exactly(mine.Launch.High), Band.Exactly(donor.Launch.High));
        return new Band(Math.Min(soft.Low, harsh.Low), Math.Max(soft.High, harsh.High));

        Band At(Band my, Band donors) => mine.Torque(my).Governing / donor.Torque(donors).Governing;
    }
}
