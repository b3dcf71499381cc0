namespace Shaftwright.Corner;

/// <summary>Two readings at one height that differ by more than both may be off.</summary>
/// <param name="Set">Their set.</param>
/// <param name="One">Index of the one reading, the lower or the earlier.</param>
/// <param name="Other">Index of the other.</param>
/// <param name="Off">By how much they differ, mm; of an angle, rad.</param>
/// <param name="OfAngle">True when it is an angle that they differ in.</param>
internal sealed record Contradiction(ReadingSet Set, int One, int Other, double Off, bool OfAngle);

/// <summary>Whether the readings of one set agree with each other as well as they are said to be sure.</summary>
/// <remarks>Readings against their curve: √(χ²/ν), at least 1, is how many times as large each reading's ± counts. Source: R. T.
/// Birge, Physical Review 40 (1932) 207, from memory. Two readings at one height are compared with each other alone, by their ±.</remarks>
internal sealed class Misfit
{
    /// <summary>No curve and no tape is better than this, mm: it keeps readings typed as exact from weighing without end. Common
    /// practice, no source.</summary>
    private const double LeastUncertainty = 0.05;

    /// <summary>The same of a squared sine.</summary>
    private const double LeastOfAngle = 1e-4;

    private readonly ReadingSet _set;
    private readonly CornerNumbers _numbers;

    private Misfit(ReadingSet set, CornerNumbers numbers) => (_set, _numbers) = (set, numbers);

    /// <summary>How many times as large as stated the ± of this set's lengths and heights count, 1 or more.</summary>
    public double Ratio { get; private set; } = 1;

    /// <summary>The same of its inner angles.</summary>
    public double AngleRatio { get; private set; } = 1;

    /// <summary>Readings at one height that contradict each other, the worst first.</summary>
    public IReadOnlyList<Contradiction> Contradictions { get; private set; } = [];

    /// <summary>One thing read at every place of a set, beside its curve.</summary>
    /// <param name="Read">What a reading says.</param>
    /// <param name="Fit">What the curve says at a travel.</param>
    /// <param name="Uncertainty">Standard uncertainty of a reading, its height apart.</param>
    /// <param name="Curve">What the curve itself may be off at a travel, half-width.</param>
    private sealed record Quantity(
        Func<int, double> Read,
        Func<double, double> Fit,
        Func<int, double> Uncertainty,
        Func<double, double> Curve
    )
    {
        public double Slope(double travel) => (Fit(travel + 1) - Fit(travel - 1)) / 2;
    }

    /// <summary>Weighs a set of readings; a linkage's path, which no reading is on, agrees with itself.</summary>
    public static Misfit Of(CornerInput corner, CornerNumbers numbers, ReadingSet set)
    {
        var misfit = new Misfit(set, numbers);
        if (set.Place is null && set.Readings.Length > 1)
            misfit.Weigh(new SetCurves(set, numbers.Values, corner.ReadAlong), corner.ReadAlong);
        return misfit;
    }

    /// <summary>The uncertain values with those of a badly fitting set counting as many times as large.</summary>
    /// <param name="uncertain">As stated.</param>
    /// <param name="misfits">Of every set.</param>
    public static IReadOnlyList<UncertainValue> Widened(
        IReadOnlyList<UncertainValue> uncertain,
        IReadOnlyList<Misfit> misfits
    )
    {
        if (misfits.All(m => m is { Ratio: 1, AngleRatio: 1 }))
            return uncertain;
        var widened = new List<UncertainValue>();
        foreach (var value in uncertain)
        {
            var times = misfits.Select(m => m.Times(value)).DefaultIfEmpty(1).Max();
            widened.Add(value with { StandardUncertainty = value.StandardUncertainty * times });
        }
        // What was typed as exact and does not fit is not exact.
        foreach (var m in misfits.Where(m => m.Ratio > 1))
        {
            foreach (var i in m._set.Readings)
            {
                foreach (var (field, name, words) in m.Lengths())
                {
                    var place = CornerNumbers.At(i, field);
                    if (!widened.Exists(v => v.Place == place))
                        widened.Add(new(place, i, name, words, m.Ratio * LeastUncertainty));
                }
            }
        }
        return widened;
    }

