using Shaftwright.Measures;

namespace Shaftwright.Joints;

/// <summary>What a joint may carry at one angle, by the user's own data.</summary>
public sealed record TorqueAtAngle
{
    /// <summary>Joint angle.</summary>
    public Measured<Angle>? Angle { get; init; }

    /// <summary>Torque it may carry there.</summary>
    public Measured<Torque>? Torque { get; init; }

    /// <summary>Collects what is out of range.</summary>
    public void Check(InputCheck check, string path)
    {
        ArgumentNullException.ThrowIfNull(check);
        check.Range(path, TorqueFields.Angle, Angle);
        check.Range(path, TorqueFields.Torque, Torque);
    }
}

/// <summary>The questions of <see cref="TorqueAtAngle"/>.</summary>
public static class TorqueFields
{
    /// <summary>Angle, rad.</summary>
    public static Field<Angle> Angle { get; } = new("angle", "joint angle", 0, Math.PI / 3);

    /// <summary>Torque, N·mm.</summary>
    public static Field<Torque> Torque { get; } =
        new("torque", "torque the joint may carry at that angle", 1000, 20_000_000);
}
