using CsCheck;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;
using Shaftwright.Truing;

namespace Shaftwright.Tests.Truing;

public sealed class HarmonicTests
{
    [Fact]
    public void Harmonics_OfTwelvePublishedReadings_AreAsPrinted()
    {
        var c = PublishedFile.Load("run-out")["F1 harmonics"];
        double[] dial = [.. c.Raw("dial").EnumerateArray().Select(d => d.GetDouble())];
        var turn = DialTurns.Judge(DialTurns.Even(dial));
        c.Agrees("mean", turn.Middle);
        Assert.Equal(2, turn.Harmonics.Count);
        c.Agrees("k1", turn.Harmonics[0].Amplitude);
        c.Agrees("phase1", turn.Harmonics[0].Phase * 180 / Math.PI);
        c.Agrees("k2", turn.Harmonics[1].Amplitude);
        c.Agrees("phase2", turn.Harmonics[1].Phase * 180 / Math.PI);
        // No press takes the oval out: 2 c₂ stays.
        Assert.Equal(2 * turn.Harmonics[1].Amplitude, turn.Form, 1e-4);
        Assert.Empty(turn.Blips);
    }

    [Fact]
    public void Fit_GivenAPublishedCircle_StepsToItsLeastSquaresCentre()
    {
        // W. Gander, G. H. Golub, R. Strebel, Least-squares fitting of circles and ellipses, BIT 34 (1994): eight points; the
        // points and the result from memory, recomputed to the digits below. A turn's first harmonic is one Gauss-Newton step.
        (double X, double Y)[] points =
        [
            (0.7, 4.0),
            (3.3, 4.7),
            (5.6, 4.0),
            (7.5, 1.3),
            (6.4, -1.1),
            (4.4, -3.0),
            (0.3, -2.5),
            (-1.1, 1.3),
        ];
        var (x, y, r) = (3.0, 1.0, 0.0);
        for (var step = 0; step < 60; step++)
        {
            var turn = DialTurns.Judge(
                DialTurns.At() with
                {
                    Readings =
                    [
                        .. points.Select(p => new DialReading
                        {
                            Angle = Measured<Angle>.Of(
                                Math.Atan2(p.Y - y, p.X - x) * 180 / Math.PI,
                                Angle.Degree
                            ),
                            // A dial believed to so little gives every reading the same weight.
                            Dial = Measured<Distance>.Of(
                                double.Hypot(p.X - x, p.Y - y),
                                Distance.Mm,
                                4000
                            ),
                        }),
                    ],
                }
            );
            var h = turn.Harmonics[0];
            x += h.Amplitude * Math.Cos(h.Phase);
            y += h.Amplitude * Math.Sin(h.Phase);
            r = turn.Middle;
        }
        Assert.Equal(3.04324, x, 1e-5);
        Assert.Equal(0.74568, y, 1e-5);
        Assert.Equal(4.10586, r, 1e-5);
    }

    [Fact]
    public void HighestOrder_OfFewReadings_IsNeverMoreThanTheyCanTell()
    {
        (int Places, int Order)[] told =
        [
            (3, 1),
            (4, 1),
            (6, 1),
            (8, 2),
            (10, 3),
            (12, 4),
            (16, 6),
            (36, 6),
        ];
        foreach (var (places, order) in told)
            Assert.Equal(order, DialTurns.Judge(DialTurns.Eccentric(0.2, 30, places)).HighestOrder);
        // Twelve places with a gap of 120°: an order whose half wave is narrower could hide in it.
        var gap = DialTurns.At([
            .. Enumerable.Range(0, 12).Select(i => 240.0 * i / 11).Select(a => (a, 0.5)),
        ]);
        Assert.Equal(1, DialTurns.Judge(gap).HighestOrder);
    }

    [Fact]
    public void Harmonics_ThatEnoughReadingsCarry_AreEachFound()
    {
        Gen.Select(
                Gen.Int[14, 24],
                Gen.Double[0.1, 0.5],
                Gen.Double[0.1, 0.3],
                Gen.Double[0.1, 0.3],
                Gen.Double[0, 6]
            )
            .Sample(
                (n, e, oval, lobes, phase) =>
                {
                    var turn = DialTurns.Judge(
                        DialTurns.At([
                            .. Enumerable
                                .Range(0, n)
                                .Select(i => (360.0 * i / n, Shape(Math.Tau * i / n))),
                        ])
                    );
                    double Shape(double t) =>
                        Math.Round(
                            1
                                + e * Math.Cos(t - phase)
                                + oval * Math.Cos(2 * t - 1)
                                + lobes * Math.Cos(3 * t - 2),
                            9
                        );
                    Assert.Equal(3, turn.Harmonics.Count);
                    Assert.Equal(e, turn.Harmonics[0].Amplitude, 1e-6);
                    Assert.Equal(oval, turn.Harmonics[1].Amplitude, 1e-6);
                    Assert.Equal(lobes, turn.Harmonics[2].Amplitude, 1e-6);
                    Assert.Equal(1, turn.Harmonics[1].Phase, 1e-5);
                    Assert.Empty(turn.Blips);
                    Assert.Equal(Shape(0.7), turn.Fitted(0.7), 1e-6);
                },
                iter: 300
            );
    }

