using Shaftwright.Geometry;
using Shaftwright.Measures;

namespace Shaftwright.Corner.Linkages;

/// <summary>The measured linkage as one row of coordinates with their doubt: x = mean + L·z, where each z is a standard normal number.
/// So measured points, points found from tapes and points that readings corrected are all told alike.</summary>
internal sealed class LinkageModel
{
    /// <summary>Which direction, for <see cref="Direction"/>.</summary>
    public const int InnerDirection = 0,
        OuterDirection = 1,
        RackDirection = 2;

    /// <summary>Half-width of a direction that nobody measured and is taken as straight across, rad. Common practice, no source.</summary>
    internal const double Assumed = 2 * Math.PI / 180;

    private readonly Dictionary<LinkagePoint, int> _points = [];
    private readonly int _directions;
    private readonly int _moves;

    private LinkageModel(LinkageInput input, List<Coordinate> row)
    {
        Kind = input.Kind;
        Racked =
            LinkageKinds.Steers(Kind)
            && (
                input.RackLeft is { Value: > 0 }
                || input.RackRight is { Value: > 0 }
                || input.Positions.Any(p => p.Rack is { Value: not 0 })
            );
        Bearing = input.IntermediateBearing;
        foreach (var p in Needed(input).Concat(Optional(input)))
        {
            var measured = input.Points.First(m => m.Point == p);
            _points[p] = row.Count;
            var words = LinkageFields.Words(p);
            if (measured.Tapes.Count > 0)
            {
                PutTaped(row, words, TapedPoint.Find(measured, input.References, out _)!, measured);
                continue;
            }
            Put(row, $"{words}, fore and aft", LinkageFields.X, measured.X!);
            Put(row, $"{words}, across", LinkageFields.Y, measured.Y!, measured.Mirrored ? -1 : 1);
            Put(row, $"{words}, height", LinkageFields.Z, measured.Z!);
        }
        _directions = row.Count;
        Put(row, "inner joint's axis", input.InnerDirection, _points, LinkagePoint.InnerAxis);
        Put(row, "outer joint's axis", input.OuterDirection, _points, LinkagePoint.OuterAxis);
        PutSure(row, input.RackDirection);
        _moves = row.Count;
        Put(row, "power unit driving", input.Driving);
        Put(row, "power unit on overrun", input.Overrun);
        Mean = [.. row.Select(c => c.Value)];
        Words = [.. row.Select(c => c.Words)];
        StandardUncertainty = [.. row.Select(c => c.Uncertainty)];
        Factor = new double[Mean.Length, Mean.Length];
        for (var i = 0; i < Mean.Length; i++)
            Factor[i, i] = StandardUncertainty[i];
        foreach (var (at, factor) in _taped)
        {
            for (var i = 0; i < 3; i++)
            for (var k = 0; k <= i; k++)
                Factor[at + i, at + k] = factor[i, k];
        }
    }

    private readonly List<(int At, double[,] Factor)> _taped = [];
    private readonly List<TapeFit> _tapes = [];

    /// <summary>Every tape against the place it led to.</summary>
    public IReadOnlyList<TapeFit> Tapes => _tapes;

    /// <summary>A point from tapes: its three coordinates are off together.</summary>
    private void PutTaped(List<Coordinate> row, string words, TapedPoint found, PointInput measured)
    {
        var factor = (double[,])found.Factor.Clone();
        var sign = measured.Mirrored ? -1 : 1;
        for (var k = 0; k < 3; k++)
            factor[1, k] *= sign;
        double Doubt(int i) =>
            Math.Sqrt(
                factor[i, 0] * factor[i, 0]
                    + factor[i, 1] * factor[i, 1]
                    + factor[i, 2] * factor[i, 2]
            );
        _taped.Add((row.Count, factor));
        _tapes.AddRange(found.Tapes);
        row.Add(new($"{words}, fore and aft", found.At.X, Doubt(0)));
        row.Add(new($"{words}, across", sign * found.At.Y, Doubt(1)));
        row.Add(new($"{words}, height", found.At.Z, Doubt(2)));
    }

    private LinkageModel(LinkageModel from, double[] mean, double[,] factor)
    {
        Kind = from.Kind;
        Racked = from.Racked;
        Bearing = from.Bearing;
        _points = from._points;
        _directions = from._directions;
        _moves = from._moves;
        Mean = mean;
        Words = from.Words;
        _tapes = from._tapes;
        Factor = factor;
        StandardUncertainty = new double[mean.Length];
        for (var i = 0; i < mean.Length; i++)
        {
            var square = 0.0;
            for (var k = 0; k < mean.Length; k++)
                square += factor[i, k] * factor[i, k];
            StandardUncertainty[i] = Math.Sqrt(square);
        }
    }

