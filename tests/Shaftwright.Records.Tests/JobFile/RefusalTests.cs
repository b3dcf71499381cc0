using System.Text.Json.Nodes;
using Shaftwright.JobFile;
using Shaftwright.Measures;

namespace Shaftwright.Records.Tests.JobFile;

/// <summary>What is refused, by which name, and what is offered instead.</summary>
public sealed class RefusalTests
{
    [Theory]
    [InlineData(
        """{"format":1,"corner":{"trialLenght":431}}""",
        "corner.trialLenght",
        "431",
        "trialLength"
    )]
    [InlineData("""{"format":1,"colour":"red"}""", "colour", "red", "name")]
    [InlineData(
        """{"format":1,"corner":{"readings":[{},{},{"in":"27.3 bananas"}]}}""",
        "corner.readings[2].in",
        "27.3 bananas",
        "27.30 mm"
    )]
    [InlineData(
        """{"format":1,"corner":{"readings":[{"in":"27 mil"}]}}""",
        "corner.readings[0].in",
        "27 mil",
        "thou"
    )]
    [InlineData(
        """{"format":1,"corner":{"readings":[{"in":true}]}}""",
        "corner.readings[0].in",
        "true",
        "27.30 mm"
    )]
    [InlineData(
        """{"format":1,"corner":{"trialLength":null}}""",
        "corner.trialLength",
        "null",
        "27.30 mm"
    )]
    [InlineData(
        """{"format":1,"corner":{"trialLength":1e300}}""",
        "corner.trialLength",
        "1e300",
        "50 to 2000 mm"
    )]
    [InlineData(
        """{"format":1,"corner":{"trialLength":"3 m"}}""",
        "corner.trialLength",
        "3 m",
        "0.05 to 2 m"
    )]
    [InlineData(
        """{"format":1,"corner":{"readings":[{"steering":"left"}]}}""",
        "corner.readings[0].steering",
        "left",
        "straight, fullLeft, fullRight"
    )]
    [InlineData(
        """{"format":1,"corner":{"readings":[{"steering":"FullLeft"}]}}""",
        "corner.readings[0].steering",
        "FullLeft",
        "fullLeft"
    )]
    [InlineData(
        """{"format":1,"corner":{"conditions":{"springOut":"yes"}}}""",
        "corner.conditions.springOut",
        "yes",
        "true or false"
    )]
    [InlineData("""{"format":1,"corner":[]}""", "corner", "[…]", "{…}")]
    [InlineData("""{"format":1,"corner":{"readings":{}}}""", "corner.readings", "{…}", "[…]")]
    [InlineData("""{"format":1,"weld":{"mostLeaves":2.5}}""", "weld.mostLeaves", "2.5", "1 to 6")]
    [InlineData("""{"format":1,"weld":{"blades":[0.1,"x"]}}""", "weld.blades[1]", "x", "mm")]
    [InlineData("""{"format":1,"name":7}""", "name", "7", "text")]
    [InlineData(
        """{"format":1,"records":{"signOffs":[{"operation":"cut","at":"2026-05-03T14:20:00Z"}]}}""",
        "records.signOffs[0].id",
        "",
        "unique"
    )]
    [InlineData(
        """{"format":1,"records":{"signOffs":[{"id":"a","operation":"cut","at":"2026-05-03 14:20"}]}}""",
        "records.signOffs[0].at",
        "2026-05-03 14:20",
        "+02:00"
    )]
    [InlineData("""{"name":"no format"}""", "format", "", "1")]
    [InlineData("""{"format":"1"}""", "format", "\"1\"", "1")]
    [InlineData("""{"format":2}""", "format", "2", "1")]
    [InlineData("""{"format":0}""", "format", "0", "1")]
    [InlineData("[]", "file", "[…]", "{…}")]
    [InlineData("null", "file", "null", "{…}")]
    [InlineData("", "file", "", "JSON")]
    [InlineData(
        "{\n  \"format\": 1, // one\n}",
        "file",
        "\"format\": 1, // one",
        "without comments"
    )]
    public void Read_WhatIsWrong_IsNamedWithItsValueAndWhatIsAccepted(
        string json,
        string field,
        string value,
        string accepted
    )
    {
        var reading = JobJson.Read(json);

        Assert.Null(reading.Document);
        var refusal = Assert.Single(reading.Refusals);
        Assert.Equal(field, refusal.Field);
        Assert.Equal(value, refusal.Value);
        Assert.Contains(accepted, refusal.Accepted, StringComparison.Ordinal);
        Assert.NotEmpty(refusal.Problem);
    }

