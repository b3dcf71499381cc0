using Shaftwright.Corner.Linkages;

namespace Shaftwright.JobFile.Shapes;

/// <summary>The linkage of a job file, member by member.</summary>
internal static class LinkageShape
{
    private static readonly ObjectShape<ReferenceInput> s_reference =
        new ObjectShape<ReferenceInput>(
            "referencePoint",
            "a point that tapes are held to",
            () => new()
        )
            .Text("name", "what it is called", 60, r => r.Name, (r, v) => r with { Name = v })
            .Measure(LinkageFields.X, r => r.X, (r, v) => r with { X = v })
            .Measure(LinkageFields.Y, r => r.Y, (r, v) => r with { Y = v })
            .Measure(LinkageFields.Z, r => r.Z, (r, v) => r with { Z = v });

    private static readonly ObjectShape<TapeInput> s_tape = new ObjectShape<TapeInput>(
        "tape",
        "one tape from a reference point",
        () => new()
    )
        .Text("from", "name of the reference point", 60, t => t.From, (t, v) => t with { From = v })
        .Measure(LinkageFields.Tape, t => t.Distance, (t, v) => t with { Distance = v });

    private static readonly ObjectShape<PointInput> s_point = new ObjectShape<PointInput>(
        "linkagePoint",
        "one point at ride height, wheels straight, in the car's axes",
        () => new()
    )
        .Choice("point", "which point", p => p.Point, (p, v) => p with { Point = v })
        .Measure(LinkageFields.X, p => p.X, (p, v) => p with { X = v })
        .Measure(LinkageFields.Y, p => p.Y, (p, v) => p with { Y = v })
        .Measure(LinkageFields.Z, p => p.Z, (p, v) => p with { Z = v })
        .List(
            "tapes",
            "tapes to it from reference points; three or more find it without its coordinates",
            s_tape,
            20,
            p => p.Tapes,
            (p, v) => p with { Tapes = v }
        )
        .Flag(
            "mirrored",
            "true if it was measured on the other side of the car, which is alike: y then changes sign",
            p => p.Mirrored,
            (p, v) => p with { Mirrored = v }
        );

    private static readonly ObjectShape<DirectionInput> s_direction =
        new ObjectShape<DirectionInput>(
            "direction",
            "a direction across the car, by its angles towards the outside",
            () => new()
        )
            .Measure(LinkageFields.Rise, d => d.Rise, (d, v) => d with { Rise = v })
            .Measure(LinkageFields.Forward, d => d.Forward, (d, v) => d with { Forward = v });

    private static readonly ObjectShape<PowerUnitMove> s_move = new ObjectShape<PowerUnitMove>(
        "powerUnitMove",
        "how far the power unit moves on its mounts from where it stands at rest",
        () => new()
    )
        .Measure(LinkageFields.MoveX, m => m.X, (m, v) => m with { X = v })
        .Measure(LinkageFields.MoveY, m => m.Y, (m, v) => m with { Y = v })
        .Measure(LinkageFields.MoveZ, m => m.Z, (m, v) => m with { Z = v })
        .Measure(LinkageFields.Roll, m => m.Roll, (m, v) => m with { Roll = v });

    private static readonly ObjectShape<NeverTogether> s_never = new ObjectShape<NeverTogether>(
        "neverTogether",
        "travel and lock that cannot happen together: what lies in both ranges is left out",
        () => new()
    )
        .Measure(LinkageFields.TravelFrom, n => n.TravelFrom, (n, v) => n with { TravelFrom = v })
        .Measure(LinkageFields.TravelTo, n => n.TravelTo, (n, v) => n with { TravelTo = v })
        .Measure(LinkageFields.RackFrom, n => n.RackFrom, (n, v) => n with { RackFrom = v })
        .Measure(LinkageFields.RackTo, n => n.RackTo, (n, v) => n with { RackTo = v });

    private static readonly ObjectShape<PositionInput> s_position = new ObjectShape<PositionInput>(
        "linkagePosition",
        "one position to look at",
        () => new()
    )
        .Measure(LinkageFields.Travel, p => p.Travel, (p, v) => p with { Travel = v })
        .Measure(LinkageFields.Rack, p => p.Rack, (p, v) => p with { Rack = v })
        .Measure(
            LinkageFields.OtherTravel,
            p => p.OtherTravel,
            (p, v) => p with { OtherTravel = v }
        )
        .Choice(
            "powerUnit",
            "how the power unit stands",
            p => p.PowerUnit,
            (p, v) => p with { PowerUnit = v }
        );

    /// <summary>The linkage of a corner.</summary>
    public static ObjectShape<LinkageInput> Linkage { get; } =
        new ObjectShape<LinkageInput>(
            "linkage",
            "the linkage of one corner by its points, and where it goes",
            () => new()
        )
            .Choice(
                "kind",
                "what holds the hub",
                l => l.Kind,
                (l, v) => l with { Kind = v },
                LinkageKind.Unknown
            )
            .List(
                "points",
                "the measured points, each once",
                s_point,
                60,
                l => l.Points,
                (l, v) => l with { Points = v }
            )
            .List(
                "references",
                "the reference points that tapes are held to",
                s_reference,
                20,
                l => l.References,
                (l, v) => l with { References = v }
            )
            .Part(
                "innerDirection",
                "the inner joint's axis, where no second point of it is given",
                s_direction,
                l => l.InnerDirection,
                (l, v) => l with { InnerDirection = v }
            )
            .Part(
                "outerDirection",
                "the outer joint's axis, where no second point of it is given",
                s_direction,
                l => l.OuterDirection,
                (l, v) => l with { OuterDirection = v }
            )
            .Part(
                "rackDirection",
                "the rack, where it does not lie straight across the car",
                s_direction,
                l => l.RackDirection,
                (l, v) => l with { RackDirection = v }
            )
            .Measure(LinkageFields.Droop, l => l.Droop, (l, v) => l with { Droop = v })
            .Measure(LinkageFields.Bump, l => l.Bump, (l, v) => l with { Bump = v })
            .Measure(LinkageFields.RackLeft, l => l.RackLeft, (l, v) => l with { RackLeft = v })
            .Measure(LinkageFields.RackRight, l => l.RackRight, (l, v) => l with { RackRight = v })
            .List(
                "never",
                "travel and lock that cannot happen together",
                s_never,
                20,
                l => l.Never,
                (l, v) => l with { Never = v }
            )
            .List(
                "positions",
                "positions to look at, in place of droop, bump and the locks",
                s_position,
                LinkageFields.MostPositions,
                l => l.Positions,
                (l, v) => l with { Positions = v }
            )
            .Part(
                "driving",
                "how the power unit moves under full torque, driving",
                s_move,
                l => l.Driving,
                (l, v) => l with { Driving = v }
            )
            .Part(
                "overrun",
                "how it moves under full torque the other way",
                s_move,
                l => l.Overrun,
                (l, v) => l with { Overrun = v }
            )
            .Measure(LinkageFields.Bushes, l => l.Bushes, (l, v) => l with { Bushes = v })
            .Choice(
                "intermediateBearing",
                "what carries the bearing of an intermediate shaft",
                l => l.IntermediateBearing,
                (l, v) => l with { IntermediateBearing = v },
                BearingCarrier.Unsaid
            );
}
