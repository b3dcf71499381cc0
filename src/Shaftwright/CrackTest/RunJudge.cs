using System.Globalization;
using Shaftwright.Findings;
using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>Something about a test that is not as the method asks.</summary>
/// <param name="Fails">True when the test does not count for it.</param>
/// <param name="Lacks">True when the test shows nothing clean until it is noted.</param>
/// <param name="Severity">How much it weighs.</param>
/// <param name="Code">Stable kebab-case name.</param>
/// <param name="Text">What is so.</param>
/// <param name="Action">What to do about it.</param>
/// <param name="Source">Where the limit comes from.</param>
internal sealed record Objection(
    bool Fails,
    bool Lacks,
    Severity Severity,
    string Code,
    Sentence Text,
    Sentence Action,
    string Source
)
{
    public static Objection Fail(string code, Sentence text, Sentence action, string source) =>
        new(true, false, Severity.Caution, code, text, action, source);

    public static Objection Doubt(string code, Sentence text, Sentence action, string source) =>
        new(false, false, Severity.Caution, code, text, action, source);

    public static Objection Lack(string code, Sentence text, Sentence action, string source) =>
        new(false, true, Severity.Caution, code, text, action, source);

    public static Objection Note(string code, Sentence text, Sentence action, string source) =>
        new(false, false, Severity.Note, code, text, action, source);
}

/// <summary>What the rules look at.</summary>
internal sealed class RunFacts(TestRun run, bool? austenitic)
{
    public TestMethod Method => run.Method;
    public bool? Austenitic => austenitic;
    public TestConditions Conditions { get; } = TestConditions.Of(run);
    public StepTimes Times { get; } = StepTimes.Of(run);

    public DateTimeOffset? LookedAt =>
        Times.When(Method.IsMagnetic() ? TestStep.MagnetisedAcross : TestStep.FinalLook);

    public double? Dwell => Times.Between(TestStep.PenetrantOn, TestStep.Removed);
    public double? Development => Times.Between(TestStep.DeveloperOn, TestStep.FinalLook);
}

/// <summary>Whether a test counts as a test. Limits: <see cref="TestLimits"/>.</summary>
internal static class RunJudge
{
    public static (RunResult Result, IReadOnlyList<Objection> Objections) Judge(
        TestRun run,
        bool? austenitic,
        DateTimeOffset? now
    )
    {
        if (run.Steps.Count == 0)
            return (
                new(run.Id, RunVerdict.UnderWay, null, null, null, Sentence.Plain("Not begun.")),
                []
            );
        var facts = new RunFacts(run, austenitic);
        List<Objection> objections =
        [
            .. Ahead(facts, now),
            .. Order(facts),
            .. facts.Method.IsMagnetic() ? MagneticRules.Of(facts) : PenetrantRules.Of(facts),
            .. SightRules.Of(facts),
            .. Places(facts),
        ];
        var failure = objections.Find(o => o.Fails);
        var lack = objections.Find(o => o.Lacks);
        var verdict =
            failure is not null ? RunVerdict.DoesNotCount
            : facts.LookedAt is null ? RunVerdict.UnderWay
            : lack is not null ? RunVerdict.NotShown
            : RunVerdict.Counts;
        Sentence words = verdict switch
        {
            RunVerdict.Counts when facts.Method.IsMagnetic() =>
                $"Looked at in both directions. The test counts.",
            RunVerdict.Counts =>
                $"Dwell {Say.Time(facts.Dwell ?? 0)}, development {Say.Time(facts.Development ?? 0)}. The test counts.",
            RunVerdict.UnderWay => $"Under way.",
            RunVerdict.NotShown => $"Not shown to be clean yet. {lack!.Text}",
            _ => failure!.Text,
        };
        return (
            new(run.Id, verdict, facts.LookedAt, facts.Dwell, facts.Development, words),
            objections
        );
    }

    private static IEnumerable<Objection> Ahead(RunFacts facts, DateTimeOffset? now)
    {
        if (now is { } n && facts.Times.Latest is { } latest && FutureDates.IsAhead(latest, n))
            yield return Objection.Fail(
                "test-ahead-of-now",
                $"It is dated {Procedure.Clock(latest, n)}, and it is only {n.ToString("d MMM yyyy HH:mm", CultureInfo.InvariantCulture)}. A test that is still to come shows nothing.",
                $"Set the clock right that said so, and correct the times.",
                TestLimits.Practice
            );
    }

    private static IEnumerable<Objection> Order(RunFacts facts)
    {
        DateTimeOffset? before = null;
        foreach (var step in Procedure.Steps(facts.Method))
        {
            if (facts.Times.When(step) is not { } at)
                continue;
            if (before is { } b && (b - at).TotalSeconds > TestLimits.ClockSkew)
            {
                yield return Objection.Fail(
                    "times-out-of-order",
                    $"\"{StepWords.Name(step)}\" is noted at an earlier time than the step before it. A clock was set back, or a time noted wrong.",
                    $"Correct the time if you know it; otherwise clean the part and begin again.",
                    TestLimits.Practice
                );
                yield break;
            }
            before = at;
        }
    }

    private static IEnumerable<Objection> Places(RunFacts facts)
    {
        if (facts.LookedAt is not null && facts.Conditions.Places.Count == 0)
            yield return Objection.Doubt(
                "places-not-said",
                $"It is not noted where was looked, so this test clears nothing.",
                $"Note the places.",
                TestLimits.Practice
            );
    }

    /// <summary>A step before the look that is not noted.</summary>
    internal static IEnumerable<Objection> Skipped(RunFacts facts, params TestStep[] steps)
    {
        foreach (var step in steps.Where(s => facts.Times.When(s) is null).Take(1))
            yield return Objection.Lack(
                "step-not-noted",
                $"\"{StepWords.Name(step)}\" is not noted. Dirt or solvent in a crack keeps the test out of it.",
                $"Note it with its time if it was done; otherwise begin again. Until then the test shows nothing clean.",
                TestLimits.Practice
            );
    }
}
