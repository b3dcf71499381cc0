using CsCheck;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;
using Shaftwright.Weld;

namespace Shaftwright.Tests.Weld;

/// <summary>The formulas of weld heat against their check values, and what must hold of each.</summary>
public sealed class WeldabilityTests
{
    private static readonly PublishedFile s_equivalents = PublishedFile.Load("carbon-equivalents");
    private static readonly PublishedFile s_preheat = PublishedFile.Load("preheat-method-b");
    private static readonly PublishedFile s_cooling = PublishedFile.Load("cooling-time");
    private static readonly PublishedFile s_heat = PublishedFile.Load("heat-input");
    private static readonly PublishedFile s_hardness = PublishedFile.Load("haz-hardness");
    private static readonly PublishedFile s_groove = PublishedFile.Load("girth-groove");

    public static TheoryData<string> Steels() => PublishedFile.Ids("carbon-equivalents");

    public static TheoryData<string> Preheats() => PublishedFile.Ids("preheat-method-b");

    public static TheoryData<string> Coolings() => PublishedFile.Ids("cooling-time");

    public static TheoryData<string> Heats() => PublishedFile.Ids("heat-input");

    public static TheoryData<string> Hardnesses() => PublishedFile.Ids("haz-hardness");

    public static TheoryData<string> Grooves() => PublishedFile.Ids("girth-groove");

    private static Composition Steel(PublishedCase c)
    {
        double E(string element) => c.Has(element) ? c.Number(element) : 0;
        return new(E("C"), E("Si"), E("Mn"), E("Cr"), E("Mo"), E("Ni"), E("Cu"), E("V"));
    }

    [Theory]
    [MemberData(nameof(Steels))]
    public void CarbonEquivalents_OfListedSteels_ArePublished(string id)
    {
        var c = s_equivalents[id];
        var steel = Steel(c);
        c.Agrees("CE", steel.CarbonEquivalent);
        c.Agrees("Pcm", steel.CrackingParameter);
        c.Agrees("CET", steel.Cet);
    }

    [Fact]
    public void EveryMediumCarbonSteelListed_BreaksTheCarbonLimitOfCet()
    {
        foreach (var c in s_equivalents.Cases)
        {
            var steel = Steel(c);
            Assert.Equal(
                steel.C > 0.32,
                steel.CetLimitsBroken.Any(b => b.StartsWith("carbon", StringComparison.Ordinal))
            );
        }
        Assert.Equal(6, s_equivalents.Cases.Count(c => Steel(c).CetLimitsBroken.Count > 0));
    }

    [Theory]
    [MemberData(nameof(Preheats))]
    public void MethodB_OfListedCases_IsPublishedAndNamesBrokenLimits(string id)
    {
        var c = s_preheat[id];
        var result = MethodB.Of(c.Number("CET"), c.Number("d"), c.Number("HD"), c.Number("Q"));
        c.Agrees("Tp", result.Temperature);
        Assert.Equal(c.Expected("limitsBroken"), result.LimitsBroken.Count);
    }

    [Fact]
    public void MethodB_RisesWithSteelThicknessAndHydrogen_AndFallsWithHeat() =>
        Gen.Select(Gen.Double[0.2, 0.58], Gen.Double[5, 90], Gen.Double[1, 20], Gen.Double[0.5, 4])
            .Sample(
                (cet, d, hd, q) =>
                {
                    var t = MethodB.Of(cet, d, hd, q).Temperature;
                    Assert.True(MethodB.Of(cet + 0.01, d, hd, q).Temperature > t);
                    Assert.True(MethodB.Of(cet, d + 1, hd, q).Temperature > t);
                    Assert.True(MethodB.Of(cet, d, hd + 0.5, q).Temperature > t);
                    // 53·CET − 32 is negative below CET 0.6038.
                    Assert.True(MethodB.Of(cet, d, hd, q + 0.1).Temperature < t);
                }
            );

    [Theory]
    [MemberData(nameof(Coolings))]
    public void CoolingTime_OfListedCases_IsPublished(string id)
    {
        var c = s_cooling[id];
        var t = CoolingTime.Of(
            c.Number("T"),
            c.Number("Q"),
            c.Number("d"),
            c.Number("F2"),
            c.Number("F3")
        );
        c.Agrees("threeD", t.ThreeDimensional);
        c.Agrees("twoD", t.TwoDimensional);
        c.Agrees("transition", t.TransitionThickness);
    }

    [Fact]
    public void CoolingTime_AtTheTransitionThickness_IsTheSameByBothFormulas() =>
        Gen.Select(Gen.Double[0, 450], Gen.Double[0.2, 4], Gen.Double[0.45, 1], Gen.Double[0.6, 1])
            .Sample(
                (temperature, q, f2, f3) =>
                {
                    var d = CoolingTime.Of(temperature, q, 10, f2, f3).TransitionThickness;
                    var at = CoolingTime.Of(temperature, q, d, f2, f3);
                    Assert.Equal(1, at.ThreeDimensional / at.TwoDimensional, 1e-9);
                }
            );

