using Shaftwright.Car;
using Shaftwright.Measures;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.Car;

public sealed class DriveTorqueTests
{
    private const double Nm = 1000;
    private static readonly PublishedFile File = PublishedFile.Load("shaft-torque");

    [Theory]
    [InlineData("open-half")]
    [InlineData("seventy-to-one")]
    public void EngineSide_PublishedCase_Agrees(string id)
    {
        var c = File[id];
        c.Agrees(
            "engineSideNm",
            DriveTorque.EngineSide(
                c.Input<Torque>("engine").Value,
                c.Input<Ratio>("gear").Value,
                c.Input<Ratio>("final").Value,
                c.Input<Ratio>("efficiency").Value,
                c.Input<Ratio>("share").Value
            ) / Nm
        );
    }

    [Fact]
    public void TyreSide_PublishedStaticCase_Agrees()
    {
        var c = File["static-load"];
        c.Agrees(
            "tyreSideNm",
            DriveTorque.TyreSide(
                c.Input<Ratio>("grip").Value,
                c.Input<Mass>("mass").Value * DriveTorque.FreeFall,
                c.Input<Distance>("radius").Value
            ) / Nm
        );
    }

    [Theory]
    [InlineData("front")]
    [InlineData("rear")]
    public void LoadAtGripLimit_PublishedAxle_Agrees(string id)
    {
        var c = File[id];
        var grip = c.Input<Ratio>("grip").Value;
        var load = DriveTorque.LoadAtGripLimit(
            Enum.Parse<DrivenAxle>(c.Raw("axle").GetString()!),
            c.Input<Mass>("mass").Value * DriveTorque.FreeFall * c.Input<Ratio>("share").Value,
            grip,
            c.Input<Distance>("height").Value / c.Input<Distance>("wheelbase").Value
        );
        c.Agrees("axleLoad", load);
        c.Agrees(
            "tyreSideNm",
            DriveTorque.TyreSide(grip, load / 2, c.Input<Distance>("radius").Value) / Nm
        );
    }

    [Theory]
    [InlineData(DrivenAxle.Front)]
    [InlineData(DrivenAxle.Rear)]
    public void LoadAtGripLimit_FoundByRepeatedTransfer_Agrees(DrivenAxle axle)
    {
        // The independent way: let the tractive force move weight, the weight change the force, until it settles.
        var (w, mu, h) = (3000.0, 1.1, 0.22);
        var n = w;
        for (var i = 0; i < 200; i++)
            n = w + (axle == DrivenAxle.Rear ? 1 : -1) * mu * n * h;
        Assert.Equal(n, DriveTorque.LoadAtGripLimit(axle, w, mu, h), 6);
    }

    [Fact]
    public void LoadAtGripLimit_RearWhereTheFrontLifts_IsInfinite() =>
        Assert.True(
            double.IsPositiveInfinity(DriveTorque.LoadAtGripLimit(DrivenAxle.Rear, 3000, 2.5, 0.4))
        );
}
