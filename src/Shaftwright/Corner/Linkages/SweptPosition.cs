namespace Shaftwright.Corner.Linkages;

/// <summary>The line of the shaft at one position that was asked for.</summary>
/// <param name="Place">Rack, power unit and the other wheel.</param>
/// <param name="Travel">Wheel centre over ride height, mm.</param>
/// <param name="End">Whether the linkage gets there.</param>
/// <param name="Line">Joint centres and axes, mm; null where it does not get there.</param>
public sealed record SweptPosition(LinkagePlace Place, double Travel, MoveEnd End, ShaftLine? Line);
