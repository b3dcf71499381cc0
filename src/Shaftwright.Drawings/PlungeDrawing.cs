using Shaftwright.Corner;
using Shaftwright.Corner.Linkages;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Drawings;

/// <summary>What is left of the inner joint over wheel travel.</summary>
public static class PlungeDrawing
{
    /// <summary>The picture that says most: plunge and angle inside the joint's own envelope where both are known, otherwise the
    /// allowed lengths over travel. Null when there is nothing to show yet.</summary>
    /// <param name="length">The answer of the length stage.</param>
    /// <param name="joints">The joints, for the envelope; null when not known.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="width">Width of the drawing, drawing units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="length"/> is null.</exception>
    public static Drawing? Of(
        LengthResult length,
        JointsInput? joints = null,
        Display display = Display.Metric,
        double width = Drawing.Telephone
    ) => EnvelopeDrawing.Of(length, joints, display, width) ?? Lengths(length, display, width);

    /// <summary>The lengths each position allows, over travel, one panel for each steering position: the length to make as a
    /// line, the ends of the window named. Null when there is nothing to show yet.</summary>
    /// <inheritdoc cref="Of"/>
    public static Drawing? Lengths(
        LengthResult length,
        Display display = Display.Metric,
        double width = Drawing.Telephone
    )
    {
        ArgumentNullException.ThrowIfNull(length);
        if (length.PositionsFor is not { } reference || length.Positions.Count == 0)
            return null;
        var board = new Board(width);
        var unit = display == Display.Inch ? Distance.Inch : Distance.Mm;
        var steerings = length.Positions.Select(PanelOf).Distinct().Order().ToList();
        var travel = new Band(
            length.Positions.Min(p => p.Travel),
            length.Positions.Max(p => p.Travel)
        );
        // A little air on both sides keeps dots off the frame.
        var air = Math.Max((travel.High - travel.Low) * 0.05, 2);
        travel = new(travel.Low - air, travel.High + air);
        var lengths = new Band(
            length.Positions.Min(p => Allowed(p, reference).Low),
            length.Positions.Max(p => Allowed(p, reference).High)
        );
        // Two lines of words above and below the curves name the ends of the window.
        var tall = steerings.Count > 1 ? 220.0 : 260.0;
        const double WordsTall = 52;
        var room = Math.Max(lengths.High - lengths.Low, 4) * WordsTall / (tall - 2 * WordsTall);

        lengths = new(lengths.Low - room, lengths.High + room);

        var left =
            8
            + Plot.Ticks(lengths, unit, Plot.UpwardTicks(tall))
                .Max(t => Board.WidthOf(t.Words, Board.Small))
            + 4;
        var y = 20.0;
        board.Words(Ink.Strong, Board.Edge, y, "Lengths that each position allows, " + unit.Symbol);
        if (length.Make is null)
            y =
                board.Paragraph(
                    Ink.Worst,
                    y + 20,
                    $"No length: {Say.Length(length.Missing).In(display)} is missing."
                ) - 14;
        y += 10;
        foreach (var steering in steerings)
        {
            if (steerings.Count > 1 || steering.Steering != Steering.Straight)
            {
                y += 16;
                board.Words(Ink.Strong, left, y, NameOf(steering, length, display));
                y += 8;
            }
            var plot = new Plot(board, new(left, y), new(width - 12, y + tall), travel, lengths);
            Panel(board, plot, length, reference, steering, display);
            plot.Axes(unit, unit);
            y = plot.Bottom + 28;
        }
        board.Words(
            Ink.Axis,
            (left + width) / 2,
            y + 12,
            $"wheel travel, {unit.Symbol}: droop − to bump +",
            anchor: Anchor.Middle
        );
        var legend = new Legend(board).Below(y + 18);
        legend.Face("allowed", Ink.Allowed);
        legend.Line("the joint's stop", Ink.Limit);
        legend.Dot(
            length.Positions[0].Place is null ? "reading" : "position asked for",
            Ink.Reading
        );
        if (length.Make is { } make)
            legend.Line("make " + Say.Length(make).In(display), Ink.Answer);
        if (length.Shortest is not null || length.Longest is not null)
            legend.Dot("sets the window", Ink.Worst);

        return board.Done(
            "lengths-over-travel",
            "Lengths allowed over wheel travel",
            Describe(length, display),
            legend.Bottom + 2,
            0,
            TableOf(length, display)
        );
    }

