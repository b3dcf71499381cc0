namespace Shaftwright.Joints;

/// <summary>A shaft between two plunging joints at one position of the wheel. It floats: both ends are looked at together.</summary>
/// <param name="Square">Square of the distance between the joint centres, both at mid-stroke, mm².</param>
/// <param name="AlongInner">Part of that distance along the inner axis, mm.</param>
/// <param name="AlongOuter">Part of it along the outer axis, mm.</param>
/// <param name="LeastCosine">Smallest that the cosine of the angle between the two axes can be.</param>
/// <param name="MostCosine">Largest that it can be. Both angles of the shaft do not fix it: the two may bend in one plane or across.</param>
/// <remarks>With s the plunge of the inner joint outboard and S that of the outer joint outboard (into its housing), both axes
/// pointing outboard, the line of the shaft is v = d + S·a_o − s·a_i and |v| = L. Own derivation from rigid-body geometry.</remarks>
public readonly record struct FloatingShaft(
    double Square,
    double AlongInner,
    double AlongOuter,
    double LeastCosine,
    double MostCosine
)
{
    /// <summary>From the distance and the angle of the line of centres to each axis.</summary>
    /// <param name="distance">mm.</param>
    /// <param name="innerAngle">rad.</param>
    /// <param name="outerAngle">rad.</param>
    public static FloatingShaft Of(double distance, double innerAngle, double outerAngle) =>
        new(
            distance * distance,
            distance * Math.Cos(innerAngle),
            distance * Math.Cos(outerAngle),
            Math.Cos(innerAngle + outerAngle),
            Math.Cos(innerAngle - outerAngle)
        );

    /// <summary>Longest shaft that does not jam between both bottoms, mm, with <paramref name="margin"/> kept at each.</summary>
    /// <param name="inner">Limits of the inner joint.</param>
    /// <param name="outer">Limits of the outer joint.</param>
    /// <param name="margin">mm.</param>
    /// <param name="towards">How far the inner housing may come towards the wheel, mm.</param>
    public double Longest(PlungeLimits inner, PlungeLimits outer, double margin, double towards)
    {
        ArgumentNullException.ThrowIfNull(inner);
        ArgumentNullException.ThrowIfNull(outer);
        return At(
            LeastCosine,
            (phi, psi) => (-inner.In(phi) + margin + towards, outer.In(psi) - margin)
        );
    }

    /// <summary>Shortest shaft that falls out of neither joint wherever it drifts, mm.</summary>
    /// <param name="inner">Limits of the inner joint.</param>
    /// <param name="outer">Limits of the outer joint.</param>
    /// <param name="margin">Plunge to keep before a joint pulls out, mm.</param>
    /// <param name="away">How far the inner housing may go away from the wheel, mm.</param>
    /// <param name="innerHeld">A ring or clip holds the shaft in the inner joint.</param>
    /// <param name="outerHeld">The same in the outer joint.</param>
    /// <remarks>A shaft that nothing holds drifts until it bottoms at one end; then the other end must still be in. With both ends
    /// held it must only reach both outer stops.</remarks>
    public double Shortest(
        PlungeLimits inner,
        PlungeLimits outer,
        double margin,
        double away,
        bool innerHeld,
        bool outerHeld
    )
    {
        ArgumentNullException.ThrowIfNull(inner);
        ArgumentNullException.ThrowIfNull(outer);
        var shortest = At(
            MostCosine,
            (phi, psi) => (inner.Out(phi) - margin - away, -outer.Out(psi) + margin)
        );
        if (!outerHeld)
            shortest = Math.Max(
                shortest,
                At(LeastCosine, (phi, psi) => (-inner.In(phi) - away, -outer.Out(psi) + margin))
            );
        if (!innerHeld)
            shortest = Math.Max(
                shortest,
                At(LeastCosine, (phi, psi) => (inner.Out(phi) - margin - away, outer.In(psi)))
            );
        return shortest;
    }

    /// <summary>How far a shaft of a length drifts between its stops, as plunge of the inner joint, mm; null when it jams.</summary>
    /// <param name="inner">Limits of the inner joint.</param>
    /// <param name="outer">Limits of the outer joint.</param>
    /// <param name="length">mm.</param>
    public (double Lowest, double Highest)? Drift(
        PlungeLimits inner,
        PlungeLimits outer,
        double length
    )
    {
        ArgumentNullException.ThrowIfNull(inner);
        ArgumentNullException.ThrowIfNull(outer);
        // The limits shrink with the angle, which drift hardly changes: the angles at mid-stroke stand for it.
        var distance = Math.Sqrt(Square);
        var phi = Math.Acos(Math.Clamp(AlongInner / distance, -1, 1));
        var psi = Math.Acos(Math.Clamp(AlongOuter / distance, -1, 1));
        var lowest = Math.Max(-inner.In(phi), InnerPlunge(length, -outer.Out(psi)));
        var highest = Math.Min(inner.Out(phi), InnerPlunge(length, outer.In(psi)));
        return lowest <= highest ? (lowest, highest) : null;
    }

    /// <summary>Inner plunge, mm, that goes with a plunge of the outer joint outboard.</summary>
    /// <param name="length">mm.</param>
    /// <param name="outerPlunge">mm.</param>
    public double InnerPlunge(double length, double outerPlunge)
    {
        var b = AlongInner + outerPlunge * MiddleCosine;
        var c = Square + outerPlunge * outerPlunge + 2 * outerPlunge * AlongOuter - length * length;
        return b - Math.Sqrt(Math.Max(0, b * b - c));
    }

    /// <summary>Outer plunge outboard, mm, that goes with a plunge of the inner joint outboard.</summary>
    /// <param name="length">mm.</param>
    /// <param name="innerPlunge">mm.</param>
    public double OuterPlunge(double length, double innerPlunge)
    {
        var b = AlongOuter - innerPlunge * MiddleCosine;
        var c = Square + innerPlunge * innerPlunge - 2 * innerPlunge * AlongInner - length * length;
        return -b + Math.Sqrt(Math.Max(0, b * b - c));
    }

    /// <summary>Largest distance of the outer centre from the inner axis over a span of outer plunge, squared, mm².</summary>
    /// <param name="from">Outer plunge outboard, mm.</param>
    /// <param name="to">mm.</param>
    public double AcrossInnerSquared(double from, double to) =>
        Math.Max(Across(AlongInner, AlongOuter, from), Across(AlongInner, AlongOuter, to));

    /// <summary>The same of the inner centre from the outer axis, over a span of inner plunge outboard.</summary>
    /// <param name="from">mm.</param>
    /// <param name="to">mm.</param>
    public double AcrossOuterSquared(double from, double to) =>
        Math.Max(Across(AlongOuter, AlongInner, -from), Across(AlongOuter, AlongInner, -to));

    private double MiddleCosine => (LeastCosine + MostCosine) / 2;

    /// <summary>Convex in the slide, so that its largest value is at an end of the span; the cosine that makes it larger is taken.</summary>
    private double Across(double own, double other, double slide)
    {
        double With(double square, double cosine)
        {
            var along = own + slide * cosine;
            return Math.Max(0, square + slide * slide + 2 * slide * other - along * along);
        }
        return Math.Max(With(Square, LeastCosine), With(Square, MostCosine));
    }

    /// <summary>Length at plunges that depend on the angles they give, settled by substitution.</summary>
    private double At(double cosine, Func<double, double, (double Inner, double Outer)> plunges)
    {
        var distance = Math.Sqrt(Square);
        double phi = Math.Acos(Math.Clamp(AlongInner / distance, -1, 1)),
            psi = Math.Acos(Math.Clamp(AlongOuter / distance, -1, 1)),
            length = distance;
        for (var i = 0; i < 100; i++)
        {
            var (s, o) = plunges(phi, psi);
            var square =
                Square
                + o * o
                + s * s
                + 2 * o * AlongOuter
                - 2 * s * AlongInner
                - 2 * s * o * cosine;
            var next = Math.Sqrt(Math.Max(0, square));
            phi = Math.Acos(Math.Clamp((AlongInner + o * cosine - s) / next, -1, 1));
            psi = Math.Acos(Math.Clamp((AlongOuter + o - s * cosine) / next, -1, 1));
            if (Math.Abs(next - length) < 1e-12 * next)
                return next;
            length = next;
        }
        return length;
    }
}
