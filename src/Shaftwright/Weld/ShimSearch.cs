using System.Numerics;

namespace Shaftwright.Weld;

/// <summary>Finds the best two packs that one set of blades can make at the same time, by exact search.</summary>
/// <remarks>
/// <para>A pack is a choice of blades; two packs may not share a blade. Among all pairs whose packs have at most the given
/// number of leaves, the best is the one with, in this order: the least error of its worse pack, where every error up to
/// <see cref="GoodEnough"/> counts as equal; the fewest leaves in all; the least error of its worse pack, now exactly; the
/// least difference between its packs; and last the first one found, packs with the stouter thinnest leaf being looked at first.</para>
/// <para>Good enough is 0.01 mm, the last digit of a workshop caliper and twice the tolerance of a marked blade: below it the
/// error of a pack cannot be told from zero, while each leaf more adds dirt and spring that can.</para>
/// <para>Thicknesses are whole nanometres, so that equal packs compare equal in whatever order they are added up. Packs are
/// enumerated only inside a window round the wanted thickness, which opens until a pair is found; within it a partial pack is
/// given up as soon as the blades left cannot bring it back in. Up to
/// <see cref="AlwaysExact"/> nothing is left out: the tests compare with trying every pair.</para>
/// </remarks>
internal sealed class ShimSearch
{
    /// <summary>Errors up to here count as equal, mm.</summary>
    public const double GoodEnough = 0.01;

    /// <summary>Error up to which the search is exact whatever it costs, mm. Beyond it nothing is offered, only said how far off it is.</summary>
    public const double AlwaysExact = WeldSolver.MostPackError;

    // Fewer pairs than this are sooner tried than parted.
    private const int FewPairs = 4096;

    // More packs than this are not looked through only to say how far off they are. Two dozen blades never make so many.
    private const int MostPacks = 60_000;

    // Nor more pairs than this.
    private const long MostTries = 3_000_000;

    // How many of the nearest packs are tried against each other first.
    private const int Probe = 200;

    private const double PerMm = 1e6;
    private const long Good = (long)(GoodEnough * PerMm);

    private readonly long[] _blades;
    private readonly long _target;
    private readonly int _mostLeaves;

    private ShimSearch(IEnumerable<double> blades, double target, int mostLeaves)
    {
        _blades =
        [
            .. blades.Select(b => (long)Math.Round(b * PerMm)).Where(b => b > 0).OrderDescending(),
        ];
        _target = (long)Math.Round(target * PerMm);
        _mostLeaves = Math.Min(mostLeaves, _blades.Length);
    }

    /// <summary>One pack: its thickness less the one wanted, nm, and the blades it takes, a bit each.</summary>
    /// <remarks>Blades of one thickness are alike, so a pack that takes m of M such stands for all that do: once as the first m
    /// of them (Low) and once as the last m (High). Two packs can be made together when the Low of one and the High of the other
    /// share no blade.</remarks>
    private readonly record struct Pack(long Error, ulong Low, ulong High)
    {
        public long Off => Math.Abs(Error);
        public int Leaves => BitOperations.PopCount(Low);
    }

    /// <summary>The best pair, with the signed errors of its packs in mm; null when no two packs come nearer than no shim at all, or when there are too many packs to look through and none is usable.</summary>
    /// <param name="blades">Thicknesses on hand, mm; a blade owned twice stands twice; at most 63.</param>
    /// <param name="target">Thickness wanted on each face, mm.</param>
    /// <param name="mostLeaves">Most leaves in one pack.</param>
    public static (ShimPack Left, double LeftError, ShimPack Right, double RightError)? Best(
        IEnumerable<double> blades,
        double target,
        int mostLeaves
    )
    {
        var search = new ShimSearch(blades, target, mostLeaves);
        if (search._blades.Length > 63)
            throw new ArgumentOutOfRangeException(nameof(blades), "At most 63 blades.");
        if (search.Pair() is not { } pair)
            return null;
        var (left, right) = pair;
        return (search.Leaves(left), left.Error / PerMm, search.Leaves(right), right.Error / PerMm);
    }

    private (Pack, Pack)? Pair()
    {
        if (_blades.Length < 2 || _target <= 0)
            return null;
        if (FewestLeaves() is { } good)
            return good;
        // An error as large as the shim itself is no better than leaving the shims out.
        var furthest = _target - 1;
        var near = Math.Min((long)(AlwaysExact * PerMm), furthest);
        if (near <= Good)
            return null;
        if (
            NearestPossible() <= near
            && LeastError(near, int.MaxValue, long.MaxValue, out _) is { } usable
        )
            return usable;
        for (var open = near; near < furthest; open *= 2)
        {
            near = Math.Min(NearestPossible() + open, furthest);
            if (LeastError(near, MostPacks, MostTries, out var tooMany) is { } pair)
                return pair;
            if (tooMany)
                return null;
        }
        return null;
    }

