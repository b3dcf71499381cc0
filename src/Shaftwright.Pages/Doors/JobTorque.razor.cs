using Shaftwright.Car;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Pages.Doors;

/// <summary>What torque a job's shaft meets, and what its donors were made for. Opened from the route card only.</summary>
public sealed partial class JobTorque
{
    /// <summary>Its place in the address, after the job's.</summary>
    public const string Place = "torque";

    private static readonly Option[] Samples =
    [
        new("no", "A guess"),
        new("yes", "An etched sample", "of the same offcuts"),
    ];

    /// <inheritdoc/>
    public override string Slug => Place;

    /// <inheritdoc/>
    public override string Title => "The torque";

    /// <inheritdoc/>
    public override IReadOnlyList<Step> Steps { get; } =
    [
        new(
            "engine",
            "What can this car's engine put in?",
            "Then only the tyre limits the torque."
        ),
        new("tyre", "What can this car's tyre hold?", "Then only the engine limits the torque."),
        new(
            "inner-donor",
            "Which car did the inner-end donor come from?",
            "Then its part cannot be compared with what it was made for."
        ),
        new(
            "outer-donor",
            "Which car did the outer-end donor come from?",
            "Then its part cannot be compared with what it was made for."
        ),
        new(
            "weld",
            "How deep does the weld fuse?",
            "Then a low guess counts, until a sample is etched."
        ),
    ];

    /// <inheritdoc/>
    public override Answer? Answer =>
        (StageAnswers.Strength(Result) ?? StageAnswers.Car(Result)) is { } said
            ? new(said, null, null, Result.Car?.ThisCar?.Governing.High)
            : null;

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var inner = Car("inner", basis.DonorCars?.InnerEnd);
        var outer = Car("outer", basis.DonorCars?.OuterEnd);
        var fusion = Draft.Take("fusion", StrengthFields.FusionDepth, basis.Strength?.FusionDepth);
        return basis with
        {
            Car = Car("car", basis.Car),
            DonorCars =
                inner is null && outer is null
                    ? basis.DonorCars
                    : (basis.DonorCars ?? new()) with
                    {
                        InnerEnd = inner,
                        OuterEnd = outer,
                    },
            Strength =
                fusion is null && basis.Strength is null
                    ? null
                    : (basis.Strength ?? new()) with
                    {
                        FusionDepth = fusion,
                        FusionFromSample = Draft["sample"] == "yes",
                    },
        };
    }

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(answers);
        Unlay("car", job.Car, answers);
        Unlay("inner", job.DonorCars?.InnerEnd, answers);
        Unlay("outer", job.DonorCars?.OuterEnd, answers);
        Draft.Lay(answers, "fusion", job.Strength?.FusionDepth);
        if (job.Strength is { } weld && (weld.FusionFromSample || weld.FusionDepth is not null))
            answers["sample"] = weld.FusionFromSample ? "yes" : "no";
    }

    /// <inheritdoc/>
    protected override string? SayMoved(double change) =>
        Math.Abs(change) < 500
            ? null
            : Say.Torque(Math.Abs(change)).In(Preferences.Display)
                + (change > 0 ? " more than before" : " less than before");

    /// <inheritdoc/>
    public override string Called(string key) =>
        key.Split('/') switch
        {
            ["fusion", ..] => "how deep the weld fuses",
            ["sample"] => "where that is known from",
            [var of, var what, ..] => (of == "car" ? "this car, " : $"the {of}-end donor's car, ")
                + what switch
                {
                    "torque" => "its engine's torque",
                    "gear" => "its lowest gear",
                    "final" => "its final drive",
                    "share" => "this shaft's share",
                    "launch" => "its launch",
                    "clutch" => "its clutch",
                    "axle" => "its driven axle",
                    "load" => "its wheel load",
                    "radius" => "its tyre radius",
                    "grip" => "its grip",
                    "base" => "its wheelbase",
                    _ => "its height of mass",
                },
            _ => base.Called(key),
        };

    /// <inheritdoc/>
    public override string Worded(string key, string text) =>
        key == "sample" ? Option.Worded(Samples, text) : text;

    private CarInput? Car(string of, CarInput? old)
    {
        if (!Draft.Keys(of + "/").Any())
            return old;
        return (old ?? new()) with
        {
            EngineTorque = Draft.Take(of + "/torque", CarFields.EngineTorque, old?.EngineTorque),
            GearRatio = Draft.Take(of + "/gear", CarFields.GearRatio, old?.GearRatio),
            FinalDrive = Draft.Take(of + "/final", CarFields.FinalDrive, old?.FinalDrive),
            ShareToThisShaft = Draft.Take(
                of + "/share",
                CarFields.ShareToThisShaft,
                old?.ShareToThisShaft
            ),
            LaunchFactor = Draft.Take(of + "/launch", CarFields.LaunchFactor, old?.LaunchFactor),
            ClutchSlipTorque = Draft.Take(
                of + "/clutch",
                CarFields.ClutchSlipTorque,
                old?.ClutchSlipTorque
            ),
            Axle = Enum.TryParse<DrivenAxle>(Draft[of + "/axle"], out var axle)
                ? axle
                : DrivenAxle.Rear,
            WheelLoad = Draft.Take(of + "/load", CarFields.WheelLoad, old?.WheelLoad),
            TyreRadius = Draft.Take(of + "/radius", CarFields.TyreRadius, old?.TyreRadius),
            Grip = Draft.Take(of + "/grip", CarFields.Grip, old?.Grip),
            Wheelbase = Draft.Take(of + "/base", CarFields.Wheelbase, old?.Wheelbase),
            MassHeight = Draft.Take(of + "/height", CarFields.MassHeight, old?.MassHeight),
        };
    }

    private static void Unlay(string of, CarInput? car, IDictionary<string, string> answers)
    {
        if (car is null)
            return;
        Draft.Lay(answers, of + "/torque", car.EngineTorque);
        Draft.Lay(answers, of + "/gear", car.GearRatio);
        Draft.Lay(answers, of + "/final", car.FinalDrive);
        Draft.Lay(answers, of + "/share", car.ShareToThisShaft);
        Draft.Lay(answers, of + "/launch", car.LaunchFactor);
        Draft.Lay(answers, of + "/clutch", car.ClutchSlipTorque);
        answers[of + "/axle"] = car.Axle.ToString();
        Draft.Lay(answers, of + "/load", car.WheelLoad);
        Draft.Lay(answers, of + "/radius", car.TyreRadius);
        Draft.Lay(answers, of + "/grip", car.Grip);
        Draft.Lay(answers, of + "/base", car.Wheelbase);
        Draft.Lay(answers, of + "/height", car.MassHeight);
    }
}
