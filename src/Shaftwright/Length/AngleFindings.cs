using Shaftwright.Corner;
using Shaftwright.Corner.Linkages;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Length;

/// <summary>Holds each joint's angle against its limit, at every reading and on every fitted curve, and says where it was not read.</summary>
/// <remarks>An angle is let pass only when it lies inside its limit by twice the standard uncertainty of the two together (guard
/// band, the decision rule of ISO 14253-1, from memory). A reading over the limit counts even when its neighbours have no angle.</remarks>
internal sealed class AngleFindings(
    CornerInput corner,
    JointsInput? joints,
    Action<Severity, string, Sentence, Sentence, string> add
)
{
    private const string Practice = "common practice, no source";
    private const string Source =
        "rigid-body geometry, derived in docs/length.md; guard band by ISO 14253-1, from memory";

    private sealed record Worst(
        double Angle,
        double Uncertainty,
        double Travel,
        Steering Steering,
        LinkagePlace? Place = null
    );

    /// <summary>Judges both joints with a shaft of this length.</summary>
    /// <param name="envelopes">All sets.</param>
    /// <param name="numbers">The values behind them.</param>
    /// <param name="length">The length judged, mm; null when there is none, and then only readings of the outer joint count.</param>
    public void Judge(IReadOnlyList<SetEnvelope> envelopes, LengthNumbers numbers, double? length)
    {
        var steerings = envelopes.Select(e => e.Set.Steering).Distinct().ToList();
        One(
            "outer",
            joints?.Outer?.AngleLimit,
            Outer(envelopes, numbers, length),
            [.. steerings.Where(s => !envelopes.Any(e => e.Set.Steering == s && e.HasOuterAngle))]
        );
        One(
            "inner",
            joints?.Inner?.AngleLimit,
            length is { } l ? Inner(envelopes, numbers, l) : null,
            [.. steerings.Where(s => !envelopes.Any(e => e.Set.Steering == s && e.HasAngle))]
        );
    }

    private void One(string joint, Measured<Angle>? limit, Worst? worst, List<Steering> unread)
    {
        if (limit is null)
            add(
                Severity.Caution,
                $"{joint}-angle-unchecked",
                $"The {joint} joint's angle is not checked: its limit is not given.",
                $"Look it up for the donor, or swing the joint on the bench and keep 2° off the stop.",
                Practice
            );
        else if (worst is { } w)
        {
            var u = double.Hypot(w.Uncertainty, JointFields.AngleLimit.StandardUncertainty(limit));
            if (w.Angle > limit.Value)
                add(
                    Severity.Stop,
                    $"{joint}-angle",
                    $"The {joint} joint would work at {Say.Angle(w.Angle)} {PositionWords.At(w.Travel, w.Steering, w.Place)}; its limit is {Say.Angle(limit.Value)}.",
                    $"Limit the travel or the steering lock, or use a joint with more angle.",
                    Source
                );
            else if (w.Angle + 2 * u > limit.Value)
                add(
                    Severity.Caution,
                    $"{joint}-angle-close",
                    $"The {joint} joint would work at {Say.Angle(w.Angle)} {PositionWords.At(w.Travel, w.Steering, w.Place)}, which may be off by {Say.Angle(2 * u)}; its limit is {Say.Angle(limit.Value)}.",
                    $"Too close to call: read that angle again, better, or keep further off.",
                    Source
                );
        }
        if (limit is not null && unread.Count > 0)
            add(
                Severity.Caution,
                $"{joint}-angle-unchecked",
                $"The {joint} joint's angle was not read at every height {string.Join(" and ", unread.Select(Words))}, so it is not checked there.",
                $"Read it with the angle gauge at full droop, ride height and full bump there; a joint past its angle breaks.",
                Practice
            );
    }

    private Worst? Outer(
        IReadOnlyList<SetEnvelope> envelopes,
        LengthNumbers numbers,
        double? length
    )
    {
        // Beside a linkage the readings count through what they corrected of it.
        var found = corner
            .Readings.Where(r =>
                !numbers.FromLinkage && r is { OuterAngle: not null, Travel: not null }
            )
            .Select(r => new Worst(
                r.OuterAngle!.Value,
                CornerFields.OuterAngle.StandardUncertainty(r.OuterAngle),
                r.Travel!.Value,
                r.Steering
            ))
            .ToList();
        foreach (var e in envelopes.Where(e => e.HasOuterAngle))
        {
            var (travel, negative) = Sweep.Smallest(
                e,
                numbers.Values,
                t => -e.OuterAngle(t, length)!.Value
            );
            found.Add(
                new(
                    -negative,
                    Largest(e.Set, r => r.OuterAngle, CornerFields.OuterAngle),
                    travel,
                    e.Set.Steering,
                    e.Set.Place
                )
            );
        }
        return found.MaxBy(w => w.Angle + 2 * w.Uncertainty);
    }

    private Worst? Inner(IReadOnlyList<SetEnvelope> envelopes, LengthNumbers numbers, double length)
    {
        var found = new List<Worst>();
        foreach (var r in corner.Readings)
        {
            // The angle was read at another length than the one to make; the distance across the axis is what stays.
            if (
                numbers.FromLinkage
                || r is not { InnerAngle: { } phi, Travel: { } travel }
                || (r.Distance ?? corner.TrialLength) is not { } read
            )
                continue;
            var across = read.Value * Math.Sin(phi.Value);
            var angle = Math.Asin(Math.Min(1, across / length));
            found.Add(
                new(
                    angle,
                    CornerFields.InnerAngle.StandardUncertainty(phi),
                    travel.Value,
                    r.Steering
                )
            );
        }
        foreach (var e in envelopes.Where(e => e.HasAngle))
        {
            var (at, negative) = Sweep.Smallest(
                e,
                numbers.Values,
                t => -e.InnerAngle(length, t)!.Value
            );
            found.Add(
                new(
                    -negative,
                    Largest(e.Set, r => r.InnerAngle, CornerFields.InnerAngle),
                    at,
                    e.Set.Steering,
                    e.Set.Place
                )
            );
        }
        return found.MaxBy(w => w.Angle + 2 * w.Uncertainty);
    }

    private double Largest(
        ReadingSet set,
        Func<TrialReading, Measured<Angle>?> field,
        Field<Angle> of
    ) =>
        set
            .Readings.Select(i => i < 0 ? null : field(corner.Readings[i]))
            .Max(m => m is null ? 0 : of.StandardUncertainty(m));

    private static string Words(Steering steering) =>
        steering switch
        {
            Steering.FullLeft => "on full left lock",
            Steering.FullRight => "on full right lock",
            _ => "with the wheel straight",
        };
}
