using Shaftwright.Measures;

namespace Shaftwright.Car;

/// <summary>Both sides of one car's torque as ranges, before the launch factor is chosen. N·mm.</summary>
internal sealed class CarSides
{
    /// <summary>Share taken when none is said: an open differential halves it.</summary>
    public const double UsualShare = 0.5;

    /// <summary>Efficiency taken when none is said. Common practice, no source.</summary>
    public const double UsualEfficiency = 0.95;

    /// <summary>Launch factor taken when none is said: converter 1.3 to 1.5, dropped clutch 2 to 3; from memory, no single source.</summary>
    public static Band UsualLaunch => new(1.5, 3);

    /// <summary>Height of the centre of mass over the wheelbase, taken when either is not said. Common practice, no source.</summary>
    public static Band UsualHeightOverWheelbase => new(0.15, 0.30);

    public CarSides(CarInput car)
    {
        LaunchAssumed = car.LaunchFactor is null;
        Launch = car.LaunchFactor is { } l
            ? DriveTorque.Range(CarFields.LaunchFactor, l)
            : UsualLaunch;
        if (car is { GearRatio: { } gear, FinalDrive: { } final })
        {
            var share = car.ShareToThisShaft is { } s
                ? DriveTorque.Range(CarFields.ShareToThisShaft, s)
                : Band.Exactly(UsualShare);
            var efficiency = car.Efficiency is { } e
                ? DriveTorque.Range(CarFields.Efficiency, e)
                : Band.Exactly(UsualEfficiency);
            var i = DriveTorque.Range(CarFields.GearRatio, gear);
            var f = DriveTorque.Range(CarFields.FinalDrive, final);
            Band Through(Band torque) =>
                new(
                    DriveTorque.EngineSide(torque.Low, i.Low, f.Low, efficiency.Low, share.Low),
                    DriveTorque.EngineSide(torque.High, i.High, f.High, efficiency.High, share.High)
                );
            if (car.EngineTorque is { } te)
                WithoutLaunch = Through(DriveTorque.Range(CarFields.EngineTorque, te));
            if (car.ClutchSlipTorque is { } tc)
                Clutch = Through(DriveTorque.Range(CarFields.ClutchSlipTorque, tc));
            ClutchSlips =
                car is { EngineTorque: { } engine, ClutchSlipTorque: { } slip }
                && slip.Value < engine.Value;
        }
        if (car is { WheelLoad: { } mass, TyreRadius: { } radius, Grip: { } grip })
            Tyre = TyreSide(car, mass, radius, grip);
    }

    /// <summary>From the engine with launch factor 1; null if it cannot be had.</summary>
    public Band? WithoutLaunch { get; }

    /// <summary>What the clutch lets through; null if its slip torque is not known.</summary>
    public Band? Clutch { get; }

    /// <summary>True when the clutch slips before the engine's own torque.</summary>
    public bool ClutchSlips { get; }

    /// <summary>What the tyre holds; null if it cannot be had.</summary>
    public Band? Tyre { get; private set; }

    /// <summary>True when the tyre side has no answer because the front wheels would lift.</summary>
    public bool FrontLifts { get; private set; }

    public Band Launch { get; }
    public bool LaunchAssumed { get; }

    /// <summary>Both sides and the smaller, for a launch factor.</summary>
    public ShaftTorque Torque(Band launch)
    {
        Band? engine = null;
        if (WithoutLaunch is { } e)
        {
            engine = e * launch;
            if (Clutch is { } c)
                engine = Smaller(engine.Value, c);
        }
        return (engine, Tyre) switch
        {
            ({ } a, { } t) => new(
                a,
                t,
                Smaller(a, t),
                a.High <= t.High ? TorqueLimit.EngineSide : TorqueLimit.TyreSide
            ),
            ({ } a, null) => new(a, null, a, TorqueLimit.OnlyEngineSideKnown),
            (null, { } t) => new(null, t, t, TorqueLimit.OnlyTyreSideKnown),
            _ => throw new InvalidOperationException("At least one side is known."),
        };
    }

    private static Band Smaller(Band a, Band b) =>
        new(Math.Min(a.Low, b.Low), Math.Min(a.High, b.High));

    private Band? TyreSide(
        CarInput car,
        Measured<Mass> mass,
        Measured<Distance> radius,
        Measured<Ratio> grip
    )
    {
        var w = DriveTorque.Range(CarFields.WheelLoad, mass) * DriveTorque.FreeFall;
        var r = DriveTorque.Range(CarFields.TyreRadius, radius);
        var mu = DriveTorque.Range(CarFields.Grip, grip);
        var h = car is { MassHeight: { } height, Wheelbase: { } wheelbase }
            ? DriveTorque.Range(CarFields.MassHeight, height)
                / DriveTorque.Range(CarFields.Wheelbase, wheelbase)
            : UsualHeightOverWheelbase;
        // Weight leaves a front axle and comes onto a rear one, so a high centre of mass is the low end of the one and the
        // high end of the other. Torque rises with grip either way.
        var (low, high) = car.Axle == DrivenAxle.Front ? (h.High, h.Low) : (h.Low, h.High);
        var least = DriveTorque.TyreSide(
            mu.Low,
            DriveTorque.LoadAtGripLimit(car.Axle, w.Low, mu.Low, low),
            r.Low
        );
        var most = DriveTorque.TyreSide(
            mu.High,
            DriveTorque.LoadAtGripLimit(car.Axle, w.High, mu.High, high),
            r.High
        );
        if (!double.IsFinite(most))
        {
            FrontLifts = true;
            return null;
        }
        return new Band(least, most);
    }
}
