using CsCheck;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Measures;

public sealed class MeasureReadTests
{
    [Theory]
    [InlineData("27.30 mm", 27.3, null)]
    [InlineData("27,30 mm", 27.3, null)]
    [InlineData("27.30mm", 27.3, null)]
    [InlineData("27.3", 27.3, null)]
    [InlineData("  27.3 MM ", 27.3, null)]
    [InlineData("27.3\u00a0mm", 27.3, null)]
    [InlineData("27.", 27, null)]
    [InlineData(".5 in", 12.7, null)]
    [InlineData("5 in.", 127, null)]
    [InlineData("3 in", 76.2, null)]
    [InlineData("3/8 in", 9.525, null)]
    [InlineData("3/8\"", 9.525, null)]
    [InlineData("3/8-in", 9.525, null)]
    [InlineData("3⁄8 in", 9.525, null)]
    [InlineData("⅜ in", 9.525, null)]
    [InlineData("1 1/2 in", 38.1, null)]
    [InlineData("1  1/2 in", 38.1, null)]
    [InlineData("1-1/2\"", 38.1, null)]
    [InlineData("1½\"", 38.1, null)]
    [InlineData("1 ½”", 38.1, null)]
    [InlineData("12-3/8 in", 314.325, null)]
    [InlineData("-1-1/2 in", -38.1, null)]
    [InlineData("4 thou", 0.1016, null)]
    [InlineData("4thou", 0.1016, null)]
    [InlineData("2 cm", 20, null)]
    [InlineData("0.43 m", 430, null)]
    [InlineData("25 µm", 0.025, null)]
    [InlineData("25 μm", 0.025, null)]
    [InlineData("2 ft", 609.6, null)]
    [InlineData("−3.2 mm", -3.2, null)]
    [InlineData("-3,2 mm", -3.2, null)]
    [InlineData("–3,2 mm", -3.2, null)]
    [InlineData("+3.2 mm", 3.2, null)]
    [InlineData("0,234 mm", 0.234, null)]
    [InlineData("1234,567 mm", 1234.567, null)]
    [InlineData("1.234,5 mm", 1234.5, null)]
    [InlineData("1,234.5 mm", 1234.5, null)]
    [InlineData("431 ± 1 mm", 431, 1.0)]
    [InlineData("431±1mm", 431, 1.0)]
    [InlineData("431 +/- 1 mm", 431, 1.0)]
    [InlineData("431 +- 1 mm", 431, 1.0)]
    [InlineData("431 mm ± 0.5 mm", 431, 0.5)]
    [InlineData("431 mm ± 0,5", 431, 0.5)]
    [InlineData("431 ± 0", 431, 0.0)]
    [InlineData("27,30 ± 0,02 mm", 27.3, 0.02)]
    [InlineData("17 in ± 1/16 in", 431.8, 1.5875)]
    [InlineData("17 1/2 ± 1/16 in", 444.5, 1.5875)]
    [InlineData("5\" ± 1 thou", 127, 0.0254)]
    [InlineData("431 mm ± 1/16 in", 431, 1.5875)]
    public void Read_ADistance_IsTheseMillimetres(string typed, double mm, double? plusMinus) =>
        Reads<Distance>(typed, mm, plusMinus);

    [Theory]
    [InlineData("12.5°", 12.5, null)]
    [InlineData("12,5 deg", 12.5, null)]
    [InlineData("12.5 º", 12.5, null)]
    [InlineData("12° 30′", 12.5, null)]
    [InlineData("12°30'", 12.5, null)]
    [InlineData("12 deg 30’", 12.5, null)]
    [InlineData("-12° 30′", -12.5, null)]
    [InlineData("−0° 30′", -0.5, null)]
    [InlineData("-0° 30'", -0.5, null)]
    [InlineData("30′", 0.5, null)]
    [InlineData("12° 30′ ± 10′", 12.5, 1 / 6.0)]
    [InlineData("12 ± 0.5°", 12, 0.5)]
    [InlineData("12° 30.5'", 12 + 30.5 / 60, null)]
    public void Read_AnAngle_IsTheseDegrees(string typed, double degrees, double? plusMinus) =>
        Reads<Angle>(typed, degrees * Math.PI / 180, plusMinus * Math.PI / 180);

