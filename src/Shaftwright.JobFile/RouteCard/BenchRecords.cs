using System.Globalization;
using Shaftwright.CrackTest;
using Shaftwright.Findings;
using Shaftwright.Fit;
using Shaftwright.Kept;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.JobFile;

/// <summary>How an operation stands by what was written down at the bench, whatever was signed.</summary>
/// <param name="Answer">What the record says; null when it says nothing yet.</param>
/// <param name="Missing">What is still to be done before a signature counts; null when nothing is.</param>
/// <param name="Stop">Why nobody may go on; null when nothing forbids it.</param>
/// <param name="Findings">What was found, at the operation that is at hand.</param>
internal sealed record BenchRecord(
    Sentence? Answer,
    Sentence? Missing,
    Sentence? Stop,
    IReadOnlyList<Finding> Findings
);

/// <summary>What the records of crack tests and fitting say of the operations they belong to.</summary>
internal static class BenchRecords
{
    private static readonly Place[] s_butt = [Place.ButtWeld];
    private static readonly Place[] s_ends = [Place.SleeveInnerEnd, Place.SleeveOuterEnd];

    /// <summary>By the code of the operation; an operation that is not here stands by its stage and signature alone.</summary>
    public static IReadOnlyDictionary<string, BenchRecord> Of(
        JobDocument document,
        JobResult result
    )
    {
        var tests = result.CrackTestWith(SignedWork.Of(document)) ?? new() { Findings = [] };
        var sleeved = document.Job.Cut is null || document.Job.Cut.SleeveLength is not null;
        var late = sleeved ? s_ends : s_butt;
        var records = new Dictionary<string, BenchRecord>(StringComparer.Ordinal)
        {
            [RouteSteps.CrackTestButt] = Butt(document, tests, result.Now),
            [RouteSteps.CrackTestSleeved] = Places(
                tests,
                s_ends,
                d => d.Kind == DemandKind.AfterPressing && d.Places.SequenceEqual(s_ends),
                null,
                SignedWork.LastOf(document, WorkKind.SleeveWelded)
            ),
            [RouteSteps.LateCrackTest] = Places(
                tests,
                late,
                d => d.Kind == DemandKind.AfterTwoDays,
                $"Two days after the last heat: sign for the weld, or note when it was.",
                null
            ),
            [RouteSteps.CrackTestEvent] = Places(
                tests,
                late,
                d => d.Kind == DemandKind.AfterFirstEvent,
                $"Note when the first event ended, then test every weld before it runs again.",
                null
            ),
        };
        // What was found stands where the fabricator is: at the first test that is not settled.
        var here = records
            .Where(r => sleeved || r.Key != RouteSteps.CrackTestSleeved)
            .First(r =>
                r.Value.Missing is not null
                || r.Value.Stop is not null
                || r.Key == RouteSteps.CrackTestEvent
            )
            .Key;
        records[here] = records[here] with { Findings = FindingsOf(document, tests, result.Now) };
        // A signature from before the last stroke, or an old turn, says nothing of what that stroke left.
        foreach (var step in RouteSteps.All)
            if (
                step.Moment is { } moment
                && result.PressAt(moment)
                    is { SinceStroke: RunOutVerdict.NotKnown, SinceWords: { } notRead }
            )
                records[step.Code] = new(null, notRead, null, []);
        if (result.Fit is { } fit)
        {
            records[RouteSteps.Fit] = Fitting(fit, tests);
            records[RouteSteps.FirstRun] = FirstRun(fit);
        }
        return records;
    }

    private static BenchRecord Butt(
        JobDocument document,
        CrackTestResult tests,
        DateTimeOffset? now
    )
    {
        var record = Places(
            tests,
            s_butt,
            d =>
                d.Kind == DemandKind.ButtBeforeSleeve
                || (d.Kind == DemandKind.AfterPressing && d.Places.SequenceEqual(s_butt)),
            null,
            null
        );
        return record.Missing is not null && TestedByWord(document, now)
            ? record with
            {
                Answer =
                    $"Signed for before the sleeve hid it; no test is on record, and none can be made up.",
                Missing = null,
                Stop = null,
            }
            : record;
    }

