namespace Shaftwright.Drawings;

/// <summary>How drawings look on a page. Include <see cref="Css"/> once; override the variables to fit a page's own colours.</summary>
public static class DrawingStyle
{
    /// <summary>The CSS class of an ink.</summary>
    public static string ClassOf(Ink ink) =>
        ink switch
        {
            Ink.Bar => "bar",
            Ink.Gone => "gone",
            Ink.Detail => "detail",
            Ink.Seat => "seat",
            Ink.Hard => "hard",
            Ink.Heat => "heat",
            Ink.Cut => "cut",
            Ink.Weld => "weld",
            Ink.Sleeve => "sleeve",
            Ink.Allowed => "allowed",
            Ink.Limit => "limit",
            Ink.Path => "path",
            Ink.Answer => "answer",
            Ink.Reading => "reading",
            Ink.Worst => "worst",
            Ink.Tool => "tool",
            Ink.Shim => "shim",
            Ink.Measure => "measure",
            Ink.Axis => "axis",
            Ink.Strong => "strong",
            _ => "note",
        };

    /// <summary>Whether words in an ink come out bold, and so wider.</summary>
    internal static bool IsBold(Ink ink) => ink is Ink.Strong or Ink.Worst or Ink.Answer;

    /// <summary>The style sheet. Variables: <c>--drawing-ink</c>, <c>-soft</c>, <c>-steel</c>, <c>-heat</c>, <c>-accent</c>,
    /// <c>-paper</c>. Dark where the reader asks for dark, black on white in print.</summary>
    public const string Css = """
        .drawing{display:block;width:100%;height:auto;font-family:system-ui,-apple-system,"Segoe UI",Roboto,"DejaVu Sans",sans-serif;font-variant-numeric:tabular-nums;
        --i:var(--drawing-ink,#1c1f22);--s:var(--drawing-soft,#5a6066);--st:var(--drawing-steel,#dfe3e6);--h:var(--drawing-heat,#f3d9c4);--a:var(--drawing-accent,#9c3d12);--p:var(--drawing-paper,#fbfaf7)}
        @media (prefers-color-scheme:dark){.drawing{--i:var(--drawing-ink,#eceae4);--s:var(--drawing-soft,#a9afb4);--st:var(--drawing-steel,#3b4247);--h:var(--drawing-heat,#5b3a26);--a:var(--drawing-accent,#f0a070);--p:var(--drawing-paper,#1b1d1f)}}
        @media print{.drawing{--i:#000;--s:#333;--st:#eee;--h:#ddd;--a:#000;--p:#fff}}
        .drawing .line{fill:none;stroke:var(--i);stroke-width:1.5;stroke-linejoin:round;stroke-linecap:round}
        .drawing .face{fill:none;stroke:var(--i);stroke-width:1.5;stroke-linejoin:round}
        .drawing .head{fill:var(--i);stroke:none}
        .drawing .words{fill:var(--i);stroke:none}
        .drawing .face.bar{fill:var(--st)}
        .drawing .face.gone{fill:none;stroke:var(--s);stroke-dasharray:4 3}
        .drawing .line.gone{stroke:var(--s);stroke-dasharray:4 3}
        .drawing .line.detail,.drawing .face.detail{stroke-width:1}
        .drawing .face.seat{fill:var(--p)}
        .drawing .line.hard{stroke-width:3.5;stroke-linecap:butt;stroke-dasharray:3 2.5}
        .drawing .face.heat{fill:var(--h);fill-opacity:.75;stroke:none}
        .drawing .line.heat{stroke:var(--a);stroke-width:1}
        .drawing .line.cut,.drawing .line.weld,.drawing .line.worst{stroke:var(--a);stroke-width:2.5}
        .drawing .face.weld{fill:var(--a);stroke:var(--a)}
        .drawing .face.sleeve{fill:var(--p);fill-opacity:.55;stroke-width:2}
        .drawing .face.allowed{fill:var(--st);stroke:none}
        .drawing .line.limit{stroke-width:2}
        .drawing .face.limit{stroke-width:2;fill:var(--st)}
        .drawing .line.path{stroke:var(--i);stroke-width:2}
        .drawing .line.answer,.drawing .face.answer{stroke:var(--a);stroke-width:2.5}
        .drawing .head.answer,.drawing .head.worst,.drawing .head.cut,.drawing .head.weld{fill:var(--a)}
        .drawing .face.reading{fill:var(--i);stroke:var(--p);stroke-width:1}
        .drawing .face.worst{fill:var(--p);stroke:var(--a);stroke-width:3}
        .drawing .face.tool{fill:none;stroke:var(--s);stroke-width:2}
        .drawing .line.tool{stroke:var(--s);stroke-width:2}
        .drawing .face.shim{fill:var(--p);stroke:var(--a);stroke-width:1.25}
        .drawing .line.measure{stroke:var(--s);stroke-width:1}
        .drawing .line.axis{stroke:var(--s);stroke-width:1;stroke-dasharray:7 3 2 3}
        .drawing .face.axis{stroke:var(--s);stroke-width:1}
        .drawing .words.note,.drawing .words.axis{fill:var(--s)}
        .drawing .words.worst,.drawing .words.answer{paint-order:stroke;stroke:var(--p);stroke-width:3;stroke-opacity:.8}
        .drawing .words.strong,.drawing .words.worst,.drawing .words.answer{font-weight:650}
        """;
}
