namespace Shaftwright.Tests.Weld;

/// <summary>Every pack and every pair, tried one by one: slow, plain, and without a line in common with the solver's search.</summary>
internal sealed class ExhaustiveShims
{
    private readonly decimal[] _blades;
    private readonly decimal _target;
    private readonly List<(int[] Leaves, decimal Error)> _packs = [];

    public ExhaustiveShims(IEnumerable<double> blades, double target, int mostLeaves)
    {
        _blades = [.. blades.Select(b => (decimal)b)];
        _target = (decimal)target;
        for (var mask = 1; mask < 1 << _blades.Length; mask++)
        {
            int[] leaves =
            [
                .. Enumerable.Range(0, _blades.Length).Where(i => (mask >> i) % 2 == 1),
            ];
            if (leaves.Length <= mostLeaves)
                _packs.Add((leaves, leaves.Sum(i => _blades[i]) - _target));
        }
    }

    public int ExactPacks => _packs.Count(p => p.Error == 0);

    public IEnumerable<(int[] Left, int[] Right, decimal Worst, decimal Difference)> Pairs()
    {
        for (var i = 0; i < _packs.Count; i++)
        {
            for (var j = i + 1; j < _packs.Count; j++)
            {
                if (!_packs[i].Leaves.Intersect(_packs[j].Leaves).Any())
                    yield return (
                        _packs[i].Leaves,
                        _packs[j].Leaves,
                        Math.Max(Math.Abs(_packs[i].Error), Math.Abs(_packs[j].Error)),
                        Math.Abs(_packs[i].Error - _packs[j].Error)
                    );
            }
        }
    }

    public int ExactPairs
    {
        get
        {
            var exact = _packs.Where(p => p.Error == 0).ToList();
            return exact
                .SelectMany((p, i) => exact.Skip(i + 1).Select(q => (p, q)))
                .Count(x => !x.p.Leaves.Intersect(x.q.Leaves).Any());
        }
    }

    /// <summary>The objective in its documented order: class of error, leaves in all, error, difference.</summary>
    public static (decimal, int, decimal, decimal) Rank(
        int leaves,
        decimal worst,
        decimal difference
    ) => (Math.Max(worst, 0.01m), leaves, worst, difference);

    public (decimal, int, decimal, decimal)? Best =>
        Pairs()
            .Select(p =>
                ((decimal, int, decimal, decimal)?)Rank(
                    p.Left.Length + p.Right.Length,
                    p.Worst,
                    p.Difference
                )
            )
            .Min();
}
