using CsCheck;
using Shaftwright.Corner;
using Shaftwright.Findings;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Length;

/// <summary>Readings that do not agree with each other cost what they should.</summary>
public sealed class MisfitTests
{
    private static TrialReading At(
        double travel,
        double goesIn,
        double comesOut,
        double? inner = null,
        double plusMinus = 0.5
    ) =>
        new()
        {
            Travel = TrialShaft.Mm(travel, 2),
            In = TrialShaft.Mm(goesIn, plusMinus),
            Out = TrialShaft.Mm(comesOut, plusMinus),
            InnerAngle = inner is { } i ? TrialShaft.Deg(i, 1) : null,
        };

    private static readonly TrialReading[] Agreeing =
    [
        At(-90, 18, 13),
        At(-45, 14, 19.5),
        At(0, 13, 22),
        At(45, 15, 18),
        At(90, 20, 10),
    ];

    private static JobResult Evaluate(double? chosen, params TrialReading[] readings) =>
        Workflow.Evaluate(
            new Job
            {
                Corner = new()
                {
                    Conditions = TrialShaft.AllWell,
                    TrialLength = TrialShaft.Mm(400, 0.5),
                    Readings = readings,
                    OutputEndFloat = TrialShaft.Mm(0),
                    PowerUnitTowardsWheel = TrialShaft.Mm(0),
                    PowerUnitAwayFromWheel = TrialShaft.Mm(0),
                },
                Length = new()
                {
                    Margin = TrialShaft.Mm(2),
                    Chosen = chosen is { } c ? TrialShaft.Mm(c) : null,
                },
            }
        );

    private static LengthResult Solve(params TrialReading[] readings) =>
        Evaluate(null, readings).Length!;

