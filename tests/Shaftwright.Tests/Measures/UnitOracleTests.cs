using Shaftwright.Measures;
using Net = UnitsNet;

namespace Shaftwright.Tests.Measures;

/// <summary>Every unit against a library that shares no line with ours.</summary>
public sealed class UnitOracleTests
{
    private static readonly Dictionary<Unit, Func<double, double>> s_oracles = new()
    {
        [Distance.Mm] = x => Net.Length.FromMillimeters(x).Millimeters,
        [Distance.Inch] = x => Net.Length.FromInches(x).Millimeters,
        [Distance.Thou] = x => Net.Length.FromMils(x).Millimeters,
        [Distance.Cm] = x => Net.Length.FromCentimeters(x).Millimeters,
        [Distance.Metre] = x => Net.Length.FromMeters(x).Millimeters,
        [Distance.Micrometre] = x => Net.Length.FromMicrometers(x).Millimeters,
        [Distance.Foot] = x => Net.Length.FromFeet(x).Millimeters,
        [Angle.Degree] = x => Net.Angle.FromDegrees(x).Radians,
        [Angle.Radian] = x => Net.Angle.FromRadians(x).Radians,
        [Angle.Milliradian] = x => Net.Angle.FromMilliradians(x).Radians,
        [Angle.Arcminute] = x => Net.Angle.FromArcminutes(x).Radians,
        [Angle.Gon] = x => Net.Angle.FromGradians(x).Radians,
        [Torque.OunceInch] = x => Net.Torque.FromPoundForceInches(x).NewtonMillimeters / 16,
        [Torque.NewtonMetre] = x => Net.Torque.FromNewtonMeters(x).NewtonMillimeters,
        [Torque.PoundFoot] = x => Net.Torque.FromPoundForceFeet(x).NewtonMillimeters,
        [Torque.PoundInch] = x => Net.Torque.FromPoundForceInches(x).NewtonMillimeters,
        [Torque.KilogramForceMetre] = x => Net.Torque.FromKilogramForceMeters(x).NewtonMillimeters,
        [Torque.NewtonMillimetre] = x => Net.Torque.FromNewtonMillimeters(x).NewtonMillimeters,
        [Stress.MPa] = x => Net.Pressure.FromMegapascals(x).Megapascals,
        [Stress.Ksi] = x => Net.Pressure.FromKilopoundsForcePerSquareInch(x).Megapascals,
        [Stress.Psi] = x => Net.Pressure.FromPoundsForcePerSquareInch(x).Megapascals,
        [Stress.GPa] = x => Net.Pressure.FromGigapascals(x).Megapascals,
        [Mass.Kilogram] = x => Net.Mass.FromKilograms(x).Kilograms,
        [Mass.Pound] = x => Net.Mass.FromPounds(x).Kilograms,
        [Mass.Gram] = x => Net.Mass.FromGrams(x).Kilograms,
        [Ratio.One] = x => Net.Ratio.FromDecimalFractions(x).DecimalFractions,
        [Ratio.Percent] = x => Net.Ratio.FromPercent(x).DecimalFractions,
        [Temperature.Celsius] = x => Net.Temperature.FromDegreesCelsius(x).DegreesCelsius,
        [Temperature.Fahrenheit] = x => Net.Temperature.FromDegreesFahrenheit(x).DegreesCelsius,
        [Temperature.Kelvin] = x => Net.Temperature.FromKelvins(x).DegreesCelsius,
        [Duration.Minute] = x => Net.Duration.FromMinutes(x).Seconds,
        [Duration.Second] = x => Net.Duration.FromSeconds(x).Seconds,
        [Duration.Hour] = x => Net.Duration.FromHours(x).Seconds,
        [Illuminance.Lux] = x => Net.Illuminance.FromLux(x).Lux,
        // Not in the library: a lumen on a square foot.
        [Illuminance.FootCandle] = x => x / Net.Area.FromSquareFeet(1).SquareMeters,
        [Irradiance.WattPerSquareMetre] = x =>
            Net.Irradiance.FromWattsPerSquareMeter(x).WattsPerSquareMeter,
        [Irradiance.MicrowattPerSquareCentimetre] = x =>
            Net.Irradiance.FromMicrowattsPerSquareCentimeter(x).WattsPerSquareMeter,
        [Force.Newton] = x => Net.Force.FromNewtons(x).Newtons,
        [Force.Kilonewton] = x => Net.Force.FromKilonewtons(x).Newtons,
        [Force.KilogramForce] = x => Net.Force.FromKilogramsForce(x).Newtons,
        [Force.PoundForce] = x => Net.Force.FromPoundsForce(x).Newtons,
        [Voltage.Volt] = x => Net.ElectricPotential.FromVolts(x).Volts,
        [Current.Ampere] = x => Net.ElectricCurrent.FromAmperes(x).Amperes,
        [TravelSpeed.MmPerMinute] = x =>
            Net.Speed.FromMillimetersPerMinutes(x).MillimetersPerMinutes,
        [TravelSpeed.InchPerMinute] = x => Net.Speed.FromInchesPerMinute(x).MillimetersPerMinutes,
        [TravelSpeed.MmPerSecond] = x =>
            Net.Speed.FromMillimetersPerSecond(x).MillimetersPerMinutes,
        [TravelSpeed.CmPerMinute] = x =>
            Net.Speed.FromCentimetersPerMinutes(x).MillimetersPerMinutes,
        [Content.Percent] = x => Net.MassFraction.FromPercent(x).Percent,
        // Vickers has no conversion either.
        [Vickers.Hv] = x => x,
        // Rockwell C has no conversion, and so no oracle: its one unit is itself.
        [Hardness.Hrc] = x => x,
    };

