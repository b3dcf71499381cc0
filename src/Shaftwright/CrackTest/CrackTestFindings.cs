using Shaftwright.Findings;
using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>What the stage says about marks and missing tests.</summary>
internal sealed class CrackTestFindings
{
    private const string Floor =
        "common practice, no source: any line, and any mark at a weld, a sleeve's end or a spline";

    private readonly List<Finding> _findings = [];

    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>What is not right about one test; only notes when a later test made up for it.</summary>
    public void Objections(IReadOnlyList<Objection> objections, string name, bool madeUpFor)
    {
        foreach (var o in objections)
            Add(
                madeUpFor ? Severity.Note : o.Severity,
                o.Code,
                $"{name}{o.Text}",
                o.Action,
                o.Source
            );
    }

    public void Marks(
        CrackTestInput input,
        IReadOnlyList<TestRun> tests,
        IReadOnlyList<MarkResult> marks,
        SiteJudge sites
    )
    {
        foreach (var mark in marks)
        {
            var standing = sites.Of(mark);
            var source =
                mark.Crack ? "ISO 5817, no. 100, from memory"
                : mark.Place != Place.Bar || mark.Linear ? Floor
                : Acceptance.Source(MethodOf(tests, mark));
            switch (standing)
            {
                case MarkStanding.DealtWith:
                    Add(
                        Severity.Note,
                        "mark-dealt-with",
                        $"{mark.Words} It was worked on and tested again.",
                        $"Look there first the next time.",
                        source
                    );
                    break;
                case MarkStanding.ToRetest:
                    Add(
                        Severity.Caution,
                        "mark-to-retest",
                        $"{mark.Words} It was worked on since.",
                        $"Test that place again, from cleaning on.",
                        source
                    );
                    break;
                case MarkStanding.Scrapped:
                    Add(
                        Severity.Stop,
                        "scrapped",
                        $"{mark.Words} The shaft was scrapped for it.",
                        $"Cut it through, so that nobody fits it.",
                        source
                    );
                    break;
                default:
                    Add(
                        mark.Stops ? Severity.Stop
                            : mark.Accepted is null ? Severity.Caution
                            : Severity.Note,
                        mark.Crack ? "crack"
                            : mark.Stops ? "mark-stops-job"
                            : mark.Accepted is null ? "mark-not-measured"
                            : "mark-accepted",
                        mark.Words,
                        mark.Crack ? $"Scrap the shaft, and cut it through so that nobody fits it."
                            : mark.Stops
                                ? $"Do not go on. Clean and test again if it may be dirt; dress it out and test again if it is shallow; otherwise scrap it."
                            : mark.Accepted is null ? $"Measure its length and width."
                            : (Sentence)
                                $"Note it with a photo, and look there first the next time.",
                        source
                    );
                    break;
            }
            if (
                mark.Crack
                && Entries
                    .Standing(input.Decisions)
                    .Any(d => mark.IndicationIds.Contains(d.Indication))
                && standing == MarkStanding.Open
            )
                Add(
                    Severity.Note,
                    "crack-stays",
                    $"What was done about this crack does not clear it.",
                    $"If it was no crack after all, correct the mark.",
                    "common practice, no source"
                );
        }
        foreach (var run in tests)
        {
            var standing = Entries.Standing(run.Indications);
            if (standing.Count > 1 && standing.Any(m => m.Position is null || m.Length is null))
                Add(
                    Severity.Caution,
                    "marks-not-placed",
                    $"Some marks have no position or no length, so whether they lie near enough to count as one is not known.",
                    $"Measure each from the shaft's inner end.",
                    Acceptance.Source(run.Method)
                );
        }
    }

    /// <summary>What went out of the record with a test that was taken back.</summary>
    public void Lost(IReadOnlyList<LostMark> lost)
    {
        foreach (var mark in lost)
            Add(
                Severity.Caution,
                mark.Crack ? "crack-taken-back" : "mark-taken-back",
                mark.Count == 1
                    ? $"A test that was taken back had found {(mark.Crack ? "a crack" : "a mark")} at {PlaceWords.At(mark.Place)}. Taking it back does not make the part clean."
                    : (Sentence)
                        $"A test that was taken back had found {mark.Count} marks at {PlaceWords.At(mark.Place)}{(mark.Crack ? ", a crack among them" : "")}. Taking it back does not make the part clean.",
                $"Test that place again, from cleaning on.",
                TestLimits.Practice
            );
    }

    /// <summary>Work and decisions that are dated later than it is. They ask all the same, and no test of today can answer.</summary>
    public void Ahead(CrackTestInput input, DateTimeOffset? now)
    {
        if (now is not { } n)
            return;
        foreach (
            var (at, what) in Entries
                .Standing(input.Work)
                .Select(w => (w.At, "Work"))
                .Concat(
                    Entries.Standing(input.Decisions).Select(d => (d.At, "A decision on a mark"))
                )
                .Where(e => FutureDates.IsAhead(e.At, n))
        )
            Add(
                Severity.Caution,
                "work-ahead-of-now",
                $"{what} is dated {Procedure.Clock(at, n)}, which is still to come. Until that is put right no test can answer for it, and tempering dated so counts as not done.",
                $"Correct the time.",
                TestLimits.Practice
            );
    }

