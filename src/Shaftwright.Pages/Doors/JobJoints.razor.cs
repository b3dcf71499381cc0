using Shaftwright.JobFile;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

/// <summary>The joints of a job: what they allow, and where they sit on the shaft. Opened from the route card only.</summary>
public sealed partial class JobJoints
{
    /// <summary>Its place in the address, after the job's.</summary>
    public const string Place = "joints";

    private static readonly Option[] Kinds =
    [
        new(nameof(JointKind.Fixed), "Fixed", "angle only"),
        new(nameof(JointKind.PlungingTripod), "Tripod", "plunges"),
        new(nameof(JointKind.PlungingBall), "Plunging ball"),
        new(nameof(JointKind.CrossGroove), "Cross groove", "slanted grooves, plunges"),
    ];

    private static readonly Option[] YesNo =
    [
        new("", "Don't know yet"),
        new("yes", "Yes"),
        new("no", "No"),
    ];

    private static readonly Option[] Seats =
    [
        new("", "Don't know yet"),
        new(nameof(SeatKind.Shoulder), "A shoulder"),
        new(nameof(SeatKind.Clip), "A clip in a groove"),
        new(nameof(SeatKind.EndStop), "The shaft's end on a stop"),
    ];

    private static readonly Option[] Rounds =
    [
        new("", "Don't know yet"),
        new(nameof(WayRound.Symmetric), "The same both ways"),
        new(nameof(WayRound.AsMeasured), "As it was measured"),
        new(nameof(WayRound.Turned), "Turned round since"),
    ];

    /// <inheritdoc/>
    public override string Slug => Place;

    /// <inheritdoc/>
    public override string Title => "The joints";

    /// <inheritdoc/>
    public override IReadOnlyList<Step> Steps { get; } =
    [
        new(
            "inner-limits",
            "What does the inner joint allow?",
            "Without its angle limit nothing checks its angle; readings of distance and angle need its plunge."
        ),
        new(
            "inner-bend",
            "What does the inner joint lose when it is bent?",
            "Without it a tripod is taken to lose what its rollers must, and any other joint nothing."
        ),
        new(
            "inner-seat",
            "Where does the inner joint sit on the shaft?",
            "Without it there is a length between joint centres, but none to cut."
        ),
        new(
            "inner-load",
            "What may the inner joint carry, and what can its boot do?",
            "Without it neither is checked."
        ),
        new(
            "outer-limits",
            "What does the outer joint allow?",
            "Without its angle limit nothing checks its angle."
        ),
        new(
            "outer-seat",
            "Where does the outer joint sit on the shaft?",
            "Without it there is a length between joint centres, but none to cut."
        ),
        new(
            "outer-load",
            "What may the outer joint carry, and what can its boot do?",
            "Without it neither is checked."
        ),
    ];

    /// <inheritdoc/>
    public override Answer? Answer =>
        Result.Length?.Overall is { } overall
            ? new(
                $"From end to end the shaft is",
                $"{Say.Length(overall)}",
                $", by its joints' seats.",
                overall
            )
            {
                Unsettled = $"from end to end the shaft would be",
            }
        : StageAnswers.Joints(Result) is { } said ? new(said, null, null)
        : null;

    /// <inheritdoc/>
    public override Job Lay(Job basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (Draft.IsEmpty)
            return basis;
        return basis with
        {
            Joints = (basis.Joints ?? new()) with
            {
                Inner = Joint("inner", basis.Joints?.Inner),
                Outer = Joint("outer", basis.Joints?.Outer),
            },
        };
    }

    /// <inheritdoc/>
    protected override void Unlay(Job job, IDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(job);
        Unlay("inner", job.Joints?.Inner, answers);
        Unlay("outer", job.Joints?.Outer, answers);
    }

    /// <inheritdoc/>
    protected override string? SayMoved(double change) =>
        Math.Abs(change) < 0.05
            ? null
            : Say.Length(Math.Abs(change)).In(Preferences.Display)
                + (change > 0 ? " longer than before" : " shorter than before");

