using Shaftwright.Joints;
using Shaftwright.Pages.Doors;

namespace Shaftwright.Pages.Tests;

/// <summary>The joints of a job, typed and put back: what is not touched stays letter for letter.</summary>
public sealed class JobJointsTests
{
    private const string Stages = """
        {"joints":{"inner":{"kind":"plungingTripod","plungeIn":"20 mm","plungeOut":"20 mm",
          "torqueTable":[{"angle":"0°","torque":"900 N·m"},{"angle":"20°","torque":"510 N·m"}]},
         "outer":{"kind":"plungingBall","heldAtOuterStop":true}}}
        """;

    [Fact]
    public async Task Joints_TypedAtEveryQuestion_AreAllInTheJob()
    {
        await using var hand = await Hand.At<JobJoints>(Stages);
        await hand.Type("inner/kind", "CrossGroove");
        await hand.Type("inner/bent", "33");
        await hand.Type("inner/bent-angle", "18");
        await hand.Type("inner/torque/1/most", "520");
        await hand.Type("inner/torque/2/angle", "25");
        await hand.Type("inner/torque/2/most", "400");
        await hand.Type("inner/boot/large", "31");
        await hand.Type("inner/boot/angle", "24");
        await hand.Type("inner/held", "no");
        await hand.Type("outer/clamps", "yes");
        await hand.Type("outer/swing/near", "44 ± 0.2");

        var inner = hand.Job.Joints!.Inner!;
        Assert.Equal(JointKind.CrossGroove, inner.Kind);
        Assert.Equal(33, inner.StrokeAtAngle!.Value, 1e-9);
        Assert.Equal(18 * Math.PI / 180, inner.StrokeAngle!.Value, 1e-9);
        Assert.Equal(["900 N·m", "520", "400"], inner.TorqueTable.Select(r => r.Torque!.Typed));
        Assert.Equal(["0°", "20°", "25"], inner.TorqueTable.Select(r => r.Angle!.Typed));
        Assert.Equal(31, inner.Boot!.LargeClamp!.Value, 1e-9);
        Assert.Equal(24 * Math.PI / 180, inner.Boot.AngleLimit!.Value, 1e-9);
        Assert.False(inner.HeldAtOuterStop);
        Assert.Equal("20 mm", inner.PlungeIn!.Typed);
        var outer = hand.Job.Joints.Outer!;
        Assert.True(outer.HeldAtOuterStop);
        Assert.True(outer.StubClampsBearing);
        Assert.Equal(0.2, outer.Swing!.ChordNear!.PlusMinus!.Value, 1e-9);
    }
}
