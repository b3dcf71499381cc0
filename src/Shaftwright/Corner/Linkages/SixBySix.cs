using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>Six linear equations, solved by LU with row pivots in place. Source: Golub and Van Loan, Matrix Computations, 3.4
/// (from memory).</summary>
internal sealed class SixBySix
{
    private const int N = 6;
    private readonly double[] _a = new double[N * N];
    private readonly double[] _pivot = new double[N];
    private readonly int[] _order = new int[N];

    /// <summary>Determinant of the matrix last factored.</summary>
    public double Determinant { get; private set; }

    /// <summary>Takes over another's factors.</summary>
    public void CopyFrom(SixBySix from)
    {
        from._a.CopyTo(_a, 0);
        from._pivot.CopyTo(_pivot, 0);
        from._order.CopyTo(_order, 0);
        Determinant = from.Determinant;
    }

    /// <summary>Fills a row.</summary>
    public void Row(int i, Vec3 left, Vec3 right)
    {
        var a = _a.AsSpan(i * N, N);
        (a[0], a[1], a[2]) = (left.X, left.Y, left.Z);
        (a[3], a[4], a[5]) = (right.X, right.Y, right.Z);
    }

    /// <summary>Product of the rows' lengths, before factoring: what the determinant could be at most.</summary>
    public double RowProduct()
    {
        var product = 1.0;
        for (var i = 0; i < N; i++)
        {
            var square = 0.0;
            for (var j = 0; j < N; j++)
                square += _a[i * N + j] * _a[i * N + j];
            product *= square;
        }
        return Math.Sqrt(product);
    }

    /// <summary>Factors the matrix; false when it is singular.</summary>
    /// <remarks>The indexes are right by construction, so the array's own checks of them are gone round: they are half the time.</remarks>
    public bool Factor()
    {
        ref var a = ref MemoryMarshal.GetArrayDataReference(_a);
        var determinant = 1.0;
        for (var i = 0; i < N; i++)
            _order[i] = i;
        for (var k = 0; k < N; k++)
        {
            var p = k;
            ref var kk = ref Unsafe.Add(ref a, k * N);
            var largest = Math.Abs(Unsafe.Add(ref kk, k));
            for (var i = k + 1; i < N; i++)
            {
                var size = Math.Abs(Unsafe.Add(ref a, i * N + k));
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
                ref var pk = ref Unsafe.Add(ref a, p * N);
                for (var j = 0; j < N; j++)
                    (Unsafe.Add(ref kk, j), Unsafe.Add(ref pk, j)) = (
                        Unsafe.Add(ref pk, j),
                        Unsafe.Add(ref kk, j)
                    );
                (_order[k], _order[p]) = (_order[p], _order[k]);
                determinant = -determinant;
            }
            determinant *= Unsafe.Add(ref kk, k);
            var pivot = 1 / Unsafe.Add(ref kk, k);
            _pivot[k] = pivot;
            for (var i = k + 1; i < N; i++)
            {
                ref var row = ref Unsafe.Add(ref a, i * N);
                var factor = Unsafe.Add(ref row, k);
                if (factor == 0)
                    continue;
                factor *= pivot;
                Unsafe.Add(ref row, k) = factor;
                for (var j = k + 1; j < N; j++)
                    Unsafe.Add(ref row, j) -= factor * Unsafe.Add(ref kk, j);
            }
        }
        Determinant = determinant;
        return true;
    }

    /// <summary>Solves for one right side with the last factors.</summary>
    /// <param name="right">Right side; read only.</param>
    /// <param name="x">Answer; another array.</param>
    public void Solve(double[] right, double[] x)
    {
        // Written out, the twelve lines overlap in the processor; a loop makes each wait for the one before.
        ReadOnlySpan<double> a = _a.AsSpan(0, N * N);
        ReadOnlySpan<double> q = _pivot.AsSpan(0, N);
        var o = _order.AsSpan(0, N);
        var y0 = right[o[0]];
        var y1 = right[o[1]] - a[6] * y0;
        var y2 = right[o[2]] - a[12] * y0 - a[13] * y1;
        var y3 = right[o[3]] - a[18] * y0 - a[19] * y1 - a[20] * y2;
        var y4 = right[o[4]] - a[24] * y0 - a[25] * y1 - a[26] * y2 - a[27] * y3;
        var y5 = right[o[5]] - a[30] * y0 - a[31] * y1 - a[32] * y2 - a[33] * y3 - a[34] * y4;
        var x5 = y5 * q[5];
        var x4 = (y4 - a[29] * x5) * q[4];
        var x3 = (y3 - a[23] * x5 - a[22] * x4) * q[3];
        var x2 = (y2 - a[17] * x5 - a[16] * x4 - a[15] * x3) * q[2];
        var x1 = (y1 - a[11] * x5 - a[10] * x4 - a[9] * x3 - a[8] * x2) * q[1];
        var x0 = (y0 - a[5] * x5 - a[4] * x4 - a[3] * x3 - a[2] * x2 - a[1] * x1) * q[0];
        (x[0], x[1], x[2], x[3], x[4], x[5]) = (x0, x1, x2, x3, x4, x5);
    }
}
