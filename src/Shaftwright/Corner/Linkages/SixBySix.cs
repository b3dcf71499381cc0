using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>Six linear equations, solved by LU with row pivots in place. Source: Golub and Van Loan, Matrix Computations, 3.4
/// (from memory).</summary>
internal sealed class SixBySix
{
    private const int N = 6;
    private readonly double[] _a = new double[N * N];
    private readonly int[] _order = new int[N];

    /// <summary>Determinant of the matrix last factored.</summary>
    public double Determinant { get; private set; }

    /// <summary>Product of the rows' lengths: what the determinant could be at most.</summary>
    public double RowProduct { get; private set; }

    /// <summary>Fills a row.</summary>
    public void Row(int i, Vec3 left, Vec3 right)
    {
        var a = _a.AsSpan(i * N, N);
        (a[0], a[1], a[2]) = (left.X, left.Y, left.Z);
        (a[3], a[4], a[5]) = (right.X, right.Y, right.Z);
    }

    /// <summary>Factors the matrix; false when it is singular.</summary>
    public bool Factor()
    {
        var a = _a.AsSpan();
        var determinant = 1.0;
        var product = 1.0;
        for (var i = 0; i < N; i++)
        {
            _order[i] = i;
            var square = 0.0;
            for (var j = 0; j < N; j++)
                square += a[i * N + j] * a[i * N + j];
            product *= square;
        }
        RowProduct = Math.Sqrt(product);
        for (var k = 0; k < N; k++)
        {
            var p = k;
            var largest = Math.Abs(a[k * N + k]);
            for (var i = k + 1; i < N; i++)
            {
                var size = Math.Abs(a[i * N + k]);
                if (size > largest)
                    (largest, p) = (size, i);
            }
            if (!(largest > 0))
            {
                Determinant = 0;
                return false;
            }
            if (p != k)
            {
                for (var j = 0; j < N; j++)
                    (a[k * N + j], a[p * N + j]) = (a[p * N + j], a[k * N + j]);
                (_order[k], _order[p]) = (_order[p], _order[k]);
                determinant = -determinant;
            }
            determinant *= a[k * N + k];
            var pivot = 1 / a[k * N + k];
            for (var i = k + 1; i < N; i++)
            {
                var factor = a[i * N + k] * pivot;
                a[i * N + k] = factor;
                for (var j = k + 1; j < N; j++)
                    a[i * N + j] -= factor * a[k * N + j];
            }
        }
        Determinant = determinant;
        return true;
    }

    /// <summary>Solves for one right side with the last factors.</summary>
    public void Solve(double[] right, double[] x)
    {
        var a = _a.AsSpan();
        for (var i = 0; i < N; i++)
        {
            var sum = right[_order[i]];
            for (var j = 0; j < i; j++)
                sum -= a[i * N + j] * x[j];
            x[i] = sum;
        }
        for (var i = N - 1; i >= 0; i--)
        {
            var sum = x[i];
            for (var j = i + 1; j < N; j++)
                sum -= a[i * N + j] * x[j];
            x[i] = sum / a[i * N + i];
        }
    }
}
