using CsCheck;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;
using Shaftwright.Weld;

namespace Shaftwright.Tests.Weld;

/// <summary>Preheat to temper of a whole weld.</summary>
public sealed class HeatTests
{
    private static Measured<Content> Percent(double percent, double plusMinus = 0) =>
        Measured<Content>.Of(percent, Content.Percent, plusMinus);

    private static Measured<Temperature> Celsius(double t) =>
        Measured<Temperature>.Of(t, Temperature.Celsius);

    private static WeldInput Bar(WeldSteel? steel = null) =>
        new()
        {
            InnerDiameter = WeldJobs.Mm(25),
            OuterDiameter = WeldJobs.Mm(25),
            InnerSteel = steel,
            OuterSteel = steel,
        };

    private static ArcInput Arc =>
        new()
        {
            Process = ArcProcess.Tig,
            Volts = Measured<Voltage>.Of(12, Voltage.Volt, 0),
            Amps = Measured<Current>.Of(120, Current.Ampere, 0),
            Speed = Measured<TravelSpeed>.Of(100, TravelSpeed.MmPerMinute, 0),
            Hydrogen = HydrogenScale.E,
        };

    [Fact]
    public void Preheat_OfEveryMediumCarbonSteelListed_IsCalledAnExtrapolation()
    {
        var steels = PublishedFile.Load("carbon-equivalents").Cases;
        var warned = 0;
        foreach (var c in steels)
        {
            double E(string element) => c.Has(element) ? c.Number(element) : 0;
            var weld = Bar(
                new()
                {
                    Carbon = Percent(E("C")),
                    Silicon = Percent(E("Si")),
                    Manganese = Percent(E("Mn")),
                    Chromium = Percent(E("Cr")),
                    Molybdenum = Percent(E("Mo")),
                    Nickel = Percent(E("Ni")),
                    Copper = Percent(E("Cu")),
                    Vanadium = Percent(E("V")),
                }
            ) with
            {
                Arc = Arc,
            };
            var result = WeldJobs.Solve(weld);
            // Analysed without doubt: the numbers are those of the published steel.
            var numbers = result.Heat!.Steels[0];
            c.Agrees("CE", numbers.CarbonEquivalent.High);
            c.Agrees("CET", numbers.Cet.High);
            c.Agrees("Pcm", numbers.CrackingParameter.High);
            if (E("C") <= 0.32)
            {
                Assert.DoesNotContain(
                    result.Heat.MethodBLimits,
                    l => l.StartsWith("carbon", StringComparison.Ordinal)
                );
                continue;
            }
            warned++;
            var text = result.Text("preheat-extrapolated");
            Assert.Contains("carbon", text, StringComparison.Ordinal);
            if (numbers.Cet.High > 0.50)
                Assert.Contains("CET", text, StringComparison.Ordinal);
            Assert.All(
                result.Heat.MethodBLimits,
                l => Assert.Contains(l, text, StringComparison.Ordinal)
            );
        }
        Assert.Equal(6, warned);
    }

    [Fact]
    public void MethodB_OfAnExactCase_IsThePublishedNumber()
    {
        // B7: 1045, CET 0.525, d 25, HD 3, and Q 0.5184 of case Q1 in place of 0.6.
        var weld = Bar(
            new()
            {
                Carbon = Percent(0.45),
                Silicon = Percent(0.25),
                Manganese = Percent(0.75),
                Chromium = Percent(0),
                Molybdenum = Percent(0),
                Nickel = Percent(0),
                Copper = Percent(0),
                Vanadium = Percent(0),
            }
        ) with
        {
            Arc = Arc,
        };
        var heat = WeldJobs.Solve(weld).Heat!;
        Assert.Equal(0.5184, heat.HeatInput.High, 1e-9);
        Assert.Equal(0.864, heat.ArcEnergy!.Value, 1e-9);
        // Scale E runs from 1 to 3 ml/100 g; the high end is the published row's hydrogen.
        Assert.Equal(MethodB.Of(0.525, 25, 3, 0.5184).Temperature, heat.MethodB.High, 1e-9);
    }

