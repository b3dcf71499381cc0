using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;
using Shaftwright.Truing;

namespace Shaftwright.Tests.Truing;

public sealed class ShaftShapeTests
{
    [Fact]
    public void OffsetAt_AParabolaSeenFromVees_IsAsPublished()
    {
        var c = PublishedFile.Load("bow-between-supports")["W1"];
        var (length, first, second) = (c.Number("length"), c.Number("first"), c.Number("second"));
        var sweep = Across.Of(8 * c.Number("sag") / (length * length), 0);
        var turns = BentShaft.Turns(
            [150, 300, 430],
            (first, second),
            (x, a, b) => BentShaft.Curve(sweep, x, a, b)
        );
        var shape = Solve(turns, 300, length).Shape!;
        Assert.Equal(BendKind.Sweep, shape.Likeliest.Kind);
        c.Agrees("middle", shape.Likeliest.OffsetAt(300, first, second).Toward0);
        c.Agrees("runOut", 2 * shape.Likeliest.OffsetAt(300, first, second).Size);
        c.Agrees("ends", shape.Likeliest.OffsetAt(0, first, second).Toward0);
        c.Agrees("ends", shape.Likeliest.OffsetAt(600, first, second).Toward0);
        var ends = shape.Lines.Single(l => l.Line == TurningLine.Ends);
        c.Agrees("runOutBetweenEnds", ends.RunOut);
        Assert.Equal(300, ends.At, 1e-6);
    }

    [Fact]
    public void OffsetAt_AKinkSeenFromVees_IsAsPublished()
    {
        var c = PublishedFile.Load("bow-between-supports")["W2"];
        var (weld, first, second) = (c.Number("weldAt"), c.Number("first"), c.Number("second"));
        var kink = Across.Of(c.Number("kink"), 0);
        var turns = BentShaft.Turns(
            [200, 290, 310, 450],
            (first, second),
            (x, a, b) => BentShaft.Roof(kink, weld, x, a, b)
        );
        var shape = Solve(turns, weld, c.Number("length")).Shape!;
        Assert.Equal(BendKind.Kink, shape.Likeliest.Kind);
        Assert.True(shape.Told);
        c.Agrees("atWeld", shape.Likeliest.OffsetAt(weld, first, second).Toward0);
        c.Agrees("atInnerEnd", shape.Likeliest.OffsetAt(0, first, second).Toward0);
        c.Agrees("atOuterEnd", shape.Likeliest.OffsetAt(700, first, second).Toward0);
        var ends = shape.Lines.Single(l => l.Line == TurningLine.Ends);
        c.Agrees("peakBetweenEnds", ends.RunOut / 2);
        Assert.Equal(weld, ends.At, 1e-6);
        Assert.Equal(0, shape.HighPoint!.Value, 1e-6);
    }

    [Fact]
    public void Limits_InThou_AreTheMillimetresOfTheTrade()
    {
        var c = PublishedFile.Load("run-out")["thou"];
        double[] thou = [.. c.Raw("thou").EnumerateArray().Select(t => t.GetDouble())];
        double[] mm = [.. c.Raw("mm").EnumerateArray().Select(t => t.GetDouble())];
        for (var i = 0; i < thou.Length; i++)
            Assert.Equal(mm[i], Measured<Distance>.Of(thou[i], Distance.Thou).Value, 1e-12);
        c.Agrees("six", Measured<Distance>.Of(6, Distance.Thou).Value);
        c.Agrees("eight", Measured<Distance>.Of(8, Distance.Thou).Value);
    }

    [Fact]
    public void Shape_OfOneStation_ClaimsNoKindOfBend()
    {
        var turns = BentShaft.Turns(
            [310],
            (80, 560),
            (x, a, b) => BentShaft.Roof(Across.Of(0.003, 1), 300, x, a, b)
        );
        var result = Solve(turns, 300, 640);
        Assert.False(result.Shape!.Told);
        Assert.True(result.Shape.Possible.Count >= 2);
        Assert.NotNull(result.Find("bend-not-told"));
        // Marked where it is high all the same.
        Assert.True(DialTurns.Between(result.Shape.HighPoint!.Value, 1) < 1);
    }

