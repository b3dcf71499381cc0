using System.Globalization;
using System.Text.Json.Nodes;
using CsCheck;
using Shaftwright.Pages.Doors;
using Shaftwright.Truing;

namespace Shaftwright.Pages.Tests;

/// <summary>Readings under the dial belong to the angles they were read at, however many are asked for.</summary>
public class DialReadingsTests
{
    private const string Turn = "turn=x1";

    [Fact]
    public async Task FortyReadings_StationTyped_AllStay_AndSoDoesTheVerdict()
    {
        // One place only stands out, and it is the 38th.
        var job = Job(
            Enumerable
                .Range(0, 40)
                .Select(i =>
                    Read(
                        9 * i,
                        i == 37 ? 0.3
                            : i % 2 == 0 ? 0.02
                            : 0.03
                    )
                )
        );
        await using var hand = await Hand.At<UnderTheDial>(job, Turn);
        var before = hand.Evaluated().Truing!.Turns[0];
        await hand.Type("station", "200 mm");
        Assert.Equal(Readings(Hand.Read(job)), Readings(hand.Job));
        Assert.Equal(before.Verdict, hand.Evaluated().Truing!.Turns[0].Verdict);
        Assert.Equal(before.RunOut, hand.Evaluated().Truing!.Turns[0].RunOut);
        Assert.False(hand.Leaves);
    }

    [Theory]
    [InlineData("4")]
    [InlineData("6")]
    [InlineData("12")]
    [InlineData("0")]
    public async Task EightReadings_AnotherNumberPicked_StayAtTheirAngles(string count)
    {
        var job = Job(Enumerable.Range(0, 8).Select(EveryFortyFive));
        await using var hand = await Hand.At<UnderTheDial>(job, Turn, "readings");
        await hand.Type("count", count);
        Assert.Equal(Readings(Hand.Read(job)), Readings(hand.Job));
        for (var i = 0; i < 8; i++)
            Assert.Contains(
                $"{45 * i}°: 0.{i + 1}0 mm",
                await hand.Screen(),
                StringComparison.Ordinal
            );
        await hand.Type("r/45°/dial", "0.22 mm");
        Assert.Equal("0.22 mm", Readings(hand.Job)[1].Dial!.Typed);
        await hand.Undo();
        await hand.Undo();
        Assert.Equal(Readings(Hand.Read(job)), Readings(hand.Job));
        Assert.False(hand.Leaves);
    }

    [Fact]
    public async Task TwelvePickedOverEight_OneTyped_GoesBetweenThem_AlsoWhenReopened()
    {
        var job = Job(Enumerable.Range(0, 8).Select(EveryFortyFive));
        await using var hand = await Hand.At<UnderTheDial>(job, Turn, "readings");
        await hand.Type("count", "12");
        await hand.Type("r/30°/dial", "0.15 mm");
        await hand.Open<UnderTheDial>(Turn, "readings");
        Assert.Equal("0.15 mm", hand.Shown("r/30°/dial"));
        await hand.Type("r/90°/dial", "");
        await hand.Type("r/90°/dial", "0.3 mm");
        Assert.Equal(
            ["0° 0.10 mm", "30° 0.15 mm", "45° 0.20 mm", "90° 0.3 mm"],
            Readings(hand.Job).Take(4).Select(r => $"{r.Angle} {r.Dial}")
        );
        Assert.Equal(9, Readings(hand.Job).Count);
    }

    [Fact]
    public async Task WithoutAJob_FewerPicked_RunOutAndHighPointAreTheSame()
    {
        await using var hand = await Hand.Without<UnderTheDial>("readings");
        for (var i = 0; i < 8; i++)
            await hand.Type(
                $"r/{45 * i}°/dial",
                (0.2 * Math.Cos(i * Math.PI / 4 - 0.5)).ToString(
                    "0.00 mm",
                    CultureInfo.InvariantCulture
                )
            );
        var before = hand.Door.Result.Truing!.Turns[0];
        await hand.Type("count", "4");
        Assert.Equal(before.RunOut, hand.Door.Result.Truing!.Turns[0].RunOut);
        Assert.Equal(before.HighPoint, hand.Door.Result.Truing!.Turns[0].HighPoint);
    }

    [Fact]
    public async Task OwnAngle_EmptiedAndTypedAgain_IsTheSameReading()
    {
        var job = Job([("10°", "0.1 mm"), ("55° ± 1°", "0.2 mm"), ("200°", "0.3 mm")]);
        await using var hand = await Hand.At<UnderTheDial>(job, Turn, "readings");
        await hand.Type("r/2/angle", "");
        Assert.Equal(Readings(Hand.Read(job)), Readings(hand.Job));
        await hand.Type("station", "200 mm");
        await hand.Type("r/2/angle", "210°");
        Assert.Equal(
            ["10° 0.1 mm", "55° ± 1° 0.2 mm", "210° 0.3 mm"],
            Readings(hand.Job).Select(r => $"{r.Angle} {r.Dial}")
        );
        Assert.False(hand.Leaves);
    }

