namespace Shaftwright.Truing;

/// <summary>What earlier stages know of the shaft's places, from its inner end, mm. Each may be missing.</summary>
public sealed record ShaftPlaces
{
    /// <summary>Overall length.</summary>
    public double? Overall { get; init; }

    /// <summary>Middle of the weld.</summary>
    public double? WeldAt { get; init; }

    /// <summary>Centre of the inner joint.</summary>
    public double? InnerCentre { get; init; }

    /// <summary>Centre of the outer joint.</summary>
    public double? OuterCentre { get; init; }
}
