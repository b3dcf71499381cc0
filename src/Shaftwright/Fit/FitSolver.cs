using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Kept;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Fit;

/// <summary>What the fitting leans on from the stages before it; each may be missing.</summary>
public sealed record FitBasis
{
    /// <summary>The joints, for their seats.</summary>
    public JointsInput? Joints { get; init; }

    /// <summary>The length, for what must be left.</summary>
    public LengthResult? Length { get; init; }

    /// <summary>Plunge asked to be kept unused at each stop, mm.</summary>
    public double Margin { get; init; } = LengthFields.UsualMargin;

    /// <summary>The made shaft, for its wind-up.</summary>
    public MadeShaft? Made { get; init; }

    /// <summary>True when the job has a sleeve.</summary>
    public bool Sleeve { get; init; }

    /// <summary>The donors, for their steel.</summary>
    public DonorsResult? Donors { get; init; }

    /// <summary>The strength, for the torque at first yield.</summary>
    public StrengthResult? Strength { get; init; }
}

/// <summary>The steps of fitting as they stand, and what was found at them.</summary>
/// <remarks>Steps hold each other in order; those not for this job are passed over. What a step finds wrong stops it, signed or
/// not. Wind-up: <see cref="WindUp"/>; the line: <see cref="PaintedLine"/>.</remarks>
public static class FitSolver
{
    /// <summary>Solves the stage.</summary>
    /// <param name="fit">What is known and was found.</param>
    /// <param name="basis">What earlier stages say.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static FitResult Solve(FitInput fit, FitBasis basis)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(basis);
        // The joints may have said it already.
        fit = fit with
        {
            StubClampsBearing = fit.StubClampsBearing ?? basis.Joints?.Outer?.StubClampsBearing,
        };
        var found = new Dictionary<FitStep, FitDone>();
        foreach (var entry in Entries.Standing(fit.Done))
            found[entry.Step] = found.TryGetValue(entry.Step, out var before)
                ? WithTwist(before, entry)
                : entry;
        var judge = new FitJudge(fit, found, basis);
        var ends = judge.Ends();
        judge.Pull();
        judge.HubNut();
        judge.Trial(ends);
        judge.Turns();
        var proof = judge.Proof();
        var (twist, uncertainty) = judge.Line();
        judge.FirstRun();

        var conditions = new FitConditions(
            basis.Joints?.Inner?.Seat ?? SeatKind.Unknown,
            basis.Joints?.Outer?.Seat ?? SeatKind.Unknown,
            basis.Sleeve,
            fit.StubClampsBearing,
            fit.ProofTorque is not null,
            ends,
            fit
        );
        var steps = Steps(conditions, found, judge);
        return new()
        {
            Steps = steps,
            Next = NextOf(steps),
            TrialEnds = ends,
            Twist = twist,
            TwistUncertainty = uncertainty,
            Proof = proof,
            Findings = judge.Findings,
        };
    }

    private static List<FitStepResult> Steps(
        FitConditions conditions,
        Dictionary<FitStep, FitDone> found,
        FitJudge judge
    )
    {
        var steps = new List<FitStepResult>();
        FitStepKind? open = null;
        foreach (var kind in FitSteps.All)
        {
            var entry = found.GetValueOrDefault(kind.Step);
            var missing = judge.OpenAt(kind.Step);
            var (state, because) =
                kind.NotHere(conditions) is { } not ? (FitStepState.NotInThisJob, not)
                : judge.StopAt(kind.Step) is { } stop ? (FitStepState.Stopped, stop)
                : entry is not null && missing is null
                    ? (
                        FitStepState.Done,
                        open is null ? null : (Sentence?)$"Done, though \"{open.Title}\" is not."
                    )
                : open is null ? (FitStepState.Next, missing)
                : (FitStepState.Waits, (Sentence?)$"Waits for \"{open.Title}\".");
            if (state is FitStepState.Next or FitStepState.Stopped)
                open ??= kind;
            steps.Add(
                new(
                    kind.Step,
                    kind.Title,
                    kind.WhatToDo(conditions),
                    state,
                    because,
                    entry?.At,
                    kind.Caution,
                    kind.Source
                )
            );
        }
        return steps;
    }

    private static Sentence NextOf(List<FitStepResult> steps)
    {
        if (steps.Find(s => s.State == FitStepState.Stopped) is { } stopped)
            return stopped.Because!;
        return steps.Find(s => s.State == FitStepState.Next) is { } next
            ? next.Because ?? next.WhatToDo
            : $"It is fitted and looked at. Read the line and look at the welds after every event.";
    }

    /// <summary>A shaft that has twisted stays twisted: of two entries of a step the larger reading counts, and a later one without a
    /// reading takes none back. A wrong one is corrected or withdrawn.</summary>
    private static FitDone WithTwist(FitDone before, FitDone now)
    {
        var line = Size(before.LineOffset?.Value) > Size(now.LineOffset?.Value);
        var set = Size(before.ProofSet?.Value) > Size(now.ProofSet?.Value);
        return now with
        {
            LineOffset = line ? before.LineOffset : now.LineOffset,
            LineDiameter = line ? before.LineDiameter ?? now.LineDiameter : now.LineDiameter,
            ProofSet = set ? before.ProofSet : now.ProofSet,
        };

        static double Size(double? value) => value is { } v ? Math.Abs(v) : -1;
    }
}
