using CsCheck;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Drawings;
using Shaftwright.Measures;

namespace Shaftwright.App.Tests.Drawings;

public class DrawingTests
{
    [Theory]
    [InlineData(Drawing.Telephone)]
    [InlineData(Drawing.Page)]
    public void EveryDrawing_StaysOnItsPaper(double width)
    {
        foreach (var (name, drawing) in Samples.Drawings(width))
        {
            foreach (var spot in drawing.Shapes.SelectMany(Spots))
            {
                Assert.True(
                    spot.X >= -0.01
                        && spot.X <= drawing.Width + 0.01
                        && spot.Y >= -0.01
                        && spot.Y <= drawing.Height + 0.01,
                    $"{name}: {spot} lies off {drawing.Width} × {drawing.Height}"
                );
            }
        }
    }

    [Fact]
    public void EveryDrawing_HasATableAsWideAsItsHeads()
    {
        foreach (var (name, drawing) in Samples.Drawings(Drawing.Telephone))
        {
            Assert.NotEmpty(drawing.Table.Heads);
            Assert.All(drawing.Table.Rows, r => Assert.Equal(drawing.Table.Heads.Count, r.Count));
            Assert.True(
                drawing.Table.Rows.Count > 0
                    || name.Contains("empty", StringComparison.Ordinal)
                    || name.Contains("no donors", StringComparison.Ordinal),
                name
            );
        }
    }

    [Fact]
    public void Shaft_AnyWeldPlace_LengthsAreToScale() =>
        Gen.Double[60, 400]
            .Select(Gen.Double[0.3, 1.2])
            .Sample(
                (weld, factor) =>
                {
                    var overall = 461.5 * factor;
                    var at = Math.Min(weld * factor, overall - 1);
                    var made = new MadeShaft(
                        overall,
                        [
                            new(ZoneKind.Plain, 0, at, 24, 24),
                            new(ZoneKind.Plain, at, overall, 26, 26),
                        ],
                        [],
                        at,
                        20,
                        null,
                        null,
                        null
                    );
                    var drawing = ShaftDrawing.Of(made);
                    var k = drawing.UnitsPerMm;
                    var measured = drawing
                        .Shapes.OfType<Measure>()
                        .Select(m => (m.To.X - m.From.X) / k)
                        .ToList();
                    Assert.Equal(at, measured[0], 1e-6);
                    Assert.Equal(overall - at, measured[1], 1e-6);
                    Assert.Equal(overall, measured[2], 1e-6);
                    // Each stretch's face is as long as the stretch, and thickness keeps its proportion.
                    var bars = drawing
                        .Shapes.OfType<Polygon>()
                        .Where(p => p.Ink == Ink.Bar)
                        .ToList();
                    double Long(Polygon p) => (p.Points.Max(s => s.X) - p.Points.Min(s => s.X)) / k;
                    double Thick(Polygon p) => p.Points.Max(s => s.Y) - p.Points.Min(s => s.Y);
                    Assert.Equal(at, Long(bars[0]), 1e-6);
                    Assert.Equal(26.0 / 24, Thick(bars[1]) / Thick(bars[0]), 1e-6);
                }
            );

