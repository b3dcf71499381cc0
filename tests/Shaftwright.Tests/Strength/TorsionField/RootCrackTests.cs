using Shaftwright.Strength.TorsionField;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.Strength.TorsionField;

public sealed class RootCrackTests
{
    private static readonly PublishedFile s_crack = PublishedFile.Load("root-crack");

    public static TheoryData<string> Cases() => PublishedFile.Ids("root-crack");

    [Theory]
    [MemberData(nameof(Cases))]
    public void Factor_OfAnUnfusedRoot_AgreesWithAnotherMesh(string id)
    {
        var c = s_crack[id];
        if (c.Has("torque"))
        {
            c.Agrees(
                "K",
                RootCrack.Intensity(c.Number("torque"), c.Number("radius"), c.Number("depth"))
            );
            return;
        }
        c.Agrees("F", RootCrack.FactorByField(c.Number("share"), 1));
        c.Agrees("F", RootCrack.Factor(c.Number("share")));
    }

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.13)]
    [InlineData(0.47)]
    [InlineData(0.77)]
    [InlineData(0.98)]
    public void Factor_BetweenTheCases_FollowsTheField(double share) =>
        Assert.Equal(1, RootCrack.Factor(share) / RootCrack.FactorByField(share), 0.0012);

    [Fact]
    public void Factor_OfASmallCrack_IsTheExactFlatRoundCrack() =>
        Assert.Equal(4 / (3 * Math.PI), RootCrack.Factor(0), 1e-6);

    [Fact]
    public void Intensity_OfABarFusedRightThrough_IsNone() =>
        Assert.Equal(0, RootCrack.Intensity(800_000, 14, 14));
}
