using Shaftwright.CrackTest;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.CrackTest;

/// <summary>The clock: what counts, what runs, until when, whatever slept in between.</summary>
public sealed class PenetrantClockTests
{
    private static readonly PublishedFile s_file = PublishedFile.Load("penetrant-clock");

    public static TheoryData<string> Ids() => PublishedFile.Ids("penetrant-clock");

    [Theory]
    [MemberData(nameof(Ids))]
    public void Solve_EachPublishedTiming_CountsOrSaysWhyNot(string id)
    {
        var row = s_file[id];
        var fluorescent = row.Has("ultraViolet");
        var run = Tested.Penetrant(
            "t",
            Tested.Start,
            [Place.ButtWeld],
            row.Input<Duration>("dwell").Value / 60,
            row.Input<Duration>("development").Value / 60
        );
        run = run with
        {
            Method = fluorescent ? TestMethod.FluorescentPenetrant : TestMethod.ColourPenetrant,
            Notes =
            [
                new()
                {
                    Id = "n",
                    Places = [Place.ButtWeld],
                    PartTemperature = row.Input<Temperature>("temperature"),
                    MakersDwell = Tested.Of<Duration>("5 min"),
                    Light = Tested.Of<Illuminance>("800 lx"),
                },
                new()
                {
                    Id = "n2",
                    MakersDwell = row.Has("makers") ? row.Input<Duration>("makers") : null,
                    Light = row.Has("light") ? row.Input<Illuminance>("light") : null,
                    UltraViolet = fluorescent ? row.Input<Irradiance>("ultraViolet") : null,
                },
            ],
        };
        var result = Tested.Solve(new() { Tests = [run] });
        var expected = row.ExpectedText("said");
        Assert.Equal(
            expected == "counts" ? RunVerdict.Counts : RunVerdict.DoesNotCount,
            result.Runs[0].Verdict
        );
        Assert.Equal(expected == "counts" ? [] : [expected], result.Findings.Select(f => f.Code));
    }

    private static TestRun UpTo(int steps, double dwell = 15, double development = 10)
    {
        var run = Tested.Penetrant("t", Tested.Start, [Place.ButtWeld], dwell, development);
        return run with { Steps = [.. run.Steps.Take(steps)] };
    }

    [Fact]
    public void At_EveryStep_NamesTheNextOne()
    {
        TestStep?[] next =
        [
            TestStep.Cleaned,
            TestStep.Dried,
            TestStep.PenetrantOn,
            TestStep.Removed,
            TestStep.DriedAgain,
            TestStep.DeveloperOn,
            TestStep.FirstLook,
            TestStep.FinalLook,
            TestStep.CleanedUp,
        ];
        for (var i = 0; i < next.Length; i++)
        {
            var run = UpTo(i);
            var now = i == 0 ? Tested.Start : run.Steps[^1].At.AddSeconds(5);
            Assert.Equal(next[i], Procedure.At(run, now).Next);
        }
    }

    [Theory]
    [InlineData(7, ClockPhase.TooEarly, 9 * 60, 59 * 60)]
    [InlineData(15.999, ClockPhase.TooEarly, 0.06, 50 * 60 + 0.06)]
    [InlineData(16, ClockPhase.Ready, 0, 50 * 60)]
    [InlineData(66, ClockPhase.Ready, 0, 0)]
    [InlineData(66.1, ClockPhase.TooLate, 0, 0)]
    [InlineData(60 * 24, ClockPhase.TooLate, 0, 0)]
    public void At_WhileItDwells_IsThePlainDifferenceOfInstants(
        double minute,
        ClockPhase phase,
        double toDue,
        double left
    )
    {
        // Penetrant on at minute 6; the maker's 10 min.
        var state = Procedure.At(UpTo(3), Tested.After(minute));
        Assert.Equal(phase, state.Phase);
        Assert.Equal(TestStep.Removed, state.Next);
        Assert.Equal(toDue, state.SecondsToDue!.Value, 1e-6);
        Assert.Equal(left, state.SecondsLeft!.Value, 1e-6);
    }

