using System.Globalization;
using Shaftwright.Cut;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Weld;

namespace Shaftwright.Pages.Doors;

// Setting up: the groove, the vees, the tacks.
public static partial class WeldTopics
{
    private static WeldTopic Groove() =>
        new(
            "groove",
            "The groove",
            "Bevel, flat and gap to runs, rod and shrinkage.",
            [
                new(
                    new("shape", "How are both ends ground?"),
                    "groove",
                    (_, _) =>
                        [
                            new AskedMeasure<Distance>(
                                "flat",
                                "the flat in the middle",
                                "Flat left in the middle, across; 0 for a point",
                                PreparationFields.Flat,
                                j => j.Weld?.Preparation?.Flat,
                                (j, v) => Prepared(j, p => p with { Flat = v })
                            ),
                            new AskedMeasure<Angle>(
                                "bevel",
                                "the bevel",
                                "Bevel of each end, from its end face",
                                PreparationFields.Bevel,
                                j => j.Weld?.Preparation?.Bevel,
                                (j, v) => Prepared(j, p => p with { Bevel = v })
                            ),
                            new AskedMeasure<Distance>(
                                "gap",
                                "the gap",
                                "Gap between the ends",
                                CutFields.RootGap,
                                j => j.Cut?.RootGap,
                                (j, v) => j with { Cut = (j.Cut ?? new()) with { RootGap = v } }
                            ),
                            new AskedMeasure<Distance>(
                                "cap",
                                "the cap",
                                "Height of the cap over the bar",
                                PreparationFields.Cap,
                                j => j.Weld?.Preparation?.Cap,
                                (j, v) => Prepared(j, p => p with { Cap = v })
                            ),
                        ]
                ),
                new(
                    new(
                        "filler",
                        "Which filler?",
                        "Then no rod length, and a usual bead is taken."
                    ),
                    "rod",
                    (_, _) =>
                        [
                            new AskedChoice(
                                "kind",
                                "the filler",
                                "What is it?",
                                s_fillers,
                                j => Name(j.Weld?.Filler?.Kind, FillerKind.Unknown),
                                (j, t) => Filled(j, f => f with { Kind = Pick<FillerKind>(t) })
                            ),
                            new AskedMeasure<Distance>(
                                "rod",
                                "the rod",
                                "Diameter of the rod",
                                PreparationFields.RodDiameter,
                                j => j.Weld?.Filler?.Diameter,
                                (j, v) => Filled(j, f => f with { Diameter = v })
                            ),
                            new AskedMeasure<Ratio>(
                                "feed",
                                "the rod used",
                                "Length of rod for a length of bead",
                                PreparationFields.RodPerBead,
                                j => j.Weld?.Filler?.RodPerBead,
                                (j, v) => Filled(j, f => f with { RodPerBead = v })
                            ),
                            new AskedMeasure<Content>(
                                "cet",
                                "the filler's CET",
                                "CET of its weld metal, if the data sheet says",
                                PreparationFields.FillerCet,
                                j => j.Weld?.Filler?.Cet,
                                (j, v) => Filled(j, f => f with { Cet = v })
                            ),
                        ]
                ),
            ],
            r =>
                r.Weld?.Preparation is { } p
                    ? new(
                        $"Fill the groove in",
                        Sentence.Plain(Between(p.FewestRuns, p.MostRuns)),
                        p.SetOverall is { } set
                            ? (Sentence)
                                $"runs, and set {Say.Length(set.Low)} to {Say.Length(set.High)} overall in the vee: it draws together by {Say.Length(p.Shrinkage.Low)} to {Say.Length(p.Shrinkage.High)}."
                            : $"runs; it draws the ends together by {Say.Length(p.Shrinkage.Low)} to {Say.Length(p.Shrinkage.High)}.",
                        p.Volume
                    )
                    : null,
            r => r.Weld?.PreparationFindings ?? []
        );

    private static WeldTopic Vees() =>
        new(
            "vees",
            "Packing the vee",
            "Two diameters and a vee's angle to a pack.",
            [
                new(
                    new("way", "How is the lower piece brought up?"),
                    "packing",
                    (_, _) =>
                        [
                            new AskedChoice(
                                "way",
                                "how it is packed",
                                "Packing goes",
                                s_ways,
                                j => Name(j.Weld?.Packing, PackingWay.Unknown),
                                (j, t) => Welded(j, w => w with { Packing = Pick<PackingWay>(t) })
                            ),
                            new AskedMeasure<Angle>(
                                "angle",
                                "the angle of the vee",
                                "Included angle of the vee",
                                WeldFields.VeeAngle,
                                j => j.Weld?.VeeAngle,
                                (j, v) => Welded(j, w => w with { VeeAngle = v })
                            ),
                        ]
                ),
                Block("inner", ShaftEnd.Inner),
                Block("outer", ShaftEnd.Outer),
            ],
            r =>
                r.Weld?.Packing is { } plan
                    ? new(
                        $"The {(plan.Lower == ShaftEnd.Inner ? "inner" : "outer")} piece lies lower by",
                        $"{Say.Fine(plan.Lift)}",
                        $": {Says(plan, r.Job.Weld?.Packing)}.",
                        plan.Lift
                    )
                : r.Weld?.ShimUnder is null && r.Weld?.Shim is not null
                    ? new($"Both ends lie level: nothing to pack.", null, null)
                : null,
            r => r.Weld?.SetUpFindings ?? []
        );

