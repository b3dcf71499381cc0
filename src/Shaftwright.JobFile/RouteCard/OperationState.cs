namespace Shaftwright.JobFile;

/// <summary>How an operation of the route card stands.</summary>
public enum OperationState
{
    /// <summary>Not done yet, and nothing in the way.</summary>
    ToDo,

    /// <summary>Its answer waits for something to be measured.</summary>
    NeedsReadings,

    /// <summary>Its answer is there, to be looked over and signed.</summary>
    Answered,

    /// <summary>Something says: do not go on. A signature does not hide it.</summary>
    Stopped,

    /// <summary>It waits for an earlier operation that is not signed for.</summary>
    Held,

#pragma warning disable CA1720 // Signed as with a pen, not as a kind of number.
    /// <summary>Signed for.</summary>
    Signed,
#pragma warning restore CA1720

    /// <summary>This shaft does not have it, such as a sleeve.</summary>
    NotInThisJob,
}

/// <summary>The word and the shape of each state: never colour alone.</summary>
public static class OperationStates
{
    /// <summary>The word.</summary>
    public static string WordOf(OperationState state) =>
        state switch
        {
            OperationState.ToDo => "to do",
            OperationState.NeedsReadings => "needs readings",
            OperationState.Answered => "look over and sign",
            OperationState.Stopped => "stopped",
            OperationState.Held => "held",
            OperationState.Signed => "signed",
            _ => "not in this job",
        };

    /// <summary>The shape's name, kebab-case.</summary>
    public static string GlyphOf(OperationState state) =>
        state switch
        {
            OperationState.ToDo => "open-square",
            OperationState.NeedsReadings => "rule",
            OperationState.Answered => "pencil-line",
            OperationState.Stopped => "crossed-square",
            OperationState.Held => "barred-square",
            OperationState.Signed => "ticked-square",
            _ => "dash",
        };

    /// <summary>The shape as SVG path data for a 16 × 16 box, to be stroked without fill, 1.75 wide.</summary>
    public static string PathOf(OperationState state) =>
        state switch
        {
            OperationState.ToDo => "M2 2H14V14H2Z",
            OperationState.NeedsReadings => "M1 5H15V11H1ZM4 5V8M7 5V9M10 5V8M13 5V9",
            OperationState.Answered => "M2 14H14M3 10L11 2L14 5L6 13L3 13Z",
            OperationState.Stopped => "M2 2H14V14H2ZM4 4L12 12M12 4L4 12",
            OperationState.Held => "M2 2H14V14H2ZM2 8H14",
            OperationState.Signed => "M2 2H14V14H2ZM4.5 8L7 11L12 4.5",
            _ => "M3 8H13",
        };
}
