using CsCheck;
using Shaftwright.Cut;
using Shaftwright.Measures;
using Shaftwright.Weld;

namespace Shaftwright.Tests.Weld;

/// <summary>Tacks under the dial: two straight axes are laid out in space, what a dial would show of them is read off, and the
/// solver has to find them again.</summary>
public sealed class TackTests
{
    private static readonly double[] s_places = [15, 90];

    private static TackNote Read(ShaftEnd piece, double fromJoint, double x, double y) =>
        new()
        {
            Piece = piece,
            FromJoint = WeldJobs.Mm(fromJoint),
            RunOut = WeldJobs.Mm(Math.Round(2 * double.Hypot(x, y), 9), 0.002),
            HighPoint = Measured<Angle>.Of(
                Math.Round(Math.Atan2(y, x) * 180 / Math.PI, 9),
                Angle.Degree,
                1
            ),
        };

    [Fact]
    public void Solve_OfTwoAxesInSpace_FindsTheirOffsetAndTheirTilt() =>
        Gen.Select(
                Gen.Double[-0.4, 0.4],
                Gen.Double[-0.4, 0.4],
                Gen.Double[-0.004, 0.004],
                Gen.Double[-0.004, 0.004],
                Gen.Double[-0.002, 0.002]
            )
            .Sample(
                (offX, offY, tiltX, tiltY, common) =>
                {
                    // The inner axis leans a little by itself; z grows outwards from the joint on both sides.
                    (double X, double Y) Inner(double away) =>
                        (0.02 - common * away, 0.01 + common * away);
                    (double X, double Y) Outer(double away) =>
                        (
                            0.02 + offX + (common + tiltX) * away,
                            0.01 + offY + (-common + tiltY) * away
                        );
                    var notes = s_places
                        .SelectMany(s =>
                            new[]
                            {
                                Read(ShaftEnd.Inner, s, Inner(s).X, Inner(s).Y),
                                Read(ShaftEnd.Outer, s, Outer(s).X, Outer(s).Y),
                            }
                        )
                        .ToList();
                    var stand = TackSolver.Solve(notes)!;
                    Assert.Equal(double.Hypot(offX, offY), stand.Offset!.Value, 1e-7);
                    Assert.Equal(double.Hypot(tiltX, tiltY), stand.Tilt!.Value, 1e-7);
                }
            );

    [Fact]
    public void Solve_AParallelOffset_SaysToBreakTheTacks()
    {
        var stand = TackSolver.Solve([
            Read(ShaftEnd.Inner, 15, 0, 0.01),
            Read(ShaftEnd.Inner, 90, 0, 0.01),
            Read(ShaftEnd.Outer, 15, 0.3, 0.01),
            Read(ShaftEnd.Outer, 90, 0.3, 0.01),
        ])!;
        Assert.Equal(TackCall.Break, stand.Call);
        Assert.Equal(0.3, stand.Offset!.Value, 1e-9);
        Assert.Equal(0, stand.Tilt!.Value, 1e-9);
        Assert.Equal(0, Math.Sin(stand.OffsetAt!.Value), 1e-6);
        Assert.Equal("tacks-offset", Assert.Single(stand.Findings).Code);
    }

    [Fact]
    public void Solve_ATiltWithoutOffset_SaysItCanBePressedOutLater()
    {
        var stand = TackSolver.Solve([
            Read(ShaftEnd.Inner, 10, 0, -0.02),
            Read(ShaftEnd.Inner, 100, 0, -0.2),
            Read(ShaftEnd.Outer, 10, 0, -0.02),
            Read(ShaftEnd.Outer, 100, 0, -0.2),
        ])!;
        Assert.Equal(TackCall.Weld, stand.Call);
        Assert.Equal(0, stand.Offset!.Value, 1e-9);
        Assert.Equal(0.004, stand.Tilt!.Value, 1e-9);
        Assert.Contains("pressed out", stand.Findings[0].Text.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Solve_OneSideOnly_DoesNotSay()
    {
        var stand = TackSolver.Solve([Read(ShaftEnd.Inner, 15, 0.2, 0)])!;
        Assert.Equal(TackCall.NotKnown, stand.Call);
        Assert.Null(stand.Offset);
        Assert.Null(TackSolver.Solve([]));
    }

    [Fact]
    public void Solve_OnePlaceEach_LeavesTheTiltUnknownAndStillSeesAnOffset()
    {
        var stand = TackSolver.Solve([
            Read(ShaftEnd.Inner, 15, 0, 0.02),
            Read(ShaftEnd.Outer, 15, 0.4, 0.02),
        ])!;
        Assert.Null(stand.Tilt);
        Assert.Equal(TackCall.Break, stand.Call);
    }

    [Fact]
    public void Solve_WithACoarseDial_ReadsAgain()
    {
        TackNote Coarse(ShaftEnd piece, double runOut) =>
            new()
            {
                Piece = piece,
                FromJoint = WeldJobs.Mm(20),
                RunOut = WeldJobs.Mm(runOut, 0.1),
                HighPoint = WeldJobs.Degrees(0),
            };
        var stand = TackSolver.Solve([Coarse(ShaftEnd.Inner, 0), Coarse(ShaftEnd.Outer, 0.26)])!;
        Assert.Equal(TackCall.ReadAgain, stand.Call);
    }
}
