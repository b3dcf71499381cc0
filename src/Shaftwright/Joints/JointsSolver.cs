using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Joints;

/// <summary>Turns the joints' measured seats into offsets, and says what is missing of their limits.</summary>
public static class JointsSolver
{
    private const string Practice = "common practice, no source";

    /// <summary>Offsets of both joints on the shaft, and findings.</summary>
    /// <param name="joints">The joints as measured; anything may be missing.</param>
    public static JointsResult Solve(JointsInput joints)
    {
        ArgumentNullException.ThrowIfNull(joints);
        var findings = new List<Finding>();
        if (joints.Inner is { } inner)
            Describe(inner, "inner", findings);
        if (joints.Outer is { } outer)
            Describe(outer, "outer", findings);

        var inside = joints.Inner?.Kind ?? JointKind.Unknown;
        var outside = joints.Outer?.Kind ?? JointKind.Unknown;
        if (Plunges(inside) && Plunges(outside))
            Floating(joints.Inner!, joints.Outer!, findings);
        else if (inside == JointKind.Fixed && outside == JointKind.Fixed)
            Say(
                findings,
                Severity.Stop,
                "no-plunging-joint",
                $"Neither joint plunges: the first bump would push the shaft through the gearbox or the hub.",
                $"Fit a plunging joint at the inner end."
            );
        else if (inside == JointKind.Fixed && Plunges(outside))
            Say(
                findings,
                Severity.Caution,
                "plunge-at-outer-end",
                $"The plunging joint is at the wheel end. Readings of in and out still hold; distance and angle are worked out about the inner joint's axis and do not.",
                $"Use readings of in and out of a trial shaft for this corner."
            );

        return new JointsResult
        {
            InnerSeatToCentre = SeatToCentre(joints.Inner)?.Value,
            OuterSeatToCentre = SeatToCentre(joints.Outer)?.Value,
            InnerSeatToEnd = joints.Inner?.SeatToEnd?.Value,
            OuterSeatToEnd = joints.Outer?.SeatToEnd?.Value,
            OverallUncertainty = double.Hypot(Offsets(joints.Inner), Offsets(joints.Outer)),
            Findings = findings,
        };
    }

    private static double Offsets(JointInput? joint) =>
        double.Hypot(
            SeatToCentre(joint)?.StandardUncertainty ?? 0,
            joint?.SeatToEnd is { } e ? JointFields.SeatToEnd.StandardUncertainty(e) : 0
        );

    /// <summary>True for a joint that lets its shaft slide.</summary>
    internal static bool Plunges(JointKind kind) =>
        kind is JointKind.PlungingTripod or JointKind.PlungingBall or JointKind.CrossGroove;

    /// <summary>A part turned round since its offset was measured carries its centre to the other side of the seat. Typed, or found
    /// from the chords of two marks.</summary>
    private static (double Value, double StandardUncertainty)? SeatToCentre(JointInput? joint)
    {
        var found = joint?.SeatToCentre is { } typed
            ? (typed.Value, JointFields.SeatToCentre.StandardUncertainty(typed))
            : joint?.Swing?.Centre();
        return found is var (value, u)
            ? (joint!.WayRound == WayRound.Turned ? -value : value, u)
            : null;
    }

    private static void Floating(JointInput inner, JointInput outer, List<Finding> findings)
    {
        Say(
            findings,
            Severity.Note,
            "shaft-floats",
            $"Both joints plunge, so the shaft floats between them: it drifts until one joint bottoms or the other comes to its outer stop. Both ends are looked at together.",
            $"Read the distance between the joint centres and both angles at each height; in and out of a trial shaft do not tell the two joints apart."
        );
        foreach (var (joint, end) in ((JointInput, string)[])[(inner, "inner"), (outer, "outer")])
        {
            if (joint.HeldAtOuterStop is null)
                Say(
                    findings,
                    Severity.Caution,
                    $"{end}-held-unknown",
                    $"It is not said whether a ring or clip holds the shaft in the {end} joint at its outer stop. It is taken as held by nothing, so the shaft must be long enough to stay in wherever it drifts.",
                    $"Pull the {end} joint to its outer stop on the bench, and say whether something stops it there."
                );
        }
    }