    private static void Panel(
        Board board,
        Plot plot,
        LengthResult length,
        double reference,
        (Steering Steering, double Rack) steering,
        Display display
    )
    {
        // However the power unit stands, what all of its states allow.
        var here = length
            .Positions.Where(p => PanelOf(p) == steering)
            .GroupBy(p => p.Travel)
            .Select(g =>
                g.First() with
                {
                    LeftIn = g.Min(p => p.LeftIn),
                    LeftOut = g.Min(p => p.LeftOut),
                    Read = g.Any(p => p.Read),
                }
            )
            .OrderBy(p => p.Travel)
            .ToList();
        // Readings that no curve joins stand alone: a bar at each, not a band that would claim what lies between.
        var joined = here.Any(p => !p.Read) || here.Count == 1;
        Spot Long(PositionLeft p) => plot.At(p.Travel, Allowed(p, reference).High);
        Spot Short(PositionLeft p) => plot.At(p.Travel, Allowed(p, reference).Low);
        if (joined && here.Count > 1)
        {
            board.Add(
                new Polygon(
                    Ink.Allowed,
                    [.. here.Select(Long), .. here.AsEnumerable().Reverse().Select(Short)]
                )
            );
            board.Add(new Polyline(Ink.Limit, [.. here.Select(Long)]));
            board.Add(new Polyline(Ink.Limit, [.. here.Select(Short)]));
        }
        foreach (var p in here.Where(p => p.Read))
        {
            if (!joined || here.Count == 1)
                board.Box(
                    Ink.Allowed,
                    plot.X(p.Travel) - 5,
                    Long(p).Y,
                    plot.X(p.Travel) + 5,
                    Short(p).Y
                );
            board.Add(new Circle(Ink.Reading, Long(p), 4));
            board.Add(new Circle(Ink.Reading, Short(p), 4));
        }
        if (length.Make is { } make)
        {
            board.Add(
                new Line(Ink.Answer, new(plot.Left, plot.Y(make)), new(plot.Right, plot.Y(make)))
            );
        }
        foreach (var (end, name, down) in Ends(length))
        {
            if ((end.Steering, end.Place?.Rack ?? 0) != steering)
                continue;
            var spot = plot.At(end.Travel, end.Length);
            board.Add(new Line(Ink.Gone, new(plot.Left, spot.Y), new(plot.Right, spot.Y)));
            board.Add(new Circle(Ink.Worst, spot, 6));
            var lines = Board.Wrap(
                Words(end, name, display),
                Board.Small,
                plot.Right - plot.Left - 20,
                Ink.Worst
            );
            for (var i = 0; i < lines.Count; i++)
                board.Words(
                    Ink.Worst,
                    Math.Clamp(
                        spot.X,
                        plot.Left + Board.WidthOf(lines[i], Board.Small, Ink.Worst) / 2 + 4,
                        Math.Max(
                            plot.Right - Board.WidthOf(lines[i], Board.Small, Ink.Worst) / 2 - 4,
                            plot.Left + Board.WidthOf(lines[i], Board.Small, Ink.Worst) / 2 + 4
                        )
                    ),
                    down ? plot.Bottom - 8 - (lines.Count - 1 - i) * 18 : plot.Top + 18 + i * 18,
                    lines[i],
                    anchor: Anchor.Middle
                );
            board.Add(
                new Line(
                    Ink.Measure,
                    new(spot.X, spot.Y + (down ? 7 : -7)),
                    new(
                        spot.X,
                        down ? plot.Bottom - 10 - lines.Count * 18 : plot.Top + 6 + lines.Count * 18
                    )
                )
            );
        }
    }

    private static IEnumerable<(WindowEnd End, string Name, bool Down)> Ends(LengthResult length)
    {
        if (length.Longest is { } l)
            yield return (l, "longest", false);
        if (length.Shortest is { } s)
            yield return (s, "shortest", true);
    }

    private static string Words(WindowEnd end, string name, Display display) =>
        $"{name} {Say.Length(end.Length).In(display)}: {Verb(end.Forbids)} at {TravelWords(end.Travel, display)}";

