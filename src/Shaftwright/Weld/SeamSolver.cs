using Shaftwright.Cut;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Weld;

/// <summary>Whether a finished seam is as good as it was to be, by what was measured on it.</summary>
/// <remarks>Each reading counts with what it can be off: inside only when all of that is. The depth of the weld is the one typed,
/// else the less of the groove's and of the fusion that the strength counts; at a sleeve's end the sleeve's wall.</remarks>
internal static class SeamSolver
{
    private static readonly SeamLevel[] s_levels = [SeamLevel.B, SeamLevel.C, SeamLevel.D];

    public static IReadOnlyList<SeamResult> Solve(
        WeldInput weld,
        WeldAround around,
        PreparationNumbers? preparation
    ) =>
        [
            .. weld
                .Seams.GroupBy(s => s.Place)
                .OrderBy(g => g.Key)
                .Select(g =>
                    One(g.Last(), weld.SeamLevel, Depth(g.Last(), weld, around, preparation))
                ),
        ];

    private static double? Depth(
        SeamLook look,
        WeldInput weld,
        WeldAround around,
        PreparationNumbers? preparation
    )
    {
        if (look.Depth is { } typed)
            return Math.Max(0.1, typed.Value - Off(typed, SeamFields.Depth));
        if (look.Place != SeamPlace.Butt)
            return
                around.Cut?.Made is { SleeveOutside: { } outside }
                && Thicker(weld, around) is { } bar
                && outside > bar
                ? (outside - bar) / 2
                : null;
        if (preparation is { Diameter: var d } && around.Strength is { } known)
            return Math.Min(preparation.Depth, FusionDepths.Of(known, d / 2, d / 2).Low);
        return preparation?.Depth;
    }

    private static double? Thicker(WeldInput weld, WeldAround around) =>
        (around.Diameter(weld, ShaftEnd.Inner), around.Diameter(weld, ShaftEnd.Outer)) switch
        {
            ({ } a, { } b) => Math.Max(a, b),
            var (a, b) => a ?? b,
        };

    private static double Off(Measured<Distance> typed, Field<Distance> field) =>
        typed.PlusMinus ?? field.UsualPlusMinus;

    private static SeamResult One(SeamLook look, SeamLevel asked, double? depth)
    {
        var butt = look.Place == SeamPlace.Butt;
        var width = look.CapWidth is { } b
            ? Math.Max(0, b.Value - Off(b, SeamFields.CapWidth))
            : (double?)null;
        var items = new List<SeamItemResult>();
        var missing = new List<string>();
        void Ask(SeamItem item, Measured<Distance>? read, Field<Distance> field, bool owed = true)
        {
            if (read is null && owed)
                missing.Add(Name(item));
            else if (read is not null)
                items.Add(Judge(item, read.Value, Off(read, field), look, asked, depth, width));
        }
        Ask(SeamItem.Undercut, look.Undercut, SeamFields.Undercut);
        Ask(SeamItem.SurfacePore, look.SurfacePore, SeamFields.SurfacePore);
        Ask(butt ? SeamItem.ButtCap : SeamItem.FilletCap, look.CapHeight, SeamFields.CapHeight);
        if (butt)
            Ask(SeamItem.Offset, look.Offset, SeamFields.Offset);
        Ask(SeamItem.InnerPore, look.InnerPore, SeamFields.InnerPore, owed: false);
        if (look.Cracked is null)
            missing.Insert(0, "whether a crack was seen");
        var cracked = look.Cracked == true;
        SeamLevel? level =
            cracked || items.Count == 0 || items.Exists(i => i.Level is null)
                ? null
                : items.Max(i => i.Level!.Value);
        var at = Place(look.Place);
        var worst = items.OrderByDescending(i => i.Verdict == SeamVerdict.Over).FirstOrDefault();
        Sentence words =
            cracked ? $"A crack at {at}: no level accepts one."
            : worst is { Verdict: SeamVerdict.Over } over
                ? $"Not level {asked.ToString()} at {at}: {over.Words}"
            : items.Count == 0 ? (Sentence)$"Nothing was measured at {at} yet."
            : items.Exists(i => i.Verdict != SeamVerdict.Inside)
                ? $"Not surely level {asked.ToString()} at {at}: {items.Find(i => i.Verdict != SeamVerdict.Inside)!.Words}"
            : missing.Count > 0
                ? $"Level {asked.ToString()} at {at} by what was measured; still open: {string.Join(", ", missing)}."
            : (Sentence)$"Level {level.ToString()} at {at}.";
        return new(
            look.Place,
            cracked,
            depth,
            level,
            items,
            missing,
            words,
            Findings(look, asked, at, cracked, items, missing, depth)
        );
    }

