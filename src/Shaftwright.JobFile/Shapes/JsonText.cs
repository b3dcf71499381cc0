using System.Globalization;
using System.Text;
using System.Text.Json;
using Shaftwright.Measures;

namespace Shaftwright.JobFile.Shapes;

/// <summary>JSON text before it means anything: size, depth, well-formedness, no name twice.</summary>
internal static class JsonText
{
    /// <summary>Largest document, bytes of UTF-8.</summary>
    public const int MostBytes = 4 * 1024 * 1024;

    /// <summary>Deepest nesting.</summary>
    public const int MostDepth = 32;

    /// <summary>The name a refusal gives to the document itself.</summary>
    public const string Whole = "file";

    private static readonly UTF8Encoding s_utf8 = new(false, throwOnInvalidBytes: true);

    /// <summary>Parses, or says why not.</summary>
    public static JsonDocument? Parse(string text, List<Refusal> log)
    {
        // A byte order mark is how some editors begin a file; it says nothing.
        var body = text.StartsWith('\uFEFF') ? text[1..] : text;
        byte[] bytes;
        try
        {
            if (body.Length > MostBytes || s_utf8.GetByteCount(body) > MostBytes)
                return Refused(log, $"{body.Length} characters", "is too large", "up to 4 MB");
            bytes = s_utf8.GetBytes(body);
            if (!NamesOnce(bytes, log))
                return null;
            return JsonDocument.Parse(bytes, new JsonDocumentOptions { MaxDepth = MostDepth });
        }
        catch (JsonException e)
        {
            var line = (e.LineNumber ?? 0) + 1;
            var column = (e.BytePositionInLine ?? 0) + 1;
            return Refused(
                log,
                Shape<int>.Clip(Line(body, line).Trim()),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"is not JSON at line {line}, position {column}"
                ),
                $"JSON of at most {MostDepth} levels, without comments or trailing commas"
            );
        }
        catch (Exception e) when (e is EncoderFallbackException or InvalidOperationException)
        {
            // Half of a surrogate pair, bare or as \ud800: text that no file can hold.
            return Refused(log, "text", "holds half a character", "valid Unicode text");
        }
    }

    /// <summary>Walks the text once and refuses every name that an object has twice: which of the two was meant cannot be known.</summary>
    private static bool NamesOnce(byte[] bytes, List<Refusal> log)
    {
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { MaxDepth = MostDepth });
        var levels = new Stack<Level>();
        var clean = true;
        while (reader.Read())
        {
            switch (reader.TokenType)
            {
                case JsonTokenType.StartObject or JsonTokenType.StartArray:
                    levels.TryPeek(out var outer);
                    outer?.Next();
                    levels.Push(
                        new Level(outer?.Here ?? "", reader.TokenType == JsonTokenType.StartObject)
                    );
                    break;
                case JsonTokenType.EndObject or JsonTokenType.EndArray:
                    levels.Pop();
                    break;
                case JsonTokenType.PropertyName:
                    var level = levels.Peek();
                    if (!level.Name(reader.GetString()!))
                    {
                        log.Add(
                            new(level.Here, level.Last, "stands there twice", "each field once")
                        );
                        clean = false;
                    }
                    break;
                default:
                    if (reader.TokenType == JsonTokenType.String)
                        _ = reader.GetString(); // Throws on half a surrogate pair.
                    if (levels.TryPeek(out var list))
                        list.Next();
                    break;
            }
        }
        return clean;
    }

    private sealed class Level(string path, bool isObject)
    {
        private readonly HashSet<string>? _names = isObject ? new(StringComparer.Ordinal) : null;
        private int _index = -1;

        public string Last { get; private set; } = "";

        public string Here =>
            !isObject ? $"{path}[{Math.Max(_index, 0)}]"
            : path.Length == 0 ? Last
            : path + "." + Last;

        public bool Name(string name)
        {
            Last = Shape<int>.Clip(name);
            return _names!.Add(name);
        }

        public void Next() => _index++;
    }

    private static string Line(string text, long line)
    {
        var lines = text.AsSpan().EnumerateLines();
        foreach (var candidate in lines)
        {
            if (--line == 0)
                return candidate.ToString();
        }
        return "";
    }

    private static JsonDocument? Refused(
        List<Refusal> log,
        string value,
        string problem,
        string accepted
    )
    {
        log.Add(new Refusal(Whole, value, problem, accepted));
        return null;
    }
}
