using Shaftwright.Car;
using Shaftwright.Corner;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Truing;

namespace Shaftwright.JobFile.Shapes;

/// <summary>The job file, member by member. A new input gets its line here; a test names any that has none.</summary>
internal static class JobShape
{
    private static readonly ObjectShape<CarInput> s_car = new ObjectShape<CarInput>(
        "car",
        "a car: what it can put into one driveshaft",
        () => new()
    )
        .Measure(CarFields.EngineTorque, c => c.EngineTorque, (c, v) => c with { EngineTorque = v })
        .Measure(CarFields.GearRatio, c => c.GearRatio, (c, v) => c with { GearRatio = v })
        .Measure(CarFields.FinalDrive, c => c.FinalDrive, (c, v) => c with { FinalDrive = v })
        .Measure(
            CarFields.ShareToThisShaft,
            c => c.ShareToThisShaft,
            (c, v) => c with { ShareToThisShaft = v }
        )
        .Measure(CarFields.Efficiency, c => c.Efficiency, (c, v) => c with { Efficiency = v })
        .Measure(
            CarFields.ClutchSlipTorque,
            c => c.ClutchSlipTorque,
            (c, v) => c with { ClutchSlipTorque = v }
        )
        .Measure(CarFields.LaunchFactor, c => c.LaunchFactor, (c, v) => c with { LaunchFactor = v })
        .Choice("axle", "which axle is driven", c => c.Axle, (c, v) => c with { Axle = v })
        .Measure(CarFields.WheelLoad, c => c.WheelLoad, (c, v) => c with { WheelLoad = v })
        .Measure(CarFields.TyreRadius, c => c.TyreRadius, (c, v) => c with { TyreRadius = v })
        .Measure(CarFields.Grip, c => c.Grip, (c, v) => c with { Grip = v })
        .Measure(CarFields.Wheelbase, c => c.Wheelbase, (c, v) => c with { Wheelbase = v })
        .Measure(CarFields.MassHeight, c => c.MassHeight, (c, v) => c with { MassHeight = v });

    private static readonly ObjectShape<DonorCars> s_donorCars = new ObjectShape<DonorCars>(
        "donorCars",
        "the cars that the donor shafts came from",
        () => new()
    )
        .Part(
            "innerEnd",
            "car of the inner-end donor",
            s_car,
            d => d.InnerEnd,
            (d, v) => d with { InnerEnd = v }
        )
        .Part(
            "outerEnd",
            "car of the outer-end donor",
            s_car,
            d => d.OuterEnd,
            (d, v) => d with { OuterEnd = v }
        );

    private static readonly ObjectShape<TrialReading> s_reading = new ObjectShape<TrialReading>(
        "trialReading",
        "one position of the wheel, and what was read there",
        () => new()
    )
        .Measure(CornerFields.Travel, r => r.Travel, (r, v) => r with { Travel = v })
        .Choice(
            "steering",
            "where the steering stood",
            r => r.Steering,
            (r, v) => r with { Steering = v }
        )
        .Measure(CornerFields.In, r => r.In, (r, v) => r with { In = v })
        .Measure(CornerFields.Out, r => r.Out, (r, v) => r with { Out = v })
        .Measure(CornerFields.Distance, r => r.Distance, (r, v) => r with { Distance = v })
        .Measure(CornerFields.InnerAngle, r => r.InnerAngle, (r, v) => r with { InnerAngle = v })
        .Measure(CornerFields.OuterAngle, r => r.OuterAngle, (r, v) => r with { OuterAngle = v });

    private static readonly ObjectShape<MeasuringConditions> s_conditions =
        new ObjectShape<MeasuringConditions>(
            "conditions",
            "what was true while measuring; left out is not known",
            () => new()
        )
            .YesNo(
                "springOut",
                "spring out or slack",
                c => c.SpringOut,
                (c, v) => c with { SpringOut = v }
            )
            .YesNo(
                "rollBarOff",
                "roll bar disconnected",
                c => c.RollBarOff,
                (c, v) => c with { RollBarOff = v }
            )
            .YesNo(
                "driverIn",
                "driver, or the driver's weight, in the car",
                c => c.DriverIn,
                (c, v) => c with { DriverIn = v }
            )
            .YesNo(
                "stubPushedHome",
                "inner stub pushed home",
                c => c.StubPushedHome,
                (c, v) => c with { StubPushedHome = v }
            )
            .YesNo(
                "clipFelt",
                "its clip felt to snap",
                c => c.ClipFelt,
                (c, v) => c with { ClipFelt = v }
            );

