using System.Text.Json;
using Shaftwright.App.Tests.Drawings;

namespace Shaftwright.App.Tests.Verbs;

/// <summary>The verb answers for an instant, and the same file says something else an hour later.</summary>
public sealed class CrackTestVerbTests
{
    private const string Job = """
        {"format":1,"name":"Plover, left rear","crackTest":{"level":"twoX",
          "work":[{"id":"w1","kind":"buttWelded","at":"2026-05-01T18:00:00+02:00"},
                  {"id":"w2","kind":"pressed","at":"2026-05-02T15:00:00+02:00"}],
          "tests":[{"id":"t1","method":"colourPenetrant",
            "notes":[{"id":"n1","places":["buttWeld"],"partTemperature":"18 °C","light":"800 lx","makersDwell":"10 min"}],
            "steps":[{"id":"s1","step":"cleaned","at":"2026-05-03T16:00:00+02:00"},
                     {"id":"s2","step":"dried","at":"2026-05-03T16:05:00+02:00"},
                     {"id":"s3","step":"penetrantOn","at":"2026-05-03T16:10:00+02:00"}]}]}}
        """;

    private static async Task<(int Code, JsonElement Json)> At(string instant, string job = Job)
    {
        var ran = await Shell.Run(["cracktest", "-", "--at", instant, "--json"], job);
        Assert.Equal("", ran.Error);
        using var parsed = JsonDocument.Parse(ran.Out);
        return (ran.Code, parsed.RootElement.Clone());
    }

    [Theory]
    [InlineData("2026-05-03T14:16:00Z", "tooEarly", 240)]
    [InlineData("2026-05-03T16:19:59+02:00", "tooEarly", 1)]
    [InlineData("2026-05-03T16:20:00+02:00", "ready", 0)]
    [InlineData("2026-05-03T17:11:00+02:00", "tooLate", 0)]
    public async Task CrackTest_AtAnInstant_TellsTheClockOfTheTestThatRuns(
        string instant,
        string phase,
        double toDue
    )
    {
        var (code, json) = await At(instant);
        Assert.Equal(0, code);
        var state = json.GetProperty("clocks")[0].GetProperty("state");
        Assert.Equal("removed", state.GetProperty("next").GetString());
        Assert.Equal(phase, state.GetProperty("phase").GetString());
        Assert.Equal(toDue, state.GetProperty("secondsToDue").GetDouble());
        Assert.Equal(
            ["due", "due", "due"],
            json.GetProperty("demands")
                .EnumerateArray()
                .Select(d => d.GetProperty("state").GetString())
                .Select(s => s == "notYet" ? "due" : s)
        );
    }

    [Fact]
    public async Task CrackTest_TheLateTest_IsNotDueBeforeTwoDaysAreOver()
    {
        foreach (
            var (instant, state) in new[]
            {
                ("2026-05-03T17:59:00+02:00", "notYet"),
                ("2026-05-03T18:01:00+02:00", "due"),
            }
        )
            Assert.Contains(
                (await At(instant)).Json.GetProperty("demands").EnumerateArray(),
                d =>
                    d.GetProperty("kind").GetString() == "afterTwoDays"
                    && d.GetProperty("state").GetString() == state
            );
    }

    [Fact]
    public async Task CrackTest_AMarkAtTheWeld_ExitsOneAndSaysStop()
    {
        var (code, json) = await At(
            "2026-05-03T18:01:00+02:00",
            Job.Replace(
                "\"steps\"",
                "\"indications\":[{\"id\":\"m1\",\"place\":\"buttWeld\",\"length\":\"2 mm\"}],\"steps\"",
                StringComparison.Ordinal
            )
        );
        Assert.Equal(1, code);
        Assert.True(json.GetProperty("stop").GetBoolean());
        Assert.Contains(
            "stops the job",
            json.GetProperty("answer").GetString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task CrackTest_ForPeople_SaysWhatWasApproved()
    {
        var ran = await Shell.Run(["cracktest", "-", "--at", "2026-05-03T16:16:00+02:00"], Job);
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        var path = Path.Combine(
            Samples.Repository,
            "tests/Shaftwright.App.Tests/Verbs/Approved/cracktest.txt"
        );
        if (Environment.GetEnvironmentVariable("SHAFTWRIGHT_APPROVE") == "1")
            await File.WriteAllTextAsync(path, ran.Out, TestContext.Current.CancellationToken);
        Assert.Equal(
            await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken),
            ran.Out
        );
    }

    [Fact]
    public async Task CrackTest_WithoutAnInstant_TakesTheClockOfTheMachine()
    {
        var ran = await Shell.Run(["cracktest", "-", "--json"], Job);
        using var json = JsonDocument.Parse(ran.Out);
        var at = json.RootElement.GetProperty("at").GetDateTimeOffset();
        Assert.True((DateTimeOffset.Now - at).Duration() < TimeSpan.FromHours(1));
    }

    [Fact]
    public async Task CrackTest_AWeldSignedForOnly_IsWorkToTestAfter()
    {
        var (_, json) = await At(
            "2026-05-04T18:00:00Z",
            """{"format":1,"records":{"signOffs":[{"id":"a","operation":"weld","at":"2026-05-03T12:00:00Z"}]}}"""
        );
        Assert.Equal(2, json.GetProperty("demands").GetArrayLength());
    }

    [Theory]
    [InlineData("--at", "yesterday")]
    [InlineData("--at", "2026-05-03T16:16:00")]
    public async Task CrackTest_AnInstantWithoutAnOffset_IsRefused(params string[] args)
    {
        var ran = await Shell.Run(["cracktest", "-", .. args], Job);
        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains("2026-05-03T16:20:00+02:00", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task CrackTest_NothingToTestFor_Exits2()
    {
        var ran = await Shell.Run(["cracktest", "-"], """{"format":1}""");
        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains("no work to test after", ran.Error, StringComparison.Ordinal);
    }
}
