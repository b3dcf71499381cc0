namespace Shaftwright.Cut.Search;

/// <summary>Shares the ends of a shelf among several shafts: branch and bound over every way of making each.</summary>
/// <remarks>First as many shafts as can be, then the weakest of them as strong as can be, then as little difference of diameters in
/// all. Each end is used once; both ends of one shaft may go to two new ones where the two pieces, a kerf and two facings fit on
/// it. The bound is what the rest would come to if nothing were in its way; a branch that cannot beat the best found is cut.</remarks>
public sealed class ShareOut
{
    private readonly IReadOnlyList<ShareCut>[] _ways;
    private readonly int[] _like;
    private readonly IReadOnlyList<double> _lengths;
    private readonly double _lost;
    private readonly long _most;

    // What is cut off each end of each shaft so far, mm; negative for an end still whole.
    private readonly double[] _near;
    private readonly double[] _far;

    private readonly int[] _picked;
    private int[] _best = [];
    private (int Made, double Carries, double Step) _score = (0, double.PositiveInfinity, 0);

    /// <summary>Prepares.</summary>
    /// <param name="ways">For each shaft every way of making it.</param>
    /// <param name="like">For each shaft the number of the first one that is asked for alike: spares are like the shaft itself.</param>
    /// <param name="lengths">Length of every donor, mm.</param>
    /// <param name="lost">Between two pieces of one donor, mm.</param>
    /// <param name="most">How many choices to look into before giving up the proof.</param>
    public ShareOut(
        IReadOnlyList<IReadOnlyList<ShareCut>> ways,
        IReadOnlyList<int> like,
        IReadOnlyList<double> lengths,
        double lost,
        long most = 5_000_000
    )
    {
        ArgumentNullException.ThrowIfNull(ways);
        ArgumentNullException.ThrowIfNull(like);
        ArgumentNullException.ThrowIfNull(lengths);
        // The strongest first: whatever stands behind a way that is too weak is too weak as well.
        _ways =
        [
            .. ways.Select(w => w.OrderByDescending(c => c.Carries).ThenBy(c => c.Step).ToList()),
        ];
        _like = [.. like];
        _lengths = lengths;
        _lost = lost;
        _most = most;
        _near = new double[lengths.Count];
        _far = new double[lengths.Count];
        Array.Fill(_near, -1);
        Array.Fill(_far, -1);
        _picked = new int[_ways.Length];
    }

    /// <summary>How many choices were looked into.</summary>
    public long Looked { get; private set; }

    /// <summary>True when nothing was left unlooked that could be better.</summary>
    public bool Proven => Looked < _most;

    /// <summary>For each shaft the way chosen; null for one that cannot be made beside the others.</summary>
    public IReadOnlyList<ShareCut?> Solve()
    {
        _best = [.. _picked.Select(_ => -1)];
        _score = (0, double.PositiveInfinity, 0);
        // Twice: once for how many and how strong, and once more for the least step among those, with every way that is too weak
        // already out of the running.
        Search(0, (0, double.PositiveInfinity, 0), countStep: false);
        var (made, carries, _) = _score;
        _score = (made, carries, double.PositiveInfinity);
        Search(0, (0, double.PositiveInfinity, 0), countStep: true);
        return [.. _best.Select((b, i) => b < 0 ? (ShareCut?)null : _ways[i][b])];
    }

    private void Search(int shaft, (int Made, double Carries, double Step) so, bool countStep)
    {
        if (shaft == _ways.Length)
        {
            if (Beats(so, countStep))
            {
                _score = so;
                _best = [.. _picked];
            }
            return;
        }
        if (!Beats(Hoped(shaft, so, countStep), countStep) || ++Looked >= _most)
            return;
        var ways = _ways[shaft];
        // Shafts asked for alike are made in the order of their ways; the other orders are the same plan.
        var first =
            _like[shaft] < shaft
            && _picked[shaft - 1] is var before and >= 0
            && _like[shaft - 1] == _like[shaft]
                ? before + 1
                : 0;
        for (var k = first; k < ways.Count; k++)
        {
            var way = ways[k];
            var next = (so.Made + 1, Math.Min(so.Carries, way.Carries), so.Step + way.Step);
            if (countStep && next.Item2 < _score.Carries)
                break;
            if (!Beats(Hoped(shaft + 1, next, countStep), countStep))
            {
                if (countStep)
                    continue;
                break;
            }
            if (!Take(way))
                continue;
            _picked[shaft] = k;
            Search(shaft + 1, next, countStep);
            Put(way);
            if (Looked >= _most)
                return;
        }
        _picked[shaft] = -1;
        Search(shaft + 1, so, countStep);
    }

    /// <summary>The best that can still come of a start: every shaft left is made in its strongest way, and with its least step.</summary>
    private (int Made, double Carries, double Step) Hoped(
        int from,
        (int Made, double Carries, double Step) so,
        bool countStep
    )
    {
        for (var i = from; i < _ways.Length; i++)
        {
            if (_ways[i].Count == 0)
                continue;
            so = (
                so.Made + 1,
                Math.Min(so.Carries, _ways[i][0].Carries),
                so.Step + (countStep ? LeastStep(i) : 0)
            );
        }
        return so;
    }

    private double LeastStep(int shaft)
    {
        var least = double.PositiveInfinity;
        foreach (var way in _ways[shaft])
        {
            if (way.Carries < _score.Carries)
                break;
            least = Math.Min(least, way.Step);
        }
        return double.IsInfinity(least) ? 0 : least;
    }

    private bool Beats((int Made, double Carries, double Step) so, bool countStep)
    {
        if (so.Made != _score.Made)
            return so.Made > _score.Made;
        if (so.Made == 0)
            return false;
        if (so.Carries != _score.Carries)
            return so.Carries > _score.Carries;
        return countStep && so.Step < _score.Step - 1e-12;
    }

    private bool Take(ShareCut way)
    {
        if (!Fits(way.Inner, way.InnerFar, way.InnerAt))
            return false;
        Mark(way.Inner, way.InnerFar, way.InnerAt);
        if (Fits(way.Outer, way.OuterFar, way.OuterAt))
        {
            Mark(way.Outer, way.OuterFar, way.OuterAt);
            return true;
        }
        Mark(way.Inner, way.InnerFar, -1);
        return false;
    }

    private void Put(ShareCut way)
    {
        Mark(way.Inner, way.InnerFar, -1);
        Mark(way.Outer, way.OuterFar, -1);
    }

    private bool Fits(int donor, bool far, double at)
    {
        var (mine, other) = far ? (_far[donor], _near[donor]) : (_near[donor], _far[donor]);
        return mine < 0 && (other < 0 || other + at + _lost <= _lengths[donor] + 1e-9);
    }

    private void Mark(int donor, bool far, double at) => (far ? _far : _near)[donor] = at;
}
