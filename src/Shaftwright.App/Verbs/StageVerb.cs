using System.Text.Json;
using Shaftwright.Findings;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary>A verb that shows one stage of a job: what it needs, how it is said, how it is written for programs.</summary>
internal sealed record StageVerb
{
    /// <summary>The word.</summary>
    public required string Name { get; init; }

    /// <summary>What it answers.</summary>
    public required string Description { get; init; }

    /// <summary>What the job lacks, in words, when the stage cannot be evaluated at all; null when it can.</summary>
    public required Func<JobResult, string?> Lacks { get; init; }

    /// <summary>The answer in a sentence; null when there is none yet.</summary>
    public required Func<JobResult, Sentence?> Answer { get; init; }

    /// <summary>What is said when there is no answer.</summary>
    public required string NoAnswer { get; init; }

    /// <summary>The numbers behind the answer, as text.</summary>
    public required Action<JobResult, Display, TextWriter> Show { get; init; }

    /// <summary>Findings of the stage and of those it builds on, in the order of the job.</summary>
    public required Func<JobResult, IEnumerable<Finding>> Findings { get; init; }

    /// <summary>The stage's result record, as members of a JSON object.</summary>
    public required Action<JobResult, ResultJson, Utf8JsonWriter> Write { get; init; }

    /// <summary>The instant it answers for; null for now.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Evaluates a job and shows this stage of it.</summary>
    /// <returns>0 or 1.</returns>
    /// <exception cref="BadInputException">The job holds nothing for this stage.</exception>
    public int Run(JobDocument document, Display display, bool json, Streams streams)
    {
        var result = Workflow.Evaluate(document.Job, At ?? DateTimeOffset.Now);
        if (Lacks(result) is { } lacks)
            throw new BadInputException($"This job cannot be asked for its {Name}: {lacks}");
        IReadOnlyList<Finding> findings =
        [
            .. Findings(result),
            .. Disagreements.Findings(document),
        ];
        // Written whole or not at all: a failure half-way must leave standard output empty.
        var text = new StringWriter { NewLine = "\n" };
        if (json)
            text.WriteLine(ResultJson.Text(this, result, findings, display));
        else
            Say(result, findings, display, text);
        streams.Out.Write(text.ToString());
        return findings.Any(f => f.Severity == Severity.Stop) ? Exit.Stop : Exit.Fine;
    }

    private void Say(
        JobResult result,
        IReadOnlyList<Finding> findings,
        Display display,
        TextWriter text
    )
    {
        PlainText.Head(result.Job, text);
        text.WriteLine(
            PlainText.Spaced(Answer(result)?.In(display) ?? NoAnswer + " See what is said below.")
        );
        Show(result, display, text);
        PlainText.Findings(findings, display, text);
    }
}