    private (int Field, string Name, string Words)[] Lengths() =>
        _set.Form == ReadingForm.DistanceAndAngle
            ? [(CornerNumbers.Distance, CornerFields.Distance.Name, CornerFields.Distance.Words)]
            :
            [
                (CornerNumbers.In, CornerFields.In.Name, CornerFields.In.Words),
                (CornerNumbers.Out, CornerFields.Out.Name, CornerFields.Out.Words),
            ];

    private double Times(UncertainValue value)
    {
        if (value.Reading is not { } i || Array.IndexOf(_set.Readings, i) < 0)
            return 1;
        var field = value.Place - CornerNumbers.At(i, 0);
        var isAngle = field is CornerNumbers.InnerAngle or CornerNumbers.OuterAngle;
        if (_set.Form == ReadingForm.DistanceAndAngle)
            return field is CornerNumbers.In or CornerNumbers.Out ? 1
                : isAngle ? Math.Max(Ratio, AngleRatio)
                : Ratio;
        return field == CornerNumbers.Distance ? 1
            : isAngle ? AngleRatio
            : Ratio;
    }

    private void Weigh(SetCurves curves, SlideLine along)
    {
        var lengths = LengthsOf(curves, along);
        Ratio = BirgeRatio(lengths, LeastUncertainty);
        var found = Contradicting(lengths, false);
        if (_set.Has(_numbers.Values, CornerNumbers.InnerAngle))
        {
            var inner = SineSquared(CornerNumbers.InnerAngle, SineOfInner(curves));
            AngleRatio = BirgeRatio([inner], LeastOfAngle);
            found.AddRange(Contradicting([AsAngle(CornerNumbers.InnerAngle, inner)], true));
        }
        if (_set.Has(_numbers.Values, CornerNumbers.OuterAngle))
        {
            var outer = SineSquared(
                CornerNumbers.OuterAngle,
                t => Square(Math.Sin(curves.OuterAngle(t)))
            );
            found.AddRange(Contradicting([AsAngle(CornerNumbers.OuterAngle, outer)], true));
        }
        Contradictions =
        [
            .. found
                .OrderBy(c => c.OfAngle)
                .ThenByDescending(c => c.Off)
                .DistinctBy(c => (c.One, c.Other)),
        ];
    }

    private double BirgeRatio(IReadOnlyList<Quantity> quantities, double least)
    {
        var freedom = (_set.Readings.Length - (_set.Degree + 1)) * quantities.Count;
        if (freedom <= 0)
            return 1;
        var square = 0.0;
        foreach (var q in quantities)
        {
            foreach (var i in _set.Readings)
            {
                var t = Value(i, CornerNumbers.Travel);
                var variance =
                    Square(q.Uncertainty(i))
                    + Square(q.Slope(t) * U(i, CornerNumbers.Travel))
                    + Square(q.Curve(t)) / 3
                    + Square(least);
                square += Square(q.Read(i) - q.Fit(t)) / variance;
            }
        }
        return Math.Max(1, Math.Sqrt(square / freedom));
    }

    /// <summary>Pairs at one height, each allowed its whole ± in the unlucky way, height and all.</summary>
    private List<Contradiction> Contradicting(IReadOnlyList<Quantity> quantities, bool ofAngle)
    {
        var found = new List<Contradiction>();
        var readings = _set.Readings;
        for (var a = 0; a < readings.Length; a++)
        {
            for (var b = a + 1; b < readings.Length; b++)
            {
                var (i, j) = (readings[a], readings[b]);
                var (ti, tj) = (Value(i, CornerNumbers.Travel), Value(j, CornerNumbers.Travel));
                if (tj - ti >= ReadingSet.Together)
                    break;
                foreach (var q in quantities)
                {
                    var middle = (ti + tj) / 2;
                    var off = Math.Abs(q.Read(i) - q.Read(j) - q.Slope(middle) * (ti - tj));
                    var allowed =
                        Math.Sqrt(3)
                        * (
                            q.Uncertainty(i)
                            + q.Uncertainty(j)
                            + Math.Abs(q.Slope(middle))
                                * (U(i, CornerNumbers.Travel) + U(j, CornerNumbers.Travel))
                        );
                    // 1e-9: a difference of just the ± is allowed, whatever its last bit.
                    if (off > allowed + 1e-9)
                        found.Add(new(_set, i, j, off, ofAngle));
                }
            }
        }
        return found;
    }

