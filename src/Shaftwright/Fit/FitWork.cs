using Shaftwright.CrackTest;
using Shaftwright.Kept;

namespace Shaftwright.Fit;

/// <summary>What fitting does to a shaft that asks for crack tests, so that nobody writes it down twice.</summary>
internal static class FitWork
{
    /// <summary>A job's crack tests with the proof twist and the first run among the work; null when there is nothing to test for.</summary>
    public static CrackTestInput? In(Job job)
    {
        List<WorkDone> work =
        [
            .. Entries.Standing(job.Fit?.Done ?? []).Select(Of).OfType<WorkDone>(),
        ];
        return work.Count == 0
            ? job.CrackTest
            : (job.CrackTest ?? new()) with
            {
                Work = [.. job.CrackTest?.Work ?? [], .. work],
            };
    }

    private static WorkDone? Of(FitDone done) =>
        done.Step switch
        {
            FitStep.ProofTwist => new()
            {
                Id = done.Id,
                Kind = WorkKind.ProofTwisted,
                At = done.At,
            },
            FitStep.FirstRun => new()
            {
                Id = done.Id,
                Kind = WorkKind.FirstRun,
                At = done.At,
            },
            _ => null,
        };
}
