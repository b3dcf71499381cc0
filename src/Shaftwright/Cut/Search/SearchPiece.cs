using Shaftwright.Donors;

namespace Shaftwright.Cut.Search;

/// <summary>One end of a shaft on the shelf in one place of the new shaft, with the best it can do in each goal.</summary>
internal sealed class SearchPiece
{
    public SearchPiece(
        int donor,
        bool far,
        Piece piece,
        JoinPlan plan,
        double walked,
        double stub,
        HeatedMetal metal,
        double? newOverCarried,
        double? restToScrap
    )
    {
        Donor = donor;
        Far = far;
        Piece = piece;
        Walked = walked;
        Stub = stub;
        Spans = CutSpans.Of(piece, plan, stub);
        SoftYield = metal.Softened(piece.Donor.Steel, piece.End);
        Yardstick = newOverCarried;
        Rest = restToScrap;
        Low = High = double.NaN;
        if (Spans.Count == 0)
            return;
        Low = Spans.Min(s => s.From);
        High = Spans.Max(s => s.To);
        Thin = Spans.Min(s => Math.Min(s.Diameter.A, s.Diameter.B));
        Thick = Spans.Max(s => Math.Max(s.Diameter.A, s.Diameter.B));
        // The weld's metal counts as no stronger than either piece's, so its ring carries no more than one of this metal would.
        Carries = Math.Min(
            metal.Bar(SoftYield, Spans.Max(s => Math.Max(s.Thinnest.A, s.Thinnest.B))),
            metal.Ring(SoftYield, Spans.Max(s => Math.Max(s.AtLeast.A, s.AtLeast.B)))
        );
        Softens = Spans.Min(s => Math.Min(s.Softened.A, s.Softened.B));
        Scraps = Rest is { } rest ? Math.Max(0, rest - High) : 0;
    }

    /// <summary>Place of the shaft on the shelf.</summary>
    public int Donor { get; }

    /// <summary>True for the end it was not walked from.</summary>
    public bool Far { get; }

    /// <summary>The piece, with its rules.</summary>
    public Piece Piece { get; }

    /// <summary>How far the whole shaft was walked, mm.</summary>
    public double Walked { get; }

    /// <summary>Its end beyond the joint's seat, mm.</summary>
    public double Stub { get; }

    /// <summary>Its sound cuts.</summary>
    public List<CutSpan> Spans { get; }

    /// <summary>Shear yield of its softened metal, MPa.</summary>
    public double SoftYield { get; }

    /// <summary>New torque ÷ what it carried; null when unknown.</summary>
    public double? Yardstick { get; }

    /// <summary>Good bar from the joint's seat on, mm, when what is left of it after the cut goes to scrap; else null.</summary>
    public double? Rest { get; }

    // The best over all its cuts: no pair with it does better.
    public double Low { get; }
    public double High { get; }
    public double Thin { get; }
    public double Thick { get; }
    public double Carries { get; }
    public double Softens { get; }
    public double Scraps { get; }
}