    [Fact]
    public void ToInternal_OfEveryUnit_AgreesWithUnitsNet()
    {
        Unit[] all =
        [
            .. Distance.Units,
            .. Angle.Units,
            .. Torque.Units,
            .. Stress.Units,
            .. Mass.Units,
            .. Ratio.Units,
            .. Hardness.Units,
            .. Temperature.Units,
            .. Duration.Units,
            .. Illuminance.Units,
            .. Irradiance.Units,
            .. Force.Units,
            .. Voltage.Units,
            .. Current.Units,
            .. TravelSpeed.Units,
            .. Content.Units,
            .. Vickers.Units,
        ];
        Assert.Equal(all.Length, s_oracles.Count);
        foreach (var unit in all)
        {
            foreach (var x in new[] { 1, 0.3, 25.4, -7.25, 118, 123456.789 })
            {
                var expected = s_oracles[unit](x);
                // Both carry a few roundings of a double, no more.
                Assert.Equal(expected, unit.ToInternal(x), 1e-12 * Math.Abs(expected));
                Assert.Equal(expected, unit.ToInternal((decimal)x), 1e-12 * Math.Abs(expected));
                Assert.Equal(x, unit.FromInternal(expected), 1e-12 * Math.Abs(x));
            }
        }
    }

    [Fact]
    public void Find_EverySymbolAndSpelling_MeansItsUnitAndNoOther()
    {
        AllSpellings<Distance>();
        AllSpellings<Angle>();
        AllSpellings<Torque>();
        AllSpellings<Stress>();
        AllSpellings<Mass>();
        AllSpellings<Ratio>();
        AllSpellings<Hardness>();
        AllSpellings<Temperature>();
        AllSpellings<Duration>();
        AllSpellings<Illuminance>();
        AllSpellings<Irradiance>();
        AllSpellings<Force>();
        AllSpellings<Voltage>();
        AllSpellings<Current>();
        AllSpellings<TravelSpeed>();
        AllSpellings<Content>();
        AllSpellings<Vickers>();
    }

    private static void AllSpellings<T>()
        where T : IDimension<T>
    {
        foreach (var unit in T.Units)
        {
            foreach (var spelling in unit.Spellings.Append(unit.Symbol))
                Assert.Equal(unit, Measured<T>.Read("2 " + spelling, "x").Required.Unit);
        }
        foreach (var pair in T.Ambiguities)
            Assert.NotNull(Measured<T>.Read("2 " + pair.Spelling, "x").Refusal);
        // And the examples shown with a refusal are themselves accepted.
        foreach (var example in T.Examples.Split(", ").Where(e => e.Length > 0))
            Assert.Null(Measured<T>.Read(example, "x").Refusal);
    }
}
