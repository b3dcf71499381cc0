using System.Globalization;
using Shaftwright.Cut;
using Shaftwright.JobFile;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Weld;

namespace Shaftwright.Pages.Doors;

/// <summary>The pages of the weld. Each is opened from its operation on the route card.</summary>
public static class WeldTopics
{
    private static readonly Option[] s_families =
    [
        new("", "Don't know", "then what the donors say counts"),
        new(nameof(SteelFamily.MediumCarbon), "Plain medium carbon", "1040 to 1050, C45, EN8"),
        new(nameof(SteelFamily.CarbonManganese), "Carbon-manganese", "1541"),
        new(nameof(SteelFamily.ChromiumMolybdenum), "Chromium-molybdenum", "4140, 42CrMo4"),
        new(nameof(SteelFamily.NickelChromiumMolybdenum), "Nickel-chromium-molybdenum", "4340"),
        new(nameof(SteelFamily.LowCarbon), "Low carbon", "mild steel"),
    ];

    private static readonly Option[] s_processes =
    [
        new("", "Don't know"),
        new(nameof(ArcProcess.Tig), "TIG"),
        new(nameof(ArcProcess.Mag), "MIG or MAG"),
        new(nameof(ArcProcess.Mma), "Stick"),
    ];

    private static readonly Option[] s_hydrogen =
    [
        new("", "Don't know"),
        new(nameof(HydrogenScale.E), "E", "3 ml/100 g and less, proven"),
        new(nameof(HydrogenScale.D), "D", "up to 5: clean solid wire"),
        new(nameof(HydrogenScale.C), "C", "up to 10"),
        new(nameof(HydrogenScale.B), "B", "up to 15"),
        new(nameof(HydrogenScale.A), "A", "more than 15"),
    ];

    private static readonly Option[] s_fillers =
    [
        new("", "Don't know"),
        new(nameof(FillerKind.Ferritic), "Steel", "plain or low-alloy"),
        new(nameof(FillerKind.Austenitic), "Stainless or nickel", "no magnetic test there"),
    ];

    private static readonly Option[] s_ways =
    [
        new("", "Not decided"),
        new(nameof(PackingWay.BothFaces), "Both faces"),
        new(nameof(PackingWay.UnderBlock), "Under the block"),
        new(nameof(PackingWay.OneFace), "One face, block moved"),
    ];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<WeldTopic> All { get; } =
    [Groove(), Vees(), Preheat(), Sample(), Tacks(), Beads(), Temper(), Sleeve()];

    /// <summary>One of them; the first when there is none of that name.</summary>
    public static WeldTopic Of(string? slug) => All.FirstOrDefault(t => t.Slug == slug) ?? All[0];

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

