using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Length;

/// <summary>What each position asks of the joints beside plunge and angle: torque at that angle, and the boot.</summary>
internal static class JointLoads
{
    private const string OwnData =
        "the user's own data; that it falls with angle is common practice, no source";
    private const string Geometry = "rigid-body geometry, derived in docs/joints.md";
    private const string Practice = "common practice, no source";

    /// <summary>An orbit from which a tripod is felt, mm. Common practice, no source.</summary>
    private const double FeltOrbit = 0.5;

    /// <summary>The positions with torque margins and boot lengths.</summary>
    public static List<PositionLeft> On(
        List<PositionLeft> positions,
        JointsInput? joints,
        Band? shaftTorque
    )
    {
        var inner = joints?.Inner is { } i ? TorqueCurve.Of(i) : null;
        var outer = joints?.Outer is { } o ? TorqueCurve.Of(o) : null;
        double? Margin(TorqueCurve? curve, double? angle) =>
            curve is not null && angle is { } a && shaftTorque is { High: > 0 } t
                ? curve.At(a) / t.High
                : null;
        return positions.ConvertAll(p =>
            p with
            {
                InnerTorqueMargin = Margin(inner, p.InnerAngle),
                OuterTorqueMargin = Margin(outer, p.OuterAngle),
                InnerBoot = Boot(joints?.Inner, InnerPlunge(p), p.InnerAngle),
                OuterBoot = Boot(joints?.Outer, -(p.OuterPlunge ?? 0), p.OuterAngle),
            }
        );
    }

    /// <summary>Says where a joint is asked for more than its torque, its boot's length or its boot's angle, and how a tripod runs.</summary>
    public static void Judge(
        IReadOnlyList<PositionLeft> positions,
        JointsInput? joints,
        Band? shaftTorque,
        Action<Severity, string, Sentence, Sentence, string> add
    )
    {
        if (positions.Count == 0)
            return;
        if (joints?.Inner is { } inner)
        {
            One(
                inner,
                "inner",
                positions,
                p => p.InnerAngle,
                p => p.InnerTorqueMargin,
                p => p.InnerBoot
            );
            Orbit(inner, positions, add);
        }
        if (joints?.Outer is { } outer)
            One(
                outer,
                "outer",
                positions,
                p => p.OuterAngle,
                p => p.OuterTorqueMargin,
                p => p.OuterBoot
            );

        void One(
            JointInput joint,
            string end,
            IReadOnlyList<PositionLeft> at,
            Func<PositionLeft, double?> angle,
            Func<PositionLeft, double?> margin,
            Func<PositionLeft, double?> boot
        )
        {
            TorqueOf(joint, end, at, angle, margin, shaftTorque, add);
            if (joint.Boot is { } b)
                BootOf(b, end, at, angle, boot, add);
        }
    }

    private static void TorqueOf(
        JointInput joint,
        string end,
        IReadOnlyList<PositionLeft> positions,
        Func<PositionLeft, double?> angle,
        Func<PositionLeft, double?> margin,
        Band? shaftTorque,
        Action<Severity, string, Sentence, Sentence, string> add
    )
    {
        if (TorqueCurve.Of(joint) is not { } curve)
            return;
        if (shaftTorque is not { High: > 0 } torque)
        {
            add(
                Severity.Note,
                $"{end}-torque-unchecked",
                $"The {end} joint's torque limit is given, but the torque in the shaft is not known.",
                $"Enter the car: engine side or tyre side.",
                OwnData
            );
            return;
        }
        if (positions.Where(p => angle(p) > curve.EndsAt).MaxBy(angle) is { } beyond)
            add(
                Severity.Caution,
                $"{end}-torque-beyond-table",
                $"The {end} joint works at {Say.Angle(angle(beyond)!.Value)} {PositionWords.At(beyond.Travel, beyond.Steering)}; its torque limit is given only up to {Say.Angle(curve.EndsAt)}, so it is not checked there.",
                $"Find the figure for that angle, or keep full torque off there.",
                OwnData
            );
        var known = positions.Where(p => margin(p) is not null).ToList();
        if (known.MinBy(margin) is not { } worst || margin(worst) >= 1)
            return;
        var everywhere = known.TrueForAll(p => margin(p) < 1);
        add(
            everywhere ? Severity.Stop : Severity.Caution,
            $"{end}-torque",
            $"The {end} joint may carry {Say.Torque(margin(worst)!.Value * torque.High)} at {Say.Angle(angle(worst)!.Value)}, {PositionWords.At(worst.Travel, worst.Steering)}; the shaft can bring {Say.Torque(torque.High)}{(everywhere ? ", and nowhere in the travel is it enough" : "")}.",
            everywhere
                ? (Sentence)$"Use a larger joint."
                : $"Keep full torque off there, limit the travel or the lock, or use a larger joint.",
            OwnData
        );
    }

