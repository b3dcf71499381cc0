using Shaftwright.Cut;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Weld;

namespace Shaftwright.JobFile.Shapes;

/// <summary>The weld's part of the job file, member by member.</summary>
internal static class WeldShape
{
    private static readonly ObjectShape<SampleFusion> s_fusion = new ObjectShape<SampleFusion>(
        "sampleFusion",
        "how deep the sample was fused at one place",
        () => new()
    )
        .Measure(SampleFields.Angle, f => f.Angle, (f, v) => f with { Angle = v })
        .Measure(SampleFields.Depth, f => f.Depth, (f, v) => f with { Depth = v });

    private static readonly ObjectShape<SampleHardness> s_hardness =
        new ObjectShape<SampleHardness>(
            "sampleHardness",
            "one hardness reading across the sample",
            () => new()
        )
            .Measure(SampleFields.From, h => h.From, (h, v) => h with { From = v })
            .Measure(SampleFields.Hardness, h => h.Hardness, (h, v) => h with { Hardness = v });

    /// <summary>The sample.</summary>
    public static ObjectShape<WeldSample> Sample { get; } =
        new ObjectShape<WeldSample>(
            "weldSample",
            "a joint of the same offcuts, cut, etched and measured",
            () => new()
        )
            .Value(
                "at",
                "when it was measured",
                new MomentShape(),
                s => s.At ?? default,
                (s, v) => s with { At = v },
                v => v != default
            )
            .Text(
                "photo",
                "id of its photo in the job book",
                64,
                s => s.Photo,
                (s, v) => s with { Photo = v }
            )
            .YesNo(
                "sameSteel",
                "made of offcuts of both donors",
                s => s.SameSteel,
                (s, v) => s with { SameSteel = v }
            )
            .YesNo(
                "sameSetUp",
                "prepared, heated and welded as the shaft is",
                s => s.SameSetUp,
                (s, v) => s with { SameSetUp = v }
            )
            .YesNo(
                "cracked",
                "a crack was seen on the etched face",
                s => s.Cracked,
                (s, v) => s with { Cracked = v }
            )
            .List(
                "fusion",
                "fusion depth round it",
                s_fusion,
                72,
                s => s.Fusion,
                (s, v) => s with { Fusion = v }
            )
            .List(
                "hardness",
                "hardness across it",
                s_hardness,
                200,
                s => s.Hardness,
                (s, v) => s with { Hardness = v }
            );

    /// <summary>The sleeve.</summary>
    public static ObjectShape<SleeveSeams> Sleeve { get; } =
        new ObjectShape<SleeveSeams>(
            "sleeveSeams",
            "what was seen of a sleeve; left out is not known and counts as not done",
            () => new()
        )
            .YesNo(
                "halves",
                "true if put on in halves, false if slid on whole",
                s => s.Halves,
                (s, v) => s with { Halves = v }
            )
            .YesNo(
                "seamsOpposite",
                "the two long seams lie opposite each other",
                s => s.SeamsOpposite,
                (s, v) => s with { SeamsOpposite = v }
            )
            .YesNo(
                "clearOfStarts",
                "the long seams lie clear of the butt's starts and stops",
                s => s.ClearOfStarts,
                (s, v) => s with { ClearOfStarts = v }
            )
            .YesNo(
                "noCraterAtToe",
                "no crater, undercut or stop at a toe of the end seams",
                s => s.NoCraterAtToe,
                (s, v) => s with { NoCraterAtToe = v }
            )
            .YesNo(
                "closed",
                "every seam welded right round and along",
                s => s.Closed,
                (s, v) => s with { Closed = v }
            )
            .YesNo(
                "vented",
                "the hollow under it was vented while hot",
                s => s.Vented,
                (s, v) => s with { Vented = v }
            )
            .YesNo(
                "ventClosed",
                "the vent was closed last",
                s => s.VentClosed,
                (s, v) => s with { VentClosed = v }
            )
            .YesNo(
                "tested",
                "every seam crack-tested and clean",
                s => s.Tested,
                (s, v) => s with { Tested = v }
            );

