using Shaftwright.CrackTest;
using Shaftwright.Measures;

namespace Shaftwright.Tests.CrackTest;

/// <summary>Tests and work as a fabricator would write them down.</summary>
internal static class Tested
{
    /// <summary>A Sunday afternoon, an hour east of Greenwich.</summary>
    public static DateTimeOffset Start { get; } = new(2026, 3, 1, 14, 0, 0, TimeSpan.FromHours(1));

    public static Measured<T> Of<T>(string typed)
        where T : IDimension<T> => Measured<T>.Read(typed, "test").Required;

    public static DateTimeOffset After(double minutes) => Start.AddMinutes(minutes);

    /// <summary>A penetrant test by the book: 15 min of dwell, 10 min of development, warm and light enough.</summary>
    public static TestRun Penetrant(
        string id,
        DateTimeOffset begun,
        Place[] places,
        double dwell = 15,
        double development = 10,
        params Indication[] marks
    ) =>
        new()
        {
            Id = id,
            Method = TestMethod.ColourPenetrant,
            Notes =
            [
                new()
                {
                    Id = id + "-note",
                    Places = places,
                    MakersDwell = Of<Duration>("10 min"),
                    PartTemperature = Of<Temperature>("18 °C"),
                    Light = Of<Illuminance>("800 lx"),
                },
            ],
            Steps = Steps(
                id,
                begun,
                (TestStep.Cleaned, 0),
                (TestStep.Dried, 5),
                (TestStep.PenetrantOn, 6),
                (TestStep.Removed, 6 + dwell),
                (TestStep.DriedAgain, 9 + dwell),
                (TestStep.DeveloperOn, 10 + dwell),
                (TestStep.FirstLook, 11 + dwell),
                (TestStep.FinalLook, 10 + dwell + development)
            ),
            Indications = marks,
        };

    /// <summary>A magnetic particle test by the book.</summary>
    public static TestRun Magnetic(string id, DateTimeOffset begun, params Place[] places) =>
        new()
        {
            Id = id,
            Method = TestMethod.MagneticParticle,
            Notes =
            [
                new()
                {
                    Id = id + "-note",
                    Places = places,
                    Light = Of<Illuminance>("800 lx"),
                    BetweenDirections = Of<Angle>("90°"),
                },
            ],
            Steps = Steps(
                id,
                begun,
                (TestStep.Cleaned, 0),
                (TestStep.Dried, 5),
                (TestStep.FieldChecked, 6),
                (TestStep.MagnetisedOnce, 7),
                (TestStep.MagnetisedAcross, 9),
                (TestStep.Demagnetised, 12)
            ),
        };

    public static StepDone[] Steps(
        string id,
        DateTimeOffset begun,
        params (TestStep Step, double Minutes)[] steps
    ) =>
        [
            .. steps.Select(
                (s, i) =>
                    new StepDone
                    {
                        Id = $"{id}-s{i}",
                        Step = s.Step,
                        At = begun.AddMinutes(s.Minutes),
                    }
            ),
        ];

    public static Indication Mark(
        string id,
        Place place,
        string length,
        string width,
        string position = "300 mm",
        bool? crack = null
    ) =>
        new()
        {
            Id = id,
            Place = place,
            Position = Of<Distance>(position),
            Length = Of<Distance>(length),
            Width = Of<Distance>(width),
            Direction = Of<Angle>("0°"),
            Angle = Of<Angle>("0°"),
            Crack = crack,
        };

    public static WorkDone Work(WorkKind kind, DateTimeOffset at) =>
        new()
        {
            Id = $"{kind}-{at.Ticks}",
            Kind = kind,
            At = at,
        };

    public static CrackTestResult Solve(CrackTestInput input) => CrackTestSolver.Solve(input);
}
