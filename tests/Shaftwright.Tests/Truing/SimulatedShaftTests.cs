using Shaftwright.Truing;

namespace Shaftwright.Tests.Truing;

/// <summary>Shafts bent by lot and read with the errors that the defaults describe: dial, division, repeatability, angle by eye.</summary>
public sealed class SimulatedShaftTests
{
    private const double Degree = Math.PI / 180;

    private sealed class Bench(int seed)
    {
        private readonly Random _random = new(seed);

        public double Between(double low, double high) => low + (high - low) * _random.NextDouble();

        public bool Chance(double p) => _random.NextDouble() < p;

        public int Below(int n) => _random.Next(n);

        public double Normal() =>
            Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble()))
            * Math.Cos(Math.Tau * _random.NextDouble());

        /// <summary>One turn of a section, at the places asked, with all errors.</summary>
        public DialTurn Read(IReadOnlyList<double> degrees, Func<double, double> shape) =>
            DialTurns.At([
                .. degrees.Select(d =>
                    (
                        d,
                        Math.Round(
                            0.7
                                + shape(
                                    d * Degree
                                        + Between(-1, 1) * TruingFields.ShaftAngle.UsualPlusMinus
                                )
                                + Between(-0.01, 0.01)
                                + Between(-0.005, 0.005)
                                + 0.004 * Normal(),
                            6
                        )
                    )
                ),
            ]);
    }

    [Fact]
    public void Offset_WithNoiseGapsOvalAndSpatter_IsWithinItsUncertaintyAsOftenAsItSays()
    {
        var bench = new Bench(31);
        var (turns, inside, direction, directions, spattered, named, falsely) = (
            4000,
            0,
            0,
            0,
            0,
            0,
            0
        );
        for (var t = 0; t < turns; t++)
        {
            var n = new[] { 8, 12, 16, 24 }[t % 4];
            var (e, high) = (bench.Between(0.05, 0.8), bench.Between(0, Math.Tau));
            var oval = bench.Chance(0.5) ? bench.Between(0.02, 0.08) : 0;
            var places = Enumerable.Range(0, n).Select(i => 360.0 * i / n).ToList();
            // Places nobody could get at: one in eight of the turn.
            if (bench.Chance(0.3))
                places.RemoveRange(bench.Below(n - n / 8), n / 8);
            var phase = bench.Between(0, 6);
            var turn = bench.Read(
                places,
                a => e * Math.Cos(a - high) + oval * Math.Cos(2 * a - phase)
            );
            var spatter = n >= 12 && bench.Chance(0.3) ? bench.Below(places.Count) : -1;
            if (spatter >= 0)
            {
                var readings = turn.Readings.ToArray();
                readings[spatter] = DialTurns.Reading(
                    places[spatter],
                    Math.Round(readings[spatter].Dial!.Value + bench.Between(0.25, 0.6), 6)
                );
                turn = turn with { Readings = readings };
                spattered++;
            }
            var judged = DialTurns.Judge(turn);
            inside += Math.Abs(judged.Offset!.Value - e) <= 2 * judged.OffsetUncertainty ? 1 : 0;
            named += spatter >= 0 && judged.Blips.Any(b => b.Reading == spatter) ? 1 : 0;
            falsely += judged.Blips.Any(b => b.Reading != spatter) ? 1 : 0;
            if (judged.HighPoint is not { } found)
                continue;
            directions++;
            direction +=
                DialTurns.Between(found, high) * Degree <= 2 * judged.HighPointUncertainty ? 1 : 0;
        }
        Assert.InRange((double)inside / turns, 0.93, 0.99);
        Assert.InRange((double)direction / directions, 0.93, 0.99);
        Assert.True(named > 0.97 * spattered, $"{named} of {spattered} specks named");
        Assert.True(falsely < 0.02 * turns, $"{falsely} of {turns} turns accuse a good reading");
    }

    [Theory]
    [InlineData(BendKind.Kink)]
    [InlineData(BendKind.Sweep)]
    [InlineData(BendKind.SetOff)]
    public void Shape_OfBendsByLot_IsToldRightlyAndWithinItsUncertainty(BendKind kind)
    {
        var bench = new Bench(77 + (int)kind);
        var (shafts, told, wrong, covered, car) = (400, 0, 0, 0, 0);
        for (var t = 0; t < shafts; t++)
        {
            var length = bench.Between(350, 700);
            var weld = length * bench.Between(0.35, 0.65);
            var (a, b) = (length * bench.Between(0.05, 0.12), length * bench.Between(0.88, 0.95));
            var side = bench.Between(0, Math.Tau);
            // Run-outs of about half a millimetre to two.
            var (kink, sweep, setOff) = (
                Across.Of(bench.Between(0.002, 0.006), side),
                Across.Of(8 * bench.Between(0.2, 0.6) / (length * length), side),
                Across.Of(bench.Between(0.3, 0.8), side)
            );
            Across Line(double x, double p, double q) =>
                kind switch
                {
                    BendKind.Kink => BentShaft.Roof(kink, weld, x, p, q),
                    BendKind.Sweep => BentShaft.Curve(sweep, x, p, q),
                    _ => BentShaft.Step(setOff, weld, x, p, q),
                };
            double[] stations = [(a + weld) / 2, weld - 15, weld + 15, (weld + b) / 2];
            var turns = stations.Select(x =>
            {
                var e = Line(x, a, b);
                return bench.Read(
                    [.. Enumerable.Range(0, 12).Select(i => 30.0 * i)],
                    angle => e.Toward0 * Math.Cos(angle) + e.Toward90 * Math.Sin(angle)
                ) with
                {
                    Id = "at-" + x.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    Support = Support.Vees,
                    Station = DialTurns.Mm(Math.Round(x + bench.Between(-1, 1), 2)),
                    FirstSupportAt = DialTurns.Mm(Math.Round(a + bench.Between(-1, 1), 2)),
                    SecondSupportAt = DialTurns.Mm(Math.Round(b + bench.Between(-1, 1), 2)),
                };
            });
            var shape = TruingSolver
                .Solve(
                    new TruingInput { Turns = [.. turns] },
                    new ShaftPlaces
                    {
                        Overall = length,
                        WeldAt = weld,
                        InnerCentre = 12,
                        OuterCentre = length - 12,
                    }
                )
                .Shape!;
            var truth = Enumerable
                .Range(0, 201)
                .Select(i => 2 * Line(length * i / 200, 12, length - 12).Size)
                .Append(2 * Line(weld, 12, length - 12).Size)
                .Append(2 * Line(weld + 1e-6, 12, length - 12).Size)
                .Max();
            var onCar = shape.Lines.Single(l => l.Line == TurningLine.JointCentres);
            car += onCar.Low - 1e-3 <= truth && truth <= onCar.High + 1e-3 ? 1 : 0;
            if (!shape.Told)
                continue;
            told++;
            var right =
                shape.Likeliest.Kind == kind
                // A part too small to matter may be found beside it; that is no wrong answer.
                || shape.Likeliest.Kind is BendKind.KinkAndSweep or BendKind.KinkAndSetOff;
            wrong += right ? 0 : 1;
            var (size, found, u) = kind switch
            {
                BendKind.Kink => (kink, shape.Likeliest.Kink, shape.Likeliest.KinkUncertainty),
                BendKind.Sweep => (sweep, shape.Likeliest.Sweep, shape.Likeliest.SweepUncertainty),
                _ => (setOff, shape.Likeliest.SetOff, shape.Likeliest.SetOffUncertainty),
            };
            var off = found - size;
            covered += Math.Abs(off.Toward0) <= 2 * u ? 1 : 0;
            covered += Math.Abs(off.Toward90) <= 2 * u ? 1 : 0;
        }
        Assert.True(told > 0.9 * shafts, $"{told} of {shafts} told");
        Assert.True(wrong < 0.01 * shafts, $"{wrong} of {told} told wrongly");
        Assert.InRange(covered / (2.0 * told), 0.92, 0.995);
        Assert.True(car > 0.93 * shafts, $"{car} of {shafts} bands hold the truth on the car");
    }
}