    /// <inheritdoc/>
    public override string Called(string key) =>
        key.Split('/') is [var end, var what, ..]
            ? $"the {end} joint, "
                + what switch
                {
                    "stroke" => "its stroke straight",
                    "bent" => "its stroke at an angle",
                    "bent-angle" => "the angle its stroke was read at",
                    "held" => "whether a ring or clip holds it",
                    "clamps" => "whether its stub clamps the bearing",
                    "torque" => "what it may carry",
                    "boot" => "its boot",
                    "swing" => "its centre from two positions",
                    "kind" => "its kind",
                    "angle" => "its largest angle",
                    "in" => "its plunge in",
                    "out" => "its plunge out",
                    "roller" => "its rollers",
                    "seat" => "what locates it",
                    "round" => "which way round it is",
                    "centre" => "from its seat to its centre",
                    _ => "from its seat to the shaft's end",
                }
            : base.Called(key);

    /// <inheritdoc/>
    public override string Worded(string key, string text) =>
        Option.Worded([.. Kinds, .. Seats, .. Rounds, .. YesNo], text);

    /// <summary>The question in hand; nothing at the answer.</summary>
    private string Step => Index < Steps.Count ? Steps[Index].Slug : "";

    /// <summary>The joint it asks about.</summary>
    private string End => Step.Split('-')[0];

    private JointKind KindOf(string end) =>
        Enum.TryParse<JointKind>(Draft[end + "/kind"], out var kind) ? kind
        : end == "outer" ? JointKind.Fixed
        : JointKind.PlungingTripod;

    private static bool Plunges(JointKind kind) =>
        kind is JointKind.PlungingTripod or JointKind.PlungingBall or JointKind.CrossGroove;

    private bool BothPlunge => Plunges(KindOf("inner")) && Plunges(KindOf("outer"));

    /// <summary>Rows of torque that stand open: one more than are filled, three at least.</summary>
    private int TorqueRows(string end)
    {
        var filled = Draft
            .Keys(end + "/torque/")
            .Select(k => int.TryParse(k.Split('/')[2], out var n) ? n + 1 : 0)
            .DefaultIfEmpty()
            .Max();
        return Math.Clamp(filled + 1, 3, 60);
    }

    private List<TorqueAtAngle> Torques(string end, JointInput? old)
    {
        var rows = new List<TorqueAtAngle>();
        for (var i = 0; i < TorqueRows(end); i++)
        {
            var held = i < old?.TorqueTable.Count ? old.TorqueTable[i] : null;
            var at = $"{end}/torque/{i}";
            var row = new TorqueAtAngle
            {
                Angle = Draft.Take(at + "/angle", TorqueFields.Angle, held?.Angle),
                Torque = Draft.Take(at + "/most", TorqueFields.Torque, held?.Torque),
            };
            if (row is { Angle: not null } or { Torque: not null })
                rows.Add(row);
        }
        return rows;
    }

    private BootInput? Boot(string end, BootInput? old)
    {
        var boot = (old ?? new()) with
        {
            LargeClamp = Draft.Take(end + "/boot/large", BootFields.LargeClamp, old?.LargeClamp),
            SmallClamp = Draft.Take(end + "/boot/small", BootFields.SmallClamp, old?.SmallClamp),
            Shortest = Draft.Take(end + "/boot/short", BootFields.Shortest, old?.Shortest),
            Longest = Draft.Take(end + "/boot/long", BootFields.Longest, old?.Longest),
            AngleLimit = Draft.Take(end + "/boot/angle", BootFields.AngleLimit, old?.AngleLimit),
        };
        return boot == new BootInput() ? null : boot;
    }

    private CentreSwing? Swing(string end, CentreSwing? old)
    {
        var swing = (old ?? new()) with
        {
            SeatToMark = Draft.Take(end + "/swing/seat", SwingFields.SeatToMark, old?.SeatToMark),
            MarksApart = Draft.Take(end + "/swing/apart", SwingFields.MarksApart, old?.MarksApart),
            ChordNear = Draft.Take(end + "/swing/near", SwingFields.ChordNear, old?.ChordNear),
            ChordFar = Draft.Take(end + "/swing/far", SwingFields.ChordFar, old?.ChordFar),
        };
        return swing == new CentreSwing() ? null : swing;
    }

    private bool? Said(string key) =>
        Draft[key] switch
        {
            "yes" => true,
            "no" => false,
            _ => null,
        };

