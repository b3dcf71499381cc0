namespace Shaftwright.Truing.Pressing;

/// <summary>What a beam does at every load, in a table, for yield strengths as first taken. Other strengths follow by scale: with
/// all yields s times as large, depth, set and strain at the load s·P are s times those at P.</summary>
internal sealed class PressCurve
{
    private const int Nodes = 72;

    private readonly double[] _load = new double[Nodes];
    private readonly double[] _set = new double[Nodes];
    private readonly double[] _seen = new double[Nodes];
    private readonly double[] _strain = new double[Nodes];

    public PressCurve(PressBeam beam)
    {
        Beam = beam;
        var first = beam.YieldLoad;
        // Far beyond any stroke that is ever proposed, so that every yield in the range finds its place in the table.
        var last = beam.LoadForStrain(0.05);
        for (var i = 0; i < Nodes; i++)
        {
            // Closer together towards the full load, where the set runs away.
            var back = 1 - i / (Nodes - 1.0);
            _load[i] = last - (last - first) * back * back;
            var at = beam.At(_load[i]);
            (_set[i], _seen[i], _strain[i]) = (at.Set, at.Seen, at.Strain);
        }
    }

    public PressBeam Beam { get; }

    /// <summary>Moment under the ram of one newton, mm.</summary>
    public double Arm => PressBeam.UnitMoment(Beam.Ram, Beam.First, Beam.Second, Beam.Ram);

    public double LastLoad => _load[^1];

    public double Set(double load) => Of(_set, load);

    public double Seen(double load) => Of(_seen, load);

    public double Strain(double load) =>
        load <= _load[0] ? _strain[0] * load / _load[0] : Of(_strain, load);

    private double Of(double[] table, double load)
    {
        if (load <= _load[0])
            return 0;
        var (low, high) = (0, Nodes - 1);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (_load[middle] <= load)
                low = middle;
            else
                high = middle;
        }
        // Beyond the table the last straight line goes on.
        var share = (load - _load[low]) / (_load[high] - _load[low]);
        return table[low] + share * (table[high] - table[low]);
    }
}

/// <summary>Where a shaft stands in its history at one place of pressing, at unit yield: the load it was last turned back at, the
/// load where this way joins the first one again, and the largest load since.</summary>
/// <remarks>Masing's rule, which is exact for elastic–perfectly plastic fibres under one load that goes up and down: after a turn
/// back at b, the set grows by 2·S((b + p)/2) until the load reaches the largest there was, and along the first curve after that.
/// Pressing again the same way adds nothing up to the load there was before. Source: G. Masing 1926, from memory; derived for the
/// beam by its proportional loading.</remarks>
internal readonly record struct PressHistory(double Back, double Joins, double Peak)
{
    /// <summary>Set under the ram that a load adds.</summary>
    public double Set(PressCurve curve, double load) =>
        load <= Peak ? 0 : Branch(curve.Set(Half(load)), curve.Set(Half(Peak)), curve, load, false);

    /// <summary>The same at the dial.</summary>
    public double Seen(PressCurve curve, double load) =>
        load <= Peak
            ? 0
            : Branch(curve.Seen(Half(load)), curve.Seen(Half(Peak)), curve, load, true);

    /// <summary>After a load the same way.</summary>
    public PressHistory After(double load) => this with { Peak = Math.Max(Peak, load) };

    /// <summary>As it is for a stroke in another direction. Fibres that lie that way saw only the cosine of what was done before:
    /// the same way on they yield again from that share of the load, the other way they begin where it ended, and straight across
    /// they are fresh.</summary>
    /// <param name="cosine">Cosine of the angle between the strokes.</param>
    /// <param name="lever">Moment of the last stroke over that of this one at the same load: other blocks, another lever.</param>
    public PressHistory Towards(double cosine, double lever = 1) =>
        cosine >= 0
            ? new(Back * cosine * lever, Joins * cosine * lever, Peak * cosine * lever)
            : new(-Peak * cosine * lever, -Math.Max(Peak, Joins) * cosine * lever, 0);

    private double Half(double load) =>
        Math.Min(load, Joins) is var p && Joins > 0 ? (Back + p) / 2 : 0;

    private double Branch(double at, double was, PressCurve curve, double load, bool seen)
    {
        double Virgin(double p) => seen ? curve.Seen(p) : curve.Set(p);
        var beyond = load > Joins ? Virgin(load) - Virgin(Math.Max(Joins, Peak)) : 0;
        return 2 * (at - was) + beyond;
    }

    /// <summary>The load of a depth past contact.</summary>
    /// <param name="curve">The beam.</param>
    /// <param name="depth">mm at unit yield.</param>
    /// <param name="give">Give of press and blocks, mm/N.</param>
    public double LoadOf(PressCurve curve, double depth, double give)
    {
        var slope = curve.Beam.Compliance + give;
        // No set can only mean a larger load, so the elastic load is the most it can be.
        var (low, high) = (0.0, depth / slope);
        if (Set(curve, high) <= 0)
            return high;
        double fLow = -depth,
            fHigh = slope * high + Set(curve, high) - depth;
        for (var i = 0; i < 40 && high - low > 1e-6 * high; i++)
        {
            // Straight line between the ends, kept off both, so that it cannot stick to one.
            var share = Math.Clamp(fLow / (fLow - fHigh), 0.05, 0.95);
            var p = low + share * (high - low);
            var f = slope * p + Set(curve, p) - depth;
            if (f > 0)
                (high, fHigh) = (p, f);
            else
                (low, fLow) = (p, f);
        }
        return (low + high) / 2;
    }
}
