using Shaftwright.Corner;
using Shaftwright.Corner.Linkages;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.Length;

/// <summary>Everything the length depends on, as one row of numbers with what is uncertain among them.</summary>
internal sealed class LengthNumbers
{
    private readonly CornerNumbers _read;
    private readonly PlungeLimits? _limits;
    private readonly PlungeLimits? _outerLimits;
    private readonly int _inner;
    private readonly int _outer;

    public LengthNumbers(CornerInput corner, JointsInput? joints)
    {
        var read = CornerNumbers.Of(corner);
        _read = read;
        _inner = read.Values.Length;
        _outer = _inner + PerJoint;
        _limits = joints?.Inner is { } inner ? PlungeLimits.Of(inner) : null;
        Floats =
            joints is { Inner: { } i, Outer: { } o }
            && JointsSolver.Plunges(i.Kind)
            && JointsSolver.Plunges(o.Kind);
        _outerLimits = Floats ? PlungeLimits.Of(joints!.Outer!) : null;
        Share = joints?.Inner?.Kind == JointKind.CrossGroove ? 0.5 : 1;
        InnerHeld = joints?.Inner?.HeldAtOuterStop == true;
        OuterHeld = joints?.Outer?.HeldAtOuterStop == true;
        Values =
        [
            .. read.Values,
            .. Of(joints?.Inner, _limits),
            .. Of(joints?.Outer, _outerLimits),
        ];
        var sets = ReadingSet.Of(corner, read);
        List<Misfit> misfits = [.. sets.Select(s => Misfit.Of(corner, read, s))];
        var uncertain = new List<UncertainValue>(Misfit.Widened(read.Uncertain, misfits));
        Add(uncertain, _inner, joints?.Inner, _limits);
        if (Floats)
            Add(uncertain, _outer, joints?.Outer, _outerLimits);
        Uncertain = uncertain;
        ReadAlong = corner.ReadAlong;
        StubWasHome = corner.Conditions.StubPushedHome == true;
        TableEndsAt = _limits?.TableEndsAt;
        Contradictions =
        [
            .. misfits.SelectMany(m => m.Contradictions).Where(c => CanBeUsed(c.Set)),
        ];
        // Nobody knows which of the two is wrong: beside the curve, which takes their middle, each counts as it was read.
        var disputed = Contradictions
            .SelectMany(c => new[] { (c.Set, Reading: c.One), (c.Set, Reading: c.Other) })
            .Distinct()
            .Select(d => d.Set.Alone(d.Reading));
        Sets = [.. sets.Where(CanBeUsed), .. disputed];
    }

    /// <summary>Places within one joint.</summary>
    private const int In = 0,
        Out = 1,
        Radius = 2,
        AngleLimit = 3,
        PerJoint = 4;

    public double[] Values { get; }

    public IReadOnlyList<UncertainValue> Uncertain { get; }

    public SlideLine ReadAlong { get; }

    /// <summary>The curves of a set, or the path of its linkage.</summary>
    public SetCurves CurvesOf(ReadingSet set, double[] values) =>
        set.Place is { } place
            ? new(set, _read.PathOf(values, ReferenceEquals(values, Values), place))
            : new(set, values, ReadAlong, Share);

    /// <summary>A linkage is whole, and the length is found from it.</summary>
    public bool FromLinkage => _read.Model is not null;

    public bool StubWasHome { get; }

    /// <summary>Angle of the last row of a measured plunge table, rad; null without one.</summary>
    public double? TableEndsAt { get; }

    /// <summary>Both joints plunge, so the shaft floats between them.</summary>
    public bool Floats { get; }

    /// <summary>Share of the plunge that the inner joint's centre moves in its housing.</summary>
    public double Share { get; }

    /// <summary>A ring or clip holds the shaft in the inner joint.</summary>
    public bool InnerHeld { get; }

    /// <summary>The same in the outer joint.</summary>
    public bool OuterHeld { get; }

    /// <summary>Largest angle of the inner joint, rad; NaN when it is not given.</summary>
    public double InnerAngleLimitOf(double[] values) => values[_inner + AngleLimit];

    /// <summary>Largest angle of the outer joint, rad; NaN when it is not given.</summary>
    public double OuterAngleLimitOf(double[] values) => values[_outer + AngleLimit];

    /// <summary>True when the plunge of each joint that plunges is known.</summary>
    public bool HasPlungeLimits => _limits is not null && (!Floats || _outerLimits is not null);

    /// <summary>The sets that can be evaluated: distance and angle only where the joint's plunge is known, and between two
    /// plunging joints only with both angles.</summary>
    public IReadOnlyList<ReadingSet> Sets { get; }

    /// <summary>Readings at one height that contradict each other.</summary>
    public IReadOnlyList<Contradiction> Contradictions { get; }

    public PlungeLimits? LimitsOf(double[] values) => Nudged(_limits, values, _inner);

    /// <summary>Limits of the outer joint where it plunges too; null else.</summary>
    public PlungeLimits? OuterLimitsOf(double[] values) => Nudged(_outerLimits, values, _outer);

    private PlungeLimits? Nudged(PlungeLimits? limits, double[] values, int place) =>
        ReferenceEquals(values, Values)
            ? limits
            : limits?.With(values[place + In], values[place + Out], values[place + Radius]);

    private bool CanBeUsed(ReadingSet set) =>
        set.Form == ReadingForm.InAndOut
            ? !Floats
            : HasPlungeLimits && (!Floats || set.Has(Values, CornerNumbers.OuterAngle));

    private static double[] Of(JointInput? joint, PlungeLimits? limits) =>
        [
            limits?.StraightIn ?? double.NaN,
            limits?.StraightOut ?? double.NaN,
            limits?.RollerRadius ?? 0,
            joint?.AngleLimit?.Value ?? double.NaN,
        ];

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

    private static void Add(
        List<UncertainValue> list,
        int place,
        JointInput? joint,
        PlungeLimits? limits
    )
    {
        void Put(int offset, string name, string words, double u)
        {
            if (u > 0)
                list.Add(new UncertainValue(place + offset, null, name, words, u));
        }
        if (joint is null)
            return;
        if (limits is not null)
        {
            var straight = limits.Straight;
            var (nameIn, wordsIn) = Named(joint.PlungeIn, JointFields.PlungeIn);
            var (nameOut, wordsOut) = Named(joint.PlungeOut, JointFields.PlungeOut);
            var tableIn = Loosest(joint, r => r.In, JointFields.TableIn);
            var tableOut = Loosest(joint, r => r.Out, JointFields.TableOut);
            Put(In, nameIn, wordsIn, Math.Max(straight.InUncertainty, tableIn));
            Put(Out, nameOut, wordsOut, Math.Max(straight.OutUncertainty, tableOut));
            if (straight.Radius > 0)
                Put(
                    Radius,
                    straight.LossMeasured
                        ? JointFields.StrokeAtAngle.Name
                        : JointFields.RollerRadius.Name,
                    straight.LossMeasured
                        ? JointFields.StrokeAtAngle.Words
                        : JointFields.RollerRadius.Words,
                    straight.RadiusUncertainty
                );
        }
        if (joint.AngleLimit is { } limit)
            Put(
                AngleLimit,
                JointFields.AngleLimit.Name,
                JointFields.AngleLimit.Words,
                JointFields.AngleLimit.StandardUncertainty(limit)
            );
    }

    private static (string Name, string Words) Named(
        Measured<Distance>? given,
        Field<Distance> field
    ) =>
        given is null
            ? (JointFields.Stroke.Name, JointFields.Stroke.Words)
            : (field.Name, field.Words);
}
