namespace Shaftwright.Corner;

/// <summary>Least-squares polynomials in travel, degree 3 at most.</summary>
/// <remarks>Method: normal equations in travel scaled to −1…1, solved by Cholesky. With at most four unknowns on that interval
/// the condition number stays below about 1e3, so twelve digits survive; tests compare with a general least-squares library.</remarks>
internal static class CurveFit
{
    public const int MostCoefficients = 4;

    /// <summary>Fits <paramref name="y"/> over <paramref name="travel"/>.</summary>
    /// <param name="travel">mm; at least <paramref name="degree"/> + 1 distinct values.</param>
    /// <param name="y">One value a travel.</param>
    /// <param name="degree">0 to 3.</param>
    public static TravelCurve Fit(ReadOnlySpan<double> travel, ReadOnlySpan<double> y, int degree)
    {
        double low = double.PositiveInfinity,
            high = double.NegativeInfinity;
        foreach (var t in travel)
        {
            low = Math.Min(low, t);
            high = Math.Max(high, t);
        }
        var middle = (low + high) / 2;
        var half = high > low ? (high - low) / 2 : 1;

        var n = degree + 1;
        Span<double> a = stackalloc double[MostCoefficients * MostCoefficients];
        Span<double> b = stackalloc double[MostCoefficients];
        Span<double> power = stackalloc double[MostCoefficients];
        a.Clear();
        b.Clear();
        for (var k = 0; k < travel.Length; k++)
        {
            var x = (travel[k] - middle) / half;
            power[0] = 1;
            for (var i = 1; i < n; i++)
                power[i] = power[i - 1] * x;
            for (var i = 0; i < n; i++)
            {
                b[i] += power[i] * y[k];
                for (var j = 0; j <= i; j++)
                    a[i * n + j] += power[i] * power[j];
            }
        }
        Solve(a, b, n);
        return new TravelCurve(b[..n].ToArray(), middle, half);
    }

    private static void Solve(Span<double> a, Span<double> b, int n)
    {
        for (var j = 0; j < n; j++)
        {
            for (var i = j; i < n; i++)
            {
                var sum = a[i * n + j];
                for (var k = 0; k < j; k++)
                    sum -= a[i * n + k] * a[j * n + k];
                a[i * n + j] = i == j ? Math.Sqrt(sum) : sum / a[j * n + j];
            }
        }
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < i; k++)
                b[i] -= a[i * n + k] * b[k];
            b[i] /= a[i * n + i];
        }
        for (var i = n - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < n; k++)
                b[i] -= a[k * n + i] * b[k];
            b[i] /= a[i * n + i];
        }
    }
}
