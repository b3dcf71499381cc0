using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Shaftwright.Strength.TorsionField;

/// <summary>A symmetric positive definite matrix whose entries lie near its diagonal, factored in place as L·Lᵀ and solved.</summary>
/// <remarks>Each row is kept from its first entry to the diagonal, and nothing outside that fills. Rows stand in blocks of four with a
/// common first column, so that a tile of four rows by four is one run of sixteen dot products over contiguous memory: that is
/// where all the work is, half of w² multiplications for a row of w entries. The usual LDLᵀ with the root of D taken into L, which is
/// allowed here because D is positive. Source: Golub and Van Loan, Matrix Computations, 4th ed., 4.3 (band and profile
/// methods), from memory.</remarks>
public sealed class BandMatrix
{
    private const int Tile = 4;
    private readonly int _width;
    private readonly int _stride;
    private readonly double[] _entries;
    private readonly int[] _first;

    /// <summary>A matrix of zeros.</summary>
    /// <param name="first">For each row the column of its first entry, from 0 to the row itself.</param>
    /// <exception cref="ArgumentOutOfRangeException">No rows, a first column beyond the diagonal, or more than the memory of one
    /// array.</exception>
    public BandMatrix(ReadOnlySpan<int> first)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(first.Length, 1, nameof(first));
        Rows = first.Length;
        _first = new int[Up(Rows) / Tile];
        var width = 0;
        for (var block = 0; block < _first.Length; block++)
        {
            _first[block] = block * Tile;
            for (var i = block * Tile; i < Math.Min(Rows, (block + 1) * Tile); i++)
            {
                ArgumentOutOfRangeException.ThrowIfNegative(first[i], nameof(first));
                ArgumentOutOfRangeException.ThrowIfGreaterThan(first[i], i, nameof(first));
                _first[block] = Math.Min(_first[block], first[i] & -Tile);
            }
            width = Math.Max(width, block * Tile - _first[block]);
        }
        _width = width;
        _stride = _width + Tile;
        var size = (long)_first.Length * Tile * _stride;
        ArgumentOutOfRangeException.ThrowIfGreaterThan(size, Array.MaxLength, nameof(first));
        _entries = new double[size];
        for (var i = Rows; i < _first.Length * Tile; i++)
            _entries[At(i, i)] = 1;
    }

    /// <summary>How many rows.</summary>
    public int Rows { get; }

    /// <summary>An entry on or below the diagonal, by reference, so that it can be added to.</summary>
    /// <param name="row">Its row.</param>
    /// <param name="column">Its column, from the row's first to <paramref name="row"/>.</param>
    public ref double this[int row, int column] => ref _entries[At(row, column)];

    /// <summary>The entries of a row from a column to the diagonal.</summary>
    /// <param name="row">The row.</param>
    /// <param name="from">The column, from the row's first to <paramref name="row"/>.</param>
    public Span<double> Row(int row, int from) => _entries.AsSpan(At(row, from), row - from + 1);

    /// <summary>Factors the matrix in place.</summary>
    /// <returns>False if it is not positive definite; its entries are then of no more use.</returns>
    public bool Factor()
    {
        Span<double> tile = stackalloc double[Tile * Tile];
        for (var i = 0; i < Rows; i += Tile)
        {
            var first = _first[i / Tile];
            for (var j = first; j < i; j += Tile)
            {
                Dots(i, j, Math.Max(first, _first[j / Tile]), tile);
                DivideBy(i, j, tile);
            }
            Dots(i, i, first, tile);
            if (!OnDiagonal(i, tile))
                return false;
        }
        return true;
    }

    /// <summary>Solves for one right-hand side. Call <see cref="Factor"/> first.</summary>
    /// <param name="b">The right-hand side; the solution when this returns. <see cref="Rows"/> long.</param>
    public void Solve(Span<double> b)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(b.Length, Rows);
        for (var i = 0; i < Rows; i++)
        {
            var first = _first[i / Tile];
            var row = Row(i, first);
            var sum = b[i];
            for (var k = 0; k < row.Length - 1; k++)
                sum -= row[k] * b[first + k];
            b[i] = sum / row[^1];
        }
        for (var i = Rows - 1; i >= 0; i--)
        {
            var first = _first[i / Tile];
            var row = Row(i, first);
            var x = b[i] / row[^1];
            b[i] = x;
            for (var k = 0; k < row.Length - 1; k++)
                b[first + k] -= row[k] * x;
        }
    }

    private static int Up(int n) => (n + Tile - 1) / Tile * Tile;

    private int At(int row, int column)
    {
        var block = row & -Tile;
        return row * _stride + column - block + _width;
    }

    /// <summary>What is left of the tile at rows i and columns j after all columns from <paramref name="first"/> to j are taken
    /// out of it.</summary>
    private void Dots(int i, int j, int first, Span<double> tile)
    {
        var count = j - first;
        ref var a = ref _entries[At(i, first)];
        ref var b = ref _entries[At(j, first)];
        if (Vector.IsHardwareAccelerated && Tile % Vector<double>.Count == 0)
            VectorDots(ref a, ref b, count, tile);
        else
            PlainDots(ref a, ref b, count, tile);
        for (var m = 0; m < Tile; m++)
        {
            for (var n = 0; n < Tile; n++)
            {
                if (j + n <= i + m)
                    tile[m * Tile + n] = _entries[At(i + m, j + n)] - tile[m * Tile + n];
            }
        }
    }

    private void VectorDots(ref double a, ref double b, int count, Span<double> tile)
    {
        var s = (nuint)_stride;
        for (var half = 0; half < Tile; half += 2)
        {
            // Two rows at a time by four: eight sums and six operands stay in sixteen registers.
            ref var a0 = ref Unsafe.Add(ref a, (nuint)half * s);
            ref var a1 = ref Unsafe.Add(ref a0, s);
            ref var b1 = ref Unsafe.Add(ref b, s);
            ref var b2 = ref Unsafe.Add(ref b1, s);
            ref var b3 = ref Unsafe.Add(ref b2, s);
            Vector<double> c00 = default,
                c01 = default,
                c02 = default,
                c03 = default;
            Vector<double> c10 = default,
                c11 = default,
                c12 = default,
                c13 = default;
            for (nuint k = 0; k < (nuint)count; k += (nuint)Vector<double>.Count)
            {
                var x0 = Vector.LoadUnsafe(ref a0, k);
                var x1 = Vector.LoadUnsafe(ref a1, k);
                var y = Vector.LoadUnsafe(ref b, k);
                c00 = Vector.MultiplyAddEstimate(x0, y, c00);
                c10 = Vector.MultiplyAddEstimate(x1, y, c10);
                y = Vector.LoadUnsafe(ref b1, k);
                c01 = Vector.MultiplyAddEstimate(x0, y, c01);
                c11 = Vector.MultiplyAddEstimate(x1, y, c11);
                y = Vector.LoadUnsafe(ref b2, k);
                c02 = Vector.MultiplyAddEstimate(x0, y, c02);
                c12 = Vector.MultiplyAddEstimate(x1, y, c12);
                y = Vector.LoadUnsafe(ref b3, k);
                c03 = Vector.MultiplyAddEstimate(x0, y, c03);
                c13 = Vector.MultiplyAddEstimate(x1, y, c13);
            }
            var row = tile.Slice(half * Tile, 2 * Tile);
            row[0] = Vector.Sum(c00);
            row[1] = Vector.Sum(c01);
            row[2] = Vector.Sum(c02);
            row[3] = Vector.Sum(c03);
            row[4] = Vector.Sum(c10);
            row[5] = Vector.Sum(c11);
            row[6] = Vector.Sum(c12);
            row[7] = Vector.Sum(c13);
        }
    }

    private void PlainDots(ref double a, ref double b, int count, Span<double> tile)
    {
        for (var m = 0; m < Tile; m++)
        {
            var row = MemoryMarshal.CreateReadOnlySpan(ref Unsafe.Add(ref a, m * _stride), count);
            for (var n = 0; n < Tile; n++)
            {
                var other = MemoryMarshal.CreateReadOnlySpan(
                    ref Unsafe.Add(ref b, n * _stride),
                    count
                );
                var sum = 0.0;
                for (var k = 0; k < row.Length; k++)
                    sum += row[k] * other[k];
                tile[m * Tile + n] = sum;
            }
        }
    }

    /// <summary>Divides a tile by the transposed diagonal block of its columns, and stores it.</summary>
    private void DivideBy(int i, int j, Span<double> tile)
    {
        for (var m = 0; m < Tile; m++)
        {
            var row = tile.Slice(m * Tile, Tile);
            for (var n = 0; n < Tile; n++)
            {
                var sum = row[n];
                for (var p = 0; p < n; p++)
                    sum -= row[p] * _entries[At(j + n, j + p)];
                row[n] = sum / _entries[At(j + n, j + n)];
                _entries[At(i + m, j + n)] = row[n];
            }
        }
    }

    private bool OnDiagonal(int i, Span<double> tile)
    {
        for (var m = 0; m < Tile; m++)
        {
            for (var n = 0; n <= m; n++)
            {
                var sum = tile[m * Tile + n];
                for (var p = 0; p < n; p++)
                    sum -= _entries[At(i + m, i + p)] * _entries[At(i + n, i + p)];
                if (m > n)
                    _entries[At(i + m, i + n)] = sum / _entries[At(i + n, i + n)];
                else if (sum > 0)
                    _entries[At(i + m, i + m)] = Math.Sqrt(sum);
                else
                    return false;
            }
        }
        return true;
    }
}
