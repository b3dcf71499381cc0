using Shaftwright.Measures;

namespace Shaftwright.Joints;

/// <summary>How far a plunging joint may plunge at each angle, in plain numbers.</summary>
/// <remarks>By rule, a plunging tripod loses ρ·tan(angle) at each end (<see cref="Tripod"/>), ρ the roller radius or, better, found
/// from the stroke measured at an angle. A ball or cross-groove joint measured so loses ρ·tan(angle/2): its balls lie in the plane
/// that halves the angle, and the one furthest out comes to its end first. A measured table replaces the rule; between its rows
/// the limit runs straight, beyond its last row it goes on falling at the last slope, and the length stage says so.
/// Source of the rules: own derivation for straight tracks, a least loss; common practice, no source.</remarks>
public sealed class PlungeLimits
{
    private readonly double[] _angle;
    private readonly double[] _in;
    private readonly double[] _out;

    private PlungeLimits(
        BenchStroke straight,
        JointKind kind,
        double[] angle,
        double[] goesIn,
        double[] comesOut
    )
    {
        Straight = straight;
        _kind = kind;
        _angle = angle;
        _in = goesIn;
        _out = comesOut;
    }

    private readonly JointKind _kind;

    /// <summary>Straight plunge and the radius of the rule, with their uncertainties.</summary>
    internal BenchStroke Straight { get; }

    /// <summary>Plunge inwards from mid-stroke, straight, mm.</summary>
    public double StraightIn => Straight.In;

    /// <summary>Plunge outwards from mid-stroke, straight, mm.</summary>
    public double StraightOut => Straight.Out;

    /// <summary>Radius of the rule, mm; 0 when the limits do not shrink or a table is given.</summary>
    public double RollerRadius => Straight.Radius;

    /// <summary>True when the loss goes with half the angle: the balls lie in the plane that halves it.</summary>
    public bool ByHalfAngle => _kind is JointKind.PlungingBall or JointKind.CrossGroove;

    /// <summary>Share of the plunge that the point the joint bends about moves in its housing: 1/2 for a cross groove, else 1.</summary>
    /// <remarks>A cross groove's balls sit where grooves slanted one way cross grooves slanted as much the other way, so they move
    /// half as far as the inner part does. Equal slants: own derivation; common practice, no source.</remarks>
    public double Share => _kind == JointKind.CrossGroove ? 0.5 : 1;

    /// <summary>True when a measured table is used.</summary>
    public bool HasTable => _angle.Length > 0;

    /// <summary>Angle of the table's last row, rad; null without a table.</summary>
    public double? TableEndsAt => HasTable ? _angle[^1] : null;

    /// <summary>Limits of a joint, or null when its plunge is not known or it does not plunge.</summary>
    public static PlungeLimits? Of(JointInput joint)
    {
        ArgumentNullException.ThrowIfNull(joint);
        if (joint.Kind == JointKind.Fixed || BenchStroke.Of(joint) is not { } straight)
            return null;
        PlungeAtAngle[] rows =
        [
            .. joint
                .PlungeTable.Where(r => r is { Angle: not null, In: not null, Out: not null })
                .OrderBy(r => r.Angle!.Value),
        ];
        return rows.Length == 0
            ? new(straight, joint.Kind, [], [], [])
            : new(
                straight with
                {
                    Radius = 0,
                    RadiusUncertainty = 0,
                },
                joint.Kind,
                [0, .. rows.Select(r => r.Angle!.Value)],
                [straight.In, .. rows.Select(r => r.In!.Value)],
                [straight.Out, .. rows.Select(r => r.Out!.Value)]
            );
    }

    /// <summary>The same limits with other straight plunge and radius; used to carry their uncertainty.</summary>
    internal PlungeLimits With(double straightIn, double straightOut, double radius)
    {
        double[] Shift(double[] column, double by) => [.. column.Select(v => v + by)];
        return new(
            Straight with
            {
                In = straightIn,
                Out = straightOut,
                Radius = HasTable ? 0 : radius,
            },
            _kind,
            _angle,
            Shift(_in, straightIn - StraightIn),
            Shift(_out, straightOut - StraightOut)
        );
    }

    /// <summary>Plunge inwards from mid-stroke to the stop at an angle, mm.</summary>
    /// <param name="angle">rad, 0 to less than π/2.</param>
    public double In(double angle) => HasTable ? Table(_in, angle) : StraightIn - Loss(angle);

    /// <summary>Plunge outwards from mid-stroke to the stop at an angle, mm.</summary>
    /// <param name="angle">rad, 0 to less than π/2.</param>
    public double Out(double angle) => HasTable ? Table(_out, angle) : StraightOut - Loss(angle);

    /// <summary>Longest shaft with which the joint does not bottom, mm.</summary>
    /// <inheritdoc cref="LargestAxial"/>
    /// <returns>mm; 0 when the joint cannot work there at all.</returns>
    public double Longest(double axial, double across, double margin)
    {
        if (Share == 1)
            return LargestAxial(axial, across, margin) is > 0 and var w
                ? double.Hypot(w, across)
                : 0;
        var s = SettlePlunge(axial, across, -MostIn + margin, phi => -In(phi) + margin);
        return double.IsNaN(s) ? 0 : LengthAt(s, axial, across);
    }