    [Fact]
    public void Shape_OfStationsOnOneSideOfTheWeld_ClaimsNoKindOfBend()
    {
        var turns = BentShaft.Turns(
            [120, 180, 240, 290],
            (80, 560),
            (x, a, b) => BentShaft.Roof(Across.Of(0.003, 1), 300, x, a, b)
        );
        Assert.False(Solve(turns, 300, 640).Shape!.Told);
    }

    [Fact]
    public void Shape_WithoutTheWeldsPlace_SaysSo()
    {
        var turns = BentShaft.Turns(
            [150, 300, 450],
            (80, 560),
            (x, a, b) => BentShaft.Roof(Across.Of(0.003, 1), 300, x, a, b)
        );
        var result = Solve(turns, null, 640);
        Assert.False(result.Shape!.Told);
        Assert.NotNull(result.Find("weld-not-placed"));
    }

    [Fact]
    public void Shape_OfASetOff_SaysThatNoPressTakesItOut()
    {
        var setOff = Across.Of(0.2, 2);
        var turns = BentShaft.Turns(
            [150, 280, 320, 450],
            (80, 560),
            (x, a, b) => BentShaft.Step(setOff, 300, x, a, b)
        );
        var result = Solve(turns, 300, 640);
        Assert.Equal(BendKind.SetOff, result.Shape!.Likeliest.Kind);
        Assert.True(result.Shape.Told);
        Assert.Equal(0.2, result.Shape.Likeliest.SetOff.Size, 1e-6);
        Assert.True(DialTurns.Between(result.Shape.Likeliest.SetOff.Direction, 2) < 0.01);
        Assert.Equal(Severity.Caution, result.Find("set-off")!.Severity);
    }

    [Fact]
    public void Shape_OfAKinkAndASweep_FindsBoth()
    {
        var (kink, sweep) = (Across.Of(0.004, 0.5), Across.Of(6e-6, 2.5));
        var turns = BentShaft.Turns(
            [140, 220, 290, 310, 400, 480],
            (60, 580),
            (x, a, b) => BentShaft.Roof(kink, 300, x, a, b) + BentShaft.Curve(sweep, x, a, b)
        );
        var bend = Solve(turns, 300, 640).Shape!.Likeliest;
        Assert.Equal(BendKind.KinkAndSweep, bend.Kind);
        Assert.Equal(0, (bend.Kink - kink).Size, 1e-6);
        Assert.Equal(0, (bend.Sweep - sweep).Size, 1e-9);
    }

    [Fact]
    public void Shape_OfStationsOnDifferentSupports_IsTheSame()
    {
        // One and the same bent shaft, some stations read on vees set in, some between centres.
        var kink = Across.Of(0.004, 4);
        Across Line(double x, double a, double b) => BentShaft.Roof(kink, 260, x, a, b);
        var vees = BentShaft.Turns([200, 320], (100, 500), Line);
        var centres = BentShaft
            .Turns([255, 420], (0, 620), Line)
            .Select(t =>
                t with
                {
                    Support = Support.Centres,
                    FirstSupportAt = null,
                    SecondSupportAt = null,
                }
            );
        var shape = Solve([.. vees, .. centres], 260, 620).Shape!;
        Assert.Equal(4, shape.Stations.Count);
        Assert.Equal(BendKind.Kink, shape.Likeliest.Kind);
        Assert.Equal(0, (shape.Likeliest.Kink - kink).Size, 1e-6);
        Assert.Equal(0, shape.Stations.Sum(s => (s.Read - s.Fitted).Size), 1e-5);
    }