    [Theory]
    [InlineData(-90, -8, 39)]
    [InlineData(91, 42, -12)]
    public void Solve_TwoReadingsNoLengthSatisfies_StopsInsteadOfTakingTheirMiddle(
        double travel,
        double goesIn,
        double comesOut
    )
    {
        var result = Evaluate(null, [.. Agreeing, At(travel, goesIn, comesOut)]);
        Assert.Null(result.Length!.Make);
        Assert.True(result.Length.Contradicted);
        var stop = Assert.Single(result.Length.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal("readings-contradict", stop.Code);
        Assert.Contains("before cutting", stop.Action.ToString(), StringComparison.Ordinal);
        Assert.Contains(
            result.Corner!.Findings,
            f => f is { Code: "readings-scatter", Severity: Severity.Caution }
        );
    }

    [Fact]
    public void Solve_TwoReadingsThatOneLengthSatisfies_CautionsAndCountsTheWorse()
    {
        var result = Solve([.. Agreeing, At(0, 8, 27)]);
        Assert.True(result.HasWindow);
        Assert.False(result.Contradicted);
        Assert.Contains(
            result.Findings,
            f => f is { Code: "readings-contradict", Severity: Severity.Caution }
        );
        // 8 in, 2 of them kept unused: no more than 406, whatever the curve makes of 13 and 8.
        Assert.InRange(result.Longest!.Length, 405, 406.001);
        Assert.Contains(
            result.Positions,
            p => p.Read && Math.Abs(p.LeftIn - (408 - result.Make!.Value)) < 1e-9
        );
    }

    [Fact]
    public void Solve_RepeatWithinItsPlusMinus_IsNoContradiction()
    {
        var result = Evaluate(null, [.. Agreeing, At(0, 13.6, 21.5)]);
        Assert.DoesNotContain(result.Length!.Findings, f => f.Code == "readings-contradict");
    }

    [Fact]
    public void Solve_InnerAnglesThatContradict_CountByTheWorse()
    {
        TrialReading[] all = [At(-90, 18, 13, 12), At(0, 13, 22, 1), At(90, 20, 10, 12)];
        var result = Solve([.. all, At(90, 20, 10, 24)]);
        Assert.Contains(result.Findings, f => f.Code == "readings-contradict");
        Assert.True(
            result.Positions.Max(p => p.InnerAngle ?? 0)
                >= Math.Asin(400 * Math.Sin(24 * TrialShaft.Degree) / result.PositionsFor!.Value)
                    - 1e-9
        );
    }

    /// <summary>With four heights, a second-degree curve and no other doubt the residuals are those of one contrast, so that √(χ²/ν)
    /// has a closed form: the readings' own ± is 0.5/√3, with 0.05 that nothing is better than.</summary>
    [Fact]
    public void Scatter_OneReadingOffFourHeights_IsRootOfChiSquareOverFreedom()
    {
        const double Trial = 400,
            Off = 3;
        // Squares of the lengths are one curve exactly; then the third is off.
        double Stop(double t) => Math.Sqrt(416 * 416 - 8 * t + 0.2 * t * t);
        double[] travel = [-90, -30, 30, 90];
        var readings = travel
            .Select(
                (t, k) =>
                    new TrialReading
                    {
                        Travel = TrialShaft.Mm(t),
                        In = TrialShaft.Mm(Stop(t) - Trial + (k == 2 ? Off : 0), 0.5),
                        Out = TrialShaft.Mm(20, 0.5),
                    }
            )
            .ToArray();
        var finding = Assert.Single(
            Evaluate(null, readings).Corner!.Findings,
            f => f.Code == "readings-scatter"
        );
        // The contrast of third order over four even steps: (−1, 3, −3, 1)/√20; the error of the curve at its places, 0.004/6 mm⁻¹ of
        // the same contrast, is evenly spread.
        double[] contrast = [-1, 3, -3, 1];
        var cubic = travel.Select((t, k) => contrast[k] * t * t * t).Sum() / 20;
        var square = 0.0;
        for (var k = 0; k < 4; k++)
        {
            var at = Stop(travel[k]) + (k == 2 ? Off : 0);
            var squareOff =
                (Math.Pow(Stop(30) + Off, 2) - Math.Pow(Stop(30), 2)) * -3 / 20 * contrast[k];
            var fitted = Math.Sqrt(at * at - squareOff);
            var curve = 0.004 / 6 * Math.Abs(cubic * contrast[k]) / (2 * fitted);
            var variance = 0.25 / 3 + curve * curve / 3 + 0.05 * 0.05;
            square += Math.Pow(at - fitted, 2) / variance;
        }
        // The outs lie on their curve and add only freedom.
        var ratio = Math.Sqrt(square / 2);
        Assert.Contains(
            $"{Say.Factor(ratio).In(Display.Metric)} times",
            finding.Text.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Chance_OneReadingOffItsCurve_IsMoreThanByTheSameCurveWellRead()
    {
        TrialReading[] off = [.. Agreeing];
        off[3] = off[3] with { In = TrialShaft.Mm(9, 0.5) };
        var bad = Evaluate(403, off).Length!;
        // The same curve, with readings on it.
        var sets = Evaluate(403, off).Corner!.Sets.Single();
        TrialReading[] smooth =
        [
            .. off.Select(
                (r, k) => r with { In = TrialShaft.Mm(r.In!.Value - sets.Residuals[k], 0.5) }
            ),
        ];
        var good = Evaluate(403, smooth).Length!;
        Assert.Equal(good.Longest!.Length, bad.Longest!.Length, 0.5);
        Assert.True(bad.Longest.StandardUncertainty > 2 * good.Longest.StandardUncertainty);
        Assert.True(bad.ChanceOfContact > good.ChanceOfContact);
    }

    /// <summary>Whatever a second reading at one height says, no length is offered that it forbids by more than what two such
    /// readings may differ by.</summary>
    [Fact]
    public void Solve_AnySecondReading_OffersNoLengthThatItForbids() =>
        Gen.Select(Gen.Int[0, 4], Gen.Double[-20, 20], Gen.Double[-20, 20], Gen.Double[0, 4])
            .Sample(
                (at, inBy, outBy, up) =>
                {
                    var first = Agreeing[at];
                    var again = At(
                        first.Travel!.Value + up,
                        first.In!.Value + inBy,
                        first.Out!.Value + outBy
                    );
                    var result = Solve([.. Agreeing, again]);
                    if (result.Make is not { } make)
                        return;
                    // ±0.5 each, and the heights' ±2 each at a slope of less than 0.5.
                    const double Allowed = 1 + 2.5;
                    Assert.True(make <= 400 + again.In!.Value - 2 + Allowed);
                    Assert.True(make >= 400 - again.Out!.Value + 2 - Allowed);
                },
                iter: 400
            );
}
