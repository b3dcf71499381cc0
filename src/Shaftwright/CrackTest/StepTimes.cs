using Shaftwright.Kept;

namespace Shaftwright.CrackTest;

/// <summary>The noted times of a test since it was last begun.</summary>
internal sealed class StepTimes
{
    private readonly Dictionary<TestStep, DateTimeOffset> _when = [];

    public DateTimeOffset? Latest { get; private set; }

    /// <summary>When it was last begun: the earliest noted step since then.</summary>
    public DateTimeOffset? Began => _when.Count == 0 ? null : _when.Values.Min();

    public DateTimeOffset? When(TestStep step) => _when.TryGetValue(step, out var at) ? at : null;

    /// <summary>From one step to another, s; null when either is not noted.</summary>
    public double? Between(TestStep from, TestStep to) =>
        When(from) is { } a && When(to) is { } b ? (b - a).TotalSeconds : null;

    public static StepTimes Of(TestRun run)
    {
        var times = new StepTimes();
        foreach (var step in Entries.Standing(run.Steps))
        {
            if (step.Step == TestStep.Cleaned)
            {
                // By the order written down, not by the time: a clock set back must not bring an older attempt to life.
                times._when.Clear();
                times.Latest = null;
            }
            times._when[step.Step] = step.At;
            if (times.Latest is not { } latest || step.At > latest)
                times.Latest = step.At;
        }
        return times;
    }
}