    /// <summary>Places that a test looks at: clean, every demand answered, and looked at after <paramref name="since"/>.</summary>
    private static BenchRecord Places(
        CrackTestResult tests,
        Place[] places,
        Func<TestDemand, bool> asks,
        Sentence? nothingAsks,
        DateTimeOffset? since
    )
    {
        List<SiteResult> sites =
        [
            .. places.Select(p =>
                tests.Sites.FirstOrDefault(s => s.Place == p)
                ?? new(
                    p,
                    SiteState.NotTested,
                    "",
                    null,
                    $"No test that counts has looked at {PlaceWords.At(p)}."
                )
            ),
        ];
        var demands = tests.Demands.Where(asks).ToList();
        var open = demands.Find(d => d.AnsweredBy is null);
        var stop = sites.Find(s => s.State == SiteState.Stopped)?.Words;
        var unsettled = sites.Find(s =>
            s.State is SiteState.NotTested or SiteState.ToRetest or SiteState.Indication
            || s.LookedAt is null
            || s.LookedAt < since
        );
        var missing =
            demands.Count == 0 && nothingAsks is not null ? nothingAsks
            : open is not null ? Waiting(open)
            : unsettled is not null
                ? unsettled.LookedAt < since
                        ? (Sentence)
                            $"Test {PlaceWords.At(unsettled.Place)} again: it was welded since."
                    : unsettled.Words
            : null;
        var looked = sites.Min(s => s.LookedAt);
        return new(
                // A mark is on record: no test of it makes the place clean.
                stop is not null
                    ? stop
                : missing is null && looked is { } at
                    ? $"Clean at {string.Join(" and ", places.Select(PlaceWords.At))}, looked at {Clock(at)}."
                : open is { Kind: DemandKind.AfterTwoDays } ? NotBefore(open)
                : (Sentence?)null,
            missing,
            stop,
            []
        );
    }

    private static Sentence Waiting(TestDemand demand) =>
        demand.Kind switch
        {
            _ when demand.Lack != DemandLack.None => demand.Words(demand.DueFrom),
            DemandKind.ButtBeforeSleeve when demand.Before is not null =>
                $"The sleeve hides a butt that no test on record has seen.",
            DemandKind.ButtBeforeSleeve => $"Test the butt, cold and trued, and note the test.",
            DemandKind.AfterPressing => $"Test it after the truing of {Clock(demand.DueFrom)}.",
            DemandKind.AfterTwoDays => NotBefore(demand),
            DemandKind.AfterProofTwist => $"Test every weld after the proof twist.",
            _ => (Sentence)$"Test every weld before it runs again.",
        };

    private static Sentence NotBefore(TestDemand demand) =>
        $"Not before {Clock(demand.DueFrom)}: two days after the last heat.";

    private static BenchRecord Fitting(FitResult fit, CrackTestResult tests)
    {
        var steps = fit.Steps.Where(s => s.Step != FitStep.FirstRun).ToList();
        var stopped = steps.Find(s => s.State == FitStepState.Stopped);
        var proof = tests.Demands.FirstOrDefault(d =>
            d is { Kind: DemandKind.AfterProofTwist, AnsweredBy: null }
        );
        var open = steps.Find(s => s.State is FitStepState.Next or FitStepState.Waits);
        var missing =
            proof is not null ? Waiting(proof)
            : open is not null ? fit.Next
            : null;
        return new(
            missing is null && stopped is null
                ? $"Fitted, every step noted."
                : (Sentence)$"{steps.Count(s => s.State == FitStepState.Done)} steps noted.",
            missing,
            stopped?.Because,
            fit.Findings
        );
    }

    private static BenchRecord FirstRun(FitResult fit)
    {
        var step = fit.Steps.Single(s => s.Step == FitStep.FirstRun);
        return new(
            step.State == FitStepState.Done ? $"Looked at after the first run." : (Sentence?)null,
            step.State == FitStepState.Done ? null : step.Because ?? step.WhatToDo,
            step.State == FitStepState.Stopped ? step.Because : null,
            []
        );
    }

    /// <summary>Whether the butt was signed as tested before the sleeve was: the word of jobs from before tests were kept. It is no
    /// word for what was done to the butt after it, nor when anything was noted of crack tests, nor from a time still to come.</summary>
    private static bool TestedByWord(JobDocument document, DateTimeOffset? now)
    {
        if (
            document.Records.Standing(RouteSteps.CrackTestButt) is not { } word
            || document.Records.Standing(RouteSteps.Sleeve) is not { } sleeve
            || word.At > sleeve.At
            || FutureDates.IsAhead(word.At, now)
            || FutureDates.IsAhead(sleeve.At, now)
            || document.Job.CrackTest
                is { Tests.Count: > 0 }
                    or { Work.Count: > 0 }
                    or { Decisions.Count: > 0 }
        )
            return false;
        string[] before = [RouteSteps.Weld, RouteSteps.Temper, RouteSteps.TrueButt];
        return before.All(code => !(document.Records.Standing(code)?.At > word.At))
            // A stroke at the weld of which nobody knows when it was may have come after the word.
            && !(document.Job.Press?.Standing() ?? []).Any(s =>
                s.Moment < Moment.Sleeved
                && (s.At > word.At || (s.At is null && s.Moment == Moment.ButtWelded))
            );
    }

    /// <summary>What a word stands in for is said all the same, as a caution: no signature is a test.</summary>
    private static IReadOnlyList<Finding> FindingsOf(
        JobDocument document,
        CrackTestResult tests,
        DateTimeOffset? now
    ) =>
        TestedByWord(document, now)
            ?
            [
                .. tests.Findings.Select(f =>
                    f.Code == "hidden-untested" ? f with { Severity = Severity.Caution } : f
                ),
            ]
            : tests.Findings;

    private static string Clock(DateTimeOffset at) =>
        at.ToString("d MMMM yyyy, HH:mm", CultureInfo.InvariantCulture);
}
