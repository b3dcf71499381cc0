using Shaftwright.Corner.Linkages;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Corner;

/// <summary>Fits the corner's readings over travel and says what is missing or odd among them.</summary>
/// <remarks>Method and derivation: docs/corner.md.</remarks>
public static class CornerSolver
{
    private const string Practice = "common practice, no source";
    private const string Birge =
        "R. T. Birge, Physical Review 40 (1932) 207, from memory: the square root of chi-square per degree of freedom";
    private const string Derived = "rigid-body geometry, derived in docs/corner.md";

    /// <summary>A reading this many standard uncertainties off the curve of its neighbours is called odd.</summary>
    private const double Odd = 3;

    /// <summary>Fits each set of readings.</summary>
    /// <param name="corner">The readings; anything may be missing.</param>
    public static CornerResult Solve(CornerInput corner)
    {
        ArgumentNullException.ThrowIfNull(corner);
        var findings = new List<Finding>();
        var numbers = CornerNumbers.Of(corner);
        var sets = ReadingSet
            .Of(corner, numbers.Values)
            .Select(s => Fit(corner, numbers, s, findings))
            .ToList();
        if (numbers.Model is null)
            Unread(sets, findings);
        if (corner.Readings.Count > 0)
        {
            Incomplete(corner, numbers, findings);
            Conditions(corner.Conditions, findings);
        }
        if (corner.Readings.Count > 0 || numbers.Model is not null)
            Allowances(corner, findings);
        return new CornerResult
        {
            Sets = sets,
            Linkage = corner.Linkage is { } linkage
                ? LinkageSolver.Solve(linkage, corner, numbers, findings)
                : null,
            Findings = findings,
        };
    }

    private static FittedSet Fit(
        CornerInput corner,
        CornerNumbers numbers,
        ReadingSet set,
        List<Finding> findings
    )
    {
        var curves = new SetCurves(set, numbers.Values, corner.ReadAlong);
        var n = set.Readings.Length;
        var residuals = new double[n];
        var largestError = 0.0;
        for (var k = 0; k < n; k++)
        {
            var i = set.Readings[k];
            var t = set.Travel(numbers.Values, k);
            var (read, fitted) = Compare(corner, numbers.Values, set, curves, i, t);
            residuals[k] = read - fitted;
            if (set.Fitted && k > 0)
            {
                for (var part = 1; part < 8; part++)
                {
                    var between =
                        set.Travel(numbers.Values, k - 1)
                        + (t - set.Travel(numbers.Values, k - 1)) * part / 8;
                    largestError = Math.Max(
                        largestError,
                        InterpolationError.HalfWidth(
                            set,
                            numbers.Values,
                            between,
                            Length(set, curves, between)
                        )
                    );
                }
            }
            var u = ReadingUncertainty(corner, numbers, set, i);
            if (set.Fitted && n > set.Degree + 1 && u > 0 && Math.Abs(residuals[k]) > Odd * u)
                Add(
                    findings,
                    Severity.Caution,
                    "odd-reading",
                    $"The reading {PositionWords.At(t, set.Steering)} is {Say.Length(Math.Abs(residuals[k]))} off the curve of the others, more than {Say.Length(Odd * u)} that it could be off by.",
                    $"Take that reading again.",
                    Derived
                );
        }
        Scatter(Misfit.Of(corner, numbers, set), set, findings);
        var from = set.Travel(numbers.Values, 0);
        var to = set.Travel(numbers.Values, n - 1);
        if (!set.Fitted)
            Add(
                findings,
                Severity.Caution,
                "not-fitted",
                $"{Steered(set.Steering)} fewer than three heights were read, so these readings count only where they were taken.",
                $"Read full droop, ride height and full bump at this steering position.",
                Derived
            );
        else
        {
            Add(
                findings,
                Severity.Note,
                "range-read",
                $"Nothing is said beyond what was read: from {PositionWords.At(from, set.Steering)} to {PositionWords.At(to, set.Steering)}.",
                $"If the wheel can go further, on a kerb or in a jump, read there too.",
                Derived
            );
            if (from > -PositionWords.NearRideHeight || to < PositionWords.NearRideHeight)
                Add(
                    findings,
                    Severity.Caution,
                    "one-sided-travel",
                    $"All readings lie {(from > -PositionWords.NearRideHeight ? "in bump" : "in droop")}: the other half of the travel was not read.",
                    $"Read full {(from > -PositionWords.NearRideHeight ? "droop" : "bump")} too.",
                    Practice
                );
            if (n == set.Degree + 1)
                Add(
                    findings,
                    Severity.Note,
                    "no-check-reading",
                    $"{n} heights fix the curve and leave none to check it; a slip of the tape would not be seen. Between them the curve itself may be {Say.Length(largestError)} off.",
                    $"One more height, halfway into bump or droop, checks the others.",
                    Derived
                );
        }
        return new FittedSet(
            set.Form,
            set.Steering,
            set.Readings,
            from,
            to,
            set.Fitted,
            set.Degree,
            residuals,
            largestError
        );
    }

