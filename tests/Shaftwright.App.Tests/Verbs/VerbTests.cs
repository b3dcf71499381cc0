using System.Text.Json;
using Json.Schema;
using Shaftwright.App.Tests.Drawings;
using Shaftwright.JobFile;

namespace Shaftwright.App.Tests.Verbs;

public class VerbTests
{
    private const string Plover = "examples/grass-track-left-rear.swjob.json";
    private const string Pickup = "examples/electric-pickup-right-front.swjob.json";

    private const string Knot = "examples/mud-trial-left-front.swjob.json";

    private const string Dunlin = "examples/hill-climb-right-rear.swjob.json";

    /// <summary>Text for people against approved files, one a case. SHAFTWRIGHT_APPROVE=1 writes them anew, to be read before they are committed.</summary>
    [Theory]
    [InlineData("length", 0, "length", Plover)]
    [InlineData("length-inch", 0, "length", Plover, "--units", "inch")]
    [InlineData("length-none", 1, "length", Pickup)]
    [InlineData("shelf", 0, "shelf", Plover, "--from", "examples/shelf.csv")]
    [InlineData("length-linkage", 0, "length", Knot)]
    [InlineData("length-cars", 0, "length", Plover, "--cars", "700", "--seed", "3")]
    [InlineData("share", 0, "share", Plover, "--from", "examples/shelf.csv", "--spares", "1")]
    [InlineData("cut", 0, "cut", Plover)]
    [InlineData("strength", 0, "strength", Plover)]
    [InlineData("weld", 0, "weld", Plover)]
    [InlineData("weld-inch", 0, "weld", Plover, "--units", "inch")]
    [InlineData("truing", 1, "truing", Dunlin)]
    [InlineData("truing-inch", 1, "truing", Dunlin, "--units", "inch")]
    [InlineData("new", 0, "new", "--name", "Left \"rear\"")]
    [InlineData("help", 0, "--help")]
    public async Task Verb_ForPeople_SaysWhatWasApproved(
        string file,
        int code,
        params string[] args
    )
    {
        var ran = await Shell.Run(args);
        Assert.Equal("", ran.Error);
        Assert.Equal(code, ran.Code);
        var path = Path.Combine(
            Samples.Repository,
            "tests/Shaftwright.App.Tests/Verbs/Approved",
            file + ".txt"
        );
        if (Environment.GetEnvironmentVariable("SHAFTWRIGHT_APPROVE") == "1")
            await File.WriteAllTextAsync(path, ran.Out, TestContext.Current.CancellationToken);
        Assert.Equal(
            await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken),
            ran.Out
        );
    }

    [Fact]
    public async Task Truing_OfAJobWithAPress_TellsTheNextStrokeInWordsAndNumbers()
    {
        var job = """
            {
              "format": 1,
              "name": "Lapwing",
              "truing": { "turns": [ { "id": "t", "moment": "buttWelded", "support": "centres", "station": "280 mm", "readings": [
                { "angle": "0°", "dial": "0.50 mm" }, { "angle": "45°", "dial": "0.35 mm" }, { "angle": "90°", "dial": "0 mm" }, { "angle": "135°", "dial": "-0.35 mm" },
                { "angle": "180°", "dial": "-0.50 mm" }, { "angle": "225°", "dial": "-0.35 mm" }, { "angle": "270°", "dial": "0 mm" }, { "angle": "315°", "dial": "0.35 mm" } ] } ] },
              "press": { "tempered": true, "diameter": "26 mm", "length": "560 mm" }
            }
            """;
        var said = await Shell.Run(["truing", "-"], job);
        Assert.Equal(1, said.Code);
        Assert.Contains("past contact", said.Out, StringComparison.Ordinal);
        Assert.Contains("not on your shaft", said.Out, StringComparison.Ordinal);
        var ran = await Shell.Run(["truing", "-", "--json"], job);
        using var json = JsonDocument.Parse(ran.Out);
        var press = json.RootElement.GetProperty("press");
        Assert.Equal("press", press.GetProperty("step").GetString());
        Assert.Equal(280, press.GetProperty("plan").GetProperty("ramAt").GetDouble(), 1e-9);
        Assert.InRange(press.GetProperty("plan").GetProperty("depth").GetDouble(), 1, 6);
    }

    [Theory]
    [InlineData("{\"format\":1,\"corner\":{}}")]
    [InlineData("{\"format\":1,\"corner\":{\"readings\":[]}}")]
    public async Task Length_OfACornerWithoutReadings_Exits2(string job)
    {
        var ran = await Shell.Run(["length", "-"], job);
        Assert.Equal(2, ran.Code);
        Assert.Equal("", ran.Out);
        Assert.Contains("corner.readings", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("no verb")]
    [InlineData("an unknown verb", "lenght", Plover)]
    [InlineData("no job", "length")]
    [InlineData("two jobs", "length", Plover, Pickup)]
    [InlineData("an unknown option", "length", Plover, "--yaml")]
    [InlineData("unknown units", "length", Plover, "--units", "furlong")]
    [InlineData("a missing file", "length", "nowhere/none.swjob.json")]
    [InlineData("a folder", "length", "examples")]
    [InlineData("a file that is no job", "cut", "README.md")]
    [InlineData("nothing for the verb", "strength", Pickup)]
    [InlineData("no turn under the dial", "truing", Pickup)]
    [InlineData("a folder to write to", "sheet", Plover, "--out", "examples")]
    [InlineData("a port that is no number", "serve", "--port", "abc")]
    [InlineData("a port that is no whole number", "serve", "--port", "80.5")]
    [InlineData("a port below the first", "serve", "--port", "-1")]
    [InlineData("a port beyond the last", "serve", "--port", "70000")]
    [InlineData("a port left out", "serve", "--port")]
    [InlineData(
        "a name too long",
        "new",
        "--name",
        "x23456789 x23456789 x23456789 x23456789 x23456789 x23456789 x23456789 x23456789 x23456789 x23456789 x23456789 x23456789 x"
    )]
    public async Task Verb_BadUsageOrInput_Exits2WithWordsAndNothingOnOutput(
        string what,
        params string[] args
    )
    {
        var ran = await Shell.Run(args);
        Assert.Equal((what, 2), (what, ran.Code));
        Assert.Equal("", ran.Out);
        Assert.True(ran.Error.Length > 20, what);
        Assert.DoesNotContain("   at ", ran.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("fault of its own", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Length_MalformedReading_NamesTheFieldAndWhatIsAccepted()
    {
        var job = (
            await File.ReadAllTextAsync(
                Path.Combine(Samples.Repository, Plover),
                TestContext.Current.CancellationToken
            )
        ).Replace("\"10.8 mm\"", "\"10.8 furlongs\"", StringComparison.Ordinal);
        var ran = await Shell.Run(["length", "-"], job);
        Assert.Equal(2, ran.Code);
        Assert.Contains("corner.readings[1].in", ran.Error, StringComparison.Ordinal);
        Assert.Contains("10.8 furlongs", ran.Error, StringComparison.Ordinal);
        Assert.Contains("Accepted", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("length", Plover, 0)]
    [InlineData("length", Pickup, 1)]
    [InlineData("cut", Plover, 0)]
    [InlineData("weld", Plover, 0)]
    [InlineData("strength", Plover, 0)]
    [InlineData("truing", Dunlin, 1)]
    public async Task Verb_AsJson_HoldsTheResultTheLibraryGives(string verb, string job, int code)
    {
        var ran = await Shell.Run([verb, job, "--json"]);
        Assert.Equal(code, ran.Code);
        using var json = JsonDocument.Parse(ran.Out);
        var root = json.RootElement;
        Assert.Equal(verb, root.GetProperty("verb").GetString());
        Assert.Equal(code == 1, root.GetProperty("stop").GetBoolean());
        var result = Workflow.Evaluate(
            Samples
                .Example(Path.GetFileName(job).Replace(".swjob.json", "", StringComparison.Ordinal))
                .Job
        );
        var shown = root.GetProperty("result");
        switch (verb)
        {
            case "length":
                Assert.Equal(
                    result.Length!.Shortest!.Length,
                    shown.GetProperty("shortest").GetProperty("length").GetDouble()
                );
                Assert.Equal(
                    result.Length.Positions.Count,
                    shown.GetProperty("positions").GetArrayLength()
                );
                break;
            case "cut":
                Assert.Equal(result.Cut!.InnerAt, shown.GetProperty("innerAt").GetDouble());
                break;
            case "weld":
                Assert.Equal(
                    result.Weld!.Heat!.MethodB.High,
                    shown.GetProperty("heat").GetProperty("methodB").GetProperty("high").GetDouble()
                );
                Assert.Equal(
                    result.Beads!.All.Count,
                    root.GetProperty("beads").GetProperty("all").GetArrayLength()
                );
                break;
            case "truing":
                Assert.Equal(
                    result.Truing!.Turns[1].Offset,
                    shown.GetProperty("turns")[1].GetProperty("offset").GetDouble()
                );
                Assert.Equal(
                    result.Truing.Shape!.Likeliest.Kink.Size,
                    shown
                        .GetProperty("shape")
                        .GetProperty("likeliest")
                        .GetProperty("kink")
                        .GetProperty("size")
                        .GetDouble()
                );
                Assert.Equal(
                    "kink",
                    shown
                        .GetProperty("shape")
                        .GetProperty("likeliest")
                        .GetProperty("kind")
                        .GetString()
                );
                break;
            default:
                Assert.Equal(
                    result.Strength!.Weakest!.YieldTorque.Low,
                    shown
                        .GetProperty("weakest")
                        .GetProperty("yieldTorque")
                        .GetProperty("low")
                        .GetDouble()
                );
                break;
        }
        foreach (var finding in root.GetProperty("findings").EnumerateArray())
        {
            foreach (var name in new[] { "severity", "stage", "code", "text", "action", "source" })
                Assert.False(
                    string.IsNullOrWhiteSpace(finding.GetProperty(name).GetString()),
                    name
                );
        }
    }

    [Fact]
    public async Task Verb_JobOnStandardInput_SaysTheSameAsFromAFile()
    {
        var text = await File.ReadAllTextAsync(
            Path.Combine(Samples.Repository, Plover),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(await Shell.Run(["length", Plover]), await Shell.Run(["length", "-"], text));
    }

    [Fact]
    public async Task New_ItsJob_IsReadByEveryVerbAndValidBySchema()
    {
        var job = (await Shell.Run(["new", "--name", "Bench"])).Out;
        var document = JobJson.Read(job);
        Assert.Empty(document.Refusals);
        Assert.Equal("Bench", document.Document!.Job.Name);
        var schema = JsonSchema.FromText((await Shell.Run(["schema"])).Out);
        using var json = JsonDocument.Parse(job);
        Assert.True(schema.Evaluate(json.RootElement).IsValid);
        var sheet = await Shell.Run(["sheet", "-"], job);
        Assert.StartsWith("<!DOCTYPE html>", sheet.Out, StringComparison.Ordinal);
        Assert.InRange(sheet.Code, 0, 1);
    }

    [Fact]
    public async Task New_FileThatIsThere_IsNotOverwritten()
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".swjob.json");
        try
        {
            var first = await Shell.Run(["new", "--out", file]);
            Assert.Equal(0, first.Code);
            Assert.Contains("corner.readings[].in", first.Out, StringComparison.Ordinal);
            var written = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
            var again = await Shell.Run(["new", "--name", "other", "--out", file]);
            Assert.Equal(2, again.Code);
            Assert.Contains("not overwritten", again.Error, StringComparison.Ordinal);
            Assert.Equal(
                written,
                await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken)
            );
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public async Task Sheet_ToAFile_WritesItAndLeavesOutputEmpty()
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".html");
        try
        {
            var ran = await Shell.Run(["sheet", Pickup, "--out", file]);
            Assert.Equal((1, ""), (ran.Code, ran.Out));
            var html = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
            Assert.Contains("Electric pickup", html, StringComparison.Ordinal);
            // Needs nothing beside it.
            Assert.DoesNotContain(
                "http",
                html.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal),
                StringComparison.Ordinal
            );
            Assert.DoesNotContain("<link", html, StringComparison.Ordinal);
            Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
