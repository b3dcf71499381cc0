using System.Globalization;
using Shaftwright.Corner.Linkages;
using Shaftwright.Geometry;
using Shaftwright.Measures;

namespace Shaftwright.Drawings;

/// <summary>A linkage by its points, from ahead and from above, with one point in hand. Points that nobody measured yet stand where
/// they lie on a car of no make, so that one sees which is meant.</summary>
public static class LinkageDrawing
{
    /// <summary>Draws it. Null when it is not said what holds the hub.</summary>
    /// <param name="linkage">What is known of it.</param>
    /// <param name="inHand">The point that is asked for; null for none.</param>
    /// <param name="width">Width of the drawing, drawing units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="linkage"/> is null.</exception>
    public static Drawing? Of(
        LinkageInput linkage,
        LinkagePoint? inHand,
        double width = Drawing.Telephone
    )
    {
        ArgumentNullException.ThrowIfNull(linkage);
        if (linkage.Kind == LinkageKind.Unknown)
            return null;
        var points = Points(linkage);
        var board = new Board(width);
        var y = 20.0;
        board.Words(Ink.Strong, Board.Edge, y, "From ahead, this wheel's side");
        y = View(board, linkage, points, inHand, y + 8, p => new(Math.Abs(p.Y), -p.Z), "up");
        board.Words(Ink.Strong, Board.Edge, y + 18, "From above");
        y = View(board, linkage, points, inHand, y + 26, p => new(Math.Abs(p.Y), -p.X), "forward");
        var legend = new Legend(board).Below(y);
        legend.Dot("measured", Ink.Reading);
        legend.Dot("not yet, sketched", Ink.Axis);
        if (inHand is not null)
            legend.Dot("this one", Ink.Worst);
        return board.Done(
            "linkage",
            "The linkage by its points",
            inHand is { } asked
                ? $"The {LinkageFields.Words(asked)} is marked among the points of the linkage, seen from ahead and from above."
                : "The points of the linkage, seen from ahead and from above.",
            legend.Bottom + 2,
            0,
            TableOf(linkage)
        );
    }

    private readonly record struct Placed(Vec3 At, bool Measured);

    private static Dictionary<LinkagePoint, Placed> Points(LinkageInput linkage)
    {
        var points = new Dictionary<LinkagePoint, Placed>();
        foreach (
            var p in LinkageKinds
                .Needs(linkage.Kind)
                .Concat([LinkagePoint.OuterJoint, LinkagePoint.InnerJoint])
        )
        {
            var measured = linkage.Points.FirstOrDefault(m => m.Point == p);
            points[p] = measured is { X: { } x, Y: { } y, Z: { } z }
                ? new(new(x.Value, y.Value, z.Value), true)
                : new(Sketch(p), measured?.Tapes.Count >= 3);
        }
        // Measured points may have another origin than the sketch: what is sketched goes with the measured wheel centre.
        var wheel = points[LinkagePoint.WheelCentre];
        if (wheel.Measured)
        {
            var by = wheel.At - Sketch(LinkagePoint.WheelCentre);
            by = by with { Y = Math.Abs(wheel.At.Y) - Sketch(LinkagePoint.WheelCentre).Y };
            foreach (var (p, at) in points.Where(p => !p.Value.Measured).ToList())
                points[p] = at with { At = at.At + by };
        }
        return points;
    }

    /// <summary>Where a point lies on a car of no make, mm.</summary>
    private static Vec3 Sketch(LinkagePoint p) =>
        p switch
        {
            LinkagePoint.WheelCentre => new(0, 700, 300),
            LinkagePoint.OtherWheelCentre => new(0, -700, 300),
            LinkagePoint.OuterJoint => new(0, 630, 300),
            LinkagePoint.InnerJoint => new(0, 220, 290),
            LinkagePoint.LowerFront => new(170, 320, 200),
            LinkagePoint.LowerRear => new(-170, 320, 200),
            LinkagePoint.LowerBall => new(0, 640, 190),
            LinkagePoint.UpperFront => new(130, 370, 430),
            LinkagePoint.UpperRear => new(-130, 370, 430),
            LinkagePoint.UpperBall => new(-10, 620, 440),
            LinkagePoint.TrackInner => new(-110, 310, 260),
            LinkagePoint.TrackOuter => new(-130, 630, 255),
            LinkagePoint.StrutTop => new(-20, 560, 760),
            LinkagePoint.StrutLow => new(-8, 610, 360),
            LinkagePoint.PivotOne => new(420, 360, 290),
            LinkagePoint.PivotTwo => new(370, 540, 290),
            LinkagePoint.LinkOneInner => new(260, 330, 210),
            LinkagePoint.LinkOneOuter => new(30, 640, 200),
            LinkagePoint.LinkTwoInner => new(-240, 340, 210),
            LinkagePoint.LinkTwoOuter => new(-40, 640, 200),
            LinkagePoint.LinkThreeInner => new(180, 370, 420),
            LinkagePoint.LinkThreeOuter => new(20, 620, 440),
            LinkagePoint.LinkFourInner => new(-150, 370, 420),
            _ => new(-30, 620, 440),
        };

