using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Shaftwright.JobFile;
using Shaftwright.Records;

namespace Shaftwright.App.Verbs;

/// <summary>The demo's jobs: the files of examples/, carried in the program.</summary>
internal static class DemoJobs
{
    private const string Folder = "examples/";
    private const string Ending = ".swjob.json";

    /// <summary>Adds the demo jobs that the book does not hold. One that was changed stays as it is.</summary>
    public static void AddMissing(JobBook book)
    {
        foreach (var (id, text) in All())
        {
            if (book.Find(id) is null)
                book.Apply(
                    new Edit(
                        // One id for one job, so that two programs starting at once add it once.
                        new Guid(SHA256.HashData(Encoding.UTF8.GetBytes(id)).AsSpan(0, 16)),
                        id,
                        DateTimeOffset.UtcNow,
                        "demo",
                        "",
                        JsonNode.Parse(text)
                    )
                );
        }
    }

    /// <summary>Each demo job: its id and its file.</summary>
    public static IEnumerable<(string Id, string Text)> All()
    {
        var assembly = typeof(DemoJobs).Assembly;
        foreach (
            var name in assembly
                .GetManifestResourceNames()
                .Where(n => n.StartsWith(Folder, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
        )
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            yield return ("demo-" + name[Folder.Length..^Ending.Length], reader.ReadToEnd());
        }
    }
}
