using Shaftwright.Corner;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Length;

/// <summary>Cars drawn within the doubt of everything measured: same bits however sliced, and what closed forms and first order say.</summary>
public sealed class LengthCarsTests
{
    /// <summary>A straight line of centres of 450 mm at every height: the window is 450 ± plunge, exactly.</summary>
    private static Job Straight(
        double plunge,
        double inOff,
        double outOff,
        double chosen,
        double making = 0
    ) =>
        new()
        {
            Corner = new()
            {
                Conditions = TrialShaft.AllWell,
                Readings =
                [
                    .. new[] { -60.0, 0, 60 }.Select(t => TrialShaft.DistanceAndAngle(t, 450, 0)),
                ],
            },
            Joints = new()
            {
                Inner = new()
                {
                    Kind = JointKind.PlungingBall,
                    PlungeIn = TrialShaft.Mm(plunge, inOff),
                    PlungeOut = TrialShaft.Mm(plunge, outOff),
                },
                Outer = new() { Kind = JointKind.Fixed },
            },
            Length = new()
            {
                Margin = TrialShaft.Mm(2),
                Chosen = TrialShaft.Mm(chosen),
                Making = TrialShaft.Mm(making),
            },
        };

    /// <summary>A trailing arm read with a tape and a gauge; lopsided travel when asked, so that one height binds each side.</summary>
    private static Job Read(double droop, double bump, double give = 1)
    {
        TrialReading At(double t)
        {
            var exact = TrialShaft.DistanceAndAngle(
                t,
                450,
                Math.Sqrt(t * t + Math.Pow(410 - Math.Sqrt(410 * 410 - t * t), 2))
            );
            return exact with
            {
                Travel = TrialShaft.Mm(t, 1 * give),
                Distance = TrialShaft.Mm(exact.Distance!.Value, 0.8 * give),
                InnerAngle = TrialShaft.Deg(
                    exact.InnerAngle!.Value / TrialShaft.Degree,
                    0.3 * give
                ),
            };
        }
        return new()
        {
            Corner = new()
            {
                Conditions = TrialShaft.AllWell,
                Readings = [At(droop), At(0.4 * droop), At(2), At(0.5 * bump), At(bump)],
            },
            Joints = new()
            {
                Inner = new()
                {
                    Kind = JointKind.PlungingTripod,
                    PlungeIn = TrialShaft.Mm(18, 0.5 * give),
                    PlungeOut = TrialShaft.Mm(18, 0.5 * give),
                    RollerRadius = TrialShaft.Mm(19, 0.3 * give),
                    AngleLimit = TrialShaft.Deg(24),
                },
                Outer = new() { Kind = JointKind.Fixed, AngleLimit = TrialShaft.Deg(40) },
            },
            Length = new() { Margin = TrialShaft.Mm(1), Making = TrialShaft.Mm(0) },
        };
    }

    private static LengthSpread Run(Job job, long cars, ulong seed = 1)
    {
        var drawn = Workflow.Evaluate(job).CarsDrawn(seed)!;
        return drawn.Answer(drawn.Run(0, cars));
    }

    [Fact]
    public void Slices_OfOneRun_GiveTheSameBitsHoweverItIsCut()
    {
        const long Cars = 211;
        var drawn = Workflow.Evaluate(Read(-80, 60)).CarsDrawn(99)!;
        string Cut(int slices)
        {
            var all = drawn.Blank();
            // Backwards, so that the order is not the same either.
            for (var i = slices - 1; i >= 0; i--)
                all.Add(drawn.Run(Cars * i / slices, Cars * (i + 1) / slices));
            return all.ToText();
        }
        var whole = Cut(1);
        Assert.Equal(whole, Cut(2));
        Assert.Equal(whole, Cut(7));
        // Another object, another seed.
        var again = Workflow.Evaluate(Read(-80, 60)).CarsDrawn(99)!;
        Assert.Equal(whole, again.Run(0, Cars).ToText());
        var other = Workflow.Evaluate(Read(-80, 60)).CarsDrawn(98)!;
        Assert.NotEqual(whole, other.Run(0, Cars).ToText());
    }

    [Fact]
    public void Slices_RunOnSeveralThreads_GiveTheSameBits()
    {
        var drawn = Workflow.Evaluate(Read(-80, 60)).CarsDrawn(5)!;
        var slices = new CarsTally[7];
        Parallel.For(0, 7, i => slices[i] = drawn.Run(i * 20, i * 20 + 20));
        var all = drawn.Blank();
        foreach (var slice in slices)
            all.Add(slice);
        Assert.Equal(drawn.Run(0, 140).ToText(), all.ToText());
    }

