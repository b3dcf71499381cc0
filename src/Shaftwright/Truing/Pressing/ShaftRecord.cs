namespace Shaftwright.Truing.Pressing;

/// <summary>What other records say of the shaft that comes under the press. The default says nothing.</summary>
/// <param name="Stopped">True when a mark or a crack on record stops the job.</param>
/// <param name="Welded">True when a weld is on record, whatever the turns under the dial say.</param>
/// <param name="WeldedSinceTempered">True when something was welded after the last tempering on record.</param>
/// <param name="Now">What time it is: a stroke dated later teaches nothing. Null when nobody said.</param>
public readonly record struct ShaftRecord(
    bool Stopped,
    bool Welded,
    bool WeldedSinceTempered,
    DateTimeOffset? Now = null
);
