using Shaftwright.Measures;

namespace Shaftwright.Joints;

/// <summary>How far a plunging joint may plunge at each angle, in plain numbers.</summary>
/// <remarks>By rule, a plunging tripod loses (roller radius) × tan(angle) at each end: the tilted spider's far roller reaches
/// the end of its track first. A measured table replaces the rule; between its rows the limit runs straight, beyond its last
/// row it goes on falling at the last slope, and the length stage says so.
/// Source of the rule: own derivation for one roller in a straight track, a least loss; common practice, no source.</remarks>
public sealed class PlungeLimits
{
    private readonly double[] _angle;
    private readonly double[] _in;
    private readonly double[] _out;

    private PlungeLimits(
        double straightIn,
        double straightOut,
        double rollerRadius,
        double[] angle,
        double[] goesIn,
        double[] comesOut
    )
    {
        StraightIn = straightIn;
        StraightOut = straightOut;
        RollerRadius = rollerRadius;
        _angle = angle;
        _in = goesIn;
        _out = comesOut;
    }

    /// <summary>Plunge inwards from mid-stroke, straight, mm.</summary>
    public double StraightIn { get; }

    /// <summary>Plunge outwards from mid-stroke, straight, mm.</summary>
    public double StraightOut { get; }

    /// <summary>Tripod roller radius of the rule, mm; 0 when the limits do not shrink or a table is given.</summary>
    public double RollerRadius { get; }

    /// <summary>True when a measured table is used.</summary>
    public bool HasTable => _angle.Length > 0;

    /// <summary>Angle of the table's last row, rad; null without a table.</summary>
    public double? TableEndsAt => HasTable ? _angle[^1] : null;

    /// <summary>Limits of a joint, or null when its plunge is not known or it does not plunge.</summary>
    public static PlungeLimits? Of(JointInput joint)
    {
        ArgumentNullException.ThrowIfNull(joint);
        if (
            joint.Kind == JointKind.Fixed
            || joint.PlungeIn is not { } goesIn
            || joint.PlungeOut is not { } comesOut
        )
            return null;
        PlungeAtAngle[] rows =
        [
            .. joint
                .PlungeTable.Where(r => r is { Angle: not null, In: not null, Out: not null })
                .OrderBy(r => r.Angle!.Value),
        ];
        var radius =
            rows.Length == 0 && (joint.Kind is JointKind.PlungingTripod or JointKind.Unknown)
                ? joint.RollerRadius?.Value ?? 0
                : 0;
        return rows.Length == 0
            ? new(goesIn.Value, comesOut.Value, radius, [], [], [])
            : new(
                goesIn.Value,
                comesOut.Value,
                0,
                [0, .. rows.Select(r => r.Angle!.Value)],
                [goesIn.Value, .. rows.Select(r => r.In!.Value)],
                [comesOut.Value, .. rows.Select(r => r.Out!.Value)]
            );
    }

    /// <summary>The same limits with other straight plunge and roller radius; used to carry their uncertainty.</summary>
    internal PlungeLimits With(double straightIn, double straightOut, double rollerRadius)
    {
        double[] Shift(double[] column, double by) => [.. column.Select(v => v + by)];
        return new(
            straightIn,
            straightOut,
            HasTable ? 0 : rollerRadius,
            _angle,
            Shift(_in, straightIn - StraightIn),
            Shift(_out, straightOut - StraightOut)
        );
    }

    /// <summary>Plunge inwards from mid-stroke to the stop at an angle, mm.</summary>
    /// <param name="angle">rad, 0 to less than π/2.</param>
    public double In(double angle) =>
        HasTable ? Table(_in, angle) : StraightIn - RollerRadius * Math.Tan(angle);

    /// <summary>Plunge outwards from mid-stroke to the stop at an angle, mm.</summary>
    /// <param name="angle">rad, 0 to less than π/2.</param>
    public double Out(double angle) =>
        HasTable ? Table(_out, angle) : StraightOut - RollerRadius * Math.Tan(angle);

    /// <summary>Largest axial distance from the outer joint centre to the spider, mm, with which the joint does not bottom.</summary>
    /// <param name="axial">Distance between the joint centres along the inner axis, inner at mid-stroke, mm.</param>
    /// <param name="across">Distance of the outer centre from the inner axis, mm.</param>
    /// <param name="margin">Plunge to keep unused, mm.</param>
    /// <returns>mm; NaN when the joint cannot work there at all.</returns>
    /// <remarks>With w = L·cos φ the plunge is s = axial − w and must not go below −In(φ) + margin, tan φ = across/w. By the tripod
    /// rule this is w² − Bw + ρ·across ≤ 0, B = axial + In − margin: the larger root.</remarks>
    public double LargestAxial(double axial, double across, double margin)
    {
        if (!HasTable)
        {
            var b = axial + StraightIn - margin;
            var discriminant = b * b - 4 * RollerRadius * across;
            return discriminant < 0 || b <= 0 ? double.NaN : (b + Math.Sqrt(discriminant)) / 2;
        }
        return Settle(axial + _in.Max() - margin, w => axial + In(Math.Atan2(across, w)) - margin);
    }

    /// <summary>Smallest axial distance with which the joint does not reach its outer stop, mm.</summary>
    /// <param name="axial">Distance between the joint centres along the inner axis, inner at mid-stroke, mm.</param>
    /// <param name="across">Distance of the outer centre from the inner axis, mm.</param>
    /// <param name="margin">Plunge to keep unused, mm.</param>
    /// <returns>mm; NaN when a table's limits do not settle.</returns>
    /// <remarks>s must not go above Out(φ) − margin: w² − Aw − ρ·across ≥ 0, A = axial − Out + margin: above the positive root.</remarks>
    public double SmallestAxial(double axial, double across, double margin)
    {
        if (!HasTable)
        {
            var a = axial - StraightOut + margin;
            return (a + Math.Sqrt(a * a + 4 * RollerRadius * across)) / 2;
        }
        return Settle(
            axial - _out.Max() + margin,
            w => axial - Out(Math.Atan2(across, w)) + margin
        );
    }

    /// <summary>Fixed point by plain substitution; each step shrinks the error by about across·slope/w², a few hundredths.</summary>
    private static double Settle(double w, Func<double, double> next)
    {
        for (var i = 0; i < 200; i++)
        {
            var better = next(w);
            if (better <= 0)
                return double.NaN;
            if (Math.Abs(better - w) < 1e-12 * better)
                return better;
            w = better;
        }
        return double.NaN;
    }

    private double Table(double[] column, double angle)
    {
        var i = Array.BinarySearch(_angle, angle);
        if (i >= 0)
            return column[i];
        i = ~i;
        if (i >= _angle.Length)
        {
            // Loss goes on at the last slope; a column that rises there is held, since no stop recedes as a joint bends.
            var slope =
                _angle.Length < 2 ? 0 : (column[^1] - column[^2]) / (_angle[^1] - _angle[^2]);
            return column[^1] + Math.Min(0, slope) * (angle - _angle[^1]);
        }
        var share = (angle - _angle[i - 1]) / (_angle[i] - _angle[i - 1]);
        return column[i - 1] + share * (column[i] - column[i - 1]);
    }
}
