namespace Shaftwright.Cut;

/// <summary>How far the heat of a weld changed the metal, as measured on a sample of the same offcuts.</summary>
/// <param name="Band">From the middle of the weld, on the side where it reached farther, with what the reading can be off, mm.</param>
/// <param name="BothSides">True when it was read on both sides; otherwise <paramref name="Band"/> is no less than the usual one.</param>
/// <remarks>It lives here, with the first stage that needs it: the cut keeps steps and splines out of it, and through the shaft that
/// the cut makes the strength, the crack test, the press and the fitting go by the same width.</remarks>
public sealed record MeasuredHeat(double Band, bool BothSides);
