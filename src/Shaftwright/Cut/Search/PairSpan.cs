namespace Shaftwright.Cut.Search;

/// <summary>The cuts of two pieces that make the length asked for, where both lie between two breaks. One number is free: the
/// inner cut u. All that is asked is a straight line in u, or the least of rising and falling functions of u, so each goal is
/// settled exactly: at an end, at a crossing, or by halving to the last bit.</summary>
internal readonly struct PairSpan
{
    private const int Halvings = 60;

    private readonly SearchPiece _inner;
    private readonly SearchPiece _outer;
    private readonly CutSpan _i;
    private readonly CutSpan _o;
    private readonly double _together;
    private readonly HeatedMetal _metal;

    public PairSpan(
        SearchPiece inner,
        SearchPiece outer,
        CutSpan i,
        CutSpan o,
        double together,
        HeatedMetal metal
    )
    {
        (_inner, _outer, _i, _o, _together, _metal) = (inner, outer, i, o, together, metal);
        From = Math.Max(i.From, together - o.To);
        To = Math.Min(i.To, together - o.From);
        if (To < From && To >= From - Piece.Rounding)
            To = From;
    }

    /// <summary>The first inner cut.</summary>
    public double From { get; }

    /// <summary>The last; before the first when there is none.</summary>
    public double To { get; }

    /// <summary>A goal as a cost: the less the better.</summary>
    public double Cost(SearchGoal goal, double u) =>
        goal switch
        {
            SearchGoal.Step => Math.Abs(Step(u)),
            SearchGoal.Strength => -Carries(u),
            SearchGoal.Softened => _i.At(_i.Softened, u) + _o.At(_o.Softened, _together - u),
            SearchGoal.Scrap => Scrap(u),
            _ => Math.Max(
                _inner.Yardstick ?? double.PositiveInfinity,
                _outer.Yardstick ?? double.PositiveInfinity
            ),
        };

    /// <summary>The least cost in a range of cuts.</summary>
    public double Least(SearchGoal goal, double from, double to)
    {
        switch (goal)
        {
            case SearchGoal.Step when Step(from) * Step(to) < 0:
                return 0;
            case SearchGoal.Strength:
                return Cost(goal, Strongest(from, to));
            default:
                return Math.Min(Cost(goal, from), Cost(goal, to));
        }
    }

    /// <summary>The cut in a range at which the tightest rule has most to spare.</summary>
    public double Freest(double from, double to) =>
        Math.Clamp((_i.Earliest + _together - _o.Earliest) / 2, from, to);

    /// <summary>Narrows a range of cuts to those that cost no more than a limit; false when none is left.</summary>
    public bool Narrow(SearchGoal goal, double limit, ref double from, ref double to)
    {
        switch (goal)
        {
            case SearchGoal.Step:
                return Below(Step(from), Step(to), limit, ref from, ref to)
                    && Below(-Step(from), -Step(to), limit, ref from, ref to);
            case SearchGoal.Softened:
            case SearchGoal.Scrap:
                return Below(Cost(goal, from), Cost(goal, to), limit, ref from, ref to);
            case SearchGoal.Strength:
                return Strong(-limit, ref from, ref to);
            default:
                return Cost(goal, from) <= limit;
        }
    }

    /// <summary>Diameter of the inner piece at a cut, mm.</summary>
    public double InnerDiameter(double u) => _i.At(_i.Diameter, u);

    /// <summary>Diameter of the outer piece at the cut that goes with it, mm.</summary>
    public double OuterDiameter(double u) => _o.At(_o.Diameter, _together - u);

    private double Step(double u) => _i.At(_i.Diameter, u) - _o.At(_o.Diameter, _together - u);

    private double Scrap(double u)
    {
        // One shaft that gives both ends loses its middle, wherever it is cut.
        if (_inner.Donor == _outer.Donor)
            return Math.Min(_inner.Walked, _inner.Piece.Length + _outer.Piece.Length)
                - (_together + _inner.Stub + _outer.Stub);
        return (_inner.Rest - u ?? 0) + (_outer.Rest - (_together - u) ?? 0);
    }

    private double Carries(double u) =>
        Math.Min(Math.Min(InnerBar(u), OuterBar(u)), Math.Min(InnerRing(u), OuterRing(u)));

    private double InnerBar(double u) => _metal.Bar(_inner.SoftYield, _i.At(_i.Thinnest, u));

    private double OuterBar(double u) =>
        _metal.Bar(_outer.SoftYield, _o.At(_o.Thinnest, _together - u));

    private double Weaker => Math.Min(_inner.SoftYield, _outer.SoftYield);

    private double InnerRing(double u) => _metal.Ring(Weaker, _i.At(_i.AtLeast, u));

    private double OuterRing(double u) => _metal.Ring(Weaker, _o.At(_o.AtLeast, _together - u));

    /// <summary>The least of what rises with u, and of what falls with it.</summary>
    private (double Rising, double Falling) Sides(double u)
    {
        double rising = double.PositiveInfinity,
            falling = double.PositiveInfinity;
        void Take(double value, bool rises)
        {
            if (rises)
                rising = Math.Min(rising, value);
            else
                falling = Math.Min(falling, value);
        }
        Take(InnerBar(u), _i.Thinnest.B >= _i.Thinnest.A);
        Take(OuterBar(u), _o.Thinnest.B <= _o.Thinnest.A);
        Take(InnerRing(u), _i.AtLeast.B >= _i.AtLeast.A);
        Take(OuterRing(u), _o.AtLeast.B <= _o.AtLeast.A);
        return (rising, falling);
    }

    private double Strongest(double from, double to)
    {
        var end = Sides(to);
        if (end.Rising <= end.Falling)
            return to;
        var begin = Sides(from);
        if (begin.Rising >= begin.Falling)
            return from;
        for (var k = 0; k < Halvings; k++)
        {
            var middle = (from + to) / 2;
            var (rising, falling) = Sides(middle);
            if (rising < falling)
                from = middle;
            else
                to = middle;
        }
        return Carries(from) >= Carries(to) ? from : to;
    }

    private bool Strong(double level, ref double from, ref double to)
    {
        var top = Strongest(from, to);
        if (Carries(top) < level)
            return false;
        from = Edge(from, top, level);
        to = Edge(to, top, level);
        return true;
    }

    /// <summary>The cut nearest to the outside that still carries a level; it falls all the way from the inside.</summary>
    private double Edge(double outside, double inside, double level)
    {
        if (Carries(outside) >= level)
            return outside;
        for (var k = 0; k < Halvings; k++)
        {
            var middle = (outside + inside) / 2;
            if (Carries(middle) >= level)
                inside = middle;
            else
                outside = middle;
        }
        return inside;
    }

    private static bool Below(double a, double b, double limit, ref double from, ref double to)
    {
        if (a <= limit && b <= limit)
            return true;
        if (a > limit && b > limit)
            return false;
        var crossing = from + (to - from) * (limit - a) / (b - a);
        if (a <= limit)
            to = Math.Clamp(crossing, from, to);
        else
            from = Math.Clamp(crossing, from, to);
        return true;
    }
}
