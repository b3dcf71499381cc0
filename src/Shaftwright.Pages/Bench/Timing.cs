using System.Globalization;

namespace Shaftwright.Pages.Bench;

/// <summary>How a timed piece of work stands at an instant.</summary>
public enum TimingPhase
{
    /// <summary>The wall clock says a time before it began.</summary>
    NotBegun,

    /// <summary>It must wait.</summary>
    Running,

    /// <summary>Its time has come.</summary>
    Due,

    /// <summary>Its time has passed.</summary>
    Over,
}

/// <summary>One clock at one instant, in words for the screen. It shows times and judges nothing.</summary>
/// <param name="Phase">How it stands.</param>
/// <param name="Before">What stands before the big number.</param>
/// <param name="Big">The number of the moment.</param>
/// <param name="After">What stands behind it.</param>
public sealed record Timing(TimingPhase Phase, string Before, string Big, string After)
{
    /// <summary>How a clock stands.</summary>
    /// <param name="what">What it times, as in "Penetrant".</param>
    /// <param name="since">When it began.</param>
    /// <param name="due">When its time has come.</param>
    /// <param name="latest">When it is too late; null when it never is.</param>
    /// <param name="now">The instant.</param>
    public static Timing At(
        string what,
        DateTimeOffset since,
        DateTimeOffset due,
        DateTimeOffset? latest,
        DateTimeOffset now
    )
    {
        if (now < since)
            return new(
                TimingPhase.NotBegun,
                $"{what}: begins in",
                Digits(since - now),
                "by this clock. Is it right?"
            );
        if (now < due)
            return new(
                TimingPhase.Running,
                what + ":",
                Digits(due - now),
                $"left of {Words(due - since)}"
            );
        if (latest is not { } end)
            return new(TimingPhase.Due, $"{what}: time is up since", Digits(now - due), "");
        return now <= end
            ? new(
                TimingPhase.Due,
                $"{what}: time is up. It may stay",
                Digits(end - now),
                $"more; {Words(now - since)} so far"
            )
            : new(
                TimingPhase.Over,
                $"{what}: too long by",
                Digits(now - end),
                $"over the {Words(end - since)} that are allowed"
            );
    }

    /// <summary>"11:40", "1:02:05", "2 d 3 h"; a running second counts until it is over.</summary>
    public static string Digits(TimeSpan span)
    {
        var s = (long)Math.Floor(span.TotalSeconds);
        return s switch
        {
            >= 48 * 3600 => string.Create(
                CultureInfo.InvariantCulture,
                $"{s / 86400} d {s % 86400 / 3600} h"
            ),
            >= 3600 => string.Create(
                CultureInfo.InvariantCulture,
                $"{s / 3600}:{s % 3600 / 60:00}:{s % 60:00}"
            ),
            _ => string.Create(CultureInfo.InvariantCulture, $"{s / 60}:{s % 60:00}"),
        };
    }

    /// <summary>"15 min", "1 h 5 min", "2 days".</summary>
    public static string Words(TimeSpan span)
    {
        var m = (long)Math.Floor(span.TotalMinutes);
        return m switch
        {
            < 1 => string.Create(CultureInfo.InvariantCulture, $"{(long)span.TotalSeconds} s"),
            <= 60 => string.Create(CultureInfo.InvariantCulture, $"{m} min"),
            >= 48 * 60 when m % 1440 == 0 => string.Create(
                CultureInfo.InvariantCulture,
                $"{m / 1440} days"
            ),
            _ => string.Create(CultureInfo.InvariantCulture, $"{m / 60} h {m % 60} min"),
        };
    }
}
