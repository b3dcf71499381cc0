using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearRegression;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;
using Shaftwright.Truing;

namespace Shaftwright.Tests.Truing;

public sealed class TurnFitTests
{
    // Five to fourteen places that go round, none evenly, some a turn on or back.
    private static readonly Gen<double[]> s_angles =
        from n in Gen.Int[5, 14]
        from jitter in Gen.Double[-0.3, 0.3].Array[n]
        from turns in Gen.Int[-1, 1].Array[n]
        select jitter.Select((j, i) => 360 * ((i + j) / n + turns[i])).ToArray();

    [Fact]
    public void Judge_TwelvePublishedReadings_GivesOffsetHighPointAndRest()
    {
        var c = PublishedFile.Load("run-out")["F1"];
        double[] dial = [.. c.Raw("dial").EnumerateArray().Select(d => d.GetDouble())];
        var turn = DialTurns.Judge(DialTurns.Even(dial));
        c.Agrees("runOut", turn.RunOut!.Value);
        c.Agrees("offset", turn.Offset!.Value);
        c.Agrees("highPoint", turn.HighPoint!.Value * 180 / Math.PI);
        c.Agrees("residual", turn.Residual);
    }

    [Fact]
    public void Judge_AtAnyAngles_AgreesWithAnIndependentLeastSquares()
    {
        Gen.Select(s_angles, Gen.Double[-2, 2].Array[14])
            .Sample(
                (angles, dial) =>
                {
                    var turn = DialTurns.Judge(
                        DialTurns.At([.. angles.Select((a, i) => (Typed(a), Typed(dial[i])))])
                    );
                    // The same columns and the weights it found, by another library's orthogonal decomposition.
                    double[] root = [.. turn.Weights.Select(Math.Sqrt)];
                    var design = Matrix<double>.Build.DenseOfRows(
                        angles
                            .Select(a => Typed(a) * Math.PI / 180)
                            .Select(
                                (a, i) =>
                                    (double[])
                                        [
                                            root[i],
                                            .. Enumerable
                                                .Range(1, turn.Harmonics.Count)
                                                .SelectMany(k =>
                                                    new[]
                                                    {
                                                        root[i] * Math.Cos(k * a),
                                                        root[i] * Math.Sin(k * a),
                                                    }
                                                ),
                                        ]
                            )
                    );
                    var y = Vector<double>.Build.DenseOfEnumerable(
                        dial.Take(angles.Length).Select((d, i) => root[i] * Typed(d))
                    );
                    var x = MultipleRegression.QR(design, y);
                    Assert.Equal(x[0], turn.Middle, 1e-8);
                    foreach (var h in turn.Harmonics)
                        Assert.Equal(
                            Math.Sqrt(
                                x[2 * h.Order - 1] * x[2 * h.Order - 1]
                                    + x[2 * h.Order] * x[2 * h.Order]
                            ),
                            h.Amplitude,
                            1e-8
                        );
                    Assert.Equal(turn.Harmonics[0].Amplitude, turn.Offset!.Value, 1e-12);
                    if (turn.HighPoint is { } high)
                        Assert.True(DialTurns.Between(high, Math.Atan2(x[2], x[1])) < 1e-6);
                },
                iter: 500,
                seed: "0000KnLpQw13"
            );
    }

    [Fact]
    public void Judge_ASectionOffItsAxis_RecoversOffsetAndDirectionExactly()
    {
        Gen.Select(s_angles, Gen.Double[0.1, 2], Gen.Double[0, 360])
            .Sample(
                (angles, offset, high) =>
                {
                    var turn = DialTurns.Judge(
                        DialTurns.At([
                            .. angles
                                .Select(Typed)
                                .Select(a =>
                                    (a, 0.3 + offset * Math.Cos((a - high) * Math.PI / 180))
                                ),
                        ])
                    );
                    Assert.Equal(offset, turn.Offset!.Value, 1e-9);
                    Assert.Equal(0, turn.Residual, 1e-9);
                    if (turn.HighPoint is { } found)
                        Assert.True(DialTurns.Between(found, high * Math.PI / 180) < 1e-6);
                },
                iter: 500,
                seed: "0000KnLpQw13"
            );
    }

    [Fact]
    public void Judge_WithTheMarkPaintedElsewhere_ShiftsOnlyTheHighPoint()
    {
        Gen.Select(s_angles, Gen.Double[-1, 1].Array[14], Gen.Int[-360, 360])
            .Sample(
                (angles, dial, shift) =>
                {
                    var here = angles.Select((a, i) => (Angle: Typed(a), Dial: Typed(dial[i])));
                    var one = DialTurns.Judge(DialTurns.At([.. here]));
                    var other = DialTurns.Judge(
                        DialTurns.At([.. here.Select(r => (r.Angle + shift, r.Dial))])
                    );
                    Assert.Equal(one.RunOut, other.RunOut);
                    Assert.Equal(one.Verdict, other.Verdict);
                    Assert.Equal(one.Offset!.Value, other.Offset!.Value, 1e-9);
                    Assert.Equal(one.OffsetUncertainty, other.OffsetUncertainty, 1e-9);
                    if (one.HighPoint is { } a && other.HighPoint is { } b)
                        Assert.True(DialTurns.Between(a + shift * Math.PI / 180, b) < 1e-6);
                },
                iter: 300,
                seed: "0000KnLpQw13"
            );
    }

