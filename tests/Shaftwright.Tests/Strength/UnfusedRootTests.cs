using CsCheck;
using Shaftwright.Car;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Tests.Strength;

/// <summary>The unfused core is never passed over, least of all where it is all there is.</summary>
public sealed class UnfusedRootTests
{
    private static Measured<Distance> Mm(double mm, double? plusMinus = null) =>
        Measured<Distance>.Of(mm, Distance.Mm, plusMinus);

    private static StrengthInput Sampled(double depth, double plusMinus) =>
        new()
        {
            Sample = new()
            {
                At = new(2026, 5, 3, 14, 20, 0, TimeSpan.Zero),
                SameSteel = true,
                SameSetUp = true,
                Cracked = false,
                Fusion =
                [
                    .. Enumerable
                        .Range(0, 4)
                        .Select(i => new SampleFusion
                        {
                            Angle = Measured<Angle>.Of(90 * i, Angle.Degree),
                            Depth = Mm(depth, plusMinus),
                        }),
                ],
            },
        };

    private static StrengthResult Solve(
        StrengthInput strength,
        Band? torqueNm,
        double diameter = 25,
        double other = 25
    )
    {
        var made = new MadeShaft(
            400,
            [
                new(ZoneKind.Plain, 0, 200, diameter, diameter),
                new(ZoneKind.Plain, 200, 400, other, other),
            ],
            [],
            200,
            20,
            null,
            null,
            null
        );
        var donor = new DonorProfile(
            "",
            [],
            [],
            new SteelKnown(SteelClass.MediumCarbon, null, null)
        );
        var car = torqueNm is not { } t
            ? null
            : new CarResult
            {
                ThisCar = new(t * 1000, null, t * 1000, TorqueLimit.OnlyEngineSideKnown),
                Findings = [],
            };
        return StrengthSolver.Solve(
            made,
            new()
            {
                InnerEnd = donor,
                OuterEnd = donor,
                Findings = [],
            },
            car,
            strength
        );
    }

    private static Finding Says(StrengthResult result, string code) =>
        Assert.Single(result.Findings, f => f.Code == code);

    [Theory]
    [InlineData(4, 4.5)]
    [InlineData(4, 4)]
    [InlineData(0, 0.3)]
    [InlineData(0, 0)]
    public void Solve_DepthThatMayBeNothing_SaysThatNothingMayBeFused(double depth, double off)
    {
        foreach (var torque in new Band?[] { null, new(100, 200) })
        {
            var result = Solve(Sampled(depth, off), torque);
            Assert.True(result.Root!.MayBeAll);
            Assert.InRange(result.Root.Diameter.High, 25, 26);
            Assert.Null(result.Root.Intensity);
            Says(result, "nothing-fused");
        }
    }

    [Fact]
    public void Solve_NothingFused_StopsOnlyWhereTheBestOfItDoesNotHold()
    {
        // At its best 8.5 mm of 12.5 are fused, which carries 100 N·m with ease; 4000 it cannot.
        Assert.Equal(
            Severity.Caution,
            Says(Solve(Sampled(4, 4.5), new(100, 100)), "nothing-fused").Severity
        );
        Assert.Equal(
            Severity.Stop,
            Says(Solve(Sampled(4, 4.5), new(4000, 4000)), "nothing-fused").Severity
        );
        Assert.Equal(
            Severity.Stop,
            Says(Solve(new() { FusionDepth = Mm(0) }, null), "nothing-fused").Severity
        );
    }

    [Fact]
    public void Solve_TorqueUnknown_SaysThatTheCoreIsACrackWithoutItsIntensity()
    {
        var result = Solve(Sampled(6, 0.3), null);
        Assert.Null(result.Root!.Intensity);
        Assert.Contains(
            "crack",
            Says(result, "root-unfused").Text.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Solve_AnyFusion_EveryBandRunsFromLowToHigh() =>
        Gen.Select(
                Gen.Double[16, 40],
                Gen.Double[0, 1],
                Gen.Double[0, 5],
                Gen.Int[0, 3],
                Gen.Double[50, 3000]
            )
            .Sample(
                (diameter, share, off, kind, torque) =>
                {
                    var depth = Math.Round(share * diameter / 2, 2);
                    var strength = kind switch
                    {
                        0 => new StrengthInput(),
                        1 => new StrengthInput { FusionDepth = Mm(depth, Math.Round(off, 2)) },
                        2 => new StrengthInput
                        {
                            FusionDepth = Mm(depth, Math.Round(off, 2)),
                            FusionFromSample = true,
                        },
                        _ => Sampled(depth, Math.Round(off, 2)),
                    };
                    var result = Solve(
                        strength,
                        new(torque, 1.3 * torque),
                        diameter,
                        41 - diameter / 2
                    );
                    foreach (var s in result.Sections)
                    {
                        Ordered(s.YieldTorque);
                        Ordered(s.ShearYield);
                        Ordered(s.Margin!.Value);
                    }
                    if (result.Root is not { } root)
                        return;
                    Ordered(root.Diameter);
                    Assert.True(root.Diameter.Low >= 0);
                    if (root.Intensity is { } k)
                        Ordered(k);
                    // Deepest where least is fused: never silent.
                    Assert.Contains(
                        result.Findings,
                        f => f.Code is "root-rests" or "root-works" or "nothing-fused"
                    );
                },
                iter: 400
            );

    private static void Ordered(Band band) => Assert.True(band.Low <= band.High, $"{band}");
}