    /// <summary>No pair of packs can be nearer than this, nm: of two packs one has at most half of the thickest leaves, and one lacks the thinnest.</summary>
    private long NearestPossible()
    {
        var thickest = _blades.Take(2 * _mostLeaves).Sum();
        return Math.Max(0, Math.Max(_target - thickest / 2, _blades[^2] - _target));
    }

    /// <summary>Among pairs that are good enough: fewest leaves, then least error, then least difference.</summary>
    private (Pack, Pack)? FewestLeaves()
    {
        // Packs by number of leaves, made when first asked for: two or three leaves a pack nearly always do.
        var bySize = new List<List<Pack>> { new() };
        for (var total = 2; total <= 2 * _mostLeaves; total++)
        {
            while (bySize.Count <= Math.Min(_mostLeaves, total - 1))
                bySize.Add(Packs(bySize.Count, Good));
            var best = new Champion(0, long.MaxValue);
            for (var a = Math.Max(1, total - _mostLeaves); a <= total / 2; a++)
                best.Look(bySize[a], bySize[total - a]);
            if (best.Pair is { } pair)
                return pair;
        }
        return null;
    }

    /// <summary>Among pairs inside the window: least error, then fewest leaves, then least difference.</summary>
    private (Pack, Pack)? LeastError(long window, int mostPacks, long mostTries, out bool tooMany)
    {
        var bySize = new List<List<Pack>> { new() };
        tooMany = false;
        for (var (n, room) = (1, mostPacks); n <= _mostLeaves; n++)
        {
            bySize.Add(Packs(n, window, room));
            room -= bySize[n].Count;
            tooMany = room <= 0;
            if (tooMany)
                return null;
        }
        var best = new Champion(NearestPossible(), mostTries);
        for (var total = 2; total <= 2 * _mostLeaves; total++)
        {
            // A pair of more leaves must now be nearer, not only as near.
            best.Raise();
            for (var a = Math.Max(1, total - _mostLeaves); a <= total / 2; a++)
                best.Look(bySize[a], bySize[total - a]);
        }
        tooMany = best.GaveUp;
        return tooMany ? null : best.Pair;
    }

    /// <summary>The best pair so far: least error of the worse pack, then least difference.</summary>
    /// <param name="floor">No pair can be nearer than this, nm.</param>
    /// <param name="mostTries">Pairs to try before giving up.</param>
    private sealed class Champion(long floor, long mostTries)
    {
        private long _worst = long.MaxValue;
        private long _difference;
        private long _tries;

        public (Pack, Pack)? Pair { get; private set; }

        /// <summary>True when it stopped before every pair had been ruled out.</summary>
        public bool GaveUp => _tries > mostTries;

        /// <summary>From here on only a smaller error will do.</summary>
        public void Raise() => _difference = 0;

        /// <summary>Looks at every pair that could still win. Both lists come nearest first.</summary>
        public void Look(List<Pack> some, List<Pack> others)
        {
            if (some.Count == 0 || others.Count == 0 || GaveUp)
                return;
            if (!CouldWin(Math.Max(some[0].Off, others[0].Off)))
                return;
            if ((long)some.Count * others.Count <= FewPairs)
            {
                Try(some, others);
                return;
            }
            // The nearest of both first: a good pair early rules out most of the rest.
            Try(
                some.GetRange(0, Math.Min(Probe, some.Count)),
                others.GetRange(0, Math.Min(Probe, others.Count))
            );
            var (p, q) = (some.FindAll(x => CouldWin(x.Off)), others.FindAll(x => CouldWin(x.Off)));
            if ((long)p.Count * q.Count <= FewPairs)
            {
                Try(p, q);
                return;
            }
            // Packs that must share a blade are parted by it, not tried one against the other.
            var (blade, conflicts) = MostShared(p, q);
            if (conflicts == 0)
            {
                // None share any: packs of one thickness are then as good as each other.
                Try(Thicknesses(p), Thicknesses(q));
                return;
            }
            var (pWith, pWithout) = (
                p.FindAll(x => (x.Low & blade) != 0),
                p.FindAll(x => (x.Low & blade) == 0)
            );
            var (qWith, qWithout) = (
                q.FindAll(x => (x.High & blade) != 0),
                q.FindAll(x => (x.High & blade) == 0)
            );
            _tries += p.Count + q.Count;
            Look(pWithout, qWithout);
            Look(pWith, qWithout);
            Look(pWithout, qWith);
        }

