namespace Shaftwright.Truing.Pressing;

/// <summary>A stretch of one section on the blocks of a press.</summary>
/// <param name="From">Where it begins, mm from the inner end.</param>
/// <param name="To">Where it ends, mm.</param>
/// <param name="Section">Its section.</param>
public readonly record struct BendStretch(double From, double To, BendSection Section);

/// <summary>What a load at the ram does.</summary>
/// <param name="Depth">How far the shaft gives under the ram while it is held, mm.</param>
/// <param name="Set">How much of that stays when the ram goes up, mm under the ram as seen from the blocks.</param>
/// <param name="Seen">What the dial sees of what stays, mm, as seen from the supports that it is turned on.</param>
/// <param name="Strain">Largest strain at the surface while it is held.</param>
public readonly record struct PressResponse(double Depth, double Set, double Seen, double Strain);

/// <summary>A shaft on two blocks with a ram between them.</summary>
/// <remarks>
/// <para>The moment follows from the load alone, M(x) = P·m(x) with m that of a unit load, so depth and set follow by virtual work:
/// δ = ∫ κ(M)·m dx, set = ∫ [κ(M) − M/EI]·m dx, and what a dial sees with the moment line n of a unit load at the dial on its own
/// supports. Source: derived; unit-load method of any text on strength of materials. Small deflections, no shear, blocks that
/// neither sink nor bind: friction at the blocks and the give of the press come on top.</para>
/// <para>Integrated by Gauss's four-point rule over short pieces that break at every step, at the ram and at the dial. Agrees with
/// the closed form of a rectangular bar to 2e-6 of the depth at first yield (Published/press-rectangle.json) and with
/// Published/press-stroke.json to 1e-5.</para>
/// </remarks>
public sealed class PressBeam
{
    private const int PiecesPerSpan = 40;

    // Gauss–Legendre, four points. Abramowitz and Stegun, table 25.4.
    private static readonly (double At, double Weight)[] s_gauss =
    [
        (-0.861136311594053, 0.347854845137454),
        (-0.339981043584856, 0.652145154862546),
        (0.339981043584856, 0.652145154862546),
        (0.861136311594053, 0.347854845137454),
    ];

    private readonly BendSection[] _section;
    private readonly double[] _weight;
    private readonly double[] _press;
    private readonly double[] _dial;

    /// <summary>A shaft in the press.</summary>
    /// <param name="stretches">Its sections in order; they must cover everything between the blocks.</param>
    /// <param name="first">First block, mm from the inner end.</param>
    /// <param name="second">Second block, mm, beyond the first.</param>
    /// <param name="ram">Ram, mm, between the blocks.</param>
    /// <param name="dial">Where and on what the bend is read; null reads it under the ram from the blocks.</param>
    /// <exception cref="ArgumentException">The places are not in order, or a place between the blocks has no section.</exception>
    public PressBeam(
        IReadOnlyList<BendStretch> stretches,
        double first,
        double second,
        double ram,
        DialPlace? dial = null
    )
    {
        ArgumentNullException.ThrowIfNull(stretches);
        if (!(first < ram && ram < second))
            throw new ArgumentException("The ram stands between the blocks.", nameof(ram));
        (First, Second, Ram) = (first, second, ram);
        var read = dial ?? new DialPlace(ram, first, second);
        var edges = new SortedSet<double> { first, second, ram };
        foreach (var s in stretches)
            edges.UnionWith([s.From, s.To]);
        edges.UnionWith([read.At, read.First, read.Second]);
        var at = edges.Where(x => x >= first && x <= second).ToArray();

        var (sections, weights, press, seen) = (
            new List<BendSection>(),
            new List<double>(),
            new List<double>(),
            new List<double>()
        );
        for (var i = 0; i + 1 < at.Length; i++)
        {
            var middle = (at[i] + at[i + 1]) / 2;
            var here = -1;
            for (var j = 0; j < stretches.Count; j++)
            {
                if (stretches[j].From <= middle && middle <= stretches[j].To)
                    here = j;
            }
            if (here < 0)
                throw new ArgumentException(
                    $"Nothing is said of the shaft at {middle} mm.",
                    nameof(stretches)
                );
            var pieces = Math.Max(
                1,
                (int)Math.Ceiling(PiecesPerSpan * (at[i + 1] - at[i]) / (second - first))
            );
            var half = (at[i + 1] - at[i]) / pieces / 2;
            for (var p = 0; p < pieces; p++)
            {
                foreach (var (g, w) in s_gauss)
                {
                    var x = at[i] + half * (2 * p + 1 + g);
                    sections.Add(stretches[here].Section);
                    weights.Add(half * w);
                    press.Add(UnitMoment(x, first, second, ram));
                    seen.Add(UnitMoment(x, read.First, read.Second, read.At));
                }
            }
        }
        (_section, _weight, _press, _dial) = ([.. sections], [.. weights], [.. press], [.. seen]);
        (YieldLoad, FullLoad) = (double.PositiveInfinity, double.PositiveInfinity);
        for (var i = 0; i < _section.Length; i++)
        {
            YieldLoad = Math.Min(YieldLoad, _section[i].YieldMoment / _press[i]);
            FullLoad = Math.Min(FullLoad, _section[i].FullMoment / _press[i]);
            Compliance += _weight[i] * _press[i] * _press[i] / _section[i].Stiffness;
            Gain += _weight[i] * _press[i] * _dial[i] / _section[i].Stiffness;
        }
    }

