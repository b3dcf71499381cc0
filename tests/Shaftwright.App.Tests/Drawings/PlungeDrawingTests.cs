using Shaftwright.Drawings;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.App.Tests.Drawings;

public class PlungeDrawingTests
{
    [Fact]
    public void Lengths_WithAWindow_NamesBothEndsAndTheLengthToMake()
    {
        var drawing = PlungeDrawing.Lengths(Samples.WithWindow)!;
        var words = WordsOf(drawing);
        Assert.Contains("longest", words, StringComparison.Ordinal);
        Assert.Contains("shortest", words, StringComparison.Ordinal);
        Assert.Contains(
            "make " + Say.Length(Samples.WithWindow.Make!.Value).In(Display.Metric),
            words,
            StringComparison.Ordinal
        );
        Assert.Equal(Samples.WithWindow.Positions.Count, drawing.Table.Rows.Count);
    }

    [Fact]
    public void Lengths_RingsAndLine_StandWhereTheAxisSaysTheyDo()
    {
        // The ends' rings and the make line must agree with each other on one scale: distances in proportion to the lengths.
        var drawing = PlungeDrawing.Lengths(Samples.WithWindow)!;
        var rings = drawing
            .Shapes.OfType<Circle>()
            .Where(c => c.Ink == Ink.Worst && c.Radius == 6)
            .ToList();
        var make = drawing.Shapes.OfType<Line>().First(l => l.Ink == Ink.Answer).From.Y;
        var (longest, shortest) = (rings[0].Centre.Y, rings[1].Centre.Y);
        var r = Samples.WithWindow;
        Assert.Equal(
            (r.Make!.Value - r.Shortest!.Length) / (r.Longest!.Length - r.Shortest.Length),
            (shortest - make) / (shortest - longest),
            6
        );
    }

    [Fact]
    public void Lengths_NoWindow_StillShowsWhyAndByHowMuch()
    {
        Assert.False(Samples.WithoutWindow.HasWindow);
        var drawing = PlungeDrawing.Lengths(Samples.WithoutWindow);
        Assert.NotNull(drawing);
        var missing = Say.Length(Samples.WithoutWindow.Missing).In(Display.Metric);
        Assert.Contains($"No length: {missing}", WordsOf(drawing), StringComparison.Ordinal);
        // The ends cross: the longest lies below the shortest.
        var rings = drawing
            .Shapes.OfType<Circle>()
            .Where(c => c.Ink == Ink.Worst && c.Radius == 6)
            .ToList();
        Assert.True(rings[0].Centre.Y > rings[1].Centre.Y);
    }

    [Fact]
    public void Lengths_AllowedBand_HoldsTheWindowAtEveryTravel()
    {
        foreach (var result in new[] { Samples.WithWindow, Samples.WithPlunge })
        {
            var drawing = PlungeDrawing.Lengths(result)!;
            var band = drawing.Shapes.OfType<Polygon>().First(p => p.Ink == Ink.Allowed);
            var rings = drawing
                .Shapes.OfType<Circle>()
                .Where(c => c.Ink == Ink.Worst && c.Radius == 6)
                .ToList();
            var half = band.Points.Count / 2;
            Assert.All(band.Points.Take(half), p => Assert.True(p.Y < rings[0].Centre.Y));
            Assert.All(band.Points.Skip(half), p => Assert.True(p.Y > rings[1].Centre.Y));
        }
    }

    [Fact]
    public void Of_PlungeKnown_DrawsTheEnvelopeAndNamesTheTightestPoint()
    {
        var drawing = PlungeDrawing.Of(Samples.WithPlunge, Samples.Tripod)!;
        Assert.Equal("plunge-and-angle", drawing.Code);
        var tightest = Samples.WithPlunge.Positions.Min(p => Math.Min(p.LeftIn, p.LeftOut));
        Assert.Contains(
            Say.Length(tightest).In(Display.Metric),
            drawing.Description,
            StringComparison.Ordinal
        );
        // A tripod's envelope narrows towards its angle limit by twice roller radius × tan(angle).
        var envelope = drawing.Shapes.OfType<Polygon>().First(p => p.Ink == Ink.Limit);
        double WidthAt(double y)
        {
            var there = envelope.Points.Where(p => Math.Abs(p.Y - y) < 1e-6).ToList();
            return there.Max(p => p.X) - there.Min(p => p.X);
        }
        var foot = WidthAt(envelope.Points.Max(p => p.Y));
        var head = WidthAt(envelope.Points.Min(p => p.Y));
        var expected = (48 - 2 * 20 * Math.Tan(23 * Math.PI / 180)) / 48;
        Assert.Equal(expected, head / foot, 6);
    }

    [Fact]
    public void Of_NothingRead_DrawsNothing() =>
        Assert.Null(PlungeDrawing.Of(new LengthResult { Findings = [] }));

    private static string WordsOf(Drawing drawing) =>
        string.Join(' ', drawing.Shapes.OfType<Text>().Select(t => t.Words));
}
