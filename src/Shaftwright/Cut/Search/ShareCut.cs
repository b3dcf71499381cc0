namespace Shaftwright.Cut.Search;

/// <summary>One way of making one shaft: two ends and a cut. Shafts are numbered as on the shelf.</summary>
/// <param name="Inner">Shaft that gives the inner end.</param>
/// <param name="InnerFar">True for the end it was not walked from.</param>
/// <param name="InnerAt">Where it is cut, from that end, mm.</param>
/// <param name="Outer">Shaft that gives the outer end.</param>
/// <param name="OuterFar">True for the end it was not walked from.</param>
/// <param name="OuterAt">Where it is cut, from that end, mm.</param>
/// <param name="Carries">The weakest of weld and sleeve ends, N·mm, low end.</param>
/// <param name="Step">Difference of the diameters at the weld, mm.</param>
public readonly record struct ShareCut(
    int Inner,
    bool InnerFar,
    double InnerAt,
    int Outer,
    bool OuterFar,
    double OuterAt,
    double Carries,
    double Step
);