    [Fact]
    public void Bands_OfAnUnknownSteel_HoldThoseOfEverySteelItCanBe() =>
        Gen.Select(Gen.Int[0, 3], Gen.Double[18, 40])
            .Sample(
                (which, d) =>
                {
                    var family = new[]
                    {
                        SteelFamily.MediumCarbon,
                        SteelFamily.CarbonManganese,
                        SteelFamily.ChromiumMolybdenum,
                        SteelFamily.NickelChromiumMolybdenum,
                    }[which];
                    var bar = WeldJobs.Mm(Math.Round(d, 3));
                    var open = Bar() with { InnerDiameter = bar, OuterDiameter = bar, Arc = Arc };
                    var unknown = WeldJobs.Solve(open).Heat!;
                    var steel = new WeldSteel { Family = family };
                    var known = WeldJobs
                        .Solve(open with { InnerSteel = steel, OuterSteel = steel })
                        .Heat!;
                    Assert.True(known.MethodB.High <= unknown.MethodB.High + 1e-9);
                    Assert.True(known.Preheat.High <= unknown.Preheat.High + 1e-9);
                    Assert.True(
                        known.Steels[0].CarbonEquivalent.High
                            <= unknown.Steels[0].CarbonEquivalent.High + 1e-9
                    );
                    Assert.True(
                        known.Steels[0].CarbonEquivalent.Low
                            >= unknown.Steels[0].CarbonEquivalent.Low - 1e-9
                    );
                    Assert.True(unknown.Preheat.High < unknown.InterpassLimit);
                }
            );

    [Fact]
    public void TheMoreDemandingPiece_Governs()
    {
        var mixed = Bar() with
        {
            InnerSteel = new() { Family = SteelFamily.MediumCarbon },
            OuterSteel = new() { Family = SteelFamily.ChromiumMolybdenum },
        };
        var heat = WeldJobs.Solve(mixed).Heat!;
        Assert.Equal(new Band(175, 250), heat.Preheat);
        Assert.Equal(HeatSolver.InterpassAlloyed, heat.InterpassLimit);
        // Swapped it is the same.
        var swapped = WeldJobs.Solve(
            mixed with
            {
                InnerSteel = mixed.OuterSteel,
                OuterSteel = mixed.InnerSteel,
            }
        );
        Assert.Equal(heat.Preheat, swapped.Heat!.Preheat);
        Assert.Equal(heat.MethodB, swapped.Heat.MethodB);
    }

    [Fact]
    public void Filler_WithAHigherCetThanTheSteel_Governs()
    {
        var weld = Bar(new() { Family = SteelFamily.LowCarbon }) with
        {
            Filler = new() { Cet = Percent(0.45) },
            Arc = Arc,
        };
        // EN 1011-2: the larger of parent CET and weld-metal CET + 0.03 (from memory).
        Assert.Equal(0.48, WeldJobs.Solve(weld).Heat!.Cet.High, 1e-9);
    }

    [Theory]
    [InlineData(SteelClass.MediumCarbon, null, null, 100, true, true)] // Noted as what it cannot be: the donor's class counts.
    [InlineData(SteelClass.QuenchedTemperedAlloy, null, null, 175, true, true)]
    [InlineData(SteelClass.Unknown, 54.0, null, 275, true, true)] // Harder than a quarter per cent of carbon can make it.
    [InlineData(SteelClass.Unknown, null, null, 20, true, false)] // Nothing known against it but what shafts are made of.
    [InlineData(SteelClass.MediumCarbon, null, 0.15, 20, true, false)] // An analysis outweighs the class, and the two do not agree.
    public void LowCarbon_SaidOfADonor_IsFlaggedAndWhatIsKnownOfItCounts(
        SteelClass known,
        double? hrc,
        double? carbon,
        double atLeast,
        bool flagged,
        bool hardens
    )
    {
        var steel = new WeldSteel
        {
            Family = SteelFamily.LowCarbon,
            Carbon = carbon is { } c ? Percent(c) : null,
        };
        var donor = new DonorProfile(
            "",
            [],
            [],
            new SteelKnown(known, null, hrc is { } h ? new Band(h - 1, h + 1) : null)
        );
        var around = new WeldAround(
            Donors: new DonorsResult
            {
                InnerEnd = donor,
                OuterEnd = donor,
                Findings = [],
            }
        );
        var result = WeldSolver.Solve(Bar(steel), around);
        Assert.Equal(
            flagged,
            result.Heat!.PreheatFindings.Any(f =>
                f is { Code: "low-carbon-doubtful", Severity: Severity.Caution }
            )
        );
        Assert.True(result.Heat.Preheat.Low >= atLeast, $"{result.Heat.Preheat.Low}");
        Assert.Equal(hardens, SteelGuesses.Of(steel, donor.Steel).Hardens);
        // Said of no family, nothing is flagged.
        Assert.DoesNotContain(
            WeldSolver.Solve(Bar(), around).Heat!.PreheatFindings,
            f => f.Code == "low-carbon-doubtful"
        );
    }

    [Fact]
    public void AusteniticFiller_RulesOutMagneticTesting()
    {
        var weld = Bar() with { Filler = new() { Kind = FillerKind.Austenitic } };
        Assert.Contains(
            "magnetic",
            WeldJobs.Solve(weld).Text("austenitic-filler"),
            StringComparison.Ordinal
        );
        Assert.False(WeldJobs.Solve(Bar()).Has("austenitic-filler"));
    }

