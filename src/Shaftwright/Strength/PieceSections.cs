using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Strength;

/// <summary>Finds the sections of one piece of the made shaft and the torque each yields at. Places are mm from the inner end.</summary>
internal sealed class PieceSections
{
    private readonly MadeShaft _made;
    private readonly ShaftEnd _end;
    private readonly List<Stretch> _stretches;
    private readonly List<(double From, double To)> _heated;
    private readonly Band _core;
    private readonly Band _case;

    public PieceSections(
        MadeShaft made,
        ShaftEnd end,
        SteelKnown steel,
        SampleReadings? sample = null
    )
    {
        _made = made;
        _end = end;
        _core = ShearYield.OfCore(steel);
        _case = ShearYield.OfCase(steel);
        Softened = sample?.Softest(end == ShaftEnd.Inner) is { } read
            ? ShearYield.OfVickers(read)
            : ShearYield.Softened(steel);
        var inner = end == ShaftEnd.Inner;
        _stretches =
        [
            .. made.Stretches.Where(s => inner ? s.To <= made.WeldAt : s.From >= made.WeldAt),
        ];
        _heated = [HeatAround(made.WeldAt)];
        if ((inner ? made.SleeveFrom : made.SleeveTo) is { } sleeve)
            _heated.Add(HeatAround(sleeve));
    }

    /// <summary>Shear yield of this piece's metal where it was heated, MPa.</summary>
    public Band Softened { get; }

    /// <summary>Diameter of this piece at the weld and the most it can be off, mm; null if it was not measured there.</summary>
    public (double Value, double Doubt)? AtWeld
    {
        get
        {
            var inner = _end == ShaftEnd.Inner;
            if (_stretches.Count == 0)
                return null;
            var s = inner ? _stretches[^1] : _stretches[0];
            return s.Guessed ? null : (inner ? s.EndDiameter : s.Diameter, s.DiameterDoubt);
        }
    }

    /// <summary>The weakest plain bar outside all heat; null when there is none.</summary>
    public SectionMargin? WeakestPlain()
    {
        SectionMargin? weakest = null;
        foreach (var s in _stretches.Where(s => IsBar(s) && !s.Guessed))
        {
            var cuts = new SortedSet<double> { s.From, s.To };
            foreach (
                var p in _made
                    .Hardened.SelectMany(h => new[] { h.From, h.To })
                    .Concat(_heated.SelectMany(h => new[] { h.From, h.To }))
                    .Concat(_made.Hollows.SelectMany(h => new[] { h.From, h.To }))
            )
            {
                if (p > s.From && p < s.To)
                    cuts.Add(p);
            }
            var at = cuts.ToList();
            for (var i = 0; i + 1 < at.Count; i++)
            {
                var middle = (at[i] + at[i + 1]) / 2;
                if (IsHeated(middle, middle))
                    continue;
                foreach (var x in new[] { at[i], at[i + 1] })
                    weakest = Weaker(
                        weakest,
                        Judge(
                            SectionKind.Plain,
                            "weakest plain bar",
                            x,
                            (s.At(x), s.DiameterDoubt),
                            Case(middle, 0, 0),
                            softened: false
                        )
                    );
            }
        }
        return weakest;
    }

    /// <summary>Spline roots and groove floors.</summary>
    public IEnumerable<SectionMargin> Notches()
    {
        for (var i = 0; i < _stretches.Count; i++)
        {
            var s = _stretches[i];
            if (s is { Kind: ZoneKind.Spline, RootDiameter: { } root })
                yield return WeakestOf(
                    s,
                    SectionKind.SplineRoot,
                    "root of the spline",
                    (root, s.RootDoubt),
                    s.Guessed ? double.PositiveInfinity : (s.Diameter - root) / 2,
                    (s.DiameterDoubt + s.RootDoubt) / 2
                );
            else if (s is { Kind: ZoneKind.Groove, Guessed: false })
                yield return WeakestOf(
                    s,
                    SectionKind.Groove,
                    "floor of the groove",
                    (s.Diameter, s.DiameterDoubt),
                    (Beside(i) - s.Diameter) / 2,
                    s.DiameterDoubt
                );
        }
    }

    /// <summary>The weakest part of a stretch of one diameter: a hard case counts only where it reaches.</summary>
    private SectionMargin WeakestOf(
        Stretch s,
        SectionKind kind,
        string words,
        (double Value, double Doubt) diameter,
        double cutAway,
        double cutAwayDoubt
    )
    {
        SortedSet<double> edges =
        [
            s.From,
            s.To,
            .. _made
                .Hardened.SelectMany(h => new[] { h.From, h.To })
                .Concat(_made.Hollows.SelectMany(h => new[] { h.From, h.To }))
                .Where(x => x > s.From && x < s.To),
        ];
        var at = edges.ToList();
        SectionMargin? weakest = null;
        for (var i = 0; i + 1 < at.Count; i++)
        {
            var middle = (at[i] + at[i + 1]) / 2;
            weakest = Weaker(
                weakest,
                Judge(
                    kind,
                    words,
                    middle,
                    diameter,
                    Case(middle, cutAway, cutAwayDoubt),
                    IsHeated(s.From, s.To)
                )
            );
        }
        return weakest!;
    }