    [Theory]
    [InlineData("215 N·m", 215e3)]
    [InlineData("215 Nm", 215e3)]
    [InlineData("215 N.m", 215e3)]
    [InlineData("215 N m", 215e3)]
    [InlineData("215 N*m", 215e3)]
    [InlineData("215 N-m", 215e3)]
    [InlineData("215 nm", 215e3)]
    [InlineData("500 N·mm", 500)]
    [InlineData("2 kgf·m", 19613.3)]
    [InlineData("118 lbf·ft", 118 * 1355.8179483314004)]
    [InlineData("118 lbf-ft", 118 * 1355.8179483314004)]
    [InlineData("118 ft-lb", 118 * 1355.8179483314004)]
    [InlineData("118 lb-ft", 118 * 1355.8179483314004)]
    [InlineData("118 ft lb", 118 * 1355.8179483314004)]
    [InlineData("118 ft-lbf", 118 * 1355.8179483314004)]
    [InlineData("118 ft.lbs", 118 * 1355.8179483314004)]
    [InlineData("118 ft–lb", 118 * 1355.8179483314004)]
    [InlineData("60 in-lb", 60 * 112.9848290276167)]
    public void Read_ATorque_IsTheseNewtonMillimetres(string typed, double newtonMillimetres) =>
        Reads<Torque>(typed, newtonMillimetres, null);

    [Fact]
    public void Read_OtherQuantities_AreInTheirInternalUnits()
    {
        Reads<Stress>("430 N/mm²", 430, null);
        Reads<Stress>("430 n/mm2", 430, null);
        Reads<Stress>("1 ksi", 6.894757293168361, null);
        Reads<Mass>("310 kg", 310, null);
        Reads<Mass>("680 lb", 680 * 0.45359237, null);
        Reads<Ratio>("3,58", 3.58, null);
        Reads<Ratio>("95 %", 0.95, null);
        Reads<Ratio>("90 % ± 10 %", 0.9, 0.1);
        Reads<Ratio>("0.9 ± 0.1", 0.9, 0.1);
        Reads<Hardness>("30 ± 3 HRC", 30, 3);
        Reads<Hardness>("28 rc", 28, null);
    }