    private JointInput? Joint(string end, JointInput? old)
    {
        if (!Draft.Keys(end + "/").Any())
            return old;
        return (old ?? new()) with
        {
            Kind = KindOf(end),
            AngleLimit = Draft.Take(end + "/angle", JointFields.AngleLimit, old?.AngleLimit),
            PlungeIn = Draft.Take(end + "/in", JointFields.PlungeIn, old?.PlungeIn),
            PlungeOut = Draft.Take(end + "/out", JointFields.PlungeOut, old?.PlungeOut),
            RollerRadius = Draft.Take(end + "/roller", JointFields.RollerRadius, old?.RollerRadius),
            Stroke = Draft.Take(end + "/stroke", JointFields.Stroke, old?.Stroke),
            StrokeAtAngle = Draft.Take(
                end + "/bent",
                JointFields.StrokeAtAngle,
                old?.StrokeAtAngle
            ),
            StrokeAngle = Draft.Take(
                end + "/bent-angle",
                JointFields.StrokeAngle,
                old?.StrokeAngle
            ),
            HeldAtOuterStop = Said(end + "/held"),
            StubClampsBearing = Said(end + "/clamps"),
            TorqueTable = Torques(end, old),
            Boot = Boot(end, old?.Boot),
            Swing = Swing(end, old?.Swing),
            Seat = Enum.TryParse<SeatKind>(Draft[end + "/seat"], out var seat)
                ? seat
                : SeatKind.Unknown,
            WayRound = Enum.TryParse<WayRound>(Draft[end + "/round"], out var round)
                ? round
                : WayRound.Unknown,
            SeatToCentre = Draft.Take(end + "/centre", JointFields.SeatToCentre, old?.SeatToCentre),
            SeatToEnd = Draft.Take(end + "/end", JointFields.SeatToEnd, old?.SeatToEnd),
        };
    }

    private static void Unlay(string end, JointInput? joint, IDictionary<string, string> answers)
    {
        if (joint is null)
            return;
        answers[end + "/kind"] = joint.Kind.ToString();
        Draft.Lay(answers, end + "/angle", joint.AngleLimit);
        Draft.Lay(answers, end + "/in", joint.PlungeIn);
        Draft.Lay(answers, end + "/out", joint.PlungeOut);
        Draft.Lay(answers, end + "/roller", joint.RollerRadius);
        Draft.Lay(answers, end + "/centre", joint.SeatToCentre);
        Draft.Lay(answers, end + "/end", joint.SeatToEnd);
        Draft.Lay(answers, end + "/stroke", joint.Stroke);
        Draft.Lay(answers, end + "/bent", joint.StrokeAtAngle);
        Draft.Lay(answers, end + "/bent-angle", joint.StrokeAngle);
        Draft.Lay(answers, end + "/boot/large", joint.Boot?.LargeClamp);
        Draft.Lay(answers, end + "/boot/small", joint.Boot?.SmallClamp);
        Draft.Lay(answers, end + "/boot/short", joint.Boot?.Shortest);
        Draft.Lay(answers, end + "/boot/long", joint.Boot?.Longest);
        Draft.Lay(answers, end + "/boot/angle", joint.Boot?.AngleLimit);
        Draft.Lay(answers, end + "/swing/seat", joint.Swing?.SeatToMark);
        Draft.Lay(answers, end + "/swing/apart", joint.Swing?.MarksApart);
        Draft.Lay(answers, end + "/swing/near", joint.Swing?.ChordNear);
        Draft.Lay(answers, end + "/swing/far", joint.Swing?.ChordFar);
        for (var i = 0; i < joint.TorqueTable.Count; i++)
        {
            Draft.Lay(answers, $"{end}/torque/{i}/angle", joint.TorqueTable[i].Angle);
            Draft.Lay(answers, $"{end}/torque/{i}/most", joint.TorqueTable[i].Torque);
        }
        if (joint.HeldAtOuterStop is { } held)
            answers[end + "/held"] = held ? "yes" : "no";
        if (joint.StubClampsBearing is { } clamps)
            answers[end + "/clamps"] = clamps ? "yes" : "no";
        if (joint.Seat != SeatKind.Unknown)
            answers[end + "/seat"] = joint.Seat.ToString();
        if (joint.WayRound != WayRound.Unknown)
            answers[end + "/round"] = joint.WayRound.ToString();
    }
}
