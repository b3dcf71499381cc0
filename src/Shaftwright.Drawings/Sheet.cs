using System.Globalization;
using System.Text;
using Shaftwright.Findings;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.Drawings;

/// <summary>The route card as a document to print: HTML that needs nothing beside it.</summary>
public static class Sheet
{
    /// <summary>Writes the sheet.</summary>
    /// <param name="document">The job and its sign-offs.</param>
    /// <param name="result">The job's evaluation.</param>
    /// <param name="display">Units of the words. What was typed is printed as typed.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Html(JobDocument document, JobResult result, Display display)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(result);
        var card = RouteCard.Of(document, result);
        var job = document.Job;
        var name = job.Name.Length == 0 ? "Driveshaft without a name" : job.Name;
        var head = name + SideOf(job.Side);
        var html = new StringBuilder();
        html.Append("<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>")
            .Append(E("Route card: " + head))
            .Append(
                "</title><meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"><style>"
            )
            .Append(SheetStyle.Css(head))
            .Append(DrawingStyle.Css)
            // Paper is white whatever the reader's screen prefers.
            .Append(
                ".drawing{--drawing-ink:#000;--drawing-soft:#333;--drawing-steel:#e8e8e8;--drawing-heat:#ddd;--drawing-accent:#000;--drawing-paper:#fff}"
            )
            .Append("</style></head><body><main><h1>")
            .Append(E(name))
            .Append("</h1>");
        html.Append("<p class=\"about\">Route card of a driveshaft made from two")
            .Append(E(SideOf(job.Side)))
            .Append('.');
        if (job.About.Length > 0)
            html.Append(' ').Append(E(job.About));
        html.Append("</p><p class=\"prevails\">").Append(E(RouteCard.Prevails)).Append("</p>");
        html.Append("<p class=\"next\"><strong>Next:</strong> ")
            .Append(E(card.Next.Words.In(display)))
            .Append("</p>");
        AppendShort(html, result, display);
        html.Append("<h2>Operations</h2>");
        foreach (var operation in card.Operations)
        {
            AppendOperation(html, operation, display);
            AppendPictures(html, operation, job, result, display);
        }
        AppendBack(html, document, card, result, display);
        return html.Append("</main></body></html>\n").ToString();
    }

    private static void AppendShort(StringBuilder html, JobResult result, Display display)
    {
        var answers = new (string Name, Sentence? Answer)[]
        {
            ("Length", StageAnswers.Length(result)),
            ("Cut", StageAnswers.Cut(result)),
            ("Torque", StageAnswers.Car(result)),
            ("Strength", StageAnswers.Strength(result)),
            ("Shims", StageAnswers.Weld(result)),
        };
        html.Append("<section class=\"block\"><h2>In short</h2><dl class=\"short\">");
        foreach (var (name, answer) in answers)
            html.Append("<dt>")
                .Append(E(name))
                .Append("</dt><dd>")
                .Append(E(answer?.In(display) ?? "Not known yet."))
                .Append("</dd>");
        html.Append("</dl></section>");
    }

    private static void AppendOperation(StringBuilder html, Operation o, Display display)
    {
        html.Append("<section class=\"op\" id=\"")
            .Append(E(o.Code))
            .Append("\"><div class=\"no\">");
        html.Append(o.Number.ToString(CultureInfo.InvariantCulture))
            .Append("</div><div><h3>")
            .Append(E(o.Title))
            .Append("</h3><p class=\"what\">")
            .Append(E(o.WhatToDo))
            .Append("</p>");
        if (o.Answer is { } answer)
            html.Append("<p class=\"answer\">").Append(E(answer.In(display))).Append("</p>");
        if (o.NoNumber is { } none)
            html.Append("<p class=\"nonumber\">").Append(E(none)).Append("</p>");
        foreach (var caution in o.Cautions)
            html.Append("<p class=\"caution\"><strong>Mind:</strong> ")
                .Append(E(caution))
                .Append("</p>");
        AppendFindings(html, o.Findings.Where(f => f.Severity != Severity.Note), display);
        var notes = o.Findings.Count(f => f.Severity == Severity.Note);
        if (notes > 0)
            html.Append("<p class=\"source\">")
                .Append(notes == 1 ? "One note" : $"{notes} notes")
                .Append(" at the back.</p>");
        html.Append(
                "</div><div><div class=\"state\"><svg viewBox=\"0 0 16 16\" aria-hidden=\"true\"><path d=\""
            )
            .Append(OperationStates.PathOf(o.State))
            .Append("\"/></svg><span>")
            .Append(E(OperationStates.WordOf(o.State)))
            .Append("</span></div>");
        if (o.Because is { } because && o.State != OperationState.Stopped)
            html.Append("<p class=\"because\">").Append(E(because.In(display))).Append("</p>");
        if (o.State != OperationState.NotInThisJob)
            AppendSignature(html, o.SignedForOther ? null : o.SignOff);
        html.Append("</div></section>");
    }

    private static void AppendFindings(
        StringBuilder html,
        IEnumerable<Finding> findings,
        Display display
    )
    {
        var heaviestFirst = findings.OrderByDescending(f => f.Severity).ToList();
        if (heaviestFirst.Count == 0)
            return;
        html.Append("<ul class=\"found\">");
        foreach (var f in heaviestFirst)
            html.Append("<li><strong>")
                .Append(WordOf(f.Severity))
                .Append(":</strong> ")
                .Append(E(f.Text.In(display)))
                .Append(" <span class=\"do\">→ ")
                .Append(E(f.Action.In(display)))
                .Append("</span><span class=\"source\">Source: ")
                .Append(E(f.Source))
                .Append("</span></li>");
        html.Append("</ul>");
    }

    private static void AppendSignature(StringBuilder html, SignOff? signOff)
    {
        html.Append("<div class=\"sign\">");
        if (signOff is { } s)
        {
            html.Append("Signed ")
                .Append(E(s.By.Length == 0 ? "" : "by "))
                .Append("<strong>")
                .Append(E(s.By))
                .Append("</strong><br>")
                .Append(E(At(s.At)));
            if (s.Note.Length > 0)
                html.Append("<br>").Append(E(s.Note));
        }
        else
        {
            html.Append("<div class=\"line\">Name</div><div class=\"line\">Date</div>");
        }
        html.Append("</div>");
    }

    private static void AppendPictures(
        StringBuilder html,
        Operation o,
        Job job,
        JobResult result,
        Display display
    )
    {
        const double wide = Drawing.Page * 0.75;
        const double narrow = Drawing.Telephone;
        switch (o.Code)
        {
            case "length" when result.Length is { } length:
                Figure(html, PlungeDrawing.Lengths(length, display, narrow), "length", true);
                Figure(
                    html,
                    EnvelopeDrawing.Of(length, job.Joints, display, narrow),
                    "envelope",
                    true
                );
                break;
            case "walk-donors" when result.Donors is { } donors:
                Figure(
                    html,
                    DonorDrawing.TwoDonors(donors, result.Cut, display, wide),
                    "donors",
                    false
                );
                break;
            case "cut" when result.Cut is { } cut:
                if (cut.Made is { } made)
                    Figure(html, ShaftDrawing.Of(made, display, wide), "shaft", false);
                Rows(html, SheetTables.CutMarks(cut, display));
                Rows(html, SheetTables.CutRules(cut, display), numbers: true);
                break;
            case "strength":
                Rows(html, SheetTables.Margins(result.Strength, display), numbers: true);
                break;
            case "crack-test-butt" when result.CrackTest is { } tests:
                if (tests.Marks.Count > 0 && result.Cut?.Made is { } tested)
                    Figure(
                        html,
                        ShaftDrawing.Of(tested, display, wide, tests.Marks),
                        "marks",
                        false
                    );
                Rows(html, SheetTables.CrackTests(job, tests, display));
                break;
            case "prepare-ends" when result.Weld?.Preparation is { } groove:
                Figure(html, GrooveDrawing.Of(groove, display, narrow), "groove", true);
                break;
            case "preheat":
                Rows(html, WeldTables.Heat(result.Weld, display), numbers: true);
                break;
            case "weld":
                Rows(html, WeldTables.Beads(result.Beads, display), numbers: true);
                break;
            case "set-up" when result.Weld is { } weld:
                Figure(
                    html,
                    VeeDrawing.Of(
                        weld,
                        job.Weld?.InnerDiameter?.Value ?? result.Cut?.InnerDiameter,
                        job.Weld?.OuterDiameter?.Value ?? result.Cut?.OuterDiameter,
                        job.Weld?.VeeAngle?.Value,
                        display,
                        narrow
                    ),
                    "vee",
                    true
                );
                break;
            default:
                if (MomentOf(o.Code) is { } moment && result.TruingAt(moment) is { } truing)
                    Dials(html, moment, job.Truing!, truing, display);
                break;
        }
    }

    private static void Dials(
        StringBuilder html,
        Moment moment,
        TruingInput input,
        TruingResult truing,
        Display display
    )
    {
        var last = truing.Turns.LastOrDefault(t => t.Moment == moment && t.RunOut is not null);
        if (last is null || input.Turns.FirstOrDefault(t => t.Id == last.TurnId) is not { } turn)
            return;
        // Several stations are one shaft; one is one dial.
        var bow = truing.Shape is { Stations.Count: > 1 } shape
            ? BowDrawing.Of(shape, truing.Turns, display)
            : null;
        Figure(
            html,
            bow ?? DialDrawing.Of(last, turn, display),
            "dial-" + ((int)moment).ToString(CultureInfo.InvariantCulture),
            true
        );
    }

    private static Moment? MomentOf(string code) =>
        code switch
        {
            "tack" => Moment.Tacked,
            "true-butt" => Moment.ButtWelded,
            "true-sleeved" => Moment.Sleeved,
            "first-run" => Moment.AfterFirstRun,
            _ => null,
        };

    private static void AppendBack(
        StringBuilder html,
        JobDocument document,
        RouteCard card,
        JobResult result,
        Display display
    )
    {
        if (Assumption.Of(result) is { Count: > 0 } assumptions)
        {
            html.Append("<h2>Assumed, because it was not given</h2><ul>");
            foreach (var a in assumptions)
                html.Append("<li>")
                    .Append(E(a.Words.In(display)))
                    .Append(" <span class=\"source\">")
                    .Append(E(a.Source))
                    .Append("</span></li>");
            html.Append("</ul>");
        }
        if (card.Operations.Any(o => o.Findings.Any(f => f.Severity == Severity.Note)))
        {
            html.Append("<h2>Notes</h2>");
            foreach (var o in card.Operations)
            {
                var notes = o.Findings.Where(f => f.Severity == Severity.Note).ToList();
                if (notes.Count == 0)
                    continue;
                html.Append("<h3>")
                    .Append(o.Number.ToString(CultureInfo.InvariantCulture))
                    .Append(' ')
                    .Append(E(o.Title))
                    .Append("</h3>");
                AppendFindings(html, notes, display);
            }
        }
        html.Append("<h2>What was measured</h2>");
        Rows(html, SheetTables.Readings(document.Job));
        if (result.Donors is { } donors)
            Rows(html, DonorDrawing.TwoDonors(donors, result.Cut, display).Table);

        var sources = card
            .Operations.SelectMany(o => o.Findings)
            .Select(f => f.Source)
            .Distinct(StringComparer.Ordinal)
            .ToList();
        if (sources.Count > 0)
        {
            html.Append("<h2>Sources of the limits</h2><ul>");
            foreach (var source in sources)
                html.Append("<li>").Append(E(source)).Append("</li>");
            html.Append("</ul>");
        }
        if (document.Records.SignOffs.Count > 0)
            Rows(html, Signatures(document, card));
    }

    private static Table Signatures(JobDocument document, RouteCard card) =>
        new(
            "Signatures, oldest first",
            ["When", "Operation", "By", "Note", "Signed for"],
            [
                .. document.Records.SignOffs.Select(s =>
                    (IReadOnlyList<string>)
                        [
                            At(s.At),
                            (
                                card.Operations.FirstOrDefault(o => o.Code == s.Operation)?.Title
                                ?? s.Operation
                            ) + (s.Withdrawn ? " (withdrawn)" : ""),
                            s.By,
                            s.Note,
                            s.Said,
                        ]
                ),
            ]
        );

    private static void Figure(StringBuilder html, Drawing? drawing, string id, bool narrow)
    {
        if (drawing is null)
            return;
        html.Append(narrow ? "<figure class=\"narrow\">" : "<figure>")
            .Append(SvgWriter.Write(drawing, "drawing-" + id))
            .Append("</figure>");
    }

    private static void Rows(StringBuilder html, Table? table, bool numbers = false)
    {
        if (table is { Rows.Count: > 0 })
            html.Append(numbers ? "<div class=\"rows numbers\">" : "<div class=\"rows\">")
                .Append(Markup.Html(table))
                .Append("</div>");
    }

    private static string SideOf(Side side) =>
        side switch
        {
            Side.Left => ", left side",
            Side.Right => ", right side",
            _ => "",
        };

    private static string At(DateTimeOffset at) =>
        at.ToString("d MMM yyyy, HH:mm", CultureInfo.InvariantCulture);

    private static string WordOf(Severity severity) =>
        severity switch
        {
            Severity.Stop => "STOP",
            Severity.Caution => "Caution",
            _ => "Note",
        };

    private static string E(string words) => Markup.Escape(words);
}
