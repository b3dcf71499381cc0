using Shaftwright.Donors;

namespace Shaftwright.Cut;

/// <summary>Lays the two pieces end to end as they will be after welding.</summary>
internal static class Assembly
{
    /// <summary>True when something of both pieces is left: with a cut at the very end and more shrinkage than piece there is not.</summary>
    public static bool HasBothEnds(double x, double y, double overall) =>
        (x + overall - y) / 2 is var weld
        && weld > Piece.Rounding
        && overall - weld > Piece.Rounding
        && x > Piece.Rounding
        && y > Piece.Rounding;

    /// <summary>The shaft made by cutting at <paramref name="x"/> and <paramref name="y"/>. What stays of the gap is shared by the
    /// two pieces, so that they meet in the middle of the weld and the whole is as long as aimed at, exactly.</summary>
    public static MadeShaft Shaft(
        DonorProfile inner,
        DonorProfile outer,
        double x,
        double y,
        double overall,
        JoinPlan plan
    )
    {
        var weld = (x + overall - y) / 2;
        var stretches = new List<Stretch>(Half(inner, x, weld));
        var turned = Half(outer, y, overall - weld);
        for (var i = turned.Count - 1; i >= 0; i--)
        {
            var s = turned[i];
            stretches.Add(
                s with
                {
                    // The two share one number at the weld, so that no rounding leaves a hole.
                    From = i == turned.Count - 1 ? weld : overall - s.To,
                    To = overall - s.From,
                    Diameter = s.EndDiameter,
                    EndDiameter = s.Diameter,
                    Fillet = i + 1 < turned.Count ? turned[i + 1].Fillet : 0,
                }
            );
        }
        var hardened = new List<HardStretch>();
        foreach (var h in inner.Hardened.Where(h => h.From < Math.Min(x, weld)))
            hardened.Add(h with { To = Math.Min(h.To, Math.Min(x, weld)) });
        foreach (var h in outer.Hardened.Reverse().Where(h => h.From < Math.Min(y, overall - weld)))
            hardened.Add(
                h with
                {
                    From = Math.Max(overall - h.To, Math.Max(overall - y, weld)),
                    To = overall - h.From,
                }
            );
        hardened.RemoveAll(h => h.To - h.From < Piece.Rounding);
        return new MadeShaft(
            overall,
            stretches,
            hardened,
            weld,
            plan.HeatBand,
            plan.SleeveHalf is { } a ? weld - a : null,
            plan.SleeveHalf is { } b ? weld + b : null,
            plan.SleeveOutside
        )
        {
            Hollows =
            [
                .. inner
                    .Hollows.Where(h => h.From < weld)
                    .Select(h => h with { To = Math.Min(h.To, weld) }),
                .. outer
                    .Hollows.Reverse()
                    .Where(h => h.From < overall - weld)
                    .Select(h =>
                        h with
                        {
                            From = Math.Max(overall - h.To, weld),
                            To = overall - h.From,
                        }
                    ),
            ],
        };
    }

    /// <summary>The stretches of one piece from its joint end to the middle of the weld.</summary>
    private static List<Stretch> Half(DonorProfile donor, double cut, double weld)
    {
        var stretches = new List<Stretch>();
        var end = Math.Min(cut, weld);
        foreach (var s in donor.Stretches.Where(s => s.From < end - Piece.Rounding))
            stretches.Add(s.To <= end ? s : s with { To = end, EndDiameter = s.At(end) });
        stretches[^1] = stretches[^1] with { To = weld };
        return stretches;
    }
}