    [Fact]
    public void Blip_OnOneReading_IsNamedAndHardlyCounts()
    {
        foreach (var n in new[] { 8, 12, 16, 24 })
        foreach (var at in new[] { 0, 3, n - 1 })
        foreach (var size in new[] { 0.25, -0.25 })
        {
            var turn = DialTurns.Eccentric(0.1, 40, n);
            var readings = turn.Readings.ToArray();
            readings[at] = DialTurns.Reading(
                360.0 * at / n,
                Math.Round(readings[at].Dial!.Value + size, 6)
            );
            var result = DialTurns.Solve(turn with { Readings = readings });
            var judged = result.Turns[0];
            var blip = Assert.Single(judged.Blips);
            Assert.Equal(at, blip.Reading);
            Assert.Equal(size, blip.Off, 1e-3);
            Assert.Equal(0.1, judged.Offset!.Value, 1e-3);
            Assert.True(DialTurns.Between(judged.HighPoint!.Value, 40 * Math.PI / 180) < 0.5);
            Assert.Contains(
                size > 0 ? "spatter" : "grinding mark",
                result.Find("lone-reading")!.Text.ToString(),
                StringComparison.Ordinal
            );
            // It stays in the run-out as read.
            Assert.True(judged.RunOut > judged.CleanRunOut + 0.03);
        }
    }

    [Fact]
    public void Verdict_OverOnlyByABlip_AsksToReadAgain()
    {
        var turn = DialTurns.Eccentric(0.03, 40, 12);
        var readings = turn.Readings.ToArray();
        readings[5] = DialTurns.Reading(150, 0.9);
        var result = DialTurns.Solve(turn with { Readings = readings });
        Assert.Equal(RunOutVerdict.ReadAgain, result.Turns[0].Verdict);
        Assert.Equal(Severity.Caution, result.Find("over-by-a-speck")!.Severity);
        Assert.Null(result.Find("over-limit"));
        Assert.Contains("read again", result.Turns[0].Words.ToString(), StringComparison.Ordinal);

        // Over without it as well: a speck excuses nothing.
        var bent = DialTurns.Eccentric(0.3, 40, 12);
        var more = bent.Readings.ToArray();
        more[5] = DialTurns.Reading(150, 1.6);
        Assert.Equal(RunOutVerdict.Over, DialTurns.Judge(bent with { Readings = more }).Verdict);
    }

    [Fact]
    public void FewReadings_ThatDoNotFitABend_SayThatTheyCannotTell()
    {
        foreach (var n in new[] { 4, 5 })
        {
            var result = DialTurns.Solve(
                DialTurns.At([
                    .. Enumerable
                        .Range(0, n)
                        .Select(i => 360.0 * i / n)
                        .Select(a => (a, 0.5 + 0.1 * Math.Cos(2 * a * Math.PI / 180))),
                ])
            );
            Assert.NotNull(result.Find("too-few-to-tell"));
            Assert.Empty(result.Turns[0].Blips);
        }
    }

    [Theory]
    [InlineData(60, 3, 3.0)]
    [InlineData(90, 3, 2.0)]
    [InlineData(120, 2, 1.5774)]
    public void Vees_UnderALobedBar_SayWhatTheyMakeOfIt(double vee, int order, double factor)
    {
        var turn = DialTurns.At([
            .. Enumerable
                .Range(0, 16)
                .Select(i => 22.5 * i)
                .Select(a => (a, 0.5 + 0.06 * Math.Cos(order * a * Math.PI / 180))),
        ]) with
        {
            Support = Support.Vees,
            FirstSupportAt = DialTurns.Mm(80),
            SecondSupportAt = DialTurns.Mm(500),
        };
        Assert.NotNull(DialTurns.Solve(turn).Find("vee-angle-missing"));
        var known = DialTurns.Solve(turn with { VeeAngle = Measured<Angle>.Of(vee, Angle.Degree) });
        Assert.Equal(factor, known.Turns[0].Harmonics[order - 1].VeeFactor!.Value, 1e-4);
        Assert.Contains(
            Say.Factor(factor).ToString(),
            known.Find("vee-factor")!.Text.ToString(),
            StringComparison.Ordinal
        );
    }
}
