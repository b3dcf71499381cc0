using System.Diagnostics;
using System.Numerics;
using Shaftwright.Cut.Search;
using Shaftwright.Donors;

namespace Shaftwright.Bench;

/// <summary>The whole search of a large shelf, all goals, with a sleeve and without, beside every pair at cuts a fixed step apart,
/// vectorised, which looks at nothing but the diameters. The baseline is too slow to be repeated, so both run once a size.</summary>
internal static class ShelfRun
{
    public static void Go()
    {
        Console.WriteLine(
            "donors | ours, with sleeve + without, s | worked of pairs | every 0.1 mm, diameters only, without, s | closest match ours / grid, mm"
        );
        ShelfSearch.Solve(RandomShelf.Of(50, sleeve: true));
        Closest(RandomShelf.Of(50, sleeve: false), 0.1);
        foreach (var donors in (int[])[250, 500, 1000, 2000])
        {
            var (sleeved, plain) = (RandomShelf.Of(donors, true), RandomShelf.Of(donors, false));
            var clock = Stopwatch.StartNew();
            var a = ShelfSearch.Solve(sleeved);
            var b = ShelfSearch.Solve(plain);
            var ours = clock.Elapsed.TotalSeconds;
            clock.Restart();
            var grid = Closest(plain, 0.1);
            var every = clock.Elapsed.TotalSeconds;
            var best = b
                .Choices.SelectMany(c => c.Goals)
                .First(g => g.Goal == SearchGoal.Step)
                .Best;
            Console.WriteLine(
                $"{donors} | {ours:0.000} | {a.Worked + b.Worked} of {a.Pairs + b.Pairs} | {every:0.00} | {best:0.0000} / {grid:0.0000}"
            );
        }
    }

    /// <summary>The least difference of diameters over every pair and cut; a cut that breaks a rule has no diameter.</summary>
    private static float Closest(ShelfRequest request, double step)
    {
        var (inner, outer) = (new List<float[]>(), new List<float[]>());
        var n = (int)Math.Round((request.Cut.OverallLength!.Value - 0.8) / step);
        foreach (var donor in request.Shelf.Donors)
        {
            foreach (var far in (bool[])[false, true])
            {
                var fits = (far ? donor.FarEnd : donor.WalkedEnd)!.Fits[0];
                if (fits is not ("inner 0" or "outer 0"))
                    continue;
                var profile = DonorsSolver
                    .Solve(new() { InnerEnd = ShelfProfiles.ShaftFrom(donor, far) })
                    .InnerEnd!;
                var at = Diameters(profile, n, step);
                // Turned round, so that the two cuts of a pair stand at one index.
                if (fits == "outer 0")
                    Array.Reverse(at);
                (fits == "inner 0" ? inner : outer).Add(at);
            }
        }
        var best = float.PositiveInfinity;
        foreach (var i in inner)
        {
            foreach (var o in outer)
            {
                var least = new Vector<float>(float.PositiveInfinity);
                for (var k = 0; k + Vector<float>.Count <= n; k += Vector<float>.Count)
                {
                    var apart = Vector.Abs(new Vector<float>(i, k) - new Vector<float>(o, k));
                    least = Vector.ConditionalSelect(Vector.LessThan(apart, least), apart, least);
                }
                for (var k = 0; k < Vector<float>.Count; k++)
                    best = Math.Min(best, least[k]);
            }
        }
        return best;
    }

    /// <summary>The rules of a cut without a sleeve, with the usual band and slide room; NaN where one breaks.</summary>
    private static float[] Diameters(DonorProfile donor, int n, double step)
    {
        var at = new float[n + 1];
        for (var k = 0; k <= n; k++)
        {
            var c = k * step;
            var clear = c >= 20;
            Stretch? here = null;
            foreach (var s in donor.Stretches)
            {
                var bar = s.Kind is ZoneKind.Plain or ZoneKind.Taper;
                if (bar && c > s.From && c <= s.To)
                    here = s;
                if (!bar && s.From < c)
                    clear &= c - s.To >= (s.Kind == ZoneKind.BootSeat ? 40 : 20);
            }
            at[k] = clear && here is { } stretch ? (float)stretch.At(c) : float.NaN;
        }
        return at;
    }
}
