using CsCheck;
using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Tests.Length;

namespace Shaftwright.Tests.Joints;

/// <summary>Each kind of joint at its stops, built from vectors that share no algebra with the library.</summary>
public sealed class JointKindTests
{
    private static JointInput CrossGroove(double plunge, double limit) =>
        new()
        {
            Kind = JointKind.CrossGroove,
            PlungeIn = TrialShaft.Mm(plunge),
            PlungeOut = TrialShaft.Mm(plunge),
            AngleLimit = TrialShaft.Deg(limit),
        };

    /// <summary>Bends at (s/2) along the housing's axis; the shaft's own middle is s/2 beyond that, along the shaft.</summary>
    private static double CrossGrooveLength(double axial, double across, double plunge)
    {
        var (bendX, outerX, outerY) = (plunge / 2, axial, across);
        return double.Hypot(outerX - bendX, outerY) - plunge / 2;
    }

    [Fact]
    public void CrossGroove_AtItsStops_IsTheVectorSum() =>
        Gen.Select(Gen.Double[250, 500], Gen.Double[0, 120], Gen.Double[8, 25], Gen.Double[0, 3])
            .Sample(
                (axial, across, plunge, margin) =>
                {
                    var limits = PlungeLimits.Of(CrossGroove(plunge, 25))!;
                    var longest = limits.Longest(axial, across, margin);
                    Assert.Equal(CrossGrooveLength(axial, across, margin - plunge), longest, 1e-9);
                    Assert.Equal(margin - plunge, limits.PlungeAt(longest, axial, across), 1e-9);
                    var shortest = limits.Shortest(axial, across, margin);
                    Assert.Equal(CrossGrooveLength(axial, across, plunge - margin), shortest, 1e-9);
                    Assert.Equal(plunge - margin, limits.PlungeAt(shortest, axial, across), 1e-9);
                },
                iter: 300
            );

    [Theory]
    [InlineData(SlideLine.Shaft)]
    [InlineData(SlideLine.InnerAxis)]
    public void CrossGroove_ReadInBothForms_GivesTheSameWindow(SlideLine along)
    {
        // Swing arm of the check values, three positions.
        (double Travel, double Axial, double Across)[] car =
        [
            (-140, 284, 112),
            (0, 300, 0),
            (140, 284, 112),
        ];
        const double Plunge = 15;
        // The trial shaft stands where its plunge is what it is: found by bisection, not by the library's formula.
        const double Trial = 299;
        TrialReading Read((double Travel, double Axial, double Across) p)
        {
            double low = -60,
                high = 60;
            for (var i = 0; i < 100; i++)
            {
                var s = (low + high) / 2;
                (low, high) =
                    CrossGrooveLength(p.Axial, p.Across, s) > Trial ? (s, high) : (low, s);
            }
            var angle = Math.Atan2(p.Across, p.Axial - low / 2);
            return new()
            {
                Travel = TrialShaft.Mm(p.Travel),
                In = TrialShaft.Mm(
                    along == SlideLine.InnerAxis
                        ? low + Plunge
                        : CrossGrooveLength(p.Axial, p.Across, -Plunge) - Trial
                ),
                Out = TrialShaft.Mm(
                    along == SlideLine.InnerAxis
                        ? Plunge - low
                        : Trial - CrossGrooveLength(p.Axial, p.Across, Plunge)
                ),
                InnerAngle = TrialShaft.Deg(angle / TrialShaft.Degree),
            };
        }
        var joints = TrialShaft.Joints(Plunge, 23, 25) with { Inner = CrossGroove(Plunge, 23) };
        var byDistance = TrialShaft.Solve(
            new()
            {
                Conditions = TrialShaft.AllWell,
                PowerUnitTowardsWheel = TrialShaft.Mm(2),
                PowerUnitAwayFromWheel = TrialShaft.Mm(3),
                Readings =
                [
                    .. car.Select(p => TrialShaft.DistanceAndAngle(p.Travel, p.Axial, p.Across)),
                ],
            },
            joints,
            1
        );
        var byTrial = TrialShaft.Solve(
            new()
            {
                Conditions = TrialShaft.AllWell,
                TrialLength = TrialShaft.Mm(Trial),
                ReadAlong = along,
                PowerUnitTowardsWheel = TrialShaft.Mm(2),
                PowerUnitAwayFromWheel = TrialShaft.Mm(3),
                Readings = [.. car.Select(Read)],
            },
            joints,
            1
        );
        // By hand: at ride height straight, 300 − 2 + 14; in bump and droop the vector sum 3 mm further out.
        Assert.Equal(312, byDistance.Longest!.Length, 1e-6);
        Assert.Equal(CrossGrooveLength(287, 112, 14), byDistance.Shortest!.Length, 1e-6);
        // In and out along the shaft do not quite lie either side of mid-stroke by as much: mid-stroke is off by hundredths.
        var allowed = along == SlideLine.InnerAxis ? 1e-6 : 0.02;
        Assert.Equal(byDistance.Longest.Length, byTrial.Longest!.Length, allowed);
        Assert.Equal(byDistance.Shortest.Length, byTrial.Shortest!.Length, allowed);
        Assert.Equal(byDistance.Shortest.Forbids, byTrial.Shortest.Forbids);
    }

