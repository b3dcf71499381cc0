using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Shaftwright.Weld;

namespace Shaftwright.Tests.Weld;

/// <summary>Reach of heat against what the equations of conduction give by numbers.</summary>
public sealed class BarHeatTests
{
    private const double Conductivity = 0.04; // W/(mm·K)
    private static readonly double s_diffusivity = Conductivity / BarHeat.HeatCapacity;

    /// <summary>Largest of a function of time, by golden section over its logarithm.</summary>
    private static double Peak(Func<double, double> of)
    {
        double low = Math.Log(1e-4),
            high = Math.Log(1e5);
        var ratio = (Math.Sqrt(5) - 1) / 2;
        for (var i = 0; i < 200; i++)
        {
            var (a, b) = (high - ratio * (high - low), low + ratio * (high - low));
            if (of(Math.Exp(a)) > of(Math.Exp(b)))
                high = b;
            else
                low = a;
        }
        return of(Math.Exp((low + high) / 2));
    }

    [Fact]
    public void ReachOfRun_IsWhereALineOfHeatOnAHalfSpacePeaksAtThatTemperature() =>
        Gen.Select(Gen.Double[0.3, 2], Gen.Double[20, 250], Gen.Double[50, 600])
            .Sample(
                (q, before, rise) =>
                {
                    var r = BarHeat.ReachOfRun(q, before, before + rise);
                    // Half a line source: T − T0 = (Q/L)/(2πkt)·exp(−r²/4at).
                    var peak = Peak(t =>
                        q
                        * 1000
                        / (2 * Math.PI * Conductivity * t)
                        * Math.Exp(-r * r / (4 * s_diffusivity * t))
                    );
                    Assert.Equal(rise, peak, 1e-6 * rise);
                }
            );

    [Fact]
    public void ReachOfLap_IsWhereAPlaneOfHeatInABarPeaksAtThatTemperature() =>
        Gen.Select(Gen.Double[0.3, 2], Gen.Double[15, 40], Gen.Double[20, 250], Gen.Double[50, 600])
            .Sample(
                (q, d, before, rise) =>
                {
                    var x = BarHeat.ReachOfLap(q, d, before, before + rise);
                    var areaHeat = q * 1000 * Math.PI * d / (Math.PI * d * d / 4);
                    var peak = Peak(t =>
                        areaHeat
                        / BarHeat.HeatCapacity
                        / Math.Sqrt(4 * Math.PI * s_diffusivity * t)
                        * Math.Exp(-x * x / (4 * s_diffusivity * t))
                    );
                    Assert.Equal(rise, peak, 1e-6 * rise);
                }
            );

    [Fact]
    public void Along_AHeldBar_IsWhatFiniteDifferencesGive()
    {
        const double Hot = 300,
            Length = 180,
            D = 26,
            H = 20e-6;
        var dying = BarHeat.DyingLength(D, 40, 20);
        const int N = 1800;
        var step = Length / N;
        // k·A·T'' = h·π·D·(T − Ta): T(i−1) − (2 + m²s²)T(i) + T(i+1) = −m²s²·Ta, hot at 0, nothing lost at the end.
        var m2 = H * 4 / (Conductivity * D);
        var a = Matrix<double>.Build.Sparse(N, N);
        var b = Vector<double>.Build.Dense(N, -m2 * step * step * BarHeat.Workshop);
        for (var i = 0; i < N; i++)
        {
            a[i, i] = -(2 + m2 * step * step);
            if (i > 0)
                a[i, i - 1] = i == N - 1 ? 2 : 1;
            if (i + 1 < N)
                a[i, i + 1] = 1;
        }
        b[0] -= Hot;
        // Thomas: the matrix is tridiagonal.
        var (up, right) = (new double[N], new double[N]);
        for (var i = 0; i < N; i++)
        {
            var lower = i > 0 ? a[i, i - 1] : 0;
            var divisor = a[i, i] - (i > 0 ? lower * up[i - 1] : 0);
            up[i] = (i + 1 < N ? a[i, i + 1] : 0) / divisor;
            right[i] = (b[i] - (i > 0 ? lower * right[i - 1] : 0)) / divisor;
        }
        var t = new double[N];
        for (var i = N - 1; i >= 0; i--)
            t[i] = right[i] - (i + 1 < N ? up[i] * t[i + 1] : 0);
        foreach (var x in new[] { 20, 60, 120, 180 })
            Assert.Equal(t[(int)(x / step) - 1], BarHeat.Along(Hot, x, Length, dying), 0.01);
    }

    [Fact]
    public void Along_AVeryLongBar_DiesAwayWithoutOverflow() =>
        Assert.Equal(BarHeat.Workshop, BarHeat.Along(300, 40000, 90000, 100), 1e-9);
}
