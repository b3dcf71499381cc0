using System.Globalization;
using Shaftwright.Geometry;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.Geometry;

public sealed class PhiloxTests
{
    public static TheoryData<string> Ids() => PublishedFile.Ids("philox");

    [Theory]
    [MemberData(nameof(Ids))]
    public void Block_OfAKnownCounter_IsThePublishedOne(string id)
    {
        var published = PublishedFile.Load("philox")[id];
        uint[] Words(string text) =>
            [
                .. text.Split(' ')
                    .Select(w =>
                        uint.Parse(w, NumberStyles.HexNumber, CultureInfo.InvariantCulture)
                    ),
            ];
        var c = Words(published.Raw("counter").GetString()!);
        var k = Words(published.Raw("key").GetString()!);
        var (w, x, y, z) = Philox.Block((c[0], c[1], c[2], c[3]), (k[0], k[1]));
        uint[] block = [w, x, y, z];
        Assert.Equal(Words(published.ExpectedText("block")), block);
    }

    [Fact]
    public void Even_OverManyItems_HasTheMomentsOfAnEvenSpread()
    {
        const int N = 40_000;
        var numbers = Enumerable.Range(0, N).Select(i => Philox.Even(7, i, 3)).ToList();
        var beside = Enumerable.Range(0, N).Select(i => Philox.Even(7, i, 4)).ToList();
        // Four standard deviations of each mean: 1/√3, 0.2981 and 1/3 over √N.
        Assert.InRange(numbers.Average(), -0.0116, 0.0116);
        Assert.InRange(numbers.Average(x => x * x) - 1.0 / 3, -0.006, 0.006);
        Assert.InRange(numbers.Zip(beside, (x, y) => x * y).Average(), -0.0067, 0.0067);
        Assert.All(numbers, x => Assert.InRange(x, -1, 1));
    }
}