    [Fact]
    public void CrossGroove_TooShort_PassesItsAngleLimitWhereSaid()
    {
        var joints = TrialShaft.Joints(15, 22, 40) with { Inner = CrossGroove(15, 22) };
        var result = TrialShaft.Solve(
            new()
            {
                Conditions = TrialShaft.AllWell,
                Readings =
                [
                    TrialShaft.DistanceAndAngle(-140, 284, 112),
                    TrialShaft.DistanceAndAngle(0, 300, 0),
                    TrialShaft.DistanceAndAngle(140, 284, 112),
                ],
            },
            joints,
            1
        );
        // At the limit the bend stands where 112 across is 22° from the axis; the plunge that puts it there is twice its way.
        var bend = 284 - 112 / Math.Tan(22 * TrialShaft.Degree);
        Assert.Equal(Forbids.InnerAngle, result.Shortest!.Forbids);
        Assert.Equal(CrossGrooveLength(284, 112, 2 * bend), result.Shortest.Length, 1e-6);
    }

    [Fact]
    public void ThreeBenchMeasurements_GiveTheEnvelopeTheyWereTakenFrom()
    {
        foreach (var kind in (JointKind[])[JointKind.PlungingTripod, JointKind.PlungingBall])
        {
            var half = kind == JointKind.PlungingBall ? 0.5 : 1;
            double Lost(double degrees) => 18 * Math.Tan(degrees * half * TrialShaft.Degree);
            var limits = PlungeLimits.Of(
                new()
                {
                    Kind = kind,
                    Stroke = TrialShaft.Mm(40),
                    StrokeAtAngle = TrialShaft.Mm(40 - 2 * Lost(20)),
                    StrokeAngle = TrialShaft.Deg(20),
                    AngleLimit = TrialShaft.Deg(26),
                }
            )!;
            foreach (var angle in (double[])[0, 9, 20, 26])
            {
                Assert.Equal(20 - Lost(angle), limits.In(angle * TrialShaft.Degree), 1e-9);
                Assert.Equal(20 - Lost(angle), limits.Out(angle * TrialShaft.Degree), 1e-9);
            }
        }
    }