    private static void Centre(JointInput joint, string end, List<Finding> findings)
    {
        if (joint is not { SeatToCentre: null, Swing: { } swing })
            return;
        if (swing.Centre() is not var (centre, u))
            Say(
                findings,
                Severity.Caution,
                $"{end}-swing-incomplete",
                $"The {end} joint's centre does not follow from its two positions: a measure is missing, or the far mark moved no further than the near one.",
                $"Two marks on top of the shaft, housing held, shaft swung level: measure seat to mark, mark to mark, and the straight way of each mark."
            );
        else if (2 * u > 1.5)
            Say(
                findings,
                Severity.Caution,
                $"{end}-swing-loose",
                $"The {end} joint's centre, {Measures.Say.Length(centre)} beyond its seat, may be {Measures.Say.Length(2 * u)} off; the shaft comes out as wrong.",
                $"Put the marks further apart, swing further, or measure the ways with a caliper.",
                "JCGM 100:2008 (GUM), 5.1.2"
            );
    }

    private static void Torque(JointInput joint, string end, List<Finding> findings)
    {
        var rows = joint.TorqueTable.Count(r => r is { Angle: not null, Torque: not null });
        if (rows < joint.TorqueTable.Count)
            Say(
                findings,
                Severity.Caution,
                $"{end}-torque-row-incomplete",
                $"{joint.TorqueTable.Count - rows} of {joint.TorqueTable.Count} rows of the {end} joint's torque table lack an angle or a torque, and are left out.",
                $"Fill them in."
            );
        if (TorqueCurve.Of(joint)?.RisesAt is { } angle)
            Say(
                findings,
                Severity.Caution,
                $"{end}-torque-rises",
                $"The {end} joint's torque table rises at {Measures.Say.Angle(angle)}. A joint carries less the further it bends, so the smaller torque before it counts there.",
                $"Look at that row again."
            );
    }

    private static void Loss(JointInput joint, string end, List<Finding> findings)
    {
        if (joint is { StrokeAtAngle: not null } or { StrokeAngle: not null })
        {
            var straight = BenchStroke.StraightStroke(joint);
            if (straight is null || joint.StrokeAtAngle is null || joint.StrokeAngle is null)
                Say(
                    findings,
                    Severity.Caution,
                    $"{end}-bench-incomplete",
                    $"The {end} joint's loss at an angle needs three things: its stroke straight, its stroke at an angle, and that angle. One is missing, so the loss is not taken from the bench.",
                    $"Measure what is missing."
                );
            else if (joint.StrokeAtAngle.Value > straight)
                Say(
                    findings,
                    Severity.Caution,
                    $"{end}-bench-grows",
                    $"The {end} joint's stroke is said to be longer at an angle than straight. No stop recedes as a joint bends; the loss is taken as nothing.",
                    $"Measure both strokes again, with the boot off."
                );
            else if (
                joint is { Kind: JointKind.PlungingTripod, RollerRadius: { } roller }
                && BenchStroke.Of(joint) is { LossMeasured: true } bench
                && bench.Radius
                    < roller.Value
                        - 2
                            * double.Hypot(
                                bench.RadiusUncertainty,
                                JointFields.RollerRadius.StandardUncertainty(roller)
                            )
            )
                Say(
                    findings,
                    Severity.Caution,
                    $"{end}-loss-below-rule",
                    $"The {end} tripod lost less on the bench than its rollers must: by its roller radius it loses {Measures.Say.Length(Tripod.EndLoss(roller.Value, joint.StrokeAngle.Value))} at each end at {Measures.Say.Angle(joint.StrokeAngle.Value)}.",
                    $"Turn the joint by hand through a whole turn while you measure the stroke: the first roller to stop counts."
                );
        }
    }

