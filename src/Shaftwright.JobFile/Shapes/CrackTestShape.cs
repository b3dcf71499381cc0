using Shaftwright.CrackTest;

namespace Shaftwright.JobFile.Shapes;

/// <summary>The crack tests of a job file, member by member.</summary>
internal static class CrackTestShape
{
    private static readonly ObjectShape<WorkDone> s_work = new ObjectShape<WorkDone>(
        "workDone",
        "work done on the shaft, after which something must be tested",
        () => new()
    )
        .Entry(
            w => w,
            (w, id) => w with { Id = id },
            (w, id) => w with { Corrects = id },
            (w, v) => w with { Withdrawn = v }
        )
        .Word("kind", "what work", w => w.Kind, (w, v) => w with { Kind = v })
        .Moment("at", "when it ended", w => w.At, (w, v) => w with { At = v });

    private static readonly ObjectShape<TestNote> s_note = new ObjectShape<TestNote>(
        "testNote",
        "what was noted about a test; of each thing the last note that says it counts",
        () => new()
    )
        .Entry(
            n => n,
            (n, id) => n with { Id = id },
            (n, id) => n with { Corrects = id },
            (n, v) => n with { Withdrawn = v }
        )
        .List(
            "places",
            "places that were looked at, all round",
            new ChoiceShape<Place>(),
            12,
            n => n.Places,
            (n, v) => n with { Places = v }
        )
        .Measure(
            CrackTestFields.MakersDwell,
            n => n.MakersDwell,
            (n, v) => n with { MakersDwell = v }
        )
        .Measure(
            CrackTestFields.MakersDevelopment,
            n => n.MakersDevelopment,
            (n, v) => n with { MakersDevelopment = v }
        )
        .Measure(
            CrackTestFields.PartTemperature,
            n => n.PartTemperature,
            (n, v) => n with { PartTemperature = v }
        )
        .Measure(CrackTestFields.Light, n => n.Light, (n, v) => n with { Light = v })
        .Measure(
            CrackTestFields.UltraViolet,
            n => n.UltraViolet,
            (n, v) => n with { UltraViolet = v }
        )
        .Measure(
            CrackTestFields.BetweenDirections,
            n => n.BetweenDirections,
            (n, v) => n with { BetweenDirections = v }
        );

    private static readonly ObjectShape<StepDone> s_step = new ObjectShape<StepDone>(
        "stepDone",
        "one step of a test that was done",
        () => new()
    )
        .Entry(
            s => s,
            (s, id) => s with { Id = id },
            (s, id) => s with { Corrects = id },
            (s, v) => s with { Withdrawn = v }
        )
        .Word("step", "which step", s => s.Step, (s, v) => s with { Step = v })
        .Moment("at", "when it was done or begun", s => s.At, (s, v) => s with { At = v });

    private static readonly ObjectShape<Indication> s_indication = new ObjectShape<Indication>(
        "indication",
        "one mark that a test showed, in the size of the mark and not of the flaw",
        () => new()
    )
        .Entry(
            m => m,
            (m, id) => m with { Id = id },
            (m, id) => m with { Corrects = id },
            (m, v) => m with { Withdrawn = v }
        )
        .Word("place", "where it is", m => m.Place, (m, v) => m with { Place = v })
        .Measure(CrackTestFields.Position, m => m.Position, (m, v) => m with { Position = v })
        .Measure(CrackTestFields.MarkAngle, m => m.Angle, (m, v) => m with { Angle = v })
        .Measure(CrackTestFields.Length, m => m.Length, (m, v) => m with { Length = v })
        .Measure(CrackTestFields.Width, m => m.Width, (m, v) => m with { Width = v })
        .Measure(CrackTestFields.Direction, m => m.Direction, (m, v) => m with { Direction = v })
        .YesNo(
            "crack",
            "whether it was recognised as a crack",
            m => m.Crack,
            (m, v) => m with { Crack = v }
        );

    private static readonly ObjectShape<PhotoTaken> s_photo = new ObjectShape<PhotoTaken>(
        "photoTaken",
        "a photo of a test; the picture lies beside the job, under its hash",
        () => new()
    )
        .Entry(
            p => p,
            (p, id) => p with { Id = id },
            (p, id) => p with { Corrects = id },
            (p, v) => p with { Withdrawn = v }
        )
        .Value(
            "sha256",
            "SHA-256 of the picture's bytes, 64 small hexadecimal digits",
            new TextShape(64, 64),
            p => p.Sha256,
            (p, v) => p with { Sha256 = v },
            required: true
        )
        .Moment("at", "when it was taken or chosen", p => p.At, (p, v) => p with { At = v });

    private static readonly ObjectShape<TestRun> s_run = new ObjectShape<TestRun>(
        "crackTestRun",
        "one crack test; all of it grows and nothing in it changes",
        () => new()
    )
        .Entry(
            t => t,
            (t, id) => t with { Id = id },
            (t, id) => t with { Corrects = id },
            (t, v) => t with { Withdrawn = v }
        )
        .Word(
            "method",
            "how cracks were looked for",
            t => t.Method,
            (t, v) => t with { Method = v }
        )
        .List("notes", "what was noted", s_note, 100, t => t.Notes, (t, v) => t with { Notes = v })
        .List("steps", "steps done", s_step, 200, t => t.Steps, (t, v) => t with { Steps = v })
        .List(
            "indications",
            "marks seen",
            s_indication,
            100,
            t => t.Indications,
            (t, v) => t with { Indications = v }
        )
        .List(
            "photos",
            "photos taken",
            s_photo,
            100,
            t => t.Photos,
            (t, v) => t with { Photos = v }
        );

    private static readonly ObjectShape<Decision> s_decision = new ObjectShape<Decision>(
        "markDecision",
        "what was done about a mark",
        () => new()
    )
        .Entry(
            d => d,
            (d, id) => d with { Id = id },
            (d, id) => d with { Corrects = id },
            (d, v) => d with { Withdrawn = v }
        )
        .Value(
            "indication",
            "id of the mark",
            new TextShape(64, 1),
            d => d.Indication,
            (d, v) => d with { Indication = v },
            required: true
        )
        .Word("what", "what was done", d => d.What, (d, v) => d with { What = v })
        .Moment("at", "when it was done", d => d.At, (d, v) => d with { At = v })
        .Text("note", "why, and by whom", 2000, d => d.Note, (d, v) => d with { Note = v });

    /// <summary>The stage.</summary>
    public static ObjectShape<CrackTestInput> Stage { get; } =
        new ObjectShape<CrackTestInput>(
            "crackTest",
            "crack tests, and the work they follow",
            () => new()
        )
            .Choice(
                "level",
                "acceptance level for round marks on plain bar; the floor stands above it",
                c => c.Level,
                (c, v) => c with { Level = v }
            )
            .YesNo(
                "austeniticFiller",
                "whether the filler was austenitic",
                c => c.AusteniticFiller,
                (c, v) => c with { AusteniticFiller = v }
            )
            .List(
                "work",
                "work done, in the order written down",
                s_work,
                500,
                c => c.Work,
                (c, v) => c with { Work = v }
            )
            .List(
                "tests",
                "the tests, in the order begun",
                s_run,
                200,
                c => c.Tests,
                (c, v) => c with { Tests = v }
            )
            .List(
                "decisions",
                "what was decided about marks, in the order written down",
                s_decision,
                500,
                c => c.Decisions,
                (c, v) => c with { Decisions = v }
            );
}
