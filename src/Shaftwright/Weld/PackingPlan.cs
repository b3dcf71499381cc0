using Shaftwright.Cut;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Weld;

/// <summary>What a mistake in packing leaves.</summary>
/// <param name="Words">The mistake.</param>
/// <param name="Low">How low the axis stays, mm; negative for too high.</param>
/// <param name="Aside">How far aside it stands, mm.</param>
public sealed record PackingMistake(string Words, double Low, double Aside)
{
    /// <summary>How far off the axis is in all, mm.</summary>
    public double Off => double.Hypot(Low, Aside);
}

/// <summary>One way of bringing the lower piece up, right, and what goes wrong with it.</summary>
/// <param name="Way">Which.</param>
/// <param name="Pack">Thickness of each pack, mm.</param>
/// <param name="BlockAside">How far the block is then moved aside, away from the packed face's push, mm; 0 for the others.</param>
/// <param name="OwnBlock">True when the piece needs a block of its own.</param>
/// <param name="Mistakes">What goes wrong.</param>
public sealed record PackingChoice(
    PackingWay Way,
    double Pack,
    double BlockAside,
    bool OwnBlock,
    IReadOnlyList<PackingMistake> Mistakes
);

/// <summary>A piece that stands on a taper in its vee.</summary>
/// <param name="End">Which piece.</param>
/// <param name="HalfAngle">Half the taper's included angle, rad.</param>
/// <param name="ThickTowardsWeld">True when it is thicker at the edge nearer the weld.</param>
/// <param name="Tilt">Tilt of its axis if it lies on the faces or on even packs, rad.</param>
/// <param name="JointHigh">How much too high its axis is then at the joint, mm; negative for too low; null when the distance to the joint is not known.</param>
/// <param name="MorePack">How much thicker the pack on each face must be at the thin edge of the vee than at the thick one, mm.</param>
public sealed record TaperStand(
    ShaftEnd End,
    double HalfAngle,
    bool ThickTowardsWeld,
    double Tilt,
    double? JointHigh,
    double MorePack
);

/// <summary>How the two pieces come in line.</summary>
public sealed record PackingPlan
{
    /// <summary>Which piece is lower.</summary>
    public required ShaftEnd Lower { get; init; }

    /// <summary>How much lower its axis lies, mm.</summary>
    public required double Lift { get; init; }

    /// <summary>Expanded uncertainty of that, k = 2, mm.</summary>
    public required double LiftUncertainty { get; init; }

    /// <summary>Included angle of the vee that the lower piece lies in, rad.</summary>
    public required double VeeAngle { get; init; }

    /// <summary>The three ways.</summary>
    public required IReadOnlyList<PackingChoice> Choices { get; init; }
}

/// <summary>Vees of two angles or sizes, the three ways of packing with their mistakes, and pieces that stand on a taper.</summary>
/// <remarks>In a vee of half-angle α whose apex is b over the table a bar of radius r lies at b + r/sin α. Own derivation, plane
/// geometry; check values Published/vee-shims.json.</remarks>
public static class PackingSolver
{
    /// <summary>The plan for two pieces, or null where an angle or a height is missing.</summary>
    /// <param name="weld">The vees.</param>
    /// <param name="inner">Diameter of the inner-end piece, mm.</param>
    /// <param name="outer">Diameter of the outer-end piece, mm.</param>
    public static PackingPlan? Plan(WeldInput weld, double inner, double outer)
    {
        ArgumentNullException.ThrowIfNull(weld);
        var a = Of(weld, weld.InnerVee, weld.InnerDiameter, WeldFields.InnerDiameter, inner);
        var b = Of(weld, weld.OuterVee, weld.OuterDiameter, WeldFields.OuterDiameter, outer);
        if (a is not { } i || b is not { } o)
            return null;
        // One vee, or two alike: what their height is does not matter.
        if (i.Apex is null != o.Apex is null)
            return null;
        if (i.Apex is null && Math.Abs(i.Vee - o.Vee) > 1e-12)
            return null;
        var difference = i.Height - o.Height;
        var lower = difference < 0 ? ShaftEnd.Inner : ShaftEnd.Outer;
        var vee = lower == ShaftEnd.Inner ? i.Vee : o.Vee;
        var lift = Math.Abs(difference);
        return new()
        {
            Lower = lower,
            Lift = lift,
            LiftUncertainty =
                2 * Math.Sqrt(i.Uncertainty * i.Uncertainty + o.Uncertainty * o.Uncertainty),
            VeeAngle = vee,
            Choices = Choices(lift, vee),
        };
    }

