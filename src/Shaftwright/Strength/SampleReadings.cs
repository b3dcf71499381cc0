using Shaftwright.Measures;

namespace Shaftwright.Strength;

/// <summary>A sample's readings in plain numbers, as far as they can be believed.</summary>
/// <param name="At">When it was measured.</param>
/// <param name="Places">How many places round it the fusion depth was read at.</param>
/// <param name="Fusion">Fusion depth: the least reading less its ±, and the largest with it, mm; null when it was not read.</param>
/// <param name="Rows">Hardness readings: distance from the weld's middle, mm, inner side negative; HV; its ±.</param>
public sealed record SampleReadings(
    DateTimeOffset? At,
    int Places,
    Band? Fusion,
    IReadOnlyList<(double From, double Hv, double PlusMinus)> Rows
)
{
    /// <summary>Share of the unchanged bar's hardness under which a reading counts as softened. Common practice, no source.</summary>
    public const double SoftShare = 0.9;

    /// <summary>True when it was said that sample and shaft are alike and no crack was seen: only then may it replace a guess.</summary>
    public static bool MayReplace(WeldSample? sample) =>
        sample is { SameSteel: true, SameSetUp: true } and not { Cracked: true };

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
        return new(
            sample.At,
            depths.Count,
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
        );
    }

    /// <summary>The lowest hardness on one side, with its ±, HV; null with fewer than three readings there.</summary>
    /// <param name="inner">The inner-end side.</param>
    public Band? Softest(bool inner)
    {
        var side = Side(inner);
        if (side.Count < 3)
            return null;
        var soft = side.MinBy(r => r.Hv);
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

    /// <summary>Readings of one side with their distance made positive, from the weld out.</summary>
    private List<(double From, double Hv, double PlusMinus)> Side(bool inner) =>
        [
            .. Rows.Where(r => inner ? r.From <= 0 : r.From >= 0)
                .Select(r => (Math.Abs(r.From), r.Hv, r.PlusMinus))
                .OrderBy(r => r.Item1),
        ];
}
