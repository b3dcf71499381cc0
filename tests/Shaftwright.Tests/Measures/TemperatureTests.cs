using Shaftwright.Measures;

namespace Shaftwright.Tests.Measures;

/// <summary>Units that do not begin at zero.</summary>
public sealed class TemperatureTests
{
    [Theory]
    [InlineData("50 °F", 10)]
    [InlineData("18", 18)]
    [InlineData("-5 C", -5)]
    [InlineData("283.15 K", 10)]
    public void Read_AnyScale_IsInCelsius(string typed, double celsius) =>
        Assert.Equal(celsius, Measured<Temperature>.Read(typed, "t").Required.Value, 1e-12);

    [Fact]
    public void Read_APlusMinusInFahrenheit_IsADifferenceNotATemperature()
    {
        var read = Measured<Temperature>.Read("68 ± 9 °F", "t").Required;
        Assert.Equal(20, read.Value, 1e-12);
        Assert.Equal(5, read.PlusMinus!.Value, 1e-12);
    }

    [Fact]
    public void Read_ABareDegreeSign_IsRefusedWithBothScales()
    {
        var refused = Measured<Temperature>.Read("70°", "t").Refusal!;
        Assert.Contains("°C", refused.Accepted, StringComparison.Ordinal);
        Assert.Contains("°F", refused.Accepted, StringComparison.Ordinal);
    }
}
