namespace Shaftwright.CrackTest;

/// <summary>A window of a photo, pixels, ends included.</summary>
internal readonly record struct Window(int Left, int Top, int Right, int Bottom)
{
    public long Size => (long)(Right - Left + 1) * (Bottom - Top + 1);

    public static Window Round(Photo photo, int x, int y, int half) =>
        new(
            Math.Max(0, x - half),
            Math.Max(0, y - half),
            Math.Min(photo.Width - 1, x + half),
            Math.Min(photo.Height - 1, y + half)
        );

    public bool IsWhole(Photo photo) =>
        Left == 0 && Top == 0 && Right == photo.Width - 1 && Bottom == photo.Height - 1;
}

/// <summary>The pixels of one mark.</summary>
internal sealed class MarkShape
{
    private readonly List<(int X, int Y)> _pixels;
    private readonly Window _box;

    private MarkShape(List<(int X, int Y)> pixels, int step, double contrast)
    {
        (_pixels, Step, Contrast) = (pixels, step, contrast);
        _box = new(
            pixels.Min(p => p.X),
            pixels.Min(p => p.Y),
            pixels.Max(p => p.X),
            pixels.Max(p => p.Y)
        );
    }

    public double Contrast { get; }

    /// <summary>Every how many pixels one was read.</summary>
    public int Step { get; }

    public int Pixels => _pixels.Count;

    public long Boxed => _box.Size;

    public bool Touches(Window window) =>
        _box.Left <= window.Left
        || _box.Top <= window.Top
        || _box.Right > window.Right - Step
        || _box.Bottom > window.Bottom - Step;

    /// <summary>Corners of the convex outline through the middles of the pixels (A. M. Andrew's monotone chain, 1979).</summary>
    public IReadOnlyList<PhotoPoint> Outline()
    {
        // Only the ends of each row can be corners.
        var ends = _pixels
            .GroupBy(p => p.Y)
            .SelectMany(row =>
                new[] { (X: row.Min(p => p.X), Y: row.Key), (X: row.Max(p => p.X), Y: row.Key) }
            )
            .Distinct()
            .Order()
            .ToList();
        if (ends.Count < 3)
            return [.. ends.Select(p => new PhotoPoint(p.X, p.Y))];
        var hull = new List<(int X, int Y)>();
        foreach (var half in new[] { ends, Enumerable.Reverse(ends).ToList() })
        {
            var begin = hull.Count;
            foreach (var p in half)
            {
                while (hull.Count >= begin + 2 && Turn(hull[^2], hull[^1], p) <= 0)
                    hull.RemoveAt(hull.Count - 1);
                hull.Add(p);
            }
            hull.RemoveAt(hull.Count - 1);
        }
        return [.. hull.Select(p => new PhotoPoint(p.X, p.Y))];
    }

    private static long Turn((int X, int Y) a, (int X, int Y) b, (int X, int Y) c) =>
        (long)(b.X - a.X) * (c.Y - a.Y) - (long)(b.Y - a.Y) * (c.X - a.X);

    /// <summary>The mark at a place, or null when nothing there stands out. Only every <paramref name="step"/>th pixel is read.</summary>
    public static MarkShape? Find(
        MarkSignal signal,
        Window window,
        int step,
        (int X, int Y) seed,
        int reach,
        double leastContrast,
        double leastStep
    )
    {
        var (wide, high) = (
            (window.Right - window.Left) / step + 1,
            (window.Bottom - window.Top) / step + 1
        );
        var value = new float[wide * high];
        for (var y = 0; y < high; y++)
        {
            for (var x = 0; x < wide; x++)
                value[y * wide + x] = (float)
                    signal.At(window.Left + x * step, window.Top + y * step);
        }
        var threshold = Otsu(value);
        var (inside, outside, scatter) = Sides(value, threshold);
        var contrast = (inside - outside) / Math.Max(scatter, 1.0 / 255);
        if (inside - outside < leastStep || contrast < leastContrast)
            return null;

        if (Nearest() is not { } start)
            return null;
        var seen = new bool[value.Length];
        var stack = new Stack<int>();
        var pixels = new List<(int, int)>();
        Push(start);
        while (stack.TryPop(out var at))
        {
            var (x, y) = (at % wide, at / wide);
            pixels.Add((window.Left + x * step, window.Top + y * step));
            for (var dy = -1; dy <= 1; dy++)
            {
                for (var dx = -1; dx <= 1; dx++)
                {
                    var (nx, ny) = (x + dx, y + dy);
                    if (nx >= 0 && ny >= 0 && nx < wide && ny < high)
                        Push(ny * wide + nx);
                }
            }
        }
        return new(pixels, step, contrast);

        void Push(int at)
        {
            if (seen[at] || value[at] <= threshold)
                return;
            seen[at] = true;
            stack.Push(at);
        }

        int? Nearest()
        {
            int? best = null;
            var far = double.PositiveInfinity;
            for (var dy = -reach; dy <= reach; dy++)
            {
                for (var dx = -reach; dx <= reach; dx++)
                {
                    var (x, y) = (
                        (seed.X - window.Left) / step + dx,
                        (seed.Y - window.Top) / step + dy
                    );
                    var d = Math.Sqrt(dx * dx + dy * dy);
                    if (
                        d <= reach
                        && d < far
                        && x >= 0
                        && y >= 0
                        && x < wide
                        && y < high
                        && value[y * wide + x] > threshold
                    )
                        (best, far) = (y * wide + x, d);
                }
            }
            return best;
        }
    }

