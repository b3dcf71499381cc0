using Shaftwright.Corner;
using Shaftwright.Geometry;
using Shaftwright.Joints;

namespace Shaftwright.Length;

/// <summary>Draws cars within the doubt of everything measured and judges one length on each by the full solve. It has no threads: it
/// runs slices of cars, and what they came to adds up to the same bits however they were cut.</summary>
/// <remarks>Every value is drawn evenly over its ±, which is what ± means here (GUM 4.3.7); a field without a typed ± has that of its
/// usual tool. The curve's own error between readings is drawn once a car for each set and side. Source: JCGM 101:2008, 7
/// (propagation of distributions by Monte Carlo).</remarks>
public sealed class LengthCars
{
    /// <summary>Most cars of one run.</summary>
    public const long MostCars = 10_000_000;

    /// <summary>Measures tried at twice as good.</summary>
    private const int Tried = 3;

    /// <summary>Places of the numbers that are not in the row of values.</summary>
    private const int MakingPlace = int.MaxValue,
        CurvePlace = int.MaxValue / 2;

    private readonly LengthNumbers _numbers;
    private readonly UncertainValue[] _uncertain;
    private readonly int[] _better;
    private readonly Func<double, double>[] _curveErrors;
    private readonly double _margin;
    private readonly double _outerLimit;
    private readonly double _outerLimitHalf;
    private readonly double _making;
    private readonly double _length;
    private readonly ulong _seed;
    private readonly CornerInput _corner;
    private readonly FirstOrder _firstOrder;

    private LengthCars(
        CornerInput corner,
        JointsInput? joints,
        LengthNumbers numbers,
        LengthInput length,
        LengthResult result,
        ulong seed
    )
    {
        (_corner, _numbers, _seed) = (corner, numbers, seed);
        _margin = length.Margin?.Value ?? LengthFields.UsualMargin;
        _length = result.PositionsFor!.Value;
        // Made to the tolerance that is stated, where nobody said what can be held.
        _making = length.Making?.Value ?? result.Tolerance;
        var limit = joints?.Outer?.AngleLimit;
        _outerLimit = limit?.Value ?? double.NaN;
        _outerLimitHalf = limit is null
            ? 0
            : JointFields.AngleLimit.StandardUncertainty(limit) * Math.Sqrt(3);
        _uncertain = [.. numbers.Uncertain];
        _curveErrors =
        [
            .. numbers.Sets.Select(s => InterpolationError.SquareError(s, numbers.Values)),
        ];
        _firstOrder = FirstOrder.Of(numbers, result, _margin, _making / Math.Sqrt(3), _length);
        _better =
        [
            .. Enumerable
                .Range(0, _uncertain.Length)
                .OrderByDescending(i => _firstOrder.ShareOfTightest(_uncertain[i]))
                .Take(Tried)
                .Where(i => _firstOrder.ShareOfTightest(_uncertain[i]) > 0),
        ];
    }

    /// <summary>A run on a job's length; null when the length stage has no positions to judge.</summary>
    internal static LengthCars? Of(
        CornerInput corner,
        JointsInput? joints,
        LengthInput length,
        LengthResult result,
        ulong seed
    ) =>
        result.PositionsFor is null
            ? null
            : new(corner, joints, new LengthNumbers(corner, joints), length, result, seed);

    /// <summary>A slice without cars, to add others to.</summary>
    public CarsTally Blank() => new(_uncertain.Length, _better.Length);

