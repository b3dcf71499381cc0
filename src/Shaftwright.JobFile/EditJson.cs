using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Shaftwright.JobFile.Shapes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile;

/// <summary>One edit of a list as it was read: the edit, or what is wrong with it.</summary>
/// <param name="Edit">The edit; null when it was refused.</param>
/// <param name="Id">Its id, as far as one could be read, so that a refusal can be answered to it.</param>
/// <param name="Raw">What was sent.</param>
/// <param name="Refusals">What is wrong; empty when it was read.</param>
public sealed record EditReading(Edit? Edit, Guid? Id, string Raw, IReadOnlyList<Refusal> Refusals);

/// <summary>Lists of edits as JSON. One bad edit does not spoil the list.</summary>
public static class EditJson
{
    /// <summary>Writes a list of edits.</summary>
    /// <param name="edits">The edits, oldest first.</param>
    public static string Write(IReadOnlyList<Edit> edits) =>
        JsonSerializer.Serialize(edits, EditContext.Default.IReadOnlyListEdit);

    /// <summary>Writes one edit.</summary>
    /// <param name="edit">The edit.</param>
    public static string Write(Edit edit) =>
        JsonSerializer.Serialize(edit, EditContext.Default.Edit);

    /// <summary>Reads a list of edits. Never throws on its content.</summary>
    /// <param name="json">A JSON array.</param>
    /// <param name="refusals">Why it is no list of edits at all; empty when it is.</param>
    public static IReadOnlyList<EditReading> Read(string json, out IReadOnlyList<Refusal> refusals)
    {
        ArgumentNullException.ThrowIfNull(json);
        var log = new List<Refusal>();
        refusals = log;
        using var parsed = JsonText.Parse(json, log);
        if (parsed is null)
            return [];
        if (parsed.RootElement.ValueKind != JsonValueKind.Array)
        {
            log.Add(
                new(
                    "edits",
                    Shape<int>.Shown(parsed.RootElement),
                    "is not a list",
                    "a list of edits, […]"
                )
            );
            return [];
        }
        return [.. parsed.RootElement.EnumerateArray().Select(ReadOne)];
    }

    private static EditReading ReadOne(JsonElement json)
    {
        Guid? id =
            json.ValueKind == JsonValueKind.Object
            && json.TryGetProperty("id", out var stated)
            && stated.ValueKind == JsonValueKind.String
            && stated.TryGetGuid(out var guid)
                ? guid
                : null;
        var raw = json.GetRawText();
        try
        {
            var edit = json.Deserialize(EditContext.Default.Edit);
            if (edit is null)
                return new(
                    null,
                    id,
                    raw,
                    [new("edit", "null", "is not an edit", "an object, {…}")]
                );
            var log = new List<Refusal>();
            // A time without its offset would be read by this machine's clock.
            new MomentShape().Read(json.GetProperty("at"), "at", log, out _);
            Check(edit, log);
            return new(log.Count == 0 ? edit : null, id, raw, log);
        }
        catch (JsonException e)
        {
            var path = (e.Path ?? "$").TrimStart('$').TrimStart('.');
            return new(
                null,
                id,
                raw,
                [
                    new(
                        path.Length == 0 ? "edit" : path,
                        Shape<int>.Clip(raw),
                        "is not an edit",
                        "id (a UUID), jobId, at (with its offset), device, path; value and was if any"
                    ),
                ]
            );
        }
    }

    private static void Check(Edit edit, List<Refusal> log)
    {
        if (edit.Id == Guid.Empty)
            log.Add(new("id", edit.Id.ToString(), "is the empty id", "a UUID of its own"));
        if (!IsJobId(edit.JobId))
            log.Add(
                new(
                    "jobId",
                    Shape<int>.Clip(edit.JobId),
                    "is not a job's id",
                    "1 to 64 letters a to z, digits, - and _"
                )
            );
        if (edit.Device.Length > 64)
            log.Add(
                new("device", Shape<int>.Clip(edit.Device), "is too long", "up to 64 characters")
            );
    }

    /// <summary>Whether a text can be a job's id.</summary>
    /// <param name="text">The text.</param>
    public static bool IsJobId(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length is > 0 and <= 64
            && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_');
    }
}

/// <summary>Metadata made by the compiler, so that nothing is looked up by reflection in the browser.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true
)]
[JsonSerializable(typeof(IReadOnlyList<Edit>))]
internal sealed partial class EditContext : JsonSerializerContext;
