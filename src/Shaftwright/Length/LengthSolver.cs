using Shaftwright.Corner;
using Shaftwright.Corner.Linkages;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Length;

/// <summary>Finds the lengths that no measured or fitted position forbids, and the one to make.</summary>
/// <remarks>Method and derivation: docs/length.md. Each position allows an interval of lengths; the window is what all of them
/// share. In and out of a trial shaft give that interval directly; distance and inner angle give it through the joint's
/// plunge and angle limits. Length to make: as much plunge left at the one end of the stroke as at the other.</remarks>
public static class LengthSolver
{
    /// <summary>Most that a made length may be off by, mm, however wide the window: what a saw, a vee and a weld can hold.
    /// Common practice, no source.</summary>
    public const double MostTolerance = 2;

    /// <summary>Solves for the length.</summary>
    /// <param name="corner">Readings at the corner.</param>
    /// <param name="joints">The joints' limits; without them only in and out readings can be used.</param>
    /// <param name="seats">The joints' offsets on the shaft, for cut and overall lengths.</param>
    /// <param name="length">Margin, and a length already chosen.</param>
    /// <param name="shaftTorque">Torque in the shaft, N·mm, for the joints' margins against the torque they may carry; null if unknown.</param>
    /// <param name="swept">What the corner's linkage does at the positions asked for; null without one.</param>
    /// <returns>A result with what could be computed; never throws on a legal job.</returns>
    public static LengthResult Solve(
        CornerInput corner,
        JointsInput? joints,
        JointsResult? seats,
        LengthInput length,
        Band? shaftTorque = null,
        LinkageResult? swept = null
    )
    {
        ArgumentNullException.ThrowIfNull(corner);
        ArgumentNullException.ThrowIfNull(length);
        var findings = new LengthFindings(corner, joints, length, shaftTorque);
        var numbers = new LengthNumbers(corner, joints);
        var margin = length.Margin?.Value ?? LengthFields.UsualMargin;
        if (!findings.EnoughToSolve(numbers))
            return new LengthResult { Sweep = Swept(swept, null, []), Findings = findings.All };

        List<SetEnvelope> envelopes =
        [
            .. numbers.Sets.Select(s => new SetEnvelope(s, numbers, numbers.Values)),
        ];
        List<Bound> bounds = [.. envelopes.SelectMany(e => Bound.Of(e, numbers, margin))];
        var limits = bounds.FindAll(b => b.Margin == margin);
        var longest = limits.Where(b => b.IsLongest).MinBy(b => b.Length)!.AsEnd();
        var shortest = limits.Where(b => !b.IsLongest).MaxBy(b => b.Length)!.AsEnd();
        var result = new LengthResult
        {
            Longest = longest,
            Shortest = shortest,
            Missing = Math.Max(0, shortest.Length - longest.Length),
            Contradicted =
                shortest.Length > longest.Length
                && numbers.Contradictions.Count > 0
                && AgreedWindow(limits),
            Findings = [],
        };

        var making = (length.Making?.Value ?? 0) / Math.Sqrt(3);
        double? make = length.Chosen?.Value;
        var makeUncertainty = length.Chosen is { } chosen
            ? LengthFields.Chosen.StandardUncertainty(chosen)
            : 0;
        var own = double.Hypot(making, length.Chosen is null ? 0 : makeUncertainty);
        var choices = new LengthChoices(envelopes, numbers, margin, own);
        if (result.HasWindow)
        {
            result = result with { Choices = choices.All(shortest.Length, longest.Length) };
            if (
                make is null
                && result.Choices.FirstOrDefault(c => c.Aim == length.Aim) is { } aimed
            )
                (make, makeUncertainty) = (aimed.Length, aimed.StandardUncertainty);
        }
        if (make is { } l)
        {
            result = result with
            {
                Make = l,
                MakeUncertainty = makeUncertainty,
                Tolerance = result.HasWindow ? Tolerance(l, shortest, longest, seats) : 0,
                ChanceOfViolation = choices.OfViolation(l),
                ChanceOfContact = choices.OfContact(l),
                PositionsFor = l,
                Positions = JointLoads.On(Positions(envelopes, numbers, l), joints, shaftTorque),
                MeasureAgain = ReadingToRepeat.Of(corner, limits, l),
                SeatToSeat = seats is { InnerSeatToCentre: { } ci, OuterSeatToCentre: { } co }
                    ? l - ci - co
                    : null,
            };
            if (
                result.SeatToSeat is { } between
                && seats is { InnerSeatToEnd: { } ei, OuterSeatToEnd: { } eo }
            )
                result = result with
                {
                    Overall = between + ei + eo,
                    OverallUncertainty = seats.OverallUncertainty,
                };
        }
        else if ((shortest.Length + longest.Length) / 2 is var middle && double.IsFinite(middle))
        {
            // No length to make: the picture of why needs the positions all the same.
            result = result with
            {
                PositionsFor = middle,
                Positions = Positions(envelopes, numbers, middle),
            };
        }
        return result with
        {
            Sweep = Swept(swept, result.PositionsFor, envelopes),
            Findings = findings.Judge(result, envelopes, numbers, margin),
        };
    }

