using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace Shaftwright.Tests.House;

/// <summary>Habits of the house that no compiler keeps. Each lists every offender with the fix.</summary>
public sealed partial class TidinessTests
{
    private static readonly string[] s_drawers =
    [
        "Helpers",
        "Helper",
        "Common",
        "Utils",
        "Util",
        "Utilities",
        "Managers",
        "Misc",
        "Shared",
        "Interfaces",
    ];

    private static readonly string[] s_tops = ["src", "tests", "bench"];

    [Fact]
    public void Records_OfTheStages_CannotChangeOnceMade()
    {
        var wrong = new List<string>();
        var records = typeof(Job).Assembly.GetTypes().Where(IsRecord).ToList();
        Assert.NotEmpty(records);
        foreach (var type in records)
        {
            foreach (
                var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            )
            {
                if (property.SetMethod is { IsPublic: true } set && !IsInitOnly(set))
                    wrong.Add(
                        $"{type.Name}.{property.Name} can be set after it is made. Use init."
                    );
                if (IsChangeable(property.PropertyType))
                    wrong.Add(
                        $"{type.Name}.{property.Name} is a {property.PropertyType.Name}, whose content can change. Use IReadOnlyList."
                    );
            }
            wrong.AddRange(
                type.GetFields(BindingFlags.Public | BindingFlags.Instance)
                    .Where(f => !f.IsInitOnly)
                    .Select(f =>
                        $"{type.Name}.{f.Name} is a field that can be set. Make it a property with init."
                    )
            );
        }
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public void Folders_OfTheTree_AreNotDrawers()
    {
        var wrong = s_tops
            .SelectMany(top => Repository.Files(top, "*"))
            .Select(f => Path.GetDirectoryName(f)!)
            .Distinct()
            .Where(f =>
                f.Split('/', '\\')
                    .Any(part => s_drawers.Contains(part, StringComparer.OrdinalIgnoreCase))
            )
            .Select(f => $"{f} is a drawer. Name the folder after what is in it.")
            .ToList();
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public void Files_OfSource_AreNamedAfterATypeInThem()
    {
        var wrong = new List<string>();
        foreach (var file in s_tops.SelectMany(top => Repository.Files(top, "*.cs")))
        {
            var name = Path.GetFileName(file).Split('.')[0];
            var code = Repository.Code(file);
            // A program of top-level statements has no type, and a page's partial class is named by its .razor file.
            if (name == "Program" || !Declaration().IsMatch(code))
                continue;
            var types = Declaration().Matches(code).Select(m => m.Groups["name"].Value).ToList();
            if (!types.Contains(name) && !IsFamily(name, types))
                wrong.Add(
                    $"{file} declares {string.Join(", ", types.Take(4))} but no {name}. Rename the file after its main type, or after the family in the plural."
                );
        }
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    /// <summary>A family of small types may share a file named by its plural: JobRow and EditRow in Rows.cs.</summary>
    private static bool IsFamily(string name, List<string> types)
    {
        var word = LastWord().Match(name).Value;
        var one =
            word.EndsWith("ies", StringComparison.Ordinal) ? word[..^3] + "y"
            : word.EndsWith('s') ? word[..^1]
            : null;
        return one is not null
            && 2 * types.Count(t => t.EndsWith(one, StringComparison.Ordinal)) >= types.Count;
    }

    [GeneratedRegex("[A-Z][a-z]*$")]
    private static partial Regex LastWord();

    private static bool IsRecord(Type type) =>
        type.GetMethod("<Clone>$") is not null
        || (
            type.IsValueType
            && type.GetMethod("PrintMembers", BindingFlags.NonPublic | BindingFlags.Instance)
                is not null
        );

    private static bool IsInitOnly(MethodInfo set) =>
        set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private static bool IsChangeable(Type type) =>
        type.IsArray
        || (
            type.IsGenericType
            && type.GetGenericTypeDefinition() is var open
            && (
                open == typeof(List<>)
                || open == typeof(IList<>)
                || open == typeof(ICollection<>)
                || open == typeof(Dictionary<,>)
                || open == typeof(IDictionary<,>)
            )
        );

    [GeneratedRegex(
        @"\b(?:class|struct|interface|enum|record(?:\s+struct|\s+class)?|delegate\s+[\w<>?\[\]]+)\s+(?<name>[A-Z]\w*)"
    )]
    private static partial Regex Declaration();
}
