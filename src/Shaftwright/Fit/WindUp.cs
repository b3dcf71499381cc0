using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Fit;

/// <summary>A stretch of bar of one metal.</summary>
/// <param name="Length">mm.</param>
/// <param name="Diameter">Where it begins, mm.</param>
/// <param name="EndDiameter">Where it ends, mm.</param>
/// <param name="ShearYield">MPa.</param>
/// <param name="Bore">mm; 0 for solid bar.</param>
public readonly record struct TwistStretch(
    double Length,
    double Diameter,
    double EndDiameter,
    Band ShearYield,
    double Bore = 0
);

/// <summary>How far a row of stretches twists under a torque, and how much of it stays.</summary>
/// <remarks>Stretches in series add their twists; each by <see cref="PlasticTorsion"/>. Along a taper Gauss–Legendre quadrature
/// with 5 points in each of 8 parts. Shear modulus <see cref="ShearModulus"/>, handbook value for steel; makers' figures lie
/// within 2 %.</remarks>
public static class WindUp
{
    /// <summary>G of steel, MPa.</summary>
    public const double ShearModulus = 80_000;

    // Gauss–Legendre, 5 points on −1 to 1. Source: Abramowitz and Stegun, Table 25.4.
    private static readonly (double At, double Weight)[] s_gauss =
    [
        (-0.9061798459386640, 0.2369268850561891),
        (-0.5384693101056831, 0.4786286704993665),
        (0, 0.5688888888888889),
        (0.5384693101056831, 0.4786286704993665),
        (0.9061798459386640, 0.2369268850561891),
    ];

    /// <summary>Twist under a torque and after it, rad, each from the metal at its strongest to the metal at its weakest.</summary>
    /// <param name="stretches">The stretches.</param>
    /// <param name="torque">N·mm.</param>
    /// <returns>The high ends are infinite when a stretch might yield right through.</returns>
    public static (Band Loaded, Band Set) Of(IReadOnlyList<TwistStretch> stretches, double torque)
    {
        ArgumentNullException.ThrowIfNull(stretches);
        double elastic = 0,
            low = 0,
            high = 0;
        foreach (var s in stretches)
        {
            elastic += Along(
                s,
                (D, bore) => torque / (ShearModulus * RoundSection.SecondMoment(D, bore))
            );
            low += Along(s, (D, bore) => SetPerLength(s.ShearYield.High, D, bore, torque));
            high += Along(s, (D, bore) => SetPerLength(s.ShearYield.Low, D, bore, torque));
        }
        return (new(elastic + low, elastic + high), new(low, high));
    }

    /// <summary>The stretches of a made shaft, cut where its metal changes.</summary>
    /// <param name="made">The shaft. Its sleeve is credited with nothing, so the twist errs high.</param>
    /// <param name="inner">Steel of the inner piece.</param>
    /// <param name="outer">Steel of the outer piece.</param>
    /// <returns>Heated metal as softened; a hard case from all core to all case. The splines' engaged parts count in full, a
    /// stretch that was not measured with its neighbour's diameter.</returns>
    public static IReadOnlyList<TwistStretch> StretchesOf(
        MadeShaft made,
        SteelKnown inner,
        SteelKnown outer
    )
    {
        ArgumentNullException.ThrowIfNull(made);
        var heated = new[] { made.WeldAt, made.SleeveFrom, made.SleeveTo }
            .OfType<double>()
            .Select(x => (From: x - made.HeatBand, To: x + made.HeatBand))
            .ToList();
        var edges = heated
            .SelectMany(h => new[] { h.From, h.To })
            .Concat(made.Hardened.SelectMany(h => new[] { h.From, h.To }))
            .Append(made.WeldAt)
            .ToList();
        var found = new List<TwistStretch>();
        foreach (var s in made.Stretches)
        {
            List<double> cuts =
            [
                s.From,
                .. edges.Where(e => e > s.From && e < s.To).Distinct().Order(),
                s.To,
            ];
            for (var i = 0; i + 1 < cuts.Count; i++)
            {
                var (a, b) = (cuts[i], cuts[i + 1]);
                var middle = (a + b) / 2;
                var steel = middle < made.WeldAt ? inner : outer;
                var core = ShearYield.OfCore(steel);
                var metal =
                    heated.Any(h => middle > h.From && middle < h.To) ? ShearYield.Softened(steel)
                    : made.Hardened.Any(h => middle > h.From && middle < h.To)
                        ? new Band(core.Low, Math.Max(core.High, ShearYield.OfCase(steel).High))
                    : core;
                var root = s.Kind == ZoneKind.Spline ? s.RootDiameter : null;
                found.Add(new(b - a, root ?? s.At(a), root ?? s.At(b), metal));
            }
        }
        return found;
    }

    private static double SetPerLength(double yield, double D, double bore, double torque)
    {
        var first = RoundSection.YieldTorque(yield, D, bore);
        // θy/L = 2τy/(GD).
        return torque <= first
            ? 0
            : PlasticTorsion.Set(yield, D, bore, torque) * 2 * yield / (ShearModulus * D);
    }

    private static double Along(TwistStretch s, Func<double, double, double> perLength)
    {
        if (Math.Abs(s.Diameter - s.EndDiameter) < 1e-12)
            return s.Length * perLength(s.Diameter, s.Bore);
        const int parts = 8;
        var sum = 0.0;
        for (var i = 0; i < parts; i++)
        {
            foreach (var (at, weight) in s_gauss)
            {
                var t = (i + (at + 1) / 2) / parts;
                sum +=
                    weight
                    / (2 * parts)
                    * perLength(s.Diameter + (s.EndDiameter - s.Diameter) * t, s.Bore);
            }
        }
        return sum * s.Length;
    }
}