    private static readonly ObjectShape<CornerInput> s_corner = new ObjectShape<CornerInput>(
        "corner",
        "readings at one corner of the car",
        () => new()
    )
        .Measure(CornerFields.TrialLength, c => c.TrialLength, (c, v) => c with { TrialLength = v })
        .Choice(
            "readAlong",
            "along which line in and out were read",
            c => c.ReadAlong,
            (c, v) => c with { ReadAlong = v }
        )
        .List(
            "readings",
            "the readings",
            s_reading,
            200,
            c => c.Readings,
            (c, v) => c with { Readings = v }
        )
        .Value(
            "conditions",
            "what was true while measuring",
            s_conditions,
            c => c.Conditions,
            (c, v) => c with { Conditions = v },
            v => v != new MeasuringConditions()
        )
        .Measure(
            CornerFields.OutputEndFloat,
            c => c.OutputEndFloat,
            (c, v) => c with { OutputEndFloat = v }
        )
        .Measure(
            CornerFields.PowerUnitTowardsWheel,
            c => c.PowerUnitTowardsWheel,
            (c, v) => c with { PowerUnitTowardsWheel = v }
        )
        .Measure(
            CornerFields.PowerUnitAwayFromWheel,
            c => c.PowerUnitAwayFromWheel,
            (c, v) => c with { PowerUnitAwayFromWheel = v }
        )
        .Part(
            "linkage",
            "the linkage by its points; where it is whole the length is found from it",
            LinkageShape.Linkage,
            c => c.Linkage,
            (c, v) => c with { Linkage = v }
        );

    private static readonly ObjectShape<PlungeAtAngle> s_plunge = new ObjectShape<PlungeAtAngle>(
        "plungeAtAngle",
        "plunge limits at one angle",
        () => new()
    )
        .Measure(JointFields.TableAngle, p => p.Angle, (p, v) => p with { Angle = v })
        .Measure(JointFields.TableIn, p => p.In, (p, v) => p with { In = v })
        .Measure(JointFields.TableOut, p => p.Out, (p, v) => p with { Out = v });

    private static readonly ObjectShape<TorqueAtAngle> s_jointTorque =
        new ObjectShape<TorqueAtAngle>(
            "torqueAtAngle",
            "torque a joint may carry at one angle, by the user's own data",
            () => new()
        )
            .Measure(TorqueFields.Angle, t => t.Angle, (t, v) => t with { Angle = v })
            .Measure(TorqueFields.Torque, t => t.Torque, (t, v) => t with { Torque = v });

    private static readonly ObjectShape<BootInput> s_boot = new ObjectShape<BootInput>(
        "boot",
        "a joint's boot: where it is clamped, and what it can do",
        () => new()
    )
        .Measure(BootFields.LargeClamp, b => b.LargeClamp, (b, v) => b with { LargeClamp = v })
        .Measure(BootFields.SmallClamp, b => b.SmallClamp, (b, v) => b with { SmallClamp = v })
        .Measure(BootFields.Shortest, b => b.Shortest, (b, v) => b with { Shortest = v })
        .Measure(BootFields.Longest, b => b.Longest, (b, v) => b with { Longest = v })
        .Measure(BootFields.AngleLimit, b => b.AngleLimit, (b, v) => b with { AngleLimit = v });

    private static readonly ObjectShape<CentreSwing> s_swing = new ObjectShape<CentreSwing>(
        "centreSwing",
        "two marks on the shaft and their ways between two positions, which find the joint centre",
        () => new()
    )
        .Measure(SwingFields.SeatToMark, w => w.SeatToMark, (w, v) => w with { SeatToMark = v })
        .Measure(SwingFields.MarksApart, w => w.MarksApart, (w, v) => w with { MarksApart = v })
        .Measure(SwingFields.ChordNear, w => w.ChordNear, (w, v) => w with { ChordNear = v })
        .Measure(SwingFields.ChordFar, w => w.ChordFar, (w, v) => w with { ChordFar = v });

