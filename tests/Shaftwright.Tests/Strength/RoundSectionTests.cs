using CsCheck;
using MathNet.Numerics.Integration;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.Strength;

public sealed class RoundSectionTests
{
    private const double Nm = 1000;

    public static TheoryData<string> Torsion() => PublishedFile.Ids("round-torsion");

    public static TheoryData<string> Hardened() => PublishedFile.Ids("hardened-torsion");

    public static TheoryData<string> Rings() => PublishedFile.Ids("fused-ring");

    [Theory]
    [MemberData(nameof(Torsion))]
    public void SurfaceStress_PublishedCase_Agrees(string id)
    {
        var c = PublishedFile.Load("round-torsion")[id];
        double T = c.Input<Torque>("torque").Value,
            D = c.Input<Distance>("outside").Value,
            bore = c.Input<Distance>("bore").Value;
        var J = RoundSection.SecondMoment(D, bore);
        var stress = RoundSection.SurfaceStress(T, D, bore);
        if (c.Expects("secondMoment"))
        {
            c.Agrees("secondMoment", J);
            c.Agrees("stress", stress);
        }
        else
        {
            c.Agrees("secondMomentIn4", J / Math.Pow(25.4, 4));
            c.Agrees("stressPsi", Stress.Psi.FromInternal(stress));
        }
        Assert.Equal(T, RoundSection.YieldTorque(stress, D, bore), T * 1e-12);
    }

    [Theory]
    [MemberData(nameof(Hardened))]
    public void HardenedYieldTorque_PublishedCase_Agrees(string id)
    {
        var c = PublishedFile.Load("hardened-torsion")[id];
        double hard = c.Input<Stress>("case").Value,
            core = c.Input<Stress>("core").Value,
            D = c.Input<Distance>("diameter").Value,
            depth = c.Input<Distance>("depth").Value;
        if (c.Expects("balancedShare"))
        {
            // Just under the balanced depth the core decides, just over it the surface.
            var share = 1 - core / hard;
            c.Agrees("balancedShare", share);
            var surface = RoundSection.YieldTorque(hard, D);
            Assert.True(
                RoundSection.HardenedYieldTorque(hard, core, D, (share - 1e-6) * D / 2) < surface
            );
            Assert.Equal(
                surface,
                RoundSection.HardenedYieldTorque(hard, core, D, (share + 1e-6) * D / 2)
            );
            return;
        }
        c.Agrees("yieldTorqueNm", RoundSection.HardenedYieldTorque(hard, core, D, depth) / Nm);
        if (c.Expects("surfaceAloneNm"))
            c.Agrees("surfaceAloneNm", RoundSection.YieldTorque(hard, D) / Nm);
    }

    [Theory]
    [MemberData(nameof(Rings))]
    public void FusedRing_PublishedCase_Agrees(string id)
    {
        var c = PublishedFile.Load("fused-ring")[id];
        double D = c.Input<Distance>("diameter").Value,
            w = c.Input<Distance>("depth").Value;
        c.Agrees(
            "ratio",
            RoundSection.FusedRingYieldTorque(100, D, w) / RoundSection.YieldTorque(100, D)
        );
        if (!c.Expects("stress"))
            return;
        var T = c.Input<Torque>("torque").Value;
        c.Agrees("secondMoment", RoundSection.SecondMoment(D, D - 2 * w));
        c.Agrees("stress", RoundSection.SurfaceStress(T, D, D - 2 * w));
        c.Agrees("solidStress", RoundSection.SurfaceStress(T, D));
    }

    [Fact]
    public void HardenedYieldTorque_AnyBar_IsTheIntegralOfTheStressThatFirstYields() =>
        Check.Sample(
            Gen.Select(
                Gen.Double[15, 60],
                Gen.Double[0, 1.2],
                Gen.Double[400, 1000],
                Gen.Double[150, 400]
            ),
            t =>
            {
                var (D, share, hard, core) = t;
                var (R, depth) = (D / 2, share * D / 2);
                // Stress per unit radius at which one of the two metals first yields.
                var slope = Math.Min(hard / R, depth < R ? core / (R - depth) : double.MaxValue);
                var torque = GaussLegendreRule.Integrate(
                    r => 2 * Math.PI * slope * r * r * r,
                    0,
                    R,
                    8
                );
                Assert.Equal(
                    torque,
                    RoundSection.HardenedYieldTorque(hard, core, D, depth),
                    torque * 1e-10
                );
            }
        );

    [Fact]
    public void FusedRingYieldTorque_RisesWithDepthAndDiameterUpToTheSolidBar() =>
        Check.Sample(
            Gen.Select(Gen.Double[15, 60], Gen.Double[0.05, 1.2], Gen.Double[0.01, 0.5]),
            t =>
            {
                var (D, share, more) = t;
                double At(double d, double w) => RoundSection.FusedRingYieldTorque(200, d, w);
                var w = share * D / 2;
                Assert.True(At(D, w + more) >= At(D, w));
                Assert.True(At(D + more, w) > At(D, w));
                Assert.True(At(D, w) <= RoundSection.YieldTorque(200, D) * (1 + 1e-12));
                if (share >= 1)
                    Assert.Equal(RoundSection.YieldTorque(200, D), At(D, w));
            }
        );
}
