using System.Text.Json.Nodes;
using Shaftwright.JobFile;
using Shaftwright.Pages.Outbox;

namespace Shaftwright.Pages.Tests;

/// <summary>What a device sends of a change, applied after another device's.</summary>
public class ChangesTests
{
    private const string Begun = """
        {"format":1,"name":"Heron","weld":{"innerDiameter":"26.2 mm"},
         "corner":{"trialLength":"412 mm","readings":[{"travel":"0 mm","steering":"straight","in":"10 mm","out":"16 mm"}]},
         "truing":{"turns":[{"id":"t1","moment":"tacked","readings":[{"angle":"0°","dial":"0.1 mm"},{"angle":"180°","dial":"0.3 mm"}]}]}}
        """;

    private static JsonObject Start() =>
        JobJson.WriteObject(JobJson.Read(JsonNode.Parse(Begun)!.AsObject()).Document!);

    /// <summary>A device on which a document is changed step by step; answers all it will send.</summary>
    private static List<Edit> Work(string device, params Action<JsonObject>[] steps)
    {
        var edits = new List<Edit>();
        var held = Start();
        foreach (var step in steps)
        {
            var after = held.DeepClone().AsObject();
            step(after);
            after = JobJson.WriteObject(JobJson.Read(after).Document!);
            var made = Changes.Between(
                "j",
                held,
                after,
                new(2026, 5, 3, 9, 0, 0, TimeSpan.Zero),
                device
            );
            foreach (var edit in made)
                held = Edits.Apply(held, edit);
            Assert.Equal(after.ToJsonString(), held.ToJsonString());
            edits.AddRange(made);
        }
        return edits;
    }

    private static JsonArray Readings(JsonObject job) => job["corner"]!["readings"]!.AsArray();

    private static JsonArray Dial(JsonObject job) =>
        job["truing"]!["turns"]![0]!["readings"]!.AsArray();

    private static List<Edit> Walker(
        string device,
        string travel,
        string inner,
        string angle,
        int place
    ) =>
        Work(
            device,
            job => job["weld"]!["innerDiameter"] = inner,
            job =>
                Readings(job)
                    .Add(
                        (JsonNode)new JsonObject { ["travel"] = travel, ["steering"] = "straight" }
                    ),
            job => Readings(job)[1]!["in"] = "14 mm",
            job => Readings(job)[1]!["out"] = "10 mm",
            job =>
                Dial(job).Insert(place, new JsonObject { ["angle"] = angle, ["dial"] = "0.2 mm" }),
            job => Dial(job)[place]!["dial"] = "0.25 mm"
        );

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Between_TwoDevicesStepByStep_KeepsEachReadingWholeInEitherOrder(
        bool firstArrivesFirst
    )
    {
        var first = Walker("a", "-90 mm", "27.30 mm", "90°", 1);
        var second = Walker("b", "70 mm", "27.40 mm", "270°", 2);
        var job = Start();
        foreach (var edit in firstArrivesFirst ? first.Concat(second) : second.Concat(first))
            job = Edits.Apply(job, edit);

        Assert.Equal(
            ["-90 mm 14 mm 10 mm", "0 mm 10 mm 16 mm", "70 mm 14 mm 10 mm"],
            Readings(job)
                .Select(r => $"{r!["travel"]} {r["in"]} {r["out"]}")
                .Order(StringComparer.Ordinal)
        );
        Assert.Equal(
            ["0° 0.1 mm", "90° 0.25 mm", "180° 0.3 mm", "270° 0.25 mm"],
            Dial(job).Select(r => $"{r!["angle"]} {r["dial"]}")
        );
        var one = Assert.Single(Disagreements.Of(JobJson.Read(job).Document!));
        Assert.Equal("/weld/innerDiameter", one.Path);
    }

    [Fact]
    public void Between_AnEntryTakenOutAndOneCorrected_SaysSoByEntry()
    {
        var edits = Work(
            "a",
            job =>
                Readings(job)
                    .Add(
                        (JsonNode)
                            new JsonObject { ["travel"] = "-90 mm", ["steering"] = "straight" }
                    ),
            job => Readings(job)[1]!["travel"] = "-95 mm",
            job => Readings(job).RemoveAt(0)
        );
        Assert.Equal(
            ["/corner/readings/-", "/corner/readings/1/travel", "/corner/readings/0"],
            edits.Select(e => e.Path)
        );
        Assert.StartsWith(
            "travel 0 mm, steering straight",
            Assert.Single(edits[2].Entries!),
            StringComparison.Ordinal
        );
    }

    /// <summary>The second edit of one place means the place as the first has left it.</summary>
    [Fact]
    public void Between_TwoFieldsOfOnePlace_BothFindItWhereAnotherCameInBefore()
    {
        const string donor = """
            {"format":1,"name":"a","donors":{"innerEnd":{"name":"a","zones":[
              {"kind":"plain","until":"60 mm","diameter":"26 mm"},
              {"kind":"plain","until":"100 mm","diameter":"25 mm"}]}}}
            """;
        var before = JsonNode.Parse(donor)!.AsObject();
        var after = JsonNode.Parse(donor)!.AsObject();
        var mine = after["donors"]!["innerEnd"]!["zones"]![1]!;
        mine["until"] = "104 mm";
        mine["diameter"] = "24.5 mm";
        var job = JsonNode.Parse(donor)!.AsObject();
        job["donors"]!["innerEnd"]!["zones"]!
            .AsArray()
            .Insert(0, JsonNode.Parse("""{"kind":"groove","until":"33 mm","diameter":"24 mm"}"""));
        foreach (var edit in Changes.Between("a", before, after, default, "phone"))
            job = Edits.Apply(job, edit);
        var zone = job["donors"]!["innerEnd"]!["zones"]![2]!;
        Assert.Equal(("104 mm", "24.5 mm"), ((string?)zone["until"], (string?)zone["diameter"]));
    }
}
