namespace Shaftwright.CrackTest;

/// <summary>A mark laid out flat: its middle along and round the shaft, its size and direction.</summary>
/// <param name="X">Along the shaft, mm.</param>
/// <param name="S">Round the shaft, mm of arc.</param>
/// <param name="Length">mm.</param>
/// <param name="Direction">rad, 0 along the shaft; NaN when not known: its ends are then taken to lie as near to any neighbour as they can.</param>
public readonly record struct FlatMark(double X, double S, double Length, double Direction);

/// <summary>Marks so near to each other that they count as one.</summary>
/// <remarks><para>Two marks closer than the larger dimension of the smaller one count as one, of the length of both plus the gap.
/// Source: ISO 23277 and ISO 23278, from memory. What has been put together is then compared with its neighbours in turn.</para>
/// <para>Marks are straight segments on the unrolled surface, which closes on itself; a gap is the shortest distance between
/// them. The size of a group, when it is compared on, is the largest distance across it: that never shrinks as marks join,
/// so the order in which they are taken cannot matter. Its length as judged is the sum of its marks and of the shortest set of
/// gaps that joins them, and never less than the distance across: for marks in line that is the same. Beside a bend one mark more, standing between
/// three others, can shorten those gaps; it never parts what was one.</para></remarks>
public static class MarkGroups
{
    /// <summary>Puts marks together.</summary>
    /// <param name="marks">The marks.</param>
    /// <param name="around">Circumference, mm; infinite when not known, which forgets that the surface closes.</param>
    /// <returns>The members of each group, by index and in order, with the length it is judged by, mm.</returns>
    public static IReadOnlyList<(IReadOnlyList<int> Members, double Length)> Of(
        IReadOnlyList<FlatMark> marks,
        double around
    )
    {
        ArgumentNullException.ThrowIfNull(marks);
        var n = marks.Count;
        var gap = new double[n, n];
        var across = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            across[i, i] = marks[i].Length;
            for (var j = i + 1; j < n; j++)
            {
                var (g, a) = Between(marks[i], marks[j], around);
                gap[i, j] = gap[j, i] = g;
                across[i, j] = across[j, i] = a;
            }
        }

        List<List<int>> groups = [.. Enumerable.Range(0, n).Select(i => new List<int> { i })];
        for (var joined = true; joined; )
        {
            joined = false;
            for (var a = 0; a < groups.Count && !joined; a++)
            {
                for (var b = a + 1; b < groups.Count && !joined; b++)
                {
                    var apart = groups[a].Min(i => groups[b].Min(j => gap[i, j]));
                    if (apart >= Math.Min(Across(groups[a]), Across(groups[b])) - Acceptance.Hair)
                        continue;
                    groups[a].AddRange(groups[b]);
                    groups.RemoveAt(b);
                    joined = true;
                }
            }
        }
        return
        [
            .. groups
                .Select(g => g.Order().ToList())
                .OrderBy(g => g[0])
                .Select(g =>
                    (
                        (IReadOnlyList<int>)g,
                        Math.Max(Across(g), g.Sum(i => marks[i].Length) + JoiningGaps(g, gap))
                    )
                ),
        ];

        double Across(List<int> group) => group.Max(i => group.Max(j => across[i, j]));
    }

    /// <summary>Sum of the gaps of the shortest tree that joins them (Prim, 1957).</summary>
    private static double JoiningGaps(List<int> group, double[,] gap)
    {
        var outside = group.Skip(1).ToDictionary(i => i, i => gap[group[0], i]);
        var sum = 0.0;
        while (outside.Count > 0)
        {
            var (next, far) = outside.MinBy(o => o.Value);
            sum += far;
            outside.Remove(next);
            foreach (var o in outside.Keys.ToList())
                outside[o] = Math.Min(outside[o], gap[next, o]);
        }
        return sum;
    }

    /// <summary>Shortest distance between two marks by the shorter way round, and the largest distance across both that way.</summary>
    private static (double Gap, double Across) Between(FlatMark a, FlatMark b, double around)
    {
        var best = (Gap: double.PositiveInfinity, Across: double.PositiveInfinity);
        for (var turn = -1; turn <= 1; turn++)
        {
            if (turn != 0 && !double.IsFinite(around))
                continue;
            var ds = b.S - a.S;
            if (double.IsFinite(around))
                ds = Math.IEEERemainder(ds, around) + turn * around;
            var found = Flat(a with { X = 0, S = 0 }, b with { X = b.X - a.X, S = ds });
            if (
                found.Gap < best.Gap - Acceptance.Hair
                || (found.Gap < best.Gap + Acceptance.Hair && found.Across < best.Across)
            )
                best = found;
        }
        return best;
    }

    private static (double Gap, double Across) Flat(FlatMark a, FlatMark b)
    {
        var loose = 0.0;
        if (double.IsNaN(a.Direction))
            (a, loose) = (a with { Length = 0, Direction = 0 }, loose + a.Length / 2);
        if (double.IsNaN(b.Direction))
            (b, loose) = (b with { Length = 0, Direction = 0 }, loose + b.Length / 2);
        var (p, q) = (Ends(a), Ends(b));
        var gap = Cross(p, q)
            ? 0
            : Math.Min(
                Math.Min(ToSegment(p.A, q), ToSegment(p.B, q)),
                Math.Min(ToSegment(q.A, p), ToSegment(q.B, p))
            );
        var across = Math.Max(
            Math.Max(a.Length, b.Length),
            Math.Max(Math.Max(Far(p.A, q.A), Far(p.A, q.B)), Math.Max(Far(p.B, q.A), Far(p.B, q.B)))
        );
        return (Math.Max(0, gap - loose), across + loose);
    }

    private readonly record struct Spot(double X, double S);

    private static (Spot A, Spot B) Ends(FlatMark m)
    {
        var (dx, ds) = (m.Length / 2 * Math.Cos(m.Direction), m.Length / 2 * Math.Sin(m.Direction));
        return (new(m.X - dx, m.S - ds), new(m.X + dx, m.S + ds));
    }

    private static double Far(Spot a, Spot b) => Math.Sqrt(Square(a.X - b.X) + Square(a.S - b.S));

    private static double ToSegment(Spot p, (Spot A, Spot B) s)
    {
        var (dx, ds) = (s.B.X - s.A.X, s.B.S - s.A.S);
        var length = dx * dx + ds * ds;
        var t =
            length == 0 ? 0 : Math.Clamp(((p.X - s.A.X) * dx + (p.S - s.A.S) * ds) / length, 0, 1);
        return Far(p, new(s.A.X + t * dx, s.A.S + t * ds));
    }

    private static bool Cross((Spot A, Spot B) p, (Spot A, Spot B) q) =>
        Side(p.A, p.B, q.A) * Side(p.A, p.B, q.B) < 0
        && Side(q.A, q.B, p.A) * Side(q.A, q.B, p.B) < 0;

    private static double Side(Spot a, Spot b, Spot c) =>
        (b.X - a.X) * (c.S - a.S) - (b.S - a.S) * (c.X - a.X);

    private static double Square(double x) => x * x;
}
