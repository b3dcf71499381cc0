using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Json.Schema;
using Shaftwright.JobFile;

namespace Shaftwright.Records.Tests.JobFile;

/// <summary>The schema, judged by an independent validator.</summary>
public sealed class SchemaTests
{
    private static readonly JsonSchema s_schema = JsonSchema.FromText(JobJson.Schema());

    internal static bool Valid(string json)
    {
        using var parsed = JsonDocument.Parse(json);
        return s_schema
            .Evaluate(
                parsed.RootElement,
                new EvaluationOptions { OutputFormat = OutputFormat.Flag }
            )
            .IsValid;
    }

    [Fact]
    public void Schema_ItselfIsValidByTheMetaSchema()
    {
        using var schema = JsonDocument.Parse(JobJson.Schema());
        Assert.True(MetaSchemas.Draft202012.Evaluate(schema.RootElement).IsValid);
    }

    [Fact]
    public void Schema_TheExampleAndWhatIsWritten_AreValid()
    {
        Assert.True(Valid(ExampleJob.Text));
        Assert.True(Valid(JobJson.Write(JobDocument.Empty)));
    }

    [Fact]
    public void Schema_AnyJobThatIsRead_IsValid() =>
        RandomJob.Gen.Sample(
            json =>
                JobJson.Read(json).Document is { } read
                && Valid(json)
                && Valid(JobJson.Write(read)),
            iter: 100
        );

    [Theory]
    [InlineData("""{"name":"no format"}""")]
    [InlineData("""{"format":2}""")]
    [InlineData("""{"format":1,"colour":"red"}""")]
    [InlineData("""{"format":1,"corner":{"trialLenght":431}}""")]
    [InlineData("""{"format":1,"corner":{"trialLength":3000}}""")]
    [InlineData("""{"format":1,"corner":{"trialLength":"long"}}""")]
    [InlineData("""{"format":1,"corner":{"trialLength":null}}""")]
    [InlineData("""{"format":1,"corner":{"readings":[{"steering":"left"}]}}""")]
    [InlineData("""{"format":1,"corner":{"conditions":{"springOut":"yes"}}}""")]
    [InlineData("""{"format":1,"weld":{"mostLeaves":2.5}}""")]
    [InlineData("""{"format":1,"records":{"signOffs":[{"id":"a","operation":"cut"}]}}""")]
    [InlineData(
        """{"format":1,"records":{"signOffs":[{"id":"a","operation":"cut","at":"today"}]}}"""
    )]
    public void Schema_ABrokenJob_IsNotValidAndNotRead(string json)
    {
        Assert.False(Valid(json));
        Assert.Null(JobJson.Read(json).Document);
    }

    [Fact]
    public void Schema_EveryMeasure_SaysItsWordsItsRangeAndItsUnit()
    {
        using var schema = JsonDocument.Parse(JobJson.Schema());
        var text = schema
            .RootElement.GetProperty("$defs")
            .GetProperty("corner")
            .GetProperty("properties")
            .GetProperty("trialLength")
            .GetProperty("description")
            .GetString()!;
        Assert.StartsWith(
            "Trial shaft, joint centre to joint centre, from 50 to 2000 mm.",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("a bare number is mm", text, StringComparison.Ordinal);
        Assert.Contains("± 0.5 mm (steel rule)", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Schema_EveryMember_SaysWhatItIs()
    {
        var silent = new List<string>();
        Walk(JsonNode.Parse(JobJson.Schema())!.AsObject(), "");
        Assert.True(silent.Count == 0, "No words for: " + string.Join(", ", silent));

        void Walk(JsonObject at, string path)
        {
            if (at["properties"] is JsonObject properties)
            {
                foreach (var (name, member) in properties)
                {
                    if (string.IsNullOrEmpty((string?)member!["description"]))
                        silent.Add(path + "." + name);
                }
            }
            foreach (var (name, def) in at["$defs"] as JsonObject ?? [])
                Walk(def!.AsObject(), name);
        }
    }
}
