using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.Drawings;

/// <summary>Plunge against angle of the inner joint, inside what the joint allows, with its path over wheel travel.</summary>
public static class EnvelopeDrawing
{
    private const double Degree = Math.PI / 180;

    /// <summary>Draws it. Null unless plunge, angle and the joint's own limits are known.</summary>
    /// <inheritdoc cref="PlungeDrawing.Of"/>
    public static Drawing? Of(
        LengthResult length,
        JointsInput? joints,
        Display display = Display.Metric,
        double width = Drawing.Telephone
    )
    {
        ArgumentNullException.ThrowIfNull(length);
        var path = length
            .Positions.Where(p => p is { Plunge: not null, InnerAngle: not null })
            .ToList();
        if (
            path.Count == 0
            || joints?.Inner is not { } joint
            || PlungeLimits.Of(joint) is not { } limits
        )
            return null;
        var largest = path.Max(p => p.InnerAngle!.Value);
        var limit = joint.AngleLimit?.Value;
        var top = Math.Max(limit ?? 0, largest) * 1.12 + 1 * Degree;
        var steps = Enumerable
            .Range(0, 41)
            .Select(i => (limit ?? top) * i / 40)
            .Select(a => (Angle: a, Limits: new Band(-limits.In(a), limits.Out(a))))
            .TakeWhile(e => e.Limits.Low <= e.Limits.High)
            .ToList();
        var reach = Math.Max(
            Math.Max(limits.StraightIn, limits.StraightOut),
            path.Max(p => Math.Abs(p.Plunge!.Value))
        );
        var across = new Band(-reach * 1.1 - 1, reach * 1.1 + 1);

        var worst = path.MinBy(p => Math.Min(p.LeftIn, p.LeftOut))!;
        var steepest = path.MaxBy(p => p.InnerAngle!.Value)!;
        var words = WorstWords(worst, display);
        var angleWords =
            $"Largest angle {Say.Angle(largest).In(display)}"
            + (limit is { } l ? $" of {Say.Angle(l).In(display)}." : "; its limit is not known.");

        var board = new Board(width);
        var unit = display == Display.Inch ? Distance.Inch : Distance.Mm;
        board.Words(Ink.Strong, Board.Edge, 20, "Inner joint: plunge and angle");
        var y = board.Paragraph(Ink.Worst, 42, words);
        y = board.Paragraph(Ink.Note, y, angleWords);
        var plot = new Plot(board, new(44, y - 6), new(width - 12, y + 244), across, new(0, top));
        if (steps.Count > 1)
            board.Add(
                new Polygon(
                    Ink.Limit,
                    [
                        .. steps.Select(e => plot.At(e.Limits.Low, e.Angle)),
                        .. steps
                            .AsEnumerable()
                            .Reverse()
                            .Select(e => plot.At(e.Limits.High, e.Angle)),
                    ]
                )
            );
        plot.Axes(unit, Angle.Degree);
        board.Words(Ink.Axis, plot.Left, plot.Bottom + 38, "◀ in: bottoms");
        board.Words(Ink.Axis, plot.Right, plot.Bottom + 38, "out: pulls out ▶", anchor: Anchor.End);
        board.Words(
            Ink.Axis,
            (plot.Left + plot.Right) / 2,
            plot.Bottom + 56,
            $"plunge, {unit.Symbol}; upwards: angle, °",
            anchor: Anchor.Middle
        );

        foreach (var line in path.GroupBy(p => (p.Steering, p.Place)))
        {
            var ordered = line.OrderBy(p => p.Travel).ToList();
            board.Add(
                new Polyline(
                    Ink.Path,
                    [.. ordered.Select(p => plot.At(p.Plunge!.Value, p.InnerAngle!.Value))],
                    Arrow: true
                )
            );
            foreach (var p in ordered.Where(p => p.Read))
                board.Add(
                    new Circle(Ink.Reading, plot.At(p.Plunge!.Value, p.InnerAngle!.Value), 4)
                );
        }
        Mark(board, plot, worst, worst == steepest ? "tightest, steepest" : "tightest");
        if (steepest != worst)
            Mark(board, plot, steepest, "steepest");
        words += " " + angleWords;

        var legend = new Legend(board).Below(plot.Bottom + 66);
        legend.Face("the joint allows", Ink.Limit);
        legend.Line("droop to bump", Ink.Path);
        legend.Dot("reading", Ink.Reading);
        legend.Dot("worst", Ink.Worst);
        var note = limits switch
        {
            { HasTable: true } => "Limits as measured at angles.",
            { RollerRadius: > 0, ByHalfAngle: true } =>
                "Each end loses what the bench showed, by tan(angle ÷ 2).",
            { RollerRadius: > 0 } => "Tripod: each end loses roller radius × tan(angle).",
            _ => "Limits taken the same at every angle: not measured at angles.",
        };
        y = board.Paragraph(Ink.Note, legend.Bottom + 14, note) - 8;
        return board.Done(
            "plunge-and-angle",
            "Plunge and angle of the inner joint over wheel travel",
            words,
            y,
            0,
            PlungeDrawing.TableOf(length, display)
        );
    }

    private static void Mark(Board board, Plot plot, PositionLeft p, string name)
    {
        var spot = plot.At(p.Plunge!.Value, p.InnerAngle!.Value);
        board.Add(new Circle(Ink.Worst, spot, 7));
        var wide = Board.WidthOf(name, Board.Small, Ink.Worst) + 12;
        var left = spot.X + wide > plot.Right;
        board.Words(
            Ink.Worst,
            spot.X + (left ? -12 : 12),
            spot.Y - 10,
            name,
            anchor: left ? Anchor.End : Anchor.Start
        );
    }

    private static string WorstWords(PositionLeft p, Display display)
    {
        var (left, what) =
            p.LeftIn <= p.LeftOut ? (p.LeftIn, "bottoming") : (p.LeftOut, "pulling out");
        var where = PlungeDrawing.TravelWords(p.Travel, display);
        return left >= 0
            ? $"Tightest at {where}: {Say.Length(left).In(display)} from {what}."
            : $"Worst at {where}: {Say.Length(-left).In(display)} past {what}.";
    }
}