    private static readonly ObjectShape<JointInput> s_joint = new ObjectShape<JointInput>(
        "joint",
        "one joint, and how it sits on the shaft",
        () => new()
    )
        .Value(
            "name",
            "what the fabricator calls it",
            new TextShape(60),
            j => j.Name,
            (j, v) => j with { Name = v },
            v => v.Length > 0
        )
        .Value(
            "teeth",
            "teeth of its spline",
            new CountShape(1, 120),
            j => j.Teeth,
            (j, v) => j with { Teeth = v },
            v => v > 0
        )
        .Measure(
            JointFields.SplineDiameter,
            j => j.SplineDiameter,
            (j, v) => j with { SplineDiameter = v }
        )
        .Choice("kind", "what it does", j => j.Kind, (j, v) => j with { Kind = v })
        .Measure(JointFields.AngleLimit, j => j.AngleLimit, (j, v) => j with { AngleLimit = v })
        .Measure(JointFields.PlungeIn, j => j.PlungeIn, (j, v) => j with { PlungeIn = v })
        .Measure(JointFields.PlungeOut, j => j.PlungeOut, (j, v) => j with { PlungeOut = v })
        .Measure(
            JointFields.RollerRadius,
            j => j.RollerRadius,
            (j, v) => j with { RollerRadius = v }
        )
        .List(
            "plungeTable",
            "plunge limits measured at angles; they replace the rule",
            s_plunge,
            60,
            j => j.PlungeTable,
            (j, v) => j with { PlungeTable = v }
        )
        .Measure(JointFields.Stroke, j => j.Stroke, (j, v) => j with { Stroke = v })
        .Measure(
            JointFields.StrokeAtAngle,
            j => j.StrokeAtAngle,
            (j, v) => j with { StrokeAtAngle = v }
        )
        .Measure(JointFields.StrokeAngle, j => j.StrokeAngle, (j, v) => j with { StrokeAngle = v })
        .YesNo(
            "heldAtOuterStop",
            "a ring or clip holds the shaft in at the outer stop",
            j => j.HeldAtOuterStop,
            (j, v) => j with { HeldAtOuterStop = v }
        )
        .List(
            "torqueTable",
            "torque it may carry at angles, falling with the angle: the user's own data",
            s_jointTorque,
            60,
            j => j.TorqueTable,
            (j, v) => j with { TorqueTable = v }
        )
        .Part("boot", "its boot", s_boot, j => j.Boot, (j, v) => j with { Boot = v })
        .YesNo(
            "stubClampsBearing",
            "its stub clamps the hub bearing together (outer joint)",
            j => j.StubClampsBearing,
            (j, v) => j with { StubClampsBearing = v }
        )
        .Choice(
            "seat",
            "what locates it on the shaft",
            j => j.Seat,
            (j, v) => j with { Seat = v },
            SeatKind.Unknown
        )
        .Choice(
            "wayRound",
            "which way round it goes on",
            j => j.WayRound,
            (j, v) => j with { WayRound = v },
            WayRound.Unknown
        )
        .Measure(
            JointFields.SeatToCentre,
            j => j.SeatToCentre,
            (j, v) => j with { SeatToCentre = v }
        )
        .Part(
            "swing",
            "two marks and their ways, which find the joint centre",
            s_swing,
            j => j.Swing,
            (j, v) => j with { Swing = v }
        )
        .Measure(JointFields.SeatToEnd, j => j.SeatToEnd, (j, v) => j with { SeatToEnd = v });

    private static readonly ObjectShape<JointsInput> s_joints = new ObjectShape<JointsInput>(
        "joints",
        "the two joints of the shaft",
        () => new()
    )
        .Part(
            "inner",
            "the joint at the power unit",
            s_joint,
            j => j.Inner,
            (j, v) => j with { Inner = v }
        )
        .Part(
            "outer",
            "the joint at the wheel",
            s_joint,
            j => j.Outer,
            (j, v) => j with { Outer = v }
        );

