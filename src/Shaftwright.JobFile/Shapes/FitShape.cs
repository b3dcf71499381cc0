using Shaftwright.Fit;

namespace Shaftwright.JobFile.Shapes;

/// <summary>The fitting of a job file, member by member.</summary>
internal static class FitShape
{
    private static readonly ObjectShape<FitDone> s_done = new ObjectShape<FitDone>(
        "fitDone",
        "a step of fitting that was done, and what was found at it; the last entry of a step counts",
        () => new()
    )
        .Entry(
            d => d,
            (d, id) => d with { Id = id },
            (d, id) => d with { Corrects = id },
            (d, v) => d with { Withdrawn = v }
        )
        .Word("step", "which step", d => d.Step, (d, v) => d with { Step = v })
        .Moment("at", "when it was done", d => d.At, (d, v) => d with { At = v })
        .Text(
            "note",
            "what was written beside it",
            2000,
            d => d.Note,
            (d, v) => d with { Note = v }
        )
        .Measure(FitFields.LineDiameter, d => d.LineDiameter, (d, v) => d with { LineDiameter = v })
        .Measure(FitFields.LineOffset, d => d.LineOffset, (d, v) => d with { LineOffset = v })
        .Measure(FitFields.ProofSet, d => d.ProofSet, (d, v) => d with { ProofSet = v })
        .Measure(FitFields.Pull, d => d.Pull, (d, v) => d with { Pull = v })
        .YesNo(
            "pullHeld",
            "pull check: whether it stayed in",
            d => d.PullHeld,
            (d, v) => d with { PullHeld = v }
        )
        .Measure(FitFields.HubNut, d => d.HubNut, (d, v) => d with { HubNut = v })
        .Measure(FitFields.LeftIn, d => d.LeftIn, (d, v) => d with { LeftIn = v })
        .Measure(FitFields.LeftOut, d => d.LeftOut, (d, v) => d with { LeftOut = v })
        .YesNo(
            "freeAtDroop",
            "whether it turned freely by hand at full droop",
            d => d.FreeAtDroop,
            (d, v) => d with { FreeAtDroop = v }
        )
        .YesNo(
            "freeAtLock",
            "whether it turned freely by hand at both full locks",
            d => d.FreeAtLock,
            (d, v) => d with { FreeAtLock = v }
        )
        .YesNo(
            "leaks",
            "first run: whether grease was thrown or oil lost",
            d => d.Leaks,
            (d, v) => d with { Leaks = v }
        )
        .YesNo(
            "noise",
            "first run: whether there was a new vibration or click",
            d => d.Noise,
            (d, v) => d with { Noise = v }
        );

    /// <summary>The stage.</summary>
    public static ObjectShape<FitInput> Stage { get; } =
        new ObjectShape<FitInput>("fit", "how the shaft goes onto the car", () => new())
            .YesNo(
                "stubClampsBearing",
                "whether the outer stub clamps the hub bearing together",
                f => f.StubClampsBearing,
                (f, v) => f with { StubClampsBearing = v }
            )
            .Measure(
                FitFields.HubNutByMaker,
                f => f.HubNutByMaker,
                (f, v) => f with { HubNutByMaker = v }
            )
            .Measure(
                FitFields.PullByMaker,
                f => f.PullByMaker,
                (f, v) => f with { PullByMaker = v }
            )
            .Measure(
                FitFields.ProofTorque,
                f => f.ProofTorque,
                (f, v) => f with { ProofTorque = v }
            )
            .List(
                "done",
                "steps done, in the order written down",
                s_done,
                500,
                f => f.Done,
                (f, v) => f with { Done = v }
            );
}
