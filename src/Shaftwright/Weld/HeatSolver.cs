using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Weld;

/// <summary>Preheat, cooling, hardness, interpass, softening and tempering of the butt weld, as ranges over what is not known.</summary>
/// <remarks>
/// <para>Preheat: the handbooks' band for the more demanding piece is the answer; EN 1011-2 method B stands beside it with every
/// limit it breaks, since every medium-carbon shaft steel breaks them. The more demanding piece governs, and a filler whose CET
/// plus 0.03 is higher governs over both (EN 1011-2, from memory).</para>
/// <para>t8/5 and hardness: at the coldest and the hottest that the bar may be, the least and most heat, the thinner and the
/// thicker piece. Two plate formulas on a bar, two hardness methods that do not agree: bands, never numbers.</para>
/// <para>Softening: the least is the reach of one run on a thick body at the least preheat, the most that of a whole lap along
/// the bar at the interpass limit (<see cref="BarHeat"/>); the etched sample replaces it. Method and limits: docs/weld.md.</para>
/// </remarks>
public static class HeatSolver
{
    /// <summary>Highest interpass temperature for plain carbon steel, °C. EN 1011-2 practice for structural steel, from memory.</summary>
    public const double InterpassPlain = 250;

    /// <summary>The same for chromium-molybdenum steels, °C. Arc-welding handbooks, from memory.</summary>
    public const double InterpassAlloyed = 315;

    /// <summary>How far under the interpass limit and under a maker's temper the heat stays, °C.</summary>
    internal const double Clear = 15;

    /// <summary>Highest temperature at a hardened spline or another hard case, °C: what it was tempered at is seldom more.
    /// Common practice, no source.</summary>
    public const double AllowedSpline = 150;

    /// <summary>Highest temperature at a boot seat with the boot on, °C. Common practice for rubber, no source.</summary>
    public const double AllowedBoot = 80;

    /// <summary>Highest temperature at a greased joint, °C. Common practice, no source.</summary>
    public const double AllowedJoint = 80;

    // A case is tempered at 150 to 200 °C and loses hardness above; from memory.
    private const double CaseSoftens = 200;

    // Through-hardened bar of unknown temper: the low end of usual tempers of 4140, from memory.
    private const double CoreSoftens = 540;

    // Normalised bar has no hardness to lose below the lower transformation temperature; from memory.
    private const double Transforms = 725;

    // A hard case that ends within this of the weld is counted as at the weld, mm.
    private const double CaseNear = 80;

    // Steel between 100 and 400 °C, and still air with radiation; textbook ranges.
    private static readonly (double Least, double Most) s_conductivity = (30, 50);
    private static readonly (double Least, double Most) s_loss = (10, 30);

    /// <summary>Solves the heat of the weld.</summary>
    /// <param name="weld">What is known of it.</param>
    /// <param name="around">What the stages before it say.</param>
    public static HeatNumbers Solve(WeldInput weld, WeldAround around)
    {
        ArgumentNullException.ThrowIfNull(weld);
        ArgumentNullException.ThrowIfNull(around);
        var arc = weld.Arc ?? new ArcInput();
        var heat = weld.Heat ?? new HeatPlan();
        var advice = new HeatAdvice();
        var inner = SteelGuesses.Of(weld.InnerSteel, around.Steel(ShaftEnd.Inner));
        var outer = SteelGuesses.Of(weld.OuterSteel, around.Steel(ShaftEnd.Outer));
        var alloyed = inner.Alloyed || outer.Alloyed;
        var interpass = Interpass(weld, alloyed);
        var handbook = Worse(inner.Handbook, outer.Handbook);
        var (low, room) = (RoundUp(handbook.Low), interpass - Clear);
        var high = Math.Min(RoundUp(handbook.High), UsualInterpass(alloyed) - Clear);
        // The band is not cut to nothing: where the temper leaves no room for it, that is said instead.
        var preheat = new Band(low, low <= room ? Math.Min(high, room) : high);
        var hydrogen = ArcFields.Of(arc.Hydrogen, arc.Process);
        var (q, energy) = HeatInput(arc);
        var filler = weld.Filler ?? new Filler();
        var cet = Worse(inner.Cet, outer.Cet);
        if (filler.Cet is { } metal)
        {
            var a = metal.PlusMinus ?? PreparationFields.FillerCet.UsualPlusMinus;
            cet = Worse(cet, new(metal.Value - a + 0.03, metal.Value + a + 0.03));
        }
        var numbers = new HeatNumbers
        {
            Steels = [Numbers(ShaftEnd.Inner, inner), Numbers(ShaftEnd.Outer, outer)],
            Preheat = preheat,
            Cet = cet,
            Hydrogen = hydrogen,
            HeatInput = q,
            ArcEnergy = energy,
            HeatInputKnown = energy is not null && arc.Process != ArcProcess.Unknown,
            InterpassLimit = interpass,
        };
        var a1 = around.Diameter(weld, ShaftEnd.Inner);
        var a2 = around.Diameter(weld, ShaftEnd.Outer);
        if ((a1 ?? a2) is { } one && (a2 ?? a1) is { } two)
            numbers = OfBar(
                numbers,
                inner,
                outer,
                new(Math.Min(one, two), Math.Max(one, two)),
                heat.HeatedLength?.Value ?? HeatFields.UsualHeatedLength
            );
        numbers = Tempering(numbers, weld, around);
        if (numbers.Diameter is { } d)
            numbers = numbers with
            {
                Softened = Softening(numbers, weld, around, d),
                Places = Places(numbers, weld, around, d),
            };

        advice.Preheat(numbers, inner, outer, heat, arc, filler);
        advice.Places(numbers);
        advice.Welding(numbers, heat, around);
        advice.Tempering(numbers, weld, around);
        return numbers with
        {
            PreheatFindings = advice.OfPreheat,
            WeldFindings = advice.OfWelding,
            TemperFindings = advice.OfTempering,
        };
    }