    [Fact]
    public void TripodThatLostLessThanItsRollersMust_IsAskedToBeMeasuredAgain()
    {
        var joint = new JointInput
        {
            Kind = JointKind.PlungingTripod,
            Stroke = TrialShaft.Mm(40, 0.5),
            StrokeAtAngle = TrialShaft.Mm(36, 0.5),
            StrokeAngle = TrialShaft.Deg(20, 0.5),
            RollerRadius = TrialShaft.Mm(20, 0.2),
        };
        // 20 mm at 20° costs 7.28 mm at each end; 4 mm of stroke lost is 2 mm at each.
        Assert.Contains(
            JointsSolver.Solve(new() { Inner = joint }).Findings,
            f =>
                f.Code == "inner-loss-below-rule"
                && f.Text.ToString().Contains("7.3", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(
            JointsSolver
                .Solve(new() { Inner = joint with { StrokeAtAngle = TrialShaft.Mm(25.4, 0.5) } })
                .Findings,
            f => f.Code == "inner-loss-below-rule"
        );
    }

    [Fact]
    public void CentreFromTwoPositions_OfMarksOnACircle_IsTheCentreOfTheCircle() =>
        Gen.Select(Gen.Double[20, 120], Gen.Double[60, 300], Gen.Double[10, 45])
            .Sample(
                (near, apart, degrees) =>
                {
                    // Marks turned about the origin; the seat lies 7 mm short of the centre.
                    (double X, double Y) Turned(double r, double a) =>
                        (r * Math.Cos(a), r * Math.Sin(a));
                    double Chord(double r)
                    {
                        var from = Turned(r, 0.1);
                        var to = Turned(r, 0.1 + degrees * TrialShaft.Degree);
                        return double.Hypot(from.X - to.X, from.Y - to.Y);
                    }
                    var swing = new CentreSwing
                    {
                        SeatToMark = TrialShaft.Mm(near - 7),
                        MarksApart = TrialShaft.Mm(apart),
                        ChordNear = TrialShaft.Mm(Chord(near)),
                        ChordFar = TrialShaft.Mm(Chord(near + apart)),
                    };
                    Assert.Equal(7, swing.Centre()!.Value.SeatToCentre, 1e-6);
                },
                iter: 100
            );

    [Fact]
    public void CentreFromTwoPositions_WithRuleReadings_IsAsUnsureAsManyTriesShow()
    {
        var random = new Random(4);
        double Off(double half) => half * (2 * random.NextDouble() - 1);
        CentreSwing Tried(bool exact) =>
            new()
            {
                SeatToMark = TrialShaft.Mm(60 + (exact ? 0 : Off(0.3)), 0.3),
                MarksApart = TrialShaft.Mm(220 + (exact ? 0 : Off(0.5)), 0.5),
                ChordNear = TrialShaft.Mm(45 + (exact ? 0 : Off(0.5)), 0.5),
                ChordFar = TrialShaft.Mm(180 + (exact ? 0 : Off(0.5)), 0.5),
            };
        var stated = Tried(true).Centre()!.Value;
        var scatter = Math.Sqrt(
            Enumerable
                .Range(0, 4000)
                .Select(_ => Tried(false).Centre()!.Value.SeatToCentre - stated.SeatToCentre)
                .Average(d => d * d)
        );
        // 4000 tries know a scatter to 1.1 % (one standard deviation); the second order adds less.
        Assert.InRange(stated.StandardUncertainty / scatter, 0.95, 1.05);
        Assert.Contains(
            JointsSolver
                .Solve(
                    new()
                    {
                        Outer = new()
                        {
                            // A small swing: the ways differ by little, and so does what they tell.
                            Swing = Tried(true) with
                            {
                                ChordNear = TrialShaft.Mm(20, 0.5),
                                ChordFar = TrialShaft.Mm(60, 0.5),
                            },
                        },
                    }
                )
                .Findings,
            f => f.Code == "outer-swing-loose"
        );
    }

    [Fact]
    public void TorqueTable_ThatRises_CountsItsSmallerRowAndIsNamed()
    {
        TorqueAtAngle Row(double degrees, double newtonMetres) =>
            new()
            {
                Angle = TrialShaft.Deg(degrees),
                Torque = Measured<Torque>.Of(newtonMetres, Torque.NewtonMetre),
            };
        var joint = new JointInput
        {
            Kind = JointKind.Fixed,
            TorqueTable = [Row(10, 900), Row(0, 1000), Row(20, 950), Row(30, 500)],
        };
        var curve = TorqueCurve.Of(joint)!;
        double At(double degrees) => curve.At(degrees * TrialShaft.Degree)!.Value / 1000;
        Assert.Equal(1000, At(0), 1e-9);
        Assert.Equal(950, At(5), 1e-9);
        Assert.Equal(900, At(20), 1e-9);
        Assert.Equal(700, At(25), 1e-9);
        Assert.Null(curve.At(31 * TrialShaft.Degree));
        Assert.Contains(
            JointsSolver.Solve(new() { Outer = joint }).Findings,
            f => f.Code == "outer-torque-rises"
        );
    }

    [Fact]
    public void StubThatClampsTheBearing_IsCautionedAtTheJointsAndTakenOverByTheFitting()
    {
        var job = new Job
        {
            Joints = new() { Outer = new() { StubClampsBearing = true } },
            Fit = new(),
        };
        var result = Workflow.Evaluate(job);
        Assert.Contains(
            result.Joints!.Findings,
            f => f is { Code: "outer-stub-clamps-bearing", Severity: Severity.Caution }
        );
        Assert.Equal(
            result.Fit!.Steps.Count,
            Workflow
                .Evaluate(job with { Fit = new() { StubClampsBearing = true } })
                .Fit!.Steps.Count
        );
        Assert.DoesNotContain(
            Workflow
                .Evaluate(
                    job with
                    {
                        Joints = new() { Outer = new() { StubClampsBearing = false } },
                    }
                )
                .Joints!.Findings,
            f => f.Code == "outer-stub-clamps-bearing"
        );
    }
}
