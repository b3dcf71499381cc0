using Shaftwright.Cut;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.JobFile;

/// <summary>A value that was taken because none was given.</summary>
/// <param name="Words">What was taken.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record Assumption(Sentence Words, string Source)
{
    private const string Practice = "common practice, no source";

    /// <summary>Every value that the stages of a job take for one that was left out.</summary>
    /// <param name="result">The job's evaluation: what a sample settled is assumed no more.</param>
    /// <exception cref="ArgumentNullException"><paramref name="result"/> is null.</exception>
    public static IReadOnlyList<Assumption> Of(JobResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var job = result.Job;
        var list = new List<Assumption>();
        if (job.Corner is { } corner)
        {
            if (job.Length?.Margin is null)
                list.Add(
                    new(
                        $"{Say.Length(LengthFields.UsualMargin)} of plunge kept unused at each stop.",
                        Practice
                    )
                );
            if (corner.OutputEndFloat is null)
                list.Add(new($"No end float of the output stub: it was not measured.", Practice));
            if (corner.PowerUnitTowardsWheel is null || corner.PowerUnitAwayFromWheel is null)
                list.Add(
                    new(
                        $"No movement of the power unit under torque in the direction that was not measured.",
                        Practice
                    )
                );
            list.Add(
                new(
                    $"A reading typed without ± is off by no more than the tool usually at hand: travel {Say.Length(Corner.CornerFields.Travel.UsualPlusMinus)}, in and out {Say.Length(Corner.CornerFields.In.UsualPlusMinus)}, distance {Say.Length(Corner.CornerFields.Distance.UsualPlusMinus)}, angles {Say.Angle(Corner.CornerFields.InnerAngle.UsualPlusMinus)}.",
                    Practice
                )
            );
        }
        if (job.Donors is not null)
        {
            var cut = job.Cut ?? new CutInput();
            if (cut.RootGap is null)
                list.Add(new($"A root gap of {Say.Length(CutFields.UsualRootGap)}.", Practice));
            if (cut.Shrinkage is null)
                list.Add(
                    new(
                        $"The weld draws the ends together by {Say.Length(CutFields.UsualShrinkage)}, give or take {Say.Length(CutFields.Shrinkage.UsualPlusMinus)}.",
                        "between two handbook estimates; the sample replaces it"
                    )
                );
            if (cut.HeatBand is null && result.Cut?.Heat is null)
                list.Add(
                    new(
                        $"The heat of a weld changes the metal {Say.Length(CutFields.UsualHeatBand)} to each side.",
                        Practice + "; the etched sample replaces it"
                    )
                );
            if (cut.BootSlideRoom is null)
                list.Add(
                    new(
                        $"A boot needs {Say.Length(CutFields.UsualBootSlideRoom)} to slide back.",
                        Practice
                    )
                );
            if (
                job.Strength?.FusionDepth is null
                && SampleReadings.Of(result.KnownOfWeld?.Sample) is not { Fusion: not null }
            )
                list.Add(
                    new(
                        $"The weld is fused {Say.Share(StrengthFields.LeastFusion)} to {Say.Share(StrengthFields.MostFusion)} of the radius deep, and the low end counts.",
                        Practice + "; an etched sample replaces it"
                    )
                );
            if (result.KnownOfWeld?.Sleeve is not { AllHold: true })
                list.Add(new($"No strength is credited to a sleeve.", Practice));
        }
        return list;
    }
}
