using System.Numerics;

namespace Shaftwright.Strength.TorsionField;

/// <summary>The line of nodes in the middle of a column of elements, eliminated before the rest: it touches nothing but the lines at both
/// sides, and that takes three quarters of the work away.</summary>
internal sealed class InnerLine(int rows)
{
    // Its own matrix has two places beside the diagonal; factored as LDLᵀ.
    private readonly double[] _diagonal = new double[rows];
    private readonly double[] _next = new double[rows];
    private readonly double[] _afterNext = new double[rows];

    /// <summary>How it follows the two lines beside it, row by row; with the other sign.</summary>
    private readonly double[] _follows = new double[rows * 2 * rows];

    /// <summary>Adds the column of elements to the matrix of the lines between, with this line taken out.</summary>
    /// <param name="matrix">Rows by line, then from the axis out.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="column">Which column of elements.</param>
    /// <returns>False if an element is folded.</returns>
    public bool AddTo(BandMatrix matrix, MeridianGrid grid, int column)
    {
        Span<double> k = stackalloc double[81];
        Span<int> node = stackalloc int[9];
        var first = column * rows;
        for (var b = 0; b < grid.Across; b++)
        {
            for (var i = 0; i < 9; i++)
                node[i] = (2 * column + i / 3) * rows + 2 * b + i % 3;
            if (!NineNodes.Stiffness(grid.Z, grid.R, node, k))
                return false;
            for (var i = 0; i < 9; i++)
            {
                var (line, row) = (i / 3, 2 * b + i % 3);
                for (var j = 0; j < 9; j++)
                {
                    var (other, at) = (j / 3, 2 * b + j % 3);
                    var value = k[9 * i + j];
                    if (line == 1)
                    {
                        if (other != 1)
                            _follows[row * 2 * rows + other / 2 * rows + at] += value;
                        else if (at == row)
                            _diagonal[row] += value;
                        else if (at == row - 1)
                            _next[row] += value;
                        else if (at == row - 2)
                            _afterNext[row] += value;
                    }
                    else if (other != 1)
                    {
                        var (here, there) = (line / 2 * rows + row, other / 2 * rows + at);
                        if (there <= here)
                            matrix[first + here, first + there] += value;
                    }
                }
            }
        }
        // What the two lines feel through this one: their coupling, transposed, times how it follows them.
        var coupling = new (int Line, double Value)[rows * 10];
        for (var row = 0; row < rows; row++)
        {
            for (var side = 0; side < 2; side++)
            {
                for (var d = -2; d <= 2; d++)
                {
                    var at = row + d;
                    var one = at < 0 || at >= rows ? 0 : side * rows + at;
                    coupling[row * 10 + side * 5 + d + 2] = (
                        one,
                        at < 0 || at >= rows ? 0 : _follows[row * 2 * rows + one]
                    );
                }
            }
        }
        Eliminate();
        for (var row = 0; row < rows; row++)
        {
            var follows = _follows.AsSpan(row * 2 * rows, 2 * rows);
            foreach (var (line, value) in coupling.AsSpan(row * 10, 10))
            {
                if (value != 0)
                    AddTimes(matrix.Row(first + line, first), follows[..(line + 1)], -value);
            }
        }
        return true;
    }

    /// <summary>The angles of this line from those of the lines beside it.</summary>
    public void Recover(ReadOnlySpan<double> beside, Span<double> angles)
    {
        for (var row = 0; row < rows; row++)
        {
            var follows = _follows.AsSpan(row * 2 * rows, 2 * rows);
            var sum = 0.0;
            for (var i = 0; i < beside.Length; i++)
                sum -= follows[i] * beside[i];
            angles[row] = sum;
        }
    }

    /// <summary>Solves its own matrix for every column of the coupling.</summary>
    private void Eliminate()
    {
        for (var i = 0; i < rows; i++)
        {
            // L of row i: two entries.
            var l2 = i >= 2 ? _afterNext[i] / _diagonal[i - 2] : 0;
            var l1 =
                i >= 1
                    ? (_next[i] - l2 * (i >= 2 ? _next[i - 1] * _diagonal[i - 2] : 0))
                        / _diagonal[i - 1]
                    : 0;
            if (i >= 2)
                _diagonal[i] -= l2 * l2 * _diagonal[i - 2];
            if (i >= 1)
                _diagonal[i] -= l1 * l1 * _diagonal[i - 1];
            (_next[i], _afterNext[i]) = (l1, l2);
            if (i >= 1)
                AddTimes(Line(i), Line(i - 1), -l1);
            if (i >= 2)
                AddTimes(Line(i), Line(i - 2), -l2);
        }
        for (var i = rows - 1; i >= 0; i--)
        {
            var line = Line(i);
            for (var k = 0; k < line.Length; k++)
                line[k] /= _diagonal[i];
            if (i + 1 < rows)
                AddTimes(line, Line(i + 1), -_next[i + 1]);
            if (i + 2 < rows)
                AddTimes(line, Line(i + 2), -_afterNext[i + 2]);
        }
    }

    private Span<double> Line(int row) => _follows.AsSpan(row * 2 * rows, 2 * rows);

    private static void AddTimes(Span<double> to, ReadOnlySpan<double> what, double factor)
    {
        var i = 0;
        if (Vector.IsHardwareAccelerated)
        {
            var f = new Vector<double>(factor);
            for (; i <= to.Length - Vector<double>.Count; i += Vector<double>.Count)
                Vector
                    .MultiplyAddEstimate(
                        f,
                        new Vector<double>(what[i..]),
                        new Vector<double>(to[i..])
                    )
                    .CopyTo(to[i..]);
        }
        for (; i < to.Length; i++)
            to[i] += factor * what[i];
    }
}