    private sealed record Coordinate(string Words, double Value, double Uncertainty);

    public LinkageKind Kind { get; }

    /// <summary>A rack moves the steering link.</summary>
    public bool Racked { get; }

    public BearingCarrier Bearing { get; }

    /// <summary>Best values: mm, or rad.</summary>
    public double[] Mean { get; }

    /// <summary>What each is, in words.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>Standard uncertainty of each.</summary>
    public double[] StandardUncertainty { get; }

    /// <summary>L of x = mean + L·z.</summary>
    public double[,] Factor { get; }

    /// <summary>The model of a linkage; null, with what is missing in words, when it is not whole.</summary>
    public static LinkageModel? Of(LinkageInput input, out IReadOnlyList<string> missing)
    {
        missing = Missing(input);
        return missing.Count == 0 ? new(input, []) : null;
    }

    /// <summary>The same linkage, known better.</summary>
    public LinkageModel With(double[] mean, double[,] factor) => new(this, mean, factor);

    /// <summary>Coordinates for a row of standard normal numbers.</summary>
    public double[] Coordinates(ReadOnlySpan<double> z)
    {
        var x = (double[])Mean.Clone();
        for (var k = 0; k < x.Length; k++)
        {
            // Nearly all are 0 when one thing is nudged.
            if (z[k] == 0)
                continue;
            for (var i = 0; i < x.Length; i++)
                x[i] += Factor[i, k] * z[k];
        }
        return x;
    }

    /// <summary>True where a coordinate is an angle, rad.</summary>
    public bool IsAngle(int i) =>
        (i >= _directions && i < _moves) || (i >= _moves && (i - _moves) % 4 == 3);

    /// <summary>True when the number z of this place moves any coordinate.</summary>
    public bool Moves(int k)
    {
        for (var i = 0; i < Mean.Length; i++)
            if (Factor[i, k] != 0)
                return true;
        return false;
    }

    /// <summary>Two of the points that lie in one place, in words; null when none do.</summary>
    public (string One, string Other)? Coincident()
    {
        LinkagePoint[] points = [.. Points];
        for (var i = 0; i < points.Length; i++)
        for (var k = 0; k < i; k++)
            if (
                (Point(Mean, points[i]) - Point(Mean, points[k])).Length < Apart
                && !MayMeet(points[k], points[i])
            )
                return (LinkageFields.Words(points[k]), LinkageFields.Words(points[i]));
        return null;
    }

    /// <summary>Nearer than this, mm, two points are one.</summary>
    private const double Apart = 1e-3;

    /// <summary>Points that no rod and no line joins: arms may share a pivot, a joint may sit in a wheel's centre.</summary>
    private static bool MayMeet(LinkagePoint a, LinkagePoint b) =>
        !s_joined.Contains((a, b)) && !s_joined.Contains((b, a));

    private static readonly HashSet<(LinkagePoint, LinkagePoint)> s_joined =
    [
        (LinkagePoint.OuterJoint, LinkagePoint.OuterAxis),
        (LinkagePoint.InnerJoint, LinkagePoint.InnerAxis),
        (LinkagePoint.OuterJoint, LinkagePoint.InnerJoint),
        (LinkagePoint.LowerFront, LinkagePoint.LowerBall),
        (LinkagePoint.LowerRear, LinkagePoint.LowerBall),
        (LinkagePoint.UpperFront, LinkagePoint.UpperBall),
        (LinkagePoint.UpperRear, LinkagePoint.UpperBall),
        (LinkagePoint.TrackInner, LinkagePoint.TrackOuter),
        (LinkagePoint.StrutTop, LinkagePoint.StrutLow),
        (LinkagePoint.PivotOne, LinkagePoint.PivotTwo),
        (LinkagePoint.LinkOneInner, LinkagePoint.LinkOneOuter),
        (LinkagePoint.LinkTwoInner, LinkagePoint.LinkTwoOuter),
        (LinkagePoint.LinkThreeInner, LinkagePoint.LinkThreeOuter),
        (LinkagePoint.LinkFourInner, LinkagePoint.LinkFourOuter),
        (LinkagePoint.RollOne, LinkagePoint.RollTwo),
        (LinkagePoint.Output, LinkagePoint.Bearing),
    ];

    public bool Has(LinkagePoint point) => _points.ContainsKey(point);

