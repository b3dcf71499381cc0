namespace Shaftwright.Strength.TorsionField;

/// <summary>The surface of a round part, cut along its axis: straight runs and quarter turns from one end to the other.</summary>
/// <remarks>Place z along the axis from the first end, radius r from the axis, both mm.</remarks>
public sealed class Outline
{
    private readonly List<IRun> _runs = [];
    private (double Z, double R) _end;

    private Outline(double radius) => _end = (0, radius);

    /// <summary>One piece of the surface.</summary>
    internal interface IRun
    {
        /// <summary>Length along the surface, mm.</summary>
        double Length { get; }

        /// <summary>Length along the axis, mm.</summary>
        double Along { get; }

        /// <summary>Gain in radius, mm; negative where the part gets thinner.</summary>
        double Rise { get; }

        /// <summary>Radius of the turn, mm; infinite on a straight run.</summary>
        double Turn { get; }

        /// <summary>Its point at a share from 0 to 1 of its length.</summary>
        (double Z, double R) At(double share);
    }

    /// <summary>Where the surface ends, mm.</summary>
    public double Length => _end.Z;

    /// <summary>Smallest radius, mm.</summary>
    public double Least => _runs.Min(r => Math.Min(r.At(0).R, r.At(1).R));

    /// <summary>Greatest radius, mm.</summary>
    public double Most => _runs.Max(r => Math.Max(r.At(0).R, r.At(1).R));

    internal IReadOnlyList<IRun> Runs => _runs;

    /// <summary>Begins a surface at z = 0.</summary>
    /// <param name="radius">Its radius there, mm, more than 0.</param>
    public static Outline From(double radius)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(radius);
        return new(radius);
    }

    /// <summary>A straight run.</summary>
    /// <param name="along">Length along the axis, mm, 0 or more.</param>
    /// <param name="radius">Radius at its end, mm, more than 0; the radius it begins at when null.</param>
    public Outline Straight(double along, double? radius = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(along);
        var to = (_end.Z + along, radius ?? _end.R);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(to.Item2, nameof(radius));
        // What is left over where rounding put two places apart is no run.
        if (Math.Abs(along) + Math.Abs(to.Item2 - _end.R) > 1e-9 * to.Item2)
            _runs.Add(new Line(_end, to));
        _end = to;
        return this;
    }

    /// <summary>A concave quarter turn that rises from a plain bar, or falls to one.</summary>
    /// <param name="turn">Its radius, mm, more than 0.</param>
    /// <param name="rises">True from the bar to a face, false from a face to the bar.</param>
    /// <param name="height">Height that it gains or loses, mm; less than the radius gives a part of the turn. Null gives all.</param>
    public Outline Fillet(double turn, bool rises, double? height = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(turn);
        var h = height ?? turn;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(h, nameof(height));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(h, turn, nameof(height));
        var sweep = Math.Acos(1 - h / turn);
        var arc = new Arc(_end, turn, sweep, rises);
        _runs.Add(arc);
        _end = arc.At(1);
        return this;
    }

    /// <summary>A bar that steps up to a thicker one over a fillet.</summary>
    /// <param name="D">The thicker diameter, mm.</param>
    /// <param name="thin">The thinner diameter, mm.</param>
    /// <param name="fillet">Radius of the fillet, mm. Where it is more than the step is high, the turn ends at the thicker bar.</param>
    /// <param name="reach">Length of bar on each side, in thicker diameters.</param>
    public static Outline Shoulder(double D, double thin, double fillet, double reach = 2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(D, thin);
        var step = (D - thin) / 2;
        return From(thin / 2)
            .Straight(reach * D)
            .Fillet(fillet, rises: true, Math.Min(step, fillet))
            .Straight(0, D / 2)
            .Straight(reach * D);
    }

    /// <summary>A bar with a groove whose bottom is a half circle, its sides upright.</summary>
    /// <param name="D">Diameter of the bar, mm.</param>
    /// <param name="depth">Depth of the groove, mm.</param>
    /// <param name="radius">Radius of its bottom, mm, no more than the depth.</param>
    /// <param name="reach">Length of bar on each side, in diameters.</param>
    public static Outline Groove(double D, double depth, double radius, double reach = 2)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(radius, depth);
        return From(D / 2)
            .Straight(reach * D)
            .Straight(0, D / 2 - depth + radius)
            .Fillet(radius, rises: false)
            .Fillet(radius, rises: true)
            .Straight(0, D / 2)
            .Straight(reach * D);
    }

    private sealed record Line((double Z, double R) From, (double Z, double R) To) : IRun
    {
        public double Length => Math.Sqrt(Along * Along + Rise * Rise);

        public double Along => To.Z - From.Z;

        public double Rise => To.R - From.R;

        public double Turn => double.PositiveInfinity;

        public (double Z, double R) At(double share) =>
            (From.Z + share * Along, From.R + share * Rise);
    }

    /// <summary>Seen from its centre, which lies outside the metal, the turn begins or ends straight below.</summary>
    private sealed record Arc((double Z, double R) From, double Turn, double Sweep, bool Rises)
        : IRun
    {
        public double Length => Turn * Sweep;

        public double Along => Turn * Math.Sin(Sweep);

        public double Rise => Turn * (1 - Math.Cos(Sweep)) * (Rises ? 1 : -1);

        public (double Z, double R) At(double share)
        {
            if (Rises)
            {
                var a = share * Sweep;
                return (From.Z + Turn * Math.Sin(a), From.R + Turn * (1 - Math.Cos(a)));
            }
            var b = (1 - share) * Sweep;
            return (
                From.Z + Turn * (Math.Sin(Sweep) - Math.Sin(b)),
                From.R + Turn * (Math.Cos(Sweep) - Math.Cos(b))
            );
        }
    }
}
