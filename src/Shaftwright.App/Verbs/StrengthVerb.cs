using Shaftwright.Drawings;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary><c>strength</c>: what torque reaches the shaft, and what each section of it carries.</summary>
internal static class StrengthVerb
{
    public static StageVerb Verb { get; } =
        new()
        {
            Name = "strength",
            Description = "What torque the shaft sees, and where it yields first.",
            Lacks = r =>
                r.Donors is null ? "it holds no donors (\"donors\")."
                : r.Strength is null ? NoShaft(r)
                : null,
            Answer = StageAnswers.Strength,
            NoAnswer = "No weakest place yet.",
            Show = Show,
            Findings = r =>
                [.. r.Car?.Findings ?? [], .. CutVerb.FindingsOf(r), .. r.Strength?.Findings ?? []],
            Write = (r, json, writer) =>
            {
                json.Write(writer, "car", r.Car);
                json.Write(writer, "result", r.Strength);
            },
        };

    private static string NoShaft(JobResult r) =>
        string.Join(
            '\n',
            r.Cut!.Findings.Select(f => "  " + PlainText.Spaced($"{f.Text} {f.Action}"))
                .Prepend("there is no cut to judge.")
        );

    private static void Show(JobResult result, Display display, TextWriter text)
    {
        if (StageAnswers.Car(result) is { } torque)
        {
            text.WriteLine();
            text.WriteLine(PlainText.Spaced(torque.In(display)));
        }
        if (SheetTables.Margins(result.Strength, display) is { } margins)
            PlainText.Table(text, [margins.Heads, .. margins.Rows]);
    }
}
