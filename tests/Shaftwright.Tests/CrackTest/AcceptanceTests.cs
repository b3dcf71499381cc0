using System.Globalization;
using Shaftwright.CrackTest;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.CrackTest;

/// <summary>Levels of ISO 23277 and 23278, and the cases of the reference, on plain bar where no floor stands above them.</summary>
public sealed class AcceptanceTests
{
    private static readonly PublishedFile s_file = PublishedFile.Load("crack-acceptance");

    private static readonly AcceptanceLevel[] s_levels =
    [
        AcceptanceLevel.One,
        AcceptanceLevel.Two,
        AcceptanceLevel.TwoX,
        AcceptanceLevel.Three,
    ];

    [Theory]
    [InlineData("penetrant linear")]
    [InlineData("penetrant non-linear")]
    [InlineData("magnetic linear")]
    [InlineData("magnetic non-linear")]
    public void Largest_EachRow_IsThatOfTheTable(string id)
    {
        var row = s_file[id];
        var method = Enum.Parse<TestMethod>(row.Raw("method").GetString()!, ignoreCase: true);
        var linear = row.Raw("linear").GetBoolean();
        row.Agrees("level1", Acceptance.Largest(method, AcceptanceLevel.One, linear));
        row.Agrees("level2", Acceptance.Largest(method, AcceptanceLevel.Two, linear));
        row.Agrees("level3", Acceptance.Largest(method, AcceptanceLevel.Three, linear));
        // With X a line is judged by level 1, anything else by the level itself.
        var x = linear ? "level1" : "level3";
        row.Agrees(x, Acceptance.Largest(method, AcceptanceLevel.ThreeX, linear));
    }

    [Theory]
    [InlineData("I1")]
    [InlineData("I2")]
    [InlineData("I3")]
    [InlineData("I4")]
    [InlineData("I5")]
    [InlineData("I6")]
    public void Judge_EachCase_IsAsPublished(string id)
    {
        var row = s_file[id];
        var crack = row.Has("crack") && row.Raw("crack").GetBoolean();
        var marks = new List<Indication>();
        var at = 300.0;
        foreach (var size in row.Raw("marks").EnumerateArray())
        {
            var parts = size.GetString()!.Split(" x ");
            var length = double.Parse(parts[0], CultureInfo.InvariantCulture);
            if (marks.Count > 0)
                at += length + row.Number("gap");
            marks.Add(
                Tested.Mark(
                    $"m{marks.Count}",
                    Place.Bar,
                    parts[0],
                    parts[1],
                    at.ToString("R", CultureInfo.InvariantCulture),
                    crack ? true : null
                )
            );
        }
        var said = row.Raw("marks").GetArrayLength();
        var verdicts = s_levels.Select(level =>
        {
            var judged = Tested.Solve(
                new()
                {
                    Level = level,
                    Tests = [Tested.Penetrant("t", Tested.Start, [Place.Bar], marks: [.. marks])],
                }
            );
            Assert.All(judged.Marks, m => row.Agrees("judgedLength", m.Length!.Value));
            Assert.Equal(said, judged.Marks.Sum(m => m.IndicationIds.Count));
            return judged.Marks.All(m => m.Accepted == true) ? "accept" : "reject";
        });
        Assert.Equal(row.ExpectedText("verdicts"), string.Join(' ', verdicts));
    }

    [Fact]
    public void IsLinear_WidthUnknown_IsTrue() => Assert.True(Acceptance.IsLinear(0.5, null));
}