    private IReadOnlyList<Quantity> LengthsOf(SetCurves curves, SlideLine along)
    {
        double Error(double t, double length) =>
            InterpolationError.HalfWidth(_set, _numbers.Values, t, length);
        if (_set.Form == ReadingForm.DistanceAndAngle)
        {
            double D(int i) => Value(i, CornerNumbers.Distance);
            double Phi(int i) => Value(i, CornerNumbers.InnerAngle);
            return
            [
                new(
                    D,
                    curves.Distance,
                    i => U(i, CornerNumbers.Distance),
                    t => Error(t, curves.Distance(t))
                ),
                new(
                    i => D(i) * Math.Cos(Phi(i)),
                    curves.Axial,
                    i =>
                        double.Hypot(
                            U(i, CornerNumbers.Distance),
                            D(i) * Math.Sin(Phi(i)) * U(i, CornerNumbers.InnerAngle)
                        ),
                    t => Error(t, curves.Distance(t))
                ),
            ];
        }
        var trial = _numbers.Values[CornerNumbers.TrialLength];
        double Angle(int i) => along == SlideLine.Shaft ? 0 : Value(i, CornerNumbers.InnerAngle);
        Quantity Side(int field, double sign, Func<double, double> fit) =>
            new(
                i =>
                    double.Hypot(
                        trial * Math.Cos(Angle(i)) + sign * Value(i, field),
                        trial * Math.Sin(Angle(i))
                    ),
                fit,
                i =>
                    double.Hypot(
                        U(i, field),
                        Value(i, field) * Math.Sin(Angle(i)) * U(i, CornerNumbers.InnerAngle)
                    ),
                t => Error(t, fit(t))
            );
        return
        [
            Side(CornerNumbers.In, 1, curves.InStop),
            Side(CornerNumbers.Out, -1, curves.OutStop),
        ];
    }

    /// <summary>The inner angle's squared sine along the curves; of a trial shaft without its plunge, which is second order.</summary>
    private Func<double, double> SineOfInner(SetCurves curves)
    {
        var trial = _numbers.Values[CornerNumbers.TrialLength];
        return _set.Form == ReadingForm.DistanceAndAngle
            ? t => curves.AcrossSquared(t) / Square(curves.Distance(t))
            : t => curves.AcrossSquared(t) / Square(trial);
    }

    private Quantity SineSquared(int field, Func<double, double> fit) =>
        new(
            i => Square(Math.Sin(Value(i, field))),
            fit,
            i =>
                // The square bends: near 0 its own second order is all of it.
                double.Hypot(
                    Math.Sin(2 * Value(i, field)) * U(i, field),
                    Math.Sqrt(2) * Square(U(i, field))
                ),
            t => 2 * InterpolationError.HalfWidth(_set, _numbers.Values, t, Scale()) / Scale()
        );

    /// <summary>The angle itself, which two readings at one height are compared by.</summary>
    private Quantity AsAngle(int field, Quantity sine) =>
        new(
            i => Value(i, field),
            t => Math.Asin(Math.Sqrt(Math.Clamp(sine.Fit(t), 0, 1))),
            i => U(i, field),
            _ => 0
        );

    private double Scale() =>
        _set.Form == ReadingForm.DistanceAndAngle
            ? _set.Column(_numbers.Values, CornerNumbers.Distance).Average()
            : _numbers.Values[CornerNumbers.TrialLength];

    private double Value(int i, int field) => _numbers.Values[CornerNumbers.At(i, field)];

    private double U(int i, int field)
    {
        var place = CornerNumbers.At(i, field);
        return _numbers.Uncertain.FirstOrDefault(v => v.Place == place)?.StandardUncertainty ?? 0;
    }

    private static double Square(double x) => x * x;
}
