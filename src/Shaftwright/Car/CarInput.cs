using Shaftwright.Measures;

namespace Shaftwright.Car;

/// <summary>Which axle the shaft drives.</summary>
public enum DrivenAxle
{
    /// <summary>Front: weight leaves the driven wheels under drive.</summary>
    Front,

    /// <summary>Rear: weight comes onto the driven wheels under drive.</summary>
    Rear,
}

/// <summary>What one car can put into one of its driveshafts. The same questions serve the car the shaft is made for and
/// the cars the donor shafts came from.</summary>
public sealed record CarInput
{
    /// <summary>Largest engine or motor torque.</summary>
    public Measured<Torque>? EngineTorque { get; init; }

    /// <summary>First-gear (or lowest used) ratio.</summary>
    public Measured<Ratio>? GearRatio { get; init; }

    /// <summary>Final drive ratio.</summary>
    public Measured<Ratio>? FinalDrive { get; init; }

    /// <summary>Share of the axle's torque that this shaft can get: one half through an open differential, up to 1 with a locked one.</summary>
    public Measured<Ratio>? ShareToThisShaft { get; init; }

    /// <summary>Efficiency from crankshaft to shaft.</summary>
    public Measured<Ratio>? Efficiency { get; init; }

    /// <summary>Torque at which the clutch slips, if known; it caps what the engine's inertia can add.</summary>
    public Measured<Torque>? ClutchSlipTorque { get; init; }

    /// <summary>Factor on the engine side for a dropped clutch. A slipping tyre still caps it.</summary>
    public Measured<Ratio>? LaunchFactor { get; init; }

    /// <summary>Which axle is driven.</summary>
    public DrivenAxle Axle { get; init; } = DrivenAxle.Rear;

    /// <summary>Mass carried by this one driven wheel, standing still, driver in.</summary>
    public Measured<Mass>? WheelLoad { get; init; }

    /// <summary>Rolling radius of the tyre.</summary>
    public Measured<Distance>? TyreRadius { get; init; }

    /// <summary>Grip of the tyre on the best surface it will meet; give its range with ±.</summary>
    public Measured<Ratio>? Grip { get; init; }

    /// <summary>Wheelbase, for weight transfer.</summary>
    public Measured<Distance>? Wheelbase { get; init; }

    /// <summary>Height of the centre of mass, for weight transfer.</summary>
    public Measured<Distance>? MassHeight { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, CarFields.EngineTorque, EngineTorque);
        check.Range(path, CarFields.GearRatio, GearRatio);
        check.Range(path, CarFields.FinalDrive, FinalDrive);
        check.Range(path, CarFields.ShareToThisShaft, ShareToThisShaft);
        check.Range(path, CarFields.Efficiency, Efficiency);
        check.Range(path, CarFields.ClutchSlipTorque, ClutchSlipTorque);
        check.Range(path, CarFields.LaunchFactor, LaunchFactor);
        check.Range(path, CarFields.WheelLoad, WheelLoad);
        check.Range(path, CarFields.TyreRadius, TyreRadius);
        check.Range(path, CarFields.Grip, Grip);
        check.Range(path, CarFields.Wheelbase, Wheelbase);
        check.Range(path, CarFields.MassHeight, MassHeight);
    }
}

/// <summary>The cars the two donors came from, for the yardstick.</summary>
public sealed record DonorCars
{
    /// <summary>The car of the donor at the inner (power unit) end.</summary>
    public CarInput? InnerEnd { get; init; }

    /// <summary>The car of the donor at the outer (wheel) end.</summary>
    public CarInput? OuterEnd { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        InnerEnd?.Check(check, path + ".innerEnd");
        OuterEnd?.Check(check, path + ".outerEnd");
    }
}

/// <summary>The questions of <see cref="CarInput"/>.</summary>
public static class CarFields
{
    /// <summary>Engine torque, N·mm.</summary>
    public static Field<Torque> EngineTorque { get; } =
        new("engineTorque", "largest engine torque", 1e3, 5e6, 0);

    /// <summary>Gear ratio.</summary>
    public static Field<Ratio> GearRatio { get; } = new("gearRatio", "lowest gear ratio", 0.2, 30);

    /// <summary>Final drive ratio.</summary>
    public static Field<Ratio> FinalDrive { get; } =
        new("finalDrive", "final drive ratio", 0.2, 30);

    /// <summary>Share of the axle's torque.</summary>
    public static Field<Ratio> ShareToThisShaft { get; } =
        new("shareToThisShaft", "share of the torque to this shaft", 0.05, 1);

    /// <summary>Efficiency.</summary>
    public static Field<Ratio> Efficiency { get; } =
        new("efficiency", "efficiency from engine to shaft", 0.3, 1);

    /// <summary>Clutch slip torque, N·mm.</summary>
    public static Field<Torque> ClutchSlipTorque { get; } =
        new("clutchSlipTorque", "torque at which the clutch slips", 1e3, 2e7);

    /// <summary>Launch factor.</summary>
    public static Field<Ratio> LaunchFactor { get; } = new("launchFactor", "launch factor", 1, 5);

    /// <summary>Wheel load, kg.</summary>
    public static Field<Mass> WheelLoad { get; } =
        new("wheelLoad", "mass on this driven wheel", 10, 3000, 5, "corner scale");

    /// <summary>Tyre radius, mm.</summary>
    public static Field<Distance> TyreRadius { get; } =
        new("tyreRadius", "rolling radius of the tyre", 80, 800, 5, "tape");

    /// <summary>Grip.</summary>
    public static Field<Ratio> Grip { get; } =
        new("grip", "grip of the tyre (friction coefficient)", 0.1, 2.5, 0.1);

    /// <summary>Wheelbase, mm.</summary>
    public static Field<Distance> Wheelbase { get; } =
        new("wheelbase", "wheelbase", 500, 6000, 10, "tape");

    /// <summary>Height of the centre of mass, mm.</summary>
    public static Field<Distance> MassHeight { get; } =
        new("massHeight", "height of the centre of mass", 50, 1500, 50, "estimate");
}