    [Theory]
    [InlineData("""{"format":1,"name":"a","name":"b"}""", "name")]
    [InlineData(
        """{"format":1,"corner":{"readings":[{"in":1},{"in":1,"out":2,"in":3}]}}""",
        "corner.readings[1].in"
    )]
    [InlineData(
        """{"format":1,"corner":{"trialLength":400},"corner":{"trialLength":500}}""",
        "corner"
    )]
    [InlineData("""{"format":1,"corner":{"readings":[],"\u0072eadings":[]}}""", "corner.readings")]
    public void Read_AFieldThatStandsTwice_IsRefusedByItsPath(string json, string path)
    {
        var refusal = Assert.Single(JobJson.Read(json).Refusals);
        Assert.Equal(path, refusal.Field);
        Assert.Contains("twice", refusal.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SeveralThingsWrong_NamesThemAllInOneLook()
    {
        var reading = JobJson.Read(
            """
            {"format":1,"colour":"red","corner":{"trialLength":"9 m","readings":[{"in":"x"},{"travel":900,"steering":"up"}]},
             "donors":{"innerEnd":{"zones":[{"until":10},{"until":5}]}}}
            """
        );
        Assert.Equal(
            [
                "colour",
                "corner.readings[0].in",
                "corner.readings[1].steering",
                "corner.readings[1].travel",
                "corner.trialLength",
                "donors.innerEnd.zones[1].until",
            ],
            reading.Refusals.Select(r => r.Field).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void Read_TooLargeTooDeepOrTooLong_IsRefused()
    {
        var large = JobJson.Read(
            $$"""{"format":1,"name":"{{new string('x', 4 * 1024 * 1024)}}"}"""
        );
        Assert.Contains("too large", large.Refusals[0].Problem, StringComparison.Ordinal);
        var deep = JobJson.Read(new string('[', 100_000));
        Assert.Contains("not JSON", deep.Refusals[0].Problem, StringComparison.Ordinal);
        var list = string.Join(',', Enumerable.Repeat("{}", 201));
        var many = JobJson.Read($$$"""{"format":1,"corner":{"readings":[{{{list}}}]}}""");
        Assert.Contains("at most 200", many.Refusals[0].Accepted, StringComparison.Ordinal);
        var name = JobJson.Read($$"""{"format":1,"name":"{{new string('x', 121)}}"}""");
        Assert.Equal("name", name.Refusals[0].Field);
        Assert.True(name.Refusals[0].Value.Length <= 60);
    }

    [Theory]
    [InlineData("{\"format\":1,\"name\":\"\\ud800\"}")]
    [InlineData("{\"format\":1,\"\\udc00\":1}")]
    public void Read_HalfACharacter_IsRefused(string json) =>
        Assert.Equal("file", Assert.Single(JobJson.Read(json).Refusals).Field);

    [Fact]
    public void Read_HalfACharacterBare_IsRefused() =>
        Assert.Equal(
            "file",
            Assert.Single(JobJson.Read("{\"format\":1,\"name\":\"\ud800\"}").Refusals).Field
        );

    [Fact]
    public void Read_TwoSignOffsWithOneId_IsRefused()
    {
        var job = ExampleJob.Object();
        job["records"]!["signOffs"]![1]!["id"] = "s1";
        Assert.Equal("records.signOffs[1].id", Assert.Single(JobJson.Read(job).Refusals).Field);
    }

    [Fact]
    public void Read_AnObjectThatNoTextCanHold_IsRefusedNotThrown()
    {
        var deep = new JsonObject { ["format"] = 1 };
        JsonNode at = deep;
        for (var i = 0; i < 200; i++)
        {
            at["x"] = new JsonObject();
            at = at["x"]!;
        }
        Assert.NotEmpty(JobJson.Read(deep).Refusals);
        // A parsed node keeps both of a repeated name until it is looked at.
        var twice = JsonNode.Parse("""{"format":1,"name":"a","name":"b"}""")!.AsObject();
        Assert.Equal("name", Assert.Single(JobJson.Read(twice).Refusals).Field);
    }

    [Fact]
    public void ToString_OfARefusal_IsOneSentenceForAPerson()
    {
        var refusal = JobJson.Read("""{"format":1,"side":"port"}""").Refusals[0];
        Assert.Equal(
            "side: \"port\" is not one of the words. Accepted: unsaid, left, right.",
            refusal.ToString()
        );
    }
}
