using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.Fit;

/// <summary>How a step stands.</summary>
public enum FitStepState
{
    /// <summary>Not for this shaft.</summary>
    NotInThisJob,

    /// <summary>Waits for a step before it.</summary>
    Waits,

    /// <summary>The next to do.</summary>
    Next,

    /// <summary>Done.</summary>
    Done,

    /// <summary>It found something that stops the job.</summary>
    Stopped,
}

/// <summary>One step as it stands.</summary>
/// <param name="Step">Which.</param>
/// <param name="Title">What it is called.</param>
/// <param name="WhatToDo">What to do.</param>
/// <param name="State">How it stands.</param>
/// <param name="Because">Why it is not in this job, waits or is stopped; null when there is nothing to say.</param>
/// <param name="DoneAt">When it was done; null while it is not.</param>
/// <param name="Caution">What can hurt in it; null when nothing new.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record FitStepResult(
    FitStep Step,
    string Title,
    Sentence WhatToDo,
    FitStepState State,
    Sentence? Because,
    DateTimeOffset? DoneAt,
    string? Caution,
    string Source
);

/// <summary>What the length stage says is left where it is least, to be found again on the car.</summary>
/// <param name="LeftIn">mm.</param>
/// <param name="InAtTravel">Wheel travel there, mm, bump positive.</param>
/// <param name="LeftOut">mm.</param>
/// <param name="OutAtTravel">Wheel travel there, mm.</param>
public sealed record TrialEnds(
    double LeftIn,
    double InAtTravel,
    double LeftOut,
    double OutAtTravel
);

/// <summary>How a proof twist came out.</summary>
public enum ProofVerdict
{
    /// <summary>Not twisted, or not measured, yet.</summary>
    NotKnown,

    /// <summary>What stayed is within what was to be expected.</summary>
    AsExpected,

    /// <summary>More stayed than the metal and the diameters explain.</summary>
    TooMuch,
}

/// <summary>What a proof torque does.</summary>
/// <param name="Torque">N·mm.</param>
/// <param name="WindUp">Twist while it is on, rad; the high end infinite when the weakest stretch might give way altogether.</param>
/// <param name="Set">Twist that stays, rad; the high end infinite likewise.</param>
/// <param name="Measured">Twist that stayed, rad; null when not measured.</param>
/// <param name="Verdict">How it came out.</param>
/// <param name="Words">The answer in a sentence or two.</param>
public sealed record ProofResult(
    double Torque,
    Band WindUp,
    Band Set,
    double? Measured,
    ProofVerdict Verdict,
    Sentence Words
);

/// <summary>The answer of the fitting stage.</summary>
public sealed record FitResult
{
    /// <summary>Every step, in order.</summary>
    public IReadOnlyList<FitStepResult> Steps { get; init; } = [];

    /// <summary>The one next thing to do.</summary>
    public required Sentence Next { get; init; }

    /// <summary>What must be left at both ends of the plunge; null when no length was settled.</summary>
    public TrialEnds? TrialEnds { get; init; }

    /// <summary>Permanent twist by the painted line, rad; null when not read.</summary>
    public double? Twist { get; init; }

    /// <summary>Standard uncertainty of it, rad.</summary>
    public double TwistUncertainty { get; init; }

    /// <summary>The proof twist; null when none is wanted or the shaft is not described.</summary>
    public ProofResult? Proof { get; init; }

    /// <summary>What to know beside the numbers.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
