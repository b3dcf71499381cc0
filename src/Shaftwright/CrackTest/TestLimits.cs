using Shaftwright.Kept;

namespace Shaftwright.CrackTest;

/// <summary>What the standards ask of a test, each with its source and how well that is known.</summary>
/// <remarks>Nobody here has the standards at hand: marks "from memory" are to be read in them before they are quoted.</remarks>
public static class TestLimits
{
    /// <summary>Shortest dwell, s. Source: ISO 3452-1, 8.4.2 (looked up in AS ISO 3452.1:2020).</summary>
    public const double LeastDwell = 5 * 60;

    /// <summary>Longest dwell, s; over it the part is cleaned and the test begins again. Source as <see cref="LeastDwell"/>.</summary>
    public const double MostDwell = 60 * 60;

    /// <summary>Dwell aimed at when the maker's is not known, s. Common practice, no source.</summary>
    public const double UsualDwell = 15 * 60;

    /// <summary>Shortest development, s. Source: ISO 3452-1, from memory.</summary>
    public const double LeastDevelopment = 10 * 60;

    /// <summary>Usual longest development, s. Source: ISO 3452-1, from memory.</summary>
    public const double MostDevelopment = 30 * 60;

    /// <summary>Coldest part, °C; colder needs the procedure of ISO 3452-6. Source: ISO 3452-2 and -6, scope.</summary>
    public const double LeastTemperature = 10;

    /// <summary>Hottest part, °C; hotter needs the procedure of ISO 3452-5. Source: ISO 3452-2, scope.</summary>
    public const double MostTemperature = 50;

    /// <summary>Least white light for colours and black ink, lx. Source: ISO 3059, from memory.</summary>
    public const double LeastWhiteLight = 500;

    /// <summary>Most stray white light for fluorescent marks, lx. Source: ISO 3059, from memory.</summary>
    public const double MostStrayLight = 20;

    /// <summary>Least UV-A for fluorescent marks, W/m². Source: ISO 3059, from memory.</summary>
    public const double LeastUltraViolet = 10;

    /// <summary>Least angle between a crack and the field that shows it, rad. Source: ISO 9934-1, from memory.</summary>
    public const double LeastCrackToField = 30 * Math.PI / 180;

    /// <summary>Two directions of magnetising must differ by twice <see cref="LeastCrackToField"/> or more, or a crack that halves the
    /// smaller angle between them lies too near both, rad. Derived from it.</summary>
    public const double LeastBetweenDirections = 2 * LeastCrackToField;

    /// <summary>Waiting time for cracks from hydrogen after the last heat, s: they come up to 24 h late, some codes ask 24 to 48 h;
    /// the longer is taken.</summary>
    public const double HydrogenDelay = 48 * 3600;

    /// <summary>How far two clocks may disagree before it matters, s. Common practice, no source.</summary>
    public const double ClockSkew = FutureDates.Skew;

    internal const string Dwell =
        "ISO 3452-1, 8.4.2 (5 to 60 min, and not less than the maker's time)";
    internal const string Development = "ISO 3452-1 (10 to 30 min usual), from memory";
    internal const string Warmth = "ISO 3452-2 and -6, scope (10 to 50 °C)";
    internal const string Sight = "ISO 3059, from memory";
    internal const string Temper =
        "common practice, no source: the test that counts comes after the last heat that was asked for";
    internal const string Field = "ISO 9934-1, from memory";
    internal const string Practice = "common practice, no source";
    internal const string Hydrogen =
        "cracks from hydrogen come up to 24 h late and some codes ask 24 to 48 h; the longer is taken";

    internal static bool IsMagnetic(this TestMethod method) =>
        method is TestMethod.MagneticParticle or TestMethod.FluorescentMagneticParticle;

    internal static bool IsFluorescent(this TestMethod method) =>
        method is TestMethod.FluorescentPenetrant or TestMethod.FluorescentMagneticParticle;
}