    /// <summary>First block, mm.</summary>
    public double First { get; }

    /// <summary>Second block, mm.</summary>
    public double Second { get; }

    /// <summary>Ram, mm.</summary>
    public double Ram { get; }

    /// <summary>Load at which it first yields, N, as seen at the points of integration: a hair above the true one.</summary>
    public double YieldLoad { get; }

    /// <summary>Load that it cannot bear, N, seen likewise; infinite where the metal hardens.</summary>
    public double FullLoad { get; }

    /// <summary>Depth of one newton while nothing yields, mm/N.</summary>
    public double Compliance { get; }

    /// <summary>What the dial would see of the elastic bend, mm/N.</summary>
    public double Gain { get; }

    /// <summary>What a load does to a shaft that was never pressed here.</summary>
    /// <param name="load">N, 0 or more.</param>
    /// <returns>Infinite numbers from the full load up.</returns>
    public PressResponse At(double load)
    {
        double depth = Compliance * load,
            set = 0,
            seen = 0,
            strain = 0;
        for (var i = 0; i < _section.Length; i++)
        {
            var moment = load * _press[i];
            var section = _section[i];
            if (moment <= section.YieldMoment)
            {
                strain = Math.Max(strain, moment / section.Stiffness * section.Radius);
                continue;
            }
            var kept = section.Kept(moment);
            set += _weight[i] * kept * _press[i];
            seen += _weight[i] * kept * _dial[i];
            strain = Math.Max(strain, (kept + moment / section.Stiffness) * section.Radius);
        }
        return new(depth + set, set, seen, strain);
    }

    /// <summary>The load that leaves a set under the ram, N.</summary>
    /// <param name="set">mm, above 0.</param>
    /// <returns>Found by halving to 1e-12 of the load.</returns>
    public double LoadForSet(double set) => LoadFor(r => r.Set, set);

    /// <summary>The load at which the surface strains so much, N.</summary>
    /// <param name="strain">Above 0.</param>
    public double LoadForStrain(double strain) => LoadFor(r => r.Strain, strain);

    private double LoadFor(Func<PressResponse, double> what, double wanted)
    {
        var (low, high) = (0.0, FullLoad);
        if (double.IsPositiveInfinity(high))
        {
            high = 2 * YieldLoad;
            while (what(At(high)) < wanted)
                high *= 2;
        }
        for (var i = 0; i < 200 && high - low > 1e-13 * high; i++)
        {
            var middle = (low + high) / 2;
            if (what(At(middle)) < wanted)
                low = middle;
            else
                high = middle;
        }
        return low;
    }

    /// <summary>Moment at x of a unit load on a bar that lies on two supports; an overhanging load tips the bar on them. The same
    /// number is what a dial at the load, on those supports, sees of a kink of one radian at x.</summary>
    /// <param name="x">mm.</param>
    /// <param name="first">One support, mm.</param>
    /// <param name="second">The other, mm.</param>
    /// <param name="load">Load or dial, mm.</param>
    /// <returns>mm; 0 where x is outside both the supports and the load.</returns>
    public static double UnitMoment(double x, double first, double second, double load)
    {
        var (a, b) = first <= second ? (first, second) : (second, first);
        if (load < a)
            // The dial overhangs: the shaft tips on its supports.
            return x <= load ? 0
                : x < a ? -(x - load)
                : x < b ? -(a - load) * (b - x) / (b - a)
                : 0;
        if (load > b)
            return x >= load ? 0
                : x > b ? -(load - x)
                : x > a ? -(load - b) * (x - a) / (b - a)
                : 0;
        return x <= a || x >= b ? 0
            : x <= load ? (x - a) * (b - load) / (b - a)
            : (b - x) * (load - a) / (b - a);
    }
}

/// <summary>Where a dial stands and what the shaft is turned on, mm from the inner end.</summary>
/// <param name="At">Dial.</param>
/// <param name="First">First support.</param>
/// <param name="Second">Second support.</param>
public readonly record struct DialPlace(double At, double First, double Second);
