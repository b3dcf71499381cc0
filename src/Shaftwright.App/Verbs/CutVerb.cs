using Shaftwright.Drawings;
using Shaftwright.Findings;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary><c>cut</c>: where two donors are cut, and each rule at that place.</summary>
internal static class CutVerb
{
    public static StageVerb Verb { get; } =
        new()
        {
            Name = "cut",
            Description = "Where two donor shafts are cut and joined.",
            Lacks = r => r.Cut is null ? "it holds no donors (\"donors\")." : null,
            Answer = StageAnswers.Cut,
            NoAnswer = "No cut yet.",
            Show = Show,
            Findings = FindingsOf,
            Write = (r, json, writer) => json.Write(writer, "result", r.Cut),
        };

    /// <summary>Findings of the cut and of what it is worked out from. A length given for the cut itself makes the readings at
    /// the car none of its business.</summary>
    internal static IEnumerable<Finding> FindingsOf(JobResult r) =>
        [
            .. r.Job.Cut?.OverallLength is null ? LengthVerb.Verb.Findings(r) : [],
            .. r.Donors?.Findings ?? [],
            .. r.Cut?.Findings ?? [],
        ];

    private static void Show(JobResult result, Display display, TextWriter text)
    {
        var cut = result.Cut!;
        if (cut.OverallPossible is { } possible)
            PlainText.Table(
                text,
                [
                    "Possible overall",
                    $"{Say.Length(possible.Low).In(display)} to {Say.Length(possible.High).In(display)}",
                ]
            );
        if (SheetTables.CutMarks(cut, display) is { } marks)
            PlainText.Table(text, [marks.Heads, .. marks.Rows]);
        if (SheetTables.CutRules(cut, display) is { } rules)
            PlainText.Table(text, [rules.Heads, .. rules.Rows]);
    }
}
