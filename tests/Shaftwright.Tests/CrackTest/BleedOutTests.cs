using CsCheck;
using Shaftwright.CrackTest;

namespace Shaftwright.Tests.CrackTest;

/// <summary>Bleed-outs drawn with a known size: found whatever the light, the turn and the scale, or refused.</summary>
public sealed class BleedOutTests
{
    private const int Wide = 240;
    private const int High = 180;

    /// <summary>An ellipse, as a camera would see it: edges blended, light falling off to one side, a little noise.</summary>
    private sealed record Drawn(
        double A,
        double B,
        double Turn,
        double X = 120,
        double Y = 90,
        double Uneven = 0,
        int Noise = 0,
        MarkLook Look = MarkLook.RedOnWhite
    )
    {
        public double Area => Math.PI * A * B;

        public Photo Photo()
        {
            var bytes = new byte[Wide * High * 4];
            var random = new Random(7);
            var (mark, ground) = Look switch
            {
                MarkLook.RedOnWhite => (new[] { 190.0, 30, 40 }, new[] { 235.0, 232, 228 }),
                MarkLook.DarkOnLight => ([40, 42, 45], [220, 220, 215]),
                _ => ([120.0, 230, 90], [12.0, 14, 25]),
            };
            for (var y = 0; y < High; y++)
            {
                for (var x = 0; x < Wide; x++)
                {
                    var cover = Cover(x, y);
                    // Darker to the right and towards the bottom.
                    var light = 1 - Uneven * (0.7 * x / Wide + 0.3 * y / High);
                    for (var c = 0; c < 3; c++)
                        bytes[(y * Wide + x) * 4 + c] = (byte)
                            Math.Clamp(
                                light * (cover * mark[c] + (1 - cover) * ground[c])
                                    + random.Next(-Noise, Noise + 1)
                                    + 0.5,
                                0,
                                255
                            );
                }
            }
            return new(bytes, Wide, High, Wide * 4, 4);
        }

        /// <summary>Share of a pixel inside, by 5 × 5 points in it.</summary>
        private double Cover(int x, int y)
        {
            var inside = 0;
            for (var i = -2; i <= 2; i++)
            {
                for (var j = -2; j <= 2; j++)
                {
                    var (dx, dy) = (x + i / 5.0 - X, y + j / 5.0 - Y);
                    var u = (dx * Math.Cos(Turn) + dy * Math.Sin(Turn)) / A;
                    var v = (-dx * Math.Sin(Turn) + dy * Math.Cos(Turn)) / B;
                    inside += u * u + v * v <= 1 ? 1 : 0;
                }
            }
            return inside / 25.0;
        }
    }

    private static PhotoScale Scale(double perPixel, double plusMinus = 0) =>
        new(new(10, 170), new(210, 170), 200 * perPixel, plusMinus, 0.5);

    private static BleedOutResult Measure(Drawn drawn, double perPixel = 0.05) =>
        BleedOut.Measure(drawn.Photo(), Scale(perPixel), new(drawn.X, drawn.Y), drawn.Look);

    private static void Agrees(Drawn drawn, double perPixel, BleedOutResult found)
    {
        Assert.Equal(BleedOutOutcome.Measured, found.Outcome);
        var s = perPixel;
        var area = drawn.Area * s * s;
        Assert.InRange(found.Area, area - found.AreaPlusMinus, area + found.AreaPlusMinus);
        Assert.InRange(found.Length - 2 * drawn.A * s, -found.PlusMinus, found.PlusMinus);
        Assert.InRange(found.Width - 2 * drawn.B * s, -found.PlusMinus, found.PlusMinus);
        // The bound must say something: an edge of a pixel, not half the mark.
        Assert.True(found.AreaPlusMinus < area * (0.1 + 2.5 / Math.Min(drawn.A, drawn.B)));
    }

