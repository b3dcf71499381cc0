using Shaftwright.Geometry;
using Shaftwright.Measures;

namespace Shaftwright.Corner.Linkages;

/// <summary>One tape against the place it led to.</summary>
/// <param name="Point">The point.</param>
/// <param name="From">The reference point it was taped from.</param>
/// <param name="Taped">What the tape said, mm.</param>
/// <param name="Fitted">The distance as found, mm.</param>
/// <param name="StandardUncertainty">Of the tape and its reference point together, mm.</param>
public sealed record TapeFit(
    LinkagePoint Point,
    string From,
    double Taped,
    double Fitted,
    double StandardUncertainty
);

/// <summary>A point found from tapes: where, how surely, and how well the tapes agree.</summary>
/// <remarks>Weighted least squares on the distances to the reference points, and on whichever coordinates were measured too, by
/// Gauss and Newton from both places where the best three spheres meet. Three reference points leave two places, one the mirror of
/// the other in their plane; where the measurements do not tell them apart nothing is chosen. A reference point's own doubt is
/// added to its tape's. Source: own derivation, docs/linkages.md; method: Björck, Numerical Methods for Least Squares Problems,
/// 1996, ch. 9 (from memory).</remarks>
internal sealed class TapedPoint
{
    private TapedPoint(Vec3 at, double[,] factor, IReadOnlyList<TapeFit> tapes)
    {
        At = at;
        Factor = factor;
        Tapes = tapes;
    }

    /// <summary>Where, mm.</summary>
    public Vec3 At { get; }

    /// <summary>Lower factor of its covariance, mm.</summary>
    public double[,] Factor { get; }

    /// <summary>The tapes against it.</summary>
    public IReadOnlyList<TapeFit> Tapes { get; }

    /// <summary>Two places are told apart when the sum of squares differs by this: 3 standard uncertainties.</summary>
    private const double ToldApart = 9;

    /// <summary>Nearer than this, mm, two places are one.</summary>
    private const double Same = 0.5;

    private readonly record struct Sphere(
        string From,
        Vec3 Centre,
        Vec3 Doubt,
        double Radius,
        double U
    )
    {
        /// <summary>Of the tape and the reference point together, seen along the tape.</summary>
        public double Uncertainty(Vec3 along) =>
            Math.Sqrt(
                U * U
                    + along.X * along.X * Doubt.X * Doubt.X
                    + along.Y * along.Y * Doubt.Y * Doubt.Y
                    + along.Z * along.Z * Doubt.Z * Doubt.Z
            );
    }

    /// <summary>Finds a point; null, with the reason in words, when the tapes do not fix it.</summary>
    public static TapedPoint? Find(
        PointInput point,
        IReadOnlyList<ReferenceInput> references,
        out string why
    )
    {
        why = "";
        var spheres = new List<Sphere>();
        foreach (var tape in point.Tapes)
        {
            if (tape.Distance is not { } distance)
            {
                why = $"a tape from {Quoted(tape.From)} without its distance";
                return null;
            }
            var from = references.FirstOrDefault(r => r.Name == tape.From);
            if (from is not { X: { } x, Y: { } y, Z: { } z })
            {
                why = $"where the reference point {Quoted(tape.From)} is";
                return null;
            }
            spheres.Add(
                new(
                    tape.From,
                    new(x.Value, y.Value, z.Value),
                    new(
                        LinkageFields.X.StandardUncertainty(x),
                        LinkageFields.Y.StandardUncertainty(y),
                        LinkageFields.Z.StandardUncertainty(z)
                    ),
                    distance.Value,
                    Math.Max(LinkageFields.Tape.StandardUncertainty(distance), Least)
                )
            );
        }
        var known = Known(point);
        // Measured in all three directions it is found already, and each tape only says it better.
        Vec3? measured = known is [var (x0, _), var (y0, _), var (z0, _)] ? new(x0, y0, z0) : null;
        if (measured is null && spheres.Count < 3)
        {
            why = "at least three tapes to it";
            return null;
        }
        var places = (measured is { } begin ? [begin] : Meet(spheres))
            .Select(p => Refined(p, spheres, known))
            .OfType<(Vec3 At, double[,] Normal, double Squares)>()
            .OrderBy(p => p.Squares)
            .ToList();
        if (places.Count == 0)
        {
            why = "tapes from points that do not lie on one line";
            return null;
        }
        var best = places[0];
        if (
            places.Count > 1
            && (places[1].At - best.At).Length > Same
            && places[1].Squares - best.Squares < ToldApart
        )
        {
            why =
                "on which side of its reference points it lies: the tapes fit two places; type any one coordinate roughly, or tape from a fourth point out of their plane";
            return null;
        }
        var covariance = Symmetric.Inverse(Symmetric.Factor(best.Normal)!);
        return new(
            best.At,
            Symmetric.Factor(covariance)!,
            [
                .. spheres.Select(s =>
                {
                    var d = best.At - s.Centre;
                    return new TapeFit(
                        point.Point,
                        s.From,
                        s.Radius,
                        d.Length,
                        s.Uncertainty(d.Unit())
                    );
                }),
            ]
        );
    }

