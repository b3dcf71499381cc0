namespace Shaftwright.Cut.Search;

/// <summary>Sound cuts of one piece between two neighbouring breaks: everything that is asked of the cut is a straight line here.
/// Places are from the seat of the joint, mm.</summary>
/// <param name="From">The first cut.</param>
/// <param name="To">The last cut.</param>
/// <param name="Diameter">Diameter at the cut, mm.</param>
/// <param name="AtLeast">The same less what the caliper may be off, mm.</param>
/// <param name="Thinnest">The thinnest that the heated metal can be, mm.</param>
/// <param name="Softened">Hardened length that the heat changes, mm.</param>
/// <param name="Earliest">Where the tightest hard rule has nothing to spare.</param>
internal readonly record struct CutSpan(
    double From,
    double To,
    Line Diameter,
    Line AtLeast,
    Line Thinnest,
    Line Softened,
    double Earliest
)
{
    /// <summary>The two as one, when the next goes straight on from this.</summary>
    public CutSpan? Joined(CutSpan next)
    {
        if (
            next.From != To
            || next.Earliest != Earliest
            || !Diameter.GoesOn(next.Diameter, this, next)
            || !AtLeast.GoesOn(next.AtLeast, this, next)
            || !Thinnest.GoesOn(next.Thinnest, this, next)
            || !Softened.GoesOn(next.Softened, this, next)
        )
            return null;
        return this with
        {
            To = next.To,
            Diameter = Diameter.To(next.Diameter),
            AtLeast = AtLeast.To(next.AtLeast),
            Thinnest = Thinnest.To(next.Thinnest),
            Softened = Softened.To(next.Softened),
        };
    }

    /// <summary>A line's value at a cut.</summary>
    public double At(Line line, double x) =>
        To > From ? line.A + (line.B - line.A) * (x - From) / (To - From) : line.A;
}

/// <summary>A straight line by its values at both ends of a span.</summary>
internal readonly record struct Line(double A, double B)
{
    public Line To(Line next) => new(A, next.B);

    public bool GoesOn(Line next, CutSpan here, CutSpan there)
    {
        if (Math.Abs(B - next.A) > Piece.Rounding)
            return false;
        var whole = there.To - here.From;
        var straight = whole > 0 ? A + (next.B - A) * (here.To - here.From) / whole : A;
        return Math.Abs(straight - B) <= Piece.Rounding;
    }
}
