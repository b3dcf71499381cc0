using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;
using Shaftwright.Strength;

namespace Shaftwright.Truing.Pressing;

/// <summary>One stretch of the shaft as the press meets it, mm from the inner end.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Diameter">Taken for all of it.</param>
/// <param name="Yield">Tensile yield of its metal, under a case that of the core, MPa.</param>
/// <param name="Case">Tensile yield of its case, MPa; null where it has none.</param>
/// <param name="CaseDepth">Depth of the case, mm.</param>
internal readonly record struct PressedStretch(
    double From,
    double To,
    double Diameter,
    Band Yield,
    Band? Case,
    double CaseDepth
)
{
    /// <summary>Its section at yields in the middle of their ranges.</summary>
    public BendSection Section() =>
        Case is { } hard
            ? new CasedBar(
                Diameter,
                Middle(hard),
                Middle(Yield),
                CaseDepth,
                hardening: PressLimits.Hardening
            )
            : new RoundBar(Diameter, Middle(Yield), hardening: PressLimits.Hardening);

    /// <summary>Middle of a range on a scale of ratios.</summary>
    public static double Middle(Band band) => Math.Sqrt(band.Low * band.High);
}

/// <summary>What no block and no ram may stand on.</summary>
/// <param name="From">Where it begins, mm from the inner end.</param>
/// <param name="To">Where it ends, mm.</param>
/// <param name="Words">What it is.</param>
internal readonly record struct KeepOff(double From, double To, string Words);

/// <summary>The shaft as the press meets it: sections with their yield as ranges, and the places to keep off.</summary>
internal sealed class PressedShaft
{
    // Tensile yield from the torsional yield of the strength stage: by von Mises, and by the 0.6 of the table it comes from.
    private const double VonMises = 1.7320508075688772;
    private const double OfTable = 1 / 0.6;

    /// <summary>Depth of a case that nobody measured, as a share of the diameter. Common practice, no source.</summary>
    private const double UnknownCase = 0.1;

    private PressedShaft(
        double length,
        IReadOnlyList<PressedStretch> stretches,
        IReadOnlyList<Stretch> drawn
    ) => (Length, Stretches, Drawn) = (length, stretches, drawn);

    public double Length { get; }
    public IReadOnlyList<PressedStretch> Stretches { get; }
    public IReadOnlyList<Stretch> Drawn { get; }
    public double? WeldAt { get; private init; }
    public Band? Sleeve { get; private init; }
    public IReadOnlyList<KeepOff> BlockOff { get; private init; } = [];
    public IReadOnlyList<KeepOff> RamOff { get; private init; } = [];

    /// <summary>True when no walked shaft stands behind it but one diameter.</summary>
    public bool Plain { get; private init; }

    /// <summary>A bar of one diameter; null when that is not known.</summary>
    public static PressedShaft? OfBar(PressInput press, double length, Moment moment)
    {
        if (press.Diameter is not { } d)
            return null;
        var steel = new SteelKnown(press.Steel, null, null);
        var yield =
            press.Yield is { } typed ? Typed(typed)
            : moment == Moment.BeforeWelding ? Tension(ShearYield.OfCore(steel), steel)
            // Where it is bent the weld's heat was; how far along the bar that goes nobody said.
            : Tension(
                new Band(ShearYield.Softened(steel).Low, ShearYield.OfCore(steel).High),
                steel
            );
        return new(
            length,
            [new(0, length, d.Value, yield, null, 0)],
            [new Stretch(ZoneKind.Plain, 0, length, d.Value, d.Value)]
        )
        {
            Plain = true,
            BlockOff = Ends(length),
            RamOff = Ends(length),
        };
    }

