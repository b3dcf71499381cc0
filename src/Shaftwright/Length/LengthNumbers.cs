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
        ];
        var uncertain = new List<UncertainValue>(read.Uncertain);
        if (_limits is not null)
        {
            Add(uncertain, 0, JointFields.PlungeIn, joints!.Inner!.PlungeIn);
            Add(uncertain, 1, JointFields.PlungeOut, joints.Inner.PlungeOut);
            if (_limits.RollerRadius > 0)
                Add(uncertain, 2, JointFields.RollerRadius, joints.Inner.RollerRadius);
        }
        Uncertain = uncertain;
        ReadAlong = corner.ReadAlong;
        StubWasHome = corner.Conditions.StubPushedHome == true;
        InnerAngleLimit = joints?.Inner?.AngleLimit?.Value;
        OuterAngleLimit = joints?.Outer?.AngleLimit?.Value;
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

    public double? InnerAngleLimit { get; }

    public double? OuterAngleLimit { get; }

    public bool HasPlungeLimits => _limits is not null;

    /// <summary>The sets that can be evaluated: distance and angle only where the joint's plunge is known.</summary>
    public IReadOnlyList<ReadingSet> Sets { get; }

    public PlungeLimits? LimitsOf(double[] values) =>
        ReferenceEquals(values, Values)
            ? _limits
            : _limits?.With(values[_joint], values[_joint + 1], values[_joint + 2]);

    private void Add<T>(List<UncertainValue> list, int offset, Field<T> field, Measured<T>? measure)
        where T : IDimension<T>
    {
        if (measure is not null && field.StandardUncertainty(measure) is > 0 and var u)
            list.Add(new UncertainValue(_joint + offset, null, field.Name, field.Words, u));
    }
}
