using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

/// <summary>A car on stands: how long must the shaft be?</summary>
public sealed partial class CarOnStands
{
    /// <summary>Its place in the address.</summary>
    public const string Place = "car-on-stands";

    /// <summary>Drop of the wheel centre, as one says it: without a sign.</summary>
    private static readonly Field<Distance> Below = new(
        "travel",
        "how far below ride height",
        0,
        400,
        CornerFields.Travel.UsualPlusMinus,
        CornerFields.Travel.How
    );

    private static readonly Field<Distance> Above = Below with
    {
        Words = "how far above ride height",
    };

    private static readonly Option[] Kinds =
    [
        new("", "Don't know"),
        new(nameof(JointKind.PlungingTripod), "Tripod"),
        new(nameof(JointKind.PlungingBall), "Plunging ball"),
    ];

    private static readonly Option[] YesNo = [new("yes", "Yes"), new("no", "No")];

    private static readonly (string Key, string Words)[] Conditions =
    [
        ("was/spring", "Spring out"),
        ("was/bar", "Roll bar off"),
        ("was/driver", "Driver's weight in, for ride height"),
        ("was/home", "Inner stub pushed home"),
        ("was/clip", "Its clip felt to snap"),
    ];

    /// <inheritdoc/>
    public override string Slug => Place;

    /// <inheritdoc/>
    public override string Title => "A car on stands";

    /// <inheritdoc/>
    public override IReadOnlyList<Step> Steps { get; } =
    [
        new(
            "trial-shaft",
            "How long is the trial shaft?",
            "Without it there is what is left at each stop, but no length."
        ),
        new(
            "droop",
            "Let the wheel hang at full droop.",
            "Without droop nobody knows whether the joint pulls out."
        ),
        new(
            "ride-height",
            "Set the wheel at ride height.",
            "Without it the curve between droop and bump is a guess."
        ),
        new(
            "bump",
            "Lift the wheel to full bump.",
            "Without bump nobody knows whether the joint bottoms."
        ),
        new(
            "play",
            "What moves at the power unit?",
            "It is taken as nothing, which makes the window look wider than it is."
        ),
        new("margin", "How much should stay unused?", "Then 3 mm is kept at each stop."),
    ];

    /// <inheritdoc/>
    public override Answer? Answer => LengthWords.Answer(Result);

    /// <inheritdoc/>
    protected override string? SayMoved(double change) =>
        Math.Abs(change) < 0.05
            ? null
            : Say.Length(Math.Abs(change)).In(Preferences.Display)
                + (change > 0 ? " longer than before" : " shorter than before");

    private IEnumerable<Finding> Found =>
        (Result.Corner?.Findings ?? [])
            .Concat(Result.Joints?.Findings ?? [])
            .Concat(Result.Length?.Findings ?? []);

    private IReadOnlyList<string> Taken
    {
        get
        {
            var lines = new List<string>();
            if (Job.Length?.Margin is null)
                lines.Add(
                    $"{Say.Length(LengthFields.UsualMargin).In(Preferences.Display)} of plunge kept unused at each stop (common practice, no source)."
                );
            if (Job.Corner?.OutputEndFloat is null)
                lines.Add("No end float at the output stub.");
            if (Job.Corner is { PowerUnitTowardsWheel: null, PowerUnitAwayFromWheel: null })
                lines.Add("A power unit that does not move under torque.");
            lines.Add("The ± of the tool named under each box, where none was typed.");
            lines.Add("In and out read along the shaft, wheel straight ahead.");
            return lines;
        }
    }

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var corner = basis.Corner ?? new CornerInput();
        var places = Places(corner);
        var readings = new List<TrialReading>();
        for (var i = 0; i < corner.Readings.Count; i++)
        {
            // Readings of another form, or steered, are no business of these questions and stay.
            if (!places.Contains(i))
                readings.Add(corner.Readings[i]);
        }
        Add("droop", -1, readings, Old(corner, places[0]));
        Add("ride", 0, readings, Old(corner, places[1]));
        Add("bump", 1, readings, Old(corner, places[2]));

