namespace Shaftwright.CrackTest;

/// <summary>How much each pixel is mark, 0 to about 1, whatever the light.</summary>
internal sealed class MarkSignal
{
    private const int Samples = 4000;
    private readonly Photo _photo;
    private readonly MarkLook _look;

    // Background: a + bx + cy + dx² + exy + fy², x and y from −1 to 1.
    private readonly double[] _back = [0, 0, 0, 0, 0, 0];

    public MarkSignal(Photo photo, MarkLook look)
    {
        (_photo, _look) = (photo, look);
        if (look != MarkLook.RedOnWhite)
            FitBackground();
    }

    public double At(int x, int y)
    {
        if (_look == MarkLook.RedOnWhite)
        {
            var at = y * _photo.Stride + x * _photo.BytesPerPixel;
            var b = _photo.Bytes.Span;
            double r = b[at],
                g = b[at + 1],
                blue = b[at + 2];
            // Below this a pixel is too dark to have a colour.
            var most = Math.Max(16, Math.Max(r, Math.Max(g, blue)));
            return Math.Clamp((r - (g + blue) / 2) / most, 0, 1);
        }
        var (u, v) = Flat(x, y);
        var back = Background(u, v);
        return _look == MarkLook.DarkOnLight
            ? Math.Clamp(1 - Light(x, y) / Math.Max(16, back), 0, 1)
            : Math.Clamp((Light(x, y) - back) / 255, 0, 1);
    }

    private double Light(int x, int y)
    {
        var at = y * _photo.Stride + x * _photo.BytesPerPixel;
        var b = _photo.Bytes.Span;
        return _photo.BytesPerPixel == 1
            ? b[at]
            // Rec. ITU-R BT.601 luma.
            : 0.299 * b[at] + 0.587 * b[at + 1] + 0.114 * b[at + 2];
    }

    private (double U, double V) Flat(int x, int y) =>
        (
            _photo.Width > 1 ? 2.0 * x / (_photo.Width - 1) - 1 : 0,
            _photo.Height > 1 ? 2.0 * y / (_photo.Height - 1) - 1 : 0
        );

    private double Background(double u, double v) =>
        _back[0]
        + _back[1] * u
        + _back[2] * v
        + _back[3] * u * u
        + _back[4] * u * v
        + _back[5] * v * v;

    /// <summary>Least squares over a coarse grid, four times, each time without what stands out from the last.</summary>
    private void FitBackground()
    {
        var step = Math.Max(1, (int)Math.Sqrt((double)_photo.Width * _photo.Height / Samples));
        var points = new List<(double U, double V, double Light)>();
        for (var y = step / 2; y < _photo.Height; y += step)
        {
            for (var x = step / 2; x < _photo.Width; x += step)
            {
                var (u, v) = Flat(x, y);
                points.Add((u, v, Light(x, y)));
            }
        }
        var within = double.PositiveInfinity;
        for (var pass = 0; pass < 4; pass++)
        {
            var kept = points
                .Where(p => Math.Abs(p.Light - Background(p.U, p.V)) <= within)
                .ToList();
            if (kept.Count < 12)
                return;
            if (Solve(kept) is not { } fitted)
            {
                // Too narrow to bend: its middle light does.
                Array.Clear(_back);
                _back[0] = kept.Select(p => p.Light).Order().ElementAt(kept.Count / 2);
                return;
            }
            fitted.CopyTo(_back, 0);
            var off = points
                .Select(p => Math.Abs(p.Light - Background(p.U, p.V)))
                .Order()
                .ElementAt(points.Count / 2);
            // Two and a half standard deviations, by the median; never tighter than the steps of a byte.
            within = Math.Max(3, 2.5 * 1.4826 * off);
        }
    }

    private static double[]? Solve(List<(double U, double V, double Light)> points)
    {
        const int n = 6;
        var m = new double[n, n + 1];
        foreach (var (u, v, light) in points)
        {
            double[] row = [1, u, v, u * u, u * v, v * v];
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < n; j++)
                    m[i, j] += row[i] * row[j];
                m[i, n] += row[i] * light;
            }
        }
        for (var i = 0; i < n; i++)
        {
            var pivot = i;
            for (var k = i + 1; k < n; k++)
            {
                if (Math.Abs(m[k, i]) > Math.Abs(m[pivot, i]))
                    pivot = k;
            }
            if (Math.Abs(m[pivot, i]) < 1e-9 * points.Count)
                return null;
            for (var j = 0; j <= n; j++)
                (m[i, j], m[pivot, j]) = (m[pivot, j], m[i, j]);
            for (var k = 0; k < n; k++)
            {
                if (k == i)
                    continue;
                var f = m[k, i] / m[i, i];
                for (var j = i; j <= n; j++)
                    m[k, j] -= f * m[i, j];
            }
        }
        return [.. Enumerable.Range(0, n).Select(i => m[i, n] / m[i, i])];
    }
}