    /// <summary>The range of a quantity of which the larger of two pieces governs.</summary>
    private static Band Worse(Band a, Band b) =>
        new(Math.Max(a.Low, b.Low), Math.Max(a.High, b.High));

    private static double RoundUp(double celsius) => Math.Ceiling(celsius / 5 - 1e-9) * 5;

    private static double UsualInterpass(bool alloyed) =>
        alloyed ? InterpassAlloyed : InterpassPlain;

    private static double Interpass(WeldInput weld, bool alloyed)
    {
        var limit = UsualInterpass(alloyed);
        foreach (var steel in new[] { weld.InnerSteel, weld.OuterSteel })
        {
            if (steel?.TemperedAt is { } tempered)
                limit = Math.Min(limit, tempered.Value - Clear);
        }
        return limit;
    }

    private static (Band Q, double? Energy) HeatInput(ArcInput arc)
    {
        if (arc is not { Volts: { } u, Amps: { } i, Speed: { } v })
            return (ArcFields.UsualHeatInput(arc.Process), null);
        var energy = u.Value * i.Value * 60 / (1000 * v.Value);
        double Share<T>(Measured<T> m, Field<T> field)
            where T : IDimension<T> => (m.PlusMinus ?? field.UsualPlusMinus) / m.Value;
        var off = Math.Min(
            0.5,
            Share(u, ArcFields.Volts) + Share(i, ArcFields.Amps) + Share(v, ArcFields.Speed)
        );
        var k = ArcHeat.EfficiencyBand(arc.Process);
        return (new(k.Low * energy * (1 - off), k.High * energy * (1 + off)), energy);
    }

    private static SteelNumbers Numbers(ShaftEnd end, SteelGuess steel) =>
        new(
            end,
            steel.Words,
            steel.Carbon,
            steel.CarbonEquivalent,
            steel.Cet,
            steel.CrackingParameter,
            steel.CetLimitsBroken
        );

