using Shaftwright.Measures;

namespace Shaftwright.Cut;

/// <summary>How the ends are joined, in plain numbers, what was not said filled in; mm.</summary>
internal sealed record JoinPlan
{
    public JoinPlan(CutInput cut, MeasuredHeat? heat)
    {
        Gap = cut.RootGap?.Value ?? CutFields.UsualRootGap;
        Kerf = cut.Kerf?.Value ?? CutFields.UsualKerf;
        Facing = cut.Facing?.Value ?? CutFields.UsualFacing;
        SleeveFit = cut.SleeveFit?.Value ?? CutFields.UsualSleeveFit;
        Shrinkage = cut.Shrinkage?.Value ?? CutFields.UsualShrinkage;
        // A measured width replaces the usual one. One that was typed may ask for more room, and never for less.
        HeatBand = heat is { Band: var band }
            ? Math.Max(band, cut.HeatBand?.Value ?? 0)
            : cut.HeatBand?.Value ?? CutFields.UsualHeatBand;
        SlideRoom = cut.BootSlideRoom?.Value ?? CutFields.UsualBootSlideRoom;
        SleeveHalf = cut.SleeveLength?.Value / 2;
        SleeveOutside = SleeveHalf is null ? null : cut.SleeveOutside?.Value;
        InnerBootBore = cut.InnerBootBore?.Value;
        OuterBootBore = cut.OuterBootBore?.Value;
        PlusMinus =
            (cut.RootGap?.PlusMinus ?? CutFields.RootGap.UsualPlusMinus)
            + (cut.Shrinkage?.PlusMinus ?? CutFields.Shrinkage.UsualPlusMinus);
    }

    public double Gap { get; }
    public double Kerf { get; }
    public double Facing { get; }
    public double SleeveFit { get; }
    public double Shrinkage { get; }
    public double HeatBand { get; }
    public double SlideRoom { get; }
    public double? SleeveHalf { get; }
    public double? SleeveOutside { get; }
    public double? InnerBootBore { get; }
    public double? OuterBootBore { get; }

    /// <summary>The most the overall length may be off by gap and shrinkage together.</summary>
    public double PlusMinus { get; }

    /// <summary>What stays of the gap once the weld has drawn the ends together. It may be negative.</summary>
    public double GapLeft => Gap - Shrinkage;

    /// <summary>How far the sleeve reaches over each piece, from its cut face.</summary>
    public double SleeveReach => SleeveHalf is { } h ? Math.Max(0, h - GapLeft / 2) : 0;

    /// <summary>Length that the two pieces must have together for an overall length.</summary>
    public double PiecesTogether(double overall) => overall - GapLeft;

    /// <summary>True when the boot of that end slides over the sleeve.</summary>
    public bool BootPasses(ShaftEnd end) =>
        SleeveOutside is { } outside
        && (end == ShaftEnd.Inner ? InnerBootBore : OuterBootBore) is { } bore
        && bore >= outside;
}