    private static WeldScreen Block(string key, ShaftEnd end)
    {
        VeeBlock? Of(Job j) => end == ShaftEnd.Inner ? j.Weld?.InnerVee : j.Weld?.OuterVee;
        Job With(Job j, Func<VeeBlock, VeeBlock> f) =>
            end == ShaftEnd.Inner
                ? Welded(j, w => w with { InnerVee = f(w.InnerVee ?? new()) })
                : Welded(j, w => w with { OuterVee = f(w.OuterVee ?? new()) });
        AskedMeasure<Distance> Mm(
            string part,
            string called,
            string label,
            Field<Distance> field,
            Func<VeeBlock, Measured<Distance>?> get,
            Func<VeeBlock, Measured<Distance>?, VeeBlock> set
        ) =>
            new(
                $"{key}/{part}",
                called,
                label,
                field,
                j => Of(j) is { } b ? get(b) : null,
                (j, v) => With(j, b => set(b, v))
            );
        return new(
            new(
                key,
                $"Has the {key} piece a vee of its own, or a taper in it?",
                "Then both share one vee, or two cut alike, on plain bar."
            ),
            "taper",
            (_, _) =>
                [
                    new AskedMeasure<Angle>(
                        $"{key}/vee",
                        $"the {key} vee's angle",
                        "Its included angle, if it is another",
                        VeeBlockFields.Angle,
                        j => Of(j)?.Angle,
                        (j, v) => With(j, b => b with { Angle = v })
                    ),
                    Mm(
                        "bar",
                        "the plain bar",
                        "A plain bar laid in the empty vee, its diameter",
                        VeeBlockFields.BarDiameter,
                        b => b.BarDiameter,
                        (b, v) => b with { BarDiameter = v }
                    ),
                    Mm(
                        "over",
                        "the height over the bar",
                        "From the table to the top of that bar",
                        VeeBlockFields.HeightOverBar,
                        b => b.HeightOverBar,
                        (b, v) => b with { HeightOverBar = v }
                    ),
                    Mm(
                        "near",
                        "the diameter nearer the weld",
                        "Taper: diameter at the vee's edge nearer the weld",
                        VeeBlockFields.DiameterNearWeld,
                        b => b.DiameterNearWeld,
                        (b, v) => b with { DiameterNearWeld = v }
                    ),
                    Mm(
                        "far",
                        "the diameter at the far edge",
                        "Taper: diameter at its far edge",
                        VeeBlockFields.DiameterFar,
                        b => b.DiameterFar,
                        (b, v) => b with { DiameterFar = v }
                    ),
                    Mm(
                        "length",
                        "the vee's length",
                        "Taper: length of the vee along the shaft",
                        VeeBlockFields.Length,
                        b => b.Length,
                        (b, v) => b with { Length = v }
                    ),
                    Mm(
                        "joint",
                        "the way to the joint",
                        "Taper: from its near edge to the joint",
                        VeeBlockFields.ToJoint,
                        b => b.ToJoint,
                        (b, v) => b with { ToJoint = v }
                    ),
                ]
        );
    }

    private static WeldTopic Tacks() =>
        new(
            "tacks",
            "Offset or tilt?",
            "The dial on both sides of the joint, to go on or break the tacks.",
            [
                new(
                    new("inner", "The dial on the inner piece"),
                    "tacks",
                    (_, _) => WeldLists.Tacks(ShaftEnd.Inner)
                ),
                new(
                    new("outer", "The dial on the outer piece"),
                    "tacks",
                    (_, _) => WeldLists.Tacks(ShaftEnd.Outer)
                ),
            ],
            r =>
                r.Weld?.Tacks is not { } t ? null
                : t.Offset is not { } offset
                    ? new($"Read the other side of the joint too.", null, null)
                : new(
                    t.Call switch
                    {
                        TackCall.Break => (Sentence)
                            $"Break the tacks. At the joint the axes stand apart by",
                        TackCall.Weld => $"Go on and weld. At the joint the axes stand apart by",
                        _ => $"Read again. At the joint the axes stand apart by",
                    },
                    $"{Say.Fine(offset)}",
                    $", give or take {Say.Fine(t.OffsetUncertainty)}.",
                    offset
                ),
            r => r.Weld?.Tacks?.Findings ?? []
        );
}
