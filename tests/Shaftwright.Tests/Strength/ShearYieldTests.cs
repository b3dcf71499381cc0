using CsCheck;
using Shaftwright.Donors;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.Strength;

public sealed class ShearYieldTests
{
    public static TheoryData<string> Rows() => PublishedFile.Ids("torsional-yield");

    [Theory]
    [MemberData(nameof(Rows))]
    public void OfHardness_PublishedRow_Agrees(string id)
    {
        var c = PublishedFile.Load("torsional-yield")[id];
        var yield = ShearYield.OfHardness(c.Input<Hardness>("hardness").Value);
        c.Agrees("torsionalYield", yield);
        // The rule beside the table: torsional yield is 0.6 of the tensile one, to 1 %.
        if (c.Expects("tensileYield"))
            Assert.InRange(yield / (0.6 * c.Expected("tensileYield")), 0.99, 1.01);
    }

    [Fact]
    public void OfHardness_BeyondTheTable_CreditsNothingMore()
    {
        Assert.Equal(966, ShearYield.OfHardness(60));
        Assert.Equal(221, ShearYield.OfHardness(-5));
    }

    [Fact]
    public void OfHardness_HarderSteel_IsNeverWeaker() =>
        Check.Sample(
            Gen.Select(Gen.Double[-5, 65], Gen.Double[0, 10]),
            t => ShearYield.OfHardness(t.Item1 + t.Item2) >= ShearYield.OfHardness(t.Item1)
        );

    [Theory]
    [InlineData(SteelClass.MediumCarbon)]
    [InlineData(SteelClass.QuenchedTemperedAlloy)]
    public void OfCore_UnknownSteel_SpansEveryClass(SteelClass steel)
    {
        var unknown = ShearYield.OfCore(new(SteelClass.Unknown, null, null));
        var named = ShearYield.OfCore(new(steel, null, null));

        Assert.True(unknown.Low <= named.Low && unknown.High >= named.High);
        Assert.True(named.Low < named.High);
    }

    [Fact]
    public void OfCore_ClassOnly_IsTensileYieldOverRootThree()
    {
        var band = ShearYield.OfCore(new(SteelClass.MediumCarbon, null, null));

        Assert.Equal(310 / Math.Sqrt(3), band.Low, 9);
        Assert.Equal(530 / Math.Sqrt(3), band.High, 9);
    }

    [Fact]
    public void OfCase_NotMeasured_IsFiftyToFiftyTwoRockwell()
    {
        Assert.Equal(new Band(917, 966), ShearYield.OfCase(new(SteelClass.Unknown, null, null)));
        Assert.Equal(
            new Band(690, 917),
            ShearYield.OfCase(new(SteelClass.Unknown, null, new Band(40, 50)))
        );
    }

    [Fact]
    public void Softened_AnySteel_IsNeverStrongerThanItsCore() =>
        Check.Sample(
            Gen.Select(Gen.Enum<SteelClass>(), Gen.Double[0, 60], Gen.Double[0, 6], Gen.Bool),
            t =>
            {
                var (steel, hrc, spread, measured) = t;
                var known = new SteelKnown(
                    steel,
                    measured ? new Band(hrc, hrc + spread) : null,
                    null
                );
                var (soft, core) = (ShearYield.Softened(known), ShearYield.OfCore(known));
                Assert.True(
                    soft.Low <= core.Low && soft.High <= core.High && soft.Low <= soft.High
                );
            }
        );
}
