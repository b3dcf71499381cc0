using Shaftwright.Cut;
using Shaftwright.Measures;

namespace Shaftwright.Drawings;

public static partial class SheetTables
{
    /// <summary>What is scribed, sawn and checked, in the order it is done; then the sleeve.</summary>
    public static Table? CutMarks(CutResult? cut, Display display)
    {
        if (cut?.Marks is not { } marks)
            return null;
        string Mm(double mm) => Say.Length(mm).In(display);
        string Near(PieceMark m) =>
            m.Near is { } near
                ? $"{Mm(near.ToScribe)} from {near.Words} at {Mm(near.At)}"
                : "no edge in a caliper's reach";
        List<IReadOnlyList<string>> rows =
        [
            ["Scribe, from the joint end by tape", Mm(marks.Inner.Scribe), Mm(marks.Outer.Scribe)],
            ["Prove the line by caliper", Near(marks.Inner), Near(marks.Outer)],
            ["Saw beyond the line, up to", Mm(marks.Inner.OffcutFrom), Mm(marks.Outer.OffcutFrom)],
            ["Face square: the piece is then", Mm(marks.Inner.Length), Mm(marks.Outer.Length)],
            ["Both end to end, no gap", Mm(marks.Pair), ""],
            ["Set up with the gap, before the tacks", Mm(marks.InVee), ""],
            [
                "Tack, measure again; after welding",
                $"{Mm(marks.Welded.Low)} to {Mm(marks.Welded.High)}",
                "",
            ],
        ];
        if (marks.Sleeve is { } sleeve)
        {
            rows.Add(["Sleeve: length", Mm(sleeve.Length), ""]);
            rows.Add([
                "Sleeve: bore",
                Say.Diameter(sleeve.Bore).In(display),
                $"{Say.Fine(sleeve.Fit).In(display)} over the thickest bar under it",
            ]);
            if (sleeve.Wall is { } wall)
                rows.Add(["Sleeve: wall", Say.Fine(wall).In(display), ""]);
            rows.Add([
                "Sleeve: made",
                sleeve.Halves ? "in two halves" : "in one piece, on before the butt is tacked",
                sleeve.Halves
                    ? $"only {Mm(sleeve.ParkRoom)} to park it in"
                    : $"{Mm(sleeve.ParkRoom)} to park it in",
            ]);
        }
        return new(
            "Marks on the bench, in order",
            ["", "Inner-end donor", "Outer-end donor"],
            rows
        );
    }
}
