using Shaftwright.JobFile;

namespace Shaftwright.Records.Tests;

/// <summary>A folder of its own for a test, gone afterwards.</summary>
internal sealed class TempFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("shaftwright-").FullName;

    public string Book => System.IO.Path.Combine(Path, JobBook.FileName);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}

/// <summary>Edits for tests.</summary>
internal static class Make
{
    private static readonly DateTimeOffset s_at = new(2026, 5, 3, 14, 20, 0, TimeSpan.FromHours(2));

    public static Edit Job(string job, string name = "job") =>
        Set(job, "", $$"""{"format":1,"name":"{{name}}"}""");

    public static Edit Set(string job, string path, string? json) =>
        new(
            Guid.NewGuid(),
            job,
            s_at,
            "bench phone",
            path,
            json is null ? null : System.Text.Json.Nodes.JsonNode.Parse(json)
        );
}