    [Theory]
    [InlineData("", "is empty")]
    [InlineData("   ", "is empty")]
    [InlineData("about a foot", "has no number")]
    [InlineData("mm", "has no number")]
    [InlineData("± 1 mm", "has no number")]
    [InlineData("431 ±", "has no number")]
    [InlineData("-", "has no number")]
    [InlineData("NaN", "has no number")]
    [InlineData("∞ mm", "has no number")]
    [InlineData("٣ mm", "has no number")]
    [InlineData("431 ± 1 ± 2 mm", "has more than one ±")]
    [InlineData("431 ± -1 mm", "has a negative ±")]
    [InlineData("1 2", "is not a number")]
    [InlineData("1 2 mm", "is not a number")]
    [InlineData("5 - 3", "is not a number")]
    [InlineData("5 -", "is not a number")]
    [InlineData("--5 mm", "is not a number")]
    [InlineData("1.2.3", "is not a number")]
    [InlineData("1.2.3,4", "is not a number")]
    [InlineData("1,2,3.4", "is not a number")]
    [InlineData("1,2,3", "is not a number")]
    [InlineData(".", "is not a number")]
    [InlineData(",", "is not a number")]
    [InlineData("3/8/2 in", "is not a fraction")]
    [InlineData("--3/8 in", "is not a fraction")]
    [InlineData("1 - 3/8 in", "is not a fraction")]
    [InlineData("1 5/4 in", "is not a fraction")]
    [InlineData("1,5/8 in", "is not a fraction")]
    [InlineData("½½ in", "is not a length (unit \"½ in\")")]
    [InlineData("/8 in", "is not a fraction")]
    [InlineData("3/ in", "is not a fraction")]
    [InlineData("3/0 in", "divides by zero")]
    [InlineData("1,234", "can be read two ways")]
    [InlineData("-12,345 mm", "can be read two ways")]
    [InlineData("1,234,567", "has commas")]
    [InlineData("1e400", "is not a length (unit \"e400\")")]
    [InlineData("1e3 mm", "is not a length (unit \"e3 mm\")")]
    [InlineData("5 m m", "is not a length (unit \"m m\")")]
    [InlineData("5 ·mm", "is not a length (unit \"·mm\")")]
    [InlineData("5 mm-", "is not a length (unit \"mm-\")")]
    [InlineData("5' 3\"", "is not a length (unit \"' 3\"\")")]
    [InlineData("5 N·m", "is not a length (unit \"N·m\")")]
    [InlineData("5 °", "is not a length (unit \"°\")")]
    [InlineData("5 kg", "is not a length (unit \"kg\")")]
    [InlineData("5 ± 1 %", "is not a length (unit \"%\")")]
    [InlineData("5 nm", "is not a length (unit \"nm\")")]
    [InlineData("99999999999999999999999999999999 mm", "is too large")]
    [InlineData("9999999999999999999999999999 m", "is too large")]
    [InlineData("5 mil", "has a unit that can be read two ways, \"mil\"")]
    [InlineData("5 mils", "has a unit that can be read two ways, \"mils\"")]
    [InlineData(
        "5.000000000000000000000000000000000000000000000000000000000 mm",
        "is too long to be one measurement"
    )]
    public void Read_WhatIsNoDistance_IsRefusedWithTheReason(string typed, string problem)
    {
        var refusal = Refusal<Distance>(typed);
        Assert.Equal(problem, refusal.Problem);
        Assert.Equal("field", refusal.Field);
        Assert.Equal(typed.Trim(), refusal.Value);
        Assert.NotEmpty(refusal.Accepted);
    }

    [Theory]
    [InlineData("12° 70′")]
    [InlineData("12° -30′")]
    [InlineData("12° 30")]
    [InlineData("12.5° 30′")]
    [InlineData("12 rad 30′")]
    [InlineData("12° 30′ 15″")]
    public void Read_WhatIsNoDegreesAndMinutes_IsRefused(string typed) =>
        Assert.Equal("is not degrees and minutes", Refusal<Angle>(typed).Problem);

    [Fact]
    public void Read_AnAmbiguousText_IsRefusedWithBothReadings()
    {
        void Both(Refusal refusal, string one, string other)
        {
            Assert.Contains(one, refusal.Accepted, StringComparison.Ordinal);
            Assert.Contains(other, refusal.Accepted, StringComparison.Ordinal);
        }
        Both(Refusal<Distance>("1,234 mm"), "1.234 if", "1234 if");
        Both(Refusal<Distance>("5 mil"), "thou", "mm");
        Both(Refusal<Stress>("430 mPa"), "MPa", "thousandth of a pascal");
        Both(Refusal<Torque>("20 kg·m"), "kgf·m", "kg·m²");
        Both(Refusal<Torque>("20 kg m"), "kgf·m", "kg·m²");
        Both(Refusal<Mass>("1 ton"), "1000 kg", "2240 lb");
        Both(Refusal<Angle>("10 grad"), "360", "400");
        Both(Refusal<Hardness>("30 H"), "HRC", "HB");
        Both(Refusal<Ratio>("0.9 ± 10 %"), "90 % ± 10 %", "0.9 ± 0.1");
        Both(Refusal<Ratio>("90 % ± 0.1"), "90 % ± 10 %", "0.9 ± 0.1");
        Both(Refusal<Angle>("44 ± 30′"), "44 ° ± 30′", "44 ′ ± 30′");
        Both(Refusal<Distance>("0.40 ± 1 thou"), "0.40 mm ± 1 thou", "0.40 thou ± 1 thou");
        Both(Refusal<Distance>("27.3 ± 5 µm"), "27.3 mm ± 5 µm", "27.3 µm ± 5 µm");
        // Only this spelling: the others mean megapascals to anyone.
        Reads<Stress>("430 MPA", 430, null);
        Reads<Stress>("430 mpa", 430, null);
    }

