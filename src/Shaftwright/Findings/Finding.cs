using Shaftwright.Measures;

namespace Shaftwright.Findings;

/// <summary>How much a finding weighs.</summary>
public enum Severity
{
    /// <summary>Worth knowing.</summary>
    Note,

    /// <summary>Your judgement is needed.</summary>
    Caution,

    /// <summary>Do not make or run this.</summary>
    Stop,
}

/// <summary>The stages of the job that can answer.</summary>
public enum Stage
{
    /// <summary>Torque into the shaft, and the donors' yardstick.</summary>
    Car,

    /// <summary>Where the joint centres go.</summary>
    Corner,

    /// <summary>What the joints allow.</summary>
    Joints,

    /// <summary>How long the shaft is made.</summary>
    Length,

    /// <summary>The shafts it is made from.</summary>
    Donors,

    /// <summary>Where they are cut.</summary>
    Cut,

    /// <summary>What torque it carries.</summary>
    Strength,

    /// <summary>How the ends are set up and welded.</summary>
    Weld,

    /// <summary>How straight it runs.</summary>
    Truing,

    /// <summary>Whether it is cracked.</summary>
    CrackTest,

    /// <summary>How it goes onto the car.</summary>
    Fit,
}

/// <summary>What a stage says beside its numbers.</summary>
/// <param name="Severity">How much it weighs.</param>
/// <param name="Stage">Who says it.</param>
/// <param name="Code">A stable kebab-case name, for programs and tests.</param>
/// <param name="Text">What was found, with the number and its limit.</param>
/// <param name="Action">What to do about it, in plain words.</param>
/// <param name="Source">Where the limit comes from: standard and clause, handbook, or "common practice, no source".</param>
public sealed record Finding(
    Severity Severity,
    Stage Stage,
    string Code,
    Sentence Text,
    Sentence Action,
    string Source
);
