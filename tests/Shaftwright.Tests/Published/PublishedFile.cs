using System.Globalization;
using System.Text.Json;
using Shaftwright.Measures;

namespace Shaftwright.Tests.Published;

/// <summary>A file of check values with its citation. See README.md beside this file.</summary>
public sealed class PublishedFile
{
    private PublishedFile(string name, JsonElement root)
    {
        Name = name;
        Source = root.GetProperty("source").GetString()!;
        Mark = root.GetProperty("mark").GetString()!;
        Cases =
        [
            .. root.GetProperty("cases").EnumerateArray().Select(c => new PublishedCase(this, c)),
        ];
    }

    public string Name { get; }
    public string Source { get; }
    public string Mark { get; }
    public IReadOnlyList<PublishedCase> Cases { get; }

    public PublishedCase this[string id] => Cases.Single(c => c.Id == id);

    public static string Folder => Path.Combine(AppContext.BaseDirectory, "Published");

    public static PublishedFile Load(string name)
    {
        using var document = JsonDocument.Parse(
            File.ReadAllText(Path.Combine(Folder, name + ".json"))
        );
        return new PublishedFile(name, document.RootElement.Clone());
    }

    /// <summary>The ids of a file's cases, for a theory.</summary>
    public static TheoryData<string> Ids(string name) => new(Load(name).Cases.Select(c => c.Id));
}

/// <summary>One case: inputs as typed, expected values as printed.</summary>
public sealed class PublishedCase(PublishedFile file, JsonElement json)
{
    public string Id { get; } = json.GetProperty("id").GetString()!;
    public string Source { get; } =
        json.TryGetProperty("source", out var s) ? s.GetString()! : file.Source;

    /// <summary>An input as a measure.</summary>
    public Measured<T> Input<T>(string name)
        where T : IDimension<T> => Measured<T>.Read(Text("inputs", name), name).Required;

    /// <summary>An input as a bare number.</summary>
    public double Number(string name) =>
        double.Parse(Text("inputs", name), CultureInfo.InvariantCulture);

    /// <summary>An input as it stands.</summary>
    public JsonElement Raw(string name) => json.GetProperty("inputs").GetProperty(name);

    public bool Has(string name) => json.GetProperty("inputs").TryGetProperty(name, out _);

    public bool Expects(string name) => json.GetProperty("expected").TryGetProperty(name, out _);

    /// <summary>The expected value as printed, read as a number.</summary>
    public double Expected(string name) =>
        double.Parse(Text("expected", name), CultureInfo.InvariantCulture);

    /// <summary>The expected value as printed, where it is a word.</summary>
    public string ExpectedText(string name) => Text("expected", name);

    /// <summary>Asserts a value against the printed one: within the tolerance of the file, else half of the last printed digit.</summary>
    public void Agrees(string name, double actual)
    {
        var printed = Text("expected", name);
        var expected = double.Parse(printed, CultureInfo.InvariantCulture);
        var allowed =
            json.TryGetProperty("tolerance", out var t) && t.TryGetProperty(name, out var given)
                ? given.GetDouble()
                : HalfLastDigit(printed);
        Assert.True(
            Math.Abs(actual - expected) <= allowed,
            $"{file.Name} {Id} {name}: {actual:R} against {printed} ± {allowed} ({Source})"
        );
    }

    internal static double HalfLastDigit(string printed)
    {
        var e = printed.IndexOfAny(['e', 'E']);
        var exponent = e < 0 ? 0 : int.Parse(printed[(e + 1)..], CultureInfo.InvariantCulture);
        var mantissa = e < 0 ? printed : printed[..e];
        var point = mantissa.IndexOf('.');
        var decimals = point < 0 ? 0 : mantissa.Length - point - 1;
        // A hair more than half, for numbers printed by rounding a half.
        return 0.5000001 * Math.Pow(10, exponent - decimals);
    }

    private string Text(string part, string name)
    {
        var value = json.GetProperty(part).GetProperty(name);
        return value.ValueKind == JsonValueKind.String ? value.GetString()! : value.GetRawText();
    }
}
