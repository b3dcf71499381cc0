using CsCheck;
using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Tests.Length;

namespace Shaftwright.Tests.Joints;

/// <summary>A shaft between two plunging joints, against both ends slid by hand in space.</summary>
public sealed class FloatingShaftTests
{
    private sealed record Car(double Axial, double Across, double Phi, double Psi, double Turn);

    private static readonly Gen<Car> Cars = Gen.Select(
        Gen.Double[350, 600],
        Gen.Double[1, 22],
        Gen.Double[1, 22],
        Gen.Double[0, Math.PI],
        (d, phi, psi, turn) => new Car(d, 0, phi * TrialShaft.Degree, psi * TrialShaft.Degree, turn)
    );

    /// <summary>Both axes in space: the line of centres along x, the inner axis bent in the xy plane, the outer turned about x from it.</summary>
    private static double Between(Car c, double inner, double outer)
    {
        (double X, double Y, double Z) ai = (Math.Cos(c.Phi), Math.Sin(c.Phi), 0);
        (double X, double Y, double Z) ao = (
            Math.Cos(c.Psi),
            Math.Sin(c.Psi) * Math.Cos(c.Turn),
            Math.Sin(c.Psi) * Math.Sin(c.Turn)
        );
        var x = c.Axial + outer * ao.X - inner * ai.X;
        var y = outer * ao.Y - inner * ai.Y;
        var z = outer * ao.Z - inner * ai.Z;
        return Math.Sqrt(x * x + y * y + z * z);
    }

    private static JointInput Joint(double goesIn, double comesOut, bool? held = null) =>
        new()
        {
            Kind = JointKind.PlungingBall,
            PlungeIn = TrialShaft.Mm(goesIn),
            PlungeOut = TrialShaft.Mm(comesOut),
            AngleLimit = TrialShaft.Deg(45),
            HeldAtOuterStop = held,
        };

    [Fact]
    public void LongestAndShortest_NeverLetThroughWhatJamsOrFallsOut() =>
        Gen.Select(Cars, Gen.Double[8, 22], Gen.Double[8, 22], Gen.Double[8, 22], Gen.Double[8, 22])
            .Sample(
                (car, ii, io, oi, oo) =>
                {
                    var inner = PlungeLimits.Of(Joint(ii, io))!;
                    var outer = PlungeLimits.Of(Joint(oi, oo))!;
                    var shaft = FloatingShaft.Of(car.Axial, car.Phi, car.Psi);

                    var jams = Between(car, -ii, oi);
                    var longest = shaft.Longest(inner, outer, 0, 0);
                    Assert.True(longest <= jams + 1e-6, $"{longest} lets through a jam at {jams}");

                    // Drifted in until it bottoms, the outer end must still be in, and the other way round.
                    var outOfOuter = Between(car, -ii, -oo);
                    var outOfInner = Between(car, io, oi);
                    var shortest = shaft.Shortest(inner, outer, 0, 0, false, false);
                    Assert.True(shortest >= Math.Max(outOfOuter, outOfInner) - 1e-6);

                    var held = shaft.Shortest(inner, outer, 0, 0, true, true);
                    Assert.True(held >= Between(car, io, -oo) - 1e-6);
                    Assert.True(held < shortest);

                    // Not silly: which way the two angles bend is worth only the product of two strokes over the length.
                    var most = 2 * 22 * 22 / car.Axial;
                    Assert.InRange(jams - longest, -1e-6, most);
                    Assert.InRange(shortest - Math.Max(outOfOuter, outOfInner), -1e-6, most);
                },
                iter: 500
            );

