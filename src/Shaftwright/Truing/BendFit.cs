namespace Shaftwright.Truing;

/// <summary>Which bend explains the stations: straight, kink, sweep, set-off, or two of them.</summary>
/// <remarks>
/// <para>Each station's offset is a linear function of kink, curvature and set-off (<see cref="BendShapes"/>); the two
/// directions across the shaft share it, so each bend is a small weighted least squares, done twice.</para>
/// <para>Choice, stated: straight unless χ² of no bend has a chance below 1 %. Then the single bends compete; one is told when it
/// beats each other by 6 in χ² (twenty to one in likelihood). A second part is added when it takes 9.21 more off (1 % point of χ²
/// with its two numbers) and the single bend alone has a chance below 1 %; only with three stations or more. A kink or set-off
/// is told from a sweep only by stations on both sides of the weld. If the best leaves more than the uncertainties say, all
/// differences are divided by that. Source: likelihood ratio; the thresholds are ours.</para>
/// </remarks>
internal sealed class BendFit
{
    /// <summary>χ² by which one bend must beat another to be told.</summary>
    public const double Tells = 6;

    private const double Adds = 9.21;
    private const double Rare = 0.01;

    private readonly IReadOnlyList<ReadStation> _stations;
    private readonly double _weld;
    private readonly double[] _variances;

    private BendFit(IReadOnlyList<ReadStation> stations, double weld)
    {
        _stations = stations;
        _weld = weld;
        _variances = [.. stations.Select(s => s.Uncertainty * s.Uncertainty)];
    }

    /// <summary>Every bend that explains the stations about as well as the best, the best first.</summary>
    /// <param name="stations">Stations read in one state of the shaft.</param>
    /// <param name="weld">Middle of the weld, mm; null when not known.</param>
    /// <param name="variances">Variance of each station in any one direction, mm².</param>
    public static IReadOnlyList<Bend> Of(
        IReadOnlyList<ReadStation> stations,
        double? weld,
        out double[] variances
    )
    {
        var fit = new BendFit(stations, weld ?? double.NaN);
        var bends = fit.Choose();
        // The places' own uncertainty counts by the slope of the line found, so it is known only now.
        if (fit.AddPlaces(bends[0]))
            bends = fit.Choose();
        variances = fit._variances;
        return bends;
    }

    /// <summary>What a kink and a sweep could still be where no bend can be told.</summary>
    public static IReadOnlyList<Bend> Hidden(IReadOnlyList<ReadStation> stations, double? weld) =>
        new BendFit(stations, weld ?? double.NaN).Sorted(
            weld is null ? [BendKind.Sweep] : [BendKind.Kink, BendKind.Sweep]
        );

    private List<Bend> Choose()
    {
        var straight = Fit(BendKind.Straight)!;
        if (Chance(straight.Misfit, straight.Freedom) > Rare)
            return [straight];
        var weld = !double.IsNaN(_weld);
        var both =
            weld && _stations.Any(s => s.Station < _weld) && _stations.Any(s => s.Station > _weld);
        BendKind[] kinds = weld
            ? [BendKind.Kink, BendKind.Sweep, BendKind.SetOff]
            : [BendKind.Sweep];
        var singles = Sorted(kinds);
        if (singles.Count == 0)
            return [straight];
        if (!weld)
            return singles;
        if (!both)
            return [.. singles.Take(Math.Max(2, Within(singles).Count))];
        var best = singles[0];
        if (_stations.Count >= 3 && Chance(best.Misfit, best.Freedom) < Rare)
        {
            var pairs = Sorted([BendKind.KinkAndSweep, BendKind.KinkAndSetOff]);
            if (pairs.Count > 0 && best.Misfit - pairs[0].Misfit > Adds * Over(pairs[0]))
                return Within(pairs);
        }
        return Within(singles);
    }

    private List<Bend> Sorted(BendKind[] kinds) =>
        [.. kinds.Select(Fit).OfType<Bend>().OrderBy(b => b.Misfit)];

    private static List<Bend> Within(List<Bend> bends) =>
        [.. bends.Where(b => b.Misfit - bends[0].Misfit < Tells * Over(bends[0]))];

    /// <summary>By how much a bend leaves more than it should, at least 1.</summary>
    private static double Over(Bend bend) =>
        bend.Freedom > 0 ? Math.Max(1, bend.Misfit / bend.Freedom) : 1;

