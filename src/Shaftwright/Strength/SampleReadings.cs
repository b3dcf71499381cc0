using Shaftwright.Cut;
using Shaftwright.Measures;

namespace Shaftwright.Strength;

/// <summary>A sample's readings in plain numbers, as far as they can be believed.</summary>
/// <param name="At">When it was measured.</param>
/// <param name="Places">How many places round it the fusion depth was read at, at least 30° apart; readings without an angle are
/// one place.</param>
/// <param name="AllRound">True when the places are enough and leave no gap of more than 135°.</param>
/// <param name="Fusion">Fusion depth: the least reading less its ±, and the largest with it, mm; null when it was not read.</param>
/// <param name="Rows">Hardness readings: distance from the weld's middle, mm, inner side negative; HV; its ±.</param>
public sealed record SampleReadings(
    DateTimeOffset? At,
    int Places,
    bool AllRound,
    Band? Fusion,
    IReadOnlyList<(double From, double Hv, double PlusMinus)> Rows
)
{
    /// <summary>Share of the unchanged bar's hardness under which a reading counts as softened. Common practice, no source.</summary>
    public const double SoftShare = 0.9;

    /// <summary>True when it was said that sample and shaft are alike, no crack was seen and it is not dated later than it is: only
    /// then may it replace a guess.</summary>
    public static bool MayReplace(WeldSample? sample) =>
        sample is { SameSteel: true, SameSetUp: true, IsAhead: false } and not { Cracked: true };

    /// <summary>The readings of a sample that may replace a guess; null for none or for one that may not.</summary>
    public static SampleReadings? Of(WeldSample? sample)
    {
        if (!MayReplace(sample))
            return null;
        List<(double Low, double High)> depths =
        [
            .. sample!
                .Fusion.Select(f => f.Depth)
                .OfType<Measured<Distance>>()
                .Select(d =>
                {
                    var a = d.PlusMinus ?? SampleFields.Depth.UsualPlusMinus;
                    return (Math.Max(0, d.Value - a), d.Value + a);
                }),
        ];
        var (places, gap) = Round(sample.Fusion.Where(f => f.Depth is not null));
        return new(
            sample.At,
            places,
            places >= SampleFields.FewestPlaces && gap <= MostGap,
            depths.Count == 0 ? null : new(depths.Min(d => d.Low), depths.Max(d => d.High)),
            [
                .. sample
                    .Hardness.Where(h => h is { From: not null, Hardness: not null })
                    .Select(h =>
                        (
                            h.From!.Value,
                            h.Hardness!.Value,
                            h.Hardness.PlusMinus ?? SampleFields.Hardness.UsualPlusMinus
                        )
                    )
                    .OrderBy(h => h.Item1),
            ]
        )
        {
            PlacePlusMinus = sample
                .Hardness.Select(h => h.From?.PlusMinus ?? SampleFields.From.UsualPlusMinus)
                .DefaultIfEmpty(SampleFields.From.UsualPlusMinus)
                .Max(),
        };
    }

    /// <summary>How far off the place of a hardness reading can be, mm.</summary>
    public double PlacePlusMinus { get; private init; } = SampleFields.From.UsualPlusMinus;

    // Common practice, no source: nearer than this two readings are one place, and in a wider gap a shallow side can hide.
    private const double OnePlace = 30 * Math.PI / 180;
    private const double MostGap = 135 * Math.PI / 180;

    /// <summary>How many places readings stand at, and the widest gap between them, rad.</summary>
    private static (int Places, double Gap) Round(IEnumerable<SampleFusion> readings)
    {
        const double turn = 2 * Math.PI;
        // A tenth of a degree of slack: 30° typed and 390° turned back may differ in the last bit.
        const double slack = 1e-3;
        var all = readings.ToList();
        double[] angles =
        [
            .. all.Select(f => f.Angle?.Value)
                .OfType<double>()
                .Select(a => (a % turn + turn) % turn)
                .Order(),
        ];
        if (angles.Length == 0)
            return (Math.Min(all.Count, 1), turn);
        List<double> places = [angles[0]];
        foreach (var a in angles)
        {
            var toFirst = places[0] + turn - a;
            if (a - places[^1] >= OnePlace - slack && toFirst >= OnePlace - slack)
                places.Add(a);
        }
        var gap = places[0] + turn - places[^1];
        for (var i = 1; i < places.Count; i++)
            gap = Math.Max(gap, places[i] - places[i - 1]);
        return (places.Count, gap - slack);
    }

    // Common practice, no source: in a wider gap the soft zone can hide.
    private const double MostStep = 6;

    /// <summary>The lowest hardness on one side, with its ±, HV. Null unless the row goes through the heat and out of it on that
    /// side (<see cref="Heat"/>), with three readings or more in the heat and no step wider than 6 mm before the first reading
    /// beyond: a row in sound bar, or one that jumps over the soft zone, shows nothing of it.</summary>
    /// <param name="inner">The inner-end side.</param>
    public Band? Softest(bool inner)
    {
        if (ChangedTo(inner) is not { } end)
            return null;
        var side = Side(inner);
        var heat = side.FindAll(r => r.From + PlacePlusMinus < end);
        List<double> steps = [0, .. heat.Select(r => r.From), end - PlacePlusMinus];
        if (heat.Count < 3 || steps.Zip(steps.Skip(1), (a, b) => b - a).Any(s => s > MostStep))
            return null;
        var soft = heat.MinBy(r => r.Hv);
        return new(soft.Hv - soft.PlusMinus, soft.Hv + soft.PlusMinus);
    }

    /// <summary>The highest reading, HV; null when there is none.</summary>
    public double? Hardest => Rows.Count == 0 ? null : Rows.Max(r => r.Hv);

    /// <summary>How far from the weld's middle one side reads softer than its outermost reading by a tenth or more, mm: the
    /// first reading that no longer does. Null when the readings do not show it.</summary>
    /// <param name="inner">The inner-end side.</param>
    public double? SoftenedTo(bool inner)
    {
        var side = Side(inner);
        if (side.Count < 3)
            return null;
        var bar = side[^1].Hv;
        var last = side.FindLastIndex(r => r.Hv < SoftShare * bar);
        return last < 0 || last == side.Count - 1 ? null : side[last + 1].From;
    }

    /// <summary>How far from the weld's middle the heat changed the metal, for the cut; null when no side shows where it ends.</summary>
    public MeasuredHeat? Heat
    {
        get
        {
            var (inner, outer) = (ChangedTo(inner: true), ChangedTo(inner: false));
            return (inner, outer) switch
            {
                ({ } a, { } b) => new(Math.Max(a, b), true),
                ({ } a, null) => new(Math.Max(a, CutFields.UsualHeatBand), false),
                (null, { } b) => new(Math.Max(b, CutFields.UsualHeatBand), false),
                _ => null,
            };
        }
    }

    /// <summary>Where one side is as the bar beyond it, harder and softer alike: the first of the readings that all lie within a
    /// tenth of the outermost two, with what its place can be off, mm. Null unless those two agree, there is more inside them, and the
    /// row goes as far out as the heat is taken to go without it: two that agree inside the heat are not the bar.</summary>
    private double? ChangedTo(bool inner)
    {
        var side = Side(inner);
        if (side.Count < 3 || side[^1].From < CutFields.UsualHeatBand)
            return null;
        var bar = (side[^1].Hv + side[^2].Hv) / 2;
        var tenth = (1 - SoftShare) * bar;
        var last = side.FindLastIndex(r => Math.Abs(r.Hv - bar) > tenth);
        return Math.Abs(side[^1].Hv - side[^2].Hv) > tenth || last < 0 || last > side.Count - 3
            ? null
            : side[last + 1].From + PlacePlusMinus;
    }

    /// <summary>Readings of one side with their distance made positive, from the weld out.</summary>
    private List<(double From, double Hv, double PlusMinus)> Side(bool inner) =>
        [
            .. Rows.Where(r => inner ? r.From <= 0 : r.From >= 0)
                .Select(r => (Math.Abs(r.From), r.Hv, r.PlusMinus))
                .OrderBy(r => r.Item1),
        ];
}
