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
            || joints?.Inner is not { PlungeIn: { } plungeIn, PlungeOut: { } plungeOut } joint
        )
            return null;
        var largest = path.Max(p => p.InnerAngle!.Value);
        var limit = joint.AngleLimit?.Value;
        var top = Math.Max(limit ?? 0, largest) * 1.12 + 1 * Degree;
        var steps = Enumerable
            .Range(0, 41)
            .Select(i => (limit ?? top) * i / 40)
            .Select(a => (Angle: a, Limits: Limits(joint, plungeIn.Value, plungeOut.Value, a)))
            .TakeWhile(e => e.Limits.Low <= e.Limits.High)
            .ToList();
        var reach = Math.Max(
            Math.Max(plungeIn.Value, plungeOut.Value),
            path.Max(p => Math.Abs(p.Plunge!.Value))
        );
        var across = new Band(-reach * 1.1 - 1, reach * 1.1 + 1);

        var board = new Board(width);
        var unit = display == Display.Inch ? Distance.Inch : Distance.Mm;
        board.Words(Ink.Strong, Board.Edge, 20, "Inner joint: plunge and angle");
        var plot = new Plot(board, new(44, 34), new(width - 12, 284), across, new(0, top));
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

        foreach (var line in path.GroupBy(p => p.Steering))
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
        var worst = path.MinBy(p => Math.Min(p.LeftIn, p.LeftOut))!;
        var words = WorstWords(worst, display);
        board.Add(new Circle(Ink.Worst, plot.At(worst.Plunge!.Value, worst.InnerAngle!.Value), 7));
        var steepest = path.MaxBy(p => p.InnerAngle!.Value)!;
        var y = Name(board, plot, worst, words, plot.Top + 18);
        if (limit is { } l)
        {
            var angleWords =
                $"largest angle {Say.Angle(steepest.InnerAngle!.Value).In(display)} of {Say.Angle(l).In(display)}";
            if (steepest != worst)
                board.Add(
                    new Circle(
                        Ink.Worst,
                        plot.At(steepest.Plunge!.Value, steepest.InnerAngle.Value),
                        7
                    )
                );
            board.Words(
                Ink.Worst,
                (plot.Left + plot.Right) / 2,
                plot.Bottom - 10,
                angleWords,
                anchor: Anchor.Middle
            );
            words += " The " + angleWords + ".";
        }

        var legend = new Legend(board).Below(plot.Bottom + 66);
        legend.Face("the joint allows", Ink.Limit);
        legend.Line("droop to bump", Ink.Path);
        legend.Dot("reading", Ink.Reading);
        legend.Dot("worst", Ink.Worst);
        var note = joint switch
        {
            { PlungeTable.Count: > 0 } => "Limits as measured at angles.",
            { RollerRadius: not null, Kind: JointKind.PlungingTripod } =>
                "Tripod: each end loses roller radius × tan(angle).",
            _ => "Limits taken the same at every angle: not measured at angles.",
        };
        var bottom = board.Paragraph(Ink.Note, legend.Bottom + 14, note) - 8;
        return board.Done(
            "plunge-and-angle",
            "Plunge and angle of the inner joint over wheel travel",
            words,
            bottom,
            0,
            PlungeDrawing.TableOf(length, display)
        );
    }

    private static double Name(Board board, Plot plot, PositionLeft worst, string words, double y)
    {
        var lines = Board.Wrap(words, Board.Small, plot.Right - plot.Left - 20);
        var spot = plot.At(worst.Plunge!.Value, worst.InnerAngle!.Value);
        board.Add(
            new Line(
                Ink.Measure,
                new(spot.X, spot.Y - 8),
                new(spot.X, Math.Min(spot.Y - 8, y + 6 + (lines.Count - 1) * 18))
            )
        );
        foreach (var line in lines)
        {
            var half = Board.WidthOf(line, Board.Small) / 2;
            board.Words(
                Ink.Worst,
                Math.Clamp(
                    spot.X,
                    plot.Left + half + 4,
                    Math.Max(plot.Left + half + 4, plot.Right - half - 4)
                ),
                y,
                line,
                anchor: Anchor.Middle
            );
            y += 18;
        }
        return y;
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

    private static Band Limits(JointInput joint, double plungeIn, double plungeOut, double angle)
    {
        if (joint.PlungeTable.Count > 0)
        {
            var rows = joint
                .PlungeTable.Where(r => r is { Angle: not null, In: not null, Out: not null })
                .Select(r => (Angle: r.Angle!.Value, In: r.In!.Value, Out: r.Out!.Value))
                .Prepend((Angle: 0, In: plungeIn, Out: plungeOut))
                .OrderBy(r => r.Angle)
                .ToList();
            for (var i = 1; i < rows.Count; i++)
            {
                if (angle > rows[i].Angle || rows[i].Angle <= rows[i - 1].Angle)
                    continue;
                var f = (angle - rows[i - 1].Angle) / (rows[i].Angle - rows[i - 1].Angle);
                return new(
                    -(rows[i - 1].In + f * (rows[i].In - rows[i - 1].In)),
                    rows[i - 1].Out + f * (rows[i].Out - rows[i - 1].Out)
                );
            }
            return new(-rows[^1].In, rows[^1].Out);
        }
        var lost =
            joint.Kind == JointKind.PlungingTripod && joint.RollerRadius is { } r2
                ? r2.Value * Math.Tan(angle)
                : 0;
        return new(-(plungeIn - lost), plungeOut - lost);
    }
}
