using Shaftwright.Measures;

namespace Shaftwright.Strength;

/// <summary>The fusion depth that counts.</summary>
public static class FusionDepths
{
    /// <summary>How far a depth may be read beyond the bar's middle and still be believed, mm. Common practice, no source.</summary>
    public const double Beyond = 0.5;

    /// <summary>The depth, mm: measured on the sample if there is one that may be believed, else typed, else the low guess.</summary>
    /// <param name="strength">What is known of the weld.</param>
    /// <param name="leastRadius">Least radius of the smaller bar, mm.</param>
    /// <param name="mostRadius">Largest radius of it, mm.</param>
    /// <returns>Measured: from the least reading less its ± to the largest with it; with readings not all round, or deeper than
    /// the bar is, never more than the guess. Typed or guessed: the low end alone.</returns>
    public static Band Of(StrengthInput strength, double leastRadius, double mostRadius)
    {
        ArgumentNullException.ThrowIfNull(strength);
        Band guess = new(
            StrengthFields.LeastFusion * leastRadius,
            StrengthFields.LeastFusion * mostRadius
        );
        Band Within(double low, double high) =>
            new(Math.Min(leastRadius, low), Math.Min(mostRadius, high));
        if (SampleReadings.Of(strength.Sample) is { Fusion: { } seen } sample)
            return !sample.AllRound || seen.Low > mostRadius + Beyond
                ? new(Math.Min(seen.Low, guess.Low), Math.Min(seen.Low, guess.High))
                : Within(seen.Low, seen.High);
        if (strength.FusionDepth is not { } typed)
            return guess;
        var a = typed.PlusMinus ?? StrengthFields.FusionDepth.UsualPlusMinus;
        var least = Math.Max(0, typed.Value - a);
        return Within(least, strength.FusionFromSample ? typed.Value + a : least);
    }
}
