using Shaftwright.Measures;

namespace Shaftwright.Tests.Measures;

public sealed class ShownTests
{
    [Theory]
    [InlineData(ShownKind.Length, 455.06, "455.1\u00a0mm", "17.916\u00a0in")]
    [InlineData(ShownKind.Length, -3.25, "−3.3\u00a0mm", "−0.128\u00a0in")]
    [InlineData(ShownKind.Length, -0.04, "0.0\u00a0mm", "−0.002\u00a0in")]
    [InlineData(ShownKind.Length, -0.001, "0.0\u00a0mm", "0.000\u00a0in")]
    [InlineData(ShownKind.Diameter, 24.8, "24.80\u00a0mm", "0.976\u00a0in")]
    [InlineData(ShownKind.Fine, 0.1524, "0.15\u00a0mm", "6.0\u00a0thou")]
    [InlineData(ShownKind.Fine, 0.55, "0.55\u00a0mm", "21.7\u00a0thou")]
    [InlineData(ShownKind.Angle, 0.35, "20.1°", "20.1°")]
    [InlineData(ShownKind.Bearing, 2.35619449, "135°", "135°")]
    [InlineData(ShownKind.Torque, 215_400, "215\u00a0N·m", "159\u00a0lbf·ft")]
    [InlineData(ShownKind.Stress, 430.4, "430\u00a0MPa", "62.4\u00a0ksi")]
    [InlineData(ShownKind.StressIntensity, 279.3, "8.8\u00a0MPa√m", "8.0\u00a0ksi√in")]
    [InlineData(ShownKind.Share, 0.125, "13\u00a0%", "13\u00a0%")]
    [InlineData(ShownKind.Temperature, 17.6, "18\u00a0°C", "64\u00a0°F")]
    [InlineData(ShownKind.Force, 150, "150\u00a0N", "34\u00a0lbf")]
    [InlineData(ShownKind.Light, 500, "500\u00a0lx", "46\u00a0fc")]
    [InlineData(ShownKind.UltraViolet, 10, "10.0\u00a0W/m²", "10.0\u00a0W/m²")]
    [InlineData(ShownKind.Factor, 1.239, "1.24", "1.24")]
    [InlineData(ShownKind.Factor, -0.001, "0.00", "0.00")]
    public void In_EitherDisplay_HasSensibleDigitsAndTheUnit(
        ShownKind kind,
        double value,
        string metric,
        string inch
    )
    {
        var shown = new Shown(value, kind);
        Assert.Equal(metric, shown.In(Display.Metric));
        Assert.Equal(inch, shown.In(Display.Inch));
        Assert.Equal(metric, shown.ToString());
    }

    [Theory]
    [InlineData(0, "less than 1 in 1000")]
    [InlineData(0.0009, "less than 1 in 1000")]
    [InlineData(0.001, "about 1 in 1000")]
    [InlineData(0.05, "about 1 in 20")]
    [InlineData(0.0949, "about 1 in 11")]
    [InlineData(0.1, "about 10\u00a0%")]
    [InlineData(0.5, "about 50\u00a0%")]
    [InlineData(0.994, "about 99\u00a0%")]
    [InlineData(0.995, "almost certain")]
    [InlineData(1, "almost certain")]
    public void In_AChance_IsInWords(double p, string words) =>
        Assert.Equal(words, Say.Chance(p).ToString());

    [Theory]
    [InlineData(0, "0\u00a0s")]
    [InlineData(99.4, "99\u00a0s")]
    [InlineData(240, "4\u00a0min")]
    [InlineData(299, "4\u00a0min 59\u00a0s")]
    [InlineData(900, "15\u00a0min")]
    [InlineData(5999, "99\u00a0min 59\u00a0s")]
    [InlineData(6000, "1\u00a0h 40\u00a0min")]
    [InlineData(172800, "48\u00a0h")]
    [InlineData(345600, "4\u00a0days")]
    [InlineData(-60, "−60\u00a0s")]
    public void In_ATime_IsNeverRoundedUpToAMinuteThatHasNotPassed(double seconds, string words) =>
        Assert.Equal(words, Say.Time(seconds).ToString());

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void In_WhatIsNoNumber_SaysNotKnown(double value) =>
        Assert.All(
            Enum.GetValues<ShownKind>(),
            kind => Assert.Equal("not known", new Shown(value, kind).In(Display.Inch))
        );

    [Fact]
    public void In_EveryKind_ReadsBackWithinItsDigits()
    {
        // What the screen says can be typed in again.
        Assert.Equal(
            -3.3,
            Measured<Distance>.Read(Say.Length(-3.25).ToString(), "x").Required.Value,
            1e-12
        );
        Assert.Equal(
            0.1524,
            Measured<Distance>.Read(Say.Fine(0.1524).In(Display.Inch), "x").Required.Value,
            1e-12
        );
        Assert.Equal(
            159 * 1355.8179483314004,
            Measured<Torque>.Read(Say.Torque(215_400).In(Display.Inch), "x").Required.Value,
            1e-6
        );
    }

    [Fact]
    public void Sentence_InEitherDisplay_FollowsTheReader()
    {
        Sentence inner = $"{Say.Fine(0.55)} on each face";
        Sentence s = $"Make it {Say.Length(455.1)} long, {"with"} {inner}, {2} packs.";
        Assert.Equal(
            "Make it 455.1\u00a0mm long, with 0.55\u00a0mm on each face, 2 packs.",
            s.ToString()
        );
        Assert.Equal(
            "Make it 17.917\u00a0in long, with 21.7\u00a0thou on each face, 2 packs.",
            s.In(Display.Inch)
        );
    }

    [Fact]
    public void Sentence_Equality_IsOfWordsAndNumbers()
    {
        static Sentence Of(double mm) => $"Cut {Say.Length(mm)} off.";
        Assert.Equal(Of(3), Of(3));
        Assert.Equal(Of(3).GetHashCode(), Of(3).GetHashCode());
        // Shown alike, but not the same number.
        Assert.NotEqual(Of(3), Of(3.001));
        Assert.False(Of(3).Equals(null));
        Assert.Equal("As it is.", Sentence.Plain("As it is.").ToString());
    }
}
