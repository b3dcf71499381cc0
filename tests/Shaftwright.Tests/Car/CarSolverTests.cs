using CsCheck;
using Shaftwright.Car;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Car;

public sealed class CarSolverTests
{
    private static Measured<Ratio> R(double value, double plusMinus = 0) =>
        Measured<Ratio>.Of(value, Ratio.One, plusMinus);

    private static Measured<Torque> NewtonMetres(double value) =>
        Measured<Torque>.Of(value, Torque.NewtonMetre, 0);

    private static Measured<Distance> Mm(double value) =>
        Measured<Distance>.Of(value, Distance.Mm, 0);

    /// <summary>Everything said, nothing uncertain: engine side 1674.99 N·m × launch, tyre side 1456.29 N·m less transfer.</summary>
    internal static CarInput Known { get; } =
        new()
        {
            EngineTorque = NewtonMetres(250),
            GearRatio = R(3.58),
            FinalDrive = R(3.94),
            Efficiency = R(0.95),
            ShareToThisShaft = R(0.5),
            LaunchFactor = R(1),
            Axle = DrivenAxle.Rear,
            WheelLoad = Measured<Mass>.Of(450, Mass.Kilogram, 0),
            TyreRadius = Mm(300),
            Grip = R(1.1),
            Wheelbase = Mm(2400),
            MassHeight = Mm(500),
        };

    private static CarResult Solve(CarInput car) => CarSolver.Solve(car, null);

    private static void Says(CarResult result, string code, Severity severity) =>
        Assert.Contains(result.Findings, f => f.Code == code && f.Severity == severity);

    [Fact]
    public void Solve_EverythingKnown_GivesBothSidesAndTheSmaller()
    {
        var torque = Solve(Known).ThisCar!;

        Assert.Equal(1674.99e3, torque.EngineSide!.Value.Low, tolerance: 5);
        Assert.Equal(1674.99e3, torque.EngineSide.Value.High, tolerance: 5);
        // 1456.29 N·m of the standing wheel over 1 − 1.1·500/2400.
        Assert.Equal(1456.29e3 / (1 - 1.1 * 500 / 2400), torque.TyreSide!.Value.High, tolerance: 8);
        Assert.Equal(TorqueLimit.EngineSide, torque.Limit);
        Assert.Equal(torque.EngineSide.Value, torque.Governing);
    }

    [Fact]
    public void Solve_HarsherLaunch_TheTyreSideCapsIt()
    {
        var torque = Solve(Known with { LaunchFactor = R(2) }).ThisCar!;

        Assert.Equal(TorqueLimit.TyreSide, torque.Limit);
        Assert.Equal(torque.TyreSide!.Value, torque.Governing);
    }

    [Fact]
    public void Solve_ClutchSlipTorque_CapsTheLaunchOnly()
    {
        var car = Known with { LaunchFactor = R(3), Grip = null };
        var capped = Solve(car with { ClutchSlipTorque = NewtonMetres(400) }).ThisCar!;
        var loose = Solve(car with { ClutchSlipTorque = NewtonMetres(2000) }).ThisCar!;

        Assert.Equal(1674.99e3 * 400 / 250, capped.Governing.High, tolerance: 10);
        Assert.Equal(1674.99e3 * 3, loose.Governing.High, tolerance: 20);
    }

    [Fact]
    public void Solve_ClutchWeakerThanTheEngine_Cautions() =>
        Says(
            Solve(Known with { ClutchSlipTorque = NewtonMetres(200) }),
            "clutch-slips",
            Severity.Caution
        );

    [Fact]
    public void Solve_NothingSaidOfShareEfficiencyAndLaunch_AssumesAndNamesIt()
    {
        var result = Solve(
            Known with
            {
                ShareToThisShaft = null,
                Efficiency = null,
                LaunchFactor = null,
            }
        );

        Assert.Equal(1674.99e3 * 1.5, result.ThisCar!.EngineSide!.Value.Low, tolerance: 10);
        Assert.Equal(1674.99e3 * 3, result.ThisCar.EngineSide.Value.High, tolerance: 20);
        var note = Assert.Single(result.Findings, f => f.Code == "engine-side-assumed");
        Assert.Contains("locked", note.Action.ToString());
        Assert.Contains("from memory, no single source", note.Source);
    }