    private static readonly (LinkagePoint From, LinkagePoint To)[] s_rods =
    [
        (LinkagePoint.LowerFront, LinkagePoint.LowerBall),
        (LinkagePoint.LowerRear, LinkagePoint.LowerBall),
        (LinkagePoint.UpperFront, LinkagePoint.UpperBall),
        (LinkagePoint.UpperRear, LinkagePoint.UpperBall),
        (LinkagePoint.TrackInner, LinkagePoint.TrackOuter),
        (LinkagePoint.StrutTop, LinkagePoint.StrutLow),
        (LinkagePoint.PivotOne, LinkagePoint.PivotTwo),
        (LinkagePoint.PivotOne, LinkagePoint.WheelCentre),
        (LinkagePoint.PivotTwo, LinkagePoint.WheelCentre),
        (LinkagePoint.LinkOneInner, LinkagePoint.LinkOneOuter),
        (LinkagePoint.LinkTwoInner, LinkagePoint.LinkTwoOuter),
        (LinkagePoint.LinkThreeInner, LinkagePoint.LinkThreeOuter),
        (LinkagePoint.LinkFourInner, LinkagePoint.LinkFourOuter),
    ];

    private static double View(
        Board board,
        LinkageInput linkage,
        Dictionary<LinkagePoint, Placed> points,
        LinkagePoint? inHand,
        double top,
        Func<Vec3, Spot> seen,
        string upwards
    )
    {
        // The other wheel of a beam would halve the scale of everything that is measured here.
        var spots = points
            .Where(p => p.Key != LinkagePoint.OtherWheelCentre)
            .ToDictionary(p => p.Key, p => seen(p.Value.At));
        var (left, right) = (spots.Values.Min(s => s.X), spots.Values.Max(s => s.X) + 70);
        var (high, low) = (spots.Values.Min(s => s.Y), spots.Values.Max(s => s.Y));
        const double Tall = 190;
        const double Air = 24;
        var k = Math.Min(
            (board.Width - 2 * Air) / Math.Max(right - left, 1),
            (Tall - 2 * Air) / Math.Max(low - high, 1)
        );
        Spot On(Spot s) => new(Air + (s.X - left) * k, top + Air + (s.Y - high) * k);
        var wheel = On(spots[LinkagePoint.WheelCentre]);
        board.Box(
            Ink.Tool,
            wheel.X,
            Math.Max(top + 2, wheel.Y - 60),
            Math.Min(wheel.X + 60 * k + 8, board.Width - 2),
            Math.Min(top + Tall - 2, wheel.Y + 60)
        );
        foreach (var (from, to) in s_rods)
        {
            if (spots.TryGetValue(from, out var a) && spots.TryGetValue(to, out var b))
                board.Add(new Line(Ink.Path, On(a), On(b)));
        }
        board.Add(
            new Line(
                Ink.Answer,
                On(spots[LinkagePoint.InnerJoint]),
                On(spots[LinkagePoint.OuterJoint])
            )
        );
        foreach (var (p, spot) in spots)
            board.Add(new Circle(points[p].Measured ? Ink.Reading : Ink.Axis, On(spot), 4));
        if (inHand is { } asked && spots.TryGetValue(asked, out var here))
        {
            var at = On(here);
            board.Add(new Circle(Ink.Worst, at, 9));
            board.Words(
                Ink.Worst,
                at.X,
                at.Y < top + Tall / 2 ? at.Y - 13 : at.Y + 24,
                LinkageFields.Words(asked),
                anchor: Anchor.Middle
            );
        }
        board.Add(
            new Line(
                Ink.Axis,
                new(board.Width - 12, top + Tall - 6),
                new(board.Width - 12, top + Tall - 46),
                Arrow: true
            )
        );
        board.Words(Ink.Axis, board.Width - 18, top + Tall - 8, upwards, anchor: Anchor.End);
        return top + Tall;
    }

    private static Table TableOf(LinkageInput linkage)
    {
        static string Said(Measured<Distance>? m) => m?.Typed ?? "";
        var rows = new List<IReadOnlyList<string>>();
        foreach (
            var p in LinkageKinds
                .Needs(linkage.Kind)
                .Concat([LinkagePoint.OuterJoint, LinkagePoint.InnerJoint])
        )
        {
            var m = linkage.Points.FirstOrDefault(m => m.Point == p);
            rows.Add([
                LinkageFields.Words(p),
                Said(m?.X),
                Said(m?.Y),
                Said(m?.Z),
                (m?.Tapes.Count ?? 0).ToString(CultureInfo.InvariantCulture),
            ]);
        }
        return new("The points as typed", ["Point", "Forward", "Left", "Up", "Tapes"], rows);
    }
}
