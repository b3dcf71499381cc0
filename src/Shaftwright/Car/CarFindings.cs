using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Car;

/// <summary>What the stage says of one car.</summary>
internal sealed class CarFindings(string who, List<Finding> findings)
{
    private const string Practice = "common practice, no source";
    private const string Balance = "moment balance";

    public void EngineSideMissing(CarInput car, bool tyreKnown)
    {
        var missing = Words(
            (car.EngineTorque is null, "largest engine torque"),
            (car.GearRatio is null, "lowest gear ratio"),
            (car.FinalDrive is null, "final drive ratio")
        );
        Add(
            findings,
            Severity.Caution,
            "engine-side-missing",
            tyreKnown
                ? (Sentence)
                    $"For {who} the engine side cannot be had: {missing} not given. The tyre side alone counts, which is more than the shaft may ever see."
                : $"For {who} the engine side cannot be had: {missing} not given.",
            $"Fill in what is missing. Gear and final drive can be counted: turn the engine by hand and count turns of the wheel.",
            Practice
        );
    }

    public void TyreSideMissing(CarInput car, bool engineKnown)
    {
        var missing = Words(
            (car.WheelLoad is null, "mass on the driven wheel"),
            (car.TyreRadius is null, "rolling radius"),
            (car.Grip is null, "grip")
        );
        Add(
            findings,
            Severity.Caution,
            "tyre-side-missing",
            engineKnown
                ? (Sentence)
                    $"For {who} the tyre side cannot be had: {missing} not given. The engine side alone counts, launch factor and all, even if the tyre would slip long before."
                : $"For {who} the tyre side cannot be had: {missing} not given.",
            $"Weigh the wheel, roll it one turn (radius = distance ÷ 6.28), and give the grip as a range, for instance 0.9 ± 0.2.",
            Practice
        );
    }

    public void EngineAssumed(CarInput car)
    {
        var taken = new List<Sentence>();
        var todo = new List<string>();
        if (car.ShareToThisShaft is null)
        {
            taken.Add($"one half of the axle's torque to this shaft");
            todo.Add(
                "A locked or limited-slip differential can send all of it through one shaft: then enter a share of 1."
            );
        }
        if (car.Efficiency is null)
            taken.Add(
                $"an efficiency of {Say.Factor(CarSides.UsualEfficiency)} from engine to shaft"
            );
        if (car.LaunchFactor is null)
        {
            taken.Add(
                $"a launch that multiplies the engine's torque by {Say.Factor(CarSides.UsualLaunch.Low)} (torque converter) to {Say.Factor(CarSides.UsualLaunch.High)} (dropped clutch)"
            );
            todo.Add(
                "Enter a launch factor of 1 for an electric motor without a clutch; with a clutch, find the torque at which it slips, which caps the launch."
            );
        }
        if (taken.Count == 0)
            return;
        if (todo.Count == 0)
            todo.Add("Enter another if you know it; it matters little beside the launch.");
        Sentence text = $"For {who}, what was not said is taken: ";
        for (var i = 0; i < taken.Count; i++)
        {
            text.AppendLiteral(i == 0 ? "" : "; ");
            text.AppendFormatted(taken[i]);
        }
        text.AppendLiteral(".");
        Add(
            findings,
            Severity.Note,
            "engine-side-assumed",
            text,
            Sentence.Plain(string.Join(" ", todo)),
            "launch factor from memory, no single source; the rest common practice, no source"
        );
    }

    public void ClutchSlips(Band engine, Band clutch) =>
        Add(
            findings,
            Severity.Caution,
            "clutch-slips",
            $"For {who} the clutch slips at {Say.Torque(clutch.High)} in the shaft, less than the engine alone gives ({Say.Torque(engine.High)}). The clutch's figure is taken.",
            $"Check the slip torque. A clutch that holds would send more through the shaft.",
            Balance
        );

