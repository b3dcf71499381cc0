using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Shaftwright.Cut;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;
using Shaftwright.Weld;

namespace Shaftwright.Tests.Weld;

public sealed class VeeTests
{
    public static TheoryData<string> Shims() => PublishedFile.Ids("vee-shims");

    public static TheoryData<string> Uncertainties() => PublishedFile.Ids("shim-uncertainty");

    [Theory]
    [MemberData(nameof(Shims))]
    public void Solve_PublishedPieces_GivesShimAndAlternatives(string id)
    {
        var c = PublishedFile.Load("vee-shims")[id];
        var result = WeldJobs.Solve(
            new()
            {
                InnerDiameter = c.Input<Distance>("d"),
                OuterDiameter = c.Input<Distance>("D"),
                VeeAngle = c.Input<Angle>("vee"),
            }
        );
        c.Agrees("bothFaces", result.Shim!.Value);
        c.Agrees("underBlock", result.UnderBlock!.Value);
        c.Agrees("oneFace", result.OneFaceError!.Value);
        Assert.Equal(ShaftEnd.Inner, result.ShimUnder);
        if (c.Expects("sameUnderBlockLow"))
        {
            Assert.Contains(
                $"{c.Expected("sameUnderBlockLow"):F2}\u00a0mm low",
                result.Text("under-block"),
                StringComparison.Ordinal
            );
            Assert.Contains(
                $"{c.Expected("sameOneFaceOff"):F2}\u00a0mm off",
                result.Text("one-face"),
                StringComparison.Ordinal
            );
        }
    }

    [Theory]
    [MemberData(nameof(Uncertainties))]
    public void ShimUncertainty_FromTheCaliper_IsPropagated(string id)
    {
        var c = PublishedFile.Load("shim-uncertainty")[id];
        var u = WeldJobs
            .Solve(
                new()
                {
                    InnerDiameter = WeldJobs.Mm(27, c.Number("plusMinus")),
                    OuterDiameter = WeldJobs.Mm(25.6, c.Number("plusMinus")),
                }
            )
            .ShimUncertainty;
        c.Agrees("U", u);
    }

    [Fact]
    public void Shim_AtAnyVeeAngle_BringsTheCirclesOntoOneAxis()
    {
        Gen.Select(Gen.Double[30, 150], Gen.Double[10, 60], Gen.Double[0.1, 5])
            .Sample(
                (vee, small, step) =>
                {
                    var result = WeldJobs.Solve(
                        new()
                        {
                            InnerDiameter = WeldJobs.Mm(small),
                            OuterDiameter = WeldJobs.Mm(small + step),
                            VeeAngle = WeldJobs.Degrees(vee),
                        }
                    );
                    var t = result.Shim!.Value;
                    var large = TangentCircle((small + step) / 2, 0, 0, vee);
                    var shimmed = TangentCircle(small / 2, t, t, vee);
                    Assert.Equal(large.X, shimmed.X, 1e-9);
                    Assert.Equal(large.Y, shimmed.Y, 1e-9);

                    // The block lifted by the other answer.
                    var bare = TangentCircle(small / 2, 0, 0, vee);
                    Assert.Equal(large.Y, bare.Y + result.UnderBlock!.Value, 1e-9);

                    // One face, twice the shim: the height is regained, the axis is aside.
                    var oneFace = TangentCircle(small / 2, 2 * t, 0, vee);
                    Assert.Equal(large.Y, oneFace.Y, 1e-9);
                    Assert.Equal(result.OneFaceError!.Value, Math.Abs(oneFace.X), 1e-9);
                },
                iter: 500,
                seed: "0000KnLpQw13"
            );
    }

    [Fact]
    public void AxisError_OfUnequalPacks_IsTheDistanceOfTheCircles()
    {
        Gen.Select(Gen.Double[40, 140], Gen.Int[0, 40], Gen.Int[0, 40])
            .Sample(
                (vee, a, b) =>
                {
                    // Two single blades, each up to 0.04 off the 0.500 wanted.
                    var (left, right) = (0.48 + a / 1000.0, 0.48 + b / 1000.0);
                    var result = WeldJobs.Solve(
                        WeldJobs.ForShim(0.5, vee) with
                        {
                            BladeSet = BladeSet.Listed,
                            Blades = [WeldJobs.Mm(left), WeldJobs.Mm(right)],
                        }
                    );
                    var large = TangentCircle(13, 0, 0, vee);
                    var small = TangentCircle(12.5, left, right, vee);
                    var apart = Math.Sqrt(
                        Math.Pow(large.X - small.X, 2) + Math.Pow(large.Y - small.Y, 2)
                    );
                    Assert.Equal(apart, result.Packs!.AxisError!.Value, 1e-9);
                },
                iter: 300,
                seed: "0000KnLpQw13"
            );
    }

    [Fact]
    public void Solve_WithThePiecesChangedOver_ShimsTheOtherEndTheSame()
    {
        Gen.Select(Gen.Double[10, 60], Gen.Double[10, 60])
            .Sample(
                (a, b) =>
                {
                    var one = WeldJobs.Solve(
                        new() { InnerDiameter = WeldJobs.Mm(a), OuterDiameter = WeldJobs.Mm(b) }
                    );
                    var other = WeldJobs.Solve(
                        new() { InnerDiameter = WeldJobs.Mm(b), OuterDiameter = WeldJobs.Mm(a) }
                    );
                    Assert.Equal(one.Shim, other.Shim);
                    Assert.Equal(one.Packs?.Error, other.Packs?.Error);
                    Assert.Equal(one.ShimUnder is null, other.ShimUnder is null);
                    if (one.ShimUnder is not null)
                        Assert.NotEqual(one.ShimUnder, other.ShimUnder);
                },
                iter: 200,
                seed: "0000KnLpQw13"
            );
    }

