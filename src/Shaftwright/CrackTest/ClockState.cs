using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>How the next step stands to the clock. In order of time, but for the first and the last.</summary>
public enum ClockPhase
{
    /// <summary>The clock says a time before the last step: it was set back, or the step was noted wrong.</summary>
    ClockBehind,

    /// <summary>The next step must wait.</summary>
    TooEarly,

    /// <summary>Do it now.</summary>
    Ready,

    /// <summary>Its time has passed.</summary>
    TooLate,

    /// <summary>All steps are done.</summary>
    Finished,
}

/// <summary>Where a test stands at one instant.</summary>
/// <param name="Last">Last step done; null before the first.</param>
/// <param name="Next">Step to do next; null when all are done.</param>
/// <param name="Phase">How it stands to the clock.</param>
/// <param name="Due">When the next timed step may be done; null when nothing is timed. In the offset of the instant asked for.</param>
/// <param name="Latest">When it is too late for it; null when nothing is timed.</param>
/// <param name="SecondsToDue">Until <paramref name="Due"/>, never negative; null when nothing is timed.</param>
/// <param name="SecondsLeft">From the instant asked for until <paramref name="Latest"/>, never negative; null when nothing is timed.</param>
/// <param name="Words">What to do now, as one would say it.</param>
/// <param name="Caution">What can hurt in this step; null when nothing new.</param>
public sealed record ClockState(
    TestStep? Last,
    TestStep? Next,
    ClockPhase Phase,
    DateTimeOffset? Due,
    DateTimeOffset? Latest,
    double? SecondsToDue,
    double? SecondsLeft,
    Sentence Words,
    string? Caution
);