    [Fact]
    public async Task OwnReading_WithoutItsAngle_WaitsOnThePhone()
    {
        var job = Job([("10°", "0.1 mm"), ("57°", "0.2 mm")]);
        await using var hand = await Hand.At<UnderTheDial>(job, Turn, "readings");
        await hand.Type("r/2/dial", "0.4 mm");
        await hand.Type("station", "200 mm");
        Assert.Equal(2, Readings(hand.Job).Count);
        await hand.Open<UnderTheDial>(Turn, "readings");
        Assert.Equal("0.4 mm", hand.Shown("r/2/dial"));
        await hand.Type("r/2/angle", "90°");
        Assert.Equal(
            "90° 0.4 mm",
            string.Join(' ', Readings(hand.Job)[2].Angle, Readings(hand.Job)[2].Dial)
        );
        Assert.Equal(3, Readings(hand.Job).Count);
    }

    [Fact]
    public async Task ReadElsewhereMeanwhile_IsShown_AndTheOthersKeepTheirPlaces()
    {
        var job = Job([("0°", "0.1 mm"), ("90°", "0.3 mm")]);
        await using var hand = await Hand.At<UnderTheDial>(job, Turn, "readings");
        await hand.Elsewhere(document =>
            document["truing"]!["turns"]![0]!["readings"]!
                .AsArray()
                .Insert(0, JsonNode.Parse("""{"angle":"45°","dial":"0.2 mm"}"""))
        );
        await hand.Type("r/90°/dial", "0.33 mm");
        Assert.Equal(
            ["45° 0.2 mm", "0° 0.1 mm", "90° 0.33 mm"],
            Readings(hand.Job).Select(r => $"{r.Angle} {r.Dial}")
        );
        Assert.Equal("0.2 mm", hand.Shown("r/45°/dial"));
    }

    [Fact]
    public async Task PutIntoAJob_TakesNeitherItsWeldNorItsOtherTurns()
    {
        var job = Hand.Read(
            Job([("0°", "0.1 mm")])
                .Replace("\"turns\"", "\"weldAt\":\"200 mm\",\"turns\"", StringComparison.Ordinal)
        );
        await using var hand = await Hand.Without<UnderTheDial>("readings");
        await hand.Type("r/0°/dial", "0.2 mm");
        var handed = hand.Door.Hand(job, "x2");
        Assert.Equal("200 mm", handed.Truing!.WeldAt!.Typed);
        Assert.Equal(["x1", "x2"], handed.Truing.Turns.Select(t => t.Id));
        Assert.Equal(job.Truing!.Turns[0], handed.Truing.Turns[0]);
    }

    [Fact]
    public async Task AnyReadings_NothingTypedAtThem_StayLetterForLetter()
    {
        // What a file may hold: angles twice, angles unknown, with a ± or beyond a turn, places without a reading.
        string?[] angles =
        [
            null,
            "0°",
            "30°",
            "45°",
            "51.428571428571°",
            "90°",
            "90.0°",
            "180° ± 2°",
            "270°",
            "-90°",
            "360°",
            "400°",
        ];
        string[] counts = ["4", "6", "8", "12", "0"];
        string?[] dials = [null, "0.1 mm", "0.25 ± 0.01 mm", "4 thou"];
        await Gen.Select(
                Gen.Select(
                    Gen.Int[0, angles.Length - 1].Select(i => angles[i]),
                    Gen.Int[0, dials.Length - 1].Select(i => dials[i])
                ).List[0, 14],
                Gen.Int[0, counts.Length - 1].Select(i => counts[i])
            )
            .SampleAsync(
                async (readings, count) =>
                {
                    var job = Job(readings);
                    await using var hand = await Hand.At<UnderTheDial>(job, Turn);
                    await hand.Type("station", "200 mm");
                    await hand.Type("count", count);
                    await hand.Type("limit", "0.2 mm");
                    Assert.Equal(Readings(Hand.Read(job)), Readings(hand.Job));
                },
                iter: 60,
                threads: 1
            );
    }

    private static (string?, string?) EveryFortyFive(int i) => Read(45 * i, 0.1 * (i + 1));

    private static (string?, string?) Read(int degrees, double mm) =>
        (degrees + "°", mm.ToString("0.00 mm", CultureInfo.InvariantCulture));

    private static IReadOnlyList<DialReading> Readings(Job job) => job.Truing!.Turns[0].Readings;

    private static string Job(IEnumerable<(string?, string?)> readings)
    {
        var list = new JsonArray();
        foreach (var (angle, dial) in readings)
        {
            var reading = new JsonObject();
            if (angle is not null)
                reading["angle"] = angle;
            if (dial is not null)
                reading["dial"] = dial;
            list.Add(reading);
        }
        return new JsonObject
        {
            ["truing"] = new JsonObject
            {
                ["turns"] = new JsonArray(
                    new JsonObject
                    {
                        ["id"] = "x1",
                        ["moment"] = "buttWelded",
                        ["support"] = "centres",
                        ["readings"] = list,
                    }
                ),
            },
        }.ToJsonString();
    }
}
