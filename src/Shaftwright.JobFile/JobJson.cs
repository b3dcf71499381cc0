using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Shaftwright.JobFile.Shapes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile;

/// <summary>The outcome of reading a job file: the document, or everything that is wrong with it.</summary>
/// <param name="Document">The document; null when anything was refused.</param>
/// <param name="Refusals">Each with the path of the field, such as <c>corner.readings[2].in</c>. Empty when it was read.</param>
public sealed record JobReading(JobDocument? Document, IReadOnlyList<Refusal> Refusals);

/// <summary>The job file <c>*.swjob.json</c>: reading, writing, schema.</summary>
/// <remarks>Measures are strings as typed or bare numbers in the field's default unit, and are written back as typed; unknown
/// and repeated fields are refused by name. Nothing here uses reflection: it runs trimmed and interpreted in the browser.</remarks>
public static class JobJson
{
    /// <summary>The current format.</summary>
    public const int Format = 1;

    private static readonly JsonWriterOptions s_writing = new()
    {
        Indented = true,
        NewLine = "\n",
        // ± and · stay readable. The text goes to files and JSON responses, never into a page's markup.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        MaxDepth = JsonText.MostDepth,
    };

    /// <summary>Reads a job file. Never throws on its content.</summary>
    /// <param name="json">The text of the file.</param>
    public static JobReading Read(string json) => Read(json, FormatHistory.Shipped);

    /// <summary>Reads a job document. Never throws on its content; the document is not changed.</summary>
    /// <param name="document">The document.</param>
    public static JobReading Read(JsonObject document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var log = new List<Refusal>();
        return ToText(document, log) is { } text ? Read(text) : new(null, log);
    }

    /// <summary>Reads a job file by a given history of formats.</summary>
    /// <param name="json">The text of the file.</param>
    /// <param name="history">How older formats are lifted.</param>
    public static JobReading Read(string json, FormatHistory history)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(history);
        var log = new List<Refusal>();
        using var parsed = Lifted(json, history, log);
        if (parsed is null)
            return new(null, log);
        JobShape.Document.Read(parsed.RootElement, "", log, out var document);
        Check(document, log);
        return new(log.Count == 0 ? document : null, log);
    }

    /// <summary>Writes a document: two-space indent, <c>\n</c>, members in a fixed order, what is unknown or empty left out. The
    /// same document always gives the same text, and reading that text and writing it again gives it once more.</summary>
    /// <param name="doc">The document.</param>
    public static string Write(JobDocument doc)
    {
        ArgumentNullException.ThrowIfNull(doc);
        var buffer = new ArrayBufferWriter<byte>(4096);
        using (var json = new Utf8JsonWriter(buffer, s_writing))
            JobShape.Document.Write(json, doc);
        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    /// <summary>The document with its measures as bare values, however they were spelt: two documents that mean the same give the
    /// same text.</summary>
    internal static string Meaning(JobDocument doc)
    {
        var buffer = new ArrayBufferWriter<byte>(4096);
        using (var json = new Utf8JsonWriter(buffer))
            JobShape.Document.WriteMeaning(json, doc);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    /// <summary>The document as a JSON object of its own, to apply edits to.</summary>
    /// <param name="doc">The document.</param>
    public static JsonObject WriteObject(JobDocument doc) => JsonNode.Parse(Write(doc))!.AsObject();

    /// <summary>The JSON Schema (2020-12) of the current format. A file that is read is valid by it; it cannot say everything
    /// that is refused (the grammar of a measure, order along a shaft).</summary>
    public static string Schema()
    {
        var defs = new JsonObject();
        var body = JobShape.Document.Body(defs);
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = "urn:shaftwright:job:1",
            ["title"] = "Shaftwright job",
        };
        foreach (var (name, node) in body)
            schema[name] = node?.DeepClone();
        schema["$defs"] = defs;
        var buffer = new ArrayBufferWriter<byte>(65536);
        using (var json = new Utf8JsonWriter(buffer, s_writing))
            schema.WriteTo(json);
        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    /// <summary>The text of a node that may have come from anywhere; null, with the reason logged, when it has none.</summary>
    internal static string? ToText(JsonNode node, List<Refusal> log)
    {
        try
        {
            var buffer = new ArrayBufferWriter<byte>(4096);
            using (var json = new Utf8JsonWriter(buffer, s_writing with { Indented = false }))
                node.WriteTo(json);
            return Encoding.UTF8.GetString(buffer.WrittenSpan);
        }
        catch (Exception e)
            when (e is JsonException or InvalidOperationException or ArgumentException)
        {
            log.Add(
                new(JsonText.Whole, "{…}", "cannot be written as JSON", "JSON of at most 32 levels")
            );
            return null;
        }
    }

    private static JsonDocument? Lifted(string json, FormatHistory history, List<Refusal> log)
    {
        var parsed = JsonText.Parse(json, log);
        if (parsed is null)
            return null;
        var root = parsed.RootElement;
        if (root.ValueKind != JsonValueKind.Object)
        {
            log.Add(new(JsonText.Whole, Shape<int>.Shown(root), "is not a job", "an object, {…}"));
            parsed.Dispose();
            return null;
        }
        var node = JsonObject.Create(root)!;
        var lifted = history.Bring(node, out var refusal);
        if (ReferenceEquals(lifted, node))
            return parsed;
        if (refusal is not null)
            log.Add(refusal);
        var text = lifted is null ? null : ToText(lifted, log);
        parsed.Dispose();
        return text is null ? null : JsonText.Parse(text, log);
    }

    private static void Check(JobDocument document, List<Refusal> log)
    {
        log.AddRange(document.Job.Check());
        var ids = new HashSet<string>(StringComparer.Ordinal);
        var signOffs = document.Records.SignOffs;
        for (var i = 0; i < signOffs.Count; i++)
        {
            if (!ids.Add(signOffs[i].Id))
                log.Add(
                    new(
                        $"records.signOffs[{i}].id",
                        signOffs[i].Id,
                        "is another sign-off's id",
                        "an id of its own"
                    )
                );
        }
    }
}
