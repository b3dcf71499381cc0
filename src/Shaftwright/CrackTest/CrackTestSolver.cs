using Shaftwright.Findings;
using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>Whether the tests count, what the marks mean, how each place stands, and which tests are still to be done.</summary>
/// <remarks>
/// <para>The floor, above every level: a crack, any linear mark, and any mark at a weld, a sleeve's end or a spline stops the job.
/// Common practice, no source. On plain bar a round mark is judged by the chosen level (<see cref="Acceptance"/>).</para>
/// <para>A mark stays until something was done about it and a later test that counts has looked at its place again. A crack stays
/// for good: such a shaft is scrapped.</para>
/// <para>What is dated later than it is proves nothing, a look under conditions that nobody noted shows nothing clean, and a test
/// that is taken back leaves its marks to be looked for again.</para>
/// <para>No clock is read: what depends on the hour is asked of <see cref="Procedure.At"/> and <see cref="TestDemand.At"/>.</para>
/// </remarks>
public static class CrackTestSolver
{
    /// <summary>Solves the stage.</summary>
    /// <param name="input">Tests, work and decisions.</param>
    /// <param name="around">What is known beside them; null for nothing.</param>
    /// <exception cref="ArgumentNullException"><paramref name="input"/> is null.</exception>
    public static CrackTestResult Solve(CrackTestInput input, TestAround? around = null)
    {
        ArgumentNullException.ThrowIfNull(input);
        around ??= new TestAround();
        var tests = Entries.Standing(input.Tests);
        var judged = tests
            .Select(t => RunJudge.Judge(t, input.AusteniticFiller, around.Now))
            .ToList();
        List<CountingTest> Of(RunVerdict verdict) =>
            [
                .. tests
                    .Zip(judged, (test, judgement) => (test, judgement.Result))
                    .Where(t => t.Result.Verdict == verdict && t.Result.LookedAt is not null)
                    .Select(t => new CountingTest(
                        t.test.Id,
                        StepTimes.Of(t.test).Began!.Value,
                        t.Result.LookedAt!.Value,
                        TestConditions.Of(t.test).Places,
                        input.Tests.TakeWhile(r => !ReferenceEquals(r, t.test)).Count(),
                        t.Result.Words
                    )),
            ];
        var counting = Of(RunVerdict.Counts);
        IReadOnlyList<MarkResult> MarksOf(TestRun run) =>
            new MarkJudge(run, input.Level, around.Made).Judge();
        List<MarkResult> marks = [.. tests.SelectMany(MarksOf)];
        var lost = LostMarks
            .Of(input, MarksOf)
            .Where(l =>
                !counting.Any(t => t.Index > l.Index && !(t.BeganAt < l.After) && t.Saw(l.Place))
            )
            .ToList();
        var work = WorkLog.Of(input, around);
        var demands = Demands.Of(work, counting, around.TemperAsked, around.Untimed);
        var sites = new SiteJudge(
            input,
            work,
            counting,
            Of(RunVerdict.NotShown),
            marks,
            lost,
            demands
        );
        var say = new CrackTestFindings();
        for (var i = 0; i < tests.Count; i++)
            say.Objections(
                judged[i].Objections,
                tests.Count > 1 ? $"Test {i + 1}: " : "",
                judged[i].Result.Verdict != RunVerdict.Counts && MadeUpFor(tests, judged, i)
            );
        say.Marks(input, tests, marks, sites);
        say.Lost(lost);
        say.Ahead(input, around.Now);
        say.Demands(demands);
        say.BeforeTempering(work, counting, demands);
        say.Level(input, tests, marks);
        say.Buried(work, counting);
        return new()
        {
            Runs = [.. judged.Select(j => j.Result)],
            Marks = marks,
            Sites = sites.Judge(),
            Demands = demands,
            Findings = say.Findings,
        };
    }

    /// <summary>Whether a later test that counts looked at all the places of one that does not: what was wrong is then history.</summary>
    private static bool MadeUpFor(
        IReadOnlyList<TestRun> tests,
        List<(RunResult Result, IReadOnlyList<Objection> Objections)> judged,
        int index
    )
    {
        var places = TestConditions.Of(tests[index]).Places;
        return Enumerable
            .Range(index + 1, tests.Count - index - 1)
            .Any(j =>
                judged[j].Result.Verdict == RunVerdict.Counts
                && places.All(TestConditions.Of(tests[j]).Places.Contains)
            );
    }
}

/// <summary>A test that counts.</summary>
/// <param name="Id">Its id.</param>
/// <param name="BeganAt">When it was begun.</param>
/// <param name="LookedAt">When it was looked at for good.</param>
/// <param name="Places">Where.</param>
/// <param name="Index">Where it stands among the tests as written down.</param>
/// <param name="Words">What is said of it as a test.</param>
internal sealed record CountingTest(
    string Id,
    DateTimeOffset BeganAt,
    DateTimeOffset LookedAt,
    IReadOnlyList<Place> Places,
    int Index,
    Sentence Words
)
{
    /// <summary>Whether it looked at a place.</summary>
    public bool Saw(Place place) => Places.Contains(place);
}
