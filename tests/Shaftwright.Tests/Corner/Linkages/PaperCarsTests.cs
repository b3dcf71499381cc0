using Shaftwright.Corner.Linkages;
using Shaftwright.Geometry;

namespace Shaftwright.Tests.Corner.Linkages;

/// <summary>The three cars that can be worked on paper. Source: own derivation from rigid-body geometry, ../shared/reference/kinematics.md
/// 1 to 3 and docs/linkages.md, mark D; each expected value is the closed form, worked out here.</summary>
public sealed class PaperCarsTests
{
    private const double Owed = 1e-9;

    internal static Linkage TrailingArm { get; } =
        PivotedArm.Of(new(0, 690, 280), new(410, 300, 280), new(410, 500, 280));

    internal static Linkage Wishbones { get; } =
        DoubleWishbone.Of(
            new(0, 680, 280),
            new(120, 320, 200),
            new(-120, 320, 200),
            new(0, 620, 200),
            new(100, 320, 400),
            new(-100, 320, 400),
            new(0, 620, 400),
            Constraint.Rod(new(-120, 320, 260), new(-120, 620, 260))
        );

    internal static Linkage SwingArm { get; } =
        PivotedArm.Of(new(0, 600, 280), new(300, 100, 280), new(-200, 100, 280));

    [Theory]
    [InlineData(90)]
    [InlineData(-90)]
    public void TrailingArm_AtBothEnds_GoesTenForward(double travel)
    {
        var solver = new CarrierSolver(TrailingArm);
        Assert.Equal(MoveEnd.Reached, solver.MoveTo(new(travel)).End);
        Near(new(10, 650, 280 + travel), solver.Point(new(0, 650, 280)));
        // Its axis lies along the outer joint's, which therefore does not turn.
        Near(Vec3.Left, solver.Direction(Vec3.Left));
    }

    [Theory]
    [InlineData(84)]
    [InlineData(-84)]
    public void Wishbones_AtBothEnds_GoTwelveInboardAndDoNotTurn(double travel)
    {
        var solver = new CarrierSolver(Wishbones);
        Assert.Equal(MoveEnd.Reached, solver.MoveTo(new(travel)).End);
        Near(new(0, 588, 280 + travel), solver.Point(new(0, 600, 280)));
        Near(Vec3.Left, solver.Direction(Vec3.Left));
        Near(Vec3.Forward, solver.Direction(Vec3.Forward));
    }

    [Theory]
    [InlineData(140)]
    [InlineData(-140)]
    public void SwingArm_AtBothEnds_LeansByAsin028(double travel)
    {
        var solver = new CarrierSolver(SwingArm);
        Assert.Equal(MoveEnd.Reached, solver.MoveTo(new(travel)).End);
        Near(new(0, 484, 280 + travel * 0.8), solver.Point(new(0, 500, 280)));
        Near(new(0, 0.96, travel / 500), solver.Direction(Vec3.Left));
    }

    [Theory]
    [InlineData(400)]
    [InlineData(-400)]
    public void Wishbones_AskedBeyondUpright_LockAt300AndDoNotFlip(double travel)
    {
        var solver = new CarrierSolver(Wishbones);
        var move = solver.MoveTo(new(travel));
        Assert.Equal(MoveEnd.Locked, move.End);
        Assert.Equal(300 * Math.Sign(travel), move.Drive.Travel, 1e-5);
        Assert.Equal(MoveEnd.Reached, solver.MoveTo(default).End);
        Near(new(0, 600, 280), solver.Point(new(0, 600, 280)));
    }

    [Fact]
    public void TrailingArm_AskedBeyondUpright_LocksAtItsLength()
    {
        var solver = new CarrierSolver(TrailingArm);
        var move = solver.MoveTo(new(500));
        Assert.Equal(MoveEnd.Locked, move.End);
        Assert.Equal(410, move.Drive.Travel, 1e-5);
    }

    [Fact]
    public void ArmWithItsWheelOnTheAxis_IsLoose() =>
        Assert.Equal(
            MoveEnd.Loose,
            new CarrierSolver(PivotedArm.Of(new(0, 600, 280), new(0, 300, 280), new(0, 500, 280)))
                .MoveTo(new(10))
                .End
        );

    internal static void Near(Vec3 expected, Vec3 actual, double owed = Owed) =>
        Assert.True(
            (expected - actual).Length <= owed,
            $"{actual} is {(expected - actual).Length:e1} off {expected}."
        );
}
