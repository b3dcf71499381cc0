using System.Globalization;
using Shaftwright.CrackTest;
using Shaftwright.Findings;
using Shaftwright.Kept;
using Shaftwright.Measures;
using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;
using Shaftwright.Weld;

namespace Shaftwright.JobFile;

/// <summary>One operation of the route card as it stands.</summary>
/// <param name="Code">Stable kebab-case id; sign-offs name it.</param>
/// <param name="Number">Its number on the card, from 1.</param>
/// <param name="Title">What it is called.</param>
/// <param name="WhatToDo">What to do, in one to three sentences.</param>
/// <param name="NoNumber">What a reader could expect a number for and is not worked out here, and whom to ask; null otherwise.</param>
/// <param name="Answer">The answer of its stage; null when there is none yet, or none to be had.</param>
/// <param name="State">How it stands.</param>
/// <param name="Because">Why it is held, stopped or waiting; null when there is nothing to say.</param>
/// <param name="Findings">What its stages found.</param>
/// <param name="Cautions">The cautions of this step. Each stands on the card once.</param>
/// <param name="SignOff">The sign-off that counts; null when there is none.</param>
public sealed record Operation(
    string Code,
    int Number,
    string Title,
    string WhatToDo,
    string? NoNumber,
    Sentence? Answer,
    OperationState State,
    Sentence? Because,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<string> Cautions,
    SignOff? SignOff
)
{
    /// <summary>True when the sign-off was given for other numbers than the answer has now; then it does not count.</summary>
    public bool SignedForOther => SignOff is { } s && !s.StandsFor(Answer);
}

/// <summary>The one next thing to do.</summary>
/// <param name="Operation">Code of the operation it belongs to; empty when all are signed; <see cref="Disagreements.Place"/> when devices disagree.</param>
/// <param name="Words">What to do.</param>
public sealed record NextStep(string Operation, Sentence Words);

/// <summary>A job's operations in making order, each with its answer, state and signature.</summary>
/// <param name="Operations">The operations, in order.</param>
/// <param name="Next">The one next thing to do.</param>
public sealed record RouteCard(IReadOnlyList<Operation> Operations, NextStep Next)
{
    /// <summary>What stands at the head of every card.</summary>
    public const string Prevails =
        "Local codes, the event's rules and licensed practice prevail over this card. It does not certify a part.";

    /// <summary>How long after the last heat the late crack test waits. Source: hydrogen cracks come up to 24 h late and some
    /// codes ask 24–48 h; the longer is taken.</summary>
    public static readonly TimeSpan LateCrackTest = TimeSpan.FromSeconds(TestLimits.HydrogenDelay);