    /// <summary>The three ways, for an axis that lies this much low in a vee.</summary>
    /// <param name="lift">mm.</param>
    /// <param name="vee">Included angle, rad.</param>
    public static IReadOnlyList<PackingChoice> Choices(double lift, double vee)
    {
        var (sin, cos) = Math.SinCos(vee / 2);
        var face = lift * sin;
        var aside = face / cos;
        return
        [
            new(
                PackingWay.BothFaces,
                face,
                0,
                OwnBlock: false,
                [
                    new("the pack on one face only", lift - face / (2 * sin), face / (2 * cos)),
                    new("the packs under the other piece", 2 * lift, 0),
                    new("the thickness meant for under the block", lift - lift / sin, 0),
                ]
            ),
            new(
                PackingWay.UnderBlock,
                lift,
                0,
                OwnBlock: true,
                [
                    new("half the diameter difference under the block", lift - face, 0),
                    new("the pack under the other block", 2 * lift, 0),
                ]
            ),
            new(
                PackingWay.OneFace,
                2 * face,
                aside,
                OwnBlock: true,
                [
                    new("the block not moved aside", 0, aside),
                    new("the block moved the wrong way", 0, 2 * aside),
                    new("a pack of half that thickness", lift - face / (2 * sin), aside / 2),
                ]
            ),
        ];
    }

    /// <summary>How a piece stands that is thicker at one edge of its vee; null when it is not known to be.</summary>
    /// <param name="weld">The vees.</param>
    /// <param name="end">Which piece.</param>
    public static TaperStand? Taper(WeldInput weld, ShaftEnd end)
    {
        ArgumentNullException.ThrowIfNull(weld);
        var block = end == ShaftEnd.Inner ? weld.InnerVee : weld.OuterVee;
        if (
            block is not { DiameterNearWeld: { } near, DiameterFar: { } far, Length: { } length }
            || (block.Angle ?? weld.VeeAngle) is not { } angle
        )
            return null;
        var rise = (near.Value - far.Value) / 2 / length.Value;
        var half = Math.Atan(Math.Abs(rise));
        if (half >= angle.Value / 2)
            return null;
        var tilt = Vee.TaperTilt(half, angle.Value);
        // Levelled by its diameter in the middle of the vee, it is right there but for the cosine of the taper.
        var middle = (near.Value + far.Value) / 4;
        double? high = block.ToJoint is { } reach
            ? Math.Sign(rise) * (reach.Value + length.Value / 2) * Math.Tan(tilt)
                - middle * (1 - Math.Cos(half)) / Math.Sin(angle.Value / 2)
            : null;
        return new(end, half, rise > 0, tilt, high, Math.Abs(near.Value - far.Value) / 2);
    }

    /// <summary>A piece in its vee: angle, height of the axis, apex over the table if it was found, standard uncertainty.</summary>
    private static (double Vee, double? Apex, double Height, double Uncertainty)? Of(
        WeldInput weld,
        VeeBlock? block,
        Measured<Distance>? typed,
        Field<Distance> field,
        double diameter
    )
    {
        if ((block?.Angle ?? weld.VeeAngle) is not { } angle)
            return null;
        var uD = typed is null
            ? field.UsualPlusMinus / Math.Sqrt(3)
            : field.StandardUncertainty(typed);
        var vee = angle.Value;
        var sin = Math.Sin(vee / 2);
        if (block is not { BarDiameter: { } bar, HeightOverBar: { } over })
            return (vee, null, diameter / 2 / sin, uD / 2 / sin);
        double Height(double h, double b, double v, double d) =>
            Vee.ApexHeight(h, b, v) + d / 2 / Math.Sin(v / 2);
        var height = Height(over.Value, bar.Value, vee, diameter);
        var uOver = VeeBlockFields.HeightOverBar.StandardUncertainty(over);
        var uBar = VeeBlockFields.BarDiameter.StandardUncertainty(bar);
        var uVee = VeeBlockFields.Angle.StandardUncertainty(angle);
        var u2 =
            uOver * uOver
            + Square(Height(over.Value, bar.Value + uBar, vee, diameter) - height)
            + Square(Height(over.Value, bar.Value, vee + uVee, diameter) - height)
            + Square(uD / 2 / sin);
        return (vee, Vee.ApexHeight(over.Value, bar.Value, vee), height, Math.Sqrt(u2));
    }

    private static double Square(double x) => x * x;
}
