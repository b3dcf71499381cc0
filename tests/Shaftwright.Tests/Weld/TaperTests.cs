using CsCheck;
using Shaftwright.Cut;
using Shaftwright.Measures;
using Shaftwright.Weld;

namespace Shaftwright.Tests.Weld;

/// <summary>A tapered piece in a vee, against a cone laid in by trial: the cone is pushed down and tilted until its end circles
/// touch the faces, each circle's nearest point found by itself. Nothing of the closed form is used.</summary>
public sealed class TaperTests
{
    /// <summary>Distance of the nearest point of a cone's circle from a face of the vee, mm; the circle stands square to the axis.</summary>
    /// <param name="height">Height of the axis over the apex at z = 0.</param>
    /// <param name="tilt">Tilt of the axis, rad.</param>
    /// <param name="along">Where on the axis, mm.</param>
    /// <param name="radius">Radius there.</param>
    /// <param name="shim">Shim on the face.</param>
    /// <param name="vee">Included angle.</param>
    private static double Gap(
        double height,
        double tilt,
        double along,
        double radius,
        double shim,
        double vee
    )
    {
        // x aside, y up, z along the vee. One face's unit normal, into the vee.
        var (nx, ny) = (Math.Cos(vee / 2), Math.Sin(vee / 2));
        var cy = height + along * Math.Sin(tilt);
        // The circle's own two directions: aside, and up but leaning back with the tilt. Its nearest point lies on the lower
        // quarter towards the face; searched for by thirds.
        double Off(double at) =>
            nx * radius * Math.Cos(at) + ny * (cy + radius * Math.Sin(at) * Math.Cos(tilt));
        double low = Math.PI / 2,
            high = Math.Tau;
        while (high - low > 1e-7)
        {
            var (a, b) = (low + (high - low) / 3, high - (high - low) / 3);
            if (Off(a) > Off(b))
                low = a;
            else
                high = b;
        }
        return Off((low + high) / 2) - shim;
    }

