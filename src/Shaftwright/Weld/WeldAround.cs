using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Strength;

namespace Shaftwright.Weld;

/// <summary>What the weld takes from the stages before it; each part may be missing.</summary>
/// <param name="Cut">The cut's answer.</param>
/// <param name="CutInput">What was asked of the cut.</param>
/// <param name="Donors">The donors.</param>
/// <param name="Strength">What is known of the weld's strength, the sample with it.</param>
public sealed record WeldAround(
    CutResult? Cut = null,
    CutInput? CutInput = null,
    DonorsResult? Donors = null,
    StrengthInput? Strength = null
)
{
    /// <summary>Diameter of a piece where it is welded, mm; as typed at the vee, else from the cut.</summary>
    internal double? Diameter(WeldInput weld, ShaftEnd end) =>
        end == ShaftEnd.Inner
            ? weld.InnerDiameter?.Value ?? Cut?.InnerDiameter
            : weld.OuterDiameter?.Value ?? Cut?.OuterDiameter;

    /// <summary>What the donors stage knows of a piece's steel.</summary>
    internal SteelKnown? Steel(ShaftEnd end) =>
        end == ShaftEnd.Inner ? Donors?.InnerEnd?.Steel : Donors?.OuterEnd?.Steel;
}