    [Fact]
    public void CoolingTime_At500Degrees_IsRefused() =>
        Assert.Equal(
            "temperature",
            Assert.Throws<ArgumentOutOfRangeException>(() => CoolingTime.Of(500, 1, 10)).ParamName
        );

    [Theory]
    [MemberData(nameof(Heats))]
    public void HeatInput_OfListedCases_IsPublished(string id)
    {
        var c = s_heat[id];
        var process = Enum.Parse<ArcProcess>(c.Raw("process").GetString()!, ignoreCase: true);
        c.Agrees("Q", ArcHeat.Input(process, c.Number("U"), c.Number("I"), c.Number("v")));
    }

    [Fact]
    public void BarWarming_OfOneLapOnA25mmBar_Is208K() =>
        // welding-and-inspection.md 1.5: mass 0.38534 kg, heat 39.270 kJ.
        Assert.Equal(207.98, ArcHeat.BarWarming(0.5, 25, 100), 2);

    [Theory]
    [MemberData(nameof(Hardnesses))]
    public void HazHardness_OfListedSteels_IsPublished(string id)
    {
        var c = s_hardness[id];
        var steel = Steel(c);
        c.Agrees("dueren", HeatHardness.Dueren(steel, c.Number("t85")));
        var (raw, none, martensite) = HeatHardness.YuriokaRaw(steel, c.Number("t85"));
        c.Agrees("yuriokaRaw", raw);
        c.Agrees("none", none);
        c.Agrees("martensite", martensite);
        Assert.InRange(HeatHardness.Yurioka(steel, c.Number("t85")), none, martensite);
    }

