using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Drawings;

/// <summary>What the positions ask of the joints beside plunge and angle, as columns: those of which something is known.</summary>
/// <param name="Head">What stands above it.</param>
/// <param name="Cell">The number at a position, with its unit; empty where it is not known.</param>
public sealed record JointColumn(string Head, Func<PositionLeft, Display, string> Cell);

/// <summary>The columns of <see cref="JointColumn"/>.</summary>
public static class JointColumns
{
    private static readonly (string Head, Func<PositionLeft, Shown?> Value)[] s_all =
    [
        ("Outer angle", p => p.OuterAngle is { } v ? Say.Angle(v) : null),
        ("Drift", p => p.Drift is { } v ? Say.Length(v) : null),
        ("Inner torque margin", p => p.InnerTorqueMargin is { } v ? Say.Factor(v) : null),
        ("Outer torque margin", p => p.OuterTorqueMargin is { } v ? Say.Factor(v) : null),
        ("Inner boot", p => p.InnerBoot is { } v ? Say.Length(v) : null),
        ("Outer boot", p => p.OuterBoot is { } v ? Say.Length(v) : null),
    ];

    /// <summary>The columns that have a number anywhere.</summary>
    /// <param name="length">The length stage's answer.</param>
    public static IReadOnlyList<JointColumn> Of(LengthResult length)
    {
        ArgumentNullException.ThrowIfNull(length);
        return
        [
            .. s_all
                .Where(c => length.Positions.Any(p => c.Value(p) is not null))
                .Select(c => new JointColumn(
                    c.Head,
                    (p, display) => c.Value(p)?.In(display) ?? ""
                )),
        ];
    }
}
