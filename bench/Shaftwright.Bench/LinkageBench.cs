using BenchmarkDotNet.Attributes;
using MathNet.Numerics.RootFinding;
using Shaftwright.Corner.Linkages;
using Shaftwright.Geometry;

namespace Shaftwright.Bench;

/// <summary>189 positions (21 travels × 9 of the rack) of a double wishbone, against a general-purpose solver on the same six
/// equations; and the 21 travels of a swing arm against its closed form.</summary>
[MemoryDiagnoser]
public class LinkageBench
{
    private const int Travels = 21;
    private const int Racks = 9;

    private static readonly Linkage s_wishbones = DoubleWishbone.Of(
        new(0, 680, 290),
        new(150, 320, 200),
        new(-150, 325, 205),
        new(0, 620, 190),
        new(120, 350, 400),
        new(-120, 355, 395),
        new(-10, 600, 420),
        Constraint.TrackRod(new(-120, 300, 260), new(-130, 600, 260), Vec3.Left)
    );

    private readonly CarrierSolver _wishbones = new(s_wishbones);

    // Benchmarks must be instance methods; what they begin from is the instance's.
    private readonly double[] _begin = new double[6];
    private readonly double _armLength = 500;

    private readonly CarrierSolver _arm = new(
        PivotedArm.Of(new(0, 600, 280), new(300, 100, 280), new(-200, 100, 280))
    );

    [Benchmark]
    public double Shaftwright_WishboneGrid()
    {
        var sum = 0.0;
        _wishbones.Reset();
        for (var i = 0; i < Travels; i++)
        {
            for (var j = 0; j < Racks; j++)
            {
                // There and back, so that each position is beside the last.
                var rack = -40 + 10.0 * (i % 2 == 0 ? j : Racks - 1 - j);
                sum += _wishbones.MoveTo(new(-68 + 7.0 * i, rack)).Carrier.At.Y;
            }
        }
        return sum;
    }

    [Benchmark(Baseline = true)]
    public double GeneralLibrary_WishboneGrid()
    {
        var sum = 0.0;
        var u = _begin;
        for (var i = 0; i < Travels; i++)
        {
            for (var j = 0; j < Racks; j++)
            {
                var rack = -40 + 10.0 * (i % 2 == 0 ? j : Racks - 1 - j);
                var drive = new Drive(-68 + 7.0 * i, rack);
                u = Broyden.FindRoot(x => Residuals(x, drive), u, 1e-9, 200, 1e-6);
                sum += s_wishbones.WheelCentre.Y + u[1];
            }
        }
        return sum;
    }

    [Benchmark]
    public double Shaftwright_SwingArm()
    {
        var sum = 0.0;
        _arm.Reset();
        for (var i = 0; i < Travels; i++)
            sum += _arm.MoveTo(new(-140 + 14.0 * i)).Carrier.At.Y;
        return sum;
    }

    /// <summary>The same pose, wheel centre and turn, by sine and cosine of an arm along x.</summary>
    [Benchmark]
    public double ClosedForm_SwingArm()
    {
        var sum = 0.0;
        for (var i = 0; i < Travels; i++)
        {
            var half = Math.Asin((-140 + 14.0 * i) / _armLength) / 2;
            var (sin, cos) = Math.SinCos(half);
            var turned = new Pose(new(300, 100, 280), cos, new(sin, 0, 0));
            sum += (turned with { At = turned.Place(new(-300, 500, 0)) }).At.Y;
        }
        return sum;
    }

    private static double[] Residuals(double[] u, Drive drive)
    {
        var pose = Pose.Straight(s_wishbones.WheelCentre)
            .Then(new(u[0], u[1], u[2]), new(u[3] / 300, u[4] / 300, u[5] / 300));
        var f = new double[6];
        for (var i = 0; i < 6; i++)
        {
            var c = s_wishbones.Constraints[i];
            var moved =
                c.Driver switch
                {
                    Driver.Rack => c.Along * drive.Rack,
                    Driver.Travel => c.Along * drive.Travel,
                    _ => Vec3.Zero,
                } + c.Chassis;
            var x = pose.Place(c.Carrier - s_wishbones.WheelCentre) - moved;
            f[i] = c.Hold == Hold.Rod ? x.Length - (c.Carrier - c.Chassis).Length : c.Normal.Dot(x);
        }
        return f;
    }
}