    [Fact]
    public void HazHardness_Band_HoldsBothMethodsAtEverySteelAndTimeInside() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1])
            .Sample(
                (s, alloy, time) =>
                {
                    var low = new Composition(0.36, 0.15, 0.6, 0, 0);
                    var high = new Composition(0.48, 0.35, 1.0, 1.1, 0.25);
                    var band = HeatHardness.Of(new CompositionBand(low, high), new Band(4, 20));
                    double Mix(double a, double b, double share) => a + (b - a) * share;
                    var steel = new Composition(
                        Mix(low.C, high.C, s),
                        Mix(low.Si, high.Si, s),
                        Mix(low.Mn, high.Mn, alloy),
                        Mix(low.Cr, high.Cr, alloy),
                        Mix(low.Mo, high.Mo, alloy)
                    );
                    var t = Mix(4, 20, time);
                    Assert.InRange(
                        HeatHardness.Dueren(steel, t),
                        band.Low - 1e-9,
                        band.High + 1e-9
                    );
                    Assert.InRange(
                        HeatHardness.Yurioka(steel, t),
                        band.Low - 1e-9,
                        band.High + 1e-9
                    );
                }
            );

    [Theory]
    [MemberData(nameof(Grooves))]
    public void GirthGroove_OfListedCases_IsPublished(string id)
    {
        var c = s_groove[id];
        var groove = new GirthGroove(
            c.Input<Distance>("D").Value,
            c.Input<Distance>("h").Value,
            c.Input<Angle>("bevel").Value,
            c.Input<Distance>("g").Value,
            c.Input<Distance>("c").Value
        );
        c.Agrees("area", groove.Area);
        c.Agrees("groove", groove.GrooveVolume);
        c.Agrees("total", groove.Volume);
        c.Agrees("filler", groove.FillerLength(2.4, 1));
    }

    [Fact]
    public void GirthGroove_VolumeByPappus_EqualsQuadratureOverTheRadius() =>
        Gen.Select(Gen.Double[20, 40], Gen.Double[0.2, 1], Gen.Double[0.3, 0.8], Gen.Double[0, 3])
            .Sample(
                (d, share, bevel, gap) =>
                {
                    var h = share * d / 2;
                    var groove = new GirthGroove(d, h, bevel, gap, 0);
                    var r = d / 2;
                    var byQuadrature = MathNet.Numerics.Integration.GaussLegendreRule.Integrate(
                        x => 2 * Math.PI * x * (2 * (x - r + h) * Math.Tan(bevel) + gap),
                        r - h,
                        r,
                        8
                    );
                    Assert.Equal(1, groove.GrooveVolume / byQuadrature, 1e-9);
                }
            );

    [Fact]
    public void GirthGroove_WithItsCap_EqualsQuadratureAlongTheShaft() =>
        // Slice by slice along the axis, each a ring from the groove's flank to the cap: not the way of Pappus.
        Gen.Select(
                Gen.Double[20, 40],
                Gen.Double[0.2, 1],
                Gen.Double[0.3, 0.8],
                Gen.Double[0.1, 3],
                Gen.Double[0, 4]
            )
            .Sample(
                (d, share, bevel, gap, cap) =>
                {
                    var (r, h) = (d / 2, share * d / 2);
                    var groove = new GirthGroove(d, h, bevel, gap, cap);
                    var half = groove.CapWidth / 2;
                    double Ring(double z)
                    {
                        var floor = z <= gap / 2 ? r - h : r - h + (z - gap / 2) / Math.Tan(bevel);
                        var top = r + cap * (1 - z / half * (z / half));
                        return Math.PI * (top * top - floor * floor);
                    }
                    double Over(double from, double to) =>
                        MathNet.Numerics.Integration.GaussLegendreRule.Integrate(
                            Ring,
                            from,
                            to,
                            16
                        );
                    var volume = 2 * (Over(0, gap / 2) + Over(gap / 2, half));
                    Assert.Equal(1, groove.Volume / volume, 1e-9);
                    // A cap a little wider on both sides: what the lap is said to add.
                    double Cap(double w) =>
                        MathNet.Numerics.Integration.GaussLegendreRule.Integrate(
                            z =>
                            {
                                var y = cap * (1 - 4 * z * z / (w * w));
                                return Math.PI * ((r + y) * (r + y) - r * r);
                            },
                            -w / 2,
                            w / 2,
                            16
                        );
                    Assert.Equal(
                        groove.LapVolume,
                        Cap(groove.CapWidth + 2) - Cap(groove.CapWidth),
                        1e-6
                    );
                }
            );

    [Fact]
    public void GirthGroove_ToTheCentre_IsTwoCylindersLessTheirCones()
    {
        // Limit h = R, g = 0: V = (4/3)πR³·tan φ.
        var groove = new GirthGroove(25, 12.5, Math.PI / 6, 0, 0);
        Assert.Equal(
            4.0 / 3 * Math.PI * Math.Pow(12.5, 3) * Math.Tan(Math.PI / 6),
            groove.Volume,
            1e-9
        );
    }

    [Fact]
    public void Passes_OfTheSecondGroove_AreSixOrFive()
    {
        var groove = new GirthGroove(25, 8, Math.PI / 6, 2, 1.5);
        Assert.Equal(6, groove.Passes(12));
        Assert.Equal(5, groove.Passes(15));
    }

    [Theory]
    [InlineData(0.20, 0.5904)]
    [InlineData(0.25, 0.683594)]
    [InlineData(0.30, 0.7599)]
    [InlineData(0.40, 0.8704)]
    [InlineData(0.50, 0.9375)]
    [InlineData(0.75, 0.996094)]
    public void FusedShare_ByPenetration_IsPublished(double penetration, double share) =>
        // strength.md 6.1, derived: 1 − (1 − p)⁴.
        Assert.Equal(share, GirthGroove.FusedShare(penetration * 14, 28), 6);

    [Fact]
    public void OneSidedPull_OfATenthOfAMillimetre_PutsTheShaftOverAMillimetreOut()
    {
        // welding-and-inspection.md 2.4, derived: D 25, δ 0.10, L1 300, L2 400.
        var kink = BeadPull.Kink(0.10, 25);
        Assert.Equal(0.0040, kink, 1e-12);
        Assert.Equal(1.3714, BeadPull.RunOut(kink, 300, 400), 4);
    }

    [Theory]
    [InlineData(0.8, 0.23745, 0.46102)]
    [InlineData(0.9, 0.12869, 0.25562)]
    public void BeadsOnOppositeSides_LeaveLessThanRoundAndRound(
        double stiffening,
        double opposite,
        double round
    )
    {
        Assert.Equal(opposite, BeadPull.Left(stiffening, [0, 180, 90, 270]), 5);
        Assert.Equal(round, BeadPull.Left(stiffening, [0, 90, 180, 270]), 5);
    }

    [Fact]
    public void BeadsOnOppositeSides_AreBetterForEveryStiffening() =>
        Gen.Double[0.01, 0.99]
            .Sample(r => BeadPull.Left(r, [0, 180, 90, 270]) < BeadPull.Left(r, [0, 90, 180, 270]));

    [Theory]
    [InlineData(600, 1, 17463.0)]
    [InlineData(550, 2, 16710.8)]
    public void Tempering_Parameter_IsPublished(double celsius, double hours, double parameter) =>
        // Hollomon and Jaffe, welding-and-inspection.md 1.6, derived.
        Assert.Equal(parameter, Tempering.Parameter(celsius, hours), 1);
}
