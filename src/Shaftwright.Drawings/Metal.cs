using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Drawings;

/// <summary>Draws a round part lying along the paper: its stretches, what is hardened, what the heat changes.</summary>
/// <param name="board">The paper.</param>
/// <param name="at">Paper x of a place along the part, mm.</param>
/// <param name="middle">Paper y of its axis.</param>
/// <param name="across">Drawing units for one millimetre of radius.</param>
internal sealed class Metal(Board board, Func<double, double> at, double middle, double across)
{
    /// <summary>How much thicker than to scale a part is drawn, so that it is not a hair on a telephone: 1, 2 or 3 times.</summary>
    /// <param name="unitsPerMm">Scale along the part.</param>
    /// <param name="thickest">Its largest diameter, mm.</param>
    public static int Exaggeration(double unitsPerMm, double thickest) =>
        (unitsPerMm * thickest) switch
        {
            >= 26 => 1,
            >= 13 => 2,
            _ => 3,
        };

    /// <summary>The sentence that goes with an exaggeration.</summary>
    public static string ScaleWords(int exaggeration) =>
        exaggeration == 1
            ? "Drawn to scale."
            : $"Lengths to scale; thickness drawn ×{exaggeration}.";

    /// <summary>A stretch's name for a legend or a table.</summary>
    public static string NameOf(ZoneKind kind) =>
        kind switch
        {
            ZoneKind.Plain => "plain bar",
            ZoneKind.Taper => "taper",
            ZoneKind.Spline => "spline",
            ZoneKind.Groove => "groove",
            ZoneKind.BootSeat => "boot seat",
            _ => "step",
        };

    /// <summary>The diameters of a stretch in words.</summary>
    public static string DiameterOf(Stretch s, Display display)
    {
        var words = Say.Length(s.Diameter).In(display);
        if (Math.Abs(s.EndDiameter - s.Diameter) > 1e-9)
            words += " to " + Say.Length(s.EndDiameter).In(display);
        if (s.RootDiameter is { } root)
            words += ", root " + Say.Length(root).In(display);
        return words;
    }

    /// <summary>The stretches, from the back: body, then what is on it.</summary>
    public void Body(IReadOnlyList<Stretch> stretches, Ink ink = Ink.Bar)
    {
        foreach (var s in stretches)
            Body(s, ink);
    }

    /// <summary>The part of the stretches between two places, mm.</summary>
    public static IReadOnlyList<Stretch> Between(
        IReadOnlyList<Stretch> stretches,
        double from,
        double to
    ) =>
        [
            .. stretches
                .Where(s => s.To > from && s.From < to)
                .Select(s =>
                    s with
                    {
                        From = Math.Max(from, s.From),
                        To = Math.Min(to, s.To),
                        Diameter = s.At(Math.Max(from, s.From)),
                        EndDiameter = s.At(Math.Min(to, s.To)),
                    }
                ),
        ];

    private void Body(Stretch s, Ink ink)
    {
        var (x0, x1) = (at(s.From), at(s.To));
        var (r0, r1) = (s.Diameter / 2 * across, s.EndDiameter / 2 * across);
        var face = s.Kind == ZoneKind.BootSeat && ink == Ink.Bar ? Ink.Seat : ink;
        board.Add(
            new Polygon(
                face,
                [
                    new(x0, middle - r0),
                    new(x1, middle - r1),
                    new(x1, middle + r1),
                    new(x0, middle + r0),
                ]
            )
        );
        if (ink != Ink.Bar)
            return;
        switch (s.Kind)
        {
            case ZoneKind.Spline:
                // Teeth seen from the side crowd towards the edges, as equal steps of angle do.
                foreach (var degrees in new[] { -60, -36, -12, 12, 36, 60 })
                {
                    var y = middle + r0 * Math.Sin(degrees * Math.PI / 180);
                    board.Add(new Line(Ink.Detail, new(x0, y), new(x1, y)));
                }
                break;
            case ZoneKind.BootSeat:
                for (var i = 1; i <= 3; i++)
                {
                    var x = x0 + (x1 - x0) * i / 4;
                    board.Add(new Line(Ink.Detail, new(x, middle - r0), new(x, middle + r0)));
                }
                break;
            case ZoneKind.Taper:
                board.Add(new Line(Ink.Detail, new(x0, middle), new(x1, middle)));
                break;
        }
    }

