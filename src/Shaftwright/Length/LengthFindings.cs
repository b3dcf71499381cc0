using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Length;

/// <summary>What the length stage says beside its numbers.</summary>
internal sealed class LengthFindings(
    CornerInput corner,
    JointsInput? joints,
    LengthInput input,
    Band? shaftTorque = null
)
{
    private const string Practice = "common practice, no source";
    private const string Geometry = "rigid-body geometry, derived in docs/length.md";
    private const string Gum = "JCGM 100:2008 (GUM), 5.1.2";

    /// <summary>Chance above which a length is called risky.</summary>
    private const double RiskyChance = 0.05;

    private readonly List<Finding> _all = [];

    public IReadOnlyList<Finding> All => _all;

    /// <summary>False, with the reason said, when no length can be told from the readings.</summary>
    public bool EnoughToSolve(LengthNumbers numbers)
    {
        if (numbers.FromLinkage)
            // What it lacks is said by the corner stage.
            return numbers.Sets.Count > 0 || NoPlunge(numbers);
        if (corner.Readings.Count == 0)
        {
            // What the linkage lacks has been said.
            if (corner.Linkage is not null)
                return false;
            Add(
                Severity.Note,
                "nothing-read",
                $"Nothing has been read at the corner yet.",
                $"Begin at ride height with the trial shaft in.",
                Practice
            );
            return false;
        }
        if (joints is { Inner.Kind: JointKind.Fixed, Outer.Kind: JointKind.Fixed })
            return false;
        if (numbers.Sets.Count == 0 && numbers.Floats)
        {
            Add(
                Severity.Stop,
                "floating-not-read",
                numbers.HasPlungeLimits
                    ? (Sentence)
                        $"Both joints plunge. For that the distance between their centres and both angles are needed at each height, and no position has all three."
                    : $"Both joints plunge, and the plunge of one is not known, so no length follows.",
                numbers.HasPlungeLimits
                    ? (Sentence)
                        $"At each height read the distance with both joints at mid-stroke, the inner angle and the outer angle."
                    : $"Slide each joint from stop to stop on the bench and enter its plunge in and out from the middle.",
                Geometry
            );
            return false;
        }
        if (numbers.Sets.Count == 0)
        {
            var needsJoint =
                corner.Readings.Any(r => r is { Distance: not null, InnerAngle: not null })
                && !numbers.HasPlungeLimits;
            Add(
                Severity.Stop,
                "no-usable-reading",
                needsJoint
                    ? (Sentence)
                        $"Distance and angle were read, but the inner joint's plunge is not known, so no length follows."
                    : $"No position has a full pair of readings, so no length follows.",
                needsJoint
                    ? (Sentence)
                        $"Slide the inner joint on the bench and enter its plunge in and out from the middle, or read in and out of a trial shaft on the car."
                    : $"At each height read the travel and either in and out of a trial shaft of known length, or distance and inner angle.",
                Geometry
            );
            return false;
        }
        var fitted = numbers.Sets.Where(s => s.Fitted).ToList();
        if (fitted.Count == 0)
        {
            Add(
                Severity.Stop,
                "too-few-heights",
                $"A length needs readings at three heights at least: full droop, ride height and full bump. Between fewer nothing is known.",
                $"Read the missing heights with the steering in one place.",
                Geometry
            );
            return false;
        }
        foreach (var set in fitted)
        {
            var reached = set.Column(numbers.Values, CornerNumbers.Travel);
            var near = Math.Max(
                PositionWords.NearRideHeight,
                0.15 * (reached.Max() - reached.Min())
            );
            if (!reached.Any(t => Math.Abs(t) <= near))
            {
                var nearest = reached.MinBy(Math.Abs);
                Add(
                    Severity.Stop,
                    "no-ride-height",
                    $"No reading was taken near ride height; the nearest of these readings is {PositionWords.At(nearest, set.Steering)}. The curve between droop and bump is a guess without it.",
                    $"Set the wheel within {Say.Length(near)} of ride height and read there too, with the steering as it was.",
                    Practice
                );
                return false;
            }
        }
        return true;
    }

    private bool NoPlunge(LengthNumbers numbers)
    {
        if (!numbers.HasPlungeLimits)
            Add(
                Severity.Stop,
                "no-usable-reading",
                $"The linkage is known, but the inner joint's plunge is not, so no length follows.",
                $"Slide the inner joint on the bench and enter its plunge in and out from the middle.",
                Geometry
            );
        return false;
    }

    /// <summary>Judges a result.</summary>
    public IReadOnlyList<Finding> Judge(
        LengthResult result,
        List<SetEnvelope> envelopes,
        LengthNumbers numbers,
        double margin
    )
    {
        var longest = result.Longest!;
        var shortest = result.Shortest!;
        Contradictions(result, numbers);
        if (!result.HasWindow && !result.Contradicted)
            NoWindow(result, longest, shortest);
        if (input.Margin is null)
            Add(
                Severity.Note,
                "margin-assumed",
                $"{Say.Length(margin)} of plunge is kept unused at each stop, because no other margin was given.",
                $"Give your own if your joints or your rules ask for more.",
                Practice
            );
        if (result.Make is { } make)
            Made(result, make, longest, shortest);
        new AngleFindings(corner, joints, Add).Judge(envelopes, numbers, result.Make);
        TableExceeded(envelopes, numbers, result.Make);
        if (result.Make is not null)
            JointLoads.Judge(result.Positions, joints, shaftTorque, Add);
        return _all;
    }

    private void Contradictions(LengthResult result, LengthNumbers numbers)
    {
        foreach (var c in numbers.Contradictions)
        {
            var (one, other) = (corner.Readings[c.One], corner.Readings[c.Other]);
            Sentence where = PositionWords.At(one.Travel!.Value, one.Steering);
            Sentence off = c.OfAngle ? (Sentence)$"{Say.Angle(c.Off)}" : $"{Say.Length(c.Off)}";
            Sentence names =
                $"Readings {c.One + 1} and {c.Other + 1}, {where}, contradict each other: they differ by {off}, more than their ± allow.";
            if (result.Contradicted)
                Add(
                    Severity.Stop,
                    "readings-contradict",
                    $"{names} No length satisfies both.",
                    $"Read again {PositionWords.At(other.Travel!.Value, other.Steering)} before cutting, and remove the one that was wrong.",
                    Geometry
                );
            else
                Add(
                    Severity.Caution,
                    "readings-contradict",
                    $"{names} The worse of the two counts, in the length and in the chance.",
                    $"Read again {PositionWords.At(other.Travel!.Value, other.Steering)}, and remove the one that was wrong.",
                    Geometry
                );
        }
    }

    private void NoWindow(LengthResult result, WindowEnd longest, WindowEnd shortest)
    {
        var why =
            shortest.Forbids == Forbids.InnerAngle ? "keeps the inner joint inside its angle"
            : shortest.Forbids == Forbids.OuterAngle ? "keeps the outer joint inside its angle"
            : "keeps the joint from pulling out";
        Add(
            Severity.Stop,
            "no-length",
            $"No length works: {PositionWords.At(longest.Travel, longest.Steering, longest.Place)} the shaft may be {Say.Length(longest.Length)} at most, or the joint bottoms; {PositionWords.At(shortest.Travel, shortest.Steering, shortest.Place)} it must be {Say.Length(shortest.Length)} at least, which {why}. {Say.Length(result.Missing)} are missing.",
            $"Use an inner joint with {Say.Length(Math.Ceiling(result.Missing))} more {(shortest.Forbids is Forbids.InnerAngle or Forbids.OuterAngle ? "room for angle or plunge" : "plunge")}, limit the travel, or move the power unit. Do not make this shaft.",
            Geometry
        );
        var u = Math.Sqrt(
            longest.StandardUncertainty * longest.StandardUncertainty
                + shortest.StandardUncertainty * shortest.StandardUncertainty
        );
        if (result.Missing < 2 * u)
            Add(
                Severity.Note,
                "no-length-is-close",
                $"What is missing, {Say.Length(result.Missing)}, is no more than the readings can be off by (standard uncertainty {Say.Length(u)}).",
                $"Measure the two positions named again before giving up.",
                Gum
            );
    }

    private void Made(LengthResult result, double make, WindowEnd longest, WindowEnd shortest)
    {
        if (result.HasWindow && (make > longest.Length || make < shortest.Length))
        {
            var off = make > longest.Length ? make - longest.Length : shortest.Length - make;
            var end = make > longest.Length ? longest : shortest;
            Add(
                Severity.Stop,
                "chosen-outside-window",
                $"The chosen length {Say.Length(make)} is {Say.Length(off)} too {(make > longest.Length ? "long" : "short")}: {PositionWords.At(end.Travel, end.Steering, end.Place)} {Consequence(end.Forbids)}.",
                $"Make it {Say.Length(off)} {(make > longest.Length ? "shorter" : "longer")} at least.",
                Geometry
            );
        }
        else if (result.HasWindow && result.ChanceOfViolation > RiskyChance)
        {
            Sentence again = $"Measure again.";
            if (result.MeasureAgain is { } m)
                again = $"Measure this again first: {m.Words}.";
            Add(
                Severity.Caution,
                "chance-of-violation",
                $"With the readings as sure as they are, the chance that some position passes a limit is {Say.Chance(result.ChanceOfViolation)}, and that the joint reaches its stop {Say.Chance(result.ChanceOfContact)}.",
                again,
                Gum
            );
        }
        if (result.HasWindow && result.Tolerance < 0.5 && input.Chosen is null)
            Add(
                Severity.Caution,
                "no-tolerance",
                $"The window is {Say.Length(longest.Length - shortest.Length)} wide, and the readings use nearly all of it up: only {Say.Length(result.Tolerance)} each way is left for making.",
                $"Measure more closely, or set the length at fit-up on the car before welding.",
                Gum
            );
        if (input.Making is { } making && result.HasWindow && making.Value > result.Tolerance)
            Add(
                Severity.Caution,
                "making-too-rough",
                $"You say the finished shaft may come out {Say.Length(making.Value)} off; {Say.Length(result.Tolerance)} each way is all there is.",
                $"Set the length at fit-up on the car before welding, or measure more closely to win room.",
                Gum
            );
        if (result.Overall is null)
            Add(
                Severity.Note,
                "offsets-unknown",
                $"This length is joint centre to joint centre. The overall and cut lengths need what locates each joint on the shaft and how far that is from its centre.",
                $"Measure both joints on their shafts and enter the offsets.",
                Geometry
            );
    }

    private void TableExceeded(List<SetEnvelope> envelopes, LengthNumbers numbers, double? length)
    {
        if (length is not { } l || numbers.TableEndsAt is not { } end)
            return;
        foreach (var e in envelopes.Where(e => e.HasAngle))
        {
            var (travel, negative) = Sweep.Smallest(
                e,
                numbers.Values,
                t => -e.InnerAngle(l, t)!.Value
            );
            if (-negative <= end)
                continue;
            Add(
                Severity.Caution,
                "plunge-table-exceeded",
                $"The inner joint works at {Say.Angle(-negative)} {PositionWords.At(travel, e.Set.Steering, e.Set.Place)}, but its plunge was measured only up to {Say.Angle(end)}. Beyond that the loss is carried on at the slope of the last two rows.",
                $"Measure the plunge at {Say.Angle(-negative)} too.",
                Practice
            );
            return;
        }
    }

    private static Sentence Consequence(Forbids forbids) =>
        forbids switch
        {
            Forbids.JointBottoms => $"the inner joint would bottom",
            Forbids.JointPullsOut => $"the inner joint would pull out",
            Forbids.OuterAngle => $"the outer joint would pass its angle",
            _ => $"the inner joint would pass its angle",
        };

    private void Add(
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => _all.Add(new Finding(severity, Stage.Length, code, text, action, source));
}
