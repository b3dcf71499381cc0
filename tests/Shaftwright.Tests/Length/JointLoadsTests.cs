using Shaftwright.Car;
using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Length;

/// <summary>Torque at each position's angle, and the boots, on the swing arm of the check values (300 long, 21.92° at the ends).</summary>
public sealed class JointLoadsTests
{
    private static LengthResult Solve(Func<JointInput, JointInput> inner, double newtonMetres = 800)
    {
        var joints = TrialShaft.Joints(15, 23, 25, rollerRadius: 0);
        return Workflow
            .Evaluate(
                new Job
                {
                    // 800 N·m in the shaft: engine 100, ratio 8 in all, one wheel, no launch, no loss.
                    Car = new CarInput
                    {
                        EngineTorque = Measured<Torque>.Of(newtonMetres / 8, Torque.NewtonMetre, 0),
                        GearRatio = Measured<Ratio>.Of(8, Ratio.One, 0),
                        FinalDrive = Measured<Ratio>.Of(1, Ratio.One, 0),
                        ShareToThisShaft = Measured<Ratio>.Of(1, Ratio.One, 0),
                        Efficiency = Measured<Ratio>.Of(1, Ratio.One, 0),
                        LaunchFactor = Measured<Ratio>.Of(1, Ratio.One, 0),
                    },
                    Corner = new()
                    {
                        Conditions = TrialShaft.AllWell,
                        Readings =
                        [
                            TrialShaft.DistanceAndAngle(-140, 284, 112),
                            TrialShaft.DistanceAndAngle(0, 300, 0),
                            TrialShaft.DistanceAndAngle(140, 284, 112),
                        ],
                    },
                    Joints = joints with { Inner = inner(joints.Inner!) },
                    Length = new() { Margin = TrialShaft.Mm(1), Chosen = TrialShaft.Mm(300) },
                }
            )
            .Length!;
    }

    private static TorqueAtAngle Row(double degrees, double newtonMetres) =>
        new()
        {
            Angle = TrialShaft.Deg(degrees),
            Torque = Measured<Torque>.Of(newtonMetres, Torque.NewtonMetre),
        };

    private static IEnumerable<string> Codes(LengthResult result) =>
        result.Findings.Select(f => f.Code);

    [Fact]
    public void TorqueMargin_AtEachPosition_IsTheTableAtItsAngleOverTheShaftsTorque()
    {
        var result = Solve(j => j with { TorqueTable = [Row(0, 1200), Row(30, 600)] });
        var ends = result.Positions.Where(p => p.Read).Select(p => p.InnerTorqueMargin!.Value);
        // 1200 − 20 a degree, at 21.921340°: 761.573 over 800.
        double[] expected = [0.951966, 1.5, 0.951966];
        Assert.All(ends.Zip(expected), pair => Assert.Equal(pair.Second, pair.First, 1e-6));
        Assert.Contains(
            result.Findings,
            f => f is { Code: "inner-torque", Severity: Severity.Caution }
        );
    }

    [Fact]
    public void TorqueLimit_TooSmallEverywhere_Stops()
    {
        var result = Solve(j => j with { TorqueTable = [Row(0, 700), Row(30, 600)] });
        Assert.Contains(
            result.Findings,
            f => f is { Code: "inner-torque", Severity: Severity.Stop }
        );
        Assert.DoesNotContain(
            "inner-torque",
            Codes(Solve(j => j with { TorqueTable = [Row(0, 900), Row(30, 850)] }))
        );
    }

    [Fact]
    public void TorqueTable_ThatEndsBeforeTheAngle_IsNotGuessedBeyond()
    {
        var result = Solve(j => j with { TorqueTable = [Row(0, 900), Row(15, 850)] });
        Assert.Contains("inner-torque-beyond-table", Codes(result));
        Assert.Null(result.Positions.First(p => p.Read).InnerTorqueMargin);
    }

    [Fact]
    public void Boot_IsTheThirdSideBetweenItsClamps()
    {
        BootInput Boot(double shortest, double longest, double angle) =>
            new()
            {
                LargeClamp = TrialShaft.Mm(30),
                SmallClamp = TrialShaft.Mm(110),
                Shortest = TrialShaft.Mm(shortest),
                Longest = TrialShaft.Mm(longest),
                AngleLimit = TrialShaft.Deg(angle),
            };
        var result = Solve(j => j with { Boot = Boot(82, 84, 20) });
        // Ends: bent about the spider, 5.690819 out: clamps 24.309181 and 110 from it at 21.921340°.
        var end = result.Positions.First(p => p.Read).InnerBoot!.Value;
        var p = 30 - 5.690819;
        Assert.Equal(
            Math.Sqrt(p * p + 110 * 110 - 2 * p * 110 * Math.Cos(21.921340 * TrialShaft.Degree)),
            end,
            1e-5
        );
        Assert.Equal(
            80,
            result.Positions.Single(x => x is { Read: true, Travel: 0 }).InnerBoot!.Value,
            1e-9
        );
        var codes = Codes(result).ToList();
        Assert.Contains("inner-boot-stretched", codes);
        Assert.Contains("inner-boot-squeezed", codes);
        Assert.Contains("inner-boot-angle", codes);
        Assert.DoesNotContain(
            Codes(Solve(j => j with { Boot = Boot(70, 100, 24) })),
            c => c.Contains("boot", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void TripodAtALargeAngle_SaysItsOrbit()
    {
        var result = Solve(j =>
            j with
            {
                Kind = JointKind.PlungingTripod,
                RollerRadius = TrialShaft.Mm(20),
            }
        );
        // 20·(1/cos 21.921340° − 1)/2 = 0.779 mm.
        Assert.Contains(
            result.Findings,
            f =>
                f.Code == "tripod-orbit"
                && f.Text.ToString().Contains("0.78", StringComparison.Ordinal)
        );
    }
}