    /// <summary>A test of the butt that came before the tempering.</summary>
    public void BeforeTempering(
        IReadOnlyList<WorkDone> work,
        IReadOnlyList<CountingTest> tests,
        IReadOnlyList<TestDemand> demands
    )
    {
        if (
            demands.LastOrDefault(d => d.Kind == DemandKind.ButtBeforeSleeve)
                is not { AnsweredBy: null, Lack: DemandLack.None } butt
            || work.FirstOrDefault(w => string.Equals(w.Id, butt.WorkId, StringComparison.Ordinal))
                is not { } welded
            || !tests.Any(t =>
                t.Saw(Place.ButtWeld) && t.BeganAt >= welded.At && t.BeganAt < butt.DueFrom
            )
        )
            return;
        Add(
            Severity.Caution,
            "tested-before-tempering",
            $"The butt was tested before it was tempered. Tempering is heat again: it can open what that test could not see.",
            $"Test it once more, tempered, cold and trued, before the sleeve goes on. The early test is worth having, and is not the one that counts.",
            TestLimits.Temper
        );
    }

    public void Demands(IReadOnlyList<TestDemand> demands)
    {
        foreach (var demand in demands)
        {
            if (demand.Lack == DemandLack.Tempering)
                Add(
                    Severity.Caution,
                    "tempering-not-noted",
                    $"The butt was tested, but no tempering of it is on record, and the test that counts comes after the tempering.",
                    $"Note when it was tempered. If that was after the test, or has not been yet, test again before the sleeve goes on.",
                    TestLimits.Temper
                );
            if (demand.Lack == DemandLack.TimeOfStrokes)
                Add(
                    Severity.Caution,
                    "strokes-without-time",
                    $"Strokes of the press are on record, and nobody noted when they were. No test can be said to come after them.",
                    $"Note when the pressing ended, then test after it.",
                    TestLimits.Practice
                );
            if (demand.Late)
                Add(
                    Severity.Note,
                    "tested-late",
                    $"The test asked for {Why(demand.Kind)} was done only after the shaft had run.",
                    $"Keep the order next time.",
                    Source(demand.Kind)
                );
            if (
                demand.AnsweredBy is not null
                || demand.Lack != DemandLack.None
                || demand.Before is null
            )
                continue;
            if (demand.Hidden)
                Add(
                    Severity.Stop,
                    "hidden-untested",
                    demand.Kind == DemandKind.ButtBeforeSleeve
                        ? $"The sleeve went on over a butt that no test that counts has seen."
                        : (Sentence)$"The butt was pressed after its last test and sleeved over.",
                    $"Do not run it: turn the sleeve off and test the butt, or scrap the shaft.",
                    Source(demand.Kind)
                );
            else
                Add(
                    Severity.Stop,
                    "ran-untested",
                    $"It has run without the test asked for {Why(demand.Kind)}.",
                    $"Test it before it runs again.",
                    Source(demand.Kind)
                );
        }
    }

    public void Level(
        CrackTestInput input,
        IReadOnlyList<TestRun> tests,
        IReadOnlyList<MarkResult> marks
    )
    {
        if (marks.Any(m => m is { Place: Place.Bar, Linear: false, Crack: false }))
            Add(
                Severity.Note,
                "level-from-memory",
                $"Round marks on plain bar are judged by level {PlaceWords.Level(input.Level)}. Its sizes stand here from memory.",
                $"Have somebody who holds the standard read them before you quote them.",
                string.Join("; ", tests.Select(t => Acceptance.Source(t.Method)).Distinct())
            );
    }

    public void Buried(IReadOnlyList<WorkDone> work, IReadOnlyList<CountingTest> tests)
    {
        var sleeved = WorkLog.SleevedAt(work);
        if (tests.Any(t => t.LookedAt > sleeved && t.Saw(Place.ButtWeld)))
            Add(
                Severity.Caution,
                "butt-under-sleeve",
                $"A test after the sleeve went on names the butt weld, which nobody can see there.",
                $"Name the sleeve's ends instead. For the butt that test counts for nothing.",
                "common practice, no source"
            );
    }

    private static TestMethod MethodOf(IReadOnlyList<TestRun> tests, MarkResult mark) =>
        tests.First(t => string.Equals(t.Id, mark.RunId, StringComparison.Ordinal)).Method;

    private static string Why(DemandKind kind) =>
        kind switch
        {
            DemandKind.ButtBeforeSleeve => "after the butt weld",
            DemandKind.AfterPressing => "after pressing",
            DemandKind.AfterProofTwist => "after the proof twist",
            DemandKind.AfterTwoDays => "two days after the last heat",
            _ => "after the first event",
        };

    private static string Source(DemandKind kind) =>
        kind == DemandKind.AfterTwoDays ? TestLimits.Hydrogen : TestLimits.Practice;

    private void Add(
        Severity severity,
        string code,
        Sentence text,
        Sentence action,
        string source
    ) => _findings.Add(new(severity, Stage.CrackTest, code, text, action, source));
}