    private static readonly ObjectShape<WeldSteel> s_steel = new ObjectShape<WeldSteel>(
        "weldSteel",
        "what is known of one piece's steel",
        () => new()
    )
        .Choice(
            "family",
            "its family",
            s => s.Family,
            (s, v) => s with { Family = v },
            SteelFamily.Unknown
        )
        .Measure(WeldSteelFields.Carbon, s => s.Carbon, (s, v) => s with { Carbon = v })
        .Measure(WeldSteelFields.Silicon, s => s.Silicon, (s, v) => s with { Silicon = v })
        .Measure(WeldSteelFields.Manganese, s => s.Manganese, (s, v) => s with { Manganese = v })
        .Measure(WeldSteelFields.Chromium, s => s.Chromium, (s, v) => s with { Chromium = v })
        .Measure(WeldSteelFields.Molybdenum, s => s.Molybdenum, (s, v) => s with { Molybdenum = v })
        .Measure(WeldSteelFields.Nickel, s => s.Nickel, (s, v) => s with { Nickel = v })
        .Measure(WeldSteelFields.Copper, s => s.Copper, (s, v) => s with { Copper = v })
        .Measure(WeldSteelFields.Vanadium, s => s.Vanadium, (s, v) => s with { Vanadium = v })
        .Measure(
            WeldSteelFields.TemperedAt,
            s => s.TemperedAt,
            (s, v) => s with { TemperedAt = v }
        );

    private static readonly ObjectShape<VeeBlock> s_vee = new ObjectShape<VeeBlock>(
        "veeBlock",
        "one piece's own vee block",
        () => new()
    )
        .Measure(VeeBlockFields.Angle, b => b.Angle, (b, v) => b with { Angle = v })
        .Measure(
            VeeBlockFields.BarDiameter,
            b => b.BarDiameter,
            (b, v) => b with { BarDiameter = v }
        )
        .Measure(
            VeeBlockFields.HeightOverBar,
            b => b.HeightOverBar,
            (b, v) => b with { HeightOverBar = v }
        )
        .Measure(
            VeeBlockFields.DiameterNearWeld,
            b => b.DiameterNearWeld,
            (b, v) => b with { DiameterNearWeld = v }
        )
        .Measure(
            VeeBlockFields.DiameterFar,
            b => b.DiameterFar,
            (b, v) => b with { DiameterFar = v }
        )
        .Measure(VeeBlockFields.Length, b => b.Length, (b, v) => b with { Length = v })
        .Measure(VeeBlockFields.ToJoint, b => b.ToJoint, (b, v) => b with { ToJoint = v });

    private static readonly ObjectShape<Preparation> s_preparation = new ObjectShape<Preparation>(
        "preparation",
        "how both ends are ground for the weld",
        () => new()
    )
        .Measure(PreparationFields.Bevel, p => p.Bevel, (p, v) => p with { Bevel = v })
        .Measure(PreparationFields.Flat, p => p.Flat, (p, v) => p with { Flat = v })
        .Measure(PreparationFields.Cap, p => p.Cap, (p, v) => p with { Cap = v });

    private static readonly ObjectShape<Filler> s_filler = new ObjectShape<Filler>(
        "filler",
        "the filler",
        () => new()
    )
        .Choice(
            "kind",
            "what it is",
            f => f.Kind,
            (f, v) => f with { Kind = v },
            FillerKind.Unknown
        )
        .Measure(PreparationFields.RodDiameter, f => f.Diameter, (f, v) => f with { Diameter = v })
        .Measure(
            PreparationFields.RodPerBead,
            f => f.RodPerBead,
            (f, v) => f with { RodPerBead = v }
        )
        .Measure(PreparationFields.FillerCet, f => f.Cet, (f, v) => f with { Cet = v });

