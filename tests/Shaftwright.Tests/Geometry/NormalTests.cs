using CsCheck;
using Shaftwright.Geometry;

namespace Shaftwright.Tests.Geometry;

public sealed class NormalTests
{
    // NIST Technical Note 1297, 6.2: coverage of ±k.
    [Theory]
    [InlineData(1, 0.6827)]
    [InlineData(1.645, 0.90)]
    [InlineData(2, 0.9545)]
    [InlineData(2.576, 0.99)]
    [InlineData(3, 0.9973)]
    public void Below_ByCoverageFactor_GivesThePublishedCoverage(double k, double coverage) =>
        Assert.Equal(coverage, Normal.Below(k) - Normal.Below(-k), 4);

    [Fact]
    public void Below_AgainstAGeneralLibrary_AgreesToItsStatedError() =>
        Gen.Double[-9, 9]
            .Sample(z =>
                Math.Abs(Normal.Below(z) - MathNet.Numerics.Distributions.Normal.CDF(0, 1, z))
                < 1e-7
            );
}
