using System.Globalization;
using CsCheck;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Measures;

public sealed class MeasuredTests
{
    [Fact]
    public void Value_OfThreeInches_IsExactAndShows76Point2()
    {
        var m = Measured<Distance>.Read("3 in", "length").Required;
        Assert.Equal(76.2, m.Value);
        Assert.Equal("76.2\u00a0mm", Say.Length(m.Value).In(Display.Metric));
        Assert.Equal("3.000\u00a0in", Say.Length(m.Value).In(Display.Inch));
    }

    [Fact]
    public void Value_OfAnyTypedDecimalInches_IsTheNearestDouble()
    {
        // The exact product has more digits than a double; its text, parsed once, is the nearest there is.
        Gen.Select(Gen.Int[0, int.MaxValue], Gen.Int[0, 9])
            .Sample(
                (digits, decimals) =>
                {
                    var number = new decimal(digits, 0, 0, false, (byte)decimals);
                    var exact = (number * 254m).ToString(CultureInfo.InvariantCulture);
                    var typed = number.ToString(CultureInfo.InvariantCulture);
                    Assert.Equal(
                        double.Parse(exact + "e-1", CultureInfo.InvariantCulture),
                        Measured<Distance>.Read(typed + " in", "x").Required.Value
                    );
                }
            );
    }

    [Fact]
    public void Of_AnyNumberAndUnit_ReadsBackAsItself()
    {
        RoundTrips<Distance>();
        RoundTrips<Angle>();
        RoundTrips<Torque>();
        RoundTrips<Stress>();
        RoundTrips<Mass>();
        RoundTrips<Ratio>();
        RoundTrips<Hardness>();
    }

    [Fact]
    public void Of_WhatIsNoMeasure_ThrowsNamingTheParameter()
    {
        static string? Parameter(Func<object> make) =>
            Assert.ThrowsAny<ArgumentException>(make).ParamName;
        Assert.Equal("number", Parameter(() => Measured<Distance>.Of(double.NaN, Distance.Mm)));
        Assert.Equal(
            "number",
            Parameter(() => Measured<Distance>.Of(double.PositiveInfinity, Distance.Mm))
        );
        Assert.Equal("number", Parameter(() => Measured<Distance>.Of(1e300, Distance.Mm)));
        Assert.Equal("plusMinus", Parameter(() => Measured<Distance>.Of(1, Distance.Mm, -1)));
        Assert.Equal(
            "plusMinus",
            Parameter(() => Measured<Distance>.Of(1, Distance.Mm, double.NaN))
        );
        Assert.Equal("unit", Parameter(() => Measured<Distance>.Of(1, Angle.Degree)));
    }

    [Fact]
    public void StandardUncertainty_OfAHalfWidth_IsItOverRootThree()
    {
        // JCGM 100:2008 (GUM), 4.3.7; figures from arithmetic: 1/√3 and 0.02/√3.
        Assert.Equal(
            0.57735,
            Measured<Distance>.Read("431 ± 1 mm", "x").Required.StandardUncertainty(9),
            5e-6
        );
        Assert.Equal(
            0.011547,
            Measured<Distance>.Read("27.3", "x").Required.StandardUncertainty(0.02),
            5e-7
        );
        var field = new Field<Distance>("x", "a length", 0, 500, 0.05);
        Assert.Equal(
            0.028868,
            field.StandardUncertainty(Measured<Distance>.Read("27.3", "x").Required),
            5e-7
        );
    }

    private static void RoundTrips<T>()
        where T : IDimension<T>
    {
        // Twelve decimals and fifteen digits are what a measure carries.
        var number = Gen.OneOf(Gen.Double[-1e6, 1e6], Gen.Double[-1, 1])
            .Select(x => Math.Round(x, 6));
        Gen.Select(
                number,
                Gen.Select(Gen.Bool, number, (has, x) => has ? Math.Abs(x) : (double?)null),
                Gen.Int[0, T.Units.Count - 1].Select(i => T.Units[i])
            )
            .Sample(
                (x, plusMinus, unit) =>
                {
                    var made = Measured<T>.Of(x, unit, plusMinus);
                    var read = Measured<T>.Read(made.Typed, "field").Required;
                    Assert.Equal(made, read);
                    Assert.Equal(unit, read.Unit);
                    Close(x, unit.FromInternal(read.Value));
                    Assert.Equal(plusMinus is null, read.PlusMinus is null);
                    if (plusMinus is { } a)
                        Close(a, unit.FromInternal(read.PlusMinus!.Value));
                },
                iter: 2000
            );
    }

    // A multiplication and a division, each to half a unit in the last place.
    private static void Close(double expected, double actual) =>
        Assert.Equal(expected, actual, 1e-15 * Math.Abs(expected) * 2 + 1e-300);
}
