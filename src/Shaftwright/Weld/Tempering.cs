namespace Shaftwright.Weld;

/// <summary>Tempering and time compared: P = T(20 + log₁₀ t), T in K, t in h.</summary>
/// <remarks>Source: Hollomon and Jaffe, Trans. AIME 162, 1945; the constant 20 from memory. A stress relief whose P passes that of the
/// original temper softens the shaft.</remarks>
public static class Tempering
{
    /// <summary>The parameter.</summary>
    /// <param name="celsius">°C.</param>
    /// <param name="hours">h, more than 0.</param>
    public static double Parameter(double celsius, double hours) =>
        (celsius + 273.15) * (20 + Math.Log10(hours));
}