        private bool CouldWin(long worst) =>
            worst < _worst ? _worst > floor : worst == _worst && _difference > 0;

        private void Try(List<Pack> some, List<Pack> others)
        {
            foreach (var p in some)
            {
                if (!CouldWin(p.Off) || GaveUp)
                    return;
                foreach (var q in others)
                {
                    var worst = Math.Max(p.Off, q.Off);
                    if (!CouldWin(worst))
                        break;
                    _tries++;
                    var difference = Math.Abs(p.Error - q.Error);
                    if ((p.Low & q.High) != 0 || (worst == _worst && difference >= _difference))
                        continue;
                    (_worst, _difference, Pair) = (worst, difference, (p, q));
                }
            }
        }

        /// <summary>The blade that the most pairs share, and how many do.</summary>
        private static (ulong Blade, long Conflicts) MostShared(List<Pack> some, List<Pack> others)
        {
            var (one, other) = (new long[64], new long[64]);
            foreach (var pack in some)
                Count(pack.Low, one);
            foreach (var pack in others)
                Count(pack.High, other);
            var most = 0;
            for (var i = 1; i < one.Length; i++)
            {
                if (one[i] * other[i] > one[most] * other[most])
                    most = i;
            }
            return (1UL << most, one[most] * other[most]);
        }

        private static void Count(ulong blades, long[] uses)
        {
            for (var rest = blades; rest != 0; rest &= rest - 1)
                uses[BitOperations.TrailingZeroCount(rest)]++;
        }

        private static List<Pack> Thicknesses(List<Pack> packs)
        {
            var seen = new HashSet<long>();
            return packs.FindAll(p => seen.Add(p.Error));
        }
    }

    /// <summary>Every pack of that many leaves inside the window, nearest first.</summary>
    private List<Pack> Packs(int leaves, long window, int most = int.MaxValue)
    {
        var packs = new List<Pack>();
        if (leaves > 0)
            Extend(packs, 0, leaves, _target - window, _target + window, 0, 0, most);
        // Among equals the pack whose thinnest leaf is stoutest: thin leaves crumple. Blades are numbered from the thickest.
        packs.Sort(
            (a, b) =>
            {
                var off = a.Off.CompareTo(b.Off);
                return off != 0 ? off : a.Low.CompareTo(b.Low);
            }
        );
        return packs;
    }

    private void Extend(
        List<Pack> packs,
        int from,
        int leaves,
        long low,
        long high,
        long sum,
        ulong taken,
        int most
    )
    {
        if (leaves == 0)
        {
            if (sum >= low && sum <= high)
                packs.Add(new Pack(sum - _target, taken, LastOfEach(taken)));
            return;
        }
        for (var i = from; i + leaves <= _blades.Length; i++)
        {
            // A pack takes the first of blades that are alike.
            if (i > from && _blades[i] == _blades[i - 1])
                continue;
            // From here on each leaf is at most this thick: too thin already means too thin for good.
            if (sum + leaves * _blades[i] < low || packs.Count >= most)
                return;
            // And with the thinnest for the rest it must not be too thick.
            var rest = 0L;
            for (var k = 1; k < leaves; k++)
                rest += _blades[^k];
            if (sum + _blades[i] + rest > high)
                continue;
            Extend(packs, i + 1, leaves - 1, low, high, sum + _blades[i], taken | (1UL << i), most);
        }
    }

    /// <summary>The same pack made of the last of the blades that are alike.</summary>
    private ulong LastOfEach(ulong low)
    {
        var high = 0UL;
        for (var i = 0; i < _blades.Length; )
        {
            var end = i + 1;
            while (end < _blades.Length && _blades[end] == _blades[i])
                end++;
            var alike = ((1UL << (end - i)) - 1) << i;
            var count = BitOperations.PopCount(low & alike);
            high |= ((1UL << count) - 1) << (end - count);
            i = end;
        }
        return high;
    }

    private ShimPack Leaves(Pack pack)
    {
        var leaves = new List<double>(pack.Leaves);
        for (var i = 0; i < _blades.Length; i++)
        {
            if ((pack.Low & (1UL << i)) != 0)
                leaves.Add(_blades[i] / PerMm);
        }
        return new ShimPack(leaves);
    }
}