    [Fact]
    public void Drift_OfAStraightShaft_IsTheStrokesLessWhatTheLengthTakes()
    {
        var inner = PlungeLimits.Of(Joint(15, 18))!;
        var outer = PlungeLimits.Of(Joint(10, 12))!;
        var shaft = FloatingShaft.Of(450, 0, 0);
        // 452 long: outer plunge = inner + 2, between −12 and 10; inner between −15 and 18. So inner from −14 to 8.
        var (low, high) = shaft.Drift(inner, outer, 452)!.Value;
        Assert.Equal(-14, low, 1e-9);
        Assert.Equal(8, high, 1e-9);
        Assert.Equal(10, shaft.OuterPlunge(452, 8), 1e-9);
        Assert.Null(shaft.Drift(inner, outer, 476));
        Assert.Equal(475, shaft.Longest(inner, outer, 0, 0), 1e-9);
        // Nothing holds it: bottomed inside (−15) with the outer at −12; bottomed outside (10) with the inner at 18.
        Assert.Equal(453, shaft.Shortest(inner, outer, 0, 0, false, false), 1e-9);
        Assert.Equal(442, shaft.Shortest(inner, outer, 0, 0, false, true), 1e-9);
        Assert.Equal(420, shaft.Shortest(inner, outer, 0, 0, true, true), 1e-9);
    }

    private static CornerInput Corner(bool withOuter = true) =>
        new()
        {
            Conditions = TrialShaft.AllWell,
            OutputEndFloat = TrialShaft.Mm(0.5),
            PowerUnitTowardsWheel = TrialShaft.Mm(2),
            PowerUnitAwayFromWheel = TrialShaft.Mm(3),
            Readings =
            [
                .. new (double T, double Axial, double Across)[]
                {
                    (-90, 450, Math.Sqrt(8200)),
                    (0, 450, 0),
                    (90, 450, Math.Sqrt(8200)),
                }.Select(p =>
                    TrialShaft.DistanceAndAngle(
                        p.T,
                        p.Axial,
                        p.Across,
                        withOuter ? Math.Atan2(p.Across, p.Axial) / TrialShaft.Degree : double.NaN
                    )
                ),
            ],
        };

    [Fact]
    public void TrailingArm_WithTwoPlungingJoints_HasTheWindowOfBothEndsTogether()
    {
        var joints = new JointsInput { Inner = Joint(15, 15, false), Outer = Joint(10, 10, false) };
        var result = TrialShaft.Solve(Corner(), joints, 1);
        // At ride height, straight: jams at 450 + 14 + 9 less 2.5 towards the wheel (stub float 0.5 with it).
        Assert.Equal(470.5, result.Longest!.Length, 1e-6);
        Assert.Equal(0, result.Longest.Travel, 1e-4);
        // In bump, nothing holding: bottomed at the wheel (+10), inner at its outer stop less 1 and 3 away (14 − 3 = 11); the axes
        // are taken as bent as far apart as both angles allow. The other way round is inner −15 − 3, outer −9: +9 + 18.
        var distance = Math.Sqrt(450 * 450 + 8200);
        var angle = Math.Atan2(Math.Sqrt(8200), 450);
        double Length(double s, double o) =>
            Math.Sqrt(
                distance * distance
                    + s * s
                    + o * o
                    + 2 * (o - s) * 450
                    - 2 * s * o * Math.Cos(2 * angle)
            );
        Assert.Equal(Math.Max(Length(-18, -9), Length(11, 10)), result.Shortest!.Length, 1e-6);
        Assert.True(result.HasWindow);
        var ride = result.Positions.Single(p => p is { Read: true, Travel: 0 });
        Assert.InRange(ride.Drift!.Value, 1, 20);
        Assert.NotNull(ride.OuterPlunge);

        var held = TrialShaft.Solve(
            Corner(),
            new() { Inner = Joint(15, 15, true), Outer = Joint(10, 10, true) },
            1
        );
        Assert.True(held.Shortest!.Length < result.Shortest.Length - 10);
        Assert.Equal(result.Longest.Length, held.Longest!.Length, 1e-9);
    }

    [Fact]
    public void FloatingShaft_ReadWithoutOuterAngles_IsRefusedWithWhatIsMissing()
    {
        var joints = new JointsInput { Inner = Joint(15, 15), Outer = Joint(10, 10) };
        var result = TrialShaft.Solve(Corner(withOuter: false), joints, 1);
        Assert.Null(result.Make);
        Assert.Contains(
            result.Findings,
            f => f is { Code: "floating-not-read", Severity: Severity.Stop }
        );
        var codes = JointsSolver.Solve(joints).Findings.Select(f => f.Code).ToList();
        Assert.Contains("inner-held-unknown", codes);
        Assert.Contains("outer-held-unknown", codes);
    }
}