    private static double Bisect(Func<double, double> rising, double low, double high)
    {
        for (var i = 0; i < 50; i++)
        {
            var middle = (low + high) / 2;
            if (rising(middle) < 0)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }

    /// <summary>The pose in which both end circles touch: height and tilt.</summary>
    private static (double Height, double Tilt) Laid(
        double middle,
        double slope,
        double length,
        double shim,
        double vee
    )
    {
        double HeightAt(double tilt) =>
            Bisect(
                h => Gap(h, tilt, -length / 2, middle - slope * length / 2, shim, vee),
                0,
                20 * middle
            );
        var found = Bisect(
            tilt => Gap(HeightAt(tilt), tilt, length / 2, middle + slope * length / 2, shim, vee),
            -0.5,
            0.5
        );
        return (HeightAt(found), found);
    }

    [Fact]
    public void Taper_InAnyVee_TiltsAndStandsAsAConeLaidInByTrial() =>
        Gen.Select(
                Gen.Double[50, 130],
                Gen.Double[8, 20],
                Gen.Double[0.002, 0.08],
                Gen.Double[20, 60],
                Gen.Double[0, 1.5]
            )
            .Sample(
                (degrees, middle, slope, length, shim) =>
                {
                    var vee = degrees * Math.PI / 180;
                    var (height, tilt) = Laid(middle, slope, length, shim, vee);
                    var half = Math.Atan(slope);
                    // Both searches end within a ten-millionth.
                    Assert.Equal(tilt, Vee.TaperTilt(half, vee), 1e-6);
                    Assert.Equal(height, Vee.TaperHeight(middle, shim, half, vee), 1e-4);
                },
                iter: 12
            );

    [Fact]
    public void TaperHeight_OfAPlainBar_IsThatOfThePublishedPieces() =>
        Assert.Equal(19.09188, Vee.TaperHeight(13.5, 0, 0, Math.PI / 2), 5);

    [Fact]
    public void Taper_OnPacksThickerAtTheThinEdge_LiesLevel() =>
        Gen.Select(
                Gen.Double[50, 130],
                Gen.Double[8, 20],
                Gen.Double[0.002, 0.08],
                Gen.Double[20, 60]
            )
            .Sample(
                (degrees, middle, slope, length) =>
                {
                    var vee = degrees * Math.PI / 180;
                    var (thick, thin) = (middle + slope * length / 2, middle - slope * length / 2);
                    var stand = PackingSolver.Taper(
                        new()
                        {
                            InnerVee = new()
                            {
                                Angle = WeldJobs.Degrees(Math.Round(degrees, 6)),
                                DiameterNearWeld = WeldJobs.Mm(Math.Round(2 * thick, 6)),
                                DiameterFar = WeldJobs.Mm(Math.Round(2 * thin, 6)),
                                Length = WeldJobs.Mm(Math.Round(length, 6)),
                                ToJoint = WeldJobs.Mm(10),
                            },
                        },
                        ShaftEnd.Inner
                    )!;
                    // Level, the end circles stand square to the vee: the thin one on its pack touches where the thick one does.
                    var height = 3.0 * middle / Math.Sin(vee / 2);
                    var onThick = Gap(height, 0, length / 2, thick, 0, vee);
                    var onThin = Gap(height, 0, -length / 2, thin, stand.MorePack, vee);
                    Assert.Equal(onThick, onThin, 1e-4);
                    Assert.True(stand.ThickTowardsWeld);
                    // And on even packs it would be too high at the joint, being thicker there.
                    Assert.Equal(
                        (10 + length / 2) * Math.Tan(stand.Tilt)
                            - middle * (1 - Math.Cos(stand.HalfAngle)) / Math.Sin(vee / 2),
                        stand.JointHigh!.Value,
                        1e-5
                    );
                },
                iter: 30
            );

    [Fact]
    public void JointHigh_OfATaper_IsTheHeightOfTheLaidConeThere() =>
        Gen.Select(Gen.Double[60, 120], Gen.Double[10, 18], Gen.Double[0.005, 0.05])
            .Sample(
                (degrees, middle, slope) =>
                {
                    const double Length = 40,
                        ToJoint = 25;
                    var vee = Math.Round(degrees, 3) * Math.PI / 180;
                    var (height, tilt) = Laid(middle, slope, Length, 0, vee);
                    // Set level for its middle diameter: the block is right for a plain bar of that radius.
                    var wanted = middle / Math.Sin(vee / 2);
                    var high = height + (Length / 2 + ToJoint) * Math.Tan(tilt) - wanted;
                    var stand = PackingSolver.Taper(
                        new()
                        {
                            VeeAngle = WeldJobs.Degrees(Math.Round(degrees, 3)),
                            OuterVee = new()
                            {
                                DiameterNearWeld = WeldJobs.Mm(
                                    Math.Round(2 * middle + slope * Length, 9)
                                ),
                                DiameterFar = WeldJobs.Mm(
                                    Math.Round(2 * middle - slope * Length, 9)
                                ),
                                Length = WeldJobs.Mm(Length),
                                ToJoint = WeldJobs.Mm(ToJoint),
                            },
                        },
                        ShaftEnd.Outer
                    )!;
                    Assert.Equal(high, stand.JointHigh!.Value, 2e-4);
                },
                iter: 12
            );

    [Fact]
    public void Solve_APieceOnATaper_SaysHowMuchMoreTheThinEdgeNeeds()
    {
        var result = WeldJobs.Solve(
            new()
            {
                InnerDiameter = WeldJobs.Mm(26),
                OuterDiameter = WeldJobs.Mm(25),
                VeeAngle = WeldJobs.Degrees(90),
                OuterVee = new()
                {
                    DiameterNearWeld = WeldJobs.Mm(25.4),
                    DiameterFar = WeldJobs.Mm(24.6),
                    Length = WeldJobs.Mm(40),
                    ToJoint = WeldJobs.Mm(30),
                },
            }
        );
        var stand = Assert.Single(result.Tapers);
        Assert.Equal(0.4, stand.MorePack, 1e-9);
        Assert.Contains(
            "0.40",
            result.Findings.Single(f => f.Code == "stands-on-taper").Action.ToString(),
            StringComparison.Ordinal
        );
        // Slope 0.01 a side: sin τ = 0.01/sin 45° for a small taper, over 50 mm.
        Assert.Equal(0.01 / Math.Sin(Math.PI / 4) * 50, stand.JointHigh!.Value, 0.002);
    }
}
