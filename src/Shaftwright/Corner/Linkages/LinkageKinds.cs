using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>Which points each kind of linkage needs, and how it is made of them. A new kind gets its lines here.</summary>
public static class LinkageKinds
{
    private static readonly LinkagePoint[] s_lower =
    [
        LinkagePoint.LowerFront,
        LinkagePoint.LowerRear,
        LinkagePoint.LowerBall,
    ];
    private static readonly LinkagePoint[] s_upper =
    [
        LinkagePoint.UpperFront,
        LinkagePoint.UpperRear,
        LinkagePoint.UpperBall,
    ];
    private static readonly LinkagePoint[] s_track =
    [
        LinkagePoint.TrackInner,
        LinkagePoint.TrackOuter,
    ];
    private static readonly LinkagePoint[] s_links =
    [
        LinkagePoint.LinkOneInner,
        LinkagePoint.LinkOneOuter,
        LinkagePoint.LinkTwoInner,
        LinkagePoint.LinkTwoOuter,
        LinkagePoint.LinkThreeInner,
        LinkagePoint.LinkThreeOuter,
        LinkagePoint.LinkFourInner,
        LinkagePoint.LinkFourOuter,
    ];

    /// <summary>The points that hold the hub, the wheel's centre first.</summary>
    public static IReadOnlyList<LinkagePoint> Needs(LinkageKind kind) =>
        kind switch
        {
            LinkageKind.DoubleWishbone =>
            [
                LinkagePoint.WheelCentre,
                .. s_lower,
                .. s_upper,
                .. s_track,
            ],
            LinkageKind.Strut =>
            [
                LinkagePoint.WheelCentre,
                .. s_lower,
                LinkagePoint.StrutTop,
                LinkagePoint.StrutLow,
                .. s_track,
            ],
            LinkageKind.PivotedArm =>
            [
                LinkagePoint.WheelCentre,
                LinkagePoint.PivotOne,
                LinkagePoint.PivotTwo,
            ],
            LinkageKind.FiveLink => [LinkagePoint.WheelCentre, .. s_links, .. s_track],
            LinkageKind.Beam =>
            [
                LinkagePoint.WheelCentre,
                LinkagePoint.OtherWheelCentre,
                .. s_links,
            ],
            _ => [],
        };

    /// <summary>True when a rack can steer it.</summary>
    public static bool Steers(LinkageKind kind) =>
        kind is LinkageKind.DoubleWishbone or LinkageKind.Strut or LinkageKind.FiveLink;

    /// <summary>Makes the linkage.</summary>
    /// <param name="kind">Which; not <see cref="LinkageKind.Unknown"/>.</param>
    /// <param name="at">Where a point is at ride height, mm.</param>
    /// <param name="rack">Direction in which a rack moves to the left, length 1; null when the link's inner end stays.</param>
    /// <exception cref="ArgumentException">Two points that must differ are one.</exception>
    public static Linkage Make(LinkageKind kind, Func<LinkagePoint, Vec3> at, Vec3? rack)
    {
        ArgumentNullException.ThrowIfNull(at);
        Constraint Track() =>
            rack is { } r
                ? Constraint.TrackRod(at(LinkagePoint.TrackInner), at(LinkagePoint.TrackOuter), r)
                : Constraint.Rod(at(LinkagePoint.TrackInner), at(LinkagePoint.TrackOuter));
        List<Constraint> Links()
        {
            var rods = new List<Constraint>(5);
            for (var i = 0; i < s_links.Length; i += 2)
                rods.Add(Constraint.Rod(at(s_links[i]), at(s_links[i + 1])));
            return rods;
        }
        var wheel = at(LinkagePoint.WheelCentre);
        return kind switch
        {
            LinkageKind.DoubleWishbone => DoubleWishbone.Of(
                wheel,
                at(LinkagePoint.LowerFront),
                at(LinkagePoint.LowerRear),
                at(LinkagePoint.LowerBall),
                at(LinkagePoint.UpperFront),
                at(LinkagePoint.UpperRear),
                at(LinkagePoint.UpperBall),
                Track()
            ),
            LinkageKind.Strut => Strut.Of(
                wheel,
                at(LinkagePoint.LowerFront),
                at(LinkagePoint.LowerRear),
                at(LinkagePoint.LowerBall),
                at(LinkagePoint.StrutTop),
                at(LinkagePoint.StrutLow),
                Track()
            ),
            LinkageKind.PivotedArm => PivotedArm.Of(
                wheel,
                at(LinkagePoint.PivotOne),
                at(LinkagePoint.PivotTwo)
            ),
            LinkageKind.FiveLink => FiveLink.Of(wheel, [.. Links(), Track()]),
            LinkageKind.Beam => Beam.Of(wheel, at(LinkagePoint.OtherWheelCentre), Links()),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Name a kind."),
        };
    }
}
