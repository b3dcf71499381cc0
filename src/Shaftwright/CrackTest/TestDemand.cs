using Shaftwright.Measures;

namespace Shaftwright.CrackTest;

/// <summary>Why a test is asked for.</summary>
public enum DemandKind
{
    /// <summary>The butt, before the sleeve hides it for good.</summary>
    ButtBeforeSleeve,

    /// <summary>After a session at the press.</summary>
    AfterPressing,

    /// <summary>After a proof twist.</summary>
    AfterProofTwist,

    /// <summary>Two days after the last heat: cracks from hydrogen come late.</summary>
    AfterTwoDays,

    /// <summary>After the first event.</summary>
    AfterFirstEvent,
}

/// <summary>How a demand stands at an instant.</summary>
public enum DemandState
{
    /// <summary>Its time has not come.</summary>
    NotYet,

    /// <summary>It is due.</summary>
    Due,

    /// <summary>Later work was done without it: it must be made up before anything else.</summary>
    Overdue,

    /// <summary>It can not be made up any more: the place is hidden.</summary>
    Missed,

    /// <summary>Done.</summary>
    Done,
}

/// <summary>What is not on record, so that no test can answer.</summary>
public enum DemandLack
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>When the weld was tempered: the test must come after it.</summary>
    Tempering,

    /// <summary>When the press was used: the test must come after that.</summary>
    TimeOfStrokes,
}

/// <summary>A test that the work done asks for.</summary>
/// <param name="Kind">Why.</param>
/// <param name="WorkId">The work it follows.</param>
/// <param name="DueFrom">From when it may be done.</param>
/// <param name="Before">Later work that it had to come before; null while there is none.</param>
/// <param name="Hidden">True when that work hid the place.</param>
/// <param name="Places">Places to look at.</param>
/// <param name="AnsweredBy">Id of the test that answers it; null while there is none.</param>
/// <param name="Late">True when it was answered after the work it had to come before.</param>
/// <param name="Lack">What is not on record, so that no test can answer.</param>
public sealed record TestDemand(
    DemandKind Kind,
    string WorkId,
    DateTimeOffset DueFrom,
    DateTimeOffset? Before,
    bool Hidden,
    IReadOnlyList<Place> Places,
    string? AnsweredBy,
    bool Late,
    DemandLack Lack = DemandLack.None
)
{
    /// <summary>How it stands.</summary>
    /// <param name="now">The instant.</param>
    public DemandState At(DateTimeOffset now)
    {
        if (AnsweredBy is not null)
            return DemandState.Done;
        if (Lack != DemandLack.None)
            return DemandState.Due;
        if (Before is { } before && before <= now)
            return Hidden ? DemandState.Missed : DemandState.Overdue;
        return now < DueFrom ? DemandState.NotYet : DemandState.Due;
    }

    /// <summary>How it stands, as one would say it.</summary>
    /// <param name="now">The instant.</param>
    public Sentence Words(DateTimeOffset now)
    {
        if (Lack != DemandLack.None)
            return Lack == DemandLack.Tempering
                ? (Sentence)
                    $"No tempering of the butt is on record. Note when it was tempered; a test from before it does not count."
                : $"Strokes of the press are on record without their time. Note when the pressing ended, and test after that.";
        var from = Procedure.Clock(DueFrom, now);
        return (Kind, At(now)) switch
        {
            (DemandKind.ButtBeforeSleeve, DemandState.Due) =>
                $"Test the butt now, cold and trued, before the sleeve hides it for good.",
            (DemandKind.ButtBeforeSleeve, DemandState.Missed) =>
                $"The sleeve went on over a butt that no test that counts has seen.",
            (DemandKind.ButtBeforeSleeve, DemandState.Done) =>
                $"The butt was tested before the sleeve.",
            (DemandKind.AfterPressing, DemandState.Due) =>
                $"Test after pressing at {from}: pressing opens what heat began.",
            (DemandKind.AfterPressing, DemandState.Missed) =>
                $"The butt was pressed at {from} and sleeved over without a test after it.",
            (DemandKind.AfterPressing, DemandState.Done) => $"Tested after pressing at {from}.",
            (DemandKind.AfterProofTwist, DemandState.Due) =>
                $"Test every weld after the proof twist at {from}.",
            (DemandKind.AfterProofTwist, DemandState.Done) => $"Tested after the proof twist.",
            (DemandKind.AfterTwoDays, DemandState.NotYet) =>
                $"Test again from {from} on, in {Say.Time((DueFrom - now).TotalSeconds)}: cracks from hydrogen come late.",
            (DemandKind.AfterTwoDays, DemandState.Due) =>
                $"Two days have passed since the last heat: test every weld again.",
            (DemandKind.AfterTwoDays, DemandState.Done) => $"Tested two days after the last heat.",
            (DemandKind.AfterFirstEvent, DemandState.Due) =>
                $"Test every weld after the first event.",
            (DemandKind.AfterFirstEvent, DemandState.Done) => $"Tested after the first event.",
            (_, DemandState.NotYet) => $"Nothing to test before {from}.",
            _ => (Sentence)
                $"It has run without the test that was due at {from}. Test it before it runs again.",
        };
    }
}
