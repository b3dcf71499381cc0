using Shaftwright.CrackTest;
using Shaftwright.Kept;

namespace Shaftwright.JobFile;

/// <summary>Work that was signed for and not written down with the crack tests: it counts from its signature, so that nobody
/// writes it twice.</summary>
public static class SignedWork
{
    private static readonly (string Code, WorkKind Kind)[] s_kinds =
    [
        (RouteSteps.Weld, WorkKind.ButtWelded),
        (RouteSteps.Temper, WorkKind.Tempered),
        // Whether the press was needed the signature does not say; a test after truing is asked for either way.
        (RouteSteps.TrueButt, WorkKind.Pressed),
        (RouteSteps.TrueSleeved, WorkKind.Pressed),
        (RouteSteps.Sleeve, WorkKind.SleeveWelded),
        (RouteSteps.FirstRun, WorkKind.FirstRun),
    ];

    /// <summary>The work, to be given to <see cref="JobResult.CrackTestWith"/>. A kind that is written down is left to what was
    /// written.</summary>
    /// <param name="document">The job and its sign-offs.</param>
    /// <exception cref="ArgumentNullException"><paramref name="document"/> is null.</exception>
    public static IReadOnlyList<WorkDone> Of(JobDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return
        [
            .. s_kinds
                .Where(k => !IsNoted(document, k.Code, k.Kind))
                .Select(k => (k.Kind, Signed: document.Records.Standing(k.Code)))
                .Where(k => k.Signed is not null)
                .Select(k => new WorkDone
                {
                    Id = k.Signed!.Id,
                    Kind = k.Kind,
                    At = k.Signed.At,
                }),
        ];
    }

    /// <summary>When work of a kind was last done, by what was written down, else by what was signed for.</summary>
    internal static DateTimeOffset? LastOf(JobDocument document, WorkKind kind) =>
        Noted(document, kind)
        ?? Of(document).Where(w => w.Kind == kind).Select(w => (DateTimeOffset?)w.At).Max();

    /// <summary>Whether what an operation was signed for is written down. Two truings are of one kind: what was pressed before
    /// the sleeve went on says nothing of the truing after it.</summary>
    private static bool IsNoted(JobDocument document, string code, WorkKind kind)
    {
        var sleeved =
            Noted(document, WorkKind.SleeveWelded)
            ?? document.Records.Standing(RouteSteps.Sleeve)?.At;
        return All(document, kind)
            .Any(at =>
                code switch
                {
                    RouteSteps.TrueButt => sleeved is null || at <= sleeved,
                    RouteSteps.TrueSleeved => at > sleeved,
                    _ => true,
                }
            );
    }

    private static IEnumerable<DateTimeOffset> All(JobDocument document, WorkKind kind) =>
        Entries
            .Standing(document.Job.CrackTest?.Work ?? [])
            .Where(w => w.Kind == kind)
            .Select(w => w.At);

    private static DateTimeOffset? Noted(JobDocument document, WorkKind kind) =>
        All(document, kind).Select(at => (DateTimeOffset?)at).Max();
}
