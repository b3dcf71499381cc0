using Shaftwright.Corner.Linkages;

namespace Shaftwright.Corner;

/// <summary>The curves of one set over travel. All are of squares of lengths (or an axial length), because these are
/// nearly quadratic in travel for a point that an arm swings: D² is linear in the coordinates of the outer joint.</summary>
/// <remarks>Derivation: with O the outer and I the inner joint centre and A the arm's axis, D² = |O−A|² + |I−A|² − 2(O−A)·(I−A),
/// and O−A = R(cos θ, sin θ) with travel proportional to sin θ for a level arm. See docs/corner.md.</remarks>
internal sealed class SetCurves
{
    private readonly ReadingSet _set;
    private readonly LinkagePath? _path;

    // Of a linkage's path these stay unused: it is solved wherever it is asked for.
    private readonly TravelCurve _first = null!;
    private readonly TravelCurve _second = null!;
    private readonly TravelCurve? _across;
    private readonly TravelCurve? _outer;

    /// <summary>Stands for the path of a linkage.</summary>
    /// <param name="set">The path's set.</param>
    /// <param name="path">The linkage on it.</param>
    public SetCurves(ReadingSet set, LinkagePath path)
    {
        _set = set;
        _path = path;
    }

    /// <summary>Fits the set's curves to a row of values.</summary>
    /// <param name="set">Which readings.</param>
    /// <param name="values">The row, possibly nudged.</param>
    /// <param name="readAlong">Along which line in and out were read.</param>
    /// <param name="share">Share of the plunge that the point the inner joint bends about moves in its housing: 1, or less where a
    /// joint's centre moves with its plunge.</param>
    public SetCurves(ReadingSet set, double[] values, SlideLine readAlong, double share = 1)
    {
        _set = set;
        var n = set.Readings.Length;
        Span<double> travel = stackalloc double[n];
        Span<double> first = stackalloc double[n];
        Span<double> second = stackalloc double[n];
        Span<double> across = stackalloc double[n];
        Span<double> outer = stackalloc double[n];
        var hasAngle = true;
        var hasOuter = true;
        for (var k = 0; k < n; k++)
        {
            var i = set.Readings[k];
            travel[k] = values[CornerNumbers.At(i, CornerNumbers.Travel)];
            var phi = values[CornerNumbers.At(i, CornerNumbers.InnerAngle)];
            var psi = values[CornerNumbers.At(i, CornerNumbers.OuterAngle)];
            hasAngle &= !double.IsNaN(phi);
            hasOuter &= !double.IsNaN(psi);
            outer[k] = Square(Math.Sin(psi));
            if (set.Form == ReadingForm.DistanceAndAngle)
            {
                var d = values[CornerNumbers.At(i, CornerNumbers.Distance)];
                first[k] = d * d;
                second[k] = d * Math.Cos(phi);
                continue;
            }
            var trial = values[CornerNumbers.TrialLength];
            var goesIn = values[CornerNumbers.At(i, CornerNumbers.In)];
            var comesOut = values[CornerNumbers.At(i, CornerNumbers.Out)];
            // Where the trial shaft stands in the stroke, mid-stroke taken as half-way between the stops. A joint whose centre moves
            // bends that share beyond the shaft's own middle.
            // Read along the shaft, the way along the housing is longer by 1/cos φ.
            var plunge =
                (goesIn - comesOut) / 2 / (readAlong == SlideLine.Shaft ? Math.Cos(phi) : 1);
            var arm = share == 1 ? trial : trial + (1 - share) * plunge;
            across[k] = Square(arm * Math.Sin(phi));
            if (readAlong == SlideLine.Shaft)
            {
                first[k] = Square(trial + goesIn);
                second[k] = Square(trial - comesOut);
            }
            else
            {
                // Law of cosines: the inner end moves along its own axis, not along the shaft.
                double Stop(double by) =>
                    share == 1
                        ? Square(trial * Math.Cos(phi) + by) + Square(trial * Math.Sin(phi))
                        : Square(
                            double.Hypot(arm * Math.Cos(phi) + share * by, arm * Math.Sin(phi))
                                - (1 - share) * (plunge - by)
                        );
                first[k] = Stop(goesIn);
                second[k] = Stop(-comesOut);
            }
        }
        _first = CurveFit.Fit(travel, first, set.Degree);
        _second = CurveFit.Fit(travel, second, set.Degree);
        if (set.Form == ReadingForm.InAndOut && hasAngle)
            _across = CurveFit.Fit(travel, across, set.Degree);
        if (hasOuter)
            _outer = CurveFit.Fit(travel, outer, set.Degree);
    }

