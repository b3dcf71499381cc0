using Shaftwright.Donors;
using Shaftwright.Joints;

namespace Shaftwright.JobFile.Shapes;

/// <summary>The shelf of a job file, member by member.</summary>
internal static class ShelfShape
{
    private static readonly ObjectShape<DonorEnd> s_end = new ObjectShape<DonorEnd>(
        "donorEnd",
        "one end of a shaft on the shelf",
        () => new()
    )
        .List(
            "fits",
            "names of the joints it was tried in and fits",
            new TextShape(60, 1),
            20,
            e => e.Fits,
            (e, v) => e with { Fits = v }
        )
        .Choice(
            "seat",
            "what locates a joint on it",
            e => e.Seat,
            (e, v) => e with { Seat = v },
            SeatKind.Unknown
        )
        .Measure(ShelfFields.SeatToEnd, e => e.SeatToEnd, (e, v) => e with { SeatToEnd = v });

    private static readonly ObjectShape<GoneStretch> s_gone = new ObjectShape<GoneStretch>(
        "goneStretch",
        "a stretch of a shaft that is cut away or damaged, from its walked end",
        () => new()
    )
        .Choice("why", "cut away or damaged", g => g.Why, (g, v) => g with { Why = v })
        .Measure(ShelfFields.GoneFrom, g => g.From, (g, v) => g with { From = v })
        .Measure(ShelfFields.GoneTo, g => g.To, (g, v) => g with { To = v })
        .Value(
            "note",
            "what is there, or what it went into",
            new TextShape(200),
            g => g.Note,
            (g, v) => g with { Note = v },
            v => v.Length > 0
        );

    private static readonly ObjectShape<ShelfDonor> s_donor = new ObjectShape<ShelfDonor>(
        "shelfDonor",
        "one shaft on the shelf",
        () => new()
    )
        .Value(
            "id",
            "a stable id, unique on the shelf",
            new TextShape(64, 1),
            d => d.Id,
            (d, v) => d with { Id = v },
            required: true
        )
        .Value(
            "place",
            "where it lies",
            new TextShape(120),
            d => d.Place,
            (d, v) => d with { Place = v },
            v => v.Length > 0
        )
        .Choice(
            "condition",
            "what state it is in",
            d => d.Condition,
            (d, v) => d with { Condition = v },
            DonorCondition.Unsaid
        )
        .Choice(
            "side",
            "which side of its car it was on",
            d => d.Side,
            (d, v) => d with { Side = v },
            Side.Unsaid
        )
        .Measure(ShelfFields.Carried, d => d.Carried, (d, v) => d with { Carried = v })
        .Part(
            "shaft",
            "the shaft, walked from one end to the other",
            DonorShape.Shaft,
            d => d.Shaft,
            (d, v) => d with { Shaft = v }
        )
        .Part(
            "walkedEnd",
            "the end it was walked from",
            s_end,
            d => d.WalkedEnd,
            (d, v) => d with { WalkedEnd = v }
        )
        .Part("farEnd", "the other end", s_end, d => d.FarEnd, (d, v) => d with { FarEnd = v })
        .List(
            "gone",
            "what is cut away or damaged",
            s_gone,
            50,
            d => d.Gone,
            (d, v) => d with { Gone = v }
        );

    /// <summary>The stage.</summary>
    public static ObjectShape<ShelfInput> Stage { get; } =
        new ObjectShape<ShelfInput>("shelf", "the shafts on the shelf", () => new()).List(
            "donors",
            "the shafts, in any order",
            s_donor,
            5000,
            s => s.Donors,
            (s, v) => s with { Donors = v }
        );
}
