using Shaftwright.Cut;
using Shaftwright.Donors;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Cut;

public sealed class MarkingTests
{
    private static CutMarks Marks(
        DonorShaft inner,
        DonorShaft outer,
        double overall,
        double at,
        double? sleeve = null
    ) =>
        CutSolverTests
            .Solve(
                inner,
                outer,
                CutSolverTests.Ask(overall, at, sleeve) with
                {
                    Kerf = Mm(2.5),
                    Facing = Mm(0.8),
                    SleeveFit = Mm(0.1),
                }
            )
            .Marks!;

    [Fact]
    public void Marks_OfACut_LeaveTheFacingAndTheKerfOnTheOffcutsSide()
    {
        var marks = Marks(Usual(25, 400), Usual(24, 400), 500, at: 250);
        Assert.Equal(250.8, marks.Inner.Scribe, 9);
        Assert.Equal(253.3, marks.Inner.OffcutFrom, 9);
        Assert.Equal(250, marks.Inner.Length, 9);
        // T = x + g + y − s: 500 = 250 + 2 + y − 1.2.
        Assert.Equal(249.2, marks.Outer.Length, 9);
        Assert.Equal(499.2, marks.Pair, 9);
        Assert.Equal(501.2, marks.InVee, 9);
        Assert.Equal(500 - 0.9, marks.Welded.Low, 9);
        Assert.Equal(500 + 0.9, marks.Welded.High, 9);
        Assert.Null(marks.Sleeve);
    }

    [Fact]
    public void Marks_NearFace_IsTheLastEdgeBeforeTheCutThatACaliperReaches()
    {
        // The boot seat of the usual shaft is 1 mm thinner and ends at 105, where the thicker bar begins.
        var marks = Marks(Usual(25, 400), Usual(24, 400), 500, at: 250);
        Assert.Equal(new MarkFace("the beginning of the bar", 105, 145.8), marks.Inner.Near);
        // 160 away a caliper does not reach.
        Assert.Null(Marks(Usual(25, 400), Usual(24, 400), 500, at: 265).Inner.Near);
    }

    [Fact]
    public void Marks_Sleeve_IsBoredForTheThickestBarUnderIt()
    {
        var marks = Marks(Usual(25, 400), Usual(24, 400), 500, at: 250, sleeve: 90);
        var sleeve = marks.Sleeve!;
        Assert.Equal(25.1, sleeve.Bore, 9);
        Assert.Equal(90, sleeve.Length);
        Assert.Equal((38 - 25.1) / 2, sleeve.Wall!.Value, 9);
    }

    [Fact]
    public void Marks_Sleeve_InOnePieceOnlyWhereItCanBeParkedClearOfTheTorch()
    {
        // Bored 25.1 it passes the bar but not the 26 mm spline that ends at 40: room to 249.2 − 40 on the thinner piece.
        var free = Marks(Usual(25, 400), Usual(24, 400), 500, at: 250, sleeve: 90).Sleeve!;
        Assert.Equal(210, free.ParkRoom, 9);
        Assert.False(free.Halves);
        // 60 for the torch and 160 of sleeve are more than that.
        Assert.True(
            Marks(Usual(25, 400), Usual(24, 400), 500, at: 250, sleeve: 160).Sleeve!.Halves
        );
    }
}