    [Fact]
    public void Judge_WithTheDialZeroedElsewhere_ChangesNothing()
    {
        Gen.Select(s_angles, Gen.Double[-1, 1].Array[14], Gen.Int[-400, 400])
            .Sample(
                (angles, dial, hundredths) =>
                {
                    var here = angles.Select((a, i) => (Angle: Typed(a), Dial: Typed(dial[i])));
                    var one = DialTurns.Judge(DialTurns.At([.. here]));
                    var other = DialTurns.Judge(
                        DialTurns.At([.. here.Select(r => (r.Angle, r.Dial + hundredths / 100.0))])
                    );
                    Assert.Equal(one.RunOut!.Value, other.RunOut!.Value, 1e-9);
                    Assert.Equal(one.Offset!.Value, other.Offset!.Value, 1e-9);
                    Assert.Equal(one.OffsetUncertainty, other.OffsetUncertainty, 1e-9);
                    Assert.Equal(one.Residual, other.Residual, 1e-9);
                },
                iter: 300,
                seed: "0000KnLpQw13"
            );
    }

    [Fact]
    public void Judge_TheSameReadingsAWholeTurnOn_GivesTheSame()
    {
        var one = DialTurns.Judge(DialTurns.Eccentric(0.3, 77));
        var turn = DialTurns.Eccentric(0.3, 77);
        var other = DialTurns.Judge(
            turn with
            {
                Readings =
                [
                    .. turn.Readings.Select(
                        (r, i) =>
                            r with
                            {
                                Angle = Measured<Angle>.Of(
                                    45 * i + (i % 2 == 0 ? 360 : -360),
                                    Angle.Degree
                                ),
                            }
                    ),
                ],
            }
        );
        Assert.Equal(one.Offset!.Value, other.Offset!.Value, 1e-12);
        Assert.Equal(one.HighPoint!.Value, other.HighPoint!.Value, 1e-12);
    }

    [Fact]
    public void OffsetUncertainty_OverSimulatedTurns_CoversTheTruthAndIsNotSilly()
    {
        // A dial as the defaults describe it, angles by eye: errors drawn from just those distributions.
        var random = new Random(20240);
        double Rectangular(double a) => (2 * random.NextDouble() - 1) * a;
        double Normal() =>
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
            * Math.Cos(Math.Tau * random.NextDouble());

        var (turns, inside, insideDirection, directions, squares) = (4000, 0, 0, 0, 0.0);
        for (var t = 0; t < turns; t++)
        {
            var n = new[] { 6, 8, 12 }[t % 3];
            var (offset, high) = (0.05 + 0.6 * random.NextDouble(), Math.Tau * random.NextDouble());
            var readings = new (double, double)[n];
            for (var i = 0; i < n; i++)
            {
                var noted = 360.0 * i / n;
                var under =
                    noted * Math.PI / 180 + Rectangular(TruingFields.ShaftAngle.UsualPlusMinus);
                var dial =
                    0.7
                    + offset * Math.Cos(under - high)
                    + Rectangular(0.01)
                    + Rectangular(0.005)
                    + 0.004 * Normal();
                readings[i] = (noted, dial);
            }
            var turn = DialTurns.Judge(DialTurns.At(readings));
            var error = (turn.Offset!.Value - offset) / turn.OffsetUncertainty;
            squares += error * error;
            inside += Math.Abs(error) <= 2 ? 1 : 0;
            if (turn.HighPoint is not { } found)
                continue;
            directions++;
            insideDirection +=
                DialTurns.Between(found, high) * Math.PI / 180 <= 2 * turn.HighPointUncertainty
                    ? 1
                    : 0;
        }
        // k = 2 should hold about 95 of 100. The scatter of the coverage itself over 4000 turns is 0.35 per cent; widening to
        // the scatter of few readings makes it a little careful, never bold.
        Assert.InRange((double)inside / turns, 0.945, 0.99);
        Assert.InRange((double)insideDirection / directions, 0.945, 0.99);
        Assert.True(directions > 0.99 * turns);
        Assert.InRange(squares / turns, 0.6, 1.05);
    }

    [Fact]
    public void OffsetUncertainty_OfReadingsThatScatter_IsWidenedToTheScatter()
    {
        // Twelve readings of a rough bar, up and down in turn: six waves, which twelve places cannot tell from noise.
        (double, double)[] Rough(double c) =>
            [
                .. Enumerable
                    .Range(0, 12)
                    .Select(i =>
                        (30.0 * i, 0.5 + 0.2 * Math.Cos(i * Math.PI / 6) + (i % 2 == 0 ? c : -c))
                    ),
            ];
        var wide = DialTurns.Solve(DialTurns.At(Rough(0.04)));
        var turn = wide.Turns[0];
        Assert.Single(turn.Harmonics);
        Assert.Empty(turn.Blips);
        // Usual propagation: s² = Σr²/(n − 3), u = s√(2/n), here spread evenly but for the angles' slope.
        Assert.InRange(
            turn.OffsetUncertainty / (0.04 * Math.Sqrt(12.0 / 9) * Math.Sqrt(2.0 / 12)),
            0.9,
            1.1
        );
        Assert.NotNull(wide.Find("rough"));
        Assert.True(
            turn.OffsetUncertainty
                > 3 * DialTurns.Judge(DialTurns.At(Rough(0.001))).OffsetUncertainty
        );
    }

    /// <summary>To six decimals, which a measure carries without loss.</summary>
    private static double Typed(double x) => Math.Round(x, 6);
}