    /// <summary>Form (a): length at which the joint stops going in, mm, from the trial shaft alone.</summary>
    public double InStop(double travel) => Math.Sqrt(Math.Max(0, _first.At(travel)));

    /// <summary>Form (a): length at which the joint stops coming out, mm.</summary>
    public double OutStop(double travel) => Math.Sqrt(Math.Max(0, _second.At(travel)));

    /// <summary>Form (b): distance between the joint centres, mm.</summary>
    public double Distance(double travel) =>
        _path is { } path ? path.Line(travel).Distance : Math.Sqrt(Math.Max(0, _first.At(travel)));

    /// <summary>Form (b): the part of that distance along the inner joint's axis, mm.</summary>
    public double Axial(double travel) =>
        _path is { } path ? path.Line(travel).Axial : _second.At(travel);

    /// <summary>True when the inner angle is known over the set.</summary>
    public bool HasAngle => _set.Form == ReadingForm.DistanceAndAngle || _across is not null;

    /// <summary>True when the outer angle is known over the set.</summary>
    public bool HasOuterAngle => _outer is not null || _path is not null;

    /// <summary>Square of the outer joint's distance from the inner axis, mm²; 0 when no angle was read.</summary>
    public double AcrossSquared(double travel) =>
        _path is { } path ? Square(path.Line(travel).Across)
        : _set.Form == ReadingForm.DistanceAndAngle
            ? Math.Max(0, _first.At(travel) - Square(_second.At(travel)))
        : _across is { } across ? Math.Max(0, across.At(travel))
        : 0;

    /// <summary>Travels at which the fitted across distance meets zero. There the clamp of <see cref="AcrossSquared"/> gives every
    /// length a corner, so a search for the smallest or largest must not look across one.</summary>
    /// <param name="from">Lowest travel, mm.</param>
    /// <param name="to">Highest travel, mm.</param>
    public IReadOnlyList<double> Corners(double from, double to)
    {
        // A linkage's across distance is a length of its own, and needs no clamp.
        if (!HasAngle || _path is not null)
            return [];
        const int Intervals = 64;
        var points = new List<double>(Intervals + 1);
        for (var i = 0; i <= Intervals; i++)
            points.Add(i == Intervals ? to : from + (to - from) * i / Intervals);
        // It may touch below zero and come back within one interval: the bottom of each dip is a point of its own.
        for (var i = 1; i < Intervals; i++)
        {
            var (left, here, right) = (points[i - 1], points[i], points[i + 1]);
            if (Across(here) <= Across(left) && Across(here) <= Across(right))
                points.Add(Bottom(left, right));
        }
        points.Sort();
        var corners = new List<double>();
        for (var i = 1; i < points.Count; i++)
        {
            if (Across(points[i - 1]) < 0 != Across(points[i]) < 0)
                corners.Add(Crossing(points[i - 1], points[i]));
        }
        return corners;
    }

    private double Across(double travel) =>
        _set.Form == ReadingForm.DistanceAndAngle
            ? _first.At(travel) - Square(_second.At(travel))
            : _across!.At(travel);

    private double Bottom(double a, double b)
    {
        for (var i = 0; i < 80; i++)
        {
            var (x, y) = (a + (b - a) / 3, b - (b - a) / 3);
            (a, b) = Across(x) <= Across(y) ? (a, y) : (x, b);
        }
        return (a + b) / 2;
    }

    private double Crossing(double a, double b)
    {
        var below = Across(a) < 0;
        for (var i = 0; i < 80; i++)
        {
            var middle = (a + b) / 2;
            (a, b) = Across(middle) < 0 == below ? (middle, b) : (a, middle);
        }
        return (a + b) / 2;
    }

    /// <summary>Outer angle, rad, of a shaft whose inner centre stands at a plunge, mm; from readings, as read.</summary>
    public double OuterAngle(double travel, double plunge) =>
        _path is { } path ? path.Line(travel).OuterAngleAt(plunge) : OuterAngle(travel);

    /// <summary>Outer angle, rad, with the inner joint at mid-plunge; NaN when it was not read.</summary>
    public double OuterAngle(double travel) =>
        _path is { } path ? path.Line(travel).OuterAngleAt(0)
        : _outer is { } outer ? Math.Asin(Math.Sqrt(Math.Clamp(outer.At(travel), 0, 1)))
        : double.NaN;

    private static double Square(double x) => x * x;
}
