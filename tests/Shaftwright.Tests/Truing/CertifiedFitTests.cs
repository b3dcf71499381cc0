using System.Globalization;
using Shaftwright.Tests.Published;
using Shaftwright.Truing;

namespace Shaftwright.Tests.Truing;

/// <summary>The least-squares fit of harmonics on certified sets. No certified set of harmonics or circles is to be had, but a
/// polynomial in cos θ is a sum of cosines: each certified pair (x, y) read at +θ and at −θ, with cos θ = (x − M)/H, leaves the sines
/// nothing to do, and the cosines must be the certified polynomial.</summary>
public sealed class CertifiedFitTests
{
    private static readonly PublishedFile s_sets = PublishedFile.Load("strd-polynomials");

    private static double[] Numbers(PublishedCase c, string name) =>
        [
            .. c.Raw(name)
                .GetString()!
                .Split(' ')
                .Select(t => double.Parse(t, CultureInfo.InvariantCulture)),
        ];

    private static (double[] Powers, double Residual, double Sines) Fit(PublishedCase c, int order)
    {
        double[] x = Numbers(c, "x"),
            y = Numbers(c, "y");
        double middle = (x.Max() + x.Min()) / 2,
            half = (x.Max() - x.Min()) / 2;
        List<(double, double)> points = [];
        for (var i = 0; i < x.Length; i++)
        {
            var angle = Math.Acos(Math.Clamp((x[i] - middle) / half, -1, 1));
            points.Add((angle, y[i]));
            points.Add((-angle, y[i]));
        }
        var fit = PlainFit.Of(points, order)!;
        // cos kθ is the Chebyshev polynomial of cos θ; then powers of x.
        double[][] chebyshev = new double[order + 1][];
        for (var k = 0; k <= order; k++)
        {
            chebyshev[k] = new double[order + 1];
            if (k < 2)
                chebyshev[k][k] = 1;
            else
                for (var p = 0; p <= order; p++)
                    chebyshev[k][p] =
                        (p > 0 ? 2 * chebyshev[k - 1][p - 1] : 0) - chebyshev[k - 2][p];
        }
        var inCosine = new double[order + 1];
        for (var k = 0; k <= order; k++)
        for (var p = 0; p <= order; p++)
            inCosine[p] += (k == 0 ? fit.Middle : fit.Parts[k - 1].Toward0) * chebyshev[k][p];
        // Horner with u = (x − M)/H as a polynomial of x.
        double[] powers = [inCosine[order]];
        for (var p = order - 1; p >= 0; p--)
        {
            var next = new double[powers.Length + 1];
            for (var j = 0; j < powers.Length; j++)
            {
                next[j + 1] += powers[j] / half;
                next[j] -= powers[j] * middle / half;
            }
            next[0] += inCosine[p];
            powers = next;
        }
        var squares = fit.Residuals.Sum(r => r * r) / 2;
        return (
            powers,
            Math.Sqrt(squares / (x.Length - order - 1)),
            fit.Parts.Max(p => Math.Abs(p.Toward90))
        );
    }

    [Fact]
    public void Harmonics_OfPontius_AreTheCertifiedQuadratic()
    {
        var c = s_sets["Pontius"];
        var (b, residual, sines) = Fit(c, 2);
        c.Agrees("B0", b[0]);
        c.Agrees("B1", b[1]);
        c.Agrees("B2", b[2]);
        c.Agrees("residual", residual);
        Assert.Equal(0, sines, 1e-12);
    }

    [Fact]
    public void Harmonics_OfWampler4_AreTheCertifiedQuintic()
    {
        var c = s_sets["Wampler4"];
        var (b, residual, sines) = Fit(c, 5);
        c.Agrees("B0", b[0]);
        c.Agrees("B1", b[1]);
        c.Agrees("B2", b[2]);
        c.Agrees("B3", b[3]);
        c.Agrees("B4", b[4]);
        c.Agrees("B5", b[5]);
        c.Agrees("residual", residual);
        Assert.Equal(0, sines, 1e-6);
    }
}
