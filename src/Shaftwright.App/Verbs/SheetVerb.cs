using Shaftwright.Drawings;
using Shaftwright.Findings;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary><c>sheet</c>: the route card to print.</summary>
internal static class SheetVerb
{
    public static int Run(JobDocument document, Display display, string? file, Streams streams)
    {
        var result = Workflow.Evaluate(document.Job, DateTimeOffset.Now);
        var html = Sheet.Html(document, result, display);
        if (file is null)
            streams.Out.Write(html);
        else
            JobSource.Write(file, html, overwrite: true);
        return result.Findings.Any(f => f.Severity == Severity.Stop) ? Exit.Stop : Exit.Fine;
    }
}
