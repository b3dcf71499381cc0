namespace Shaftwright.Cut;

/// <summary>A pair of cuts.</summary>
/// <param name="InnerAt">mm from the inner donor's joint end.</param>
/// <param name="OuterAt">mm from the outer donor's joint end.</param>
/// <param name="InnerDiameter">mm.</param>
/// <param name="OuterDiameter">mm.</param>
/// <param name="Spare">What the tightest heavy rule has over what it needs, mm; negative when it fails.</param>
internal readonly record struct Place(
    double InnerAt,
    double OuterAt,
    double InnerDiameter,
    double OuterDiameter,
    double Spare
)
{
    public double Difference => Math.Abs(InnerDiameter - OuterDiameter);
}

/// <summary>Where two donors can be cut for a given length of the two pieces together.</summary>
internal static class Placing
{
    /// <summary>Inner cuts for which every heavy rule holds on both pieces: closed intervals of x, mm, with the runs they lie in.</summary>
    public static IEnumerable<(double From, double To, BarRun Inner, BarRun Outer)> Sound(
        Piece inner,
        Piece outer,
        double together
    )
    {
        foreach (var i in inner.Runs)
        {
            foreach (var o in outer.Runs)
            {
                if (!i.Sound || !o.Sound)
                    continue;
                var from = Math.Max(i.SoundFrom, together - o.To);
                var to = Math.Min(i.To, together - o.SoundFrom);
                if (from <= to + Piece.Rounding)
                    yield return (from, Math.Max(from, to), i, o);
            }
        }
    }

    /// <summary>The cut with the smallest difference of diameters: the exact minimum over all sound cuts, or null when there is none.</summary>
    /// <remarks>Diameters are linear between the places where a stretch begins or ends, so their difference is too. Its smallest
    /// size lies at such a place, at an end of a sound interval, or where it passes zero; where it stays the same over a
    /// stretch, the cut goes where the tightest rule has most to spare, which rises with slope 1 from one side and falls from
    /// the other. Where two stretches meet with less than a step, either of their readings is taken. Remaining ties go to the
    /// weld nearest the middle, then to the smaller x.</remarks>
    public static Place? SmallestStep(Piece inner, Piece outer, double together)
    {
        var places = new List<Place>();
        foreach (var (from, to, i, o) in Sound(inner, outer, together))
        {
            var marks = Marks(inner, outer, together, from, to);
            for (var k = 0; k + 1 < marks.Count || k == 0; k++)
                Candidates(marks[k], marks[Math.Min(k + 1, marks.Count - 1)], i, o);
        }
        if (places.Count == 0)
            return null;
        var step = places.Min(p => p.Difference) + Piece.Rounding;
        var alike = places.FindAll(p => p.Difference <= step);
        var spare = alike.Max(p => p.Spare) - Piece.Rounding;
        var best = alike.FindAll(p => p.Spare >= spare);
        var off = best.Min(p => Math.Abs(p.InnerAt - p.OuterAt)) + Piece.Rounding;
        return best.FindAll(p => Math.Abs(p.InnerAt - p.OuterAt) <= off).MinBy(p => p.InnerAt);

        void Candidates(double a, double b, BarRun i, BarRun o)
        {
            var middle = (a + b) / 2;
            if (inner.BarAt(middle) is not { } si || outer.BarAt(together - middle) is not { } so)
                return;
            void Add(double x) =>
                places.Add(
                    new(
                        x,
                        together - x,
                        si.At(x),
                        so.At(together - x),
                        Math.Min(x - i.Earliest, together - x - o.Earliest)
                    )
                );
            double Difference(double x) => si.At(x) - so.At(together - x);
            var (da, db) = (Difference(a), Difference(b));
            Add(a);
            Add(b);
            if (Math.Abs(da - db) <= Piece.Rounding)
                Add(Math.Clamp((i.Earliest + together - o.Earliest) / 2, a, b));
            else if (da * db < 0)
                Add(a + (b - a) * da / (da - db));
        }
    }

    /// <summary>The cut in bar on both pieces whose tightest rule fails by least; null when no cut lies in bar on both.</summary>
    public static Place? LeastBad(Piece inner, Piece outer, double together)
    {
        Place? best = null;
        foreach (var i in inner.Runs)
        {
            foreach (var o in outer.Runs)
            {
                var from = Math.Max(i.From, together - o.To);
                var to = Math.Min(i.To, together - o.From);
                if (from > to)
                    continue;
                var x = Math.Clamp((i.Earliest + together - o.Earliest) / 2, from, to);
                var spare = Math.Min(x - i.Earliest, together - x - o.Earliest);
                if (
                    best is { } b && spare <= b.Spare
                    || inner.BarAt(x) is not { } si
                    || outer.BarAt(together - x) is not { } so
                )
                    continue;
                best = new(x, together - x, si.At(x), so.At(together - x), spare);
            }
        }
        return best;
    }

    /// <summary>Lengths of the two pieces together that have a sound cut: closed intervals in rising order, mm.</summary>
    public static IReadOnlyList<(double From, double To)> Possible(Piece inner, Piece outer)
    {
        var sums =
            from i in inner.Runs
            from o in outer.Runs
            where i.Sound && o.Sound
            orderby i.SoundFrom + o.SoundFrom
            select (From: i.SoundFrom + o.SoundFrom, To: i.To + o.To);
        var joined = new List<(double From, double To)>();
        foreach (var (from, to) in sums)
        {
            if (joined.Count > 0 && from <= joined[^1].To)
                joined[^1] = (joined[^1].From, Math.Max(joined[^1].To, to));
            else
                joined.Add((from, to));
        }
        return joined;
    }

    private static List<double> Marks(
        Piece inner,
        Piece outer,
        double together,
        double from,
        double to
    )
    {
        var marks = new SortedSet<double> { from, to };
        foreach (var s in inner.Donor.Stretches)
            AddInside(s.To);
        foreach (var s in outer.Donor.Stretches)
            AddInside(together - s.To);
        return [.. marks];

        void AddInside(double x)
        {
            if (x > from && x < to)
                marks.Add(x);
        }
    }
}