    private static readonly ObjectShape<LengthInput> s_length = new ObjectShape<LengthInput>(
        "length",
        "what is asked of the length beside the readings",
        () => new()
    )
        .Measure(LengthFields.Margin, l => l.Margin, (l, v) => l with { Margin = v })
        .Measure(LengthFields.Chosen, l => l.Chosen, (l, v) => l with { Chosen = v })
        .Choice(
            "aim",
            "which of the lengths that work is made",
            l => l.Aim,
            (l, v) => l with { Aim = v },
            Aim.Balanced
        )
        .Measure(LengthFields.Making, l => l.Making, (l, v) => l with { Making = v });

    private static readonly ObjectShape<DonorsInput> s_donors = new ObjectShape<DonorsInput>(
        "donors",
        "the two shafts that the new one is made from",
        () => new()
    )
        .Part(
            "innerEnd",
            "gives the inner (power unit) end",
            DonorShape.Shaft,
            d => d.InnerEnd,
            (d, v) => d with { InnerEnd = v }
        )
        .Part(
            "outerEnd",
            "gives the outer (wheel) end",
            DonorShape.Shaft,
            d => d.OuterEnd,
            (d, v) => d with { OuterEnd = v }
        );

    private static readonly ObjectShape<CutInput> s_cut = new ObjectShape<CutInput>(
        "cut",
        "how the two donors are to be cut and joined",
        () => new()
    )
        .Measure(
            CutFields.OverallLength,
            c => c.OverallLength,
            (c, v) => c with { OverallLength = v }
        )
        .Measure(CutFields.InnerCutAt, c => c.InnerCutAt, (c, v) => c with { InnerCutAt = v })
        .Measure(CutFields.RootGap, c => c.RootGap, (c, v) => c with { RootGap = v })
        .Measure(CutFields.SleeveFit, c => c.SleeveFit, (c, v) => c with { SleeveFit = v })
        .Measure(CutFields.Kerf, c => c.Kerf, (c, v) => c with { Kerf = v })
        .Measure(CutFields.Facing, c => c.Facing, (c, v) => c with { Facing = v })
        .Measure(CutFields.Shrinkage, c => c.Shrinkage, (c, v) => c with { Shrinkage = v })
        .Measure(CutFields.HeatBand, c => c.HeatBand, (c, v) => c with { HeatBand = v })
        .Measure(CutFields.SleeveLength, c => c.SleeveLength, (c, v) => c with { SleeveLength = v })
        .Measure(
            CutFields.SleeveOutside,
            c => c.SleeveOutside,
            (c, v) => c with { SleeveOutside = v }
        )
        .Measure(
            CutFields.InnerBootBore,
            c => c.InnerBootBore,
            (c, v) => c with { InnerBootBore = v }
        )
        .Measure(
            CutFields.OuterBootBore,
            c => c.OuterBootBore,
            (c, v) => c with { OuterBootBore = v }
        )
        .Measure(
            CutFields.BootSlideRoom,
            c => c.BootSlideRoom,
            (c, v) => c with { BootSlideRoom = v }
        );

    private static readonly ObjectShape<StrengthInput> s_strength = new ObjectShape<StrengthInput>(
        "strength",
        "what is known of the weld when the shaft's strength is judged",
        () => new()
    )
        .Measure(
            StrengthFields.FusionDepth,
            s => s.FusionDepth,
            (s, v) => s with { FusionDepth = v }
        )
        .Flag(
            "fusionFromSample",
            "true if the fusion depth was measured on an etched sample of the same steels",
            s => s.FusionFromSample,
            (s, v) => s with { FusionFromSample = v }
        )
        .Part(
            "sample",
            "a joint of the same offcuts, cut, etched and measured",
            WeldShape.Sample,
            s => s.Sample,
            (s, v) => s with { Sample = v }
        )
        .Part(
            "sleeve",
            "what was seen of the sleeve over the weld",
            WeldShape.Sleeve,
            s => s.Sleeve,
            (s, v) => s with { Sleeve = v }
        );

    private static readonly ObjectShape<DialReading> s_dial = new ObjectShape<DialReading>(
        "dialReading",
        "one reading of the dial",
        () => new()
    )
        .Measure(TruingFields.ShaftAngle, d => d.Angle, (d, v) => d with { Angle = v })
        .Measure(TruingFields.Dial, d => d.Dial, (d, v) => d with { Dial = v });

