using CsCheck;
using Shaftwright.Cut;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;
using Shaftwright.Weld;

namespace Shaftwright.Tests.Weld;

/// <summary>The three ways of packing, their mistakes, and vees that are not alike.</summary>
public sealed class PackingTests
{
    /// <summary>Centre of a circle tangent to two shimmed faces, by pushing each face in and meeting their parallels.</summary>
    private static (double X, double Y) Laid(
        double radius,
        double left,
        double right,
        double vee,
        double x = 0,
        double y = 0
    )
    {
        // The faces' parallels at distance r + t: n·p = r + t with n = (±cos α, sin α). Solved as two lines.
        var (s, c) = Math.SinCos(vee / 2);
        var (l, r) = (radius + left, radius + right);
        var det = c * s - s * -c;
        return (x + (l * s - s * r) / det, y + (c * r + c * l) / det);
    }

    [Theory]
    [MemberData(nameof(VeeTests.Shims), MemberType = typeof(VeeTests))]
    public void Choices_OfPublishedPieces_AreRightAndTheirMistakesToo(string id)
    {
        var c = PublishedFile.Load("vee-shims")[id];
        var plan = WeldJobs
            .Solve(
                new()
                {
                    InnerDiameter = c.Input<Distance>("d"),
                    OuterDiameter = c.Input<Distance>("D"),
                    VeeAngle = c.Input<Angle>("vee"),
                }
            )
            .Packing!;
        PackingChoice Of(PackingWay way) => plan.Choices.Single(w => w.Way == way);
        c.Agrees("bothFaces", Of(PackingWay.BothFaces).Pack);
        c.Agrees("underBlock", Of(PackingWay.UnderBlock).Pack);
        c.Agrees("bothFaces", Of(PackingWay.OneFace).Pack / 2);
        c.Agrees("oneFace", Of(PackingWay.OneFace).BlockAside);
        if (c.Expects("sameOneFaceOff"))
        {
            var half = Of(PackingWay.BothFaces).Mistakes[0];
            c.Agrees("sameOneFaceLow", half.Low);
            c.Agrees("sameOneFaceOff", half.Off);
            c.Agrees("sameUnderBlockLow", Of(PackingWay.UnderBlock).Mistakes[0].Low);
        }
        if (c.Expects("largeHeight"))
        {
            var vee = c.Input<Angle>("vee").Value;
            c.Agrees("largeHeight", Laid(c.Input<Distance>("D").Value / 2, 0, 0, vee).Y);
            c.Agrees("smallHeight", Laid(c.Input<Distance>("d").Value / 2, 0, 0, vee).Y);
            c.Agrees("largeHeight", Vee.TaperHeight(c.Input<Distance>("D").Value / 2, 0, 0, vee));
        }
    }

    [Fact]
    public void Choices_InAnyVee_BringTheAxesTogetherAndMistakesLeaveWhatTheySay() =>
        Gen.Select(Gen.Double[35, 145], Gen.Double[8, 40], Gen.Double[0.2, 4])
            .Sample(
                (degrees, small, step) =>
                {
                    var vee = degrees * Math.PI / 180;
                    var wanted = Laid(small + step, 0, 0, vee);
                    var lift = wanted.Y - Laid(small, 0, 0, vee).Y;
                    var choices = PackingSolver.Choices(lift, vee);
                    void Off((double X, double Y) at, double low, double aside)
                    {
                        Assert.Equal(low, wanted.Y - at.Y, 1e-9);
                        Assert.Equal(aside, Math.Abs(at.X - wanted.X), 1e-9);
                    }
                    var both = choices.Single(c => c.Way == PackingWay.BothFaces);
                    Off(Laid(small, both.Pack, both.Pack, vee), 0, 0);
                    Off(
                        Laid(small, both.Pack, 0, vee),
                        both.Mistakes[0].Low,
                        both.Mistakes[0].Aside
                    );
                    // Under the other piece: that one rises as much, and stands twice as far off.
                    Assert.Equal(
                        both.Mistakes[1].Low,
                        Laid(small + step, both.Pack, both.Pack, vee).Y - Laid(small, 0, 0, vee).Y,
                        1e-9
                    );
                    Off(Laid(small, lift, lift, vee), both.Mistakes[2].Low, both.Mistakes[2].Aside);
                    var under = choices.Single(c => c.Way == PackingWay.UnderBlock);
                    Off(Laid(small, 0, 0, vee, y: under.Pack), 0, 0);
                    Off(
                        Laid(small, 0, 0, vee, y: both.Pack),
                        under.Mistakes[0].Low,
                        under.Mistakes[0].Aside
                    );
                    // Packed on the left the piece stands to the right; the block goes left.
                    var one = choices.Single(c => c.Way == PackingWay.OneFace);
                    Off(Laid(small, one.Pack, 0, vee, x: -one.BlockAside), 0, 0);
                    Off(Laid(small, one.Pack, 0, vee), one.Mistakes[0].Low, one.Mistakes[0].Aside);
                    Off(
                        Laid(small, one.Pack, 0, vee, x: one.BlockAside),
                        one.Mistakes[1].Low,
                        one.Mistakes[1].Aside
                    );
                    Off(
                        Laid(small, one.Pack / 2, 0, vee),
                        one.Mistakes[2].Low,
                        one.Mistakes[2].Aside
                    );
                }
            );