    /// <summary>A wheel that was read on one lock is steered: straight ahead and both locks belong to its answer.</summary>
    private static void Unread(List<FittedSet> sets, List<Finding> findings)
    {
        if (sets.TrueForAll(s => s.Steering == Steering.Straight))
            return;
        var missing = Enum.GetValues<Steering>()
            .Where(steering => !sets.Exists(s => s.Steering == steering))
            .Select(steering =>
                steering switch
                {
                    Steering.FullLeft => "full left lock",
                    Steering.FullRight => "full right lock",
                    _ => "the wheel straight",
                }
            )
            .ToList();
        if (missing.Count == 0)
            return;
        Add(
            findings,
            Severity.Caution,
            "steering-not-read",
            $"Not read: {string.Join(" and ", missing)}. This wheel is steered, so the answer holds only for what was read.",
            $"Read full droop, ride height and full bump there too: {string.Join(" and ", missing)}.",
            Derived
        );
    }

    /// <summary>Says by how much the readings' ± are widened because they do not fit their curve.</summary>
    private static void Scatter(Misfit misfit, ReadingSet set, List<Finding> findings)
    {
        // Below this the widening does not show in the digits said.
        const double Shows = 1.05;
        void Judge(string what, double ratio)
        {
            if (ratio < Shows)
                return;
            Add(
                findings,
                ratio < 2 ? Severity.Note : Severity.Caution,
                "readings-scatter",
                $"{Steered(set.Steering)} the {what} lie {Say.Factor(ratio)} times as far off their curve as their ± explain, so each ± counts {Say.Factor(ratio)} times.",
                $"Look for the reading that is wrong and take it again.",
                Birge
            );
        }
        Judge("readings", misfit.Ratio);
        Judge("inner angles", misfit.AngleRatio);
    }

    private static string Steered(Steering steering) =>
        steering switch
        {
            Steering.FullLeft => "On full left lock",
            Steering.FullRight => "On full right lock",
            _ => "With the wheel straight",
        };

    private static double Length(ReadingSet set, SetCurves curves, double travel) =>
        set.Form == ReadingForm.DistanceAndAngle ? curves.Distance(travel) : curves.InStop(travel);

    /// <summary>The worse of the two curves of a set at a reading, as lengths.</summary>
    private static (double Read, double Fitted) Compare(
        CornerInput corner,
        double[] values,
        ReadingSet set,
        SetCurves curves,
        int i,
        double travel
    )
    {
        double At(int field) => values[CornerNumbers.At(i, field)];
        if (set.Form == ReadingForm.DistanceAndAngle)
            return Worse(
                (At(CornerNumbers.Distance), curves.Distance(travel)),
                (
                    At(CornerNumbers.Distance) * Math.Cos(At(CornerNumbers.InnerAngle)),
                    curves.Axial(travel)
                )
            );
        var trial = values[CornerNumbers.TrialLength];
        var across =
            corner.ReadAlong == SlideLine.Shaft
                ? 0
                : trial * Math.Sin(At(CornerNumbers.InnerAngle));
        var along =
            corner.ReadAlong == SlideLine.Shaft
                ? trial
                : trial * Math.Cos(At(CornerNumbers.InnerAngle));
        return Worse(
            (double.Hypot(along + At(CornerNumbers.In), across), curves.InStop(travel)),
            (double.Hypot(along - At(CornerNumbers.Out), across), curves.OutStop(travel))
        );
    }

    private static (double Read, double Fitted) Worse(
        (double Read, double Fitted) a,
        (double Read, double Fitted) b
    ) => Math.Abs(a.Read - a.Fitted) >= Math.Abs(b.Read - b.Fitted) ? a : b;