    /// <summary>The card of a job.</summary>
    /// <param name="document">The job and its sign-offs.</param>
    /// <param name="result">The job's evaluation. All its stages are read.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static RouteCard Of(JobDocument document, JobResult result)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(result);
        var done = new Dictionary<string, Operation>(StringComparer.Ordinal);
        var operations = new List<Operation>();
        var records = BenchRecords.Of(document, result);
        foreach (var step in RouteSteps.All)
        {
            var operation = Stand(
                step,
                operations.Count + 1,
                document,
                result,
                records.GetValueOrDefault(step.Code),
                done
            );
            done.Add(step.Code, operation);
            operations.Add(operation);
        }
        // Before all else: nobody should work on to a number that is in question.
        return new(operations, Disagreements.Next(document) ?? NextOf(operations, done));
    }

    private static Operation Stand(
        RouteStep step,
        int number,
        JobDocument document,
        JobResult result,
        BenchRecord? record,
        Dictionary<string, Operation> before
    )
    {
        var (answer, findings, over) = Ask(step, document, result);
        if (record is not null)
            (answer, findings) = (record.Answer ?? answer, [.. findings, .. record.Findings]);
        var signOff = document.Records.Standing(step.Code);
        // Signed at a time that is still to come: nobody has signed it yet.
        var ahead = FutureDates.IsAhead(signOff?.At, result.Now) ? signOff : null;
        if (ahead is not null)
            signOff = null;
        var stop = findings.FirstOrDefault(f => f.Severity == Severity.Stop);
        var (state, because) = step.InJob(document.Job)
            ? StateOf(step, answer, stop, over, record, signOff, HeldBy(step, before))
            : (OperationState.NotInThisJob, null);
        if (ahead is not null && state != OperationState.NotInThisJob)
            because =
                $"It is signed for {ahead.At.ToString("d MMMM yyyy, HH:mm", CultureInfo.InvariantCulture)}, which is still to come: set the clock right that said so, and sign again.{(because is { } also ? (Sentence)$" {also}" : (Sentence)$"")}";
        return new(
            step.Code,
            number,
            step.Title,
            step.WhatToDo,
            step.NoNumber,
            state == OperationState.NotInThisJob ? null : answer,
            state,
            because,
            state == OperationState.NotInThisJob ? [] : findings,
            step.Cautions,
            signOff
        );
    }

    /// <summary>The state, and why. A stop outweighs a signature, so does a record that does not bear it out, and a signature
    /// outweighs what it should have waited for.</summary>
    private static (OperationState State, Sentence? Because) StateOf(
        RouteStep step,
        Sentence? answer,
        Finding? stop,
        bool over,
        BenchRecord? record,
        SignOff? signOff,
        Operation? held
    )
    {
        if (stop is not null)
            return (OperationState.Stopped, stop.Action);
        if (over)
            return (
                OperationState.Stopped,
                $"Over the limit: true it, then turn it under the dial again."
            );
        if (record?.Stop is { } forbids)
            return (OperationState.Stopped, forbids);
        if (record?.Missing is { } missing && (signOff is not null || held is null))
            return (
                OperationState.NeedsReadings,
                signOff is null ? missing : $"Signed, but the record says otherwise. {missing}"
            );
        if (signOff is not null && !signOff.StandsFor(answer))
            return (
                answer is null ? OperationState.NeedsReadings : OperationState.Answered,
                $"It was signed for other numbers: “{signOff.Said}” Look over and sign again."
            );
        if (signOff is not null)
            return (
                OperationState.Signed,
                held is null
                    ? null
                    : (Sentence)$"Signed, though {held.Number} {held.Title} does not stand signed."
            );
        if (held is not null)
            return (OperationState.Held, $"Waits for {held.Number} {held.Title}.");
        if (answer is not null && step.Answers)
            return (OperationState.Answered, null);
        return step.Needs is { } needs
            ? (OperationState.NeedsReadings, Sentence.Plain(needs))
            : (OperationState.ToDo, null);
    }

    private static (Sentence? Answer, IReadOnlyList<Finding> Findings, bool Over) Ask(
        RouteStep step,
        JobDocument document,
        JobResult result
    ) =>
        step.Code switch
        {
            RouteSteps.MeasureCar => (
                StageAnswers.Corner(result),
                result.Corner?.Findings ?? [],
                false
            ),
            RouteSteps.CheckJoints => (
                StageAnswers.Joints(result),
                result.Joints?.Findings ?? [],
                false
            ),
            RouteSteps.Length => (
                StageAnswers.Length(result),
                result.Length?.Findings ?? [],
                false
            ),
            RouteSteps.WalkDonors => (
                StageAnswers.Donors(result),
                result.Donors?.Findings ?? [],
                false
            ),
            RouteSteps.Cut => (StageAnswers.Cut(result), result.Cut?.Findings ?? [], false),
            RouteSteps.Strength => (
                StageAnswers.Strength(result),
                [
                    .. result.Car?.Findings ?? [],
                    .. StrengthFindings(result, f => !IsSample(f) && !IsSleeve(f)),
                ],
                false
            ),
            RouteSteps.PrepareEnds => (
                WeldAnswers.Preparation(result),
                result.Weld?.PreparationFindings ?? [],
                false
            ),
            RouteSteps.WeldSample => (
                WeldAnswers.Sample(result),
                [.. StrengthFindings(result, IsSample)],
                false
            ),
            RouteSteps.SetUp => (
                StageAnswers.Weld(result),
                result.Weld?.SetUpFindings ?? [],
                false
            ),
            RouteSteps.CheckTacks => (
                WeldAnswers.Tacks(result),
                result.Weld?.Tacks?.Findings ?? [],
                false
            ),
            RouteSteps.Preheat => (
                WeldAnswers.Preheat(result),
                result.Weld?.Heat?.PreheatFindings ?? [],
                false
            ),
            RouteSteps.Weld => (
                WeldAnswers.Beads(result),
                [.. result.Weld?.Heat?.WeldFindings ?? [], .. result.Beads?.Findings ?? []],
                false
            ),
            RouteSteps.SlowCool => (WeldAnswers.SlowCool(result), [], false),
            RouteSteps.Temper => (
                WeldAnswers.Temper(result),
                result.Weld?.Heat?.TemperFindings ?? [],
                false
            ),
            RouteSteps.Sleeve => (
                WeldAnswers.Sleeve(result),
                [.. StrengthFindings(result, IsSleeve)],
                false
            ),
            RouteSteps.CrackTestButt => (null, [.. Seams(result, butt: true)], false),
            RouteSteps.CrackTestSleeved => (null, [.. Seams(result, butt: false)], false),
            _ => step.Moment is { } moment ? UnderTheDial(result, moment) : (null, [], false),
        };

    /// <summary>What the turns of a moment say, all stations together.</summary>
    private static (Sentence?, IReadOnlyList<Finding>, bool) UnderTheDial(
        JobResult result,
        Moment moment
    )
    {
        var press = result.PressAt(moment);
        var since = press?.SinceStroke;
        if (result.TruingAt(moment) is not { } judged)
            return
                since == RunOutVerdict.Over
                || press?.Findings.Any(f => f.Code == PressResult.CrackSign) is true
                ? (press!.SinceWords, press.Findings, since == RunOutVerdict.Over)
                : (null, [], false);
        // What the last stroke left is newer than the turn before it; an old turn that was over stops until it is turned again.
        if (press is not null && since is not null)
            return (
                since == RunOutVerdict.NotKnown ? null
                : press.Step == PressStep.NotKnown || since != RunOutVerdict.Over ? press.SinceWords
                : (Sentence)$"{press.SinceWords!} {press.Words}",
                [.. judged.Findings, .. press.Findings],
                since == RunOutVerdict.Over
                    || judged.Turns.Any(t => t.Verdict == RunOutVerdict.Over)
            );
        var over = judged.Turns.Any(t => t.Verdict == RunOutVerdict.Over);
        var dial = StageAnswers.Truing(judged);
        // What the press says counts while there is something to press, and a crack sign always; a straight shaft answers by the
        // dial alone.
        if (press is null || !(over || press.Findings.Any(f => f.Code == PressResult.CrackSign)))
            return (dial, judged.Findings, over);
        var stroke = press.Step == PressStep.NotKnown ? null : press.Words;
        return (
            dial is null || stroke is null ? dial ?? stroke : $"{dial} {stroke}",
            [.. judged.Findings, .. press.Findings],
            over
        );
    }

    private static IEnumerable<Finding> Seams(JobResult result, bool butt) =>
        (result.Weld?.Seams ?? [])
            .Where(s => s.Place == SeamPlace.Butt == butt)
            .SelectMany(s => s.Findings);

    private static IEnumerable<Finding> StrengthFindings(
        JobResult result,
        Func<Finding, bool> which
    ) => (result.Strength?.Findings ?? []).Where(which);

    private static bool IsSample(Finding f) =>
        f.Code.StartsWith("sample-", StringComparison.Ordinal);

    private static bool IsSleeve(Finding f) =>
        f.Code.StartsWith("sleeve-", StringComparison.Ordinal);

    /// <summary>The first operation that this one must come after and that does not stand signed. One that is not in the job
    /// passes the question on to those before it.</summary>
    private static Operation? HeldBy(RouteStep step, Dictionary<string, Operation> before)
    {
        foreach (var code in step.After)
        {
            var operation = before[code];
            var blocking = operation.State switch
            {
                OperationState.Signed => null,
                OperationState.NotInThisJob => HeldBy(RouteSteps.Of(code), before),
                _ => operation,
            };
            if (blocking is not null)
                return blocking;
        }
        return null;
    }

    private static NextStep NextOf(List<Operation> operations, Dictionary<string, Operation> byCode)
    {
        // What forbids the shaft outweighs what is still to be read: nobody should measure on towards a part that cannot be.
        if (operations.FirstOrDefault(o => o.State == OperationState.Stopped) is { } stopped)
            return new(
                stopped.Code,
                $"{stopped.Number} {stopped.Title} is stopped. {stopped.Because}"
            );
        foreach (var o in operations)
        {
            switch (o.State)
            {
                case OperationState.Signed or OperationState.NotInThisJob:
                    continue;
                // A number that stands needs no signature to go on measuring; the first work on metal will ask for it.
                case OperationState.Answered when RouteSteps.Of(o.Code).OnPaper:
                    continue;
                case OperationState.Held:
                    var first = HeldBy(RouteSteps.Of(o.Code), byCode)!;
                    return new(
                        first.Code,
                        $"Look over and sign {first.Number} {first.Title}: {o.Title} waits for it."
                    );
                case OperationState.NeedsReadings:
                    return new(o.Code, $"{o.Number} {o.Title}. {o.Because}");
                case OperationState.Answered:
                    return new(o.Code, $"{o.Number} {o.Title}: look over and sign.");
                default:
                    return new(o.Code, $"{o.Number} {o.Title}. {o.WhatToDo}");
            }
        }
        return operations.FirstOrDefault(o => o.State == OperationState.Answered) is { } unsigned
            ? new(unsigned.Code, $"Look over and sign {unsigned.Number} {unsigned.Title}.")
            : new("", $"All operations are signed. Keep to the service intervals.");
    }
}