    /// <summary>A tape said to be exact is still no better than this, mm.</summary>
    private const double Least = 1e-6;

    private static string Quoted(string name) => $"“{name}”";

    private static (double Value, double U)?[] Known(PointInput p)
    {
        static (double, double)? Of(Field<Distance> field, Measured<Distance>? m) =>
            m is null ? null : (m.Value, Math.Max(field.StandardUncertainty(m), Least));
        return [Of(LinkageFields.X, p.X), Of(LinkageFields.Y, p.Y), Of(LinkageFields.Z, p.Z)];
    }

    /// <summary>Where the three spheres whose centres span the largest triangle meet; their nearest approach when they do not.</summary>
    private static IEnumerable<Vec3> Meet(List<Sphere> spheres)
    {
        var largest = 0.0;
        var (a, b, c) = (spheres[0], spheres[1], spheres[2]);
        for (var i = 0; i < spheres.Count; i++)
        for (var j = i + 1; j < spheres.Count; j++)
        for (var k = j + 1; k < spheres.Count; k++)
        {
            var area = (spheres[j].Centre - spheres[i].Centre)
                .Cross(spheres[k].Centre - spheres[i].Centre)
                .Length;
            if (area <= largest)
                continue;
            largest = area;
            (a, b, c) = (spheres[i], spheres[j], spheres[k]);
        }
        // A triangle of less than 100 mm by 10 holds no plane.
        if (largest < 1000)
            yield break;
        var ex = (b.Centre - a.Centre).Unit();
        var ac = c.Centre - a.Centre;
        var i2 = ex.Dot(ac);
        var ey = (ac - ex * i2).Unit();
        var ez = ex.Cross(ey);
        var d = (b.Centre - a.Centre).Length;
        var j2 = ey.Dot(ac);
        var x = (a.Radius * a.Radius - b.Radius * b.Radius + d * d) / (2 * d);
        var y =
            (a.Radius * a.Radius - c.Radius * c.Radius + i2 * i2 + j2 * j2) / (2 * j2)
            - i2 / j2 * x;
        var z = Math.Sqrt(Math.Max(0, a.Radius * a.Radius - x * x - y * y));
        // From the plane itself neither side pulls: begin a little off it on both.
        z = Math.Max(z, 1);
        yield return a.Centre + ex * x + ey * y + ez * z;
        yield return a.Centre + ex * x + ey * y - ez * z;
    }

    private static (Vec3 At, double[,] Normal, double Squares)? Refined(
        Vec3 at,
        List<Sphere> spheres,
        (double Value, double U)?[] known
    )
    {
        var damping = 1e-6;
        var (normal, right, squares) = Normal(at, spheres, known);
        for (var i = 0; i < 200; i++)
        {
            var damped = (double[,])normal.Clone();
            for (var k = 0; k < 3; k++)
                damped[k, k] *= 1 + damping;
            if (Symmetric.Factor(damped) is not { } l)
                return null;
            var step = Symmetric.Solve(l, right);
            var next = at + new Vec3(step[0], step[1], step[2]);
            var tried = Normal(next, spheres, known);
            if (!(tried.Squares <= squares * (1 + 1e-14)))
            {
                damping *= 10;
                if (damping > 1e9)
                    break;
                continue;
            }
            var moved = (next - at).Length;
            (at, normal, right, squares) = (next, tried.Normal, tried.Right, tried.Squares);
            damping = Math.Max(damping / 10, 1e-12);
            if (moved < 1e-10)
                break;
        }
        return Symmetric.Factor(normal) is null ? null : (at, normal, squares);
    }

    private static (double[,] Normal, double[] Right, double Squares) Normal(
        Vec3 at,
        List<Sphere> spheres,
        (double Value, double U)?[] known
    )
    {
        var normal = new double[3, 3];
        var right = new double[3];
        var squares = 0.0;
        void Add(double[] row, double off, double u)
        {
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                    normal[i, j] += row[i] * row[j] / (u * u);
                right[i] += row[i] * off / (u * u);
            }
            squares += off * off / (u * u);
        }
        foreach (var s in spheres)
        {
            var d = at - s.Centre;
            var along = d.Unit();
            Add([along.X, along.Y, along.Z], s.Radius - d.Length, s.Uncertainty(along));
        }
        double[] here = [at.X, at.Y, at.Z];
        for (var k = 0; k < 3; k++)
        {
            if (known[k] is not var (value, u))
                continue;
            var row = new double[3];
            row[k] = 1;
            Add(row, value - here[k], u);
        }
        return (normal, right, squares);
    }
}
