namespace Shaftwright.Measures;

/// <summary>Spans of time. Internal unit s; a bare number is minutes, as bench clocks are read.</summary>
public sealed class Duration : IDimension<Duration>
{
    private Duration() { }

    /// <summary>Minute.</summary>
    public static readonly Unit Minute = new("min", 60m, ["mins", "minute", "minutes"]);

    /// <summary>Second.</summary>
    public static readonly Unit Second = new("s", 1m, ["sec", "secs", "second", "seconds"])
    {
        OftenOfDoubt = true,
    };

    /// <summary>Hour.</summary>
    public static readonly Unit Hour = new("h", 3600m, ["hr", "hrs", "hour", "hours"]);

    /// <inheritdoc/>
    public static string Word => "time";

    /// <inheritdoc/>
    public static IReadOnlyList<Unit> Units { get; } = [Minute, Second, Hour];

    /// <inheritdoc/>
    public static IReadOnlyList<Ambiguity> Ambiguities { get; } =
    [new("m", "min (minutes)", "months"), new("'", "min (minutes)", "s (seconds)")];

    /// <inheritdoc/>
    public static string Examples => "15 min, 90 s, 1 h";
}