    private static WeldTopic Preheat() =>
        new(
            "preheat",
            "Preheat",
            "Steel, filler and arc to a preheat.",
            [
                Steel("inner", ShaftEnd.Inner),
                Steel("outer", ShaftEnd.Outer),
                new(
                    new("arc", "How is the arc run?", "Then usual heat and hydrogen are taken."),
                    "arc",
                    (_, _) =>
                        [
                            new AskedChoice(
                                "process",
                                "the process",
                                "Process",
                                s_processes,
                                j => Name(j.Weld?.Arc?.Process, ArcProcess.Unknown),
                                (j, t) =>
                                    Arced(
                                        j,
                                        a =>
                                            a with
                                            {
                                                Process =
                                                    t.Length == 0
                                                        ? ArcProcess.Unknown
                                                        : Pick<ArcProcess>(t),
                                            }
                                    )
                            ),
                            new AskedMeasure<Voltage>(
                                "volts",
                                "the voltage",
                                "Arc voltage",
                                ArcFields.Volts,
                                j => j.Weld?.Arc?.Volts,
                                (j, v) => Arced(j, a => a with { Volts = v })
                            ),
                            new AskedMeasure<Current>(
                                "amps",
                                "the current",
                                "Current",
                                ArcFields.Amps,
                                j => j.Weld?.Arc?.Amps,
                                (j, v) => Arced(j, a => a with { Amps = v })
                            ),
                            new AskedMeasure<TravelSpeed>(
                                "speed",
                                "the speed",
                                "Speed along the joint",
                                ArcFields.Speed,
                                j => j.Weld?.Arc?.Speed,
                                (j, v) => Arced(j, a => a with { Speed = v })
                            ),
                            new AskedChoice(
                                "hydrogen",
                                "the hydrogen scale",
                                "Hydrogen of the filler, EN 1011-2",
                                s_hydrogen,
                                j => Name(j.Weld?.Arc?.Hydrogen, HydrogenScale.Unknown),
                                (j, t) =>
                                    Arced(j, a => a with { Hydrogen = Pick<HydrogenScale>(t) })
                            ),
                        ]
                ),
                new(
                    new(
                        "chosen",
                        "What will you heat to, and over what length?",
                        "Then the band above stands, over 100 mm of bar."
                    ),
                    "crayon",
                    (_, _) =>
                        [
                            new AskedMeasure<Temperature>(
                                "preheat",
                                "the preheat",
                                "Preheat",
                                HeatFields.Preheat,
                                j => j.Weld?.Heat?.Preheat,
                                (j, v) => Heated(j, h => h with { Preheat = v })
                            ),
                            new AskedMeasure<Distance>(
                                "heated",
                                "the heated length",
                                "Length of bar heated in all",
                                HeatFields.HeatedLength,
                                j => j.Weld?.Heat?.HeatedLength,
                                (j, v) => Heated(j, h => h with { HeatedLength = v })
                            ),
                        ]
                ),
            ],
            r =>
                r.Weld?.Heat is { } heat
                    ? new(
                        $"Preheat to at least",
                        $"{Say.Temperature(heat.Preheat.Low)}",
                        $"and at most {Say.Temperature(heat.Preheat.High)}{WeldAnswers.Formula(heat)}",
                        heat.Preheat.Low
                    )
                    : null,
            r => r.Weld?.Heat?.PreheatFindings ?? []
        );

    private static WeldScreen Steel(string key, ShaftEnd end)
    {
        WeldSteel? Of(Job j) => end == ShaftEnd.Inner ? j.Weld?.InnerSteel : j.Weld?.OuterSteel;
        Job With(Job j, Func<WeldSteel, WeldSteel> f) =>
            end == ShaftEnd.Inner
                ? Welded(j, w => w with { InnerSteel = f(w.InnerSteel ?? new()) })
                : Welded(j, w => w with { OuterSteel = f(w.OuterSteel ?? new()) });
        AskedMeasure<Content> Element(
            string part,
            string label,
            Field<Content> field,
            Func<WeldSteel, Measured<Content>?> get,
            Func<WeldSteel, Measured<Content>?, WeldSteel> set
        ) =>
            new(
                $"{key}/{part}",
                $"the {key} piece's {part}",
                label,
                field,
                j => Of(j) is { } s ? get(s) : null,
                (j, v) => With(j, s => set(s, v))
            );
        return new(
            new(
                key + "-steel",
                $"What is the {key} piece made of?",
                "Then the most demanding steel it can be counts."
            ),
            "steel",
            (_, _) =>
                [
                    new AskedChoice(
                        $"{key}/family",
                        $"the {key} piece's steel",
                        "Family",
                        s_families,
                        j => Name(Of(j)?.Family, SteelFamily.Unknown),
                        (j, t) => With(j, s => s with { Family = Pick<SteelFamily>(t) })
                    ),
                    Element(
                        "carbon",
                        "Carbon, if it was analysed",
                        WeldSteelFields.Carbon,
                        s => s.Carbon,
                        (s, v) => s with { Carbon = v }
                    ),
                    Element(
                        "manganese",
                        "Manganese",
                        WeldSteelFields.Manganese,
                        s => s.Manganese,
                        (s, v) => s with { Manganese = v }
                    ),
                    Element(
                        "chromium",
                        "Chromium",
                        WeldSteelFields.Chromium,
                        s => s.Chromium,
                        (s, v) => s with { Chromium = v }
                    ),
                    Element(
                        "molybdenum",
                        "Molybdenum",
                        WeldSteelFields.Molybdenum,
                        s => s.Molybdenum,
                        (s, v) => s with { Molybdenum = v }
                    ),
                    Element(
                        "nickel",
                        "Nickel",
                        WeldSteelFields.Nickel,
                        s => s.Nickel,
                        (s, v) => s with { Nickel = v }
                    ),
                    Element(
                        "silicon",
                        "Silicon",
                        WeldSteelFields.Silicon,
                        s => s.Silicon,
                        (s, v) => s with { Silicon = v }
                    ),
                    Element(
                        "copper",
                        "Copper",
                        WeldSteelFields.Copper,
                        s => s.Copper,
                        (s, v) => s with { Copper = v }
                    ),
                    Element(
                        "vanadium",
                        "Vanadium",
                        WeldSteelFields.Vanadium,
                        s => s.Vanadium,
                        (s, v) => s with { Vanadium = v }
                    ),
                ]
        );
    }

