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
            "inner-seat",
            "Where does the inner joint sit on the shaft?",
            "Without it there is a length between joint centres, but none to cut."
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
        Option.Worded([.. Kinds, .. Seats, .. Rounds], text);

    private JointKind KindOf(string end) =>
        Enum.TryParse<JointKind>(Draft[end + "/kind"], out var kind) ? kind
        : end == "outer" ? JointKind.Fixed
        : JointKind.PlungingTripod;

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
        if (joint.Seat != SeatKind.Unknown)
            answers[end + "/seat"] = joint.Seat.ToString();
        if (joint.WayRound != WayRound.Unknown)
            answers[end + "/round"] = joint.WayRound.ToString();
    }
}
