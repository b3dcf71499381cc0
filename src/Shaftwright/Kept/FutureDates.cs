namespace Shaftwright.Kept;

/// <summary>Records that are dated later than it is: a clock was wrong, or a time was typed wrong.</summary>
/// <remarks>Such a record proves nothing until its time is put right. What it asks for is asked all the same.</remarks>
public static class FutureDates
{
    /// <summary>How far two clocks may disagree before it matters, s. Common practice, no source.</summary>
    public const double Skew = 120;

    /// <summary>Whether a record is dated later than it is.</summary>
    /// <param name="at">When it says it was; null for one without a time.</param>
    /// <param name="now">What time it is; null when nobody said, and then nothing is later.</param>
    public static bool IsAhead(DateTimeOffset? at, DateTimeOffset? now) =>
        at is { } a && now is { } n && (a - n).TotalSeconds > Skew;
}
