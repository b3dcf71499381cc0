using System.Globalization;
using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>The steps of a test in order, and its clock.</summary>
/// <remarks>The clock is worked out from the noted times and the instant asked for, and from nothing else: it is right after a
/// sleep, a restart or on another device, and a change of time zone does not move it, because every time carries its offset.
/// Times: <see cref="TestLimits"/>.</remarks>
public static class Procedure
{
    private static readonly TestStep[] s_penetrant =
    [
        TestStep.Cleaned,
        TestStep.Dried,
        TestStep.PenetrantOn,
        TestStep.Removed,
        TestStep.DriedAgain,
        TestStep.DeveloperOn,
        TestStep.FirstLook,
        TestStep.FinalLook,
        TestStep.CleanedUp,
    ];

    private static readonly TestStep[] s_magnetic =
    [
        TestStep.Cleaned,
        TestStep.Dried,
        TestStep.FieldChecked,
        TestStep.MagnetisedOnce,
        TestStep.MagnetisedAcross,
        TestStep.Demagnetised,
        TestStep.CleanedUp,
    ];

    /// <summary>The steps of a method, in order.</summary>
    public static IReadOnlyList<TestStep> Steps(TestMethod method) =>
        method.IsMagnetic() ? s_magnetic : s_penetrant;

    /// <summary>Where a test stands.</summary>
    /// <param name="run">The test.</param>
    /// <param name="now">The instant, by the clock of the device that asks.</param>
    /// <exception cref="ArgumentNullException"><paramref name="run"/> is null.</exception>
    public static ClockState At(TestRun run, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(run);
        var done = StepTimes.Of(run);
        var c = TestConditions.Of(run);
        var steps = Steps(run.Method);
        var furthest = -1;
        for (var i = 0; i < steps.Count; i++)
        {
            if (done.When(steps[i]) is not null)
                furthest = i;
        }
        TestStep? last = furthest < 0 ? null : steps[furthest];
        if (furthest == steps.Count - 1)
            return Untimed(last, null, ClockPhase.Finished, $"All steps are done and noted.");
        var next = steps[furthest + 1];
        if (done.Latest is { } noted && (noted - now).TotalSeconds > TestLimits.ClockSkew)
            return Untimed(
                last,
                next,
                ClockPhase.ClockBehind,
                $"This clock says {Clock(now, now)}, but the last step is noted at {Clock(noted, now)}. Set the clock right, or correct the step."
            );
        // What was taken off too early or too late cannot be mended by what follows.
        if (
            done.Between(TestStep.PenetrantOn, TestStep.Removed) is { } dwelt
            && (dwelt < c.LeastDwell || dwelt > c.MostDwell)
        )
            return Untimed(
                last,
                TestStep.Cleaned,
                ClockPhase.TooLate,
                dwelt < c.LeastDwell
                    ? $"It dwelt only {Say.Time(dwelt)}; the least is {Say.Time(c.LeastDwell)}. Clean it right down and begin again."
                    : (Sentence)
                        $"It dwelt {Say.Time(dwelt)}; the most is {Say.Time(c.MostDwell)}. Clean it right down and begin again."
            );
        var early =
            last == TestStep.FinalLook
            && done.Between(TestStep.DeveloperOn, TestStep.FinalLook) < c.LeastDevelopment;
        return last switch
        {
            TestStep.PenetrantOn => Timed(
                last,
                TestStep.Removed,
                done.When(TestStep.PenetrantOn)!.Value,
                c.DwellToAimAt,
                c.MostDwell,
                now
            ),
            TestStep.DeveloperOn or TestStep.FirstLook => Developing(last, done, c, now),
            TestStep.FinalLook when early => Developing(last, done, c, now),
            _ => Untimed(last, next, ClockPhase.Ready, StepWords.ToDo(next, run.Method)),
        };
    }

    private static ClockState Developing(
        TestStep? last,
        StepTimes done,
        TestConditions c,
        DateTimeOffset now
    )
    {
        var on = done.When(TestStep.DeveloperOn) ?? done.When(TestStep.FirstLook)!.Value;
        var state = Timed(last, TestStep.FinalLook, on, c.LeastDevelopment, c.MostDevelopment, now);
        // While it dries the first look is what there is to do; the clock shown is already that of the final look.
        return last == TestStep.DeveloperOn && state.Phase == ClockPhase.TooEarly
            ? state with
            {
                Next = TestStep.FirstLook,
                Phase = ClockPhase.Ready,
                Words =
                    $"Look now, while the developer dries: what bleeds first is deepest. The final look is due at {Clock(on.AddSeconds(c.LeastDevelopment), now)}.",
            }
            : state;
    }

    private static ClockState Untimed(
        TestStep? last,
        TestStep? next,
        ClockPhase phase,
        Sentence words
    ) =>
        new(
            last,
            next,
            phase,
            null,
            null,
            null,
            null,
            words,
            next is { } step ? StepWords.Caution(step) : null
        );

    private static ClockState Timed(
        TestStep? last,
        TestStep next,
        DateTimeOffset since,
        double least,
        double most,
        DateTimeOffset now
    )
    {
        var due = since.AddSeconds(least).ToOffset(now.Offset);
        var latest = since.AddSeconds(most).ToOffset(now.Offset);
        var phase =
            now < due ? ClockPhase.TooEarly
            : now <= latest ? ClockPhase.Ready
            : ClockPhase.TooLate;
        var (toDue, left) = (
            Math.Max(0, (due - now).TotalSeconds),
            Math.Max(0, (latest - now).TotalSeconds)
        );
        Sentence words = (next, phase) switch
        {
            (TestStep.Removed, ClockPhase.TooEarly) =>
                $"Let it dwell: {Say.Time(Math.Ceiling(toDue))} more, until {Clock(due, now)}. Keep it wet.",
            (TestStep.Removed, ClockPhase.Ready) =>
                $"Take the penetrant off now, by {Clock(latest, now)} at the latest.",
            (TestStep.Removed, _) =>
                $"It dwelt too long: the time ended at {Clock(latest, now)}. Clean it right down and begin again.",
            (_, ClockPhase.TooEarly) =>
                $"Let it develop: {Say.Time(Math.Ceiling(toDue))} more, until {Clock(due, now)}. A look before that is not final.",
            (_, ClockPhase.Ready) =>
                $"Take the final look now, by {Clock(latest, now)} at the latest, and note every mark.",
            _ => (Sentence)
                $"It developed past {Clock(latest, now)}: marks have spread and faint ones may be lost. Look and note all the same; in doubt clean it and begin again.",
        };
        return new(last, next, phase, due, latest, toDue, left, words, StepWords.Caution(next));
    }

    /// <summary>A time of day in the offset of another; with its date when that is another day.</summary>
    internal static string Clock(DateTimeOffset at, DateTimeOffset now)
    {
        var here = at.ToOffset(now.Offset);
        return here.ToString(
            here.Date == now.Date ? "HH:mm"
                : here.Year == now.Year ? "d MMM HH:mm"
                : "d MMM yyyy HH:mm",
            CultureInfo.InvariantCulture
        );
    }
}