    private static void Describe(JointInput joint, string end, List<Finding> findings)
    {
        if (joint.AngleLimit is null)
            Say(
                findings,
                Severity.Caution,
                $"{end}-angle-limit-unknown",
                $"The {end} joint's largest angle is not given, so its angle is not checked.",
                $"Look it up for the donor, or swing the joint on the bench and keep 2° off the stop."
            );
        if (joint.Kind != JointKind.Fixed && BenchStroke.Of(joint) is null)
            Say(
                findings,
                Severity.Note,
                $"{end}-plunge-unknown",
                $"The {end} joint's plunge is not given. Readings of in and out carry it; distance and angle do not.",
                $"Slide the joint from stop to stop on the bench and measure each way from the middle."
            );
        Loss(joint, end, findings);
        Torque(joint, end, findings);
        Centre(joint, end, findings);
        if (joint.StubClampsBearing == true)
            Say(
                findings,
                Severity.Caution,
                $"{end}-stub-clamps-bearing",
                $"The {end} joint's stub clamps the hub bearing together. With the shaft out, or its nut slack, the bearing's rings can part under the car's weight.",
                $"Do not lower the car onto that wheel or roll it without a stub in the hub and its nut at full torque. A spare stub with its nut keeps the car movable."
            );
        var rows = joint.PlungeTable.Count(r =>
            r is { Angle: not null, In: not null, Out: not null }
        );
        if (rows < joint.PlungeTable.Count)
            Say(
                findings,
                Severity.Caution,
                $"{end}-plunge-row-incomplete",
                $"{joint.PlungeTable.Count - rows} of {joint.PlungeTable.Count} rows of the {end} joint's plunge table lack an angle, in or out, and are left out.",
                $"Measure what is missing in them."
            );
        if (joint.Kind == JointKind.Unknown && BenchStroke.Of(joint) is not null && rows == 0)
            Say(
                findings,
                Severity.Caution,
                $"{end}-kind-unknown",
                joint.RollerRadius is null
                    ? (Sentence)
                        $"It is not said what kind the {end} joint is. A tripod loses plunge when it runs at an angle; that loss is taken as nothing."
                    : $"It is not said what kind the {end} joint is. Since a roller radius is given it is taken as a tripod.",
                $"Say what it is: a fixed joint, a plunging tripod, a plunging ball joint or a cross-groove joint."
            );
        if (
            joint is { Kind: JointKind.PlungingTripod, RollerRadius: null }
            && BenchStroke.Of(joint) is { LossMeasured: false }
            && rows == 0
        )
            Say(
                findings,
                Severity.Caution,
                $"{end}-roller-radius-unknown",
                $"A tripod loses plunge at both ends when it runs at an angle. Without its roller radius that loss is taken as nothing.",
                $"Measure from the spider's axis to the middle of a roller: 20 mm of radius at 20° costs 7 mm at each end."
            );
        if (joint.Seat == SeatKind.Unknown && SeatToCentre(joint) is not null)
            Say(
                findings,
                Severity.Caution,
                $"{end}-seat-unknown",
                $"It is not said what locates the {end} joint on its shaft, though an offset is given.",
                $"Say whether it is a shoulder, a clip or the shaft's end, and measure from that."
            );
        if (
            joint.WayRound == WayRound.Unknown
            && SeatToCentre(joint) is { Value: not 0 and var offset }
        )
            Say(
                findings,
                Severity.Caution,
                $"{end}-way-round-unknown",
                $"The {end} joint may go on either way round. Turned, the shaft comes out {Measures.Say.Length(2 * Math.Abs(offset))} wrong.",
                $"Mark which face looks to the middle of the shaft, and say it here."
            );
    }

    private static void Say(
        List<Finding> findings,
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source = Practice
    ) => findings.Add(new Finding(severity, Stage.Joints, code, text, action, source));
}
