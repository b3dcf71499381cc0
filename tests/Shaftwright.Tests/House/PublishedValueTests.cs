using System.Text.Json;
using Shaftwright.Tests.Published;

namespace Shaftwright.Tests.House;

/// <summary>A check value that nobody reads checks nothing.</summary>
public sealed class PublishedValueTests
{
    // The letter alone, or with its words as README.md beside the files has them.
    private static readonly string[] s_marks =
    [
        "L",
        "D",
        "M",
        "P",
        "L looked up",
        "D derived",
        "M from memory",
        "P common practice, no source",
    ];

    private static string Tests { get; } =
        string.Join('\n', Repository.Files("tests", "*.cs").Select(Repository.Code));

    public static TheoryData<string> Files() =>
        new(
            Directory
                .GetFiles(PublishedFile.Folder, "*.json")
                .Select(f => Path.GetFileNameWithoutExtension(f)!)
                .Order(StringComparer.Ordinal)
        );

    [Theory]
    [MemberData(nameof(Files))]
    public void File_OfCheckValues_CarriesItsSourceAndMarkAndIsRead(string name)
    {
        var file = PublishedFile.Load(name);
        Assert.True(
            file.Source.Length > 10,
            $"{name}.json: say where the numbers come from in \"source\"."
        );
        Assert.NotEmpty(file.Cases);
        Assert.Equal(file.Cases.Count, file.Cases.Select(c => c.Id).Distinct().Count());
        Assert.True(
            Tests.Contains($"\"{name}\"", StringComparison.Ordinal),
            $"{name}.json is read by no test. Write one, or take the file away."
        );
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Values_InAFile_AreMarkedAndEachAskedForByATest(string name)
    {
        using var document = JsonDocument.Parse(
            File.ReadAllText(Path.Combine(PublishedFile.Folder, name + ".json"))
        );
        var root = document.RootElement;
        var wrong = new List<string>();
        void Marked(JsonElement element, string where)
        {
            if (element.TryGetProperty("mark", out var mark) && !s_marks.Contains(mark.GetString()))
                wrong.Add($"{where}: mark \"{mark}\" is none of {string.Join(" | ", s_marks)}.");
        }
        Assert.True(root.TryGetProperty("mark", out _), $"{name}.json has no \"mark\".");
        Marked(root, name);
        foreach (var c in root.GetProperty("cases").EnumerateArray())
        {
            var id = c.GetProperty("id").GetString();
            Marked(c, $"{name} {id}");
            if (!c.GetProperty("expected").EnumerateObject().Any())
                wrong.Add($"{name} {id} expects nothing. Give it a value, or take the case away.");
            wrong.AddRange(
                c.GetProperty("expected")
                    .EnumerateObject()
                    .Where(e => !Tests.Contains($"\"{e.Name}\"", StringComparison.Ordinal))
                    .Select(e =>
                        $"{name} {id}: no test asks for \"{e.Name}\". Ask, or take it away."
                    )
            );
            if (
                c.TryGetProperty("tolerance", out var tolerance)
                && !tolerance.TryGetProperty("reason", out _)
            )
                wrong.Add($"{name} {id}: a tolerance without a \"reason\".");
        }
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }
}