    /// <summary>A dashed line beside the surface wherever it is hardened.</summary>
    public void Hard(IReadOnlyList<Stretch> stretches, IReadOnlyList<HardStretch> hardened)
    {
        foreach (var h in hardened)
        {
            foreach (var s in stretches)
            {
                var (from, to) = (Math.Max(h.From, s.From), Math.Min(h.To, s.To));
                if (to <= from)
                    continue;
                foreach (var side in new[] { -1, 1 })
                {
                    double Y(double x) => middle + side * (s.At(x) / 2 * across + 4);
                    board.Add(new Line(Ink.Hard, new(at(from), Y(from)), new(at(to), Y(to))));
                }
            }
        }
    }

    /// <summary>A tinted and hatched face wherever the heat of a weld changes the metal.</summary>
    public void Heat(IEnumerable<Band> bands, double radius)
    {
        var r = radius * across;
        foreach (var band in Merge(bands))
        {
            var (x0, x1) = (
                Math.Min(at(band.Low), at(band.High)),
                Math.Max(at(band.Low), at(band.High))
            );
            board.Box(Ink.Heat, x0, middle - r, x1, middle + r);
            for (var x = x0 - 2 * r + 6; x < x1; x += 9)
            {
                // A slanting line from the foot to the head of the face, cut off at its sides.
                var (a, b) = (Math.Max(x, x0), Math.Min(x + 2 * r, x1));
                if (b > a)
                    board.Add(
                        new Line(
                            Ink.Heat,
                            new(a, middle + r - (a - x)),
                            new(b, middle + r - (b - x))
                        )
                    );
            }
        }
    }

    /// <summary>Bands with those that touch made one, in order.</summary>
    public static IReadOnlyList<Band> Merge(IEnumerable<Band> bands)
    {
        var merged = new List<Band>();
        foreach (var band in bands.OrderBy(b => b.Low))
        {
            if (merged.Count > 0 && band.Low <= merged[^1].High)
                merged[^1] = merged[^1] with { High = Math.Max(merged[^1].High, band.High) };
            else
                merged.Add(band);
        }
        return merged;
    }

    /// <summary>Diameters written on the stretches that have room for them.</summary>
    /// <param name="stretches">The stretches.</param>
    /// <param name="display">Units of the words.</param>
    /// <param name="covered">Where something else is drawn over the metal.</param>
    public void Diameters(
        IReadOnlyList<Stretch> stretches,
        Display display,
        IReadOnlyList<Band> covered
    )
    {
        foreach (var s in stretches)
        {
            if (s.Kind is not (ZoneKind.Plain or ZoneKind.Step) || s.Diameter * across < 18)
                continue;
            var words = "ø\u00a0" + Say.Length(s.Diameter).In(display);
            var free = Widest(new(s.From, s.To), covered);
            var room = Math.Abs(at(free.High) - at(free.Low));
            if (Board.WidthOf(words, Board.Small) + 6 > room)
                continue;
            board.Add(
                new Text(
                    Ink.Note,
                    new((at(free.Low) + at(free.High)) / 2, middle + 5),
                    words,
                    Board.Small,
                    Anchor.Middle
                )
            );
        }
    }

    private static Band Widest(Band whole, IReadOnlyList<Band> covered)
    {
        var best = new Band(whole.Low, whole.Low);
        var from = whole.Low;
        foreach (var c in Merge(covered).Append(new Band(whole.High, whole.High)))
        {
            var to = Math.Min(c.Low, whole.High);
            if (to - from > best.High - best.Low)
                best = new(from, to);
            from = Math.Max(from, c.High);
        }
        return best;
    }
}
