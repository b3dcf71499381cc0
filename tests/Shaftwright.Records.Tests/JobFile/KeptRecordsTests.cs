using System.Text.Json.Nodes;
using CsCheck;
using Shaftwright.JobFile;

namespace Shaftwright.Records.Tests.JobFile;

/// <summary>What was written down at the bench stays written down, whatever edit arrives.</summary>
public sealed class KeptRecordsTests
{
    internal const string Tested = """
        {"format":1,"crackTest":{
          "work":[{"id":"w1","kind":"buttWelded","at":"2026-03-01T10:00:00Z"}],
          "tests":[{"id":"t1","method":"colourPenetrant",
            "notes":[{"id":"n1","places":["buttWeld"],"light":"800 lx"}],
            "steps":[{"id":"s1","step":"cleaned","at":"2026-03-01T14:00:00+01:00"}],
            "indications":[{"id":"m1","place":"buttWeld","length":"2 mm"}]}],
          "decisions":[{"id":"d1","indication":"m1","what":"dressed","at":"2026-03-01T15:00:00Z"}]},
         "fit":{"hubNutByMaker":"215 N·m","done":[{"id":"f1","step":"pullCheck","at":"2026-03-05T15:00:00Z","pullHeld":false}]}}
        """;

    private static JsonObject Job() => JsonNode.Parse(Tested)!.AsObject();

    private static EditOutcome Edit(JsonObject job, string path, string? value) =>
        Edits.TryApply(
            job,
            new(
                Guid.NewGuid(),
                "job-1",
                new(2026, 3, 1, 16, 0, 0, TimeSpan.Zero),
                "bench phone",
                path,
                value is null ? null : JsonNode.Parse(value)
            )
        );