    private static HeatNumbers OfBar(
        HeatNumbers numbers,
        SteelGuess inner,
        SteelGuess outer,
        Band diameter,
        double heated
    )
    {
        var (q, hydrogen, cet) = (numbers.HeatInput, numbers.Hydrogen, numbers.Cet);
        var temperatures = new List<double>();
        var limits = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var limit in inner.CetLimitsBroken.Concat(outer.CetLimitsBroken))
            limits.TryAdd(MethodB.NameOf(limit), limit);
        // Monotone in each: the corners hold the extremes.
        foreach (var c in Ends(cet))
        foreach (var hd in Ends(hydrogen))
        foreach (var heat in Ends(q))
        foreach (var d in Ends(diameter))
        {
            var b = MethodB.Of(c, d, hd, heat);
            temperatures.Add(b.Temperature);
            foreach (var limit in b.LimitsBroken)
                limits.TryAdd(MethodB.NameOf(limit), limit);
        }
        var slow = Math.Min(numbers.InterpassLimit, CoolingTime.Pole - 1);
        List<CoolingTime> times =
        [
            .. Ends(q)
                .SelectMany(heat =>
                    Ends(diameter)
                        .SelectMany(d =>
                            new[] { numbers.Preheat.Low, slow }.Select(t =>
                                CoolingTime.Of(t, heat, d)
                            )
                        )
                ),
        ];
        Band Over(Func<CoolingTime, double> of) => new(times.Min(of), times.Max(of));
        var governs = Over(t => t.Seconds);
        Band Hard(Func<Composition, double, double> method)
        {
            var all = inner.Candidates.Concat(outer.Candidates).ToList();
            return new(
                all.Min(c => method(c.Low, governs.High)),
                all.Max(c => method(c.High, governs.Low))
            );
        }
        var lap = new Band(
            ArcHeat.BarWarming(q.Low, diameter.High, heated),
            ArcHeat.BarWarming(q.High, diameter.Low, heated)
        );
        var from = (numbers.Preheat.Low + numbers.Preheat.High) / 2;
        return numbers with
        {
            Diameter = diameter.High,
            MethodB = new(temperatures.Min(), temperatures.Max()),
            MethodBLimits = [.. limits.Values],
            CoolingThreeDimensional = Over(t => t.ThreeDimensional),
            CoolingTwoDimensional = Over(t => t.TwoDimensional),
            Cooling = governs,
            Dueren = Hard(HeatHardness.Dueren),
            Yurioka = Hard(HeatHardness.Yurioka),
            LapWarming = lap,
            BeadsInOneGo = (int)
                Math.Max(0, Math.Floor((numbers.InterpassLimit - from) / (lap.High / 4) + 1e-9)),
        };
    }

    private static double[] Ends(Band band) =>
        band.Low == band.High ? [band.Low] : [band.Low, band.High];

    private static HeatNumbers Tempering(HeatNumbers numbers, WeldInput weld, WeldAround around)
    {
        // Source: data sheet of 42CrMo4, annealed 600 to 650 °C and hardened 500 to 550; under the maker's own temper a welding
        // guide says 15 °C, others 25 to 30 (from memory).
        Band Of(ShaftEnd end, WeldSteel? steel)
        {
            if (steel?.TemperedAt is { } t)
                return new(t.Value - 30, t.Value - 15);
            var hardened =
                around.Steel(end)?.Class == SteelClass.QuenchedTemperedAlloy
                || around.Steel(end)?.CoreHrc is { Low: > 24 }
                || steel?.Family
                    is SteelFamily.ChromiumMolybdenum
                        or SteelFamily.NickelChromiumMolybdenum;
            return hardened ? new(500, 550) : new(600, 650);
        }
        var a = Of(ShaftEnd.Inner, weld.InnerSteel);
        var b = Of(ShaftEnd.Outer, weld.OuterSteel);
        return numbers with
        {
            // The piece that stands less governs.
            Temper = a.High <= b.High ? a : b,
            // By the clock of a bench: up to the next five minutes.
            TemperTime = Math.Max(
                3600,
                Math.Ceiling((numbers.Diameter ?? 25) / 25 * 12 - 1e-9) * 300
            ),
        };
    }

    private static List<SoftenedLength> Softening(
        HeatNumbers numbers,
        WeldInput weld,
        WeldAround around,
        double diameter
    )
    {
        var list = new List<SoftenedLength>();
        var preparation = weld.Preparation ?? new Preparation();
        var half =
            Math.Tan(preparation.Bevel?.Value ?? PreparationFields.UsualBevel) * diameter / 2
            + (around.CutInput?.RootGap?.Value ?? CutFields.UsualRootGap) / 2;
        var sample = SampleReadings.Of(around.Strength?.Sample);
        var heated = (weld.Heat?.HeatedLength?.Value ?? HeatFields.UsualHeatedLength) / 2;
        foreach (var end in new[] { ShaftEnd.Inner, ShaftEnd.Outer })
        {
            var (from, why) = SoftensFrom(end, weld, around);
            if (sample?.SoftenedTo(end == ShaftEnd.Inner) is { } seen)
            {
                list.Add(new(end, from, Band.Exactly(seen), true, "hardness across the sample"));
                continue;
            }
            double Reach(double before, Func<double, double> run, double dying) =>
                before < from - 5
                    ? run(before)
                    // Preheat itself is hot enough: as far as it is held, and as far as it dies away beyond.
                    : heated
                        + dying
                            * Math.Log(
                                Math.Max(1, (before - BarHeat.Workshop) / (from - BarHeat.Workshop))
                            );
            var least = Reach(
                numbers.Preheat.Low,
                t => BarHeat.ReachOfRun(numbers.HeatInput.Low, t, from),
                BarHeat.DyingLength(diameter, s_conductivity.Least, s_loss.Most)
            );
            var most = Reach(
                numbers.InterpassLimit,
                t => half + BarHeat.ReachOfLap(numbers.HeatInput.High, diameter, t, from),
                BarHeat.DyingLength(diameter, s_conductivity.Most, s_loss.Least)
            );
            list.Add(new(end, from, new(Math.Min(least, most), Math.Max(least, most)), false, why));
        }
        return list;
    }

    private static (double From, string Why) SoftensFrom(
        ShaftEnd end,
        WeldInput weld,
        WeldAround around
    )
    {
        var steel = end == ShaftEnd.Inner ? weld.InnerSteel : weld.OuterSteel;
        var known = around.Steel(end);
        if (around.Cut?.Made is { } made)
        {
            var near = made.Hardened.Any(h =>
                end == ShaftEnd.Inner
                    ? h.From < made.WeldAt && made.WeldAt - h.To < CaseNear
                    : h.To > made.WeldAt && h.From - made.WeldAt < CaseNear
            );
            if (near)
                return (CaseSoftens, "its hard case loses hardness from about 200 °C");
        }
        if (steel?.TemperedAt is { } t)
            return (t.Value, "it loses hardness above the temperature it was tempered at");
        if (
            known?.Class == SteelClass.QuenchedTemperedAlloy
            || known?.CoreHrc is { Low: > 24 }
            || known is null or { Class: SteelClass.Unknown }
        )
            return (CoreSoftens, "taken as tempered at 540 °C, the low end of what is usual");
        return (Transforms, "bar that was not hardened changes from about 725 °C");
    }

    private static List<HotPlace> Places(
        HeatNumbers numbers,
        WeldInput weld,
        WeldAround around,
        double diameter
    )
    {
        var list = new List<HotPlace>();
        if (around.Cut?.Made is not { } made)
            return list;
        var heated = (weld.Heat?.HeatedLength?.Value ?? HeatFields.UsualHeatedLength) / 2;
        var cold = weld.Heat?.Preheat?.Value ?? numbers.Preheat.Low;
        var hot = Math.Max(
            numbers.InterpassLimit,
            Math.Max(weld.Heat?.Preheat?.Value ?? 0, weld.Heat?.Interpass?.Value ?? 0)
        );
        var temper = weld.Heat?.Temper?.Value is { } chosen ? Band.Exactly(chosen) : numbers.Temper;
        foreach (var end in new[] { ShaftEnd.Inner, ShaftEnd.Outer })
        {
            var inner = end == ShaftEnd.Inner;
            List<Stretch> side =
            [
                .. made.Stretches.Where(s => inner ? s.To <= made.WeldAt : s.From >= made.WeldAt),
            ];
            var free = (inner ? made.WeldAt : made.Overall - made.WeldAt) - heated;
            if (free <= 0)
                continue;
            var thick = side.Where(s => !s.Guessed)
                .Select(s => Math.Max(s.Diameter, s.EndDiameter))
                .DefaultIfEmpty(diameter)
                .Max();
            var slow = BarHeat.DyingLength(thick, s_conductivity.Most, s_loss.Least);
            var quick = BarHeat.DyingLength(diameter, s_conductivity.Least, s_loss.Most);
            double? Nearest(ZoneKind kind) =>
                side.Where(s => s.Kind == kind)
                    .Select(s => (double?)(inner ? made.WeldAt - s.To : s.From - made.WeldAt))
                    .Min();
            void Add(string words, double? from, double allowed)
            {
                if (from is not { } d)
                    return;
                var x = Math.Max(0, d - heated);
                list.Add(
                    new(
                        end,
                        words,
                        d,
                        new(BarHeat.Along(cold, x, free, quick), BarHeat.Along(hot, x, free, slow)),
                        new(
                            BarHeat.Along(temper.Low, x, free, quick),
                            BarHeat.Along(temper.High, x, free, slow)
                        ),
                        allowed
                    )
                );
            }
            Add("spline", Nearest(ZoneKind.Spline), AllowedSpline);
            Add("boot seat, if the boot is on", Nearest(ZoneKind.BootSeat), AllowedBoot);
            Add(
                "joint, if it is on",
                Nearest(ZoneKind.Spline) ?? (inner ? made.WeldAt : made.Overall - made.WeldAt),
                AllowedJoint
            );
        }
        return list;
    }
}