    private static readonly ObjectShape<ArcInput> s_arc = new ObjectShape<ArcInput>(
        "arc",
        "how the arc is run",
        () => new()
    )
        .Choice(
            "process",
            "process",
            a => a.Process,
            (a, v) => a with { Process = v },
            ArcProcess.Unknown
        )
        .Measure(ArcFields.Volts, a => a.Volts, (a, v) => a with { Volts = v })
        .Measure(ArcFields.Amps, a => a.Amps, (a, v) => a with { Amps = v })
        .Measure(ArcFields.Speed, a => a.Speed, (a, v) => a with { Speed = v })
        .Choice(
            "hydrogen",
            "hydrogen scale of the filler, EN 1011-2",
            a => a.Hydrogen,
            (a, v) => a with { Hydrogen = v },
            HydrogenScale.Unknown
        );

    private static readonly ObjectShape<HeatPlan> s_heat = new ObjectShape<HeatPlan>(
        "heatPlan",
        "heat before, between and after the runs",
        () => new()
    )
        .Measure(HeatFields.Preheat, h => h.Preheat, (h, v) => h with { Preheat = v })
        .Measure(HeatFields.Interpass, h => h.Interpass, (h, v) => h with { Interpass = v })
        .Measure(
            HeatFields.HeatedLength,
            h => h.HeatedLength,
            (h, v) => h with { HeatedLength = v }
        )
        .Measure(HeatFields.Temper, h => h.Temper, (h, v) => h with { Temper = v })
        .Measure(HeatFields.TemperTime, h => h.TemperTime, (h, v) => h with { TemperTime = v });

    private static readonly ObjectShape<TackNote> s_tack = new ObjectShape<TackNote>(
        "tackNote",
        "the dial at one place, tacked",
        () => new()
    )
        .Choice("piece", "on which piece", t => t.Piece, (t, v) => t with { Piece = v })
        .Measure(DialNoteFields.FromJoint, t => t.FromJoint, (t, v) => t with { FromJoint = v })
        .Measure(DialNoteFields.RunOut, t => t.RunOut, (t, v) => t with { RunOut = v })
        .Measure(DialNoteFields.HighPoint, t => t.HighPoint, (t, v) => t with { HighPoint = v });

    private static readonly ObjectShape<LayerNote> s_layer = new ObjectShape<LayerNote>(
        "layerNote",
        "the dial between layers of beads",
        () => new()
    )
        .Value(
            "layers",
            "how many layers were on; 0 when only tacked",
            new CountShape(0, DialNoteFields.MostLayers),
            l => l.Layers,
            (l, v) => l with { Layers = v }
        )
        .Value(
            "beads",
            "how many beads of the next layer were on besides; left out for none",
            new CountShape(1, DialNoteFields.MostBeads),
            l => l.Beads,
            (l, v) => l with { Beads = v },
            v => v > 0
        )
        .Measure(DialNoteFields.BegunAt, l => l.BegunAt, (l, v) => l with { BegunAt = v })
        .Measure(DialNoteFields.RunOut, l => l.RunOut, (l, v) => l with { RunOut = v })
        .Measure(DialNoteFields.HighPoint, l => l.HighPoint, (l, v) => l with { HighPoint = v });

    private static readonly ObjectShape<SeamLook> s_seam = new ObjectShape<SeamLook>(
        "seamLook",
        "what was seen and measured on a finished seam; of two looks at one seam the last counts",
        () => new()
    )
        .Choice("place", "which seam", s => s.Place, (s, v) => s with { Place = v })
        .Measure(SeamFields.Depth, s => s.Depth, (s, v) => s with { Depth = v })
        .Measure(SeamFields.Undercut, s => s.Undercut, (s, v) => s with { Undercut = v })
        .YesNo(
            "undercutShort",
            "no undercut longer than 25 mm, all of them a quarter of the way round or less",
            s => s.UndercutShort,
            (s, v) => s with { UndercutShort = v }
        )
        .Measure(SeamFields.SurfacePore, s => s.SurfacePore, (s, v) => s with { SurfacePore = v })
        .Measure(SeamFields.InnerPore, s => s.InnerPore, (s, v) => s with { InnerPore = v })
        .Measure(SeamFields.CapHeight, s => s.CapHeight, (s, v) => s with { CapHeight = v })
        .Measure(SeamFields.CapWidth, s => s.CapWidth, (s, v) => s with { CapWidth = v })
        .Measure(SeamFields.Offset, s => s.Offset, (s, v) => s with { Offset = v })
        .YesNo(
            "cracked",
            "a crack was seen, also in a crater",
            s => s.Cracked,
            (s, v) => s with { Cracked = v }
        );

