using CsCheck;
using MathNet.Numerics;
using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Tests.Length;

namespace Shaftwright.Tests.Corner;

public sealed class CornerSolverTests
{
    private static CornerResult Solve(CornerInput corner) =>
        Workflow.Evaluate(new Job { Corner = corner }).Corner!;

    private static TrialReading InOut(double travel, double goesIn, double comesOut) =>
        new()
        {
            Travel = TrialShaft.Mm(travel),
            In = TrialShaft.Mm(goesIn),
            Out = TrialShaft.Mm(comesOut),
        };

    [Theory]
    [InlineData("L", "the wheel straight", "full right lock")]
    [InlineData("SL", "full right lock")]
    [InlineData("LR", "the wheel straight")]
    [InlineData("SR", "full left lock")]
    [InlineData("S")]
    [InlineData("SLR")]
    public void Findings_ReadOnALock_NameWhatWasNotRead(string read, params string[] missing)
    {
        var steering = read.Select(c =>
            c == 'L' ? Steering.FullLeft
            : c == 'R' ? Steering.FullRight
            : Steering.Straight
        );
        var result = Solve(
            new()
            {
                TrialLength = TrialShaft.Mm(400),
                Readings =
                [
                    .. steering.SelectMany(s =>
                        new[] { -80.0, 0, 80 }.Select(t => InOut(t, 15, 15) with { Steering = s })
                    ),
                ],
            }
        );
        var said = result.Findings.Where(f => f.Code == "steering-not-read").ToList();
        Assert.Equal(missing.Length == 0 ? 0 : 1, said.Count);
        foreach (var finding in said)
        {
            Assert.Equal(Severity.Caution, finding.Severity);
            Assert.StartsWith(
                $"Not read: {string.Join(" and ", missing)}.",
                finding.Text.ToString(),
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public void Residuals_OfNoisyReadings_AreThoseOfAGeneralLeastSquaresLibrary() =>
        Gen.Select(Gen.Double[-2, 2].Array[6], Gen.Int[4, 6])
            .Sample(
                (noise, count) =>
                {
                    double[] travel = [-80, -45, 0, 20, 55, 85];
                    travel = travel[..count];
                    const double Trial = 412;
                    double[] length =
                    [
                        .. travel.Select((t, k) => 425 + 0.02 * t - 0.0006 * t * t + noise[k]),
                    ];
                    var corner = new CornerInput
                    {
                        TrialLength = TrialShaft.Mm(Trial),
                        Readings = [.. travel.Select((t, k) => InOut(t, length[k] - Trial, 15))],
                    };
                    var set = Assert.Single(Solve(corner).Sets);
                    var degree = count >= 5 ? 3 : 2;
                    Assert.Equal(degree, set.Degree);
                    var coefficients = MathNet.Numerics.Fit.Polynomial(
                        [.. travel.Select(t => t / 100)],
                        [.. length.Select(l => l * l)],
                        degree
                    );
                    for (var k = 0; k < count; k++)
                        Assert.Equal(
                            length[k]
                                - Math.Sqrt(Polynomial.Evaluate(travel[k] / 100, coefficients)),
                            set.Residuals[k],
                            1e-7
                        );
                },
                iter: 200
            );

    [Fact]
    public void EqualReadingsAtBothEnds_AreNotFlattenedBetween()
    {
        // A shape-preserving spline through −90, 0, +90 stays at the ends' value near the ends; a true arc bulges beyond it.
        var corner = new CornerInput
        {
            TrialLength = TrialShaft.Mm(450),
            Readings =
            [
                InOut(-90, 12, 10),
                InOut(-30, 16.1, 6),
                InOut(30, 16.1, 6),
                InOut(90, 12, 10),
            ],
        };
        var result = TrialShaft.Solve(
            corner with
            {
                Conditions = TrialShaft.AllWell,
                Readings = [.. corner.Readings, InOut(0, 16.6, 5.4)],
            },
            null,
            0
        );
        // Shortest allowed is largest where "out" is smallest: at ride height the curve dips below the neighbouring equal readings.
        Assert.InRange(result.Shortest!.Travel, -5, 5);
    }

    [Fact]
    public void OddReading_AmongFive_IsNamed()
    {
        double[] travel = [-80, -40, 0, 40, 80];
        var corner = new CornerInput
        {
            TrialLength = TrialShaft.Mm(412),
            Readings =
            [
                .. travel.Select(t => new TrialReading
                {
                    Travel = TrialShaft.Mm(t, 1),
                    In = TrialShaft.Mm(14 - 0.0006 * t * t + (t == 40 ? 6 : 0), 0.5),
                    Out = TrialShaft.Mm(12, 0.5),
                }),
            ],
        };
        Assert.Contains(
            Solve(corner).Findings,
            f =>
                f.Code == "odd-reading"
                && f.Text.ToString().Contains("40.0\u00a0mm into bump", StringComparison.Ordinal)
        );
        var straight = corner with
        {
            Readings =
            [
                .. corner.Readings.Select(
                    (r, k) => k == 3 ? r with { In = TrialShaft.Mm(14 - 0.0006 * 1600, 0.5) } : r
                ),
            ],
        };
        Assert.DoesNotContain(Solve(straight).Findings, f => f.Code == "odd-reading");
    }

    [Fact]
    public void Conditions_WhenMissing_AreEachNamed()
    {
        var corner = new CornerInput
        {
            TrialLength = TrialShaft.Mm(412),
            Readings = [InOut(-80, 10, 10), InOut(0, 10, 10), InOut(80, 10, 10)],
        };
        var text = Assert
            .Single(Solve(corner).Findings, f => f.Code == "conditions-not-recorded")
            .Text.ToString();
        foreach (var word in new[] { "spring", "roll bar", "driver", "pushed home", "clip" })
            Assert.Contains(word, text, StringComparison.Ordinal);
        Assert.DoesNotContain(
            Solve(corner with { Conditions = TrialShaft.AllWell }).Findings,
            f => f.Code.StartsWith("conditions", StringComparison.Ordinal)
        );
        var wrong = Solve(
            corner with
            {
                Conditions = TrialShaft.AllWell with { ClipFelt = false },
            }
        );
        Assert.Equal(
            Severity.Caution,
            Assert.Single(wrong.Findings, f => f.Code == "conditions-wrong").Severity
        );
    }

    [Theory]
    [InlineData(true, false, "the inner angle: a distance alone")]
    [InlineData(false, true, "the distance between")]
    public void HalfAReading_IsLeftOutAndSaysWhatItLacks(bool distance, bool angle, string lacks)
    {
        var corner = new CornerInput
        {
            Readings =
            [
                new TrialReading
                {
                    Travel = TrialShaft.Mm(0),
                    Distance = distance ? TrialShaft.Mm(440) : null,
                    InnerAngle = angle ? TrialShaft.Deg(5) : null,
                },
            ],
        };
        var result = Solve(corner);
        Assert.Empty(result.Sets);
        Assert.Contains(
            lacks,
            Assert.Single(result.Findings, f => f.Code == "incomplete-reading").Text.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ReadingsOnlyInBump_AreCautioned_AndFarFromRideHeight_AreStopped()
    {
        var corner = new CornerInput
        {
            Conditions = TrialShaft.AllWell,
            TrialLength = TrialShaft.Mm(412),
            Readings = [InOut(40, 10, 10), InOut(60, 10, 10), InOut(90, 10, 10)],
        };
        var result = Workflow.Evaluate(new Job { Corner = corner });
        Assert.Contains(result.Corner!.Findings, f => f.Code == "one-sided-travel");
        Assert.Contains(
            result.Length!.Findings,
            f => f is { Code: "no-ride-height", Severity: Severity.Stop }
        );
        Assert.Null(result.Length.Make);
    }

    [Fact]
    public void TwoHeights_GiveNoLength()
    {
        var corner = new CornerInput
        {
            TrialLength = TrialShaft.Mm(412),
            Readings = [InOut(0, 10, 10), InOut(60, 10, 10)],
        };
        var result = Workflow.Evaluate(new Job { Corner = corner });
        Assert.Contains(
            result.Length!.Findings,
            f => f is { Code: "too-few-heights", Severity: Severity.Stop }
        );
        Assert.Contains(result.Corner!.Findings, f => f.Code == "not-fitted");
    }

    [Fact]
    public void LockReadings_AtOneHeightOnly_StillBind()
    {
        var straight = new CornerInput
        {
            Conditions = TrialShaft.AllWell,
            TrialLength = TrialShaft.Mm(412),
            Readings = [InOut(-80, 10, 10), InOut(0, 10, 10), InOut(80, 10, 10)],
        };
        var turned = straight with
        {
            Readings =
            [
                .. straight.Readings,
                InOut(0, 4, 12) with
                {
                    Steering = Steering.FullLeft,
                },
            ],
        };
        var a = TrialShaft.Solve(straight, null, 1);
        var b = TrialShaft.Solve(turned, null, 1);
        Assert.Equal(421, a.Longest!.Length, 1e-6);
        Assert.Equal(415, b.Longest!.Length, 1e-6);
        Assert.Equal(Steering.FullLeft, b.Longest.Steering);
        Assert.Contains(
            "full left lock",
            PositionWords.At(b.Longest.Travel, b.Longest.Steering).ToString(),
            StringComparison.Ordinal
        );
    }
}
