using Shaftwright.Measures;
using Shaftwright.Weld;

namespace Shaftwright.Pages.Doors;

// Looking at the finished seams, before they are tested for cracks.
public static partial class WeldTopics
{
    private static readonly Option[] s_levels =
    [
        new("", "B", "the strictest, and what is asked unless you say otherwise"),
        new(nameof(SeamLevel.C), "C"),
        new(nameof(SeamLevel.D), "D"),
    ];

    private static WeldTopic Look() =>
        new(
            "seam",
            "Look at the seam",
            "What the seam is worth to the eye and the gauge.",
            [
                new(
                    new("asked", "Which level is asked, and how deep is the weld?"),
                    "etched",
                    (_, _) =>
                        [
                            new AskedChoice(
                                "level",
                                "the level",
                                "Level of ISO 5817",
                                s_levels,
                                j =>
                                    j.Weld is { SeamLevel: not SeamLevel.B and var l }
                                        ? $"{l}"
                                        : "",
                                (j, t) =>
                                    Welded(
                                        j,
                                        w =>
                                            w with
                                            {
                                                SeamLevel = Enum.TryParse<SeamLevel>(t, out var l)
                                                    ? l
                                                    : SeamLevel.B,
                                            }
                                    )
                            ),
                            Gauged(
                                "butt/depth",
                                "the depth of the weld",
                                "How deep it is fused, by the sample",
                                SeamPlace.Butt,
                                SeamFields.Depth,
                                s => s.Depth,
                                (s, v) => s with { Depth = v }
                            ),
                        ]
                ),
                new(
                    new(
                        "seen",
                        "All round the seam with a glass: what is there?",
                        "Then the seam is not judged by it."
                    ),
                    "look",
                    (_, _) => Seen("butt", SeamPlace.Butt)
                ),
                new(
                    new(
                        "gauged",
                        "How do cap and surfaces stand?",
                        "Then the seam is not judged by it."
                    ),
                    "look",
                    (_, _) =>
                        [
                            .. CapOf("butt", SeamPlace.Butt),
                            Gauged(
                                "butt/offset",
                                "the offset",
                                "One surface beside the other, half the difference of diameters taken off",
                                SeamPlace.Butt,
                                SeamFields.Offset,
                                s => s.Offset,
                                (s, v) => s with { Offset = v }
                            ),
                            Gauged(
                                "butt/inner",
                                "the pore in the cut",
                                "Largest pore in the cut of the sample; 0 for none",
                                SeamPlace.Butt,
                                SeamFields.InnerPore,
                                s => s.InnerPore,
                                (s, v) => s with { InnerPore = v }
                            ),
                        ]
                ),
            ],
            r => Looked(r, SeamPlace.Butt),
            r => FoundAt(r, SeamPlace.Butt)
        );

    private static WeldTopic LookAtEnds() =>
        new(
            "seam-ends",
            "Look at the sleeve's seams",
            "What the seams are worth to the eye and the gauge.",
            [
                .. new[]
                {
                    ("inner", "inner", SeamPlace.SleeveInnerEnd),
                    ("outer", "outer", SeamPlace.SleeveOuterEnd),
                }.Select(e => new WeldScreen(
                    new(
                        e.Item1,
                        $"All round the sleeve's {e.Item2} end: what is there?",
                        "Then that seam is not judged."
                    ),
                    "look",
                    (_, _) => [.. Seen(e.Item1, e.Item3), .. CapOf(e.Item1, e.Item3)]
                )),
            ],
            r => Looked(r, SeamPlace.SleeveInnerEnd, SeamPlace.SleeveOuterEnd),
            r => FoundAt(r, SeamPlace.SleeveInnerEnd, SeamPlace.SleeveOuterEnd)
        );

    private static Asked[] Seen(string of, SeamPlace place) =>
        [
            AskedChoice.YesNo(
                of + "/crack",
                "a crack in it",
                "Any crack, also in a crater?",
                j => LookOf(j, place)?.Cracked,
                (j, v) => SetLook(j, place, s => s with { Cracked = v })
            ),
            Gauged(
                of + "/undercut",
                "the undercut",
                "Deepest undercut; 0 for none",
                place,
                SeamFields.Undercut,
                s => s.Undercut,
                (s, v) => s with { Undercut = v }
            ),
            AskedChoice.YesNo(
                of + "/short",
                "how long the undercut is",
                "Undercut only here and there: none over 25 mm, a quarter of the way round in all at most?",
                j => LookOf(j, place)?.UndercutShort,
                (j, v) => SetLook(j, place, s => s with { UndercutShort = v })
            ),
            Gauged(
                of + "/pore",
                "the pore",
                "Largest pore in the surface; 0 for none",
                place,
                SeamFields.SurfacePore,
                s => s.SurfacePore,
                (s, v) => s with { SurfacePore = v }
            ),
        ];

    private static Asked[] CapOf(string of, SeamPlace place) =>
        [
            Gauged(
                of + "/cap",
                "the height of the cap",
                "How far the cap stands over the metal",
                place,
                SeamFields.CapHeight,
                s => s.CapHeight,
                (s, v) => s with { CapHeight = v }
            ),
            Gauged(
                of + "/wide",
                "the width of the cap",
                "How wide the cap is",
                place,
                SeamFields.CapWidth,
                s => s.CapWidth,
                (s, v) => s with { CapWidth = v }
            ),
        ];

    private static AskedMeasure<Distance> Gauged(
        string key,
        string called,
        string label,
        SeamPlace place,
        Field<Distance> field,
        Func<SeamLook, Measured<Distance>?> get,
        Func<SeamLook, Measured<Distance>?, SeamLook> set
    ) =>
        new(
            key,
            called,
            label,
            field,
            j => LookOf(j, place) is { } look ? get(look) : null,
            (j, v) => SetLook(j, place, s => set(s, v))
        );

    private static SeamLook? LookOf(Job j, SeamPlace place) =>
        j.Weld?.Seams.LastOrDefault(s => s.Place == place);

    private static Job SetLook(Job j, SeamPlace place, Func<SeamLook, SeamLook> f) =>
        Welded(
            j,
            w =>
            {
                var old = LookOf(j, place);
                var look = f(old ?? new() { Place = place });
                return w with
                {
                    Seams = old is null
                        ? [.. w.Seams, look]
                        : [.. w.Seams.Select(s => ReferenceEquals(s, old) ? look : s)],
                };
            }
        );

    private static Answer? Looked(JobResult r, params SeamPlace[] places)
    {
        List<SeamResult> seams = [.. (r.Weld?.Seams ?? []).Where(s => places.Contains(s.Place))];
        // The worst is what has to be said; of two alike the first.
        return
            seams
                .OrderByDescending(s => s.Cracked)
                .ThenByDescending(s => s.Items.Any(i => i.Verdict == SeamVerdict.Over))
                .ThenByDescending(s => s.Missing.Count)
                .FirstOrDefault()
                is { } worst
            ? new(worst.Words, null, null)
            : null;
    }

    private static IEnumerable<Findings.Finding> FoundAt(JobResult r, params SeamPlace[] places) =>
        (r.Weld?.Seams ?? []).Where(s => places.Contains(s.Place)).SelectMany(s => s.Findings);
}
