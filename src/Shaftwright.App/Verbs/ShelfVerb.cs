using Shaftwright.Cut.Search;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.JobFile;
using Shaftwright.JobFile.ShelfTable;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary><c>shelf</c>: which two shafts of the shelf a job's shaft is made from, and why not the others.</summary>
internal static class ShelfVerb
{
    public static StageVerb Verb { get; } =
        new()
        {
            Name = "shelf",
            Description =
                "Which two shafts of the shelf to cut, and where; and why not the others.",
            Lacks = r =>
                r.Shelf is null
                    ? "it holds no shelf (\"shelf\"). Name a table or a job file that holds one with --from."
                    : null,
            Answer = Answer,
            NoAnswer = "No two shafts of the shelf will do.",
            Show = Show,
            Findings = r =>
                [
                    .. r.Job.Cut?.OverallLength is null ? LengthVerb.Verb.Findings(r) : [],
                    .. r.Shelf?.Findings ?? [],
                ],
            Write = (r, json, writer) => json.Write(writer, "result", r.Shelf),
        };

    /// <summary>The job with the shelf of another file in it.</summary>
    /// <param name="document">The job.</param>
    /// <param name="path">A table of shafts, or a job file that holds a shelf.</param>
    /// <param name="streams">Where refusals are said.</param>
    /// <exception cref="BadInputException">The file cannot be read, or nothing of it was taken.</exception>
    public static JobDocument With(JobDocument document, string path, Streams streams)
    {
        ShelfInput? shelf;
        if (path.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
        {
            shelf =
                JobSource.Read(path, streams).Job.Shelf
                ?? throw new BadInputException($"{path} holds no shelf (\"shelf\").");
        }
        else
        {
            var reading = ShelfCsv.Read(JobSource.Open(path));
            if (reading.Refusals.Count > 0)
                throw new BadInputException(
                    $"{path} was not taken:\n"
                        + string.Join('\n', reading.Refusals.Select(r => "  " + r))
                );
            shelf = reading.Shelf;
        }
        return document with { Job = document.Job with { Shelf = shelf } };
    }

    private static Sentence? Answer(JobResult result)
    {
        if (result.Shelf is not { Choices: [var first, ..] choices })
            return null;
        Sentence more =
            choices.Count == 1 ? $"" : (Sentence)$" {choices.Count - 1} more to weigh against it.";
        return $"{Cuts(first)}{more}";
    }

    private static Sentence Cuts(ShelfChoice c) =>
        $"Cut {c.Inner.Called} at {Say.Length(c.InnerAt)} from its {End(c.Inner)} end for the inner end, and {c.Outer.Called} at {Say.Length(c.OuterAt)} from its {End(c.Outer)} end for the outer.";

    private static string End(DonorPick pick) => pick.Far ? "far" : "walked";

    private static void Show(JobResult result, Display display, TextWriter text)
    {
        var shelf = result.Shelf!;
        foreach (var c in shelf.Choices)
        {
            text.WriteLine();
            text.WriteLine(PlainText.Spaced(Cuts(c).In(display)));
            text.WriteLine(PlainText.Spaced("  Why: " + c.Why.In(display)));
            if (c.GivesUp is { } gives)
                text.WriteLine(PlainText.Spaced("  " + gives.In(display)));
            // The ranges come from the strength stage, asked with this choice taken.
            if (
                Workflow.Evaluate(result.Job.Taking(c), DateTimeOffset.Now).Strength?.Weakest is
                { } weakest
            )
                text.WriteLine(
                    PlainText.Spaced(
                        $"  Weakest: {weakest.Words}, yields at {Say.Torque(weakest.YieldTorque.Low).In(display)} to {Say.Torque(weakest.YieldTorque.High).In(display)}."
                    )
                );
            if (c.Inner.Place.Length + c.Outer.Place.Length > 0)
                text.WriteLine(
                    $"  Lies: {c.Inner.Called}: {Known(c.Inner.Place)}; {c.Outer.Called}: {Known(c.Outer.Place)}."
                );
            foreach (var mind in c.Mind)
                text.WriteLine(PlainText.Spaced("  Mind: " + mind.In(display)));
        }
        PlainText.Table(
            text,
            [
                .. shelf.Rejected.Select(r =>
                    (IReadOnlyList<string>)
                        [r.Fits ? "not chosen" : "out", r.Called, r.Why.In(display)]
                ),
            ]
        );
    }

    private static string Known(string place) => place.Length > 0 ? place : "place not noted";
}
