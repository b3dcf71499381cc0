using Shaftwright.Measures;

namespace Shaftwright.Car;

/// <summary>The two sums behind a shaft's torque: what the engine can give, and what the tyre can hold.</summary>
public static class DriveTorque
{
    /// <summary>Standard acceleration of free fall, m/s², exact by convention (3rd CGPM, 1901).</summary>
    public const double FreeFall = 9.80665;

    /// <summary>Torque in one shaft from the engine side, T = Te·i·f·η·share, without any launch factor.</summary>
    /// <param name="engineTorque">Torque at the crankshaft, N·mm.</param>
    /// <param name="gear">Gear ratio.</param>
    /// <param name="final">Final drive ratio.</param>
    /// <param name="efficiency">From crankshaft to shaft, 0 to 1.</param>
    /// <param name="share">Share of the axle's torque that goes to this shaft, 0 to 1.</param>
    /// <returns>N·mm.</returns>
    /// <remarks>Source: moment balance of a gear train. Check values: Published/shaft-torque.json.</remarks>
    public static double EngineSide(
        double engineTorque,
        double gear,
        double final,
        double efficiency,
        double share
    ) => engineTorque * gear * final * efficiency * share;

    /// <summary>Load on a driven wheel at the limit of grip, N = W/(1 + μh/L) on a front axle, W/(1 − μh/L) on a rear one.</summary>
    /// <param name="axle">Which axle drives.</param>
    /// <param name="staticLoad">Load standing still, N.</param>
    /// <param name="grip">Friction coefficient μ.</param>
    /// <param name="heightOverWheelbase">h/L: height of the centre of mass over the wheelbase.</param>
    /// <returns>N; infinite where μh/L reaches 1 on a rear axle, where this sum has no answer.</returns>
    /// <remarks>Derived: the tractive force μN acts at the ground, the inertia at height h, so the axle's load changes by μNh/L.
    /// One axle drives; level ground; no lift of the front wheels, no aerodynamic load. On a rear axle the load can never pass
    /// the weight of the car, which this does not know: a value near that limit is high, on the safe side.
    /// Check values: Published/shaft-torque.json.</remarks>
    public static double LoadAtGripLimit(
        DrivenAxle axle,
        double staticLoad,
        double grip,
        double heightOverWheelbase
    )
    {
        var k = grip * heightOverWheelbase;
        if (axle == DrivenAxle.Front)
            return staticLoad / (1 + k);
        return k < 1 ? staticLoad / (1 - k) : double.PositiveInfinity;
    }

    /// <summary>Torque at which a tyre slips, T = μ·N·r.</summary>
    /// <param name="grip">Friction coefficient μ.</param>
    /// <param name="load">Load on the wheel, N.</param>
    /// <param name="radius">Rolling radius, mm.</param>
    /// <returns>N·mm.</returns>
    public static double TyreSide(double grip, double load, double radius) => grip * load * radius;

    /// <summary>A typed or usual ± as a range, kept inside what the field accepts.</summary>
    internal static Band Range<T>(Field<T> field, Measured<T> m)
        where T : IDimension<T>
    {
        var a = m.PlusMinus ?? field.UsualPlusMinus;
        return new Band(
            Math.Clamp(m.Value - a, field.Least, field.Most),
            Math.Clamp(m.Value + a, field.Least, field.Most)
        );
    }
}
