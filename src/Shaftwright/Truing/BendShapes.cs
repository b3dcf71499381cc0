namespace Shaftwright.Truing;

/// <summary>The lines of bent shafts, seen from two supports: line less the straight line through its two supported points.</summary>
/// <remarks>Closed forms: a kink κ at w between supports a, b stands κ (w − a)(b − w)/(b − a) off at w; a curvature γ stands
/// γ (x − a)(b − x)/2 off at x. Small slopes: exact to a part in 10⁴ at 0.02 rad. Source: own derivation. Check values:
/// Published/bow-between-supports.json.</remarks>
internal static class BendShapes
{
    /// <summary>Per rad of kink at w, mm; positive where it stands out.</summary>
    public static double Kink(double x, double a, double b, double w) =>
        Seen(Roof(x, w), Roof(a, w), Roof(b, w), x, a, b);

    /// <summary>Per 1/mm of curvature, mm.</summary>
    public static double Sweep(double x, double a, double b) => 0.5 * (x - a) * (b - x);

    /// <summary>Per mm of set-off at w, mm.</summary>
    public static double SetOff(double x, double a, double b, double w) =>
        Seen(Step(x, w), Step(a, w), Step(b, w), x, a, b);

    /// <summary>The one or two shapes of a kind, in the order kink, sweep, set-off.</summary>
    public static (double First, double Second) Of(
        BendKind kind,
        double x,
        double a,
        double b,
        double w
    ) =>
        kind switch
        {
            BendKind.Kink => (Kink(x, a, b, w), 0),
            BendKind.Sweep => (Sweep(x, a, b), 0),
            BendKind.SetOff => (SetOff(x, a, b, w), 0),
            BendKind.KinkAndSweep => (Kink(x, a, b, w), Sweep(x, a, b)),
            BendKind.KinkAndSetOff => (Kink(x, a, b, w), SetOff(x, a, b, w)),
            _ => (0, 0),
        };

    private static double Roof(double x, double w) => -Math.Max(0, x - w);

    private static double Step(double x, double w) => x > w ? 1 : 0;

    private static double Seen(double fx, double fa, double fb, double x, double a, double b) =>
        fx - ((b - x) * fa + (x - a) * fb) / (b - a);
}