    private static readonly ObjectShape<DialTurn> s_turn = new ObjectShape<DialTurn>(
        "dialTurn",
        "one turn of the shaft under the dial, at one station",
        () => new()
    )
        .Text("id", "a stable id within the job", 64, t => t.Id, (t, v) => t with { Id = v })
        .Choice("moment", "when in the making", t => t.Moment, (t, v) => t with { Moment = v })
        .Value(
            "layer",
            "layers of the weld that were in",
            new CountShape(1, TruingFields.MostLayers),
            t => t.Layer ?? 0,
            (t, v) => t with { Layer = v },
            v => v > 0
        )
        .Value(
            "afterStroke",
            "strokes of the press since the last weld",
            new CountShape(0, TruingFields.MostStrokes),
            t => t.AfterStroke ?? -1,
            (t, v) => t with { AfterStroke = v },
            v => v >= 0
        )
        .Choice(
            "support",
            "what carried it",
            t => t.Support,
            (t, v) => t with { Support = v },
            Support.Unknown
        )
        .Measure(TruingFields.VeeAngle, t => t.VeeAngle, (t, v) => t with { VeeAngle = v })
        .Measure(TruingFields.Station, t => t.Station, (t, v) => t with { Station = v })
        .Measure(
            TruingFields.FirstSupportAt,
            t => t.FirstSupportAt,
            (t, v) => t with { FirstSupportAt = v }
        )
        .Measure(
            TruingFields.SecondSupportAt,
            t => t.SecondSupportAt,
            (t, v) => t with { SecondSupportAt = v }
        )
        .List(
            "readings",
            "the readings",
            s_dial,
            720,
            t => t.Readings,
            (t, v) => t with { Readings = v }
        )
        .Measure(TruingFields.Limit, t => t.Limit, (t, v) => t with { Limit = v });

    private static readonly ObjectShape<TruingInput> s_truing = new ObjectShape<TruingInput>(
        "truing",
        "all turns under the dial so far",
        () => new()
    )
        .List(
            "turns",
            "the turns, in the order taken",
            s_turn,
            500,
            t => t.Turns,
            (t, v) => t with { Turns = v }
        )
        .Measure(TruingFields.WeldAt, t => t.WeldAt, (t, v) => t with { WeldAt = v })
        .Measure(
            TruingFields.OverallLength,
            t => t.OverallLength,
            (t, v) => t with { OverallLength = v }
        );

    private static readonly ObjectShape<SignOff> s_signOff = new ObjectShape<SignOff>(
        "signOff",
        "an operation signed for, or a sign-off withdrawn",
        () => new("", "", default, "", "")
    )
        .Value(
            "id",
            "a stable id, unique within the job",
            new TextShape(64, 1),
            s => s.Id,
            (s, v) => s with { Id = v },
            required: true
        )
        .Value(
            "operation",
            "the operation's id on the route card",
            new TextShape(64, 1),
            s => s.Operation,
            (s, v) => s with { Operation = v },
            required: true
        )
        .Value(
            "at",
            "when it was signed",
            new MomentShape(),
            s => s.At,
            (s, v) => s with { At = v },
            required: true
        )
        .Text("by", "who signed", 120, s => s.By, (s, v) => s with { By = v })
        .Text("note", "what they wrote beside it", 2000, s => s.Note, (s, v) => s with { Note = v })
        .Flag(
            "withdrawn",
            "true when this takes back the operation's earlier sign-off",
            s => s.Withdrawn,
            (s, v) => s with { Withdrawn = v }
        )
        .Text(
            "said",
            "what the operation answered when it was signed, in mm",
            2000,
            s => s.Said,
            (s, v) => s with { Said = v }
        );

    private static readonly ObjectShape<JobRecords> s_records = new ObjectShape<JobRecords>(
        "records",
        "what was done and signed for",
        () => new()
    )
        .List(
            "signOffs",
            "operations signed for, oldest first",
            s_signOff,
            2000,
            r => r.SignOffs,
            (r, v) => r with { SignOffs = v }
        )
        .Value(
            "putAway",
            "when the job was put away; left out while it is on the bench",
            new MomentShape(),
            r => r.PutAway ?? default,
            (r, v) => r with { PutAway = v },
            v => v != default
        )
        .List(
            "conflicts",
            "fields that two devices set differently, not settled yet",
            ConflictShape.Conflict,
            500,
            r => r.Conflicts,
            (r, v) => r with { Conflicts = v }
        );