    private static SeamItemResult Judge(
        SeamItem item,
        double value,
        double off,
        SeamLook look,
        SeamLevel asked,
        double? depth,
        double? width
    )
    {
        // None at all needs no reading finer than the eye: where a level takes none, "none" is what it asks.
        var sure = value == 0 ? 0 : value + off;
        double? Most(SeamLevel level) =>
            SeamLimits.Most(item, level, depth, width, look.UndercutShort == true);
        var limit = Most(asked);
        SeamLevel? level = s_levels
            .Where(l => Most(l) is { } most && sure <= most + 1e-9)
            .Select(l => (SeamLevel?)l)
            .FirstOrDefault();
        var verdict =
            value == 0 && level is not null ? SeamVerdict.Inside
            : limit is not { } m ? SeamVerdict.NotKnown
            : sure <= m + 1e-9 ? SeamVerdict.Inside
            : value - off <= m
                ? m == 0 ? SeamVerdict.Over
                    : SeamVerdict.TooClose
            : SeamVerdict.Over;
        // Nothing at all is level B whatever the limit depends on.
        if (value == 0)
            (level, verdict) = (SeamLevel.B, SeamVerdict.Inside);
        Sentence words = verdict switch
        {
            SeamVerdict.NotKnown =>
                $"{Name(item)} {Say.Length(value)}; its limit needs {(item is SeamItem.ButtCap or SeamItem.FilletCap ? "the width of the cap" : "the depth of the weld")}.",
            SeamVerdict.Inside when value == 0 => $"no {Name(item)}.",
            SeamVerdict.Inside =>
                $"{Name(item)} {Say.Length(value)} of {Say.Length(limit!.Value)} allowed.",
            SeamVerdict.TooClose =>
                $"{Name(item)} {Say.Length(value)}, too close to the {Say.Length(limit!.Value)} allowed to call.",
            _ when limit == 0 => $"{Name(item)} {Say.Length(value)}, and none is allowed.",
            _ => (Sentence)
                $"{Name(item)} {Say.Length(value)}, over the {Say.Length(limit!.Value)} allowed.",
        };
        return new(item, value, off, limit, level, verdict, words);
    }

    private static List<Finding> Findings(
        SeamLook look,
        SeamLevel asked,
        string at,
        bool cracked,
        List<SeamItemResult> items,
        List<string> missing,
        double? depth
    )
    {
        var findings = new List<Finding>();
        void Add(Severity severity, string code, Sentence text, Sentence action) =>
            findings.Add(new(severity, Stage.Weld, code, text, action, SeamLimits.Source));
        if (cracked)
            Add(
                Severity.Stop,
                "seam-crack",
                $"A crack was seen at {at}. No level accepts one (no. 100 and 104).",
                $"Scrap the shaft, and cut it through so that nobody fits it."
            );
        foreach (var i in items)
        {
            switch (i.Verdict)
            {
                case SeamVerdict.Over:
                    Add(
                        Severity.Stop,
                        "seam-over",
                        $"At {at}, level {asked.ToString()}: {i.Words}{(i.Level is { } l ? $" Level {l.ToString()} would take it." : "")}",
                        ToDo(i.Item)
                    );
                    break;
                case SeamVerdict.TooClose:
                    Add(
                        Severity.Caution,
                        "seam-too-close",
                        $"At {at}, level {asked.ToString()}: {i.Words}",
                        $"Measure it finer, or mend it as if it were over."
                    );
                    break;
                case SeamVerdict.NotKnown:
                    Add(
                        Severity.Caution,
                        "seam-limit-unknown",
                        $"At {at}: {i.Words}",
                        $"Measure that too."
                    );
                    break;
                default:
                    break;
            }
        }
        if (missing.Count > 0)
            Add(
                Severity.Note,
                "seam-not-measured",
                $"Not noted at {at}: {string.Join(", ", missing)}.",
                $"Look all round with a glass and a weld gauge, cold and brushed, before the crack test. Where there is none, note 0."
            );
        if (depth is { } d)
            Add(
                Severity.Note,
                "seam-depth-taken",
                $"Limits at {at} are taken for a weld {Say.Length(d)} deep{(look.Depth is null ? ", as nobody typed how deep it is" : "")}. They are made for plate and pipe.",
                $"Take them as the least that is asked: a shaft turns under load, and any notch at a toe shortens its life."
            );
        return findings;
    }

    private static Sentence ToDo(SeamItem item) =>
        item switch
        {
            SeamItem.Undercut =>
                $"Blend it out lengthwise with a fine wheel if it stays inside the bar's diameter; otherwise preheat, fill it, cool slowly, temper, and look and test again.",
            SeamItem.SurfacePore =>
                $"Grind it out to sound metal, preheat and fill it, cool slowly, temper, and test again.",
            SeamItem.InnerPore =>
                $"Do not weld the shaft like this sample: clean and dry wire and ends, gas and draught checked, then another sample.",
            SeamItem.ButtCap or SeamItem.FilletCap =>
                $"Dress the cap down with strokes along the shaft, with a smooth run into the bar, and test again.",
            _ => (Sentence)
                $"No press takes a parallel offset out. Cut the weld out, set up in the vee again, and weld it anew.",
        };

    private static string Name(SeamItem item) =>
        item switch
        {
            SeamItem.Undercut => "undercut",
            SeamItem.SurfacePore => "pore in the surface",
            SeamItem.InnerPore => "pore in the cut",
            SeamItem.Offset => "offset of the surfaces",
            _ => "height of the cap",
        };

    private static string Place(SeamPlace place) =>
        place switch
        {
            SeamPlace.Butt => "the butt",
            SeamPlace.SleeveInnerEnd => "the sleeve's inner end",
            _ => "the sleeve's outer end",
        };
}
