using System.Globalization;
using CsCheck;
using Shaftwright.Tests.Published;
using Shaftwright.Truing;

namespace Shaftwright.Tests.Truing;

public sealed class VeeSensitivityTests
{
    public static TheoryData<string> Cases => PublishedFile.Ids("vee-sensitivity");

    [Theory]
    [MemberData(nameof(Cases))]
    public void Over_AVee_IsAsPublished(string id)
    {
        var c = PublishedFile.Load("vee-sensitivity")[id];
        var order = (int)c.Number("order");
        foreach (var vee in new[] { "60", "90", "120" })
            c.Agrees(
                vee,
                VeeSensitivity.Over(
                    order,
                    double.Parse(vee, CultureInfo.InvariantCulture) * Math.PI / 180
                )
            );
    }

    [Fact]
    public void Over_AVee_IsWhatALobedSectionLaidIntoItShows()
    {
        // Independent: the section r = R + c cos n(φ − θ) is lowered into the vee until it touches both faces, found by a search
        // of its support along each face's normal, and the dial on the bisector reads its top.
        Gen.Select(Gen.Int[2, 10], Gen.Double[50, 130], Gen.Double[0, 360])
            .Sample(
                (n, veeDegrees, turn) =>
                {
                    const double radius = 12,
                        lobe = 1e-5;
                    var (vee, theta) = (veeDegrees * Math.PI / 180, turn * Math.PI / 180);
                    double R(double phi) => radius + lobe * Math.Cos(n * (phi - theta));
                    // Support function in a direction, near the direction itself for a nearly round section.
                    double Reach(double direction)
                    {
                        double most = 0;
                        for (var i = -4000; i <= 4000; i++)
                        {
                            var phi = direction + i * 1e-7;
                            most = Math.Max(most, R(phi) * Math.Cos(phi - direction));
                        }
                        return most;
                    }
                    // Faces' outward normals seen from the section: down, tilted by 90° − α to each side of the bisector.
                    var half = vee / 2;
                    var (left, right) = (
                        -Math.PI / 2 - (Math.PI / 2 - half),
                        -Math.PI / 2 + (Math.PI / 2 - half)
                    );
                    // The middle (x, y) keeps both faces touched: reach = distance of the middle from the face.
                    var (a, b) = (Reach(left), Reach(right));
                    var y = (a + b) / (2 * Math.Sin(half));
                    var x = (a - b) / (2 * Math.Cos(half));
                    // Height of the surface above the vee's corner on the bisector.
                    var top = y + R(Math.PI / 2) - radius;
                    var round = radius / Math.Sin(half);
                    Assert.True(Math.Abs(x) < 1e-3);
                    var expected =
                        VeeSensitivity.Over(n, vee) * lobe * Math.Cos(n * (Math.PI / 2 - theta));
                    // The two normals stand at β to each side of the dial; by symmetry of cosine their mean is cos nβ cos nθ.
                    Assert.Equal(expected, top - round, 1e-3 * lobe * 20);
                },
                iter: 60,
                seed: "0000KnLpQw13"
            );
    }

    [Fact]
    public void Elsewhere_ForABarAlikeAllAlong_AddsUpToTheLeakWhereverTheDialStands()
    {
        Gen.Select(Gen.Int[2, 9], Gen.Double[0.6, 2.4], Gen.Double[0, 700], Gen.Double[-1, 1])
            .Sample(
                (n, vee, x, size) =>
                {
                    var lobes = Across.Of(size, 1.1);
                    var leak = VeeSensitivity.Elsewhere(n, vee, lobes, lobes, x, 90, 560);
                    Assert.Equal(VeeSensitivity.Leak(n, vee) * lobes.Toward0, leak.Toward0, 1e-9);
                    Assert.Equal(
                        VeeSensitivity.Over(n, vee) * lobes.Toward90,
                        (leak + lobes).Toward90,
                        1e-9
                    );
                }
            );
        // At a vee only its own lobes count; midway half of each.
        var first = VeeSensitivity.Elsewhere(3, 1.5, new(1, 0), new(0, 1), 100, 100, 500);
        Assert.Equal(0, first.Toward90, 1e-12);
        var middle = VeeSensitivity.Elsewhere(3, 1.5, new(1, 0), new(0, 1), 300, 100, 500);
        Assert.Equal(middle.Toward0, middle.Toward90, 1e-12);
    }

    [Theory]
    [InlineData(0, 1.5)]
    [InlineData(2, 0)]
    [InlineData(2, 3.2)]
    [InlineData(2, double.NaN)]
    public void Leak_OutsideItsRange_IsRefused(int order, double vee) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => VeeSensitivity.Leak(order, vee));
}