    [Fact]
    public void Slice_WrittenAndRead_IsTheSame_AndAnotherRunsIsRefused()
    {
        var drawn = Workflow.Evaluate(Read(-80, 60)).CarsDrawn(5)!;
        var slice = drawn.Run(3, 40);
        var read = drawn.Blank();
        Assert.True(CarsTally.TryRead(slice.ToText(), read));
        Assert.Equal(slice.ToText(), read.ToText());
        var other = Workflow.Evaluate(Straight(15, 1, 1, 450)).CarsDrawn(5)!;
        Assert.False(CarsTally.TryRead(slice.ToText(), other.Blank()));
        Assert.Throws<ArgumentException>(() => other.Blank().Add(slice));
        foreach (var text in (string[])["", "1;2;3", slice.ToText().Replace(':', '!')])
            Assert.False(CarsTally.TryRead(text, drawn.Blank()));
    }

    [Fact]
    public void ChanceOfPassing_OneEvenlySpreadPlunge_IsTheShareOfItsSpan()
    {
        // Longest is 450 + 15 ± 1.5 − 2; 463.2 lies 0.2 beyond the middle of a span of 3: (1.5 + 0.2)/3 of the cars. The curve
        // between the readings may take off up to 0.06 mm, 0.015 on average: half a standard deviation of the count.
        var spread = Run(Straight(15, 1.5, 0, 463.2), 3000);
        Assert.InRange(
            spread.ChanceOfViolation.Value - 1.7 / 3,
            -4 * spread.ChanceOfViolation.StandardUncertainty,
            4 * spread.ChanceOfViolation.StandardUncertainty
        );
        Assert.Equal(spread.ChanceOfViolation, spread.ChanceOfPlunge);
        Assert.Equal(0, spread.ChanceOfContact.Value);
        Assert.Equal(0, spread.ChanceOfInnerAngle.Value);
    }

    [Fact]
    public void ChanceOfPassing_WithMakingInTheBudget_IsThatOfTheSum()
    {
        // Plunge ± 1.5 and making ± 1.5 make a triangle ± 3. Room to the middle: 463 − 461.5 = 1.5: (3 − 1.5)²/(2·9) = 1/8.
        var spread = Run(Straight(15, 1.5, 0, 461.5, making: 1.5), 3000);
        Assert.InRange(
            spread.ChanceOfViolation.Value - 0.125,
            -4 * spread.ChanceOfViolation.StandardUncertainty,
            4 * spread.ChanceOfViolation.StandardUncertainty
        );
    }

    [Fact]
    public void BalancedLength_OfTwoEvenlySpreadPlunges_HasTheSpreadOfHalfTheirDifference()
    {
        var spread = Run(Straight(15, 2, 1, 450), 3000);
        // (In − Out)/2: √(2² + 1²)/(2√3), shares 4/5 and 1/5. 3000 cars know a spread to 1.3 %; a share s to 2√s(1 − s)/√n, 0.007.
        var expected = Math.Sqrt(5) / (2 * Math.Sqrt(3));
        Assert.InRange(spread.StandardDeviation / expected, 0.965, 1.035);
        Assert.InRange(spread.Mean, 450 - 4 * expected / 54, 450 + 4 * expected / 54);
        Assert.Equal("plungeIn", spread.Shares[0].Field);
        Assert.InRange(spread.Shares[0].ShareOfVariance, 0.78, 0.82);
        Assert.Equal(0.8, spread.Shares[0].FirstOrderShare, 1e-3);
        Assert.InRange(spread.Shares[1].ShareOfVariance, 0.18, 0.22);
        Assert.Equal(expected, spread.FirstOrderUncertainty, 1e-3);
        Assert.Null(spread.Disagreement);
        // 95 of 100: from the trapezoid of half-widths 1 and 1/2: flat to 0.5, sides to 1.5, tail 2.5 % at 1.5 − √(2·0.025·1·2).
        Assert.InRange(spread.High - 450, 1.184 - 0.07, 1.184 + 0.07);
        Assert.InRange(450 - spread.Low, 1.184 - 0.07, 1.184 + 0.07);
    }