    [Fact]
    public void ChosenPreheat_BelowTheBandOrOverTheLimit_IsSaid()
    {
        WeldResult With(double preheat) =>
            WeldJobs.Solve(
                Bar(new() { Family = SteelFamily.ChromiumMolybdenum }) with
                {
                    Heat = new() { Preheat = Celsius(preheat) },
                }
            );
        Assert.True(With(150).Has("preheat-low"));
        Assert.False(With(200).Has("preheat-low"));
        Assert.False(With(200).Has("preheat-high"));
        Assert.True(With(330).Has("preheat-high"));
    }

    [Fact]
    public void OneLap_OfThePublishedBar_WarmsItAsPublishedAndFewBeadsFit()
    {
        // welding-and-inspection.md 1.5: D 25, 100 mm, 0.5 kJ/mm: 207.98 K a lap.
        var weld = Bar(new() { Family = SteelFamily.MediumCarbon }) with
        {
            Arc = Arc with { Speed = Measured<TravelSpeed>.Of(103.68, TravelSpeed.MmPerMinute, 0) },
        };
        var heat = WeldJobs.Solve(weld).Heat!;
        Assert.Equal(207.98, heat.LapWarming!.Value.High, 2);
        // From 150 to 250 °C: a quarter lap warms it 52 K, so one bead and no second.
        Assert.Equal(1, heat.BeadsInOneGo);
    }

    [Fact]
    public void Hardness_IsABandOfBothMethods_AndWarnsOver350()
    {
        var result = WeldJobs.Solve(Bar(new() { Family = SteelFamily.ChromiumMolybdenum }));
        var heat = result.Heat!;
        Assert.True(heat.Dueren!.Value.High > heat.Dueren.Value.Low);
        Assert.True(heat.Yurioka!.Value.High > 350);
        Assert.Equal(
            Severity.Caution,
            result.Findings.Single(f => f.Code == "hardness-as-welded").Severity
        );
    }

    [Theory]
    [InlineData(SteelFamily.NickelChromiumMolybdenum, 200, true)]
    [InlineData(SteelFamily.ChromiumMolybdenum, 150, true)]
    [InlineData(SteelFamily.ChromiumMolybdenum, 400, false)]
    public void TemperedTooLow_TheHandbookBandIsShownWholeAndStops(
        SteelFamily family,
        double tempered,
        bool stops
    )
    {
        var plain = WeldJobs.Solve(Bar(new() { Family = family })).Heat!.Preheat;
        var low = WeldJobs.Solve(Bar(new() { Family = family, TemperedAt = Celsius(tempered) }));
        Assert.Equal(plain, low.Heat!.Preheat);
        Assert.Equal(
            stops,
            low.Findings.Any(f => f is { Code: "preheat-over-temper", Severity: Severity.Stop })
        );
    }

    [Fact]
    public void TemperedAt_HoldsInterpassAndTemperUnderIt()
    {
        var weld = Bar(
            new() { Family = SteelFamily.ChromiumMolybdenum, TemperedAt = Celsius(300) }
        ) with
        {
            Heat = new()
            {
                Temper = Celsius(300),
                TemperTime = Measured<Duration>.Of(2, Duration.Hour),
            },
        };
        var result = WeldJobs.Solve(weld);
        Assert.Equal(285, result.Heat!.InterpassLimit);
        Assert.Equal(new Band(270, 285), result.Heat.Temper);
        Assert.True(result.Heat.Preheat.High <= 270);
        // Two hours at the same temperature go further than one.
        Assert.True(result.Has("temper-over"));
        Assert.False(
            WeldJobs
                .Solve(
                    weld with
                    {
                        Heat = new()
                        {
                            Temper = Celsius(275),
                            TemperTime = Measured<Duration>.Of(1, Duration.Hour),
                        },
                    }
                )
                .Has("temper-over")
        );
    }

    [Theory]
    [InlineData(SteelClass.MediumCarbon, 600, 650)]
    [InlineData(SteelClass.QuenchedTemperedAlloy, 500, 550)]
    public void Temper_ByClass_IsThatOfTheDataSheet(SteelClass steel, double low, double high)
    {
        var heat = WeldSolver.Solve(Bar(), new(Donors: Donors(steel))).Heat!;
        Assert.Equal(new Band(low, high), heat.Temper);
        Assert.Equal(3600, heat.TemperTime);
    }