    /// <summary>Chance that χ² with an even number of degrees of freedom is at least so large; exact.</summary>
    public static double Chance(double chiSquare, int freedom)
    {
        if (freedom <= 0)
            return 1;
        double term = 1,
            sum = 1;
        for (var i = 1; i < freedom / 2; i++)
            sum += term *= chiSquare / 2 / i;
        return Math.Exp(-chiSquare / 2) * sum;
    }

    /// <summary>Least squares of one kind. Null when the stations do not fix it.</summary>
    private Bend? Fit(BendKind kind)
    {
        var parts = kind switch
        {
            BendKind.Straight => 0,
            BendKind.Kink or BendKind.Sweep or BendKind.SetOff => 1,
            _ => 2,
        };
        double ff = 0,
            fg = 0,
            gg = 0;
        Across fz = default,
            gz = default;
        for (var i = 0; i < _stations.Count; i++)
        {
            var (f, g) = At(kind, i);
            var w = 1 / _variances[i];
            ff += w * f * f;
            fg += w * f * g;
            gg += w * g * g;
            fz += w * f * _stations[i].Offset;
            gz += w * g * _stations[i].Offset;
        }
        Across first = default,
            second = default;
        (double First, double Second, double Both) covariance = default;
        if (parts == 1)
        {
            if (ff < 1e-9)
                return null;
            first = 1 / ff * fz;
            covariance = (1 / ff, 0, 0);
        }
        else if (parts == 2)
        {
            var det = ff * gg - fg * fg;
            if (det <= 1e-6 * ff * gg)
                return null;
            first = 1 / det * (gg * fz - fg * gz);
            second = 1 / det * (ff * gz - fg * fz);
            covariance = (gg / det, ff / det, -fg / det);
        }
        var misfit = 0.0;
        for (var i = 0; i < _stations.Count; i++)
        {
            var (f, g) = At(kind, i);
            var left = _stations[i].Offset - (f * first + g * second);
            misfit += left.Size * left.Size / _variances[i];
        }
        var freedom = 2 * (_stations.Count - parts);
        var widen = freedom > 0 && parts > 0 ? Math.Max(1, misfit / freedom) : 1;
        covariance = (covariance.First * widen, covariance.Second * widen, covariance.Both * widen);
        var (u, v) = (Math.Sqrt(covariance.First), Math.Sqrt(covariance.Second));
        var kinked = kind is BendKind.Kink or BendKind.KinkAndSweep or BendKind.KinkAndSetOff;
        return new(
            kind,
            kinked ? first : default,
            kind == BendKind.Sweep ? first
                : kind == BendKind.KinkAndSweep ? second
                : default,
            kind == BendKind.SetOff ? first
                : kind == BendKind.KinkAndSetOff ? second
                : default,
            kinked ? u : 0,
            kind == BendKind.Sweep ? u
                : kind == BendKind.KinkAndSweep ? v
                : 0,
            kind == BendKind.SetOff ? u
                : kind == BendKind.KinkAndSetOff ? v
                : 0,
            misfit,
            freedom
        )
        {
            WeldAt = _weld,
            Covariance = covariance,
        };
    }

    private (double First, double Second) At(BendKind kind, int i) =>
        BendShapes.Of(kind, _stations[i].Station, _stations[i].First, _stations[i].Second, _weld);

    /// <summary>Adds what a misplaced dial and misplaced supports make of this bend. False when it is nothing.</summary>
    private bool AddPlaces(Bend bend)
    {
        var added = false;
        for (var i = 0; i < _variances.Length; i++)
        {
            var (x, a, b, u) = (
                _stations[i].Station,
                _stations[i].First,
                _stations[i].Second,
                _stations[i].PlaceUncertainty
            );
            if (u <= 0)
                continue;
            Across Moved(double dx, double da, double db) =>
                1
                / (2 * u)
                * (bend.OffsetAt(x + dx, a + da, b + db) - bend.OffsetAt(x - dx, a - da, b - db));
            double Square(Across slope) => slope.Size * slope.Size;
            // Half of it falls into each of the two directions.
            var variance =
                u
                * u
                * (Square(Moved(u, 0, 0)) + Square(Moved(0, u, 0)) + Square(Moved(0, 0, u)))
                / 2;
            if (
                bend.Kind is BendKind.SetOff or BendKind.KinkAndSetOff
                && Math.Abs(x - _weld) < 3 * u
            )
                continue;
            _variances[i] = _stations[i].Uncertainty * _stations[i].Uncertainty + variance;
            added |= variance > 0;
        }
        return added;
    }
}
