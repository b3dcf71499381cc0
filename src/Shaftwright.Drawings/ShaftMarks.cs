using System.Globalization;
using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.Measures;

namespace Shaftwright.Drawings;

/// <summary>Marks of crack tests on the shaft: where they are, as long as they are, each with a number and its words.</summary>
/// <remarks>The painted line faces the reader; larger angles turn downwards, so that 90° is the lower edge. What lies on the far
/// side is drawn through. A mark without a position stands at the middle of its place. A cross stops the job, a ring does not.</remarks>
internal sealed class ShaftMarks(MadeShaft made, IReadOnlyList<MarkResult> marks)
{
    private const double Tag = 18;

    /// <summary>Height that the row of numbers needs under the shaft, drawing units.</summary>
    public double Below => marks.Count == 0 ? 0 : 30;

    /// <summary>The marks and their numbers.</summary>
    /// <param name="board">The drawing.</param>
    /// <param name="at">From mm along the shaft to drawing units.</param>
    /// <param name="middle">Height of the axis.</param>
    /// <param name="half">Half the thickest diameter, drawing units.</param>
    /// <param name="across">Drawing units a mm across the shaft.</param>
    public void Draw(
        Board board,
        Func<double, double> at,
        double middle,
        double half,
        double across
    )
    {
        List<(int Number, MarkResult Mark, double X)> placed =
        [
            .. marks
                .Select((m, i) => (Number: i + 1, Mark: m, X: PlaceOf(m)))
                .Where(m => m.X is not null)
                .Select(m => (m.Number, m.Mark, at(m.X!.Value)))
                .OrderBy(m => m.Item3),
        ];
        var row = middle + half + 22;
        var tags = Apart([.. placed.Select(p => p.X)], board.Width);
        for (var i = 0; i < placed.Count; i++)
        {
            var (number, mark, x) = placed[i];
            var y = middle + RadiusAt(PlaceOf(mark)!.Value) * across * Math.Sin(mark.Angle ?? 0);
            var ink = mark.Stops ? Ink.Worst : Ink.Reading;
            board.Add(new Line(Ink.Measure, new(x, y + 5), new(tags[i], row - 13)));
            if (mark.Length is { } length)
            {
                var reach = at(length) - at(0);
                board.Add(new Line(ink, new(x - reach / 2, y), new(x + reach / 2, y)));
            }
            Sign(board, mark.Stops, x, y);
            board.Words(Ink.Strong, tags[i], row, Name(number), anchor: Anchor.Middle);
        }
    }

    /// <summary>What the two signs mean.</summary>
    public void Explain(Board board, Legend legend)
    {
        if (marks.Any(m => m.Stops))
            legend.Item("mark that stops the job", (x, y) => Sign(board, true, x + 13, y));
        if (marks.Any(m => !m.Stops))
            legend.Item("mark", (x, y) => Sign(board, false, x + 13, y));
    }

    private static void Sign(Board board, bool stops, double x, double y)
    {
        if (stops)
        {
            board.Add(new Line(Ink.Worst, new(x - 5, y - 5), new(x + 5, y + 5)));
            board.Add(new Line(Ink.Worst, new(x - 5, y + 5), new(x + 5, y - 5)));
        }
        else
            board.Add(new Circle(Ink.Reading, new(x, y), 5));
    }

    /// <summary>The words of every mark under the drawing. Returns the base line of the next line.</summary>
    public double Words(Board board, double y, Display display)
    {
        for (var i = 0; i < marks.Count; i++)
            y = board.Paragraph(
                marks[i].Stops ? Ink.Strong : Ink.Note,
                y,
                $"{Name(i + 1)}: {marks[i].Words.In(display)} {Where(marks[i], display)}"
            );
        return y;
    }

    /// <summary>A row of the table for every mark.</summary>
    public IEnumerable<IReadOnlyList<string>> Rows(Display display) =>
        marks.Select(
            (m, i) =>
                (IReadOnlyList<string>)
                    [
                        "mark " + Name(i + 1),
                        PlaceOf(m) is { } x ? Say.Length(x).In(display) : "not noted",
                        "",
                        m.Words.In(display),
                    ]
        );

    private static string Name(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Where(MarkResult mark, Display display)
    {
        var along = mark.Position is { } x
            ? $"{Say.Length(x).In(display)} from the inner end"
            : "its position is not noted";
        var round = mark.Angle is { } a
            ? $"{Say.Angle(a).In(display)} from the painted line"
                + (Math.Cos(a) < -1e-9 ? ", on the far side" : "")
            : "its angle is not noted";
        return char.ToUpperInvariant(along[0]) + along[1..] + ", " + round + ".";
    }

    private double? PlaceOf(MarkResult mark) =>
        mark.Position is { } noted
            ? Math.Clamp(noted, 0, made.Overall)
            : mark.Place switch
            {
                Place.ButtWeld => made.WeldAt,
                Place.SleeveInnerEnd => made.SleeveFrom,
                Place.SleeveOuterEnd => made.SleeveTo,
                Place.InnerSpline => made.Stretches.Where(IsSpline).Select(Middle).FirstOrDefault(),
                Place.OuterSpline => made.Stretches.Where(IsSpline).Select(Middle).LastOrDefault(),
                _ => null,
            };

    private static bool IsSpline(Stretch s) => s.Kind == ZoneKind.Spline;

    private static double? Middle(Stretch s) => (s.From + s.To) / 2;

    private double RadiusAt(double x)
    {
        if (
            made is { SleeveFrom: { } from, SleeveTo: { } to, SleeveOutside: { } outside }
            && x >= from
            && x <= to
        )
            return outside / 2;
        return made.Stretches.Where(s => x >= s.From && x <= s.To)
                .Select(s => s.At(x))
                .FirstOrDefault() / 2;
    }

    /// <summary>Places for the numbers, in order, far enough apart to be read and on the paper.</summary>
    private static double[] Apart(double[] wanted, double width)
    {
        var tags = (double[])wanted.Clone();
        var step = Math.Min(Tag, (width - 2 * Tag) / Math.Max(1, tags.Length - 1));
        for (var i = 0; i < tags.Length; i++)
            tags[i] = Math.Max(tags[i], i == 0 ? Tag : tags[i - 1] + step);
        for (var i = tags.Length - 1; i >= 0; i--)
            tags[i] = Math.Min(tags[i], i == tags.Length - 1 ? width - Tag : tags[i + 1] - step);
        return tags;
    }
}
