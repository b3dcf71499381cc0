using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Geometry;
using Shaftwright.Joints;

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
    /// <returns>A result with what could be computed; never throws on a legal job.</returns>
    public static LengthResult Solve(
        CornerInput corner,
        JointsInput? joints,
        JointsResult? seats,
        LengthInput length
    )
    {
        ArgumentNullException.ThrowIfNull(corner);
        ArgumentNullException.ThrowIfNull(length);
        var findings = new LengthFindings(corner, joints, length);
        var numbers = new LengthNumbers(corner, joints);
        var margin = length.Margin?.Value ?? LengthFields.UsualMargin;
        if (!findings.EnoughToSolve(numbers))
            return new LengthResult { Findings = findings.All };

        List<SetEnvelope> envelopes =
        [
            .. numbers.Sets.Select(s => new SetEnvelope(s, numbers, numbers.Values)),
        ];
        var longest = EndOf(envelopes, numbers, margin, longEnd: true);
        var shortest = EndOf(envelopes, numbers, margin, longEnd: false);
        var result = new LengthResult
        {
            Longest = longest.End,
            Shortest = shortest.End,
            Missing = Math.Max(0, shortest.End.Length - longest.End.Length),
            Findings = [],
        };

        double? make = length.Chosen?.Value;
        var makeUncertainty = length.Chosen is { } chosen
            ? LengthFields.Chosen.StandardUncertainty(chosen)
            : 0;
        if (make is null && result.HasWindow)
        {
            var balance = Balance.Of(envelopes, numbers, shortest.End.Length, longest.End.Length);
            make = balance.Length;
            makeUncertainty = balance.StandardUncertainty;
        }
        if (make is { } l)
        {
            var ends = Sides(envelopes, numbers, margin, l);
            var touching = Sides(envelopes, numbers, 0, l);
            var own = length.Chosen is null ? 0 : makeUncertainty;
            result = result with
            {
                Make = l,
                MakeUncertainty = makeUncertainty,
                Tolerance = result.HasWindow ? Tolerance(l, shortest.End, longest.End) : 0,
                ChanceOfViolation = Chance(ends, own),
                ChanceOfContact = Chance(touching, own),
                PositionsFor = l,
                Positions = Positions(envelopes, numbers, l),
                MeasureAgain = ReadingToRepeat.Of(corner, ends),
                SeatToSeat = seats is { InnerSeatToCentre: { } ci, OuterSeatToCentre: { } co }
                    ? l - ci - co
                    : null,
            };
            if (
                result.SeatToSeat is { } between
                && seats is { InnerSeatToEnd: { } ei, OuterSeatToEnd: { } eo }
            )
                result = result with { Overall = between + ei + eo };
        }
        else
        {
            var middle = (shortest.End.Length + longest.End.Length) / 2;
            if (double.IsFinite(middle))
                result = result with
                {
                    PositionsFor = middle,
                    Positions = Positions(envelopes, numbers, middle),
                };
        }
        return result with { Findings = findings.Judge(result, envelopes, numbers, margin) };
    }

    private static (WindowEnd End, ReadingSet Set) EndOf(
        List<SetEnvelope> envelopes,
        LengthNumbers numbers,
        double margin,
        bool longEnd
    )
    {
        SetEnvelope? binding = null;
        var travel = 0.0;
        var value = double.PositiveInfinity;
        foreach (var e in envelopes)
        {
            var (t, v) = longEnd
                ? Sweep.Smallest(e.Set, numbers.Values, x => e.Longest(x, margin))
                : Sweep.Smallest(e.Set, numbers.Values, x => -e.Shortest(x, margin));
            if (binding is null || v < value)
                (binding, travel, value) = (e, t, v);
        }
        var length = longEnd ? value : -value;
        var parts = LengthUncertainty.Of(
            numbers,
            binding!.Set,
            travel,
            length,
            e => longEnd ? e.Longest(travel, margin) : e.Shortest(travel, margin)
        );
        var forbids =
            longEnd ? Forbids.JointBottoms
            : binding.ShortestByAngle(travel) > binding.ShortestByPlunge(travel, margin)
                ? Forbids.InnerAngle
            : Forbids.JointPullsOut;
        return (
            new WindowEnd(
                length,
                LengthUncertainty.Total(parts),
                travel,
                binding.Set.Steering,
                forbids
            ),
            binding.Set
        );
    }

    /// <summary>Both sides of every set: where each binds, how far the length is from it, and how sure that is.</summary>
    private static List<Side> Sides(
        List<SetEnvelope> envelopes,
        LengthNumbers numbers,
        double margin,
        double length
    )
    {
        var sides = new List<Side>();
        foreach (var e in envelopes)
        {
            var (tHigh, high) = Sweep.Smallest(e.Set, numbers.Values, x => e.Longest(x, margin));
            sides.Add(
                new Side(
                    e.Set,
                    tHigh,
                    high - length,
                    LengthUncertainty.Of(numbers, e.Set, tHigh, high, s => s.Longest(tHigh, margin))
                )
            );
            var (tLow, low) = Sweep.Smallest(e.Set, numbers.Values, x => -e.Shortest(x, margin));
            sides.Add(
                new Side(
                    e.Set,
                    tLow,
                    length + low,
                    LengthUncertainty.Of(numbers, e.Set, tLow, -low, s => s.Shortest(tLow, margin))
                )
            );
        }
        return sides;
    }

    /// <summary>Sum of the sides' chances: never less than the chance that any of them is passed, whatever they have in common.</summary>
    private static double Chance(List<Side> sides, double ownUncertainty)
    {
        var sum = 0.0;
        foreach (var side in sides)
        {
            var u = Math.Sqrt(
                ownUncertainty * ownUncertainty
                    + side.StandardUncertainty * side.StandardUncertainty
            );
            if (u > 0)
                sum += Normal.Below(-side.Distance / u);
            else if (side.Distance < 0)
                sum += 1;
        }
        return Math.Min(1, sum);
    }

    private static double Tolerance(double length, WindowEnd shortest, WindowEnd longest)
    {
        var below = length - shortest.Length - 2 * shortest.StandardUncertainty;
        var above = longest.Length - length - 2 * longest.StandardUncertainty;
        return Math.Floor(Math.Clamp(Math.Min(below, above), 0, MostTolerance) * 10) / 10;
    }

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
            void Add(double t, bool read) =>
                positions.Add(
                    new PositionLeft(
                        t,
                        e.Set.Steering,
                        e.LeftIn(length, t),
                        e.LeftOut(length, t),
                        e.Plunge(length, t),
                        e.InnerAngle(length, t),
                        e.OuterAngle(t),
                        read
                    )
                );
            var travels = e
                .Set.Readings.Select((_, k) => e.Set.Travel(numbers.Values, k))
                .ToArray();
            foreach (var t in travels)
                Add(t, true);
            if (!e.Set.Fitted)
                continue;
            for (var i = 0; i <= Between; i++)
            {
                var t = travels[0] + (travels[^1] - travels[0]) * i / Between;
                if (!travels.Contains(t))
                    Add(t, false);
            }
        }
        return [.. positions.OrderBy(p => p.Steering).ThenBy(p => p.Travel)];
    }
}

/// <summary>One side of one set: how far the length is from what it forbids.</summary>
/// <param name="Set">The set.</param>
/// <param name="Travel">Where it binds, mm.</param>
/// <param name="Distance">Length from the limit, mm; negative beyond it.</param>
/// <param name="Parts">What makes it uncertain.</param>
internal sealed record Side(
    ReadingSet Set,
    double Travel,
    double Distance,
    List<Contribution> Parts
)
{
    public double StandardUncertainty { get; } = LengthUncertainty.Total(Parts);
}
