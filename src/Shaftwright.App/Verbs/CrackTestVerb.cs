using System.Globalization;
using Shaftwright.CrackTest;
using Shaftwright.JobFile;
using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary><c>cracktest</c>: what to test now, which clock runs, what each mark means, and which tests are still owed.</summary>
internal static class CrackTestVerb
{
    /// <summary>The clock of a test that is under way.</summary>
    /// <param name="Run">Id of the test.</param>
    /// <param name="State">How it stands.</param>
    public sealed record Clock(string Run, ClockState State);

    /// <summary>A test that the work asks for, at the instant asked for.</summary>
    /// <param name="Kind">Why.</param>
    /// <param name="State">How it stands.</param>
    /// <param name="DueFrom">From when it may be done.</param>
    /// <param name="AnsweredBy">Id of the test that answers it.</param>
    /// <param name="Words">In a sentence.</param>
    public sealed record Demand(
        DemandKind Kind,
        DemandState State,
        DateTimeOffset DueFrom,
        string? AnsweredBy,
        Sentence Words
    );

    /// <summary>What the verb does, without an instant.</summary>
    public const string Description = "What to test for cracks, when, and what the marks mean.";

    /// <summary>The verb at an instant, for a job whose sign-offs tell of work too.</summary>
    public static StageVerb At(DateTimeOffset now, JobDocument document)
    {
        var input = document.Job.CrackTest;
        // Asked several times for one answer.
        CrackTestResult? known = null;
        CrackTestResult? Tests(JobResult r) => known ??= r.CrackTestWith(SignedWork.Of(document));
        return new()
        {
            Name = "cracktest",
            Description = Description,
            At = now,
            Lacks = r =>
                Tests(r) is null
                    ? "it holds no tests and no work to test after (\"crackTest\"), and no weld is signed for."
                    : null,
            Answer = r => StageAnswers.CrackTest(Tests(r), input, now),
            NoAnswer = "Nothing is to be tested now.",
            Show = (r, display, text) => Show(Tests(r)!, input, now, display, text),
            Findings = r => Tests(r)!.Findings,
            Write = (r, json, writer) =>
            {
                writer.WriteString("at", now);
                json.Write(writer, "clocks", Clocks(input, Tests(r)!, now));
                json.Write(writer, "demands", Demands(Tests(r)!, now));
                json.Write(writer, "result", Tests(r));
            },
        };
    }

    private static IReadOnlyList<Clock> Clocks(
        CrackTestInput? input,
        CrackTestResult tests,
        DateTimeOffset now
    ) =>
        [
            .. Entries
                .Standing(input?.Tests ?? [])
                .Where((_, i) => tests.Runs[i].Verdict == RunVerdict.UnderWay)
                .Select(run => new Clock(run.Id, Procedure.At(run, now))),
        ];

    private static IReadOnlyList<Demand> Demands(CrackTestResult tests, DateTimeOffset now) =>
        [
            .. tests.Demands.Select(d => new Demand(
                d.Kind,
                d.At(now),
                d.DueFrom,
                d.AnsweredBy,
                d.Words(now)
            )),
        ];

    private static void Show(
        CrackTestResult tests,
        CrackTestInput? input,
        DateTimeOffset now,
        Display display,
        TextWriter text
    )
    {
        var standing = Entries.Standing(input?.Tests ?? []);
        PlainText.Table(
            text,
            [
                .. tests.Runs.Select(
                    (run, i) =>
                        new[]
                        {
                            $"Test {(i + 1).ToString(CultureInfo.InvariantCulture)}",
                            Words.NameOf(standing[i].Method),
                            run.Words.In(display),
                        }
                ),
            ]
        );
        PlainText.Table(
            text,
            [.. tests.Marks.Select(m => new[] { m.Stops ? "STOP" : "Mark", m.Words.In(display) })]
        );
        PlainText.Table(
            text,
            [.. tests.Sites.Select(s => new[] { Words.NameOf(s.State), s.Words.In(display) })]
        );
        PlainText.Table(
            text,
            [
                .. tests.Demands.Select(d =>
                    new[] { Words.NameOf(d.At(now)), d.Words(now).In(display) }
                ),
            ]
        );
    }
}
