namespace Shaftwright.Joints;

/// <summary>Torque that a joint may carry against its angle, from the rows the user gave.</summary>
/// <remarks>Straight between rows, the first row's torque below the first angle, nothing said beyond the last. A joint does not
/// carry more at a larger angle, so a row that rises counts as the smallest torque given at any smaller angle; the joints
/// stage names it. Source: the user's own data; that it falls with angle is common practice, no source.</remarks>
public sealed class TorqueCurve
{
    private readonly double[] _angle;
    private readonly double[] _torque;

    private TorqueCurve(double[] angle, double[] torque, double? risesAt)
    {
        _angle = angle;
        _torque = torque;
        RisesAt = risesAt;
    }

    /// <summary>Angle of the first row that rises, rad; null when none does.</summary>
    public double? RisesAt { get; }

    /// <summary>Angle of the last row, rad.</summary>
    public double EndsAt => _angle[^1];

    /// <summary>The curve of a joint; null when it has no complete row.</summary>
    public static TorqueCurve? Of(JointInput joint)
    {
        ArgumentNullException.ThrowIfNull(joint);
        List<(double Angle, double Torque)> rows =
        [
            .. joint
                .TorqueTable.Where(r => r is { Angle: not null, Torque: not null })
                .Select(r => (r.Angle!.Value, r.Torque!.Value))
                .OrderBy(r => r.Item1)
                .ThenByDescending(r => r.Item2),
        ];
        if (rows.Count == 0)
            return null;
        double? risesAt = null;
        var torque = new double[rows.Count];
        torque[0] = rows[0].Torque;
        for (var i = 1; i < rows.Count; i++)
        {
            if (rows[i].Torque > torque[i - 1])
                risesAt ??= rows[i].Angle;
            torque[i] = Math.Min(torque[i - 1], rows[i].Torque);
        }
        return new([.. rows.Select(r => r.Angle)], torque, risesAt);
    }

    /// <summary>Torque it may carry at an angle, N·mm; null beyond the last row.</summary>
    /// <param name="angle">rad, 0 or more.</param>
    public double? At(double angle)
    {
        if (angle > _angle[^1])
            return null;
        var i = Array.FindIndex(_angle, a => a >= angle);
        if (i == 0 || _angle[i] == _angle[i - 1])
            return _torque[i];
        var part = (angle - _angle[i - 1]) / (_angle[i] - _angle[i - 1]);
        return _torque[i - 1] + part * (_torque[i] - _torque[i - 1]);
    }
}
