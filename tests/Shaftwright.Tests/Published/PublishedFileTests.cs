namespace Shaftwright.Tests.Published;

public sealed class PublishedFileTests
{
    [Fact]
    public void HalfLastDigit_OfPrintedNumbers_IsHalfAUnitInTheLastPlace()
    {
        Assert.Equal(0.0005, PublishedCase.HalfLastDigit("0.700"), 8);
        Assert.Equal(0.5, PublishedCase.HalfLastDigit("450"), 6);
        Assert.Equal(0.5e-6, PublishedCase.HalfLastDigit("1.23e-4"), 12);
    }
}