    /// <summary>Shortest shaft with which the joint does not reach its outer stop, mm.</summary>
    /// <inheritdoc cref="SmallestAxial"/>
    /// <returns>mm; infinite when no length does.</returns>
    public double Shortest(double axial, double across, double margin)
    {
        if (Share == 1)
            return SmallestAxial(axial, across, margin) is var w && double.IsNaN(w)
                ? double.PositiveInfinity
                : double.Hypot(Math.Max(0, w), across);
        var s = SettlePlunge(axial, across, MostOut - margin, phi => Out(phi) - margin);
        return double.IsNaN(s) ? double.PositiveInfinity : LengthAt(s, axial, across);
    }

    /// <summary>Length of the shaft that plunges by <paramref name="plunge"/>, mm, joint centre to joint centre with each part at its
    /// own middle.</summary>
    /// <param name="plunge">From mid-stroke, positive out of the housing, mm.</param>
    /// <param name="axial">Distance between the joint centres along the inner axis, inner at mid-stroke, mm.</param>
    /// <param name="across">Distance of the outer centre from the inner axis, mm.</param>
    /// <remarks>The joint bends about a point moved κ·s in the housing; the shaft's own middle stands (1 − κ)·s beyond it:
    /// L = √((axial − κs)² + across²) − (1 − κ)s. With κ = 1 this is the plain triangle.</remarks>
    public double LengthAt(double plunge, double axial, double across) =>
        double.Hypot(axial - Share * plunge, across) - (1 - Share) * plunge;

    /// <summary>Plunge with a shaft of a length, mm, positive out of the housing.</summary>
    /// <param name="length">Joint-centre length, mm.</param>
    /// <param name="axial">As in <see cref="LengthAt"/>, mm.</param>
    /// <param name="across">As in <see cref="LengthAt"/>, mm.</param>
    /// <returns>mm; NaN when the shaft is too short to reach.</returns>
    public double PlungeAt(double length, double axial, double across)
    {
        // (2κ − 1)s² − 2(κ·axial + (1 − κ)L)s + D² − L² = 0, its smaller root, written so that κ = 1/2 needs no division by 0.
        var a = 2 * Share - 1;
        var b = Share * axial + (1 - Share) * length;
        var c = axial * axial + across * across - length * length;
        return c / (b + Math.Sqrt(b * b - a * c));
    }

    /// <summary>Angle of the joint with that plunge, rad.</summary>
    /// <inheritdoc cref="LengthAt"/>
    public double AngleAt(double plunge, double axial, double across) =>
        Math.Atan2(across, axial - Share * plunge);

    /// <summary>Largest axial distance from the outer joint centre to the spider, mm, with which the joint does not bottom.</summary>
    /// <param name="axial">Distance between the joint centres along the inner axis, inner at mid-stroke, mm.</param>
    /// <param name="across">Distance of the outer centre from the inner axis, mm.</param>
    /// <param name="margin">Plunge to keep unused, mm.</param>
    /// <returns>mm; NaN when the joint cannot work there at all.</returns>
    /// <remarks>With w = L·cos φ the plunge is s = axial − w and must not go below −In(φ) + margin, tan φ = across/w. By the tripod
    /// rule this is w² − Bw + ρ·across ≤ 0, B = axial + In − margin: the larger root.</remarks>
    public double LargestAxial(double axial, double across, double margin)
    {
        if (HasClosedForm)
        {
            var b = axial + StraightIn - margin;
            var discriminant = b * b - 4 * RollerRadius * across;
            return discriminant < 0 || b <= 0 ? double.NaN : (b + Math.Sqrt(discriminant)) / 2;
        }
        return Settle(axial + MostIn - margin, w => axial + In(Math.Atan2(across, w)) - margin);
    }

    /// <summary>Smallest axial distance with which the joint does not reach its outer stop, mm.</summary>
    /// <param name="axial">Distance between the joint centres along the inner axis, inner at mid-stroke, mm.</param>
    /// <param name="across">Distance of the outer centre from the inner axis, mm.</param>
    /// <param name="margin">Plunge to keep unused, mm.</param>
    /// <returns>mm; NaN when a table's limits do not settle.</returns>
    /// <remarks>s must not go above Out(φ) − margin: w² − Aw − ρ·across ≥ 0, A = axial − Out + margin: above the positive root.</remarks>
    public double SmallestAxial(double axial, double across, double margin)
    {
        if (HasClosedForm)
        {
            var a = axial - StraightOut + margin;
            return (a + Math.Sqrt(a * a + 4 * RollerRadius * across)) / 2;
        }
        return Settle(axial - MostOut + margin, w => axial - Out(Math.Atan2(across, w)) + margin);
    }

    /// <summary>Most plunge inwards at any angle, mm.</summary>
    private double MostIn => HasTable ? _in.Max() : StraightIn;

    /// <summary>Most plunge outwards at any angle, mm.</summary>
    private double MostOut => HasTable ? _out.Max() : StraightOut;

    /// <summary>The quadratic of <see cref="LargestAxial"/> is the tripod's; without a loss every kind obeys it.</summary>
    private bool HasClosedForm => !HasTable && (RollerRadius == 0 || !ByHalfAngle);

    private double Loss(double angle) => RollerRadius * Math.Tan(ByHalfAngle ? angle / 2 : angle);

    private double SettlePlunge(double axial, double across, double s, Func<double, double> next)
    {
        for (var i = 0; i < 200; i++)
        {
            var better = next(AngleAt(s, axial, across));
            if (!(axial - Share * better > 0))
                return double.NaN;
            if (Math.Abs(better - s) < 1e-12 * axial)
                return better;
            s = better;
        }
        return double.NaN;
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
