using System.Text.RegularExpressions;

namespace Shaftwright.Tests.House;

/// <summary>The source tree that these tests were built from.</summary>
internal static partial class Repository
{
    /// <summary>The stages in the order of the job: one may use those before it, never one after.</summary>
    public static readonly IReadOnlyList<string> Stages =
    [
        "Car",
        "Corner",
        "Joints",
        "Length",
        "Donors",
        "Cut",
        "Strength",
        "Weld",
        "Truing",
        "CrackTest",
        "Fit",
    ];

    /// <summary>The folder of Shaftwright.slnx.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Paths of the source files under a folder, from the root, build output left out.</summary>
    public static IReadOnlyList<string> Files(string under, string pattern) =>
        [
            .. Directory
                .EnumerateFiles(Path.Combine(Root, under), pattern, SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(Root, f).Replace('\\', '/'))
                .Where(f => !f.Contains("/bin/", StringComparison.Ordinal))
                .Where(f => !f.Contains("/obj/", StringComparison.Ordinal))
                .Order(StringComparer.Ordinal),
        ];

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    /// <summary>A C# file without its comments, so that a name in prose or in a cref is not taken for a use.</summary>
    public static string Code(string path) => Comments().Replace(Read(path), "");

    private static string FindRoot()
    {
        for (
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            folder is not null;
            folder = folder.Parent
        )
        {
            if (File.Exists(Path.Combine(folder.FullName, "Shaftwright.slnx")))
                return folder.FullName;
        }
        throw new InvalidOperationException(
            $"No Shaftwright.slnx above {AppContext.BaseDirectory}: run the tests from a clone."
        );
    }

    [GeneratedRegex(@"//[^\n]*|/\*.*?\*/", RegexOptions.Singleline)]
    private static partial Regex Comments();
}