    [Fact]
    public void SurfaceHardness_Alone_RaisesTheLeastCarbon()
    {
        var soft = WeldSolver.Solve(Bar(), new(Donors: Donors(SteelClass.Unknown))).Heat!;
        var hard = WeldSolver
            .Solve(Bar(), new(Donors: Donors(SteelClass.Unknown, new Band(58, 62))))
            .Heat!;
        Assert.Equal(SteelGuesses.LeastCarbon(58), hard.Steels[0].Carbon.Low, 1e-12);
        Assert.True(hard.Steels[0].CarbonEquivalent.Low > soft.Steels[0].CarbonEquivalent.Low);
        Assert.Contains("hardness", hard.Steels[0].Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Places_OnTheMadeShaft_ComeHotterTheNearerTheyAre()
    {
        var made = new MadeShaft(
            500,
            [
                new(ZoneKind.Spline, 0, 60, 27, 27, 24),
                new(ZoneKind.Plain, 60, 140, 25, 25),
                new(ZoneKind.BootSeat, 140, 160, 25, 25),
                new(ZoneKind.Plain, 160, 250, 25, 25),
                new(ZoneKind.Plain, 250, 440, 25, 25),
                new(ZoneKind.Spline, 440, 500, 27, 27, 24),
            ],
            [],
            250,
            20,
            null,
            null,
            null
        );
        var around = new WeldAround(new() { Made = made, Findings = [] });
        var heat = WeldSolver.Solve(Bar(new() { Family = SteelFamily.MediumCarbon }), around).Heat!;
        var inner = heat.Places.Where(p => p.End == ShaftEnd.Inner).ToList();
        var boot = inner.Single(p => p.Words.StartsWith("boot", StringComparison.Ordinal));
        var spline = inner.Single(p => p.Words == "spline");
        Assert.Equal((90, 190), (boot.FromWeld, spline.FromWeld));
        Assert.True(boot.Comes.High > spline.Comes.High);
        Assert.All(heat.Places, p => Assert.True(p.Comes.Low < p.Comes.High));
        Assert.All(heat.Places, p => Assert.True(p.ComesTempering.High > p.Comes.High));
        Assert.All(heat.Places, p => Assert.True(p.Comes.High < heat.InterpassLimit));
        var text = heat.PreheatFindings.Single(f => f.Code == "heat-reaches").Text.ToString();
        Assert.Contains("boot seat", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Softening_OfAHardCaseByTheWeld_ReachesFurtherThanOfPlainBar()
    {
        MadeShaft Made(params HardStretch[] hard) =>
            new(
                500,
                [new(ZoneKind.Plain, 0, 250, 25, 25), new(ZoneKind.Plain, 250, 500, 25, 25)],
                hard,
                250,
                20,
                null,
                null,
                null
            );
        SoftenedLength Of(MadeShaft made) =>
            WeldSolver
                .Solve(
                    Bar(new() { Family = SteelFamily.MediumCarbon }) with
                    {
                        Arc = Arc,
                    },
                    new(
                        new() { Made = made, Findings = [] },
                        Donors: Donors(SteelClass.MediumCarbon)
                    )
                )
                .Heat!.Softened.Single(s => s.End == ShaftEnd.Inner);
        var plain = Of(Made());
        var hard = Of(Made(new HardStretch(20, 240, null)));
        Assert.Equal((725, 200), (plain.From, hard.From));
        Assert.True(hard.Length.High > plain.Length.High);
        Assert.True(hard.Length.Low >= plain.Length.Low);
        Assert.False(plain.Measured);
    }

    [Fact]
    public void Solve_AnythingLegal_GivesNumbersThatAreNumbers() =>
        Gen.Select(
                Gen.Double[8, 120],
                Gen.Double[100, 720],
                Gen.Double[0, 450],
                Gen.Double[20, 500],
                Gen.Int[0, 5]
            )
            .Sample(
                (d, tempered, preheat, heated, family) =>
                {
                    var weld = new WeldInput
                    {
                        InnerDiameter = WeldJobs.Mm(Math.Round(d, 2)),
                        OuterDiameter = WeldJobs.Mm(25),
                        InnerSteel = new()
                        {
                            Family = (SteelFamily)family,
                            TemperedAt = Celsius(Math.Round(tempered, 1)),
                        },
                        Heat = new()
                        {
                            Preheat = Celsius(Math.Round(preheat, 1)),
                            HeatedLength = WeldJobs.Mm(Math.Round(heated, 1)),
                        },
                    };
                    var heat = WeldJobs.Solve(weld).Heat!;
                    foreach (
                        var band in new[]
                        {
                            heat.Preheat,
                            heat.MethodB,
                            heat.HeatInput,
                            heat.Cooling!.Value,
                            heat.Dueren!.Value,
                            heat.Yurioka!.Value,
                            heat.LapWarming!.Value,
                            heat.Softened[0].Length,
                            heat.Softened[1].Length,
                        }
                    )
                    {
                        Assert.True(double.IsFinite(band.Low) && double.IsFinite(band.High));
                        Assert.True(band.Low <= band.High);
                    }
                }
            );

    private static DonorsResult Donors(SteelClass steel, Band? surface = null)
    {
        var donor = new DonorProfile("", [], [], new SteelKnown(steel, null, surface));
        return new()
        {
            InnerEnd = donor,
            OuterEnd = donor,
            Findings = [],
        };
    }
}
