using Shaftwright.Cut;
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
/// <para>No clock is read: what depends on the hour is asked of <see cref="Procedure.At"/> and <see cref="TestDemand.At"/>.</para>
/// </remarks>
public static class CrackTestSolver
{
    /// <summary>Solves the stage.</summary>
    /// <param name="input">Tests, work and decisions.</param>
    /// <param name="made">The shaft that the cut makes, for places and diameters; null when not known.</param>
    /// <exception cref="ArgumentNullException"><paramref name="input"/> is null.</exception>
    public static CrackTestResult Solve(CrackTestInput input, MadeShaft? made)
    {
        ArgumentNullException.ThrowIfNull(input);
        var tests = Entries.Standing(input.Tests);
        var judged = tests.Select(t => RunJudge.Judge(t, input.AusteniticFiller)).ToList();
        List<CountingTest> counting =
        [
            .. tests
                .Zip(judged, (test, judgement) => (test, judgement.Result))
                .Where(t => t.Result is { Verdict: RunVerdict.Counts, LookedAt: not null })
                .Select(t => new CountingTest(
                    t.test.Id,
                    StepTimes.Of(t.test).Began!.Value,
                    t.Result.LookedAt!.Value,
                    TestConditions.Of(t.test).Places
                )),
        ];
        List<MarkResult> marks =
        [
            .. tests.SelectMany(t => new MarkJudge(t, input.Level, made).Judge()),
        ];
        var work = WorkLog.Of(input);
        var demands = Demands.Of(work, counting);
        var sites = new SiteJudge(input, work, counting, marks, demands);
        var say = new CrackTestFindings();
        for (var i = 0; i < tests.Count; i++)
            say.Objections(
                judged[i].Objections,
                tests.Count > 1 ? $"Test {i + 1}: " : "",
                judged[i].Result.Verdict != RunVerdict.Counts && MadeUpFor(tests, judged, i)
            );
        say.Marks(input, tests, marks, sites);
        say.Demands(demands);
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
internal sealed record CountingTest(
    string Id,
    DateTimeOffset BeganAt,
    DateTimeOffset LookedAt,
    IReadOnlyList<Place> Places
)
{
    /// <summary>Whether it looked at a place.</summary>
    public bool Saw(Place place) => Places.Contains(place);
}
