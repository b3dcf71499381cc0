using Shaftwright.Drawings;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary><c>weld</c>: preheat, groove, set-up, order of beads, cooling and tempering of the butt.</summary>
internal static class WeldVerb
{
    public static StageVerb Verb { get; } =
        new()
        {
            Name = "weld",
            Description = "How the two ends are set up, heated, welded and tempered.",
            Lacks = r =>
                r.Weld is null
                    ? "it holds neither a weld (\"weld\") nor donors with a cut (\"donors\")."
                    : null,
            Answer = WeldAnswers.Preheat,
            NoAnswer = "No preheat yet.",
            Show = Show,
            Findings = r => [.. r.Weld?.Findings ?? [], .. r.Beads?.Findings ?? []],
            Write = (r, json, writer) =>
            {
                json.Write(writer, "result", r.Weld);
                json.Write(writer, "beads", r.Beads);
            },
        };

    private static void Show(JobResult result, Display display, TextWriter text)
    {
        var said = new List<IReadOnlyList<string>>();
        void Line(string name, Sentence? words)
        {
            if (words is not null)
                said.Add([name, words.In(display)]);
        }
        Line("Prepare", WeldAnswers.Preparation(result));
        Line("Sample", WeldAnswers.Sample(result));
        Line("Set up", StageAnswers.Weld(result));
        Line("Tacks", WeldAnswers.Tacks(result));
        Line("Weld", WeldAnswers.Beads(result));
        Line("Cool", WeldAnswers.SlowCool(result));
        Line("Temper", WeldAnswers.Temper(result));
        Line("Sleeve", WeldAnswers.Sleeve(result));
        foreach (var seam in result.Weld?.Seams ?? [])
            Line("Seam", seam.Words);
        PlainText.Table(text, said);
        foreach (
            var table in new[]
            {
                WeldTables.Heat(result.Weld, display),
                WeldTables.Packing(result.Weld, display),
                WeldTables.Beads(result.Beads, display),
            }
        )
        {
            if (table is not null)
                PlainText.Table(text, [table.Heads, .. table.Rows]);
        }
    }
}