    private static void BootOf(
        BootInput boot,
        string end,
        IReadOnlyList<PositionLeft> positions,
        Func<PositionLeft, double?> angle,
        Func<PositionLeft, double?> length,
        Action<Severity, string, Sentence, Sentence, string> add
    )
    {
        // A floating shaft takes the boot half its drift either way.
        static double Half(PositionLeft p) => (p.Drift ?? 0) / 2;
        if (
            boot.Longest is { } longest
            && positions.Where(p => length(p) is not null).MaxBy(p => length(p) + Half(p))
                is { } stretched
            && length(stretched)!.Value + Half(stretched) is var most
            && most > longest.Value
        )
            add(
                Severity.Caution,
                $"{end}-boot-stretched",
                $"The {end} boot would be pulled out to {Say.Length(most)} {PositionWords.At(stretched.Travel, stretched.Steering)}; it reaches {Say.Length(longest.Value)}.",
                $"Move its small clamp {Say.Length(most - longest.Value)} towards the joint, or use a longer boot.",
                Geometry
            );
        if (
            boot.Shortest is { } shortest
            && positions.Where(p => length(p) is not null).MinBy(p => length(p) - Half(p))
                is { } squeezed
            && length(squeezed)!.Value - Half(squeezed) is var least
            && least < shortest.Value
        )
            add(
                Severity.Caution,
                $"{end}-boot-squeezed",
                $"The {end} boot would be pushed together to {Say.Length(least)} {PositionWords.At(squeezed.Travel, squeezed.Steering)}; its folds are solid at {Say.Length(shortest.Value)}.",
                $"Move its small clamp {Say.Length(shortest.Value - least)} away from the joint, or use a shorter boot.",
                Geometry
            );
        if (
            boot.AngleLimit is { } limit
            && positions.Where(p => angle(p) > limit.Value).MaxBy(angle) is { } bent
        )
            add(
                Severity.Caution,
                $"{end}-boot-angle",
                $"The {end} boot would work at {Say.Angle(angle(bent)!.Value)} {PositionWords.At(bent.Travel, bent.Steering)}; its limit is {Say.Angle(limit.Value)}. It rubs itself through.",
                $"Use a boot for that angle, or limit the travel or the lock.",
                Practice
            );
    }

    private static void Orbit(
        JointInput joint,
        IReadOnlyList<PositionLeft> positions,
        Action<Severity, string, Sentence, Sentence, string> add
    )
    {
        if (
            joint is not { Kind: JointKind.PlungingTripod, RollerRadius: { } roller }
            || positions.Where(p => p.InnerAngle is not null).MaxBy(p => p.InnerAngle)
                is not { InnerAngle: { } angle } steepest
            || Tripod.Orbit(roller.Value, angle) is var orbit && orbit < FeltOrbit
        )
            return;
        add(
            Severity.Note,
            "tripod-orbit",
            $"{PositionWords.At(steepest.Travel, steepest.Steering)} the inner tripod works at {Say.Angle(angle)}: its centre runs round on a circle of {Say.Fine(orbit)} radius three times a turn, and each roller slides {Say.Fine(Tripod.RollerSlide(roller.Value, angle))} along its arm. It shakes there under torque.",
            $"Set the power unit so that the shaft runs straighter where it pulls longest.",
            Geometry
        );
    }

    /// <summary>From mid-stroke where it is known; else from half-way between the stops.</summary>
    private static double InnerPlunge(PositionLeft p) => p.Plunge ?? (p.LeftIn - p.LeftOut) / 2;

    private static double? Boot(JointInput? joint, double plunge, double? angle) =>
        joint?.Boot is { } boot && angle is { } phi
            ? boot.LengthAt(
                joint.Kind == JointKind.Fixed ? 0 : plunge,
                phi,
                joint.Kind == JointKind.CrossGroove ? 0.5 : 1
            )
            : null;
}
