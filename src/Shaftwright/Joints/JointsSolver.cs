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
            Say(
                findings,
                Severity.Stop,
                "two-plunging-joints",
                $"Both joints plunge: the shaft floats between them, and one length window does not describe it.",
                $"If one of them is held on its shaft and housing, enter it as fixed; otherwise this shaft is outside what is computed here."
            );
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
            InnerSeatToCentre = SeatToCentre(joints.Inner),
            OuterSeatToCentre = SeatToCentre(joints.Outer),
            InnerSeatToEnd = joints.Inner?.SeatToEnd?.Value,
            OuterSeatToEnd = joints.Outer?.SeatToEnd?.Value,
            OverallUncertainty = double.Hypot(Offsets(joints.Inner), Offsets(joints.Outer)),
            Findings = findings,
        };
    }

    private static double Offsets(JointInput? joint) =>
        double.Hypot(
            joint?.SeatToCentre is { } c ? JointFields.SeatToCentre.StandardUncertainty(c) : 0,
            joint?.SeatToEnd is { } e ? JointFields.SeatToEnd.StandardUncertainty(e) : 0
        );

    private static bool Plunges(JointKind kind) =>
        kind is JointKind.PlungingTripod or JointKind.PlungingBall;

    /// <summary>A part turned round since its offset was measured carries its centre to the other side of the seat.</summary>
    private static double? SeatToCentre(JointInput? joint) =>
        joint?.SeatToCentre is { } offset
            ? (joint.WayRound == WayRound.Turned ? -offset.Value : offset.Value)
            : null;

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
        if (joint.Kind != JointKind.Fixed && (joint.PlungeIn is null || joint.PlungeOut is null))
            Say(
                findings,
                Severity.Note,
                $"{end}-plunge-unknown",
                $"The {end} joint's plunge is not given. Readings of in and out carry it; distance and angle do not.",
                $"Slide the joint from stop to stop on the bench and measure each way from the middle."
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
        if (joint is { Kind: JointKind.Unknown, PlungeIn: not null } && rows == 0)
            Say(
                findings,
                Severity.Caution,
                $"{end}-kind-unknown",
                joint.RollerRadius is null
                    ? (Sentence)
                        $"It is not said what kind the {end} joint is. A tripod loses plunge when it runs at an angle; that loss is taken as nothing."
                    : $"It is not said what kind the {end} joint is. Since a roller radius is given it is taken as a tripod.",
                $"Say what it is: a fixed joint, a plunging tripod or a plunging ball joint."
            );
        if (
            joint is { Kind: JointKind.PlungingTripod, RollerRadius: null, PlungeIn: not null }
            && rows == 0
        )
            Say(
                findings,
                Severity.Caution,
                $"{end}-roller-radius-unknown",
                $"A tripod loses plunge at both ends when it runs at an angle. Without its roller radius that loss is taken as nothing.",
                $"Measure from the spider's axis to the middle of a roller: 20 mm of radius at 20° costs 7 mm at each end."
            );
        if (joint is { Seat: SeatKind.Unknown, SeatToCentre: not null })
            Say(
                findings,
                Severity.Caution,
                $"{end}-seat-unknown",
                $"It is not said what locates the {end} joint on its shaft, though an offset is given.",
                $"Say whether it is a shoulder, a clip or the shaft's end, and measure from that."
            );
        if (joint is { SeatToCentre: { Value: not 0 } offset, WayRound: WayRound.Unknown })
            Say(
                findings,
                Severity.Caution,
                $"{end}-way-round-unknown",
                $"The {end} joint may go on either way round. Turned, the shaft comes out {Measures.Say.Length(2 * Math.Abs(offset.Value))} wrong.",
                $"Mark which face looks to the middle of the shaft, and say it here."
            );
    }

    private static void Say(
        List<Finding> findings,
        Severity severity,
        string code,
        Sentence text,
        Sentence action
    ) => findings.Add(new Finding(severity, Stage.Joints, code, text, action, Practice));
}