    [Fact]
    public void Solve_RangesTyped_BecomeTheRangeOfTheTorque()
    {
        var torque = Solve(Known with { Grip = R(1, 0.2) }).ThisCar!.TyreSide!.Value;
        double At(double mu) => mu * 450 * DriveTorque.FreeFall / (1 - mu * 500 / 2400) * 300;

        Assert.Equal(At(0.8), torque.Low, tolerance: 1e-3);
        Assert.Equal(At(1.2), torque.High, tolerance: 1e-3);
    }

    [Fact]
    public void Solve_FrontAxle_TakesTheHighMassForTheLowEnd()
    {
        var car = Known with
        {
            Axle = DrivenAxle.Front,
            MassHeight = Measured<Distance>.Of(500, Distance.Mm, 100),
        };
        var torque = Solve(car).ThisCar!.TyreSide!.Value;
        double At(double h) => 1.1 * 450 * DriveTorque.FreeFall / (1 + 1.1 * h / 2400) * 300;

        Assert.Equal(At(600), torque.Low, tolerance: 1e-3);
        Assert.Equal(At(400), torque.High, tolerance: 1e-3);
    }

    [Fact]
    public void Solve_NoMassHeight_GuessesTheTransferAndSaysSo()
    {
        var result = Solve(Known with { MassHeight = null });

        Says(result, "transfer-assumed", Severity.Note);
        Assert.Equal(
            1.1 * 450 * DriveTorque.FreeFall / (1 - 1.1 * 0.30) * 300,
            result.ThisCar!.TyreSide!.Value.High,
            tolerance: 1e-3
        );
    }

    [Fact]
    public void Solve_FrontWheelsWouldLift_GivesNoTyreSideAndSaysWhy()
    {
        var result = Solve(Known with { Grip = R(2.4), MassHeight = Mm(1100) });

        Assert.Null(result.ThisCar!.TyreSide);
        Assert.Equal(TorqueLimit.OnlyEngineSideKnown, result.ThisCar.Limit);
        Says(result, "front-lifts", Severity.Caution);
    }

    [Fact]
    public void Solve_OneSideMissing_NamesWhatIsMissing()
    {
        var noEngine = Solve(Known with { GearRatio = null });
        var noTyre = Solve(Known with { Grip = null });

        Assert.Equal(TorqueLimit.OnlyTyreSideKnown, noEngine.ThisCar!.Limit);
        Assert.Contains(
            "lowest gear ratio not given",
            noEngine.Findings.Single(f => f.Code == "engine-side-missing").Text.ToString()
        );
        Assert.Equal(TorqueLimit.OnlyEngineSideKnown, noTyre.ThisCar!.Limit);
        Assert.Contains(
            "grip not given",
            noTyre.Findings.Single(f => f.Code == "tyre-side-missing").Text.ToString()
        );
    }

    [Fact]
    public void Solve_NothingKnown_GivesNoTorqueAndSaysWhatBothSidesNeed()
    {
        var result = Solve(new CarInput());

        Assert.Null(result.ThisCar);
        Says(result, "engine-side-missing", Severity.Caution);
        Says(result, "tyre-side-missing", Severity.Caution);
    }

    [Fact]
    public void Solve_DonorCarAlike_AsksForExactlyWhatItCouldGive()
    {
        // The launch factor is a wide guess, but the same guess for both cars.
        var car = Known with
        {
            LaunchFactor = null,
        };
        var result = CarSolver.Solve(
            car,
            new DonorCars
            {
                InnerEnd = car,
                OuterEnd = car with { EngineTorque = NewtonMetres(125), WheelLoad = null },
            }
        );

        Assert.Equal(1, result.NewOverInnerDonor!.Value.Low, 9);
        Assert.Equal(1, result.NewOverInnerDonor.Value.High, 9);
        // The weaker one is never capped by its tyre; this one is, from a launch factor of 1.128 on.
        Assert.Equal(TorqueLimit.TyreSide, result.ThisCar!.Limit);
        Assert.Equal(
            result.ThisCar.TyreSide!.Value.High / (1674.99e3 / 2 * 1.5),
            result.NewOverOuterDonor!.Value.High,
            tolerance: 1e-4
        );
        Assert.Equal(
            result.ThisCar.TyreSide.Value.High / (1674.99e3 / 2 * 3),
            result.NewOverOuterDonor.Value.Low,
            tolerance: 1e-4
        );
    }

