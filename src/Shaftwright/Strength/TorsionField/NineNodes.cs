namespace Shaftwright.Strength.TorsionField;

/// <summary>The nine-node quadrilateral for ∇·(r³∇ψ) = 0.</summary>
/// <remarks>Node 3i + j stands at (ξ, η) = (i − 1, j − 1). Source: any finite-element text, quadratic Lagrange element.</remarks>
internal static class NineNodes
{
    private static readonly double[] s_slopes = Slopes();
    private static readonly double[] s_weights = Weights();
    private static readonly double[] s_values = Values();

    /// <summary>The element's matrix, ∫r³ ∇N·∇N dz dr.</summary>
    /// <param name="z">Places of all nodes along the axis.</param>
    /// <param name="r">Distances of all nodes from it.</param>
    /// <param name="node">The element's nine.</param>
    /// <param name="k">81 entries, filled.</param>
    /// <returns>False if the element is folded.</returns>
    public static bool Stiffness(
        ReadOnlySpan<double> z,
        ReadOnlySpan<double> r,
        ReadOnlySpan<int> node,
        Span<double> k
    )
    {
        k.Clear();
        Span<double> dz = stackalloc double[9];
        Span<double> dr = stackalloc double[9];
        for (var point = 0; point < 9; point++)
        {
            var slopes = s_slopes.AsSpan(18 * point, 18);
            var values = s_values.AsSpan(9 * point, 9);
            double zx = 0,
                ze = 0,
                rx = 0,
                re = 0,
                radius = 0;
            for (var i = 0; i < 9; i++)
            {
                var (zi, ri) = (z[node[i]], r[node[i]]);
                zx += slopes[2 * i] * zi;
                ze += slopes[2 * i + 1] * zi;
                rx += slopes[2 * i] * ri;
                re += slopes[2 * i + 1] * ri;
                radius += values[i] * ri;
            }
            var area = zx * re - ze * rx;
            if (!(area > 0))
                return false;
            var scale = s_weights[point] * radius * radius * radius / area;
            for (var i = 0; i < 9; i++)
            {
                dz[i] = slopes[2 * i] * re - slopes[2 * i + 1] * rx;
                dr[i] = slopes[2 * i + 1] * zx - slopes[2 * i] * ze;
            }
            for (var i = 0; i < 9; i++)
            {
                var (a, b) = (scale * dz[i], scale * dr[i]);
                for (var j = 0; j <= i; j++)
                    k[9 * i + j] += a * dz[j] + b * dr[j];
            }
        }
        for (var i = 0; i < 9; i++)
        {
            for (var j = 0; j < i; j++)
                k[9 * j + i] = k[9 * i + j];
        }
        return true;
    }

    private static ReadOnlySpan<double> Gauss => [-0.7745966692414834, 0, 0.7745966692414834];

    private static double Value(int i, double x) =>
        i switch
        {
            0 => x * (x - 1) / 2,
            1 => 1 - x * x,
            _ => x * (x + 1) / 2,
        };

    private static double Slope(int i, double x) =>
        i switch
        {
            0 => x - 0.5,
            1 => -2 * x,
            _ => x + 0.5,
        };

    private static double[] Slopes()
    {
        var slopes = new double[9 * 18];
        for (var point = 0; point < 9; point++)
        {
            var (x, e) = (Gauss[point / 3], Gauss[point % 3]);
            for (var i = 0; i < 9; i++)
            {
                slopes[18 * point + 2 * i] = Slope(i / 3, x) * Value(i % 3, e);
                slopes[18 * point + 2 * i + 1] = Value(i / 3, x) * Slope(i % 3, e);
            }
        }
        return slopes;
    }

    private static double[] Values()
    {
        var values = new double[81];
        for (var point = 0; point < 9; point++)
        {
            for (var i = 0; i < 9; i++)
                values[9 * point + i] =
                    Value(i / 3, Gauss[point / 3]) * Value(i % 3, Gauss[point % 3]);
        }
        return values;
    }

    private static double[] Weights()
    {
        ReadOnlySpan<double> one = [5.0 / 9, 8.0 / 9, 5.0 / 9];
        var weights = new double[9];
        for (var point = 0; point < 9; point++)
            weights[point] = one[point / 3] * one[point % 3];
        return weights;
    }
}
