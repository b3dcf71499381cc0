using CsCheck;
using MathNet.Numerics.Integration;
using Shaftwright.Tests.Published;
using Shaftwright.Truing.Pressing;

namespace Shaftwright.Tests.Truing.Pressing;

public sealed class RoundBarTests
{
    public static TheoryData<string> Rows() => PublishedFile.Ids("press-stroke");

    [Theory]
    [MemberData(nameof(Rows))]
    public void CurvatureRatio_PublishedRow_Agrees(string id)
    {
        var c = PublishedFile.Load("press-stroke")[id];
        c.Agrees("curvature", RoundBar.CurvatureRatio(c.Number("m")));
    }

    [Fact]
    public void CurvatureRatio_OfAnyMoment_ComesBackThroughTheForwardFormula() =>
        Check.Sample(
            Gen.Double[0, RoundBar.FullRatio * (1 - 1e-7)],
            m => Math.Abs(RoundBar.MomentRatio(RoundBar.CurvatureRatio(m)) - m) < 1e-12
        );

    [Fact]
    public void MomentRatio_AgainstQuadratureOverTheCircle_Agrees() =>
        Check.Sample(
            Gen.Double[1, 60],
            k =>
            {
                // Stress over the half circle, M/My with R = σy = 1: elastic up to 1/k, then flat. y = sin t takes the root
                // out of the end of the integral.
                double Width(double t) => 2 * Math.Cos(t) * Math.Cos(t);
                var edge = Math.Asin(1 / k);
                var elastic = GaussLegendreRule.Integrate(
                    t => k * Math.Sin(t) * Math.Sin(t) * Width(t),
                    0,
                    edge,
                    64
                );
                var flat = GaussLegendreRule.Integrate(
                    t => Math.Sin(t) * Width(t),
                    edge,
                    Math.PI / 2,
                    64
                );
                var expected = 2 * (elastic + flat) / (Math.PI / 4);
                return Math.Abs(RoundBar.MomentRatio(k) - expected) < 1e-11;
            },
            iter: 200
        );

    [Fact]
    public void CurvatureRatio_AtTheFullMomentAndBeyond_IsInfinite()
    {
        Assert.True(double.IsPositiveInfinity(RoundBar.CurvatureRatio(RoundBar.FullRatio)));
        Assert.True(double.IsPositiveInfinity(new RoundBar(25, 500).Curvature(1e9)));
        Assert.InRange(RoundBar.CurvatureRatio(1.6976), 20, 200);
    }

    [Fact]
    public void CasedBar_OfOneStrengthThroughout_IsTheRoundBar() =>
        Check.Sample(
            Gen.Select(
                Gen.Double[10, 60],
                Gen.Double[200, 900],
                Gen.Double[0, 40],
                Gen.Double[0.1, 1.69]
            ),
            t =>
            {
                var (d, y, depth, m) = t;
                var (round, cased) = (new RoundBar(d, y), new CasedBar(d, y, y, depth));
                var moment = m * round.YieldMoment;
                return Math.Abs(cased.Curvature(moment) / round.Curvature(moment) - 1) < 1e-9;
            }
        );

    [Fact]
    public void CasedBar_CaseOverASofterCore_YieldsUnderTheCaseAndLiesBetweenBothBars()
    {
        var cased = new CasedBar(28, 1500, 400, 3);
        var (soft, hard) = (new RoundBar(28, 400), new RoundBar(28, 1500));
        // Strain of the core's yield at its own rim, 11 mm out.
        Assert.Equal(400 / 11.0 * cased.Stiffness / BendSection.Steel, cased.YieldMoment, 1e-6);
        Assert.InRange(cased.FullMoment, soft.FullMoment, hard.FullMoment);
        foreach (var share in new[] { 0.3, 0.7, 0.95, 0.9999 })
        {
            var moment = share * cased.FullMoment;
            var curvature = cased.Curvature(moment);
            Assert.Equal(moment, cased.Moment(curvature), 1e-9 * moment);
            Assert.True(curvature >= moment / cased.Stiffness * (1 - 1e-12));
        }
    }

    [Fact]
    public void CasedBar_AgainstQuadratureOverItsFibres_Agrees()
    {
        const double r = 14,
            rc = 10.5,
            modulus = BendSection.Steel;
        var cased = new CasedBar(2 * r, 1400, 450, r - rc);
        foreach (var curvature in new[] { 1e-4, 2.5e-4, 6e-4, 2e-3 })
        {
            double Stress(double y, double yield) => Math.Min(modulus * curvature * y, yield);
            double Width(double y, double of) => 2 * Math.Sqrt(Math.Max(0, of * of - y * y));
            const int n = 400000;
            double sum = 0;
            for (var i = 0; i < n; i++)
            {
                var y = r * (i + 0.5) / n;
                var core = y < rc ? Width(y, rc) : 0;
                sum +=
                    2
                    * y
                    * r
                    / n
                    * (core * Stress(y, 450) + (Width(y, r) - core) * Stress(y, 1400));
            }
            Assert.Equal(sum, cased.Moment(curvature), 1e-7 * sum);
        }
    }

    [Fact]
    public void Curvature_WithHardening_ComesBackThroughTwoBarsSideBySide() =>
        Check.Sample(
            Gen.Select(Gen.Double[0.1, 4], Gen.Double[0.001, 0.1]),
            t =>
            {
                var (m, h) = t;
                var k = RoundBar.CurvatureRatio(m, h);
                return Math.Abs((1 - h) * RoundBar.MomentRatio(k) + h * k - m) < 1e-11 * m * k;
            }
        );
}
