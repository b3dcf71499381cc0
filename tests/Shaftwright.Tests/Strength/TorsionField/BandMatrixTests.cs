using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Shaftwright.Strength.TorsionField;

namespace Shaftwright.Tests.Strength.TorsionField;

public sealed class BandMatrixTests
{
    [Fact]
    public void Solve_AnyBand_AgreesWithAGeneralLibrary() =>
        Gen.Select(Gen.Int[1, 70], Gen.Int[0, 40], Gen.Int[0, int.MaxValue])
            .Sample(
                (rows, band, seed) =>
                {
                    var random = new Random(seed);
                    // Any profile within the band.
                    int[] first =
                    [
                        .. Enumerable
                            .Range(0, rows)
                            .Select(i => i - random.Next(Math.Min(i, band) + 1)),
                    ];
                    var ours = new BandMatrix(first);
                    var dense = Matrix<double>.Build.Dense(rows, rows);
                    for (var i = 0; i < rows; i++)
                    {
                        for (var j = first[i]; j <= i; j++)
                        {
                            var value = i == j ? 3 + 2 * band : random.NextDouble() * 2 - 1;
                            ours[i, j] = value;
                            dense[i, j] = dense[j, i] = value;
                        }
                    }
                    double[] b = [.. Enumerable.Range(0, rows).Select(_ => random.NextDouble())];
                    var expected = dense.Cholesky().Solve(Vector<double>.Build.Dense(b));
                    Assert.True(ours.Factor());
                    ours.Solve(b);
                    for (var i = 0; i < rows; i++)
                        Assert.Equal(expected[i], b[i], 1e-12);
                },
                iter: 300
            );

    [Fact]
    public void Factor_NotPositiveDefinite_SaysSo()
    {
        var matrix = new BandMatrix([0, 0, 1, 2, 3]);
        for (var i = 0; i < 5; i++)
            matrix[i, i] = i == 3 ? -1 : 1;
        Assert.False(matrix.Factor());
    }
}
