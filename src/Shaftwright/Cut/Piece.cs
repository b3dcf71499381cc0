using Shaftwright.Donors;

namespace Shaftwright.Cut;

/// <summary>Places that heat and sleeve keep away from.</summary>
internal enum FeatureKind
{
    JointEnd,
    Step,
    Groove,
    Spline,
    BootSeat,
    Unmeasured,
    TooThick,
    OwnSpline,
    OwnBootSeat,
    Ring,
    Hollow,
}

/// <summary>One such place on a donor, mm from its joint end.</summary>
internal readonly record struct Feature(FeatureKind Kind, double From, double To);

/// <summary>A rule: the cut, less a reach, must lie beyond a feature by what it needs.</summary>
internal readonly record struct ClearRule(
    string Code,
    string Words,
    FeatureKind Kind,
    double Reach,
    double Needs
);

/// <summary>Bar without a feature in it.</summary>
/// <param name="From">Where it begins, mm from the joint end.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Earliest">The first place where every heavy rule holds; beyond <paramref name="To"/> when there is none.</param>
internal readonly record struct BarRun(double From, double To, double Earliest)
{
    public double SoundFrom => Math.Max(From, Earliest);
    public bool Sound => SoundFrom <= To + Piece.Rounding;
}

/// <summary>One donor as a piece to be: what a cut at c (mm from the joint end) leaves between 0 and c, and whether the rules hold.</summary>
/// <remarks>What lies beyond the cut falls away with the offcut, so a feature counts only when it begins before c. All rules
/// then say that c is no earlier than some place, which makes the sound cuts of a bar run one closed interval.</remarks>
internal sealed class Piece
{
    /// <summary>Arithmetic slack, mm; far below what anyone can measure.</summary>
    public const double Rounding = 1e-9;

    /// <summary>A change of diameter between two stretches of bar that counts as a step, mm; less is the caliper.
    /// Common practice, no source.</summary>
    public const double StepCounts = 0.2;

    /// <summary>Least difference of sleeve and bar diameter, mm: a thinner wall burns away at its end. Common practice, no source.</summary>
    public const double LeastSleeveOverBar = 2;

    private readonly DonorProfile _donor;
    private readonly JoinPlan _plan;
    private readonly List<Feature> _features;

    public Piece(ShaftEnd end, DonorProfile donor, JoinPlan plan)
    {
        End = end;
        _donor = donor;
        _plan = plan;
        _features = Features();
        Rules = CutRules.For(plan, plan.BootPasses(end));
        Runs = BarRuns();
    }

    public ShaftEnd End { get; }
    public DonorProfile Donor => _donor;
    public double Length => _donor.Length;
    public IReadOnlyList<ClearRule> Rules { get; }
    public IReadOnlyList<BarRun> Runs { get; }
    public IReadOnlyList<Feature> AllFeatures => _features;

    /// <summary>Plain or tapered bar of measured diameter: what may be cut.</summary>
    public static bool IsBar(Stretch s) => s.Kind is ZoneKind.Plain or ZoneKind.Taper && !s.Guessed;

    /// <summary>The stretch that ends or goes on at a cut; null outside the donor. At a boundary it is the one on the joint's side.</summary>
    public Stretch? StretchAt(double c)
    {
        foreach (var s in _donor.Stretches)
        {
            if (c > s.From + Rounding && c <= s.To + Rounding)
                return s;
        }
        return null;
    }

    /// <summary>The bar at a place, whichever side of a boundary it lies on; null where there is none.</summary>
    public Stretch? BarAt(double c)
    {
        foreach (var s in _donor.Stretches)
        {
            if (IsBar(s) && c >= s.From - Rounding && c <= s.To + Rounding)
                return s;
        }
        return null;
    }

    /// <summary>Clearance of a rule for a cut, mm: the least over the features that stay on the piece; null when there is none.</summary>
    public double? Has(ClearRule rule, double c)
    {
        double? least = null;
        foreach (var f in _features)
        {
            if (f.Kind != rule.Kind || f.From >= c - Rounding)
                continue;
            var has = c - rule.Reach - f.To;
            if (least is null || has < least)
                least = has;
        }
        return least;
    }

    /// <summary>How deep a cut lies inside bar, mm; negative: how far it is from the nearest bar. Null when there is no bar.</summary>
    public double? InsideBar(double c)
    {
        double? most = null;
        foreach (var s in _donor.Stretches)
        {
            if (!IsBar(s))
                continue;
            var inside = Math.Min(c - s.From, s.To - c);
            if (most is null || inside > most)
                most = inside;
        }
        return most;
    }

