using Shaftwright.Drawings;
using Shaftwright.JobFile;

namespace Shaftwright.App.Verbs;

/// <summary><c>truing</c>: run-out at each station, what bends the shaft, and where it is high.</summary>
internal static class TruingVerb
{
    public static StageVerb Verb { get; } =
        new()
        {
            Name = "truing",
            Description = "How far the shaft runs out, what bends it, and where it is high.",
            Lacks = r =>
                r.Job.Truing is not { Turns.Count: > 0 }
                    ? "it holds no turns under the dial (\"truing.turns\")."
                    : null,
            Answer = StageAnswers.Truing,
            NoAnswer = "No run-out yet.",
            Show = (r, display, text) =>
            {
                foreach (
                    var table in new[]
                    {
                        SheetTables.Turns(r.Truing, display),
                        SheetTables.Shapes(r.Truing, display),
                    }
                )
                    if (table is not null)
                        PlainText.Table(text, [table.Heads, .. table.Rows]);
                if (r.Press is { } press)
                    PlainText.Table(
                        text,
                        [
                            ["Press", press.Words.In(display)],
                        ]
                    );
            },
            Findings = r => [.. r.Truing?.Findings ?? [], .. r.Press?.Findings ?? []],
            Write = (r, json, writer) =>
            {
                json.Write(writer, "result", r.Truing);
                json.Write(writer, "press", r.Press);
            },
        };
}