    /// <summary>The whole file. The format's number leads it.</summary>
    public static ObjectShape<JobDocument> Document { get; } =
        new ObjectShape<JobDocument>(
            "job",
            "one driveshaft job: what was measured and decided, and what was done",
            () => JobDocument.Empty
        )
            .Value(
                "format",
                "version of this format",
                new CountShape(JobJson.Format, JobJson.Format),
                _ => JobJson.Format,
                (d, _) => d,
                required: true
            )
            .Value(
                "name",
                "what the fabricator calls it",
                new TextShape(120),
                d => d.Job.Name,
                (d, v) => d with { Job = d.Job with { Name = v } }
            )
            .Value(
                "about",
                "the car and what it is used for, in a line",
                new TextShape(500),
                d => d.Job.About,
                (d, v) => d with { Job = d.Job with { About = v } },
                v => v.Length > 0
            )
            .Choice(
                "side",
                "which side of the car",
                d => d.Job.Side,
                (d, v) => d with { Job = d.Job with { Side = v } },
                Side.Unsaid
            )
            .Part(
                "car",
                "the car it is made for",
                s_car,
                d => d.Job.Car,
                (d, v) => d with { Job = d.Job with { Car = v } }
            )
            .Part(
                "donorCars",
                "the cars the donors came from",
                s_donorCars,
                d => d.Job.DonorCars,
                (d, v) => d with { Job = d.Job with { DonorCars = v } }
            )
            .Part(
                "corner",
                "readings at the corner",
                s_corner,
                d => d.Job.Corner,
                (d, v) => d with { Job = d.Job with { Corner = v } }
            )
            .Part(
                "joints",
                "the joints",
                s_joints,
                d => d.Job.Joints,
                (d, v) => d with { Job = d.Job with { Joints = v } }
            )
            .Part(
                "length",
                "what is asked of the length",
                s_length,
                d => d.Job.Length,
                (d, v) => d with { Job = d.Job with { Length = v } }
            )
            .Part(
                "donors",
                "the donors",
                s_donors,
                d => d.Job.Donors,
                (d, v) => d with { Job = d.Job with { Donors = v } }
            )
            .Part(
                "shelf",
                "the shafts on the shelf",
                ShelfShape.Stage,
                d => d.Job.Shelf,
                (d, v) => d with { Job = d.Job with { Shelf = v } }
            )
            .Part(
                "cut",
                "how they are cut and joined",
                s_cut,
                d => d.Job.Cut,
                (d, v) => d with { Job = d.Job with { Cut = v } }
            )
            .Part(
                "strength",
                "what is known of the weld's strength",
                s_strength,
                d => d.Job.Strength,
                (d, v) => d with { Job = d.Job with { Strength = v } }
            )
            .Part(
                "weld",
                "how the ends are set up and welded",
                WeldShape.Weld,
                d => d.Job.Weld,
                (d, v) => d with { Job = d.Job with { Weld = v } }
            )
            .Part(
                "truing",
                "turns under the dial",
                s_truing,
                d => d.Job.Truing,
                (d, v) => d with { Job = d.Job with { Truing = v } }
            )
            .Part(
                "press",
                "press, steel and weld as far as known, and every stroke",
                PressShape.Stage,
                d => d.Job.Press,
                (d, v) => d with { Job = d.Job with { Press = v } }
            )
            .Part(
                "crackTest",
                "crack tests, and the work they follow",
                CrackTestShape.Stage,
                d => d.Job.CrackTest,
                (d, v) => d with { Job = d.Job with { CrackTest = v } }
            )
            .Part(
                "fit",
                "how it goes onto the car",
                FitShape.Stage,
                d => d.Job.Fit,
                (d, v) => d with { Job = d.Job with { Fit = v } }
            )
            .Value(
                "records",
                "what was done and signed for",
                s_records,
                d => d.Records,
                (d, v) => d with { Records = v },
                v => v.SignOffs.Count > 0 || v.PutAway is not null || v.Conflicts.Count > 0
            );
}
