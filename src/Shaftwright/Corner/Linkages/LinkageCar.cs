using Shaftwright.Geometry;

namespace Shaftwright.Corner.Linkages;

/// <summary>One corner in plain numbers: the linkage, the joints on it, and where the power unit takes the inner one.</summary>
internal sealed class LinkageCar
{
    private readonly (Vec3 Centre, Vec3 Axis)[] _inner = new (Vec3, Vec3)[3];

    /// <summary>Makes it from a row of coordinates.</summary>
    /// <exception cref="ArgumentException">Two points that must differ are one.</exception>
    public LinkageCar(LinkageModel model, double[] x)
    {
        Outer = model.Point(x, LinkagePoint.OuterJoint);
        var inner = model.Point(x, LinkagePoint.InnerJoint);
        var side = Outer.Y < inner.Y ? -1 : 1;
        OuterAxis = model.Has(LinkagePoint.OuterAxis)
            ? (model.Point(x, LinkagePoint.OuterAxis) - Outer).Unit()
            : model.Direction(x, LinkageModel.OuterDirection, side);
        var axis = model.Has(LinkagePoint.InnerAxis)
            ? (model.Point(x, LinkagePoint.InnerAxis) - inner).Unit()
            : model.Direction(x, LinkageModel.InnerDirection, side);
        Vec3? rack = model.Racked
            ? model.Direction(x, LinkageModel.RackDirection, side) * side
            : null;
        Linkage = LinkageKinds.Make(model.Kind, p => model.Point(x, p), rack);
        foreach (var state in Enum.GetValues<PowerUnitState>())
            _inner[(int)state] = Moved(model, x, state, inner, axis);
    }

    /// <summary>What holds the hub.</summary>
    public Linkage Linkage { get; }

    /// <summary>Outer joint's centre at ride height, mm.</summary>
    public Vec3 Outer { get; }

    /// <summary>Its axis, outboard, length 1.</summary>
    public Vec3 OuterAxis { get; }

    /// <summary>Inner joint's centre, mm, and axis, outboard, length 1.</summary>
    public (Vec3 Centre, Vec3 Axis) Inner(PowerUnitState state) => _inner[(int)state];

    private static (Vec3, Vec3) Moved(
        LinkageModel model,
        double[] x,
        PowerUnitState state,
        Vec3 inner,
        Vec3 axis
    )
    {
        var (shift, roll) = model.Move(x, state);
        if (shift == Vec3.Zero && roll == 0)
            return (inner, axis);
        var turn = Pose.Straight(Vec3.Zero);
        var about = Vec3.Zero;
        if (roll != 0)
        {
            about = model.Point(x, LinkagePoint.RollOne);
            var line = (model.Point(x, LinkagePoint.RollTwo) - about).Unit();
            turn = turn.Then(Vec3.Zero, line * roll);
        }
        Vec3 Carried(Vec3 point) => about + turn.Turn(point - about) + shift;
        if (model.Bearing != BearingCarrier.Body)
            return (Carried(inner), turn.Turn(axis));
        // The bearing stays where it is; the intermediate shaft points from the moved output through it.
        var bearing = model.Point(x, LinkagePoint.Bearing);
        var output = model.Point(x, LinkagePoint.Output);
        var swing = Between((bearing - output).Unit(), (bearing - Carried(output)).Unit());
        return (bearing + swing.Turn(inner - bearing), swing.Turn(axis));
    }

    /// <summary>The least turn from one direction to another.</summary>
    private static Pose Between(Vec3 from, Vec3 to)
    {
        var (w, v) = (1 + from.Dot(to), from.Cross(to));
        var k = 1 / Math.Sqrt(w * w + v.Dot(v));
        return new(Vec3.Zero, w * k, v * k);
    }
}