    [Fact]
    public void Shape_OfAStraightShaft_LeavesWhatMayHideInTheBand()
    {
        var turns = BentShaft.Turns([150, 300, 450], (80, 560), (_, _, _) => default);
        var shape = Solve(turns, 300, 640).Shape!;
        Assert.Equal(BendKind.Straight, shape.Likeliest.Kind);
        Assert.Null(shape.HighPoint);
        Assert.All(shape.Lines, l => Assert.True(l is { RunOut: 0, Low: 0, High: > 0.01 }));
        Assert.StartsWith("Straight as far as", shape.Words.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Shape_InsideOnVeesButOverOnTheCar_IsCautioned()
    {
        // W1 again: 0.1333 on the vees, 0.30 between the ends.
        var sweep = Across.Of(8 * 0.15 / (600.0 * 600), 0);
        var turns = BentShaft.Turns(
            [210, 300, 390],
            (100, 500),
            (x, a, b) => BentShaft.Curve(sweep, x, a, b),
            readings: 24
        );
        var result = TruingSolver.Solve(
            new TruingInput { Turns = turns },
            new ShaftPlaces
            {
                Overall = 600,
                WeldAt = 300,
                InnerCentre = 5,
                OuterCentre = 595,
            }
        );
        var finding = result.Find("over-on-the-car");
        Assert.All(result.Turns, t => Assert.Equal(RunOutVerdict.Inside, t.Verdict));
        Assert.Equal(Severity.Caution, finding!.Severity);
        var car = result.Shape!.Lines.Single(l => l.Line == TurningLine.JointCentres);
        Assert.Equal(0.3 * 590 * 590 / (600.0 * 600), car.RunOut, 1e-3);
        Assert.Equal(RunOutVerdict.Over, car.Verdict);
    }

    [Fact]
    public void States_ThatMayHaveBeenPressedBetween_AreNeverFittedTogether()
    {
        Across Before(double x, double a, double b) =>
            BentShaft.Roof(Across.Of(0.004, 1), 300, x, a, b);
        Across After(double x, double a, double b) =>
            BentShaft.Roof(Across.Of(0.001, 1), 300, x, a, b);
        var first = BentShaft.Turns([200, 310, 400], (80, 560), Before);
        var again = BentShaft.Turns([310], (80, 560), After);

        // Nobody counted strokes: a station read again begins anew.
        var unsaid = Solve([.. first, .. again], 300, 640);
        Assert.Equal([3, 1], unsaid.Shapes.Select(s => s.Stations.Count));

        // Counted and none between: it only replaces.
        var counted = Solve(
            [.. first.Concat(again).Select(t => t with { AfterStroke = 0 })],
            300,
            640
        );
        Assert.Equal([3], counted.Shapes.Select(s => s.Stations.Count));

        // A stroke between, another layer, another moment: each its own.
        Assert.Equal(
            2,
            Solve(
                [.. first, .. again.Select(t => t with { AfterStroke = 1 })],
                300,
                640
            ).Shapes.Count
        );
        Assert.Equal(
            2,
            Solve([.. first, .. again.Select(t => t with { Layer = 2 })], 300, 640).Shapes.Count
        );
        Assert.Equal(
            2,
            Solve(
                [.. first, .. again.Select(t => t with { Moment = Moment.Sleeved })],
                300,
                640
            ).Shapes.Count
        );
    }

    [Fact]
    public void At_AMoment_TakesTheLastTurnOfEachStation()
    {
        var first = BentShaft.Turns([200, 310], (80, 560), (_, _, _) => new(0.3, 0));
        var later = BentShaft.Turns([313], (80, 560), (_, _, _) => new(0.02, 0));
        var sleeved = first[0] with { Moment = Moment.Sleeved };
        var poor = later[0] with { Readings = [.. later[0].Readings.Take(2)] };
        var at = TruingSolver.At(
            new TruingInput { Turns = [.. first, .. later, sleeved, poor] },
            Moment.ButtWelded
        );
        Assert.Equal([first[0], later[0], poor], at.Turns);
    }

    internal static TruingResult Solve(
        IReadOnlyList<DialTurn> turns,
        double? weld,
        double? length
    ) =>
        TruingSolver.Solve(
            new TruingInput
            {
                Turns = turns,
                WeldAt = weld is { } w ? DialTurns.Mm(w) : null,
                OverallLength = length is { } l ? DialTurns.Mm(l) : null,
            }
        );
}
