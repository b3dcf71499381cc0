using Shaftwright.Kept;

namespace Shaftwright.CrackTest;

/// <summary>The work that was done on the shaft, in order of time.</summary>
internal static class WorkLog
{
    /// <summary>What was written down, the welding that decisions about marks tell of, and the strokes of the press.</summary>
    public static IReadOnlyList<WorkDone> Of(CrackTestInput input, TestAround around)
    {
        var noted = Noted(input);
        return [.. noted.Concat(around.Pressed(noted)).OrderBy(w => w.At)];
    }

    private static IReadOnlyList<WorkDone> Noted(CrackTestInput input) =>
        [
            .. Entries
                .Standing(input.Work)
                .Concat(
                    Entries
                        .Standing(input.Decisions)
                        .Where(d => d.What == MarkDecision.WeldedAgain)
                        .Select(d => new WorkDone
                        {
                            Id = d.Id,
                            Kind = WorkKind.WeldRepaired,
                            At = d.At,
                        })
                )
                .OrderBy(w => w.At),
        ];

    /// <summary>When the sleeve hid the butt; null while it is open.</summary>
    public static DateTimeOffset? SleevedAt(IReadOnlyList<WorkDone> work) =>
        work.FirstOrDefault(w => w.Kind == WorkKind.SleeveWelded)?.At;

    /// <summary>Whether work leaves a weld behind.</summary>
    public static bool IsWeld(WorkKind kind) => IsHeat(kind) && kind != WorkKind.Tempered;

    /// <summary>Whether work heats a weld, so that hydrogen cracks may follow late.</summary>
    public static bool IsHeat(WorkKind kind) =>
        kind
            is WorkKind.ButtWelded
                or WorkKind.Tempered
                or WorkKind.SleeveWelded
                or WorkKind.WeldRepaired;
}
