using Shaftwright.Measures;

namespace Shaftwright.JobFile;

/// <summary>One job file: what was measured and decided, and the records that grow while it is made.</summary>
/// <param name="Job">What was measured and decided, as typed.</param>
/// <param name="Records">What was done and signed for.</param>
public sealed record JobDocument(Job Job, JobRecords Records)
{
    /// <summary>A job with nothing in it yet.</summary>
    public static JobDocument Empty { get; } = new(new Job(), new JobRecords());
}

/// <summary>Records that grow with the work. They are corrected by a later record, never erased.</summary>
public sealed record JobRecords
{
    /// <summary>Operations signed for, oldest first.</summary>
    public IReadOnlyList<SignOff> SignOffs { get; init; } = [];

    /// <summary>When the job was put away; null while it is on the bench. Taking this out brings the job back.</summary>
    public DateTimeOffset? PutAway { get; init; }

    /// <summary>Fields that two devices set differently, and that nobody has settled yet; in the order they arose.</summary>
    public IReadOnlyList<OpenConflict> Conflicts { get; init; } = [];

    /// <summary>The sign-off that counts for an operation: the last one, unless that one withdraws; null when there is none.</summary>
    /// <param name="operation">The operation's id on the route card.</param>
    public SignOff? Standing(string operation)
    {
        for (var i = SignOffs.Count - 1; i >= 0; i--)
        {
            if (string.Equals(SignOffs[i].Operation, operation, StringComparison.Ordinal))
                return SignOffs[i].Withdrawn ? null : SignOffs[i];
        }
        return null;
    }
}

/// <summary>Somebody's word that an operation is done, or, withdrawn, that it is not.</summary>
/// <param name="Id">A stable id, unique within the job.</param>
/// <param name="Operation">The operation's id on the route card.</param>
/// <param name="At">When it was signed, with the offset of the clock that said so.</param>
/// <param name="By">Who signed; may be empty in a shop of one.</param>
/// <param name="Note">What they wrote beside it.</param>
public sealed record SignOff(string Id, string Operation, DateTimeOffset At, string By, string Note)
{
    /// <summary>True when this takes back the operation's earlier sign-off.</summary>
    public bool Withdrawn { get; init; }

    /// <summary>What the operation's answer said when it was signed, in millimetres; empty when it had none, or in files from
    /// before this was kept.</summary>
    public string Said { get; init; } = "";

    /// <summary>True while the operation answers with the numbers that were signed for. Words may change from one version of
    /// the program to the next; only numbers count.</summary>
    /// <param name="answer">What the operation answers now.</param>
    public bool StandsFor(Sentence? answer) =>
        Said.Length == 0
        || Numbers(Said)
            .SequenceEqual(Numbers(answer?.In(Display.Metric) ?? ""), StringComparer.Ordinal);

    private static IEnumerable<string> Numbers(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            var from = i;
            while (i < text.Length && (char.IsAsciiDigit(text[i]) || text[i] is '.' or '−'))
                i++;
            var number = text[from..i].TrimEnd('.');
            if (number.Any(char.IsAsciiDigit))
                yield return number;
        }
    }
}
