namespace Shaftwright.Measures;

/// <summary>How sharply load works at the edge of a crack. Internal N/mm^1.5.</summary>
/// <remarks>Shown only; nobody measures it with a tape.</remarks>
public static class StressIntensity
{
    /// <summary>Megapascal root metre, √1000 N/mm^1.5.</summary>
    public static readonly Unit MPaRootMetre = new("MPa√m", 31.6227766016838m, []);

    /// <summary>Thousand pounds-force a square inch, root inch.</summary>
    public static readonly Unit KsiRootInch = new("ksi√in", 34.7485411186906m, []);
}
