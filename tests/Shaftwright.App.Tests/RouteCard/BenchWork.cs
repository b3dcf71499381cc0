using Shaftwright.CrackTest;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.App.Tests.RouteCards;

/// <summary>Tests and work as written down at the bench.</summary>
internal static class BenchWork
{
    /// <summary>A penetrant test by the book with its final look at an instant.</summary>
    public static TestRun Looked(string id, DateTimeOffset at, params Place[] places) =>
        new()
        {
            Id = id,
            Notes =
            [
                new()
                {
                    Id = id + "n",
                    Places = places,
                    PartTemperature = Measured<Temperature>.Of(18, Temperature.Celsius),
                    Light = Measured<Illuminance>.Of(800, Illuminance.Lux),
                    MakersDwell = Measured<Duration>.Of(10, Duration.Minute),
                },
            ],
            Steps =
            [
                .. new (TestStep Step, double Minutes)[]
                {
                    (TestStep.Cleaned, -40),
                    (TestStep.Dried, -35),
                    (TestStep.PenetrantOn, -30),
                    (TestStep.Removed, -15),
                    (TestStep.DriedAgain, -13),
                    (TestStep.DeveloperOn, -12),
                    (TestStep.FirstLook, -11),
                    (TestStep.FinalLook, 0),
                }.Select(s => new StepDone
                {
                    Id = id + s.Step,
                    Step = s.Step,
                    At = at.AddMinutes(s.Minutes),
                }),
            ],
        };

    /// <summary>A job with every test on record when all its work was signed at one instant.</summary>
    public static JobDocument Tested(JobDocument document, DateTimeOffset at) =>
        With(
            document,
            [
                Looked("now", at, Place.ButtWeld, Place.SleeveInnerEnd, Place.SleeveOuterEnd),
                Looked(
                    "late",
                    at.AddHours(49),
                    Place.ButtWeld,
                    Place.SleeveInnerEnd,
                    Place.SleeveOuterEnd
                ),
                Looked("event", at.AddHours(61), Place.SleeveInnerEnd, Place.SleeveOuterEnd),
            ],
            new WorkDone
            {
                Id = "event work",
                Kind = WorkKind.FirstEvent,
                At = at.AddHours(60),
            }
        );

    public static JobDocument With(JobDocument document, TestRun[] tests, params WorkDone[] work)
    {
        var had = document.Job.CrackTest ?? new();
        return document with
        {
            Job = document.Job with
            {
                CrackTest = had with
                {
                    Tests = [.. had.Tests, .. tests],
                    Work = [.. had.Work, .. work],
                },
            },
        };
    }
}
