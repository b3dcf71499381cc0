using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>What is known of a test: of each thing the last note that says it and was not taken back.</summary>
public sealed record TestConditions
{
    private TestConditions() { }

    /// <summary>Places that were looked at; empty when not said.</summary>
    public IReadOnlyList<Place> Places { get; private init; } = [];

    /// <summary>Shortest dwell by the maker; null when not noted.</summary>
    public Measured<Duration>? MakersDwell { get; private init; }

    /// <summary>Shortest development by the maker; null when not noted.</summary>
    public Measured<Duration>? MakersDevelopment { get; private init; }

    /// <summary>Temperature of the part; null when not noted.</summary>
    public Measured<Temperature>? PartTemperature { get; private init; }

    /// <summary>White light at the part; null when not noted.</summary>
    public Measured<Illuminance>? Light { get; private init; }

    /// <summary>UV-A at the part; null when not noted.</summary>
    public Measured<Irradiance>? UltraViolet { get; private init; }

    /// <summary>Angle between the directions of magnetising; null when not noted.</summary>
    public Measured<Angle>? BetweenDirections { get; private init; }

    /// <summary>Shortest dwell, s: the standard's or the maker's, the longer.</summary>
    public double LeastDwell => Math.Max(TestLimits.LeastDwell, MakersDwell?.Value ?? 0);

    /// <summary>Dwell to aim at, s: the usual one as long as the maker's is not known.</summary>
    public double DwellToAimAt => MakersDwell is null ? TestLimits.UsualDwell : LeastDwell;

    /// <summary>Longest dwell, s: the standard's, or the maker's shortest where that is longer still.</summary>
    public double MostDwell => Math.Max(TestLimits.MostDwell, MakersDwell?.Value ?? 0);

    /// <summary>Shortest development, s: the standard's or the maker's, the longer.</summary>
    public double LeastDevelopment =>
        Math.Max(TestLimits.LeastDevelopment, MakersDevelopment?.Value ?? 0);

    /// <summary>Longest development before marks spread too far, s.</summary>
    public double MostDevelopment => Math.Max(TestLimits.MostDevelopment, LeastDevelopment);

    /// <summary>What is known of a test.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="run"/> is null.</exception>
    public static TestConditions Of(TestRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var notes = Entries.Standing(run.Notes);
        return new()
        {
            Places = notes.LastOrDefault(n => n.Places.Count > 0)?.Places ?? [],
            MakersDwell = Last(n => n.MakersDwell),
            MakersDevelopment = Last(n => n.MakersDevelopment),
            PartTemperature = Last(n => n.PartTemperature),
            Light = Last(n => n.Light),
            UltraViolet = Last(n => n.UltraViolet),
            BetweenDirections = Last(n => n.BetweenDirections),
        };

        T? Last<T>(Func<TestNote, T?> what)
            where T : class => notes.Select(what).LastOrDefault(v => v is not null);
    }
}