    [Fact]
    public void At_AnotherTimeZone_IsTheSameInstant()
    {
        var here = Procedure.At(UpTo(3), Tested.After(10));
        var there = Procedure.At(UpTo(3), Tested.After(10).ToOffset(TimeSpan.FromHours(-9)));
        Assert.Equal(here.SecondsToDue, there.SecondsToDue);
        Assert.Equal(here.Due, there.Due);
        Assert.Contains("14:16", here.Words.ToString(), StringComparison.Ordinal);
        Assert.Contains("04:16", there.Words.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void At_MakersTimeUnknown_AimsAtTheUsualQuarterHour()
    {
        var state = Procedure.At(UpTo(3) with { Notes = [] }, Tested.After(7));
        Assert.Equal(Tested.After(6 + 15), state.Due);
    }

    [Fact]
    public void At_TheClockSetBack_SaysSoAndCountsNothing()
    {
        var state = Procedure.At(UpTo(3), Tested.After(3));
        Assert.Equal(ClockPhase.ClockBehind, state.Phase);
        Assert.Null(state.SecondsToDue);
        // Two phones seldom agree to the second.
        Assert.Equal(ClockPhase.TooEarly, Procedure.At(UpTo(3), Tested.After(4.5)).Phase);
    }

    [Fact]
    public void At_TakenOffTooEarly_BeginsAgainWithCleaning()
    {
        var state = Procedure.At(UpTo(4, dwell: 4), Tested.After(11));
        Assert.Equal(TestStep.Cleaned, state.Next);
        Assert.Equal(ClockPhase.TooLate, state.Phase);
        var again = UpTo(4, dwell: 4);
        again = again with
        {
            Steps =
            [
                .. again.Steps,
                new()
                {
                    Id = "again",
                    Step = TestStep.Cleaned,
                    At = Tested.After(12),
                },
            ],
        };
        Assert.Equal(TestStep.Dried, Procedure.At(again, Tested.After(13)).Next);
    }

    [Fact]
    public void At_LookedTooEarly_AsksForTheFinalLookAgain()
    {
        var run = UpTo(8, development: 6);
        var state = Procedure.At(run, Tested.After(33));
        Assert.Equal(TestStep.FinalLook, state.Next);
        Assert.Equal(ClockPhase.TooEarly, state.Phase);
        Assert.Equal(Tested.After(35), state.Due);
        run = run with
        {
            Steps =
            [
                .. run.Steps,
                new()
                {
                    Id = "again",
                    Step = TestStep.FinalLook,
                    At = Tested.After(36),
                },
            ],
        };
        Assert.Equal(TestStep.CleanedUp, Procedure.At(run, Tested.After(37)).Next);
        Assert.Equal(RunVerdict.Counts, Tested.Solve(new() { Tests = [run] }).Runs[0].Verdict);
    }

    [Fact]
    public void At_WhileItDevelops_FirstAsksForTheFirstLookThenWaitsForTheFinalOne()
    {
        Assert.Equal(TestStep.FirstLook, Procedure.At(UpTo(6), Tested.After(26)).Next);
        var waiting = Procedure.At(UpTo(7), Tested.After(28));
        Assert.Equal(
            (TestStep.FinalLook, ClockPhase.TooEarly),
            (waiting.Next!.Value, waiting.Phase)
        );
        var late = Procedure.At(UpTo(7), Tested.After(70));
        Assert.Equal((TestStep.FinalLook, ClockPhase.TooLate), (late.Next!.Value, late.Phase));
    }

    [Fact]
    public void Solve_AStepNotedWrong_IsPutRightByALaterEntryAndBothStay()
    {
        var run = UpTo(8, dwell: 4);
        Assert.Equal(
            RunVerdict.DoesNotCount,
            Tested.Solve(new() { Tests = [run] }).Runs[0].Verdict
        );
        run = run with
        {
            Steps =
            [
                .. run.Steps,
                new()
                {
                    Id = "fix",
                    Corrects = run.Steps[2].Id,
                    Step = TestStep.PenetrantOn,
                    At = Tested.After(5.1),
                },
            ],
        };
        var result = Tested.Solve(new() { Tests = [run with { Notes = [] }] });
        Assert.Equal(4.9 * 60, result.Runs[0].Dwell!.Value, 1e-6);
    }

    [Fact]
    public void Cautions_OfTheSteps_EachStandOnce()
    {
        var all = Procedure
            .Steps(TestMethod.ColourPenetrant)
            .Select(StepWords.Caution)
            .OfType<string>()
            .ToList();
        Assert.Equal(all.Count, all.Distinct().Count());
        var text = string.Join(' ', all);
        foreach (var word in new[] { "phosgene", "propellant", "proof of strength", "scrapped" })
            Assert.Contains(word, text, StringComparison.Ordinal);
        Assert.Contains(
            "pacemaker",
            string.Join(
                ' ',
                Procedure.Steps(TestMethod.MagneticParticle).Select(StepWords.Caution)
            ),
            StringComparison.Ordinal
        );
    }
}