    [Fact]
    public void Measure_AnyEllipseInAnyLight_IsWithinItsOwnBound() =>
        Gen.Select(
                Gen.Double[6, 55],
                Gen.Double[0.15, 1],
                Gen.Double[-1.5, 1.5],
                Gen.Double[0, 0.55],
                Gen.Double[0.01, 0.3]
            )
            .Sample(
                (a, slim, turn, uneven, perPixel) =>
                {
                    var drawn = new Drawn(a, Math.Max(3, a * slim), turn, Uneven: uneven, Noise: 3);
                    Agrees(drawn, perPixel, Measure(drawn, perPixel));
                },
                iter: 60
            );

    [Theory]
    [InlineData(MarkLook.DarkOnLight)]
    [InlineData(MarkLook.BrightOnDark)]
    public void Measure_InkAndFluorescence_AreFoundToo(MarkLook look)
    {
        var drawn = new Drawn(40, 6, 0.6, Uneven: 0.3, Noise: 2, Look: look);
        Agrees(drawn, 0.05, Measure(drawn));
    }

    [Fact]
    public void Measure_TheWholeOfAFewSizes_IsWithinAFewPerCentOfTheDrawnArea()
    {
        foreach (var (a, b) in new[] { (50.0, 20.0), (30.0, 30.0), (45.0, 9.0) })
        {
            var drawn = new Drawn(a, b, 0.4, Uneven: 0.4, Noise: 3);
            Assert.Equal(drawn.Area * 0.0025, Measure(drawn).Area, 0.05 * drawn.Area * 0.0025);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(1.2)]
    [InlineData(-1)]
    public void Measure_ItsDirection_IsThatOfItsLength(double turn) =>
        Assert.Equal(turn, Measure(new(45, 6, turn)).Direction, 0.06);

    [Fact]
    public void Measure_TheScaleTwiceAsLarge_DoublesLengthsAndQuadruplesAreas()
    {
        var drawn = new Drawn(30, 10, 0.3);
        var (one, two) = (Measure(drawn, 0.05), Measure(drawn, 0.1));
        Assert.Equal(2 * one.Length, two.Length, 1e-9);
        Assert.Equal(2 * one.Width, two.Width, 1e-9);
        Assert.Equal(4 * one.Area, two.Area, 1e-9);
    }

    [Fact]
    public void Measure_AScaleLessWellKnown_WidensTheBound()
    {
        var drawn = new Drawn(30, 10, 0);
        var loose = BleedOut.Measure(
            drawn.Photo(),
            Scale(0.05, plusMinus: 0.5),
            new(120, 90),
            MarkLook.RedOnWhite
        );
        Assert.True(loose.PlusMinus > Measure(drawn).PlusMinus + 0.1);
    }

    [Fact]
    public void Measure_PointedBesideIt_FindsItWithinAFewPixelsAndNothingFurtherOff()
    {
        var photo = new Drawn(12, 12, 0).Photo();
        BleedOutResult At(double x) =>
            BleedOut.Measure(photo, Scale(0.05), new(x, 90), MarkLook.RedOnWhite);
        Assert.Equal(BleedOutOutcome.Measured, At(120 + 14).Outcome);
        Assert.Equal(BleedOutOutcome.NothingThere, At(120 + 60).Outcome);
    }

    [Fact]
    public void Measure_ACleanSurface_FindsNothingAndSaysThatIsNoProof()
    {
        var clean = new Drawn(0.001, 0.001, 0, X: -500, Noise: 4).Photo();
        foreach (var look in Enum.GetValues<MarkLook>())
        {
            var found = BleedOut.Measure(clean, Scale(0.05), new(120, 90), look);
            Assert.Equal(BleedOutOutcome.NothingThere, found.Outcome);
            Assert.Contains("no proof", found.Words.ToString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Measure_AMarkThatLeavesThePhoto_IsRefused() =>
        Assert.Equal(
            BleedOutOutcome.CutOff,
            BleedOut
                .Measure(
                    new Drawn(40, 15, 0, X: 230).Photo(),
                    Scale(0.05),
                    new(225, 90),
                    MarkLook.RedOnWhite
                )
                .Outcome
        );

    [Fact]
    public void Measure_WhatCannotBeMeasured_IsRefusedInWords()
    {
        var photo = new Drawn(20, 10, 0).Photo();
        var grey = new Photo(new byte[Wide * High], Wide, High, Wide, 1);
        BleedOutOutcome Of(Photo p, PhotoScale s, PhotoPoint at) =>
            BleedOut.Measure(p, s, at, MarkLook.RedOnWhite).Outcome;
        PhotoPoint middle = new(120, 90);
        Assert.Equal(BleedOutOutcome.NoPhoto, Of(grey, Scale(0.05), middle));
        Assert.Equal(BleedOutOutcome.NoPhoto, Of(photo with { Width = 500 }, Scale(0.05), middle));
        Assert.Equal(BleedOutOutcome.NoPhoto, Of(default, Scale(0.05), middle));
        Assert.Equal(BleedOutOutcome.NoScale, Of(photo, new(new(10, 10), new(15, 10), 5), middle));
        Assert.Equal(
            BleedOutOutcome.NoScale,
            Of(photo, new(new(10, 10), new(110, 10), double.NaN), middle)
        );
        Assert.Equal(BleedOutOutcome.NothingThere, Of(photo, Scale(0.05), new(-5, 90)));
        Assert.Equal(BleedOutOutcome.NothingThere, Of(photo, Scale(0.05), new(double.NaN, 90)));
    }

    [Fact]
    public void Measure_AMarkOfManyPixels_IsReadMoreCoarselyAndItsBoundSaysSo()
    {
        const int wide = 1500;
        const int high = 1200;
        var bytes = new byte[wide * high];
        for (var y = 0; y < high; y++)
        {
            for (var x = 0; x < wide; x++)
            {
                var (u, v) = ((x - 700) / 450.0, (y - 600) / 140.0);
                bytes[y * wide + x] = u * u + v * v <= 1 ? (byte)45 : (byte)215;
            }
        }
        const double s = 0.02;
        var found = BleedOut.Measure(
            new(bytes, wide, high, wide, 1),
            new(new(100, 1100), new(1100, 1100), 1000 * s, 0, 0.5),
            new(700, 600),
            MarkLook.DarkOnLight
        );
        Assert.Equal(BleedOutOutcome.Measured, found.Outcome);
        Assert.InRange(found.Length - 900 * s, -found.PlusMinus, found.PlusMinus);
        Assert.InRange(found.Width - 280 * s, -found.PlusMinus, found.PlusMinus);
        var area = Math.PI * 450 * 140 * s * s;
        Assert.InRange(found.Area - area, -found.AreaPlusMinus, found.AreaPlusMinus);
        // Fewer places read than the mark has pixels: that is what keeps a telephone awake.
        Assert.InRange(found.Pixels, 1, Math.PI * 450 * 140 / 3.9);
        Assert.True(found.PlusMinus >= 3 * s);
    }

    [Fact]
    public void Measure_ASecondMarkNearby_IsNotPartOfTheFirst()
    {
        var photo = new Drawn(20, 8, 0, X: 80).Photo();
        var other = new Drawn(20, 8, 0, X: 160).Photo();
        var both = photo.Bytes.ToArray();
        for (var i = 0; i < both.Length; i++)
            both[i] = Math.Min(both[i], other.Bytes.Span[i]);
        var found = BleedOut.Measure(
            photo with
            {
                Bytes = both,
            },
            Scale(0.05),
            new(80, 90),
            MarkLook.RedOnWhite
        );
        Assert.InRange(found.Length - 2.0, -found.PlusMinus, found.PlusMinus);
    }

    [Fact]
    public void Words_OfAMeasure_AcceptNothing() =>
        Assert.Contains(
            "accepts nothing",
            Measure(new(20, 10, 0)).Words.ToString(),
            StringComparison.Ordinal
        );
}
