using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Shaftwright.Tests.House;

/// <summary>The arrows of ARCHITECTURE: projects point down, and a stage uses only the stages before it.</summary>
public sealed class ArrowTests
{
    /// <summary>What each project may use, directly or through another. Drawings may use JobFile, whose route card it prints.</summary>
    private static readonly Dictionary<string, string[]> s_mayUse = new()
    {
        ["Shaftwright"] = [],
        ["Shaftwright.JobFile"] = ["Shaftwright"],
        ["Shaftwright.Drawings"] = ["Shaftwright", "Shaftwright.JobFile"],
        ["Shaftwright.Records"] = ["Shaftwright", "Shaftwright.JobFile"],
        ["Shaftwright.Pages"] = ["Shaftwright", "Shaftwright.JobFile", "Shaftwright.Drawings"],
        ["Shaftwright.App"] =
        [
            "Shaftwright",
            "Shaftwright.JobFile",
            "Shaftwright.Drawings",
            "Shaftwright.Records",
            "Shaftwright.Pages",
        ],
    };

    private static readonly string[] s_under = ["Measures", "Geometry", "Findings", "Kept"];

    [Fact]
    public void Projects_OfTheProgram_PointOnlyDown()
    {
        var wrong = new List<string>();
        var projects = Repository.Files("src", "*.csproj");
        Assert.NotEmpty(projects);
        foreach (var path in projects)
        {
            var name = Path.GetFileNameWithoutExtension(path);
            if (!s_mayUse.TryGetValue(name, out var allowed))
            {
                wrong.Add(
                    $"{path}: a new project. Give it its place in ARCHITECTURE and in this test."
                );
                continue;
            }
            var used = XDocument
                .Parse(Repository.Read(path))
                .Descendants("ProjectReference")
                .Select(r =>
                    Path.GetFileNameWithoutExtension(
                        r.Attribute("Include")!.Value.Replace('\\', '/')
                    )
                );
            wrong.AddRange(
                used.Except(allowed)
                    .Select(u =>
                        $"{path} uses {u}, which is not below it. Move what it needs down, or pass it in."
                    )
            );
        }
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public void Calculations_AsBuilt_UseNoAssemblyButTheFramework()
    {
        var others = typeof(Job)
            .Assembly.GetReferencedAssemblies()
            .Select(a => a.Name!)
            .Where(a => !a.StartsWith("System.", StringComparison.Ordinal));
        Assert.Empty(others);
    }

    [Fact]
    public void Stages_OfTheCalculations_UseNoLaterStage()
    {
        var wrong = new List<string>();
        for (var i = 0; i < Repository.Stages.Count; i++)
            wrong.AddRange(Uses(Repository.Stages[i], Repository.Stages.Skip(i + 1)));
        // What stands under all stages uses none of them.
        foreach (var under in s_under)
            wrong.AddRange(Uses(under, Repository.Stages));
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public void Stages_AsFolders_AreAllKnownToThisTest()
    {
        string[] known = [.. Repository.Stages, .. s_under, "bin", "obj"];
        var folders = Directory
            .GetDirectories(Path.Combine(Repository.Root, "src", "Shaftwright"))
            .Select(f => Path.GetFileName(f)!);
        Assert.Empty(folders.Except(known));
    }

    /// <summary>Every use of a forbidden namespace: by a using, by its full name, or by a name from the parent namespace.</summary>
    private static IEnumerable<string> Uses(string stage, IEnumerable<string> forbidden)
    {
        var types = typeof(Job).Assembly.GetTypes();
        foreach (var file in Repository.Files($"src/Shaftwright/{stage}", "*.cs"))
        {
            var code = Repository.Code(file);
            foreach (var later in forbidden)
            {
                var names = types
                    .Where(t => t.Namespace == "Shaftwright." + later && !t.IsNested)
                    .Select(t => t.Name.Split('`')[0]);
                var pattern =
                    $@"\bShaftwright\s*\.\s*{later}\b|\b{later}\s*\.\s*({string.Join('|', names.DefaultIfEmpty("\\b\\B"))})\b";
                if (Regex.IsMatch(code, pattern))
                    yield return $"{file} uses the stage {later}, which comes after {stage}. Move what it needs to {stage} or before, or let the later stage do it.";
            }
        }
    }

    [Fact]
    public void Uses_AForbiddenName_IsFoundHoweverItIsWritten()
    {
        // The test above must be able to fail: the last stage does use earlier ones, so ask it the other way round.
        Assert.NotEmpty(Uses("Weld", ["Cut"]));
        Assert.NotEmpty(Uses("Truing", ["Findings"]));
        Assert.Empty(Uses("Measures", ["Truing"]));
    }
}