    /// <summary>Length of hardened metal that the heat of weld and sleeve end changes on this piece, mm; or, when none, minus the distance to the nearest.</summary>
    public double? HardenedOverlap(double c)
    {
        if (_donor.Hardened.Count == 0)
            return null;
        var b = _plan.HeatBand;
        var weld = (From: c - b, To: c);
        var sleeve = _plan.SleeveHalf is null
            ? weld
            : (From: c - _plan.SleeveReach - b, To: Math.Min(c, c - _plan.SleeveReach + b));
        var overlap = 0.0;
        var away = double.PositiveInfinity;
        foreach (var h in _donor.Hardened)
        {
            if (h.From >= c - Rounding)
                continue;
            // The two bands overlap or are apart; what both cover counts once.
            overlap +=
                Common(h, weld)
                + Common(h, sleeve)
                - Common(h, (Math.Max(weld.From, sleeve.From), Math.Min(weld.To, sleeve.To)));
            away = Math.Min(away, Math.Min(sleeve.From, weld.From) - h.To);
        }
        if (double.IsPositiveInfinity(away))
            return null;
        return overlap > 0 ? overlap : -Math.Max(0, away);
    }

    private static double Common(HardStretch h, (double From, double To) band) =>
        Math.Max(0, Math.Min(h.To, band.To) - Math.Max(h.From, band.From));

    private List<Feature> Features()
    {
        var features = new List<Feature> { new(FeatureKind.JointEnd, double.NegativeInfinity, 0) };
        for (var i = 0; i < _donor.Stretches.Count; i++)
        {
            var s = _donor.Stretches[i];
            if (!IsBar(s))
                features.Add(new(KindOf(s), s.From, s.To));
            else if (
                i > 0
                && IsBar(_donor.Stretches[i - 1])
                && Math.Abs(_donor.Stretches[i - 1].EndDiameter - s.Diameter) > StepCounts
            )
                features.Add(StepAt(_donor.Stretches[i - 1], s));
            if (IsBar(s) && TooThick(s) is { } thick)
                features.Add(thick);
        }
        features.AddRange(
            _donor.Hollows.Select(h => new Feature(FeatureKind.Hollow, h.From, h.To))
        );
        KeepOwn(ZoneKind.Spline, FeatureKind.OwnSpline);
        KeepOwn(ZoneKind.BootSeat, FeatureKind.OwnBootSeat);
        return features;

        void KeepOwn(ZoneKind zone, FeatureKind kind)
        {
            if (Own(zone) is { } own)
                features.Add(new(kind, double.NegativeInfinity, own.To));
        }
    }

    /// <summary>The spline or boot seat that serves this joint, which a cut must not take away: the first from the joint end. Two
    /// splines mean that the shaft was walked to its other joint; then one in the far half is that joint's.</summary>
    private Stretch? Own(ZoneKind kind)
    {
        var walkedThrough = _donor.Stretches.Count(s => s.Kind == ZoneKind.Spline) > 1;
        foreach (var s in _donor.Stretches)
        {
            if (s.Kind == kind)
                return walkedThrough && s.From + s.To > Length ? null : s;
        }
        return null;
    }

    /// <summary>The part of a stretch that is too thick to go into the sleeve.</summary>
    private Feature? TooThick(Stretch s)
    {
        if (_plan.SleeveOutside is not { } outside)
            return null;
        var limit = outside - LeastSleeveOverBar;
        var (a, b) = (s.Diameter - limit, s.EndDiameter - limit);
        if (a <= Rounding && b <= Rounding)
            return null;
        var from = s.From;
        var to = s.To;
        if (a <= Rounding)
            from += s.Length * -a / (b - a);
        else if (b <= Rounding)
            to = s.From + s.Length * a / (a - b);
        return new Feature(FeatureKind.TooThick, from, to);
    }

    /// <summary>A step with its fillet, which lies on the thinner side and takes as much of the length as its radius.</summary>
    private static Feature StepAt(Stretch before, Stretch here) =>
        here.Diameter > before.EndDiameter
            ? new(FeatureKind.Step, here.From - here.Fillet, here.From)
            : new(FeatureKind.Step, here.From, here.From + here.Fillet);

    private static FeatureKind KindOf(Stretch s) =>
        s.Kind switch
        {
            ZoneKind.Groove => FeatureKind.Groove,
            ZoneKind.Spline => FeatureKind.Spline,
            ZoneKind.BootSeat => FeatureKind.BootSeat,
            ZoneKind.Step => FeatureKind.Step,
            ZoneKind.SensorRing or ZoneKind.Damper => FeatureKind.Ring,
            _ => FeatureKind.Unmeasured,
        };

    private List<BarRun> BarRuns()
    {
        var runs = new List<BarRun>();
        double? from = null;
        foreach (var s in _donor.Stretches)
        {
            if (!IsBar(s))
            {
                Close(s.From);
                continue;
            }
            from ??= s.From;
            // A new run wherever the set of features that stay on the piece changes.
            foreach (
                var f in _features
                    .SelectMany(f => new[] { f.From, f.To })
                    .Where(p => p >= s.From && p < s.To)
                    .Order()
            )
            {
                Close(f);
                from = f;
            }
        }
        Close(Length);
        return runs;

        void Close(double to)
        {
            if (from is { } f && to > f)
                runs.Add(new BarRun(f, to, Earliest((f + to) / 2)));
            from = null;
        }
    }

    private double Earliest(double inside)
    {
        var earliest = 0.0;
        foreach (var rule in Rules)
        {
            foreach (var f in _features)
            {
                if (f.Kind == rule.Kind && f.From < inside)
                    earliest = Math.Max(earliest, f.To + rule.Reach + rule.Needs);
            }
        }
        return earliest;
    }
}
