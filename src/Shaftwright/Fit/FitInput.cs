using Shaftwright.CrackTest;
using Shaftwright.Kept;
using Shaftwright.Measures;

namespace Shaftwright.Fit;

/// <summary>The steps of fitting a shaft, in order.</summary>
public enum FitStep
{
    /// <summary>A straight line painted along it.</summary>
    PaintLine,

    /// <summary>Twisted on the bench to a proof torque.</summary>
    ProofTwist,

    /// <summary>Boots and clamps on the shaft.</summary>
    Boots,

    /// <summary>Joints on, on new clips.</summary>
    Joints,

    /// <summary>Joints greased, boots closed.</summary>
    Grease,

    /// <summary>Car on stands.</summary>
    Stands,

    /// <summary>Seal land and seal.</summary>
    Seal,

    /// <summary>Inner end in.</summary>
    InnerIn,

    /// <summary>Pulled, to prove the clip.</summary>
    PullCheck,

    /// <summary>Outer end in, hub nut on.</summary>
    OuterIn,

    /// <summary>Hub nut to its full torque.</summary>
    BearingClamp,

    /// <summary>Left over at both ends of the plunge.</summary>
    TrialEnds,

    /// <summary>Turned by hand at full droop and full lock.</summary>
    FreeTurn,

    /// <summary>Gearbox oil made good.</summary>
    Oil,

    /// <summary>Looked at after the first run.</summary>
    FirstRun,
}

/// <summary>A step that was done, when, and what was found at it. Of each step the last entry that stands counts.</summary>
public sealed record FitDone : IEntry
{
    /// <inheritdoc/>
    public string Id { get; init; } = "";

    /// <summary>Which step.</summary>
    public FitStep Step { get; init; }

    /// <summary>When.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>What was written beside it.</summary>
    public string Note { get; init; } = "";

    /// <summary>Painted line or proof twist: diameter of the shaft where the line's offset is read.</summary>
    public Measured<Distance>? LineDiameter { get; init; }

    /// <summary>Proof twist or first run: how far the painted line's two ends now lie apart round the shaft.</summary>
    public Measured<Distance>? LineOffset { get; init; }

    /// <summary>Proof twist: twist that stayed, where it was read as an angle.</summary>
    public Measured<Angle>? ProofSet { get; init; }

    /// <summary>Pull check: pull that it was given.</summary>
    public Measured<Force>? Pull { get; init; }

    /// <summary>Pull check: whether it stayed in; null when not tried.</summary>
    public bool? PullHeld { get; init; }

    /// <summary>Hub nut: tightening torque it was given.</summary>
    public Measured<Torque>? HubNut { get; init; }

    /// <summary>Both ends of the plunge: how far the joint still goes in where least is left.</summary>
    public Measured<Distance>? LeftIn { get; init; }

    /// <summary>Both ends of the plunge: how far it still comes out where least is left.</summary>
    public Measured<Distance>? LeftOut { get; init; }

    /// <summary>Free turn: whether it turns freely by hand at full droop; null when not tried.</summary>
    public bool? FreeAtDroop { get; init; }

    /// <summary>Free turn: the same at both full locks.</summary>
    public bool? FreeAtLock { get; init; }

    /// <summary>First run: whether grease was thrown or oil lost.</summary>
    public bool? Leaks { get; init; }

    /// <summary>First run: whether there was a new vibration or click.</summary>
    public bool? Noise { get; init; }

    /// <inheritdoc/>
    public string Corrects { get; init; } = "";

    /// <inheritdoc/>
    public bool Withdrawn { get; init; }
}

/// <summary>What is known before the shaft is fitted, and what was done and found while it was.</summary>
public sealed record FitInput
{
    /// <summary>Whether the outer stub clamps the hub bearing together; null when not known.</summary>
    public bool? StubClampsBearing { get; init; }

    /// <summary>Tightening torque of the hub nut by its maker's data.</summary>
    public Measured<Torque>? HubNutByMaker { get; init; }

    /// <summary>Pull that the inner end must stand by its maker's data.</summary>
    public Measured<Force>? PullByMaker { get; init; }

    /// <summary>Proof torque; null for no proof twist.</summary>
    public Measured<Torque>? ProofTorque { get; init; }

    /// <summary>Steps done, in the order written down. It grows, and nothing in it changes.</summary>
    public IReadOnlyList<FitDone> Done { get; init; } = [];

    /// <summary>Collects what is out of range, and ids that are not the only ones of their kind.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, FitFields.HubNutByMaker, HubNutByMaker);
        check.Range(path, FitFields.PullByMaker, PullByMaker);
        check.Range(path, FitFields.ProofTorque, ProofTorque);
        new EntryIds(check).Of(Done, $"{path}.done");
        for (var i = 0; i < Done.Count; i++)
        {
            var (done, at) = (Done[i], $"{path}.done[{i}]");
            check.Range(at, FitFields.LineDiameter, done.LineDiameter);
            check.Range(at, FitFields.LineOffset, done.LineOffset);
            check.Range(at, FitFields.ProofSet, done.ProofSet);
            check.Range(at, FitFields.Pull, done.Pull);
            check.Range(at, FitFields.HubNut, done.HubNut);
            check.Range(at, FitFields.LeftIn, done.LeftIn);
            check.Range(at, FitFields.LeftOut, done.LeftOut);
        }
    }
}
