using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary>Text for people at a terminal.</summary>
internal static class PlainText
{
    /// <summary>The job's name and side.</summary>
    public static void Head(Job job, TextWriter text)
    {
        if (job.Name.Length == 0)
            return;
        text.WriteLine(job.Name);
        text.WriteLine();
    }

    /// <summary>Rows under a blank line, in columns as wide as they need to be.</summary>
    public static void Table(TextWriter text, params IReadOnlyList<IReadOnlyList<string>> rows)
    {
        if (rows.Count == 0)
            return;
        text.WriteLine();
        var widths = new int[rows.Max(r => r.Count)];
        foreach (var row in rows)
        {
            for (var i = 0; i < row.Count; i++)
                widths[i] = Math.Max(widths[i], row[i].Length);
        }
        foreach (var row in rows)
            text.WriteLine(
                Spaced(string.Join("  ", row.Select((cell, i) => cell.PadRight(widths[i]))))
                    .TrimEnd()
            );
    }

    /// <summary>Findings, the heaviest first, each with what to do and where its limit comes from.</summary>
    public static void Findings(IReadOnlyList<Finding> findings, Display display, TextWriter text)
    {
        foreach (var f in findings.OrderByDescending(f => f.Severity))
        {
            text.WriteLine();
            text.WriteLine(Spaced($"{WordOf(f.Severity)}: {f.Text.In(display)}"));
            text.WriteLine(Spaced($"  Do: {f.Action.In(display)}"));
            text.WriteLine(Spaced($"  Source: {f.Source}"));
        }
    }

    /// <summary>Ordinary spaces: a terminal does not need the ones that keep a unit with its number, and a search trips on them.</summary>
    public static string Spaced(string words) => words.Replace('\u00a0', ' ');

    /// <summary>The word of a severity.</summary>
    public static string WordOf(Severity severity) =>
        severity switch
        {
            Severity.Stop => "STOP",
            Severity.Caution => "Caution",
            _ => "Note",
        };
}
