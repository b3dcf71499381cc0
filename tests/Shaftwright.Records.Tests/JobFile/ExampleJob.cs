using System.Text.Json.Nodes;
using Shaftwright.JobFile;

namespace Shaftwright.Records.Tests.JobFile;

/// <summary>A small job that uses every kind of value a file can hold.</summary>
internal static class ExampleJob
{
    public static string Text { get; } =
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "JobFile", "small.swjob.json"));

    public static JsonObject Object() => JsonNode.Parse(Text)!.AsObject();

    public static JobDocument Document() => JobJson.Read(Text).Document!;
}