    /// <summary>The weld.</summary>
    public static ObjectShape<WeldInput> Weld { get; } =
        new ObjectShape<WeldInput>(
            "weld",
            "how the two ends are laid in line, prepared, heated and joined",
            () => new()
        )
            .Measure(
                WeldFields.InnerDiameter,
                w => w.InnerDiameter,
                (w, v) => w with { InnerDiameter = v }
            )
            .Measure(
                WeldFields.OuterDiameter,
                w => w.OuterDiameter,
                (w, v) => w with { OuterDiameter = v }
            )
            .Measure(WeldFields.VeeAngle, w => w.VeeAngle, (w, v) => w with { VeeAngle = v })
            .Choice(
                "bladeSet",
                "a named set of feeler blades, or listed",
                w => w.BladeSet,
                (w, v) => w with { BladeSet = v }
            )
            .List(
                "blades",
                "the blades on hand, when they are listed",
                new MeasureShape<Distance>(WeldFields.Blade),
                WeldFields.MostBlades,
                w => w.Blades,
                (w, v) => w with { Blades = v }
            )
            .Value(
                "mostLeaves",
                "most leaves in one pack",
                new CountShape(1, 6),
                w => w.MostLeaves,
                (w, v) => w with { MostLeaves = v },
                v => v != new WeldInput().MostLeaves
            )
            .Part(
                "innerVee",
                "the inner-end piece's own vee",
                s_vee,
                w => w.InnerVee,
                (w, v) => w with { InnerVee = v }
            )
            .Part(
                "outerVee",
                "the outer-end piece's own vee",
                s_vee,
                w => w.OuterVee,
                (w, v) => w with { OuterVee = v }
            )
            .Choice(
                "packing",
                "how the lower piece is brought up",
                w => w.Packing,
                (w, v) => w with { Packing = v },
                PackingWay.Unknown
            )
            .Part(
                "innerSteel",
                "steel of the inner-end piece",
                s_steel,
                w => w.InnerSteel,
                (w, v) => w with { InnerSteel = v }
            )
            .Part(
                "outerSteel",
                "steel of the outer-end piece",
                s_steel,
                w => w.OuterSteel,
                (w, v) => w with { OuterSteel = v }
            )
            .Part(
                "preparation",
                "how both ends are ground",
                s_preparation,
                w => w.Preparation,
                (w, v) => w with { Preparation = v }
            )
            .Part("filler", "the filler", s_filler, w => w.Filler, (w, v) => w with { Filler = v })
            .Part("arc", "how the arc is run", s_arc, w => w.Arc, (w, v) => w with { Arc = v })
            .Part(
                "heat",
                "heat before, between and after the runs",
                s_heat,
                w => w.Heat,
                (w, v) => w with { Heat = v }
            )
            .List(
                "tacks",
                "the dial on both sides of the joint, tacked",
                s_tack,
                40,
                w => w.Tacks,
                (w, v) => w with { Tacks = v }
            )
            .List(
                "layers",
                "the dial between layers of beads, in the order taken",
                s_layer,
                200,
                w => w.Layers,
                (w, v) => w with { Layers = v }
            )
            .Choice(
                "seamLevel",
                "quality level of ISO 5817 that the seams are to have",
                w => w.SeamLevel,
                (w, v) => w with { SeamLevel = v },
                SeamLevel.B
            )
            .List(
                "seams",
                "what was seen and measured on the finished seams",
                s_seam,
                20,
                w => w.Seams,
                (w, v) => w with { Seams = v }
            );
}