    /// <summary>Judges the cars from one number to before another.</summary>
    /// <param name="from">First car, 0 or more.</param>
    /// <param name="to">One past the last, at most <see cref="MostCars"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 ≤ from ≤ to ≤ <see cref="MostCars"/>.</exception>
    public CarsTally Run(long from, long to)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(from);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(from, to);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(to, MostCars);
        var tally = Blank();
        var values = (double[])_numbers.Values.Clone();
        var drawn = new double[_uncertain.Length];
        for (var car = from; car < to; car++)
            Judge(car, values, drawn, tally);
        return tally;
    }

    private void Judge(long car, double[] values, double[] drawn, CarsTally tally)
    {
        for (var i = 0; i < drawn.Length; i++)
        {
            drawn[i] = Philox.Even(_seed, car, _uncertain[i].Place);
            values[_uncertain[i].Place] = Moved(i, drawn[i]);
        }
        var made = _length + _making * Philox.Even(_seed, car, MakingPlace);
        var envelopes = Envelopes(car, values);
        var window = Window(envelopes, values, _margin);
        var outer = PassesOuter(car, envelopes, values, made);
        var plunge = !(made <= window.Longest && made >= window.ShortestByPlunge);
        var angle = !(made >= window.ShortestByAngle);
        var count = tally.Count;
        count[CarsTally.Cars]++;
        count[CarsTally.Violated] += plunge || angle || outer ? 1 : 0;
        count[CarsTally.Plunge] += plunge ? 1 : 0;
        count[CarsTally.InnerAngle] += angle ? 1 : 0;
        count[CarsTally.OuterAngle] += outer ? 1 : 0;
        count[CarsTally.NoWindow] += window.Shortest <= window.Longest ? 0 : 1;
        var stops = _margin > 0 ? Window(envelopes, values, 0) : window;
        count[CarsTally.Contact] += made <= stops.Longest && made >= stops.ShortestByPlunge ? 0 : 1;
        Length(envelopes, values, stops, drawn, tally);
        Better(car, made, values, drawn, tally);
    }

    /// <summary>The balanced length of this car, and what each value did to it.</summary>
    private void Length(
        List<SetEnvelope> envelopes,
        double[] values,
        in CarWindow stops,
        double[] drawn,
        CarsTally tally
    )
    {
        var low = Math.Min(stops.Longest, stops.ShortestByPlunge);
        var high = Math.Max(stops.Longest, stops.ShortestByPlunge);
        if (!(low > 0) || !double.IsFinite(high))
            return;
        var off = Balance.Length(envelopes, values, low, high, 1e-6) - _length;
        if (!double.IsFinite(off))
            return;
        var micro = (long)Math.Round(Math.Clamp(off, -1000, 1000) * CarsTally.Micro);
        tally.Count[CarsTally.Solved]++;
        tally.Sum += micro;
        tally.SumOfSquares += (Int128)micro * micro;
        for (var i = 0; i < drawn.Length; i++)
        {
            var x = (long)Math.Round(drawn[i] * CarsTally.Share);
            tally.Cross[i] += (Int128)x * micro;
            tally.Drawn[i] += x;
            tally.DrawnSquared[i] += (Int128)x * x;
        }
        var bin = (int)Math.Floor(off / CarsTally.BinWidth) + CarsTally.HalfBins;
        tally.Bins[Math.Clamp(bin, 0, tally.Bins.Length - 1)]++;
    }

    /// <summary>The same car with one measure off by half as much.</summary>
    private void Better(long car, double made, double[] values, double[] drawn, CarsTally tally)
    {
        for (var k = 0; k < _better.Length; k++)
        {
            var i = _better[k];
            values[_uncertain[i].Place] = Moved(i, drawn[i] / 2);
            var envelopes = Envelopes(car, values);
            var window = Window(envelopes, values, _margin);
            var stays =
                made <= window.Longest
                && made >= window.Shortest
                && !PassesOuter(car, envelopes, values, made);
            tally.Better[k] += stays ? 0 : 1;
            values[_uncertain[i].Place] = Moved(i, drawn[i]);
        }
    }

    private double Moved(int i, double drawn) =>
        _numbers.Values[_uncertain[i].Place]
        + Math.Sqrt(3) * _uncertain[i].StandardUncertainty * drawn;

    private List<SetEnvelope> Envelopes(long car, double[] values)
    {
        var envelopes = new List<SetEnvelope>(_numbers.Sets.Count);
        for (var i = 0; i < _numbers.Sets.Count; i++)
        {
            // The curve's own error, as a length, may lie either way at each side of a set.
            var slip = new CurveSlip(
                _curveErrors[i],
                Philox.Even(_seed, car, CurvePlace + 2 * i) / (2 * _length),
                Philox.Even(_seed, car, CurvePlace + 2 * i + 1) / (2 * _length)
            );
            envelopes.Add(new SetEnvelope(_numbers.Sets[i], _numbers, values, slip));
        }
        return envelopes;
    }

    private readonly record struct CarWindow(
        double Longest,
        double ShortestByPlunge,
        double ShortestByAngle
    )
    {
        public double Shortest => Math.Max(ShortestByPlunge, ShortestByAngle);
    }

    private static CarWindow Window(List<SetEnvelope> envelopes, double[] values, double margin)
    {
        var window = new CarWindow(double.PositiveInfinity, 0, 0);
        foreach (var e in envelopes)
        {
            var longest = Sweep
                .Smallest(e, values, t => e.Longest(t, margin), window.Longest)
                .Value;
            var shortest = -Sweep
                .Smallest(e, values, t => -e.ShortestByPlunge(t, margin), -window.ShortestByPlunge)
                .Value;
            var angle = e.HasAngle
                ? -Sweep
                    .Smallest(e, values, t => -e.ShortestByAngle(t), -window.ShortestByAngle)
                    .Value
                : window.ShortestByAngle;
            window = new(longest, shortest, angle);
        }
        return window;
    }

    /// <summary>Outer angle over its limit on this car. Where the shaft floats, the window by angle holds it already.</summary>
    private bool PassesOuter(long car, List<SetEnvelope> envelopes, double[] values, double made)
    {
        if (double.IsNaN(_outerLimit) || _numbers.Floats)
            return false;
        var limit = _outerLimit + _outerLimitHalf * Philox.Even(_seed, car, MakingPlace - 1);
        foreach (var e in envelopes)
        {
            if (
                e.HasOuterAngle
                && -Sweep.Smallest(e, values, t => -e.OuterAngle(t, made)!.Value).Value > limit
            )
                return true;
        }
        return false;
    }

    /// <summary>What a whole run came to.</summary>
    /// <param name="tally">All its slices, added up.</param>
    /// <exception cref="ArgumentException">It holds no car, or is of another run.</exception>
    public LengthSpread Answer(CarsTally tally)
    {
        ArgumentNullException.ThrowIfNull(tally);
        if (tally.Size == 0 || tally.Cross.Length != _uncertain.Length)
            throw new ArgumentException(
                "That is not what a run of these cars came to.",
                nameof(tally)
            );
        var n = tally.Size;
        double solved = tally.Count[CarsTally.Solved];
        var mean = (double)tally.Sum / solved / CarsTally.Micro;
        // In whole numbers to the end, so that no digit is lost to the difference of two large sums.
        var spread =
            (double)(tally.SumOfSquares * tally.Count[CarsTally.Solved] - tally.Sum * tally.Sum)
            / (solved * solved)
            / (CarsTally.Micro * CarsTally.Micro);
        var sd = Math.Sqrt(Math.Max(0, spread));
        Counted Chance(int place) => Of(tally.Count[place], n);
        var violation = Chance(CarsTally.Violated);
        return new LengthSpread
        {
            Cars = n,
            Seed = _seed,
            Length = _length,
            Making = _making,
            Mean = _length + mean,
            StandardDeviation = sd,
            Low = Quantile(tally, 0.025),
            High = Quantile(tally, 0.975),
            ChanceOfViolation = violation,
            ChanceOfPlunge = Chance(CarsTally.Plunge),
            ChanceOfInnerAngle = Chance(CarsTally.InnerAngle),
            ChanceOfOuterAngle = Chance(CarsTally.OuterAngle),
            ChanceOfContact = Chance(CarsTally.Contact),
            ChanceOfNoWindow = Chance(CarsTally.NoWindow),
            FirstOrderUncertainty = _firstOrder.Uncertainty,
            FirstOrderChance = _firstOrder.Chance,
            Disagreement = _firstOrder.Against(sd, violation, n),
            Shares =
            [
                .. Enumerable
                    .Range(0, _uncertain.Length)
                    .Select(i => Share(i, tally))
                    .OrderByDescending(s => s.ShareOfVariance),
            ],
        };
    }

    /// <summary>Square of the correlation over the cars: of the sample's own spread, which leaves least to chance.</summary>
    private MeasureShare Share(int i, CarsTally tally)
    {
        Int128 n = tally.Count[CarsTally.Solved];
        var together = (double)(n * tally.Cross[i] - tally.Drawn[i] * tally.Sum);
        var own = (double)(n * tally.DrawnSquared[i] - tally.Drawn[i] * tally.Drawn[i]);
        var all = (double)(n * tally.SumOfSquares - tally.Sum * tally.Sum);
        var share = own > 0 && all > 0 ? together / own * (together / all) : 0;
        var value = _uncertain[i];
        var tried = Array.IndexOf(_better, i);
        return new(
            value.Reading,
            value.Field,
            ReadingToRepeat.Words(_corner, value),
            share,
            _firstOrder.ShareOfBalance(value),
            tried < 0 ? null : tally.Better[tried] / (double)tally.Size
        );
    }

    private static Counted Of(long count, long n)
    {
        var p = count / (double)n;
        return new(p, Math.Max(1.0 / n, Math.Sqrt(p * (1 - p) / n)));
    }

    private double Quantile(CarsTally tally, double part)
    {
        var wanted = part * tally.Count[CarsTally.Solved];
        var before = 0.0;
        for (var i = 0; i < tally.Bins.Length; i++)
        {
            if (tally.Bins[i] > 0 && before + tally.Bins[i] >= wanted)
                return _length
                    + (i - CarsTally.HalfBins + (wanted - before) / tally.Bins[i])
                        * CarsTally.BinWidth;
            before += tally.Bins[i];
        }
        return double.NaN;
    }
}