    private static WeldTopic Sample() =>
        new(
            "sample",
            "The sample",
            "A sample cut and etched, to what the weld is worth.",
            [
                new(
                    new("alike", "Is it the shaft in small?"),
                    "sample",
                    (_, _) =>
                        [
                            AskedChoice.YesNo(
                                "steel",
                                "the sample's steel",
                                "Made of offcuts of both donors?",
                                j => j.Strength?.Sample?.SameSteel,
                                (j, v) => Sampled(j, s => s with { SameSteel = v })
                            ),
                            AskedChoice.YesNo(
                                "setup",
                                "the sample's set-up",
                                "Ground, heated and welded as the shaft will be?",
                                j => j.Strength?.Sample?.SameSetUp,
                                (j, v) => Sampled(j, s => s with { SameSetUp = v })
                            ),
                            AskedChoice.YesNo(
                                "cracked",
                                "a crack in it",
                                "Any crack on the etched face?",
                                j => j.Strength?.Sample?.Cracked,
                                (j, v) => Sampled(j, s => s with { Cracked = v })
                            ),
                            new AskedDay(),
                            new AskedText(
                                "photo",
                                "the photo",
                                "Id of its photo in the job book, if there is one",
                                64,
                                j => j.Strength?.Sample?.Photo ?? "",
                                (j, t) => Sampled(j, s => s with { Photo = t })
                            ),
                        ]
                ),
                new(
                    new(
                        "fusion",
                        "How deep is it fused, round the section?",
                        "Then the low guess counts for the shaft."
                    ),
                    "etched",
                    (_, _) => WeldLists.Fusion
                ),
                new(
                    new(
                        "hardness",
                        "How hard is it, across the weld?",
                        "Then the metal by the weld is taken as soft as normalised stock."
                    ),
                    "row",
                    (job, draft) => WeldLists.Row(job, draft)
                ),
            ],
            r =>
                r.Job.Strength?.Sample is not { } sample ? null
                : sample.Cracked == true
                    ? new($"The sample cracked: do not weld the shaft this way.", null, null)
                : SampleReadings.Of(sample) is { Fusion: { } depth }
                    ? new(
                        $"Fused at least",
                        $"{Say.Length(depth.Low)}",
                        $"deep, and that counts.",
                        depth.Low
                    )
                : new(WeldAnswers.Sample(r)!, null, null),
            r =>
                (r.Strength?.Findings ?? []).Where(f =>
                    f.Code.StartsWith("sample-", StringComparison.Ordinal)
                )
        );

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
                        $"Layer {plan.NextLayer}: begin at",
                        $"{Say.Bearing(plan.StartsAt)}",
                        $", then {Bearings(plan.Next.Skip(1))}, each a quarter of the way round.",
                        plan.StartsAt
                    )
                    : null,
            r => (r.Weld?.Heat?.WeldFindings ?? []).Concat(r.Beads?.Findings ?? [])
        );

    private static WeldTopic Temper() =>
        new(
            "temper",
            "Between runs and after",
            "How hot it got, and how it is tempered.",
            [
                new(
                    new("interpass", "How hot did it get between runs?"),
                    "crayon",
                    (_, _) =>
                        [
                            new AskedMeasure<Temperature>(
                                "interpass",
                                "the highest between runs",
                                "Highest temperature read between runs",
                                HeatFields.Interpass,
                                j => j.Weld?.Heat?.Interpass,
                                (j, v) => Heated(j, h => h with { Interpass = v })
                            ),
                        ]
                ),
                new(
                    new(
                        "temper",
                        "How will it be tempered?",
                        "Then the band above stands, for an hour or more."
                    ),
                    "crayon",
                    (_, _) =>
                        [
                            new AskedMeasure<Temperature>(
                                "temper",
                                "the temper",
                                "Tempering temperature",
                                HeatFields.Temper,
                                j => j.Weld?.Heat?.Temper,
                                (j, v) => Heated(j, h => h with { Temper = v })
                            ),
                            new AskedMeasure<Duration>(
                                "time",
                                "the time",
                                "Time at it",
                                HeatFields.TemperTime,
                                j => j.Weld?.Heat?.TemperTime,
                                (j, v) => Heated(j, h => h with { TemperTime = v })
                            ),
                            new AskedMeasure<Temperature>(
                                "inner/tempered",
                                "what the inner piece was tempered at",
                                "The inner piece was tempered by its maker at",
                                WeldSteelFields.TemperedAt,
                                j => j.Weld?.InnerSteel?.TemperedAt,
                                (j, v) =>
                                    Welded(
                                        j,
                                        w =>
                                            w with
                                            {
                                                InnerSteel = (w.InnerSteel ?? new()) with
                                                {
                                                    TemperedAt = v,
                                                },
                                            }
                                    )
                            ),
                            new AskedMeasure<Temperature>(
                                "outer/tempered",
                                "what the outer piece was tempered at",
                                "The outer piece was tempered by its maker at",
                                WeldSteelFields.TemperedAt,
                                j => j.Weld?.OuterSteel?.TemperedAt,
                                (j, v) =>
                                    Welded(
                                        j,
                                        w =>
                                            w with
                                            {
                                                OuterSteel = (w.OuterSteel ?? new()) with
                                                {
                                                    TemperedAt = v,
                                                },
                                            }
                                    )
                            ),
                        ]
                ),
            ],
            r =>
                r.Weld?.Heat is { } heat
                    ? new(
                        $"Temper at",
                        $"{Say.Temperature(heat.Temper.Low)}",
                        $"to {Say.Temperature(heat.Temper.High)} for {Say.Time(heat.TemperTime)}, before it is pressed.",
                        heat.Temper.Low
                    )
                    : null,
            r => r.Weld?.Heat?.TemperFindings ?? []
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

    internal static Job Sampled(Job j, Func<WeldSample, WeldSample> f) =>
        j with
        {
            Strength = (j.Strength ?? new()) with { Sample = f(j.Strength?.Sample ?? new()) },
        };

    internal static Job Welded(Job j, Func<WeldInput, WeldInput> f) =>
        j with
        {
            Weld = f(j.Weld ?? new()),
        };

    private static Job Prepared(Job j, Func<Preparation, Preparation> f) =>
        Welded(j, w => w with { Preparation = f(w.Preparation ?? new()) });

    private static Job Filled(Job j, Func<Filler, Filler> f) =>
        Welded(j, w => w with { Filler = f(w.Filler ?? new()) });

    private static Job Arced(Job j, Func<ArcInput, ArcInput> f) =>
        Welded(j, w => w with { Arc = f(w.Arc ?? new()) });

    private static Job Heated(Job j, Func<HeatPlan, HeatPlan> f) =>
        Welded(j, w => w with { Heat = f(w.Heat ?? new()) });

    private static string Name<E>(E? value, E silent)
        where E : struct, Enum =>
        value is { } v && !EqualityComparer<E>.Default.Equals(v, silent) ? v.ToString() : "";

    private static E Pick<E>(string text)
        where E : struct, Enum => Enum.TryParse<E>(text, out var picked) ? picked : default;

    private static string Between(int a, int b) =>
        a == b
            ? a.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{a} to {b}");

    private static Sentence Bearings(IEnumerable<Bead> beads)
    {
        var all = Sentence.Plain("");
        var first = true;
        foreach (var b in beads)
        {
            all = first ? (Sentence)$"{Say.Bearing(b.At)}" : $"{all}, {Say.Bearing(b.At)}";
            first = false;
        }
        return all;
    }

    private static Sentence Says(PackingPlan plan, PackingWay? way)
    {
        var choice =
            plan.Choices.FirstOrDefault(c => c.Way == way)
            ?? plan.Choices.Single(c => c.Way == PackingWay.BothFaces);
        return choice.Way switch
        {
            PackingWay.UnderBlock => $"{Say.Fine(choice.Pack)} under the whole block",
            PackingWay.OneFace =>
                $"{Say.Fine(choice.Pack)} on one face, the block {Say.Fine(choice.BlockAside)} towards the pack",
            _ => $"{Say.Fine(choice.Pack)} on each face",
        };
    }
}
