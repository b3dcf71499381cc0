using Shaftwright.Measures;

namespace Shaftwright.Tests.Measures;

public sealed class FieldTests
{
    private static readonly Field<Distance> s_diameter = new(
        "outerDiameter",
        "diameter of the outer piece",
        8,
        120,
        0.02
    );

    [Theory]
    [InlineData("7.99 mm", "is too small")]
    [InlineData("121", "is too large")]
    [InlineData("-3 mm", "is too small")]
    public void Read_OutsideTheRange_NamesFieldValueAndWhatIsAccepted(string typed, string problem)
    {
        var refusal = s_diameter.Read(typed).Refusal!;
        Assert.Equal(
            $"diameter of the outer piece: \"{typed}\" {problem}. Accepted: diameter of the outer piece, from 8 to 120 mm.",
            refusal.ToString()
        );
    }

    [Fact]
    public void Read_OutsideTheRangeInInches_SaysTheRangeInInches() =>
        Assert.Equal(
            "diameter of the outer piece, from 0.314961 to 4.724409 in",
            s_diameter.Read("5 in").Refusal!.Accepted
        );

    [Theory]
    [InlineData("8")]
    [InlineData("120 mm")]
    [InlineData("12 cm")]
    public void Read_TheEndsOfTheRange_AreAccepted(string typed) =>
        Assert.NotNull(s_diameter.Read(typed).Measure);

    [Fact]
    public void Read_TheEndsOfAnAngleRange_AreAcceptedHoweverTheyRound()
    {
        for (var degrees = 1; degrees <= 720; degrees++)
        {
            var field = new Field<Angle>(
                "a",
                "an angle",
                degrees * Math.PI / 180,
                degrees * Math.PI / 180
            );
            Assert.NotNull(field.Read($"{degrees}°").Measure);
            Assert.NotNull(field.Read($"{degrees * 60}′").Measure);
        }
    }

    [Fact]
    public void Check_ThroughAPath_NamesThePlaceInTheFile()
    {
        var check = new InputCheck();
        check.Range("weld", s_diameter, Measured<Distance>.Of(5, Distance.Mm));
        check.Range("", s_diameter, Measured<Distance>.Of(500, Distance.Mm));
        check.Range("weld", s_diameter, null);
        check.Range("weld", s_diameter, Measured<Distance>.Of(50, Distance.Mm));
        check.That(true, "a", "b", "c", "d");
        check.That(false, "weld.mostLeaves", "9", "is not a workable pack", "1 to 6 leaves");
        Assert.Equal(
            ["weld.outerDiameter", "outerDiameter", "weld.mostLeaves"],
            check.Refusals.Select(r => r.Field)
        );
        Assert.Equal(
            "weld.mostLeaves: \"9\" is not a workable pack. Accepted: 1 to 6 leaves.",
            check.Refusals[2].ToString()
        );
    }

    [Fact]
    public void Band_Arithmetic_KeepsTheSmallestAndLargest()
    {
        Assert.Equal(new Band(6, 20), new Band(2, 4) * new Band(3, 5));
        Assert.Equal(new Band(0.4, 2), new Band(2, 4) / new Band(2, 5));
        Assert.Equal(new Band(4, 8), new Band(2, 4) * 2);
        Assert.Equal(new Band(3, 3), Band.Exactly(3));
    }
}
