using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Car;

/// <summary>Torque into the shaft from both sides, and the same for the cars that the donors came from.</summary>
/// <remarks>Method: docs/car.md.</remarks>
public static class CarSolver
{
    /// <summary>Solves the stage.</summary>
    /// <param name="car">The car the shaft is made for; null when not described.</param>
    /// <param name="donors">The cars of the donors; null when not described.</param>
    /// <returns>The torques that could be had, and findings for those that could not.</returns>
    public static CarResult Solve(CarInput? car, DonorCars? donors)
    {
        var findings = new List<Finding>();
        var mine = Sides(car, "this car", findings);
        var inner = Sides(donors?.InnerEnd, "the inner-end donor's car", findings);
        var outer = Sides(donors?.OuterEnd, "the outer-end donor's car", findings);
        if (car is null)
            CarFindings.NotDescribed(findings);
        var result = new CarResult
        {
            ThisCar = mine?.Torque(mine.Launch),
            InnerDonor = inner?.Torque(inner.Launch),
            OuterDonor = outer?.Torque(outer.Launch),
            NewOverInnerDonor = Yardstick.Ratio(mine, inner),
            NewOverOuterDonor = Yardstick.Ratio(mine, outer),
            Findings = findings,
        };
        CarFindings.Governing(result.ThisCar, "this car", findings);
        CarFindings.Governing(result.InnerDonor, "the inner-end donor's car", findings);
        CarFindings.Governing(result.OuterDonor, "the outer-end donor's car", findings);
        CarFindings.Ratio(result.NewOverInnerDonor, "inner-end", findings);
        CarFindings.Ratio(result.NewOverOuterDonor, "outer-end", findings);
        if (result.ThisCar is not null)
            CarFindings.NotInThisLayer(findings);
        return result;
    }

    private static CarSides? Sides(CarInput? car, string who, List<Finding> findings)
    {
        if (car is null)
            return null;
        var say = new CarFindings(who, findings);
        var sides = new CarSides(car);
        if (sides.WithoutLaunch is null)
            say.EngineSideMissing(car, sides.Tyre is not null);
        else
            say.EngineAssumed(car);
        if (sides.ClutchSlips && sides.WithoutLaunch is { } engine && sides.Clutch is { } clutch)
            say.ClutchSlips(engine, clutch);
        if (sides.FrontLifts)
            say.FrontLifts();
        else if (sides.Tyre is null)
            say.TyreSideMissing(car, sides.WithoutLaunch is not null);
        else if (car.Wheelbase is null || car.MassHeight is null)
            say.TransferAssumed(car.Axle);
        return sides.WithoutLaunch is null && sides.Tyre is null ? null : sides;
    }
}