    /// <summary>The thinnest measured section within the heat around a place, softened.</summary>
    public SectionMargin? InHeat(SectionKind kind, string words, double around)
    {
        var (from, to) = HeatAround(around);
        SectionMargin? thin = null;
        foreach (var s in _stretches.Where(s => !s.Guessed))
        {
            var a = Math.Max(s.From, from);
            var b = Math.Min(s.To, to);
            if (a >= b)
                continue;
            foreach (var x in new[] { a, Math.Clamp(around, a, b), b })
                thin = Weaker(
                    thin,
                    Judge(
                        kind,
                        words,
                        x,
                        s.RootDiameter is { } root
                            ? (root, s.RootDoubt)
                            : (s.At(x), s.DiameterDoubt),
                        null,
                        softened: true
                    ),
                    around
                );
        }
        return thin;
    }

    /// <summary>The weaker of two sections; of two alike, the one nearer to a place, so that a mirrored shaft answers mirrored.</summary>
    private SectionMargin Weaker(SectionMargin? a, SectionMargin b, double? near = null)
    {
        if (a is null)
            return b;
        var difference = b.YieldTorque.Low - a.YieldTorque.Low;
        if (Math.Abs(difference) > 1e-9 * a.YieldTorque.Low)
            return difference < 0 ? b : a;
        var place = near ?? _made.WeldAt;
        return Math.Abs(b.At - place) < Math.Abs(a.At - place) ? b : a;
    }

    private SectionMargin Judge(
        SectionKind kind,
        string words,
        double at,
        (double Value, double Doubt) diameter,
        (double Least, double Most)? hardCase,
        bool softened
    )
    {
        Band metal = softened ? Softened : _core;
        Band torque;
        var D = diameter.Value;
        var (least, most) = (D - diameter.Doubt, D + diameter.Doubt);
        if (!softened && hardCase is { } depth)
        {
            torque = new(
                RoundSection.HardenedYieldTorque(_case.Low, _core.Low, least, depth.Least),
                RoundSection.HardenedYieldTorque(_case.High, _core.High, most, depth.Most)
            );
            // The stress at the surface when the section first yields, wherever that is.
            metal = new(
                RoundSection.SurfaceStress(torque.Low, least),
                RoundSection.SurfaceStress(torque.High, most)
            );
        }
        else
        {
            torque = new(
                RoundSection.YieldTorque(metal.Low, least),
                RoundSection.YieldTorque(metal.High, most)
            );
        }
        // A hollow takes the same share of the second moment from every criterion: stress stays linear in the radius.
        var hollow = HollowAt(at);
        torque = new(torque.Low * Left(hollow, least), torque.High * Left(hollow, most));
        return new(kind, words, _end, at, D, metal, torque, null, null, softened);
    }

    /// <summary>Diameter of the widest hollow that reaches a place, mm; 0 where the shaft is solid.</summary>
    private double HollowAt(double at) =>
        _made
            .Hollows.Where(h => at >= h.From - 1e-9 && at <= h.To + 1e-9)
            .Select(h => h.Diameter)
            .DefaultIfEmpty(0)
            .Max();

    /// <summary>Share of a solid bar's second moment that a hollow leaves.</summary>
    private static double Left(double hollow, double D) =>
        hollow >= D ? 0 : 1 - Math.Pow(hollow / D, 4);

    /// <summary>The case at a place, below what was cut away there; null outside hardened zones. An unknown depth runs from none
    /// to all through.</summary>
    private (double Least, double Most)? Case(double at, double cutAway, double doubt)
    {
        foreach (var h in _made.Hardened)
        {
            if (at < h.From || at > h.To)
                continue;
            return h.CaseDepth is { } depth
                ? (
                    Math.Max(0, depth.Low - cutAway - doubt),
                    Math.Max(0, depth.High - cutAway + doubt)
                )
                : (0, double.PositiveInfinity);
        }
        return null;
    }

    /// <summary>Diameter of the thicker bar beside a groove, mm.</summary>
    private double Beside(int i)
    {
        var d = _stretches[i].Diameter;
        if (i > 0)
            d = Math.Max(d, _stretches[i - 1].EndDiameter);
        if (i + 1 < _stretches.Count)
            d = Math.Max(d, _stretches[i + 1].Diameter);
        return d;
    }

    private bool IsHeated(double from, double to) =>
        _heated.Exists(h => from <= h.To && to >= h.From);

    private (double From, double To) HeatAround(double at) =>
        (at - _made.HeatBand, at + _made.HeatBand);

    private static bool IsBar(Stretch s) => s.Kind is not (ZoneKind.Spline or ZoneKind.Groove);
}