    [Fact]
    public void Spread_WhereOneHeightBindsEachSide_IsThatOfFirstOrder()
    {
        // The distance along the axis grows all the way up: full droop binds the long side and full bump the short one, both read.
        TrialReading At(double t)
        {
            var exact = TrialShaft.DistanceAndAngle(t, 450 + 0.12 * t, 90 + 0.4 * t);
            return exact with
            {
                Travel = TrialShaft.Mm(t, 1),
                Distance = TrialShaft.Mm(exact.Distance!.Value, 0.8),
                InnerAngle = TrialShaft.Deg(exact.InnerAngle!.Value / TrialShaft.Degree, 0.3),
            };
        }
        var job = Read(-80, 80);
        var spread = Run(
            job with
            {
                Corner = job.Corner! with { Readings = [At(-80), At(0), At(80)] },
                Joints = job.Joints! with
                {
                    Inner = job.Joints.Inner! with
                    {
                        PlungeIn = TrialShaft.Mm(26, 0.5),
                        PlungeOut = TrialShaft.Mm(26, 0.5),
                    },
                },
            },
            3000
        );
        // 3000 cars know a spread to 1.3 %, and a share s to 2√s(1 − s)/√3000, 0.014 at most.
        Assert.InRange(spread.StandardDeviation / spread.FirstOrderUncertainty, 0.95, 1.05);
        Assert.Null(spread.Disagreement);
        Assert.InRange(spread.Shares.Sum(s => s.FirstOrderShare), 0.95, 1.0001);
        foreach (var share in spread.Shares)
            Assert.InRange(share.ShareOfVariance - share.FirstOrderShare, -0.06, 0.06);
    }

    [Fact]
    public void Spread_WhereTheBindingHeightChangesFromCarToCar_IsSaidToDiffer()
    {
        // Bump and droop bind the short end alike: the larger of two as likely values spreads less than either.
        var spread = Run(Read(-90, 90, give: 2), 1500);
        Assert.True(spread.StandardDeviation < 0.95 * spread.FirstOrderUncertainty);
        Assert.NotNull(spread.Disagreement);
    }

    [Fact]
    public void TwiceAsGoodAReading_OfWhatMattersMost_LowersTheChanceOfPassing()
    {
        var spread = Run(Straight(15, 1.5, 0.2, 462.2), 1500);
        var plunge = spread.Shares.Single(s => s.Field == "plungeIn");
        // Room 0.8 of ± 1.5: (1.5 − 0.8)/3 of the cars; of ± 0.75, none.
        Assert.InRange(spread.ChanceOfViolation.Value, 0.2, 0.27);
        Assert.Equal(0, plunge.ChanceIfTwiceAsGood);
        var other = spread.Shares.Single(s => s.Field == "plungeOut");
        Assert.True(
            other.ChanceIfTwiceAsGood is null
                || Math.Abs(other.ChanceIfTwiceAsGood.Value - spread.ChanceOfViolation.Value)
                    < 1e-12
        );
    }

    [Fact]
    public void CarsOfAJobWithoutALength_AreNotDrawn()
    {
        Assert.Null(Workflow.Evaluate(new Job()).CarsDrawn(1));
        Assert.Null(Workflow.Evaluate(new Job { Corner = new() }).CarsDrawn(1));
        // No window on paper, but it is close: some cars have one.
        var none = Straight(2, 1, 1, 450) with
        {
            Length = new() { Margin = TrialShaft.Mm(2.2) },
        };
        var spread = Run(none, 1000);
        Assert.InRange(spread.ChanceOfNoWindow.Value, 0.5, 0.95);
    }

    [Fact]
    public void OuterAngle_NearItsLimit_IsCountedByItself()
    {
        var job = Read(-80, 60);
        job = job with
        {
            Corner = job.Corner! with
            {
                Readings =
                [
                    .. job.Corner.Readings.Select(r =>
                        r with
                        {
                            OuterAngle = TrialShaft.Deg(20 + r.Travel!.Value / 30, 1),
                        }
                    ),
                ],
            },
            Joints = job.Joints! with
            {
                Outer = job.Joints.Outer! with { AngleLimit = TrialShaft.Deg(22) },
            },
        };
        var spread = Run(job, 1000);
        // It reaches 22° at the top of the travel, read to ± 1°: about every other car.
        Assert.InRange(spread.ChanceOfOuterAngle.Value, 0.35, 0.75);
        Assert.True(spread.ChanceOfViolation.Value >= spread.ChanceOfOuterAngle.Value);
    }
}