    /// <summary>The shaft that the cut makes, at a moment: before the sleeve goes on it has none.</summary>
    public static PressedShaft OfMade(
        MadeShaft made,
        DonorsResult donors,
        PressInput press,
        Moment moment
    )
    {
        var sleeved = moment is Moment.Sleeved or Moment.AfterFirstRun;
        var sleeve =
            sleeved && made is { SleeveFrom: { } f, SleeveTo: { } t }
                ? new Band(f, t)
                : (Band?)null;
        var welds = new List<double> { made.WeldAt };
        if (sleeve is { } on)
            welds.AddRange([on.Low, on.High]);
        var edges = new SortedSet<double> { 0, made.Overall, made.WeldAt };
        foreach (var s in made.Stretches)
            edges.UnionWith([s.From, s.To]);
        foreach (var h in made.Hardened)
            edges.UnionWith([h.From, h.To]);
        foreach (var w in welds)
            edges.UnionWith([w - made.HeatBand, w + made.HeatBand]);
        if (sleeve is { } over)
            edges.UnionWith([over.Low, over.High]);
        var at = edges.Where(x => x >= 0 && x <= made.Overall).ToList();

        var pressed = new List<PressedStretch>();
        for (var i = 0; i + 1 < at.Count; i++)
        {
            var (from, to, middle) = (at[i], at[i + 1], (at[i] + at[i + 1]) / 2);
            if (to - from < 1e-9)
                continue;
            var here = made.Stretches.FirstOrDefault(s => s.From <= middle && middle <= s.To);
            var inner = middle < made.WeldAt;
            var steel =
                (inner ? donors.InnerEnd : donors.OuterEnd)?.Steel
                ?? new SteelKnown(SteelClass.Unknown, null, null);
            var heated = welds.Exists(w => Math.Abs(middle - w) <= made.HeatBand);
            var core = Tension(ShearYield.OfCore(steel), steel);
            var soft = Tension(ShearYield.Softened(steel), steel);
            if (press.Yield is { } typed)
                core = soft = Typed(typed);
            if (sleeve is { } s0 && middle >= s0.Low && middle <= s0.High)
            {
                // Sleeve and bar as one: too stiff rather than too soft, which costs depth and not straightness.
                pressed.Add(
                    new(from, to, made.SleeveOutside ?? 1.25 * here.At(middle), soft, null, 0)
                );
                continue;
            }
            HardStretch? hard = null;
            foreach (var h in made.Hardened)
            {
                if (h.From <= middle && middle <= h.To)
                    hard = h;
            }
            if (hard is { } zone && !heated)
            {
                var d = here.RootDiameter ?? here.At(middle);
                pressed.Add(
                    new(
                        from,
                        to,
                        d,
                        core,
                        FromHardness(ShearYield.OfCase(steel)),
                        zone.CaseDepth is { } depth ? (depth.Low + depth.High) / 2 : UnknownCase * d
                    )
                );
                continue;
            }
            // A taper counts in slices, so that no slice is far from its own diameter.
            var slices = here.Kind == ZoneKind.Taper ? 4 : 1;
            for (var k = 0; k < slices; k++)
            {
                var (a, b) = (
                    from + (to - from) * k / slices,
                    from + (to - from) * (k + 1) / slices
                );
                pressed.Add(
                    new(
                        a,
                        b,
                        here.RootDiameter ?? here.At((a + b) / 2),
                        heated ? soft : core,
                        null,
                        0
                    )
                );
            }
        }

        var off = new List<KeepOff>(Ends(made.Overall));
        foreach (
            var s in made.Stretches.Where(s => s.Kind is not (ZoneKind.Plain or ZoneKind.Taper))
        )
            off.Add(
                new(
                    s.From - PressLimits.FeatureClear,
                    s.To + PressLimits.FeatureClear,
                    s.Kind switch
                    {
                        ZoneKind.Spline => "the spline",
                        ZoneKind.Groove => "a groove",
                        ZoneKind.BootSeat => "a boot seat",
                        _ => "a shoulder",
                    }
                )
            );
        if (sleeve is { } body)
            off.Add(
                new(
                    body.Low - PressLimits.ToeClear,
                    body.High + PressLimits.ToeClear,
                    "the sleeve and its seams"
                )
            );
        var blocks = new List<KeepOff>(off);
        if (sleeve is null)
            blocks.Add(
                new(
                    made.WeldAt - PressLimits.ToeClear,
                    made.WeldAt + PressLimits.ToeClear,
                    "the weld"
                )
            );
        var ram = new List<KeepOff>(off);
        foreach (var p in pressed.Where(p => p.Case is not null))
            ram.Add(new(p.From, p.To, "a hard case"));
        return new(made.Overall, pressed, made.Stretches)
        {
            WeldAt = made.WeldAt,
            Sleeve = sleeve,
            BlockOff = blocks,
            RamOff = ram,
        };
    }

    /// <summary>Its sections for a beam.</summary>
    public List<BendStretch> Sections() =>
        [.. Stretches.Select(s => new BendStretch(s.From, s.To, s.Section()))];

    /// <summary>The stretch that yields first under a ram between blocks.</summary>
    public PressedStretch FirstToYield(double first, double second, double ram)
    {
        var (found, least) = (Stretches[0], double.PositiveInfinity);
        foreach (var s in Stretches)
        {
            var (a, b) = (Math.Max(s.From, first), Math.Min(s.To, second));
            if (a >= b)
                continue;
            var nearest = Math.Clamp(ram, a, b);
            var load =
                s.Section().YieldMoment
                / Math.Max(1e-9, PressBeam.UnitMoment(nearest, first, second, ram));
            if (load < least)
                (found, least) = (s, load);
        }
        return found;
    }

    /// <summary>Largest share of its yield that any case between the blocks sees at its surface under a load.</summary>
    public double CaseShare(double first, double second, double ram, double load)
    {
        var most = 0.0;
        foreach (var s in Stretches)
        {
            var (a, b) = (Math.Max(s.From, first), Math.Min(s.To, second));
            if (s.Case is not { } hard || a >= b)
                continue;
            var moment = load * PressBeam.UnitMoment(Math.Clamp(ram, a, b), first, second, ram);
            var stress = moment * 32 / (Math.PI * s.Diameter * s.Diameter * s.Diameter);
            most = Math.Max(most, stress / hard.Low);
        }
        return most;
    }

    private static KeepOff[] Ends(double length) =>
        [
            new(double.NegativeInfinity, 5, "the end"),
            new(length - 5, double.PositiveInfinity, "the end"),
        ];

    private static Band Typed(Measured<Stress> yield)
    {
        var half = yield.PlusMinus ?? PressFields.Yield.UsualPlusMinus;
        return new(Math.Max(yield.Value - half, 0.5 * yield.Value), yield.Value + half);
    }

    private static Band Tension(Band shear, SteelKnown steel) =>
        steel.CoreHrc is null ? shear * VonMises : FromHardness(shear);

    private static Band FromHardness(Band shear) => new(shear.Low * OfTable, shear.High * VonMises);
}