    [Fact]
    public void TwoVees_OfAnyAnglesAndSizes_AreLevelledByTheirHeightOverAPlainBar() =>
        Gen.Select(
                Gen.Double[50, 130],
                Gen.Double[50, 130],
                Gen.Double[10, 18],
                Gen.Double[10, 18],
                Gen.Double[10, 40],
                Gen.Double[10, 40]
            )
            .Sample(
                (aDegrees, bDegrees, a, b, aApex, bApex) =>
                {
                    const double Bar = 24;
                    var (aVee, bVee) = (
                        Math.Round(aDegrees, 3) * Math.PI / 180,
                        Math.Round(bDegrees, 3) * Math.PI / 180
                    );
                    VeeBlock Block(double degrees, double vee, double apex) =>
                        new()
                        {
                            Angle = WeldJobs.Degrees(Math.Round(degrees, 3)),
                            BarDiameter = WeldJobs.Mm(Bar),
                            HeightOverBar = WeldJobs.Mm(
                                Math.Round(Laid(Bar / 2, 0, 0, vee, y: apex).Y + Bar / 2, 10)
                            ),
                        };
                    var (inner, outer) = (Math.Round(2 * a, 6), Math.Round(2 * b, 6));
                    var result = WeldJobs.Solve(
                        new()
                        {
                            InnerDiameter = WeldJobs.Mm(inner),
                            OuterDiameter = WeldJobs.Mm(outer),
                            InnerVee = Block(aDegrees, aVee, aApex),
                            OuterVee = Block(bDegrees, bVee, bApex),
                        }
                    );
                    var innerY = Laid(inner / 2, 0, 0, aVee, y: aApex).Y;
                    var outerY = Laid(outer / 2, 0, 0, bVee, y: bApex).Y;
                    if (result.ShimUnder is not { } under)
                    {
                        Assert.True(Math.Abs(innerY - outerY) < 0.3);
                        return;
                    }
                    Assert.Equal(innerY < outerY ? ShaftEnd.Inner : ShaftEnd.Outer, under);
                    var shim = result.Shim!.Value;
                    var raised =
                        under == ShaftEnd.Inner
                            ? Laid(inner / 2, shim, shim, aVee, y: aApex).Y
                            : Laid(outer / 2, shim, shim, bVee, y: bApex).Y;
                    Assert.Equal(Math.Max(innerY, outerY), raised, 1e-6);
                    Assert.Equal(Math.Abs(innerY - outerY), result.Packing!.Lift, 1e-6);
                }
            );

    [Fact]
    public void TwoVees_OfDifferentAnglesWithoutTheirHeights_AreNotGuessed()
    {
        var result = WeldJobs.Solve(
            new()
            {
                InnerDiameter = WeldJobs.Mm(25),
                OuterDiameter = WeldJobs.Mm(25),
                InnerVee = new() { Angle = WeldJobs.Degrees(90) },
                OuterVee = new() { Angle = WeldJobs.Degrees(120) },
            }
        );
        Assert.Null(result.Shim);
        Assert.True(result.Has("vees-unlike"));
    }

    [Theory]
    [InlineData(PackingWay.BothFaces, "0.70")]
    [InlineData(PackingWay.UnderBlock, "0.99")]
    [InlineData(PackingWay.OneFace, "1.40")]
    public void Solve_WithAWayOfPacking_SaysItsAmountAndItsWorstMistake(
        PackingWay way,
        string amount
    )
    {
        var result = WeldJobs.Solve(
            new()
            {
                InnerDiameter = WeldJobs.Mm(27),
                OuterDiameter = WeldJobs.Mm(25.6),
                VeeAngle = WeldJobs.Degrees(90),
                Packing = way,
            }
        );
        Assert.StartsWith(amount, result.Text("packing-way"), StringComparison.Ordinal);
    }
}
