using Shaftwright.Corner.Linkages;
using Shaftwright.Geometry;

namespace Shaftwright.Tests.Corner.Linkages;

/// <summary>From points of a linkage to plunge and angles, against the printed table. Source: ../shared/reference/kinematics.md 1 to 3,
/// mark D; owed: half the last printed digit.</summary>
public sealed class ShaftLineTests
{
    private static ShaftLine At(Linkage linkage, Vec3 outer, double travel)
    {
        var solver = new CarrierSolver(linkage);
        Assert.Equal(MoveEnd.Reached, solver.MoveTo(new(travel)).End);
        return new(new(0, 200, 280), Vec3.Left, solver.Point(outer), solver.Direction(Vec3.Left));
    }

    [Theory]
    [InlineData("trailing", 90, 450, 459.020697, 9.205263, 11.608941, 11.608941)]
    [InlineData("trailing", -90, 450, 459.020697, 9.205263, 11.608941, 11.608941)]
    [InlineData("wishbones", 84, 400, 396.988665, -3.080554, 12.122352, 12.122352)]
    [InlineData("wishbones", -84, 400, 396.988665, -3.080554, 12.122352, 12.122352)]
    [InlineData("swing", 140, 300, 305.286750, 5.690819, 21.921340, 5.661135)]
    [InlineData("swing", -140, 300, 305.286750, 5.690819, 21.921340, 5.661135)]
    public void PaperCar_AtItsEnds_IsAsPrinted(
        string car,
        double travel,
        double length,
        double distance,
        double plunge,
        double inner,
        double outer
    )
    {
        var (linkage, centre) = car switch
        {
            "trailing" => (PaperCarsTests.TrailingArm, new Vec3(0, 650, 280)),
            "wishbones" => (PaperCarsTests.Wishbones, new Vec3(0, 600, 280)),
            _ => (PaperCarsTests.SwingArm, new Vec3(0, 500, 280)),
        };
        var line = At(linkage, centre, travel);
        const double owed = 0.5e-6;
        Assert.Equal(distance, line.Distance, owed);
        Assert.Equal(plunge, line.Plunge(length), owed);
        Assert.Equal(inner, line.InnerAngle(length) * 180 / Math.PI, owed);
        Assert.Equal(outer, line.OuterAngle(length) * 180 / Math.PI, owed);
    }

    [Fact]
    public void ShaftTooShortToReach_HasNoPlungeAndNoAngle()
    {
        var line = At(PaperCarsTests.SwingArm, new(0, 500, 280), 140);
        Assert.Equal(112, line.Across, 1e-9);
        Assert.True(double.IsNaN(line.Plunge(111)));
        Assert.True(double.IsNaN(line.InnerAngle(111)));
        Assert.True(double.IsNaN(line.OuterAngle(111)));
    }
}