    /// <summary>A reading has a set of its own beside the one it stands in.</summary>
    private static bool Disputes(List<SetEnvelope> envelopes, ReadingSet set, int reading) =>
        envelopes.Exists(e =>
            e.Set.Disputed && e.Set.Form == set.Form && e.Set.Readings[0] == reading
        );

    /// <summary>True when a length would work if every reading counted by its curve alone.</summary>
    private static bool AgreedWindow(List<Bound> limits)
    {
        var agreed = limits.FindAll(b => !b.Set.Disputed);
        return agreed.Where(b => !b.IsLongest).Max(b => b.Length)
            <= agreed.Where(b => b.IsLongest).Min(b => b.Length);
    }

    /// <summary>A shaft is made by its ends: how surely these stand to the joint centres is taken off with the readings' own doubt.</summary>
    private static double Tolerance(
        double length,
        WindowEnd shortest,
        WindowEnd longest,
        JointsResult? seats
    )
    {
        var ends = seats?.OverallUncertainty ?? 0;
        var below = length - shortest.Length - 2 * double.Hypot(shortest.StandardUncertainty, ends);
        var above = longest.Length - length - 2 * double.Hypot(longest.StandardUncertainty, ends);
        return Math.Floor(Math.Clamp(Math.Min(below, above), 0, MostTolerance) * 10) / 10;
    }

    private static List<SweptLength> Swept(
        LinkageResult? linkage,
        double? length,
        List<SetEnvelope> envelopes
    )
    {
        SweptLength At(SweptPosition p)
        {
            // Each joint's own way of moving is in the envelope of the position's path.
            var e =
                p.Line is not null && length is not null
                    ? envelopes.Find(e => e.Set.Place == p.Place)
                    : null;
            return new(
                p.Travel,
                p.Place.Rack,
                p.Place.At(p.Travel).OtherTravel,
                p.Place.PowerUnit,
                p.Line is not null,
                p.Line?.Distance,
                p.Line?.Axial,
                Number(p.Line?.Across > length ? null : e?.Plunge(length!.Value, p.Travel)),
                Number(p.Line?.Across > length ? null : e?.InnerAngle(length!.Value, p.Travel)),
                Number(p.Line?.Across > length ? null : e?.OuterAngle(p.Travel, length))
            );
        }
        return [.. (linkage?.Positions ?? []).Select(At)];
    }

    private static double? Number(double? x) => x is { } v && double.IsFinite(v) ? v : null;

    private static List<PositionLeft> Positions(
        List<SetEnvelope> envelopes,
        LengthNumbers numbers,
        double length
    )
    {
        const int Between = 24;
        var positions = new List<PositionLeft>();
        foreach (var e in envelopes)
        {
            void Add(double t, bool read) => positions.Add(At(e, t, length, read));
            var travels = e
                .Set.Readings.Select((_, k) => e.Set.Travel(numbers.Values, k))
                .ToArray();
            for (var k = 0; k < travels.Length; k++)
            {
                // A disputed reading is shown as it was read, beside the curve.
                var disputed = Disputes(envelopes, e.Set, e.Set.Readings[k]);
                Add(travels[k], e.Set.Disputed || !disputed);
            }
            if (!e.Set.Fitted)
                continue;
            for (var i = 0; i <= Between; i++)
            {
                var t = travels[0] + (travels[^1] - travels[0]) * i / Between;
                if (!travels.Contains(t))
                    Add(t, false);
            }
        }
        // The tightest places themselves, where they lie between the others.
        foreach (var goesIn in (ReadOnlySpan<bool>)[true, false])
        {
            var (e, t, _) = Balance.Tightest(envelopes, numbers.Values, length, goesIn);
            if (
                !positions.Exists(p =>
                    p.Steering == e.Set.Steering
                    && p.Place == e.Set.Place
                    && Math.Abs(p.Travel - t) < 1e-3
                )
            )
                positions.Add(At(e, t, length, false));
        }
        return [.. positions.OrderBy(p => p.Steering).ThenBy(p => p.Travel)];
    }

    private static PositionLeft At(SetEnvelope e, double travel, double length, bool read) =>
        new(
            travel,
            e.Set.Steering,
            e.LeftIn(length, travel),
            e.LeftOut(length, travel),
            e.Plunge(length, travel),
            e.InnerAngle(length, travel),
            e.OuterAngle(travel, length),
            read
        )
        {
            Drift = e.Drift(length, travel),
            OuterPlunge = e.OuterPlunge(length, travel),
            Place = e.Set.Place,
        };
}
