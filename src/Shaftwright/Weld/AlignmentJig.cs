using Shaftwright.Cut;

namespace Shaftwright.Weld;

/// <summary>A block with two vees of different depth, one for each piece, so that both lie on one axis without shims; open between
/// them, where the weld is.</summary>
/// <param name="Angle">Included angle of both vees, rad.</param>
/// <param name="Width">Width of the block, mm.</param>
/// <param name="Height">Height of the two ends that hold the vees, mm.</param>
/// <param name="Base">Height of the bridge between them, mm.</param>
/// <param name="Hold">Length of each vee along the shaft, mm.</param>
/// <param name="Window">Length of the opening between them, mm.</param>
/// <param name="Axis">Height of the common axis over the underside, mm.</param>
/// <param name="InnerApex">Height of the edge where the inner piece's vee faces would meet, mm.</param>
/// <param name="OuterApex">The same for the outer piece, mm.</param>
/// <param name="InnerDiameter">Diameter that lies in the inner vee, mm.</param>
/// <param name="OuterDiameter">Diameter that lies in the outer vee, mm.</param>
public sealed record AlignmentJig(
    double Angle,
    double Width,
    double Height,
    double Base,
    double Hold,
    double Window,
    double Axis,
    double InnerApex,
    double OuterApex,
    double InnerDiameter,
    double OuterDiameter
)
{
    /// <summary>Least metal under a vee, mm. Common practice, no source.</summary>
    private const double Under = 12;

    /// <summary>Room for the torch on each side of the heat, mm. Common practice, no source.</summary>
    private const double TorchRoom = 15;

    /// <summary>The jig for two diameters.</summary>
    /// <param name="inner">Diameter of the inner piece in its vee, mm.</param>
    /// <param name="outer">Diameter of the outer piece in its vee, mm.</param>
    /// <param name="angle">Included angle, rad; from 60° to 120°.</param>
    /// <param name="heatBand">Width on each side of the weld that the heat changes, mm.</param>
    /// <remarks>A bar of diameter D in a vee of included angle α has its axis D / (2 sin(α/2)) over the apex. Derived; the same
    /// as for shims, docs/weld.md. The top lies a quarter of the smaller radius under the axis, above where either bar touches
    /// (D/2 · sin(α/2) under it).</remarks>
    public static AlignmentJig For(double inner, double outer, double angle, double heatBand)
    {
        var sin = Math.Sin(angle / 2);
        double Over(double diameter) => diameter / (2 * sin);
        var thick = Math.Max(inner, outer);
        var axis = Math.Ceiling(Under + Over(thick));
        var height = axis - Math.Min(inner, outer) / 8;
        var deepest = axis - Over(thick);
        var half = (height - deepest) * Math.Tan(angle / 2);
        return new(
            angle,
            Math.Ceiling(2 * half + 20),
            height,
            Math.Floor(deepest - 4),
            Math.Ceiling(1.5 * thick),
            Math.Ceiling(2 * (heatBand + TorchRoom)),
            axis,
            axis - Over(inner),
            axis - Over(outer),
            inner,
            outer
        );
    }

    /// <summary>The jig for a cut; null when the diameters at the weld are not known.</summary>
    /// <param name="cut">The cut.</param>
    /// <param name="angle">Included angle, rad; null takes 90°.</param>
    public static AlignmentJig? For(CutResult? cut, double? angle) =>
        cut is { InnerDiameter: { } inner, OuterDiameter: { } outer, Made: { } made }
            ? For(inner, outer, angle ?? Math.PI / 2, made.HeatBand)
            : null;

    /// <summary>Whole length, mm.</summary>
    public double Length => 2 * Hold + Window;

    /// <summary>Half the width of a vee at the top, mm.</summary>
    /// <param name="apex">Height of its apex, mm.</param>
    public double HalfOpening(double apex) => (Height - apex) * Math.Tan(Angle / 2);
}