    [Fact]
    public void Read_WhatARefusalOffersInstead_IsAccepted()
    {
        Reads<Angle>("44 ° ± 30′", 44 * Math.PI / 180, 0.5 * Math.PI / 180);
        Reads<Angle>("100 gon", Math.PI / 2, null);
        Reads<Distance>("0.40 mm ± 1 thou", 0.4, 0.0254);
        Reads<Distance>("16 thou ± 1", 16 * 0.0254, 0.0254);
        Reads<Torque>("100 ozf·in", 100 * 4.4482216152605 * 25.4 / 16, null);
    }

    [Fact]
    public void Read_ABareNumber_IsInTheUnitOfTheField()
    {
        var field = new Field<Distance>("a", "a length", 0, 1000);
        Assert.Equal(76.2, field.Read("3", Distance.Inch).Required.Value);
        Assert.Equal(3, field.Read("3").Required.Value);
        Assert.Equal(3, field.Read("3 mm", Distance.Inch).Required.Value);
    }

    [Fact]
    public void Read_AnyTextAtAll_AnswersOrRefusesButNeverThrows()
    {
        string[] signs =
        [
            .. "0123456789.,/ -−–+±½⅜⁄'′’\"″°·*×%eE\u00a0\u2009NmbflintkgrdPaHRC".Select(c =>
                c.ToString()
            ),
            "mm",
            "in",
            "thou",
            "N·m",
            "+/-",
            "+-",
            "mil",
            "1/2",
            "999999999999999999999999999999",
        ];
        var workshop = Gen.Int[0, signs.Length - 1].Select(i => signs[i]);
        Gen.OneOf(
                Gen.String,
                workshop.Array[0, 12].Select(string.Concat),
                Gen.Char.Array[0, 70].Select(c => new string(c))
            )
            .Sample(
                text =>
                {
                    Answers<Distance>(text);
                    Answers<Angle>(text);
                    Answers<Torque>(text);
                    Answers<Stress>(text);
                    Answers<Mass>(text);
                    Answers<Ratio>(text);
                    Answers<Hardness>(text);
                },
                iter: 20_000
            );
    }

    private static void Answers<T>(string text)
        where T : IDimension<T>
    {
        var reading = Measured<T>.Read(text, "field");
        Assert.Equal(reading.Measure is null, reading.Refusal is not null);
        if (reading.Measure is not { } m)
            return;
        Assert.True(double.IsFinite(m.Value), text);
        Assert.True(m.PlusMinus is null or >= 0, text);
        Assert.Contains(m.Unit, T.Units);
        // What was read is kept, and reads the same again.
        Assert.Equal(text.Trim(), m.Typed);
        Assert.Equal(m, Measured<T>.Read(m.Typed, "field").Required);
    }

    private static void Reads<T>(string typed, double value, double? plusMinus)
        where T : IDimension<T>
    {
        var m = Measured<T>.Read(typed, "field").Required;
        Assert.Equal(value, m.Value, 1e-12 * Math.Max(1, Math.Abs(value)));
        Assert.Equal(plusMinus is null, m.PlusMinus is null);
        if (plusMinus is { } a)
            Assert.Equal(a, m.PlusMinus!.Value, 1e-12);
        Assert.Equal(typed.Trim(), m.Typed);
    }

    private static Refusal Refusal<T>(string typed)
        where T : IDimension<T>
    {
        var reading = Measured<T>.Read(typed, "field");
        Assert.Null(reading.Measure);
        Assert.Throws<FormatException>(() => reading.Required);
        return reading.Refusal!;
    }
}
