using System.Globalization;
using Shaftwright.Cut;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Weld;

namespace Shaftwright.Pages.Doors;

// Welding: bead by bead, and the sleeve.
public static partial class WeldTopics
{
    private static WeldTopic Beads() =>
        new(
            "beads",
            "Bead by bead",
            "The order of the beads.",
            [
                new(
                    new(
                        "layers",
                        "What does the dial say, layer by layer?",
                        "Then the layers begin by a fixed pattern and nothing is learned."
                    ),
                    "beads",
                    (job, draft) => WeldLists.Layers(job, draft)
                ),
            ],
            r =>
                r.Beads is { } plan
                    ? new(
                        plan.Last is { Beads: > 0 }
                            ? $"Layer {plan.NextLayer}, bead {plan.Next[0].Number}: at"
                            : (Sentence)$"Layer {plan.NextLayer}: begin at",
                        $"{Say.Bearing(plan.StartsAt)}",
                        plan.Next.Count == 1
                            ? $", a quarter of the way round; then the layer is whole."
                            : (Sentence)
                                $", then {Bearings(plan.Next.Skip(1))}, each a quarter of the way round.",
                        plan.StartsAt
                    )
                    : null,
            r => (r.Weld?.Heat?.WeldFindings ?? []).Concat(r.Beads?.Findings ?? [])
        );

    private static WeldTopic Sleeve() =>
        new(
            "sleeve",
            "The sleeve's seams",
            "What stands between the sleeve and its share of the torque.",
            [
                new(
                    new("seams", "How did it go on?"),
                    "sleeve",
                    (_, _) =>
                        [
                            Seam(
                                "halves",
                                "how it went on",
                                "Put on in halves (no: slid on whole)?",
                                s => s.Halves,
                                (s, v) => s with { Halves = v }
                            ),
                            Seam(
                                "opposite",
                                "its long seams",
                                "Halves: long seams opposite each other?",
                                s => s.SeamsOpposite,
                                (s, v) => s with { SeamsOpposite = v }
                            ),
                            Seam(
                                "starts",
                                "where its seams lie",
                                "Long seams clear of the butt's starts and stops?",
                                s => s.ClearOfStarts,
                                (s, v) => s with { ClearOfStarts = v }
                            ),
                            Seam(
                                "vented",
                                "its vent",
                                "Hollow vented while it was hot?",
                                s => s.Vented,
                                (s, v) => s with { Vented = v }
                            ),
                        ]
                ),
                new(
                    new("closed", "How do the seams look?"),
                    "sleeve",
                    (_, _) =>
                        [
                            Seam(
                                "toe",
                                "its toes",
                                "No crater, undercut or stop at a toe?",
                                s => s.NoCraterAtToe,
                                (s, v) => s with { NoCraterAtToe = v }
                            ),
                            Seam(
                                "closed",
                                "its seams",
                                "Every seam welded right round and along?",
                                s => s.Closed,
                                (s, v) => s with { Closed = v }
                            ),
                            Seam(
                                "shut",
                                "its vent, closed",
                                "Vent closed last, cold and dry?",
                                s => s.VentClosed,
                                (s, v) => s with { VentClosed = v }
                            ),
                            Seam(
                                "tested",
                                "its crack test",
                                "Every seam crack-tested and clean?",
                                s => s.Tested,
                                (s, v) => s with { Tested = v }
                            ),
                        ]
                ),
            ],
            r => WeldAnswers.Sleeve(r) is { } said ? new(said, null, null) : null,
            r =>
                (r.Strength?.Findings ?? []).Where(f =>
                    f.Code.StartsWith("sleeve-", StringComparison.Ordinal)
                )
        );

    private static AskedChoice Seam(
        string key,
        string called,
        string legend,
        Func<SleeveSeams, bool?> get,
        Func<SleeveSeams, bool?, SleeveSeams> set
    ) =>
        AskedChoice.YesNo(
            key,
            called,
            legend,
            j => j.Strength?.Sleeve is { } s ? get(s) : null,
            (j, v) =>
                j with
                {
                    Strength = (j.Strength ?? new()) with
                    {
                        Sleeve = set(j.Strength?.Sleeve ?? new(), v),
                    },
                }
        );
}
