using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.Length;

/// <summary>The ways of picking one length out of the window.</summary>
public sealed class LengthChoiceTests
{
    private static Job Car(
        (double Travel, double Axial, double Across)[] car,
        double plunge,
        Func<TrialReading, TrialReading>? read = null,
        Aim aim = Aim.Balanced
    ) =>
        new()
        {
            Corner = new()
            {
                Conditions = TrialShaft.AllWell,
                Readings =
                [
                    .. car.Select(p => TrialShaft.DistanceAndAngle(p.Travel, p.Axial, p.Across))
                        .Select(read ?? (r => r)),
                ],
            },
            Joints = TrialShaft.Joints(plunge, 40, 40),
            Length = new() { Margin = TrialShaft.Mm(1), Aim = aim },
        };

    private static readonly (double, double, double)[] s_trailing =
    [
        (-90, 450, Math.Sqrt(8200)),
        (0, 450, 0),
        (90, 450, Math.Sqrt(8200)),
    ];

    [Theory]
    [InlineData("trailing-arm", 450, 0)]
    [InlineData("parallel-wishbones", 388, 84)]
    [InlineData("swing-arm", 284, 112)]
    public void Centred_OfThePublishedCars_IsThePublishedLength(
        string id,
        double axial,
        double across
    )
    {
        var published = PublishedFile.Load("kinematics")[id];
        var centred = published.Expected("centred");
        (double, double, double)[] car =
            id == "trailing-arm"
                ? s_trailing
                : [(-100, axial, across), (0, centred, 0), (100, axial, across)];
        var result = Workflow.Evaluate(Car(car, 15)).Length!;
        published.Agrees("centred", result.Choices.Single(c => c.Aim == Aim.Centred).Length);
        if (id == "trailing-arm")
            published.Agrees("balanced", result.Choices[0].Length);
        Assert.Equal(result.Make!.Value, result.Choices[0].Length);
    }

    [Fact]
    public void Centred_ByInAndOut_IsWhereAsMuchIsLeftEachWayAtRideHeight()
    {
        var job = new Job
        {
            Corner = new()
            {
                Conditions = TrialShaft.AllWell,
                TrialLength = TrialShaft.Mm(452),
                Readings =
                [
                    .. s_trailing.Select(p =>
                        TrialShaft.InAndOut(p.Item1, p.Item2, p.Item3, 452, 15, 15)
                    ),
                ],
            },
            Length = new() { Margin = TrialShaft.Mm(1), Aim = Aim.Centred },
        };
        var result = Workflow.Evaluate(job).Length!;
        Assert.Equal(450, result.Make!.Value, 1e-6);
        var ride = result.Positions.Single(p => p is { Read: true, Travel: 0 });
        Assert.Equal(ride.LeftIn, ride.LeftOut, 1e-6);
    }

    [Fact]
    public void EquallySure_LiesNearerTheEndThatIsKnownBetter()
    {
        // Straight line of centres, plunge in known to ± 3 and out to ± 1: ends 464 and 436, three parts to one.
        var job = Car([(-60, 450, 0), (0, 450, 0), (60, 450, 0)], 15);
        job = job with
        {
            Joints = job.Joints! with
            {
                Inner = job.Joints.Inner! with
                {
                    PlungeIn = TrialShaft.Mm(15, 3),
                    PlungeOut = TrialShaft.Mm(15, 1),
                },
            },
        };
        var choices = Workflow.Evaluate(job).Length!.Choices;
        var sure = choices.Single(c => c.Aim == Aim.EquallySure);
        // The curve between the readings adds 0.06/√3 to each end, which moves this by hundredths.
        Assert.Equal(436 + 28.0 / 4, sure.Length, 0.02);
        // It stands 3/4 with the short end (u 1/√3) and 1/4 with the long one (u 3/√3).
        Assert.Equal(
            double.Hypot(0.75 / Math.Sqrt(3), 0.25 * 3 / Math.Sqrt(3)),
            sure.StandardUncertainty,
            0.01
        );
        Assert.Equal(450, choices.Single(c => c.Aim == Aim.Balanced).Length, 1e-6);
    }

    [Fact]
    public void MostLikely_HasTheLeastChanceOfAllLengthsTried()
    {
        var job = Car(
            s_trailing,
            7,
            r =>
                r with
                {
                    Distance = TrialShaft.Mm(r.Distance!.Value, r.Travel!.Value > 0 ? 3 : 0.5),
                },
            Aim.MostLikely
        );
        var result = Workflow.Evaluate(job).Length!;
        var likely = result.Choices.Single(c => c.Aim == Aim.MostLikely);
        Assert.Equal(likely.Length, result.Make);
        Assert.Equal(likely.ChanceOfViolation, result.ChanceOfViolation, 1e-12);
        Assert.All(
            result.Choices,
            c => Assert.True(c.ChanceOfViolation >= likely.ChanceOfViolation - 1e-6)
        );
        for (var i = 1; i < 60; i++)
        {
            var length =
                result.Shortest!.Length
                + (result.Longest!.Length - result.Shortest.Length) * i / 60;
            var chosen = Workflow
                .Evaluate(job with { Length = job.Length! with { Chosen = TrialShaft.Mm(length) } })
                .Length!;
            Assert.True(chosen.ChanceOfViolation >= likely.ChanceOfViolation - 1e-6);
        }
    }

    [Fact]
    public void Making_RougherThanTheTolerance_IsSaidAndRaisesTheChance()
    {
        var job = Car(
            s_trailing,
            7,
            r => r with { Distance = TrialShaft.Mm(r.Distance!.Value, 1) }
        );
        var without = Workflow.Evaluate(job).Length!;
        var with = Workflow
            .Evaluate(job with { Length = job.Length! with { Making = TrialShaft.Mm(3) } })
            .Length!;
        Assert.True(with.ChanceOfViolation > without.ChanceOfViolation);
        Assert.Contains(
            with.Findings,
            f => f is { Code: "making-too-rough", Severity: Severity.Caution }
        );
        Assert.DoesNotContain(without.Findings, f => f.Code == "making-too-rough");
    }

    [Fact]
    public void TightestPlace_BetweenReadings_StandsAmongThePositions()
    {
        // Read at −70, 10 and 90: the long side binds at ride height, where nothing was read.
        (double, double, double)[] car =
        [
            .. new[] { -70.0, 10, 90 }.Select(t =>
                (t, 450.0, Math.Sqrt(t * t + Math.Pow(410 - Math.Sqrt(410 * 410 - t * t), 2)))
            ),
        ];
        var result = Workflow.Evaluate(Car(car, 15)).Length!;
        var least = result.Positions.Min(p => p.LeftIn);
        var fine = result.Longest!.Travel;
        Assert.InRange(fine, -2, 2);
        Assert.Contains(
            result.Positions,
            p => !p.Read && Math.Abs(p.Travel - fine) < 0.01 && p.LeftIn == least
        );
        Assert.Equal(least, result.Positions.Min(p => p.LeftOut), 1e-6);
    }
}