    [Theory]
    [InlineData("/crackTest", null, "crackTest.work[0]")]
    [InlineData("", """{"format":1}""", "crackTest.work[0]")]
    [InlineData("/crackTest/work/0", null, "crackTest.work[0]")]
    [InlineData("/crackTest/work/0/at", "\"2026-03-01T10:00:01Z\"", "crackTest.work[0]")]
    [InlineData("/crackTest/work/0/withdrawn", "true", "crackTest.work[0]")]
    [InlineData("/crackTest/tests/0", null, "crackTest.tests[0]")]
    [InlineData("/crackTest/tests/0/method", "\"magneticParticle\"", "crackTest.tests[0]")]
    [InlineData("/crackTest/tests/0/notes/0/light", "\"900 lx\"", "crackTest.tests[0].notes[0]")]
    [InlineData(
        "/crackTest/tests/0/notes/0/partTemperature",
        "\"18 °C\"",
        "crackTest.tests[0].notes[0]"
    )]
    [InlineData("/crackTest/tests/0/notes/0/places/-", "\"bar\"", "crackTest.tests[0].notes[0]")]
    [InlineData("/crackTest/tests/0/steps/0", null, "crackTest.tests[0].steps[0]")]
    [InlineData("/crackTest/tests/0/steps", null, "crackTest.tests[0].steps[0]")]
    [InlineData(
        "/crackTest/tests/0/indications/0/crack",
        "false",
        "crackTest.tests[0].indications[0]"
    )]
    [InlineData("/crackTest/decisions/0/what", "\"scrapped\"", "crackTest.decisions[0]")]
    [InlineData("/fit/done/0/pullHeld", "true", "fit.done[0]")]
    [InlineData("/fit/done", null, "fit.done[0]")]
    [InlineData("/fit", null, "fit.done[0]")]
    public void TryApply_WhatWouldChangeOrEraseAnEntry_IsRefused(
        string path,
        string? value,
        string field
    )
    {
        var refusal = Assert.Single(Edit(Job(), path, value).Refusals);
        Assert.Equal(field, refusal.Field);
        Assert.Contains("corrects", refusal.Accepted, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(
        "/crackTest/work/-",
        """{"id":"w2","kind":"pressed","at":"2026-03-01T11:00:00Z"}"""
    )]
    [InlineData(
        "/crackTest/tests/0/steps/-",
        """{"id":"s2","step":"dried","at":"2026-03-01T14:05:00+01:00"}"""
    )]
    [InlineData("/crackTest/tests/0/notes/-", """{"id":"n2","partTemperature":"18 °C"}""")]
    [InlineData(
        "/crackTest/tests/0/indications/-",
        """{"id":"m2","corrects":"m1","withdrawn":true,"place":"buttWeld"}"""
    )]
    [InlineData("/crackTest/tests/-", """{"id":"t2","method":"magneticParticle"}""")]
    [InlineData(
        "/crackTest/decisions/-",
        """{"id":"d2","corrects":"d1","indication":"m1","what":"scrapped","at":"2026-03-01T16:00:00Z"}"""
    )]
    [InlineData("/crackTest/level", "\"one\"")]
    [InlineData(
        "/fit/done/-",
        """{"id":"f2","step":"pullCheck","at":"2026-03-05T15:10:00Z","pullHeld":true}"""
    )]
    [InlineData("/fit/hubNutByMaker", "\"220 N·m\"")]
    [InlineData("/crackTest/austeniticFiller", "false")]
    [InlineData("/name", "\"other\"")]
    public void TryApply_WhatOnlyAdds_IsAccepted(string path, string value)
    {
        var outcome = Edit(Job(), path, value);
        Assert.Empty(outcome.Refusals);
        Assert.True(outcome.Accepted);
    }

    [Theory]
    [InlineData("/crackTest/steps", "[]")]
    [InlineData(
        "/crackTest/work/-",
        """{"id":"w1","kind":"pressed","at":"2026-03-01T11:00:00Z"}"""
    )]
    [InlineData("/crackTest/work/-", """{"kind":"pressed","at":"2026-03-01T11:00:00Z"}""")]
    [InlineData("/crackTest/work/-", """{"id":"w2","at":"2026-03-01T11:00:00Z"}""")]
    [InlineData(
        "/crackTest/work/-",
        """{"id":"w2","kind":"hammered","at":"2026-03-01T11:00:00Z"}"""
    )]
    [InlineData("/crackTest/tests/0/steps/-", """{"id":"s2","step":"dried","at":"14:05"}""")]
    [InlineData("/crackTest/tests/0/notes/-", """{"id":"n2","partTemperature":"70°"}""")]
    [InlineData("/fit/done/-", """{"id":"f1","step":"oil","at":"2026-03-05T15:10:00Z"}""")]
    [InlineData(
        "/fit/done/-",
        """{"id":"f2","step":"oil","at":"2026-03-05T15:10:00Z","pull":"15 kg"}"""
    )]
    public void TryApply_AnEntryThatCannotBeRead_IsRefused(string path, string value) =>
        Assert.False(Edit(Job(), path, value).Accepted);

    [Fact]
    public void TryApply_AnyEditThatIsAccepted_KeepsEveryEntryOfAnyJob() =>
        Gen.Select(Gen.Int, Gen.Int)
            .Sample(
                (seed, other) =>
                {
                    var random = new Random(other);
                    var job = RandomJob.Of(seed);
                    job["crackTest"] ??= Job()["crackTest"]!.DeepClone();
                    if (JobJson.Read(job).Document is null)
                        return;
                    var list = (JsonArray?)(
                        random.Next(2) == 0 ? job["crackTest"]!["tests"] : job["crackTest"]!["work"]
                    );
                    if (list is not { Count: > 0 })
                        return;
                    var name = list == job["crackTest"]!["work"] ? "work" : "tests";
                    var at = random.Next(list.Count);
                    var path = random.Next(3) switch
                    {
                        0 => $"/crackTest/{name}/{at}",
                        1 => $"/crackTest/{name}",
                        _ => $"/crackTest/{name}/{at}/id",
                    };
                    Assert.False(Edit(job, path, null).Accepted);
                    Assert.False(Edit(job, $"/crackTest/{name}/{at}/id", "\"another\"").Accepted);
                },
                iter: 200
            );
}