    /// <summary>Standard uncertainty of one reading as a length, mm; the trial length, common to all, does not bend a curve.</summary>
    private static double ReadingUncertainty(
        CornerInput corner,
        CornerNumbers numbers,
        ReadingSet set,
        int i
    )
    {
        double U(int field) =>
            numbers
                .Uncertain.FirstOrDefault(x => x.Place == CornerNumbers.At(i, field))
                ?.StandardUncertainty
            ?? 0;
        double Value(int field) => numbers.Values[CornerNumbers.At(i, field)];
        if (set.Form == ReadingForm.DistanceAndAngle)
            return double.Hypot(
                U(CornerNumbers.Distance),
                Value(CornerNumbers.Distance)
                    * Math.Sin(Value(CornerNumbers.InnerAngle))
                    * U(CornerNumbers.InnerAngle)
            );
        var angle =
            corner.ReadAlong == SlideLine.Shaft
                ? 0
                : Value(CornerNumbers.In)
                    * Math.Sin(Value(CornerNumbers.InnerAngle))
                    * U(CornerNumbers.InnerAngle);
        return double.Hypot(Math.Max(U(CornerNumbers.In), U(CornerNumbers.Out)), angle);
    }

    private static void Incomplete(
        CornerInput corner,
        CornerNumbers numbers,
        List<Finding> findings
    )
    {
        for (var i = 0; i < corner.Readings.Count; i++)
        {
            var r = corner.Readings[i];
            if (
                ReadingSet.Usable(corner, numbers.Values, i, ReadingForm.InAndOut)
                || ReadingSet.Usable(corner, numbers.Values, i, ReadingForm.DistanceAndAngle)
            )
                continue;
            var missing =
                r.Travel is null ? "how far above or below ride height it is"
                : r is { In: not null } or { Out: not null }
                    ? r.In is null ? "how far the trial shaft still goes in"
                        : r.Out is null ? "how far it still comes out"
                        : corner.TrialLength is null ? "the length of the trial shaft"
                        : "the inner angle, since in and out were read along the inner joint"
                : r.Distance is not null
                    ? "the inner angle: a distance alone is several per cent off at 20°"
                : r.InnerAngle is not null ? "the distance between the joint centres"
                : "in and out, or distance and angle";
            Add(
                findings,
                Severity.Caution,
                "incomplete-reading",
                $"Reading {i + 1} is left out: it lacks {missing}.",
                $"Read what is missing, or remove the reading.",
                Derived
            );
        }
    }

    private static void Conditions(MeasuringConditions c, List<Finding> findings)
    {
        (bool? Was, string Missing, string Wrong)[] all =
        [
            (
                c.SpringOut,
                "spring out (bump reached to its stop)",
                "the spring was in, so full bump may not have been reached"
            ),
            (c.RollBarOff, "roll bar off", "the roll bar was on and held the wheel off its travel"),
            (
                c.DriverIn,
                "driver in for ride height",
                "ride height was set without the driver's weight"
            ),
            (c.StubPushedHome, "inner stub pushed home", "the inner stub was not pushed home"),
            (c.ClipFelt, "its clip felt to snap", "its clip was not felt"),
        ];
        var missing = all.Where(x => x.Was is null).Select(x => x.Missing).ToList();
        if (missing.Count > 0)
            Add(
                findings,
                Severity.Caution,
                "conditions-not-recorded",
                $"Not recorded while measuring: {string.Join(", ", missing)}. Each of these can move the answer by millimetres.",
                $"Say how it was, or look again before cutting.",
                Practice
            );
        var wrong = all.Where(x => x.Was == false).Select(x => x.Wrong).ToList();
        if (wrong.Count > 0)
            Add(
                findings,
                Severity.Caution,
                "conditions-wrong",
                $"While measuring, {string.Join("; ", wrong)}.",
                $"Put that right and read again before cutting.",
                Practice
            );
    }

    private static void Allowances(CornerInput corner, List<Finding> findings)
    {
        var missing = new List<string>();
        if (corner.OutputEndFloat is null)
            missing.Add("end float of the output stub");
        if (
            (corner.PowerUnitTowardsWheel is null || corner.PowerUnitAwayFromWheel is null)
            && corner.Linkage is not { Driving: not null, Overrun: not null }
        )
            missing.Add("movement of the power unit under torque");
        if (missing.Count > 0)
            Add(
                findings,
                Severity.Caution,
                "allowances-missing",
                $"Taken as nothing because not measured: {string.Join(" and ", missing)}.",
                $"Pull and push the output stub; lever the power unit on its mountings both ways, and enter how far the joint moves.",
                Practice
            );
    }

    private static void Add(
        List<Finding> findings,
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => findings.Add(new Finding(severity, Stage.Corner, code, text, action, source));
}
