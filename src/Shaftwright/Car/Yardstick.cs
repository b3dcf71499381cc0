using Shaftwright.Measures;

namespace Shaftwright.Car;

/// <summary>New torque over the torque that a donor was made for.</summary>
internal static class Yardstick
{
    /// <summary>The range of the ratio. Where neither car's launch factor was said, it is the same for both: one assumption
    /// about how a clutch is dropped, not two that could lie at opposite ends.</summary>
    /// <remarks>Each torque is the smaller of launch × engine and a cap, so the ratio is monotone in the launch factor between
    /// the places where a cap sets in; its ends and those places are all that is looked at.</remarks>
    public static Band? Ratio(CarSides? mine, CarSides? donor)
    {
        if (mine is null || donor is null)
            return null;
        if (!(mine.LaunchAssumed && donor.LaunchAssumed))
            return mine.Torque(mine.Launch).Governing / donor.Torque(donor.Launch).Governing;
        var (low, high) = (double.PositiveInfinity, 0.0);
        foreach (var launch in Places(mine).Concat(Places(donor)))
        {
            var ratio =
                mine.Torque(Band.Exactly(launch)).Governing
                / donor.Torque(Band.Exactly(launch)).Governing;
            (low, high) = (Math.Min(low, ratio.Low), Math.Max(high, ratio.High));
        }
        return new Band(low, high);
    }

    private static IEnumerable<double> Places(CarSides car)
    {
        var launch = CarSides.UsualLaunch;
        yield return launch.Low;
        yield return launch.High;
        if (car.WithoutLaunch is not { } engine)
            yield break;
        foreach (var cap in new[] { car.Clutch, car.Tyre })
        {
            if (cap is not { } c)
                continue;
            yield return Math.Clamp(c.Low / engine.Low, launch.Low, launch.High);
            yield return Math.Clamp(c.High / engine.High, launch.Low, launch.High);
        }
    }
}