    private static string Verb(Forbids forbids) =>
        forbids switch
        {
            Forbids.JointBottoms => "bottoms",
            Forbids.JointPullsOut => "pulls out",
            Forbids.OuterAngle => "outer angle",
            _ => "inner angle",
        };

    /// <summary>A travel as one would say it.</summary>
    internal static string TravelWords(double travel, Display display) =>
        travel switch
        {
            > 0.05 => Say.Length(travel).In(display) + " bump",
            < -0.05 => Say.Length(-travel).In(display) + " droop",
            _ => "ride height",
        };

    /// <summary>Which panel a position is drawn in: one a steering position, one a place of the rack.</summary>
    private static (Steering Steering, double Rack) PanelOf(PositionLeft p) =>
        (p.Steering, p.Place?.Rack ?? 0);

    private static string NameOf(
        (Steering Steering, double Rack) panel,
        LengthResult length,
        Display display
    ) =>
        length.Positions.Any(p => p.Place is not null) && panel.Rack != 0
            ? $"Rack {Say.Length(Math.Abs(panel.Rack)).In(display)} to the {(panel.Rack > 0 ? "left" : "right")}"
            : NameOf(panel.Steering);

    private static string NameOf(PositionLeft p, LengthResult length, Display display) =>
        NameOf(PanelOf(p), length, display)
        + p.Place?.PowerUnit switch
        {
            PowerUnitState.Driving => ", driving",
            PowerUnitState.Overrun => ", overrun",
            _ => "",
        };

    /// <summary>A steering position as one would say it.</summary>
    internal static string NameOf(Steering steering) =>
        steering switch
        {
            Steering.FullLeft => "Full left lock",
            Steering.FullRight => "Full right lock",
            _ => "Straight ahead",
        };

    /// <summary>Longest and shortest shaft that a position allows up to the stop itself. What is left is plunge, along the inner
    /// axis; where the angle is known the length changes a little more than the plunge does.</summary>
    private static Band Allowed(PositionLeft p, double length)
    {
        var angle = p.InnerAngle ?? 0;
        var (along, beside) = (length * Math.Cos(angle), length * Math.Sin(angle));
        double With(double left) => Math.Sqrt((along + left) * (along + left) + beside * beside);
        return new(With(-p.LeftOut), With(p.LeftIn));
    }

    private static string Describe(LengthResult length, Display display)
    {
        var words = length.Make is { } make
            ? $"The length to make is {Say.Length(make).In(display)}, joint centre to joint centre."
            : $"No length is allowed at every position; {Say.Length(length.Missing).In(display)} is missing.";
        foreach (var (end, name, _) in Ends(length))
            words +=
                $" The {Words(end, name, display)}, {NameOf((end.Steering, end.Place?.Rack ?? 0), length, display).ToLowerInvariant()}.";
        return words;
    }

    /// <summary>The table behind both pictures.</summary>
    internal static Table TableOf(LengthResult length, Display display)
    {
        var angles = length.Positions.Any(p => p.InnerAngle is not null);
        var loads = JointColumns.Of(length);
        var rows = new List<IReadOnlyList<string>>();
        foreach (var p in length.Positions)
        {
            var row = new List<string>
            {
                TravelWords(p.Travel, display),
                NameOf(p, length, display),
                Say.Length(p.LeftIn).In(display),
                Say.Length(p.LeftOut).In(display),
            };
            if (angles)
            {
                row.Add(p.Plunge is { } s ? Say.Length(s).In(display) : "");
                row.Add(p.InnerAngle is { } a ? Say.Angle(a).In(display) : "");
            }
            row.AddRange(loads.Select(c => c.Cell(p, display)));
            row.Add(
                p.Place is not null ? "linkage"
                : p.Read ? "reading"
                : "between readings"
            );
            rows.Add(row);
        }
        IReadOnlyList<string> heads =
        [
            "Travel",
            "Steering",
            "Left in",
            "Left out",
            .. angles ? ["Plunge", "Inner angle"] : Array.Empty<string>(),
            .. loads.Select(c => c.Head),
            "From",
        ];
        return new("What is left of the inner joint over wheel travel", heads, rows);
    }
}
