using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Tests.Strength;

/// <summary>Inputs on which an independent review showed a section credited with more than was measured, or a throw.</summary>
public sealed class ReviewedTests
{
    private static Measured<Distance> Mm(double mm, double plusMinus = 0) =>
        Measured<Distance>.Of(mm, Distance.Mm, plusMinus);

    private static DonorShaft Splined(double? hardTo, double caseDepth = 4, double caseDoubt = 0) =>
        new()
        {
            Name = "d",
            Steel = SteelClass.MediumCarbon,
            Zones =
            [
                new()
                {
                    Kind = ZoneKind.Spline,
                    Until = Mm(60),
                    Diameter = Mm(25),
                    RootDiameter = Mm(23.5),
                },
                new() { Until = Mm(300), Diameter = Mm(30) },
            ],
            Hardened = hardTo is { } to
                ?
                [
                    new()
                    {
                        From = Mm(0),
                        To = Mm(to),
                        CaseDepth = Mm(caseDepth, caseDoubt),
                    },
                ]
                : [],
        };

    private static DonorShaft Plain() =>
        new()
        {
            Name = "p",
            Steel = SteelClass.MediumCarbon,
            Zones = [new() { Until = Mm(300), Diameter = Mm(30) }],
        };

    private static StrengthResult Solve(DonorShaft inner, StrengthInput? strength = null) =>
        Workflow
            .Evaluate(
                new Job
                {
                    Donors = new() { InnerEnd = inner, OuterEnd = Plain() },
                    Cut = new() { OverallLength = Mm(400), InnerCutAt = Mm(200) },
                    Strength = strength,
                }
            )
            .Strength!;

    private static double SplineLow(DonorShaft shaft) =>
        Solve(shaft).Sections.Single(s => s.Kind == SectionKind.SplineRoot).YieldTorque.Low;

    [Fact]
    public void Spline_HardenedOnlyInPart_IsJudgedWhereItIsSoft()
    {
        Assert.Equal(SplineLow(Splined(29)), SplineLow(Splined(35)), 1e-6);
        Assert.True(SplineLow(Splined(60)) > SplineLow(Splined(35)));
    }

    [Fact]
    public void CaseDepth_WithDoubt_LowersTheLowEnd() =>
        Assert.True(SplineLow(Splined(60, 4, 3.5)) < SplineLow(Splined(60, 4, 0)));

    [Fact]
    public void Diameter_WithDoubt_WidensEverySectionByTheCubeOfItsEnds()
    {
        var sure = Solve(Splined(null) with { Zones = Bar(0) }).Sections;
        var unsure = Solve(Splined(null) with { Zones = Bar(0.5) }).Sections;
        Assert.Equal(sure.Count, unsure.Count);
        foreach (
            var (a, b) in sure.Zip(unsure)
                .Where(p => p.First is { End: ShaftEnd.Inner, Kind: not SectionKind.FusedRing })
        )
        {
            Assert.Equal(a.YieldTorque.Low * Math.Pow(27.5 / 28, 3), b.YieldTorque.Low, 1e-6);
            Assert.Equal(a.YieldTorque.High * Math.Pow(28.5 / 28, 3), b.YieldTorque.High, 1e-6);
        }
        Assert.True(
            Ring(unsure).YieldTorque.Low < Ring(sure).YieldTorque.Low
                && Ring(unsure).YieldTorque.High > Ring(sure).YieldTorque.High
        );

        static IReadOnlyList<ShaftZone> Bar(double doubt) =>
            [new() { Until = Mm(300), Diameter = Mm(28, doubt) }];
        static SectionMargin Ring(IEnumerable<SectionMargin> sections) =>
            sections.Single(s => s.Kind == SectionKind.FusedRing);
    }

    [Fact]
    public void FusionDepth_ThatMayBeNothing_IsCreditedWithNothing()
    {
        var ring = Solve(
            Plain(),
            new StrengthInput { FusionDepth = Mm(0.8, 1), FusionFromSample = true }
        )
            .Sections.Single(s => s.Kind == SectionKind.FusedRing);
        Assert.Equal(0, ring.YieldTorque.Low, 1e-9);
        Assert.True(ring.YieldTorque.High > 0);
    }

    [Fact]
    public void CutThatLeavesNothingOfAPiece_IsAnsweredAndNotThrown()
    {
        var result = Workflow.Evaluate(
            new Job
            {
                Donors = new() { InnerEnd = Plain(), OuterEnd = Plain() },
                Cut = new()
                {
                    OverallLength = Mm(100),
                    InnerCutAt = Mm(104),
                    RootGap = Mm(0),
                    Shrinkage = Mm(5),
                },
            }
        );
        Assert.Null(result.Cut!.Made);
        Assert.Null(result.Strength);
        Assert.Contains(result.Findings, f => f is { Stage: Stage.Cut, Severity: Severity.Stop });
    }
}
