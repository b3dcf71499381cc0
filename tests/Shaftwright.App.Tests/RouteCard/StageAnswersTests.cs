using Shaftwright.App.Tests.Drawings;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.App.Tests.RouteCards;

public class StageAnswersTests
{
    [Fact]
    public void Answers_NothingMeasured_AreNull()
    {
        var result = Workflow.Evaluate(new Job());
        Assert.Null(StageAnswers.Corner(result));
        Assert.Null(StageAnswers.Car(result));
        Assert.Null(StageAnswers.Joints(result));
        Assert.Null(StageAnswers.Length(result));
        Assert.Null(StageAnswers.Donors(result));
        Assert.Null(StageAnswers.Cut(result));
        Assert.Null(StageAnswers.Strength(result));
        Assert.Null(StageAnswers.Weld(result));
        Assert.Null(StageAnswers.Truing(result));
    }

    [Fact]
    public void Answers_ExampleJob_HoldTheirStagesNumbersInBothUnits()
    {
        var result = Workflow.Evaluate(Samples.Example(Samples.GrassTrack).Job);
        foreach (var d in new[] { Display.Metric, Display.Inch })
        {
            Assert.Contains(
                Say.Length(result.Length!.Make!.Value).In(d),
                StageAnswers.Length(result)!.In(d),
                StringComparison.Ordinal
            );
            Assert.Contains(
                Say.Length(result.Cut!.OuterAt!.Value).In(d),
                StageAnswers.Cut(result)!.In(d),
                StringComparison.Ordinal
            );
            Assert.Contains(
                Say.Torque(result.Car!.ThisCar!.Governing.High).In(d),
                StageAnswers.Car(result)!.In(d),
                StringComparison.Ordinal
            );
            Assert.Contains(
                Say.Fine(result.Weld!.Shim!.Value).In(d),
                StageAnswers.Weld(result)!.In(d),
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public void Length_ChosenLengthForbidden_SaysDoNotMakeItAndWhy()
    {
        var job = Samples.Example(Samples.GrassTrack).Job;
        job = job with
        {
            Length = job.Length! with { Chosen = Measured<Distance>.Of(412, Distance.Mm) },
        };
        var said = StageAnswers.Length(Workflow.Evaluate(job))!.In(Display.Metric);
        Assert.StartsWith("Do not make it at 412.0\u00a0mm. ", said, StringComparison.Ordinal);
        Assert.Contains("too long", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Make it", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Length_ReadingsContradict_SaysSoAndNoLength()
    {
        var job = Samples.Example(Samples.GrassTrack).Job;
        var first = job.Corner!.Readings[0];
        job = job with
        {
            Corner = job.Corner with
            {
                Readings =
                [
                    .. job.Corner.Readings,
                    first with
                    {
                        In = Measured<Distance>.Of(2, Distance.Mm),
                        Out = Measured<Distance>.Of(21.5, Distance.Mm),
                    },
                ],
            },
        };
        var said = StageAnswers.Length(Workflow.Evaluate(job))!.In(Display.Metric);
        Assert.StartsWith("No length yet: two readings contradict", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Answers_NoLengthWorks_SayWhatIsMissing()
    {
        var result = Workflow.Evaluate(Samples.Example(Samples.Pickup).Job);
        Assert.StartsWith(
            "No length works",
            StageAnswers.Length(result)!.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Assumptions_GivenValues_AreNotCalledAssumed()
    {
        var job = Samples.Example(Samples.GrassTrack).Job;
        var given = job with
        {
            Length = new() { Margin = Samples.D("2 mm") },
            Cut = job.Cut! with { Shrinkage = Samples.D("1 mm"), HeatBand = Samples.D("15 mm") },
        };
        string Words(Job j) =>
            string.Join('\n', Assumption.Of(Workflow.Evaluate(j)).Select(a => a.Words.ToString()));
        Assert.DoesNotContain("kept unused", Words(given), StringComparison.Ordinal);
        Assert.DoesNotContain("draws the ends", Words(given), StringComparison.Ordinal);
        Assert.Contains(
            "kept unused",
            Words(given with { Length = null }),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "draws the ends",
            Words(given with { Cut = null }),
            StringComparison.Ordinal
        );
        Assert.Empty(Assumption.Of(Workflow.Evaluate(new Job())));
    }
}