    public void FrontLifts() =>
        Add(
            findings,
            Severity.Caution,
            "front-lifts",
            $"For {who}, grip × height ÷ wheelbase comes to 1 or more at the high end: the front wheels would lift before the tyre slips, so the tyre side has no figure.",
            $"Check grip, height of the centre of mass and wheelbase. If they are right, all the car's weight on the driven wheels is the limit.",
            Balance
        );

    public void TransferAssumed(DrivenAxle axle)
    {
        var h = CarSides.UsualHeightOverWheelbase;
        Add(
            findings,
            Severity.Note,
            "transfer-assumed",
            $"For {who} the weight that moves {(axle == DrivenAxle.Rear ? "onto" : "off")} the driven wheels is guessed: height of the centre of mass at {Say.Factor(h.Low)} to {Say.Factor(h.High)} of the wheelbase.",
            $"Measure the wheelbase and estimate the height of the centre of mass.",
            Practice
        );
    }

    public static void NotDescribed(List<Finding> findings) =>
        Add(
            findings,
            Severity.Caution,
            "car-not-described",
            $"The car that the shaft is made for is not described, so nothing says what torque the shaft will get.",
            $"Describe its engine, ratios and tyres, as far as you know them.",
            Practice
        );

    public static void Governing(ShaftTorque? torque, string who, List<Finding> findings)
    {
        if (torque is not { } t)
            return;
        var g = Range(t.Governing);
        Sentence why = t.Limit switch
        {
            TorqueLimit.EngineSide =>
                $"the engine side sets it; the tyre could hold {Range(t.TyreSide!.Value)}.",
            TorqueLimit.TyreSide =>
                $"the tyre slips first; the engine side could give {Range(t.EngineSide!.Value)}.",
            TorqueLimit.OnlyEngineSideKnown => $"from the engine side, the only one known.",
            _ => $"from the tyre side, the only one known.",
        };
        Add(
            findings,
            Severity.Note,
            "torque-governs",
            $"{char.ToUpperInvariant(who[0]) + who[1..]} puts {g} into one shaft: {why}",
            t.Limit is TorqueLimit.TyreSide
                ? (Sentence)
                    $"More grip or more weight on that wheel raises it; more engine does not."
                : $"More engine, a lower gear or a harsher launch raises it.",
            Balance
        );
    }

    public static void Ratio(Band? ratio, string end, List<Finding> findings)
    {
        if (ratio is not { } r)
            return;
        Add(
            findings,
            Severity.Note,
            "new-over-donor",
            $"The {end} donor is asked for {(r.High - r.Low < 0.005 ? (Sentence)$"{Say.Factor(r.Low)}" : $"{Say.Factor(r.Low)} to {Say.Factor(r.High)}")} times what its own car could give it.",
            r.High > 1
                ? (Sentence)
                    $"Above 1 it is asked for more than its maker meant it to carry. Look at joint, stub and spline of that end too."
                : $"Its joint, stub and spline of that end are asked for no more than before.",
            "the same sums for both cars, with the same launch factor where none was said"
        );
    }

    public static void NotInThisLayer(List<Finding> findings) =>
        Add(
            findings,
            Severity.Note,
            "regrip-not-counted",
            $"The tyre side caps a launch only while the tyre slips. A spinning wheel that grips again, or lands from a kerb, adds its own inertia on top, and that shock is not in these figures.",
            $"For rough ground, jumps or kerbs, keep a margin well above 1.",
            "torsion of a shaft stopped by its own stiffness; not computed here"
        );

    private static Sentence Range(Band band) =>
        band.High - band.Low < 500
            ? (Sentence)$"{Say.Torque(band.Low)}"
            : $"{Say.Torque(band.Low)} to {Say.Torque(band.High)}";

    private static string Words(params (bool Missing, string Word)[] parts) =>
        string.Join(", ", parts.Where(p => p.Missing).Select(p => p.Word));

    private static void Add(
        List<Finding> findings,
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => findings.Add(new(severity, Stage.Car, code, text, action, source));
}
