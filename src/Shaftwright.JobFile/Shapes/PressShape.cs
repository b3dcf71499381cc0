using Shaftwright.Donors;
using Shaftwright.Truing.Pressing;

namespace Shaftwright.JobFile.Shapes;

/// <summary>The press and its strokes, member by member.</summary>
internal static class PressShape
{
    private static readonly ObjectShape<PressStroke> s_stroke = new ObjectShape<PressStroke>(
        "pressStroke",
        "one stroke of the press, with what the dial said after it; a record, corrected by a later one",
        () => new()
    )
        .Entry(
            s => s,
            (s, id) => s with { Id = id },
            (s, id) => s with { Corrects = id },
            (s, v) => s with { Withdrawn = v }
        )
        .Value(
            "at",
            "when it was made; without it no crack test can answer for it",
            new MomentShape(),
            s => s.At ?? default,
            (s, v) => s with { At = v },
            v => v != default
        )
        .Choice("moment", "when in the making", s => s.Moment, (s, v) => s with { Moment = v })
        .Measure(PressFields.RamAt, s => s.RamAt, (s, v) => s with { RamAt = v })
        .Measure(
            PressFields.FirstBlockAt,
            s => s.FirstBlockAt,
            (s, v) => s with { FirstBlockAt = v }
        )
        .Measure(
            PressFields.SecondBlockAt,
            s => s.SecondBlockAt,
            (s, v) => s with { SecondBlockAt = v }
        )
        .Measure(PressFields.Up, s => s.Up, (s, v) => s with { Up = v })
        .Measure(PressFields.Depth, s => s.Depth, (s, v) => s with { Depth = v })
        .Measure(PressFields.Load, s => s.Load, (s, v) => s with { Load = v })
        .Measure(
            PressFields.RunOutBefore,
            s => s.RunOutBefore,
            (s, v) => s with { RunOutBefore = v }
        )
        .Measure(PressFields.HighBefore, s => s.HighBefore, (s, v) => s with { HighBefore = v })
        .Measure(PressFields.RunOutAfter, s => s.RunOutAfter, (s, v) => s with { RunOutAfter = v })
        .Measure(PressFields.HighAfter, s => s.HighAfter, (s, v) => s with { HighAfter = v })
        .Text(
            "turn",
            "id of the newest turn under the dial when it was entered",
            64,
            s => s.Turn,
            (s, v) => s with { Turn = v }
        )
        .Text(
            "dial",
            "id of the turn that says where the dial stood; left out: the same turn",
            64,
            s => s.Dial,
            (s, v) => s with { Dial = v }
        )
        .Flag(
            "crackSign",
            "true when a crack, a click or flaking was seen or heard",
            s => s.CrackSign,
            (s, v) => s with { CrackSign = v }
        );

    /// <summary>The press.</summary>
    public static ObjectShape<PressInput> Stage { get; } =
        new ObjectShape<PressInput>(
            "press",
            "press, steel and weld as far as known, and every stroke",
            () => new()
        )
            .YesNo(
                "tempered",
                "welds tempered and cold; left out is not known, which counts as no",
                p => p.Tempered,
                (p, v) => p with { Tempered = v }
            )
            .YesNo(
                "fileSkates",
                "a file skates where the ram would stand",
                p => p.FileSkates,
                (p, v) => p with { FileSkates = v }
            )
            .Measure(PressFields.BendAt, p => p.BendAt, (p, v) => p with { BendAt = v })
            .Measure(PressFields.Diameter, p => p.Diameter, (p, v) => p with { Diameter = v })
            .Measure(PressFields.Length, p => p.Length, (p, v) => p with { Length = v })
            .Choice(
                "steel",
                "the steel, when no donor says",
                p => p.Steel,
                (p, v) => p with { Steel = v },
                SteelClass.Unknown
            )
            .Measure(PressFields.Yield, p => p.Yield, (p, v) => p with { Yield = v })
            .Measure(
                PressFields.ShortestSpan,
                p => p.ShortestSpan,
                (p, v) => p with { ShortestSpan = v }
            )
            .Measure(
                PressFields.LongestSpan,
                p => p.LongestSpan,
                (p, v) => p with { LongestSpan = v }
            )
            .Measure(PressFields.MostLoad, p => p.MostLoad, (p, v) => p with { MostLoad = v })
            .List(
                "strokes",
                "every stroke, oldest first",
                s_stroke,
                500,
                p => p.Strokes,
                (p, v) => p with { Strokes = v }
            );
}
