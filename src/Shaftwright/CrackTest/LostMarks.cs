using Shaftwright.Kept;

namespace Shaftwright.CrackTest;

/// <summary>Marks of a test that was taken back, or put right by one that no longer holds them.</summary>
/// <param name="RunId">The test that had them.</param>
/// <param name="Place">Where they were.</param>
/// <param name="Count">How many.</param>
/// <param name="Crack">Whether one was recognised as a crack.</param>
/// <param name="After">When that test was last at work; null when it had no step.</param>
/// <param name="Index">Where it stands among the tests as written down.</param>
internal sealed record LostMark(
    string RunId,
    Place Place,
    int Count,
    bool Crack,
    DateTimeOffset? After,
    int Index
);

/// <summary>What went out of the record with a test: taking a test back does not make the part clean.</summary>
internal static class LostMarks
{
    /// <summary>Every place that a test had marks at which no standing test holds any more.</summary>
    public static IReadOnlyList<LostMark> Of(
        CrackTestInput input,
        Func<TestRun, IReadOnlyList<MarkResult>> judge
    )
    {
        var standing = Entries.Standing(input.Tests);
        var lost = new List<LostMark>();
        for (var i = 0; i < input.Tests.Count; i++)
        {
            var run = input.Tests[i];
            if (standing.Contains(run))
                continue;
            var instead = standing.FirstOrDefault(s => GoesBackTo(input.Tests, s, run));
            var held = instead is null ? [] : judge(instead);
            lost.AddRange(
                judge(run)
                    .GroupBy(m => m.Place)
                    .Where(at => held.All(h => h.Place != at.Key))
                    .Select(at => new LostMark(
                        run.Id,
                        at.Key,
                        at.Sum(m => m.IndicationIds.Count),
                        at.Any(m => m.Crack),
                        StepTimes.Of(run).Latest,
                        i
                    ))
            );
        }
        return lost;
    }

    /// <summary>Whether a test stands in the place of an earlier one.</summary>
    private static bool GoesBackTo(IReadOnlyList<TestRun> all, TestRun later, TestRun earlier)
    {
        // An entry corrects only one before it, so this ends.
        for (var r = later; r is not null && r.Corrects.Length > 0; )
        {
            var before = r;
            r = all.TakeWhile(t => !ReferenceEquals(t, before))
                .LastOrDefault(t => string.Equals(t.Id, before.Corrects, StringComparison.Ordinal));
            if (ReferenceEquals(r, earlier))
                return true;
        }
        return false;
    }
}