    [Fact]
    public void Solve_InInches_AnswersAsInMillimetres()
    {
        var metric = WeldJobs.Solve(
            new()
            {
                InnerDiameter = WeldJobs.Mm(25.4, 0.0254),
                OuterDiameter = WeldJobs.Mm(28.575, 0.0254),
            }
        );
        var inch = WeldJobs.Solve(
            new()
            {
                InnerDiameter = Measured<Distance>.Read("1 in ± 1 thou", "a").Required,
                OuterDiameter = Measured<Distance>.Read("1 1/8 in ± 1 thou", "b").Required,
            }
        );
        Assert.Equal(metric.Shim!.Value, inch.Shim!.Value, 1e-12);
        Assert.Equal(metric.ShimUncertainty, inch.ShimUncertainty, 1e-12);
        Assert.Equal(metric.Packs!.Left.Leaves, inch.Packs!.Left.Leaves);
    }

    [Fact]
    public void Solve_PiecesThatTheCaliperCannotTellApart_NeedNoShim()
    {
        var result = WeldJobs.Solve(
            new() { InnerDiameter = WeldJobs.Mm(25.02), OuterDiameter = WeldJobs.Mm(25) }
        );
        Assert.Null(result.ShimUnder);
        Assert.Null(result.Packs);
        Assert.Equal(0.01, result.Shim!.Value, 1e-12);
        Assert.True(result.Has("pieces-alike"));
    }

    [Fact]
    public void Solve_ADiameterMissing_TakesItFromTheCutOrSaysWhich()
    {
        var typed = new WeldInput { InnerDiameter = WeldJobs.Mm(26) };
        var alone = WeldJobs.Solve(typed);
        Assert.Null(alone.Shim);
        Assert.Contains(
            "outer-end piece",
            alone.Text("diameter-missing"),
            StringComparison.Ordinal
        );

        var cut = new CutResult
        {
            InnerDiameter = 99,
            OuterDiameter = 24,
            Findings = [],
        };
        var result = WeldSolver.Solve(typed, new WeldAround(cut));
        Assert.Equal(1.0, result.Shim!.Value, 1e-12);
        Assert.Equal(ShaftEnd.Outer, result.ShimUnder);
        Assert.True(result.Has("diameter-from-cut"));
    }

    [Fact]
    public void Solve_WithoutAVeeAngle_StillShimsAndHidesWhatNeedsTheAngle()
    {
        var result = WeldJobs.Solve(WeldJobs.ForShim(0.7) with { VeeAngle = null });
        Assert.Equal(0.7, result.Shim!.Value, 1e-12);
        Assert.NotNull(result.Packs);
        Assert.Equal(0, result.Packs.AxisError);
        Assert.Null(result.UnderBlock);
        Assert.Null(result.OneFaceError);
        Assert.True(result.Has("vee-angle-unknown"));
        var rough = WeldJobs.Solve(WeldJobs.ForShim(0.525) with { VeeAngle = null });
        Assert.Null(rough.Packs!.AxisError);
    }

    [Fact]
    public void Solve_ALargeStep_AdvisesATurnedRing()
    {
        var result = WeldJobs.Solve(WeldJobs.ForShim(3.2));
        var finding = result.Findings.Single(f => f.Code == "step-too-large");
        Assert.Equal(Severity.Caution, finding.Severity);
        Assert.Contains(
            "bored to 25.00\u00a0mm and turned to 31.40\u00a0mm",
            finding.Action.ToString(),
            StringComparison.Ordinal
        );
        Assert.False(WeldJobs.Solve(WeldJobs.ForShim(2.9)).Has("step-too-large"));
    }

    [Fact]
    public void Findings_OfEverySetUp_CarryAnActionAndASource()
    {
        Gen.Select(Gen.Double[10, 60], Gen.Double[10, 60], Gen.Bool)
            .Sample(
                (a, b, angle) =>
                    Assert.All(
                        WeldJobs
                            .Solve(
                                new()
                                {
                                    InnerDiameter = WeldJobs.Mm(a),
                                    OuterDiameter = WeldJobs.Mm(b),
                                    VeeAngle = angle ? WeldJobs.Degrees(90) : null,
                                }
                            )
                            .Findings,
                        f =>
                        {
                            Assert.Equal(Stage.Weld, f.Stage);
                            Assert.NotEmpty(f.Action.ToString());
                            Assert.NotEmpty(f.Source);
                        }
                    ),
                iter: 100,
                seed: "0000KnLpQw13"
            );
    }

    /// <summary>Centre of a circle that touches both faces, each with its shim on: its distance from each face's line, as
    /// point-to-line distance in coordinates, is radius plus shim. Two linear equations, solved numerically.</summary>
    private static (double X, double Y) TangentCircle(
        double radius,
        double left,
        double right,
        double vee
    )
    {
        var half = vee * Math.PI / 360;
        // Faces rise from the apex along (∓sin, cos) of the half angle. For a line through 0 along (u, v) the distance of
        // (x, y) is |v x − u y|, taken positive on the inside.
        var (lu, lv) = (-Math.Sin(half), Math.Cos(half));
        var (ru, rv) = (Math.Sin(half), Math.Cos(half));
        var centre = Matrix<double>
            .Build.DenseOfArray(
                new[,]
                {
                    { lv, -lu },
                    { -rv, ru },
                }
            )
            .Solve(Vector<double>.Build.Dense([radius + left, radius + right]));
        return (centre[0], centre[1]);
    }
}