        corner = corner with
        {
            TrialLength = Draft.Take("trial", CornerFields.TrialLength),
            Readings = readings,
            OutputEndFloat = Draft.Take("float", CornerFields.OutputEndFloat),
            PowerUnitTowardsWheel = Draft.Take("towards", CornerFields.PowerUnitTowardsWheel),
            PowerUnitAwayFromWheel = Draft.Take("away", CornerFields.PowerUnitAwayFromWheel),
            Conditions = new()
            {
                SpringOut = Said("was/spring"),
                RollBarOff = Said("was/bar"),
                DriverIn = Said("was/driver"),
                StubPushedHome = Said("was/home"),
                ClipFelt = Said("was/clip"),
            },
        };
        var margin = Draft.Take("margin", LengthFields.Margin);
        var joints = basis.Joints;
        if (Enum.TryParse<JointKind>(Draft["inner/kind"], out var kind))
        {
            joints ??= new();
            joints = joints with { Inner = (joints.Inner ?? new()) with { Kind = kind } };
        }
        return basis with
        {
            Corner = corner,
            Joints = joints,
            Length =
                margin is null && basis.Length is null
                    ? null
                    : (basis.Length ?? new()) with
                    {
                        Margin = margin,
                    },
        };
    }

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(answers);
        Draft.Lay(answers, "margin", job.Length?.Margin);
        if (job.Joints?.Inner is { } inner)
            answers["inner/kind"] = inner.Kind.ToString();
        if (job.Corner is not { } corner)
            return;
        Draft.Lay(answers, "trial", corner.TrialLength);
        Draft.Lay(answers, "float", corner.OutputEndFloat);
        Draft.Lay(answers, "towards", corner.PowerUnitTowardsWheel);
        Draft.Lay(answers, "away", corner.PowerUnitAwayFromWheel);
        var places = Places(corner);
        string[] names = ["droop", "ride", "bump"];
        for (var i = 0; i < names.Length; i++)
        {
            if (Old(corner, places[i]) is not { } reading)
                continue;
            if (i != 1 && reading.Travel is { } travel)
            {
                Draft.Lay(answers, names[i] + "/travel", travel);
                answers[names[i] + "/travel"] = answers[names[i] + "/travel"]
                    .TrimStart('-', '−', '+');
            }
            Draft.Lay(answers, names[i] + "/in", reading.In);
            Draft.Lay(answers, names[i] + "/out", reading.Out);
        }
        Tell(answers, "was/spring", corner.Conditions.SpringOut);
        Tell(answers, "was/bar", corner.Conditions.RollBarOff);
        Tell(answers, "was/driver", corner.Conditions.DriverIn);
        Tell(answers, "was/home", corner.Conditions.StubPushedHome);
        Tell(answers, "was/clip", corner.Conditions.ClipFelt);
    }

    /// <summary>Which readings of a job are its lowest, its nearest to ride height and its highest; −1 for none.</summary>
    private static int[] Places(CornerInput corner)
    {
        int droop = -1,
            ride = -1,
            bump = -1;
        for (var i = 0; i < corner.Readings.Count; i++)
        {
            var r = corner.Readings[i];
            // Without its travel nobody knows where the wheel was; it is not taken to be at ride height.
            if (
                r.Steering != Steering.Straight
                || (r.In is null && r.Out is null)
                || r.Travel is null
            )
                continue;
            var at = r.Travel.Value;
            if (at == 0)
                ride = ride < 0 ? i : ride;
            else if (at < 0 && (droop < 0 || at < corner.Readings[droop].Travel!.Value))
                droop = i;
            else if (at > 0 && (bump < 0 || at > corner.Readings[bump].Travel!.Value))
                bump = i;
        }
        return [droop, ride, bump];
    }

    private static TrialReading? Old(CornerInput corner, int place) =>
        place < 0 ? null : corner.Readings[place];

    private void Add(string name, int side, List<TrialReading> readings, TrialReading? old)
    {
        var goesIn = Draft.Take(name + "/in", CornerFields.In);
        var comesOut = Draft.Take(name + "/out", CornerFields.Out);
        if (goesIn is null && comesOut is null)
            return;
        var travel =
            side == 0
                ? old?.Travel ?? Measured<Distance>.Of(0, Distance.Mm)
                : Draft.Take(name + "/travel", side < 0 ? Below : Above);
        // It says here what is missing, and waits in the draft until it is known: the job could not tell which one it is.
        if (travel is null && Keeping)
            return;
        if (side < 0 && travel is not null)
            travel = CornerFields.Travel.Read("-" + travel.Typed).Measure;
        readings.Add((old ?? new()) with { Travel = travel, In = goesIn, Out = comesOut });
    }

    private bool WantsTravel(string name) =>
        Draft.Take(name + "/travel", name == "droop" ? Below : Above) is null
        && (Draft.Has(name + "/in") || Draft.Has(name + "/out"));

    /// <inheritdoc/>
    public override string Called(string key) =>
        key switch
        {
            "trial" => "the trial shaft",
            "droop/travel" => "how far droop is below ride height",
            "droop/in" => "what goes in at droop",
            "droop/out" => "what comes out at droop",
            "ride/in" => "what goes in at ride height",
            "ride/out" => "what comes out at ride height",
            "bump/travel" => "how far bump is above ride height",
            "bump/in" => "what goes in at bump",
            "bump/out" => "what comes out at bump",
            "float" => "the end float",
            "towards" => "how far the power unit moves towards the wheel",
            "away" => "how far the power unit moves away",
            "margin" => "what stays unused",
            "inner/kind" => "the kind of the inner joint",
            _ => Array.Find(Conditions, c => c.Key == key).Words ?? base.Called(key),
        };

    /// <inheritdoc/>
    public override string Worded(string key, string text) =>
        Option.Worded(key == "inner/kind" ? Kinds : YesNo, text);

    private bool? Said(string key) =>
        Draft[key] switch
        {
            "yes" => true,
            "no" => false,
            _ => null,
        };

    private static void Tell(IDictionary<string, string> answers, string key, bool? said)
    {
        if (said is { } yes)
            answers[key] = yes ? "yes" : "no";
    }
}
