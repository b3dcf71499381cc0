using Shaftwright.Cut;
using Shaftwright.Kept;
using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;

namespace Shaftwright.CrackTest;

/// <summary>What the crack tests take from outside their own record; each part may be missing.</summary>
public sealed record TestAround
{
    /// <summary>What time it is; null when nobody said.</summary>
    public DateTimeOffset? Now { get; init; }

    /// <summary>The shaft that the cut makes, for places and diameters.</summary>
    public MadeShaft? Made { get; init; }

    /// <summary>True when the butt must be tempered: then its test comes after that.</summary>
    public bool TemperAsked { get; init; }

    /// <summary>The strokes of the press that stand: each asks for a test by itself.</summary>
    public IReadOnlyList<PressStroke> Strokes { get; init; } = [];

    /// <summary>Strokes with a time, as work. One of before the weld, or of a moment that nobody said, asks only when a weld was
    /// there to be opened.</summary>
    internal IEnumerable<WorkDone> Pressed(IReadOnlyList<WorkDone> work) =>
        Strokes
            .Where(s =>
                s.At is { } at
                && (
                    s.Moment >= Moment.ButtWelded
                    || work.Any(w => WorkLog.IsWeld(w.Kind) && w.At <= at)
                )
            )
            .Select(s => new WorkDone
            {
                Id = s.Id,
                Kind = WorkKind.Pressed,
                At = s.At!.Value,
            });

    /// <summary>The strokes without a time.</summary>
    internal UntimedStrokes Untimed =>
        new(
            Strokes.LastOrDefault(s => s is { At: null, Moment: Moment.ButtWelded })?.Id,
            Strokes.LastOrDefault(s => s is { At: null, Moment: > Moment.ButtWelded })?.Id
        );
}
