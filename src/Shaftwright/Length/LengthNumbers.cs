using Shaftwright.Corner;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Length;

/// <summary>Everything the length depends on, as one row of numbers with what is uncertain among them.</summary>
internal sealed class LengthNumbers
{
    private readonly PlungeLimits? _limits;
    private readonly int _joint;

    public LengthNumbers(CornerInput corner, JointsInput? joints)
    {
        var read = CornerNumbers.Of(corner);
        _joint = read.Values.Length;
        _limits = joints?.Inner is { } inner ? PlungeLimits.Of(inner) : null;
        Values =
        [
            .. read.Values,
            _limits?.StraightIn ?? double.NaN,
            _limits?.StraightOut ?? double.NaN,
            _limits?.RollerRadius ?? 0,
            joints?.Inner?.AngleLimit?.Value ?? double.NaN,
        ];
        var uncertain = new List<UncertainValue>(read.Uncertain);
        if (_limits is not null)
        {
            Add(
                uncertain,
                0,
                JointFields.PlungeIn,
                joints!.Inner!.PlungeIn,
                Loosest(joints.Inner, r => r.In, JointFields.TableIn)
            );
            Add(
                uncertain,
                1,
                JointFields.PlungeOut,
                joints.Inner.PlungeOut,
                Loosest(joints.Inner, r => r.Out, JointFields.TableOut)
            );
            if (_limits.RollerRadius > 0)
                Add(uncertain, 2, JointFields.RollerRadius, joints.Inner.RollerRadius);
        }
        Add(uncertain, 3, JointFields.AngleLimit, joints?.Inner?.AngleLimit);
        Uncertain = uncertain;
        ReadAlong = corner.ReadAlong;
        StubWasHome = corner.Conditions.StubPushedHome == true;
        TableEndsAt = _limits?.TableEndsAt;
        Sets =
        [
            .. ReadingSet
                .Of(corner, read.Values)
                .Where(s => s.Form == ReadingForm.InAndOut || _limits is not null),
        ];
    }

    public double[] Values { get; }

    public IReadOnlyList<UncertainValue> Uncertain { get; }

    public SlideLine ReadAlong { get; }

    public bool StubWasHome { get; }

    /// <summary>Angle of the last row of a measured plunge table, rad; null without one.</summary>
    public double? TableEndsAt { get; }

    /// <summary>Largest angle of the inner joint, rad; NaN when it is not given.</summary>
    public double InnerAngleLimitOf(double[] values) => values[_joint + 3];

    public bool HasPlungeLimits => _limits is not null;

    /// <summary>The sets that can be evaluated: distance and angle only where the joint's plunge is known.</summary>
    public IReadOnlyList<ReadingSet> Sets { get; }

    public PlungeLimits? LimitsOf(double[] values) =>
        ReferenceEquals(values, Values)
            ? _limits
            : _limits?.With(values[_joint], values[_joint + 1], values[_joint + 2]);

    /// <summary>The largest standard uncertainty of a table's column, mm. It shifts the whole column, as a rule held wrong would.</summary>
    private static double Loosest(
        JointInput joint,
        Func<PlungeAtAngle, Measured<Distance>?> column,
        Field<Distance> field
    ) =>
        joint
            .PlungeTable.Select(column)
            .Select(m => m is null ? 0 : field.StandardUncertainty(m))
            .DefaultIfEmpty()
            .Max();

    private void Add<T>(
        List<UncertainValue> list,
        int offset,
        Field<T> field,
        Measured<T>? measure,
        double atLeast = 0
    )
        where T : IDimension<T>
    {
        if (
            measure is not null
            && Math.Max(field.StandardUncertainty(measure), atLeast) is > 0 and var u
        )
            list.Add(new UncertainValue(_joint + offset, null, field.Name, field.Words, u));
    }
}
