using Shaftwright.Cut.Search;
using Shaftwright.Findings;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary><c>share</c>: both sides of a car, and spares, from one shelf.</summary>
internal static class ShareVerb
{
    public const string Name = "share";
    public const string Description =
        "Several shafts from one shelf: both sides of a car, and spares.";

    /// <summary>Shares the shelf of the first job.</summary>
    /// <param name="documents">The jobs.</param>
    /// <param name="spares">How many spares of each.</param>
    /// <returns>The verb that shows it.</returns>
    public static StageVerb Of(IReadOnlyList<JobDocument> documents, int spares)
    {
        var plan = Workflow.Share([.. documents.Select(d => d.Job)], spares);
        return new()
        {
            Name = Name,
            Description = Description,
            Lacks = _ =>
                plan is null
                    ? "the first job holds no shelf (\"shelf\"). Name a table or a job file that holds one with --from."
                    : null,
            Answer = _ => Answer(plan!),
            NoAnswer = "Nothing can be made.",
            Show = (_, display, text) => Show(plan!, documents, display, text),
            Findings = _ => plan!.Findings,
            Write = (_, json, writer) => json.Write(writer, "result", plan),
        };
    }

    private static Sentence? Answer(ShareResult plan)
    {
        if (plan.Carries is not { } carries)
            return null;
        var made = plan.Shafts.Count(s => s.Cut is not null);
        Sentence proof = plan.Proven
            ? (Sentence)$" No other choice among the cuts looked at does better."
            : $" A better choice is not ruled out.";
        return $"{made} of {plan.Shafts.Count} shafts; the weakest carries {Say.Torque(carries)} at its weld and sleeve ends at least.{proof}";
    }

    private static void Show(
        ShareResult plan,
        IReadOnlyList<JobDocument> documents,
        Display display,
        TextWriter text
    )
    {
        string Cut(DonorPick? pick, double? at) =>
            pick is null
                ? "nothing left"
                : $"{pick.Called}, {Say.Length(at!.Value).In(display)} from its {(pick.Far ? "far" : "walked")} end";
        PlainText.Table(
            text,
            [
                ["Shaft", "Inner end", "Outer end", "Differ by", "Carries"],
                .. plan.Shafts.Select(s =>
                    (IReadOnlyList<string>)
                        [
                            documents[s.Job].Job.Name + (s.Spare > 0 ? $", spare {s.Spare}" : ""),
                            Cut(s.Inner, s.Cut?.InnerAt),
                            Cut(s.Outer, s.Cut?.OuterAt),
                            s.Cut is { } a ? Say.Fine(a.Step).In(display) : "",
                            s.Cut is { } b ? Say.Torque(b.Carries).In(display) : "",
                        ]
                ),
            ]
        );
    }
}
