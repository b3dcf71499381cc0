using CsCheck;
using Shaftwright.Donors;
using static Shaftwright.Tests.Donors.Walked;

namespace Shaftwright.Tests.Donors;

public sealed class ShelfProfilesTests
{
    private static DonorProfile Profile(DonorShaft shaft) =>
        DonorsSolver.Solve(new() { InnerEnd = shaft }).InnerEnd!;

    private static DonorShaft Turn(DonorShaft shaft) =>
        ShelfProfiles.ShaftFrom(new() { Id = "s", Shaft = shaft }, far: true)!;

    [Fact]
    public void ShaftFrom_TurnedTwice_IsTheShaftAsWalked() =>
        Check.Sample(
            Walked.Random,
            shaft =>
            {
                var (once, twice) = (Profile(shaft), Profile(Turn(Turn(shaft))));
                Assert.Equal(once.Stretches.Count, twice.Stretches.Count);
                foreach (var (a, b) in once.Stretches.Zip(twice.Stretches))
                {
                    Assert.Equal(a.Kind, b.Kind);
                    Assert.Equal(a.To, b.To, tolerance: 1e-9);
                    Assert.Equal(a.Diameter, b.Diameter, tolerance: 1e-9);
                    Assert.Equal(a.EndDiameter, b.EndDiameter, tolerance: 1e-9);
                }
            },
            iter: 500
        );

    [Fact]
    public void ShaftFrom_TheFarEnd_HasTheSameDiameterAtTheSamePlace() =>
        Check.Sample(
            Gen.Select(Walked.Random, Gen.Double[0.01, 0.99]),
            trial =>
            {
                var (shaft, share) = trial;
                var (near, far) = (Profile(shaft), Profile(Turn(shaft)));
                static double At(DonorProfile p, double x) =>
                    p.Stretches.First(s => x >= s.From && x <= s.To).At(x);
                var x = near.Length * share;
                if (near.Stretches.Any(s => Math.Abs(s.To - x) < 1e-6))
                    return;
                Assert.Equal(At(near, x), At(far, near.Length - x), tolerance: 1e-9);
            },
            iter: 500
        );

    [Fact]
    public void ShaftFrom_AFilletAndHollow_AreOnTheSameSideOfTheSameStep()
    {
        var shaft = new DonorShaft
        {
            Zones =
            [
                Zone(ZoneKind.Plain, 100, 30),
                Zone(ZoneKind.Plain, 300, 25) with
                {
                    Fillet = Mm(4),
                },
            ],
            Bores =
            [
                new()
                {
                    From = Mm(0),
                    To = Mm(30),
                    Diameter = Mm(10),
                },
            ],
        };
        var turned = Turn(shaft);
        Assert.Equal(4, turned.Zones[1].Fillet!.Value);
        Assert.Null(turned.Zones[0].Fillet);
        Assert.Equal(270, turned.Bores[0].From!.Value);
        Assert.Equal(300, turned.Bores[0].To!.Value);
        // The profile turned in plain numbers is the same.
        var plain = Profile(turned);
        Assert.Equal(4, plain.Stretches[1].Fillet);
        Assert.Equal(270, plain.Hollows[0].From);
    }
}
