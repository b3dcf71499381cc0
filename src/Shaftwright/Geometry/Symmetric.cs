namespace Shaftwright.Geometry;

/// <summary>Symmetric positive definite matrices of modest size: factor, solve, invert.</summary>
/// <remarks>Source: Cholesky's method, Golub and Van Loan, Matrix Computations, 4.2 (from memory).</remarks>
internal static class Symmetric
{
    /// <summary>Lower L with L·Lᵀ = A; null when A is not positive definite.</summary>
    public static double[,]? Factor(double[,] a)
    {
        var n = a.GetLength(0);
        var l = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            var d = a[j, j];
            for (var k = 0; k < j; k++)
                d -= l[j, k] * l[j, k];
            if (!(d > 0))
                return null;
            l[j, j] = Math.Sqrt(d);
            for (var i = j + 1; i < n; i++)
            {
                var s = a[i, j];
                for (var k = 0; k < j; k++)
                    s -= l[i, k] * l[j, k];
                l[i, j] = s / l[j, j];
            }
        }
        return l;
    }

    /// <summary>Solves L·Lᵀ·x = b.</summary>
    public static double[] Solve(double[,] l, double[] b)
    {
        var n = b.Length;
        var x = (double[])b.Clone();
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < i; k++)
                x[i] -= l[i, k] * x[k];
            x[i] /= l[i, i];
        }
        for (var i = n - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < n; k++)
                x[i] -= l[k, i] * x[k];
            x[i] /= l[i, i];
        }
        return x;
    }

    /// <summary>Inverse of L·Lᵀ.</summary>
    public static double[,] Inverse(double[,] l)
    {
        var n = l.GetLength(0);
        var inverse = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            var e = new double[n];
            e[j] = 1;
            var x = Solve(l, e);
            for (var i = 0; i < n; i++)
                inverse[i, j] = x[i];
        }
        return inverse;
    }
}
