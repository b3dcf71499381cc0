using System.Text.Json.Nodes;
using Shaftwright.JobFile;

namespace Shaftwright.Records.Tests.JobFile;

public sealed class EditJsonTests
{
    private const string Id = "6f6b9f4e-0c55-4b83-9f0a-3a2f1f6f8f11";
    private const string Good =
        $$"""{"id":"{{Id}}","jobId":"job-1","at":"2026-05-03T14:20:00+02:00","device":"bench phone","path":"/corner/readings/0/in","value":"6.5 ± 0.5 mm","was":6}""";

    [Fact]
    public void Read_WhatWasWritten_IsTheSameEdits()
    {
        var edits = EditJson.Read($"[{Good}]", out var refusals);
        Assert.Empty(refusals);
        var edit = Assert.Single(edits).Edit!;
        Assert.Equal(Guid.Parse(Id), edit.Id);
        Assert.Equal("6.5 ± 0.5 mm", (string?)edit.Value);
        Assert.Equal(6, (int)edit.Was!);
        Assert.Equal(TimeSpan.FromHours(2), edit.At.Offset);

        var again = EditJson.Read(EditJson.Write([edit]), out _);
        Assert.True(JsonNode.DeepEquals(edit.Value, again[0].Edit!.Value));
        Assert.Equal(
            edit with
            {
                Value = null,
                Was = null,
            },
            again[0].Edit! with
            {
                Value = null,
                Was = null,
            }
        );
    }

    [Fact]
    public void Read_ARemoval_HasNoValue()
    {
        var removal = new Edit(Guid.Parse(Id), "j", default, "d", "/name");
        Assert.DoesNotContain("value", EditJson.Write([removal]), StringComparison.Ordinal);
        Assert.Null(EditJson.Read(EditJson.Write([removal]), out _)[0].Edit!.Value);
        Assert.Null(
            EditJson
                .Read(
                    "[" + Good.Replace("\"6.5 ± 0.5 mm\"", "null", StringComparison.Ordinal) + "]",
                    out _
                )[0]
                .Edit!.Value
        );
    }

    [Theory]
    [InlineData("\"jobId\":\"job-1\",", "")]
    [InlineData("\"jobId\":\"job-1\"", "\"jobId\":null")]
    [InlineData("\"jobId\":\"job-1\"", "\"jobId\":\"../etc\"")]
    [InlineData("\"path\"", "\"paht\"")]
    [InlineData("+02:00", "")]
    [InlineData(
        "bench phone",
        "a device name that goes on and on and on and on and on and on and on"
    )]
    public void Read_OneBadEdit_IsAnsweredByItsIdAndSparesTheOthers(string from, string to)
    {
        var edits = EditJson.Read(
            $"[{Good.Replace(from, to, StringComparison.Ordinal)},{Good}]",
            out var refusals
        );
        Assert.Empty(refusals);
        Assert.Null(edits[0].Edit);
        Assert.Equal(Guid.Parse(Id), edits[0].Id);
        Assert.NotEmpty(edits[0].Refusals);
        Assert.NotNull(edits[1].Edit);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("[")]
    [InlineData("[{\"id\":1,\"id\":2}]")]
    public void Read_NoListOfEdits_IsRefusedWhole(string json)
    {
        Assert.Empty(EditJson.Read(json, out var refusals));
        Assert.Single(refusals);
    }

    [Theory]
    [InlineData("[null]")]
    [InlineData("[7]")]
    [InlineData("[{\"id\":\"x\"}]")]
    [InlineData("[{\"id\":7}]")]
    public void Read_WhatHasNoId_IsRefusedWithoutOne(string json)
    {
        var reading = Assert.Single(EditJson.Read(json, out _));
        Assert.Null(reading.Id);
        Assert.NotEmpty(reading.Refusals);
    }
}
