using System.Text.Json.Nodes;
using CsCheck;
using Shaftwright.JobFile;

namespace Shaftwright.Records.Tests.JobFile;

public sealed class EditsTests
{
    private static readonly DateTimeOffset s_at = new(2026, 5, 3, 14, 20, 0, TimeSpan.Zero);

    private static Edit At(string path, string? value, string? was = null) =>
        new(
            Guid.NewGuid(),
            "job-1",
            s_at,
            "bench phone",
            path,
            value is null ? null : JsonNode.Parse(value),
            was is null ? null : JsonNode.Parse(was)
        );

    [Theory]
    [InlineData("/name", "\"new name\"", "name")]
    [InlineData("/corner/readings/1/in", "\"10 mm\"", "corner.readings[1].in")]
    [InlineData("/corner/readings/1/outerAngle", "7.5", "corner.readings[1].outerAngle")]
    [InlineData("/length/chosen", "\"455.1 mm\"", "length.chosen")]
    [InlineData(
        "/donors/innerEnd/zones/-",
        """{"until":"40 mm","diameter":27.3}""",
        "donors.innerEnd.zones[0]"
    )]
    [InlineData("/donors/innerEnd/zones/0/until", "\"40 mm\"", "donors.innerEnd.zones[0].until")]
    [InlineData("/corner/readings/-", """{"travel":60}""", "corner.readings[2]")]
    [InlineData("/corner/readings/2", """{"travel":60}""", "corner.readings[2]")]
    public void Apply_ASet_PutsTheValueThereAndNothingElse(string path, string value, string field)
    {
        var before = ExampleJob.Object();
        var untouched = before.ToJsonString();

        var after = Edits.Apply(before, At(path, value));

        Assert.Equal(untouched, before.ToJsonString());
        JsonNode? at = after;
        foreach (var token in FieldPath.Tokens(FieldPath.ToEditPath(field), 16)!)
            at = at is JsonArray list
                ? list[int.Parse(token, System.Globalization.CultureInfo.InvariantCulture)]
                : at![token];
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(value), at));
        Assert.NotNull(JobJson.Read(after).Document);
    }

    [Fact]
    public void Apply_NoValue_RemovesAFieldOrAnEntryAndToleratesAbsence()
    {
        var job = ExampleJob.Object();
        job = Edits.Apply(job, At("/car/grip", null));
        job = Edits.Apply(job, At("/corner/readings/0", null));
        job = Edits.Apply(job, At("/donors/innerEnd/name", null));
        Assert.False(job["car"]!.AsObject().ContainsKey("grip"));
        Assert.Equal(
            "3/8 in",
            (string?)Assert.Single(job["corner"]!["readings"]!.AsArray())!["in"]
        );
        Assert.False(job.ContainsKey("donors"));
    }

    [Fact]
    public void TryApply_TheWholeDocument_BeginsAJobAndNothingElseDoes()
    {
        var begun = Edits.TryApply(null, At("", """{"format":1,"name":"new"}"""));
        Assert.True(begun.Accepted);
        Assert.Equal("new", (string?)begun.Document!["name"]);
        Assert.False(Edits.TryApply(null, At("/name", "\"new\"")).Accepted);
        Assert.False(Edits.TryApply(null, At("", null)).Accepted);
        Assert.False(Edits.TryApply(ExampleJob.Object(), At("", null)).Accepted);
    }

    [Theory]
    [InlineData("/corner/readings/0/in", "\"27 bananas\"", "corner.readings[0].in")]
    [InlineData("/corner/readings/0/inn", "5", "corner.readings[0].inn")]
    [InlineData("/corner/readings/7", "{}", "corner.readings[7]")]
    [InlineData("/corner/readings/01", "{}", "corner.readings[01]")]
    [InlineData("/corner/readings/x", "{}", "corner.readings[x]")]
    [InlineData("/name/first", "\"x\"", "name")]
    [InlineData("corner", "{}", "path")]
    [InlineData("/na~2me", "\"x\"", "path")]
    [InlineData("/a/b/c/d/e/f/g/h/i/j/k/l/m/n/o/p/q", "1", "path")]
    [InlineData("/format", "2", "format")]
    [InlineData("/format", null, "format")]
    [InlineData("", "[]", "file")]
    [InlineData("", """{"format":1,"name":"a","name":"b"}""", "name")]
    [InlineData("/car", """{"grip":1,"grip":2}""", "grip")]
    public void TryApply_WhatWouldNotBeAJob_IsRefusedByPath(
        string path,
        string? value,
        string field
    )
    {
        var outcome = Edits.TryApply(ExampleJob.Object(), At(path, value));
        Assert.False(outcome.Accepted);
        Assert.Equal(field, Assert.Single(outcome.Refusals).Field);
        Assert.Throws<EditRefusedException>(() =>
            Edits.Apply(ExampleJob.Object(), At(path, value))
        );
    }

    [Fact]
    public void TryApply_AnEntryThatShiftedSinceItWasSeen_IsRefused()
    {
        var seen = ExampleJob.Object();
        var entry = seen["corner"]!["readings"]![1]!.ToJsonString();
        var shifted = Edits.Apply(seen, At("/corner/readings/0", null));

        Assert.False(Edits.TryApply(shifted, At("/corner/readings/1", null, entry)).Accepted);
        Assert.False(
            Edits.TryApply(shifted, At("/corner/readings/0/in", "\"7 mm\"", "\"6.5 mm\"")).Accepted
        );
        Assert.True(Edits.TryApply(shifted, At("/corner/readings/0", null, entry)).Accepted);
        // 24 typed as a number or as text is the same reading.
        Assert.True(
            Edits.TryApply(shifted, At("/corner/readings/0/out", "25", "\"24.0\"")).Accepted
        );
    }

    [Fact]
    public void TryApply_AnEntrySeenInFull_IsTheSameAsOneLeftShort()
    {
        var job = Edits.Apply(ExampleJob.Object(), At("/corner/readings/-", """{"travel":60}"""));
        var inFull = """{"travel":"60","steering":"straight"}""";
        Assert.True(Edits.TryApply(job, At("/corner/readings/2", null, inFull)).Accepted);
        var other = """{"travel":"60","steering":"fullLeft"}""";
        Assert.False(Edits.TryApply(job, At("/corner/readings/2", null, other)).Accepted);
        Assert.False(Edits.TryApply(job, At("/corner/readings/-", "{}", inFull)).Accepted);
        Assert.False(Edits.TryApply(job, At("/corner/readings/3", "{}", inFull)).Accepted);
    }

    [Fact]
    public void TryApply_AFieldSetByTwoProgramsThatLookAtNothing_HoldsWhatArrivedLast()
    {
        var job = Edits.Apply(ExampleJob.Object(), At("/name", "\"first\""));
        job = Edits.Apply(job, At("/name", "\"second\""));
        Assert.Equal("second", (string?)job["name"]);
    }

    [Theory]
    [InlineData("/records/signOffs/0", null)]
    [InlineData("/records/signOffs/1", null)]
    [InlineData("/records/signOffs", null)]
    [InlineData("/records", null)]
    [InlineData("/records/signOffs/0/note", "\"something else\"")]
    [InlineData("", """{"format":1}""")]
    public void TryApply_WhatWouldEraseASignOff_IsRefused(string path, string? value)
    {
        var outcome = Edits.TryApply(ExampleJob.Object(), At(path, value));
        Assert.StartsWith(
            "records.signOffs[",
            Assert.Single(outcome.Refusals).Field,
            StringComparison.Ordinal
        );
        Assert.Contains("withdrawn", outcome.Refusals[0].Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void Apply_ALaterSignOff_IsAdded()
    {
        var job = Edits.Apply(
            ExampleJob.Object(),
            At(
                "/records/signOffs/-",
                """{"id":"s3","operation":"measure-corner","at":"2026-05-05T08:00:00Z"}"""
            )
        );
        Assert.Equal("s3", JobJson.Read(job).Document!.Records.Standing("measure-corner")!.Id);
    }

    [Theory]
    [InlineData("/press/strokes/0", null)]
    [InlineData("/press/strokes", null)]
    [InlineData("/press", null)]
    [InlineData("/press/strokes/0/depth", "\"2.4 mm\"")]
    [InlineData("/press/strokes/0/crackSign", null)]
    public void TryApply_WhatWouldEraseAStroke_IsRefused(string path, string? value)
    {
        var outcome = Edits.TryApply(Pressed(), At(path, value));
        Assert.StartsWith(
            "press.strokes[",
            Assert.Single(outcome.Refusals).Field,
            StringComparison.Ordinal
        );
        Assert.Contains("corrects", outcome.Refusals[0].Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void Apply_ALaterStroke_CorrectsTheOneBeforeAndLeavesItStanding()
    {
        var job = Edits.Apply(
            Pressed(),
            At("/press/strokes/-", """{"id":"b","corrects":"a","depth":"2.4 mm"}""")
        );
        var press = JobJson.Read(job).Document!.Job.Press!;
        Assert.Equal(2, press.Strokes.Count);
        Assert.Equal("2.4 mm", Assert.Single(press.Standing()).Depth!.Typed);
        job = Edits.Apply(
            job,
            At("/press/strokes/-", """{"id":"c","corrects":"a","withdrawn":true}""")
        );
        Assert.Empty(JobJson.Read(job).Document!.Job.Press!.Standing());
    }

    private static JsonObject Pressed() =>
        Edits.Apply(
            ExampleJob.Object(),
            At("/press", """{"strokes":[{"id":"a","depth":"2.2 mm","crackSign":true}]}""")
        );

    [Fact]
    public void Apply_PuttingAJobAway_CanBeUndone()
    {
        var job = Edits.Apply(
            ExampleJob.Object(),
            At("/records/putAway", "\"2026-05-05T08:00:00Z\"")
        );
        Assert.NotNull(JobJson.Read(job).Document!.Records.PutAway);
        job = Edits.Apply(job, At("/records/putAway", null));
        Assert.Null(JobJson.Read(job).Document!.Records.PutAway);
        Assert.Equal(ExampleJob.Text, JobJson.Write(JobJson.Read(job).Document!));
    }

    [Theory]
    [InlineData("/a~1b/m~0n/~01", new[] { "a/b", "m~n", "~1" })]
    [InlineData("/", new[] { "" })]
    [InlineData("/c%d/e^f/ ", new[] { "c%d", "e^f", " " })]
    public void Tokens_OfRfc6901_AreUnescaped(string path, string[] tokens) =>
        Assert.Equal(tokens, FieldPath.Tokens(path, 16));

    [Fact]
    public void TryApply_AnyEditOnAnyJob_GivesAReadableJobOrReasons()
    {
        string[] tokens =
        [
            "",
            "-",
            "0",
            "1",
            "9",
            "name",
            "corner",
            "readings",
            "in",
            "travel",
            "records",
            "signOffs",
            "weld",
            "blades",
            "donors",
            "innerEnd",
            "zones",
            "until",
            "format",
            "a~1b",
            "~",
        ];
        string?[] values =
        [
            null,
            "1",
            "\"5 mm\"",
            "{}",
            "[]",
            "true",
            "[{}]",
            """{"x":1}""",
            "\"left\"",
        ];
        Gen.Select(Gen.Int, Gen.OneOf(tokens).Array[0, 5], Gen.OneOf(values), Gen.OneOf(values))
            .Sample(
                (seed, path, value, was) =>
                {
                    var job = RandomJob.Of(seed);
                    var before = job.ToJsonString();
                    var outcome = Edits.TryApply(
                        job,
                        At(string.Concat(path.Select(t => "/" + t)), value, was)
                    );
                    Assert.Equal(before, job.ToJsonString());
                    Assert.Equal(outcome.Accepted, outcome.Refusals.Count == 0);
                    if (outcome.Document is { } document)
                        Assert.NotNull(JobJson.Read(document).Document);
                },
                iter: 500
            );
    }
}