    [Fact]
    public void Solve_DonorCarsOnly_SaysTheCarIsMissing()
    {
        var result = CarSolver.Solve(null, new DonorCars { InnerEnd = Known });

        Assert.NotNull(result.InnerDonor);
        Assert.Null(result.NewOverInnerDonor);
        Says(result, "car-not-described", Severity.Caution);
    }

    private static Gen<CarInput> Cars { get; } =
        from engine in Gen.Int[50, 500]
        from gear in Gen.Int[200, 450]
        from load in Gen.Int[100, 600]
        from grip in Gen.Int[6, 14]
        from clutch in Gen.Int[0, 900]
        from launch in Gen.Int[0, 3]
        select Known with
        {
            EngineTorque = NewtonMetres(engine),
            GearRatio = R(gear / 100.0),
            WheelLoad = Measured<Mass>.Of(load, Mass.Kilogram, 5),
            Grip = R(grip / 10.0, 0.1),
            ClutchSlipTorque = clutch < 200 ? null : NewtonMetres(clutch),
            LaunchFactor = launch == 0 ? null : R(launch),
        };

    [Fact]
    public void Ratio_LaunchFactorSweptDensely_StaysInsideTheRange() =>
        Check.Sample(
            Gen.Select(Cars, Cars, Gen.Double[1.5, 3]),
            t =>
            {
                var (mine, donor, launch) = t;
                (mine, donor) = (
                    mine with
                    {
                        LaunchFactor = null,
                    },
                    donor with
                    {
                        LaunchFactor = null,
                    }
                );
                var band = CarSolver
                    .Solve(mine, new DonorCars { InnerEnd = donor })
                    .NewOverInnerDonor!.Value;
                CarInput At(CarInput c) => c with { LaunchFactor = R(Math.Round(launch, 9)) };
                var one = CarSolver
                    .Solve(At(mine), new DonorCars { InnerEnd = At(donor) })
                    .NewOverInnerDonor!.Value;
                Assert.True(one.Low >= band.Low - 1e-9 && one.High <= band.High + 1e-9);
            }
        );

    [Fact]
    public void Solve_AnyCar_GovernsByTheSmallerSideAndRisesWithTheEngine() =>
        Check.Sample(
            Cars,
            car =>
            {
                var t = Solve(car).ThisCar!;
                Assert.True(t.Governing.Low <= t.Governing.High);
                Assert.Equal(
                    Math.Min(t.EngineSide!.Value.High, t.TyreSide!.Value.High),
                    t.Governing.High
                );
                var more = Solve(
                    car with
                    {
                        EngineTorque = NewtonMetres(car.EngineTorque!.Value / 1000 + 20),
                    }
                ).ThisCar!;
                Assert.True(more.Governing.High >= t.Governing.High - 1e-6);
            }
        );

    [Fact]
    public void Solve_ImperialTypedCar_GivesTheSameTorque()
    {
        var car = Known with
        {
            EngineTorque = Measured<Torque>.Of(184.39054, Torque.PoundFoot, 0),
            TyreRadius = Measured<Distance>.Of(300 / 25.4, Distance.Inch, 0),
            Wheelbase = Measured<Distance>.Of(2400 / 25.4, Distance.Inch, 0),
            WheelLoad = Measured<Mass>.Of(450 / 0.45359237, Mass.Pound, 0),
        };

        Assert.Equal(
            Solve(Known).ThisCar!.Governing.High,
            Solve(car).ThisCar!.Governing.High,
            tolerance: 0.05
        );
    }
}