    [Fact]
    public void Shaft_ThicknessExaggerated_SaysSo()
    {
        var drawing = ShaftDrawing.Of(Samples.Made);
        var bar = drawing.Shapes.OfType<Polygon>().First(p => p.Ink == Ink.Bar);
        var times =
            (bar.Points.Max(s => s.Y) - bar.Points.Min(s => s.Y)) / (27.9 * drawing.UnitsPerMm);
        Assert.Equal(2, times, 6);
        Assert.Contains(
            drawing.Shapes.OfType<Text>(),
            t => t.Words.Contains("thickness drawn ×2", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Shaft_Everything_IsInItsTable()
    {
        var table = ShaftDrawing.Of(Samples.Made).Table;
        Assert.Equal(
            Samples.Made.Stretches.Count + 1 + 1 + Samples.Made.Hardened.Count,
            table.Rows.Count
        );
        Assert.Contains(table.Rows, r => r[0] == "sleeve" && r[1] == "188.0\u00a0mm");
    }

    [Fact]
    public void Shaft_Marks_StandWhereTheyAreAndAsLongAsTheyAre()
    {
        var drawing = ShaftDrawing.Of(Samples.Made, marks: Samples.Marks);
        var k = drawing.UnitsPerMm;
        var left = drawing
            .Shapes.OfType<Polygon>()
            .Where(p => p.Ink == Ink.Bar)
            .Min(p => p.Points.Min(s => s.X));
        var axis = drawing.Shapes.OfType<Line>().First(l => l.Ink == Ink.Axis).From.Y;
        foreach (var mark in Samples.Marks.Where(m => m.Position is not null))
        {
            var ink = mark.Stops ? Ink.Worst : Ink.Reading;
            var line = Assert.Single(
                drawing.Shapes.OfType<Line>(),
                l =>
                    l.Ink == ink
                    && l.From.Y == l.To.Y
                    && Math.Abs((l.From.X + l.To.X) / 2 - (left + mark.Position!.Value * k)) < 1e-6
            );
            Assert.Equal(mark.Length!.Value * k, line.To.X - line.From.X, 1e-6);
            // The painted line faces the reader: larger angles lie below it, as far as their sine.
            Assert.Equal(Math.Sign(Math.Sin(mark.Angle!.Value)), Math.Sign(line.From.Y - axis));
        }
        var words = drawing.Shapes.OfType<Text>().Select(t => t.Words).ToList();
        for (var i = 1; i <= Samples.Marks.Count; i++)
        {
            Assert.Contains(i.ToString(System.Globalization.CultureInfo.InvariantCulture), words);
            Assert.Contains(words, w => w.StartsWith($"{i}: ", StringComparison.Ordinal));
        }
        Assert.Contains("far side", string.Join(' ', words), StringComparison.Ordinal);
        Assert.Equal(
            Samples.Marks.Count,
            drawing.Table.Rows.Count(r => r[0].StartsWith("mark ", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void Donor_OneMoreZone_GrowsWithoutTouchingWhatStands()
    {
        var zones = Samples.OtherDonor.Stretches;
        for (var n = 1; n < zones.Count; n++)
        {
            Drawing Walked(int count) =>
                DonorDrawing.Of(new("d", [.. zones.Take(count)], [], Samples.UnknownSteel));
            var (before, after) = (Walked(n), Walked(n + 1));
            Assert.Equal(
                before.Table.Rows.Select(r => string.Join('|', r)),
                after.Table.Rows.Take(n).Select(r => string.Join('|', r))
            );
            Assert.Equal(n + 1, after.Table.Rows.Count);
        }
    }

    [Fact]
    public void TwoDonors_OuterEnd_HasItsJointOnTheRight()
    {
        var drawing = DonorDrawing.TwoDonors(
            new()
            {
                InnerEnd = Samples.Donor,
                OuterEnd = Samples.OtherDonor,
                Findings = [],
            },
            new()
            {
                InnerAt = 228,
                OuterAt = 235,
                Findings = [],
            }
        );
        var kept = drawing.Shapes.OfType<Measure>().ToList();
        Assert.Equal(228, (kept[0].To.X - kept[0].From.X) / drawing.UnitsPerMm, 6);
        Assert.Equal(235, (kept[1].To.X - kept[1].From.X) / drawing.UnitsPerMm, 6);
        Assert.True(kept[0].From.X < drawing.Width / 4);
        Assert.True(kept[1].To.X > drawing.Width * 3 / 4);
    }

    [Fact]
    public void Vee_AnyDiameters_BothFacesAlikeAndAxesOne() =>
        Gen.Double[12, 40]
            .Select(Gen.Double[0.02, 4])
            .Select(Gen.Double[0.6, 2.4])
            .Sample(
                (pair, angle) =>
                {
                    var (large, step) = pair;
                    var drawing = VeeDrawing.Of(
                        new()
                        {
                            ShimUnder = ShaftEnd.Outer,
                            Shim = step / 2,
                            Findings = [],
                        },
                        large,
                        large - step,
                        angle
                    )!;
                    var circles = drawing.Shapes.OfType<Circle>().ToList();
                    Assert.Equal(circles[0].Centre, circles[1].Centre);
                    var gap = circles[1].Radius - circles[0].Radius;
                    var packs = drawing
                        .Shapes.OfType<Polygon>()
                        .Where(p => p.Ink == Ink.Shim)
                        .ToList();
                    // The pack fills what the smaller circle leaves: its thickness is the difference of the radii.
                    Assert.Equal(2, packs.Count(p => Length(p.Points[1], p.Points[2]) > 0));
                    Assert.All(
                        packs.Where(p => p.Points[0].Y > circles[0].Centre.Y),
                        p => Assert.Equal(gap, Length(p.Points[1], p.Points[2]), 6)
                    );
                }
            );

    [Fact]
    public void Dial_HighPoint_IsMarkedWhereItIs()
    {
        for (var degrees = 0; degrees < 360; degrees += 15)
        {
            var high = degrees * Math.PI / 180;
            var drawing = DialDrawing.Of(Samples.Judged with { HighPoint = high }, Samples.Turn)!;
            var ring = drawing.Shapes.OfType<Circle>().First(c => c.Ink == Ink.Gone);
            var mark = drawing.Shapes.OfType<Circle>().First(c => c.Ink == Ink.Worst);
            // Clockwise from 12 o'clock, where the paint mark is.
            var angle = Math.Atan2(mark.Centre.X - ring.Centre.X, -(mark.Centre.Y - ring.Centre.Y));
            Assert.Equal(0, Math.Sin(angle - high), 6);
            Assert.True(Math.Cos(angle - high) > 0);
        }
    }

    private static double Length(Spot a, Spot b) =>
        Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));

    private static IEnumerable<Spot> Spots(Shape shape) =>
        shape switch
        {
            Line l => [l.From, l.To],
            Polyline p => p.Points,
            Polygon p => p.Points,
            Circle c =>
            [
                new(c.Centre.X - c.Radius, c.Centre.Y - c.Radius),
                new(c.Centre.X + c.Radius, c.Centre.Y + c.Radius),
            ],
            Text t => [t.At],
            Measure m => [m.From, m.To, m.WordsAt],
            _ => throw new InvalidOperationException($"{shape} is not checked."),
        };
}