    /// <summary>The points it is made of.</summary>
    public IEnumerable<LinkagePoint> Points => _points.Keys;

    /// <summary>Where a point's three coordinates stand in the row.</summary>
    public int PlaceOf(LinkagePoint point) => _points[point];

    public Vec3 Point(double[] x, LinkagePoint point)
    {
        var i = _points[point];
        return new(x[i], x[i + 1], x[i + 2]);
    }

    /// <summary>A direction outboard, from its two angles.</summary>
    public Vec3 Direction(double[] x, int which, int side)
    {
        var i = _directions + 2 * which;
        return new Vec3(Math.Tan(x[i + 1]), side, Math.Tan(x[i])).Unit();
    }

    /// <summary>How the power unit moves, mm, and rolls, rad.</summary>
    public (Vec3 Shift, double Roll) Move(double[] x, PowerUnitState state)
    {
        if (state == PowerUnitState.AtRest)
            return default;
        var i = _moves + (state == PowerUnitState.Driving ? 0 : 4);
        return (new(x[i], x[i + 1], x[i + 2]), x[i + 3]);
    }

    private static IEnumerable<LinkagePoint> Needed(LinkageInput input)
    {
        foreach (var p in LinkageKinds.Needs(input.Kind))
            yield return p;
        yield return LinkagePoint.OuterJoint;
        yield return LinkagePoint.InnerJoint;
        if (input.Driving?.Roll is { Value: not 0 } || input.Overrun?.Roll is { Value: not 0 })
        {
            yield return LinkagePoint.RollOne;
            yield return LinkagePoint.RollTwo;
        }
        if (input.IntermediateBearing == BearingCarrier.Body)
        {
            yield return LinkagePoint.Output;
            yield return LinkagePoint.Bearing;
        }
    }

    private static IEnumerable<LinkagePoint> Optional(LinkageInput input) =>
        new[] { LinkagePoint.InnerAxis, LinkagePoint.OuterAxis }.Where(p =>
            input.Points.Any(m => m.Point == p && m is { X: not null, Y: not null, Z: not null })
        );

    private static List<string> Missing(LinkageInput input)
    {
        var missing = new List<string>();
        if (input.Kind == LinkageKind.Unknown)
            missing.Add("what holds the hub");
        foreach (var p in Needed(input))
        {
            var words = LinkageFields.Words(p);
            var m = input.Points.FirstOrDefault(m => m.Point == p);
            if (m is null)
            {
                missing.Add(words);
                continue;
            }
            if (m.Tapes.Count > 0)
            {
                if (TapedPoint.Find(m, input.References, out var why) is null)
                    missing.Add($"{words}: {why}");
                continue;
            }
            if (m.X is null)
                missing.Add(words + ", fore and aft");
            if (m.Y is null)
                missing.Add(words + ", across");
            if (m.Z is null)
                missing.Add(words + ", height");
        }
        return missing;
    }

    private static void Put<T>(
        List<Coordinate> row,
        string words,
        Field<T> field,
        Measured<T>? measured,
        int sign = 1,
        double unmeasured = 0
    )
        where T : IDimension<T> =>
        row.Add(
            new(
                words,
                sign * (measured?.Value ?? 0),
                measured is null ? unmeasured : field.StandardUncertainty(measured)
            )
        );

    private static void Put(
        List<Coordinate> row,
        string words,
        DirectionInput? direction,
        Dictionary<LinkagePoint, int> points,
        LinkagePoint instead
    )
    {
        // With a second point of the axis the two angles are not used, and are sure.
        var otherwise = points.ContainsKey(instead) ? 0 : Assumed / Math.Sqrt(3);
        Put(row, words + ", rise", LinkageFields.Rise, direction?.Rise, 1, otherwise);
        Put(
            row,
            words + ", seen from above",
            LinkageFields.Forward,
            direction?.Forward,
            1,
            otherwise
        );
    }

    private static void PutSure(List<Coordinate> row, DirectionInput? rack)
    {
        Put(row, "rack, rise", LinkageFields.Rise, rack?.Rise);
        Put(row, "rack, seen from above", LinkageFields.Forward, rack?.Forward);
    }

    private static void Put(List<Coordinate> row, string words, PowerUnitMove? move)
    {
        Put(row, words + ", fore and aft", LinkageFields.MoveX, move?.X);
        Put(row, words + ", across", LinkageFields.MoveY, move?.Y);
        Put(row, words + ", up", LinkageFields.MoveZ, move?.Z);
        Put(row, words + ", roll", LinkageFields.Roll, move?.Roll);
    }
}
