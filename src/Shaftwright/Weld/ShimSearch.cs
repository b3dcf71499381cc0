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
/// given up as soon as the blades left cannot bring it back in. Nothing is left out: the tests compare with trying every pair.</para>
/// </remarks>
internal sealed class ShimSearch
{
    /// <summary>Errors up to here count as equal, mm.</summary>
    public const double GoodEnough = 0.01;

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

    /// <summary>One pack: its thickness less the one wanted, nm, and which blades it takes, a bit each.</summary>
    private readonly record struct Pack(long Error, ulong Blades)
    {
        public long Off => Math.Abs(Error);
        public int Leaves => BitOperations.PopCount(Blades);
    }

    /// <summary>The best pair, with the signed errors of its packs in mm; null when no two packs come nearer than no shim at all.</summary>
    /// <param name="blades">Thicknesses on hand, mm; a blade owned twice stands twice; at most 64.</param>
    /// <param name="target">Thickness wanted on each face, mm.</param>
    /// <param name="mostLeaves">Most leaves in one pack.</param>
    public static (ShimPack Left, double LeftError, ShimPack Right, double RightError)? Best(
        IEnumerable<double> blades,
        double target,
        int mostLeaves
    )
    {
        var search = new ShimSearch(blades, target, mostLeaves);
        if (search._blades.Length > 64)
            throw new ArgumentOutOfRangeException(nameof(blades), "At most 64 blades.");
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
        for (var open = Good; ; open *= 2)
        {
            var window = Math.Min(NearestPossible() + open, _target - 1);
            if (window > Good && LeastError(window) is { } pair)
                return pair;
            if (window == _target - 1)
                return null;
        }
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
            var best = new Champion();
            for (var a = Math.Max(1, total - _mostLeaves); a <= total / 2; a++)
                best.Look(bySize[a], bySize[total - a]);
            if (best.Pair is { } pair)
                return pair;
        }
        return null;
    }

    /// <summary>Among pairs inside the window: least error, then fewest leaves, then least difference.</summary>
    private (Pack, Pack)? LeastError(long window)
    {
        List<List<Pack>> bySize =
        [
            .. Enumerable.Range(0, _mostLeaves + 1).Select(n => Packs(n, window)),
        ];
        var best = new Champion();
        for (var total = 2; total <= 2 * _mostLeaves; total++)
        {
            // A pair of more leaves must now be nearer, not only as near.
            best.Raise();
            for (var a = Math.Max(1, total - _mostLeaves); a <= total / 2; a++)
                best.Look(bySize[a], bySize[total - a]);
        }
        return best.Pair;
    }

    /// <summary>The best pair so far: least error of the worse pack, then least difference.</summary>
    private sealed class Champion
    {
        private long _worst = long.MaxValue;
        private long _difference;

        public (Pack, Pack)? Pair { get; private set; }

        /// <summary>From here on only a smaller error will do.</summary>
        public void Raise() => _difference = 0;

        /// <summary>Looks at every pair that could still win. Both lists come nearest first.</summary>
        public void Look(List<Pack> some, List<Pack> others)
        {
            // One blade in all of them: no two are disjoint.
            if (CommonBlades(some) != 0 && (CommonBlades(some) & CommonBlades(others)) != 0)
                return;
            foreach (var p in some)
            {
                if (p.Off > _worst || (p.Off == _worst && _difference == 0))
                    return;
                foreach (var q in others)
                {
                    var worst = Math.Max(p.Off, q.Off);
                    if (worst > _worst || (worst == _worst && _difference == 0))
                        break;
                    var difference = Math.Abs(p.Error - q.Error);
                    if (
                        (p.Blades & q.Blades) != 0
                        || (worst == _worst && difference >= _difference)
                    )
                        continue;
                    (_worst, _difference, Pair) = (worst, difference, (p, q));
                }
            }
        }

        private static ulong CommonBlades(List<Pack> packs)
        {
            var common = ulong.MaxValue;
            foreach (var pack in packs)
                common &= pack.Blades;
            return common;
        }
    }

    /// <summary>Every pack of that many leaves inside the window, nearest first.</summary>
    private List<Pack> Packs(int leaves, long window)
    {
        var packs = new List<Pack>();
        if (leaves > 0)
            Extend(packs, 0, leaves, _target - window, _target + window, 0, 0);
        // Among equals the pack whose thinnest leaf is stoutest: thin leaves crumple. Blades are numbered from the thickest.
        packs.Sort(
            (a, b) =>
            {
                var off = a.Off.CompareTo(b.Off);
                return off != 0 ? off : a.Blades.CompareTo(b.Blades);
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
        ulong taken
    )
    {
        if (leaves == 0)
        {
            if (sum >= low && sum <= high)
                packs.Add(new Pack(sum - _target, taken));
            return;
        }
        for (var i = from; i + leaves <= _blades.Length; i++)
        {
            // From here on each leaf is at most this thick: too thin already means too thin for good.
            if (sum + leaves * _blades[i] < low)
                return;
            // And with the thinnest for the rest it must not be too thick.
            var rest = 0L;
            for (var k = 1; k < leaves; k++)
                rest += _blades[^k];
            if (sum + _blades[i] + rest > high)
                continue;
            Extend(packs, i + 1, leaves - 1, low, high, sum + _blades[i], taken | (1UL << i));
        }
    }

    private ShimPack Leaves(Pack pack)
    {
        var leaves = new List<double>(pack.Leaves);
        for (var i = 0; i < _blades.Length; i++)
        {
            if ((pack.Blades & (1UL << i)) != 0)
                leaves.Add(_blades[i] / PerMm);
        }
        return new ShimPack(leaves);
    }
}
