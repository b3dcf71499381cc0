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

    /// <summary>Drop of the wheel centre, as one says it: without a sign. At none of it the wheel is at ride height, and the
    /// reading belongs to that question.</summary>
    private static readonly Field<Distance> Below = new(
        "travel",
        "how far below ride height",
        0.1,
        CornerFields.Travel.Most,
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

    /// <summary>The questions about the wheel's height, from the lowest.</summary>
    private static readonly string[] s_heights = ["droop", "ride", "bump"];

    private const int Ride = 1;

    private readonly ReadingPins _pins = new();

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

    /// <summary>What is asked about play at the power unit.</summary>
    private static readonly string[] s_play = ["float", "towards", "away"];

    private IEnumerable<Finding> Found =>
        (Result.Corner?.Findings ?? [])
            .Select(Told)
            .Concat(Result.Joints?.Findings ?? [])
            .Concat(Result.Length?.Findings ?? []);

    /// <summary>A job without an allowance does not know that one was typed and refused here.</summary>
    private Finding Told(Finding finding)
    {
        if (finding.Code != "allowances-missing" || !s_play.Any(IsRefused))
            return finding;
        var refused = string.Join(" and ", s_play.Where(IsRefused).Select(Called));
        var others = s_play.Where(k => !Draft.Has(k)).Select(Called).ToList();
        return finding with
        {
            Text =
                $"Taken as nothing because what was typed was refused: {refused}.{(others.Count > 0 ? $" Not typed: {string.Join(" and ", others)}." : "")}",
        };
    }

    private bool IsRefused(string key) => Draft.WhyNot(key) is not null;

    private IReadOnlyList<string> Taken
    {
        get
        {
            var lines = new List<string>();
            if (Job.Length?.Margin is null)
                lines.Add(
                    $"{Refused("margin")}{Say.Length(LengthFields.UsualMargin).In(Preferences.Display)} of plunge kept unused at each stop (common practice, no source)."
                );
            if (Job.Corner?.OutputEndFloat is null)
                lines.Add(Refused("float") + "No end float at the output stub.");
            if (Job.Corner is { PowerUnitTowardsWheel: null, PowerUnitAwayFromWheel: null })
                lines.Add(
                    Refused("towards", "away") + "A power unit that does not move under torque."
                );
            lines.Add("The ± of the tool named under each box, where none was typed.");
            lines.Add(
                Job.Corner?.ReadAlong == SlideLine.InnerAxis
                    ? "In and out read along the inner joint's axis, wheel straight ahead."
                    : "In and out read along the shaft, wheel straight ahead."
            );
            if (More is { } more)
                lines.Add(more);
            return lines;
        }
    }

    private string Refused(params string[] keys) =>
        keys.Any(IsRefused) ? "Because what was typed was refused: " : "";

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var old = basis.Corner ?? new CornerInput();
        var corner = old with
        {
            TrialLength = Draft.Take("trial", CornerFields.TrialLength, old.TrialLength),
            Readings = Laid(old.Readings),
            OutputEndFloat = Draft.Take("float", CornerFields.OutputEndFloat, old.OutputEndFloat),
            PowerUnitTowardsWheel = Draft.Take(
                "towards",
                CornerFields.PowerUnitTowardsWheel,
                old.PowerUnitTowardsWheel
            ),
            PowerUnitAwayFromWheel = Draft.Take(
                "away",
                CornerFields.PowerUnitAwayFromWheel,
                old.PowerUnitAwayFromWheel
            ),
            Conditions = new()
            {
                SpringOut = Said("was/spring"),
                RollBarOff = Said("was/bar"),
                DriverIn = Said("was/driver"),
                StubPushedHome = Said("was/home"),
                ClipFelt = Said("was/clip"),
            },
        };
        var margin = Draft.Take("margin", LengthFields.Margin, basis.Length?.Margin);
        var joints = basis.Joints;
        if (
            Enum.TryParse<JointKind>(Draft["inner/kind"], out var kind) || joints?.Inner is not null
        )
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
        if (job.Joints?.Inner is { Kind: not JointKind.Unknown } inner)
            answers["inner/kind"] = inner.Kind.ToString();
        if (job.Corner is not { } corner)
            return;
        Draft.Lay(answers, "trial", corner.TrialLength);
        Draft.Lay(answers, "float", corner.OutputEndFloat);
        Draft.Lay(answers, "towards", corner.PowerUnitTowardsWheel);
        Draft.Lay(answers, "away", corner.PowerUnitAwayFromWheel);
        var places = _pins.In(corner.Readings);
        for (var q = 0; q < s_heights.Length; q++)
        {
            if (places[q] < 0)
                continue;
            var (name, reading) = (s_heights[q], corner.Readings[places[q]]);
            if (q != Ride)
            {
                Draft.Lay(answers, name + "/travel", reading.Travel);
                if (answers.TryGetValue(name + "/travel", out var travel))
                    answers[name + "/travel"] = Unsigned(travel);
            }
            Draft.Lay(answers, name + "/in", reading.In);
            Draft.Lay(answers, name + "/out", reading.Out);
        }
        Tell(answers, "was/spring", corner.Conditions.SpringOut);
        Tell(answers, "was/bar", corner.Conditions.RollBarOff);
        Tell(answers, "was/driver", corner.Conditions.DriverIn);
        Tell(answers, "was/home", corner.Conditions.StubPushedHome);
        Tell(answers, "was/clip", corner.Conditions.ClipFelt);
    }

    /// <inheritdoc/>
    protected override void Moves(Job basis, bool opens)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var readings = basis.Corner?.Readings ?? [];
        if (opens)
            _pins.Free();
        if (JobId is not null)
            _pins.Hold(readings, _pins.In(readings));
    }

    /// <inheritdoc/>
    protected override bool Same(string key, string typed, string taken) =>
        base.Same(key, typed, taken)
        || (
            key.EndsWith("/travel", StringComparison.Ordinal)
            && Units.Same(Unsigned(typed), Unsigned(taken))
        );

    /// <summary>A job's readings with what was typed: each question changes its own, and no other.</summary>
    private List<TrialReading> Laid(IReadOnlyList<TrialReading> old)
    {
        var places = _pins.In(old);
        var readings = new List<TrialReading>();
        int[] now = [-1, -1, -1];
        for (var i = 0; i < old.Count; i++)
            Add(Array.IndexOf(places, i), old[i]);
        for (var q = 0; q < places.Length; q++)
        {
            if (places[q] < 0)
                Add(q, null);
        }
        if (Keeping && JobId is not null)
            _pins.Hold(readings, now);
        return readings;

        void Add(int q, TrialReading? held)
        {
            if ((q < 0 ? held : Reading(q, held)) is not { } reading)
                return;
            if (q >= 0)
                now[q] = readings.Count;
            readings.Add(reading);
        }
    }

    /// <summary>The reading of a question over the one that the job holds there; null when nothing is left of it.</summary>
    private TrialReading? Reading(int q, TrialReading? held)
    {
        var name = s_heights[q];
        var travel =
            q == Ride
                ? held?.Travel ?? Measured<Distance>.Of(0, Distance.Mm)
                : TravelOf(name, q < Ride, held?.Travel);
        var reading = (held ?? new()) with
        {
            In = Draft.Take(name + "/in", CornerFields.In, held?.In),
            Out = Draft.Take(name + "/out", CornerFields.Out, held?.Out),
        };
        // What else was read there is not asked here, so that it is not taken out either.
        if (reading with { Travel = null } == new TrialReading())
            return null;
        if (travel is not null || reading is { In: null, Out: null })
            return reading with { Travel = travel ?? held?.Travel };
        // Where the wheel stood waits in the draft until it is known. Until then the job's own reading counts, or none: the job
        // could not tell which one it is.
        return held ?? (Keeping ? null : reading);
    }

    private Measured<Distance>? TravelOf(string name, bool below, Measured<Distance>? held)
    {
        var key = name + "/travel";
        if (held is not null)
        {
            var (value, give) = Units.Apart(held.Typed, held.Unit);
            if (
                Units.Together(Unsigned(Draft[key]), Draft[key + Draft.PlusMinus])
                == Units.Together(Unsigned(value), give)
            )
                return held;
        }
        return Draft.Take(key, below ? Below : Above) is not { } typed
            ? null
            : CornerFields.Travel.Read((below ? "-" : "") + Unsigned(typed.Typed)).Measure;
    }

    /// <summary>A travel as one says it: the question says which way.</summary>
    private static string Unsigned(string travel) => travel.TrimStart('-', '−', '+', ' ');

    /// <summary>What a job holds beside the readings asked for; null for nothing.</summary>
    private string? More
    {
        get
        {
            var readings = Basis.Corner?.Readings ?? [];
            return (readings.Count - _pins.In(readings).Count(p => p >= 0)) switch
            {
                0 => null,
                1 =>
                    "One more reading of the job counts too. It is not asked here and stays as it is.",
                var n =>
                    $"{n} more readings of the job count too. They are not asked here and stay as they are.",
            };
        }
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