    /// <summary>The threshold that parts values best: largest variance between the two sides.</summary>
    private static double Otsu(float[] value)
    {
        const int bins = 256;
        var count = new int[bins];
        foreach (var v in value)
            count[Math.Clamp((int)(v * bins), 0, bins - 1)]++;
        double all = 0;
        for (var i = 0; i < bins; i++)
            all += (double)i * count[i];
        double below = 0,
            best = -1;
        long n = 0;
        var (first, last) = (0, 0);
        for (var i = 0; i < bins - 1; i++)
        {
            n += count[i];
            below += (double)i * count[i];
            if (n == 0 || n == value.Length)
                continue;
            var apart = below / n - (all - below) / (value.Length - n);
            var between = (double)n * (value.Length - n) * apart * apart;
            if (between > best * (1 + 1e-12))
                (best, first, last) = (between, i, i);
            else if (between >= best * (1 - 1e-12))
                last = i;
        }
        // Where an empty stretch parts the two, its middle: the edge of the mark is then where it is half mark.
        return ((first + last) / 2.0 + 1) / bins;
    }

    private static (double Inside, double Outside, double Scatter) Sides(
        float[] value,
        double threshold
    )
    {
        double inside = 0,
            outside = 0,
            square = 0;
        var n = 0;
        foreach (var v in value)
        {
            if (v > threshold)
                (inside, n) = (inside + v, n + 1);
            else
                (outside, square) = (outside + v, square + (double)v * v);
        }
        if (n == 0 || n == value.Length)
            return (0, 0, 0);
        var rest = value.Length - n;
        outside /= rest;
        return (inside / n, outside, Math.Sqrt(Math.Max(0, square / rest - outside * outside)));
    }
}

/// <summary>Distances across a convex outline.</summary>
internal static class Feret
{
    /// <summary>Largest distance between two corners, and its direction.</summary>
    public static (double Distance, double Direction) Largest(IReadOnlyList<PhotoPoint> hull)
    {
        var (best, direction) = (0.0, 0.0);
        for (var i = 0; i < hull.Count; i++)
        {
            for (var j = i + 1; j < hull.Count; j++)
            {
                var d = Far(hull[i], hull[j]);
                if (d > best)
                    (best, direction) = (d, Slope(hull[i], hull[j]));
            }
        }
        return (best, direction);
    }

    /// <summary>Smallest distance between two parallels that hold it; one of them lies along an edge.</summary>
    public static double Smallest(IReadOnlyList<PhotoPoint> hull)
    {
        if (hull.Count < 3)
            return 0;
        var best = double.PositiveInfinity;
        for (var i = 0; i < hull.Count; i++)
        {
            var (a, b) = (hull[i], hull[(i + 1) % hull.Count]);
            var edge = Far(a, b);
            var far = hull.Max(p =>
                Math.Abs((b.X - a.X) * (p.Y - a.Y) - (b.Y - a.Y) * (p.X - a.X)) / edge
            );
            best = Math.Min(best, far);
        }
        return best;
    }

    /// <summary>Length of the outline.</summary>
    public static double Around(IReadOnlyList<PhotoPoint> hull)
    {
        var sum = 0.0;
        for (var i = 0; i < hull.Count; i++)
            sum += Far(hull[i], hull[(i + 1) % hull.Count]);
        return sum;
    }

    private static double Slope(PhotoPoint a, PhotoPoint b)
    {
        var angle = Math.Atan2(b.Y - a.Y, b.X - a.X);
        return angle > Math.PI / 2 ? angle - Math.PI
            : angle <= -Math.PI / 2 ? angle + Math.PI
            : angle;
    }

    private static double Far(PhotoPoint a, PhotoPoint b) =>
        Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));
}
