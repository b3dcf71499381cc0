using Shaftwright.Donors;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Cut.Search;

/// <summary>Torque at first yield in metal that the heat of a weld has changed, low end of the range. It comes from the strength
/// stage, which stands after this one.</summary>
/// <param name="Softened">Shear yield of a donor's softened metal at an end, MPa, at least.</param>
/// <param name="Bar">Torque at which a round bar first yields: shear yield, MPa; diameter, mm; N·mm.</param>
/// <param name="Ring">The same of the fused ring of a butt weld. Both must rise with the yield and the diameter.</param>
public sealed record HeatedMetal(
    Func<SteelKnown, ShaftEnd, double> Softened,
    Func<double, double, double> Bar,
    Func<double, double, double> Ring
);

/// <summary>What the shelf is searched for.</summary>
public sealed record ShelfRequest
{
    /// <summary>The shelf.</summary>
    public required ShelfInput Shelf { get; init; }

    /// <summary>How the two are to be cut and joined.</summary>
    public required CutInput Cut { get; init; }

    /// <summary>The joints that the ends must fit; null where nothing is known of them.</summary>
    public JointsInput? Joints { get; init; }

    /// <summary>From the seat of one joint to the seat of the other, mm; null when the car does not say. A typed overall length
    /// goes first.</summary>
    public double? SeatToSeat { get; init; }

    /// <summary>Which side of the car the shaft is for.</summary>
    public Side Side { get; init; }

    /// <summary>Torque in the new shaft, the most it can be, N·mm; null when unknown.</summary>
    public double? Torque { get; init; }

    /// <summary>What heated metal carries.</summary>
    public required HeatedMetal Metal { get; init; }
}
