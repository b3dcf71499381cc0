using System.Globalization;
using Shaftwright.Measures;

namespace Shaftwright.Drawings;

/// <summary>A frame with two axes on a board. Values are internal units; ticks stand at round numbers of the reader's units.</summary>
internal sealed class Plot(Board board, Spot topLeft, Spot bottomRight, Band across, Band up)
{
    private static readonly double[] Steps = [1, 2, 5, 10];

    public double X(double value) =>
        topLeft.X + (value - across.Low) / (across.High - across.Low) * (bottomRight.X - topLeft.X);

    public double Y(double value) =>
        bottomRight.Y - (value - up.Low) / (up.High - up.Low) * (bottomRight.Y - topLeft.Y);

    public Spot At(double x, double y) => new(X(x), Y(y));

    /// <summary>How many steps an upward axis of this height is divided into; who leaves room for its words asks the same.</summary>
    public static double UpwardTicks(double height) => height / 34;

    public double Top => topLeft.Y;

    public double Bottom => bottomRight.Y;

    public double Left => topLeft.X;

    public double Right => bottomRight.X;

    /// <summary>Frame, ticks and their numbers.</summary>
    public void Axes(Unit acrossUnit, Unit upUnit)
    {
        board.Add(
            new Polygon(
                Ink.Axis,
                [topLeft, new(bottomRight.X, topLeft.Y), bottomRight, new(topLeft.X, bottomRight.Y)]
            )
        );
        foreach (var (value, words) in Ticks(across, acrossUnit, (Right - Left) / 56))
        {
            var x = X(value);
            board.Add(new Line(Ink.Measure, new(x, Bottom), new(x, Bottom + 5)));
            board.Words(Ink.Axis, x, Bottom + 20, words, anchor: Anchor.Middle);
        }
        foreach (var (value, words) in Ticks(up, upUnit, UpwardTicks(Bottom - Top)))
        {
            var y = Y(value);
            board.Add(new Line(Ink.Measure, new(Left - 5, y), new(Left, y)));
            board.Add(new Text(Ink.Axis, new(Left - 8, y + 5), words, Board.Small, Anchor.End));
        }
    }

    /// <summary>Round values inside a range, at most about so many, with their numbers.</summary>
    public static IReadOnlyList<(double Value, string Words)> Ticks(
        Band range,
        Unit unit,
        double most
    )
    {
        var (low, high) = (unit.FromInternal(range.Low), unit.FromInternal(range.High));
        var rough = Math.Max((high - low) / Math.Max(most, 1), 1e-9);
        var decade = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var step = Steps.First(s => s * decade >= rough * 0.999) * decade;
        var decimals = (int)Math.Max(0, -Math.Floor(Math.Log10(step) + 1e-9));
        var ticks = new List<(double, string)>();
        for (var i = Math.Ceiling(low / step - 1e-9); i * step <= high + step * 1e-9; i++)
        {
            var words = (i * step)
                .ToString(
                    "F" + decimals.ToString(CultureInfo.InvariantCulture),
                    CultureInfo.InvariantCulture
                )
                .Replace('-', '−');
            ticks.Add((unit.ToInternal(i * step), i == 0 ? "0" : words));
        }
        return ticks;
    }
}
