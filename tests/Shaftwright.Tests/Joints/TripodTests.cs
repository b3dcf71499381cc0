using CsCheck;
using Shaftwright.Joints;
using Shaftwright.Tests.Length;

namespace Shaftwright.Tests.Joints;

/// <summary>The closed forms of a tripod against a spider put together from its parts: three straight tracks, three arms.</summary>
public sealed class TripodTests
{
    /// <summary>Where the spider's centre is, and how far along the housing each roller is, at one turn of the housing.</summary>
    private static (double OffAxis, double[] Rollers, double[] AlongArm) Spider(
        double radius,
        double angle,
        double turn
    )
    {
        // The spider's plane is tilted about the housing's y; its points are e1·x + e2·y, measured from where it cuts the axis.
        var track = Enumerable.Range(0, 3).Select(k => turn + 2 * Math.PI * k / 3).ToArray();
        var x = track.Select(t => radius * Math.Cos(t) / Math.Cos(angle)).ToArray();
        var y = track.Select(t => radius * Math.Sin(t)).ToArray();
        // Centre (u, v) and turn w such that each roller lies along its own arm: three equations, Newton with plain differences.
        double[] q = [0, 0, turn];
        double[] Residual(double[] p) =>
            [
                .. Enumerable
                    .Range(0, 3)
                    .Select(k =>
                        (y[k] - p[1]) * Math.Cos(p[2] + 2 * Math.PI * k / 3)
                        - (x[k] - p[0]) * Math.Sin(p[2] + 2 * Math.PI * k / 3)
                    ),
            ];
        for (var i = 0; i < 50; i++)
        {
            var f = Residual(q);
            var jacobian = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(3, 3);
            for (var j = 0; j < 3; j++)
            {
                var moved = (double[])q.Clone();
                moved[j] += 1e-6;
                var g = Residual(moved);
                for (var k = 0; k < 3; k++)
                    jacobian[k, j] = (g[k] - f[k]) / 1e-6;
            }
            var step = jacobian.Solve(MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(f));
            for (var j = 0; j < 3; j++)
                q[j] -= step[j];
        }
        return (
            double.Hypot(q[0], q[1]),
            [.. x.Select(v => v * Math.Sin(angle))],
            [.. x.Select((v, k) => double.Hypot(v - q[0], y[k] - q[1]))]
        );
    }

    [Fact]
    public void OrbitEndLossAndSlide_AgainstASpiderTurnedRound_AreTheSame() =>
        Gen.Select(Gen.Double[12, 30], Gen.Double[2, 30])
            .Sample(
                (radius, degrees) =>
                {
                    var angle = degrees * TrialShaft.Degree;
                    var turns = Enumerable
                        .Range(0, 72)
                        .Select(k => Spider(radius, angle, k * 5 * TrialShaft.Degree))
                        .ToList();
                    foreach (var t in turns)
                        Assert.Equal(Tripod.Orbit(radius, angle), t.OffAxis, 1e-7);
                    // The tracks pass 0° and 180°, where a roller reaches furthest.
                    Assert.Equal(
                        Tripod.EndLoss(radius, angle),
                        turns.Max(t => t.Rollers.Max()),
                        1e-9
                    );
                    Assert.Equal(
                        Tripod.RollerSlide(radius, angle),
                        turns.Max(t => t.AlongArm.Max()) - turns.Min(t => t.AlongArm.Min()),
                        1e-6
                    );
                },
                iter: 20
            );
}
