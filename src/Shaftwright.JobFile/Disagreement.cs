using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Shaftwright.Findings;
using Shaftwright.Measures;

namespace Shaftwright.JobFile;

/// <summary>What one device says of a field.</summary>
/// <param name="Text">The value in words: as typed, or what is in it.</param>
/// <param name="Value">The value; null for nothing.</param>
/// <param name="Device">The device; empty when it is not known.</param>
/// <param name="At">When it said so; null when it is not known.</param>
public sealed record Claim(string Text, JsonNode? Value, string Device, DateTimeOffset? At);

/// <summary>A field on which devices disagree.</summary>
/// <param name="Path">Where it is in the document now.</param>
/// <param name="Field">What it is called.</param>
/// <param name="Stands">What stands there and is used until it is settled.</param>
/// <param name="Others">What else was said, in the order it arrived.</param>
/// <param name="Ids">Ids of the open conflicts.</param>
public sealed record Disagreement(
    string Path,
    string Field,
    Claim Stands,
    IReadOnlyList<Claim> Others,
    IReadOnlyList<Guid> Ids
)
{
    /// <summary>True when the entry that it was said of is not there any more: then it can only be put away.</summary>
    public bool Gone { get; init; }
}

/// <summary>The open conflicts of a document, field by field and in words.</summary>
public static partial class Disagreements
{
    /// <summary>Where the route card shows them.</summary>
    public const string Place = "two-devices";

    /// <summary>The fields on which devices disagree, in the order they arose.</summary>
    /// <param name="document">The document.</param>
    public static IReadOnlyList<Disagreement> Of(JobDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        if (document.Records.Conflicts.Count == 0)
            return [];
        var json = JobJson.WriteObject(document);
        var fields = new List<Disagreement>();
        foreach (
            var all in document.Records.Conflicts.GroupBy(c =>
                (At: Now(json, c), Told: Lost(json, c))
            )
        )
        {
            var gone = all.Key.At is null;
            var path = all.Key.At ?? all.First().Path;
            var tokens = Tokens(path);
            var stands = gone ? null : Edits.Get(json, tokens);
            var last = all.Last();
            fields.Add(
                new(
                    path,
                    gone ? all.Key.Told : Name(json, tokens),
                    new(Words(stands), stands?.DeepClone(), last.StandsDevice, last.StandsAt),
                    [.. all.Select(c => new Claim(Words(c.Value), c.Value, c.Device, c.At))],
                    [.. all.Select(c => Guid.TryParse(c.Id, out var id) ? id : Guid.Empty)]
                )
                {
                    Gone = gone,
                }
            );
        }
        return fields;
    }

    /// <summary>The edit that settles a field on a value.</summary>
    /// <param name="jobId">The job.</param>
    /// <param name="document">The document, as the one who settles sees it.</param>
    /// <param name="field">The field.</param>
    /// <param name="value">The value from now on; null for nothing.</param>
    /// <param name="at">When.</param>
    /// <param name="device">On which device.</param>
    public static Edit Settle(
        string jobId,
        JobDocument document,
        Disagreement field,
        JsonNode? value,
        DateTimeOffset at,
        string device
    )
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(document);
        return new(
            Guid.NewGuid(),
            jobId,
            at,
            device,
            field.Path,
            field.Gone ? null : value?.DeepClone(),
            field.Stands.Value?.DeepClone()
        )
        {
            WasEmpty = field.Stands.Value is null,
            Entries = field.Gone
                ? document
                    .Records.Conflicts.First(c => field.Ids.Any(id => c.Id == id.ToString()))
                    .Entries
                : ListEntry.Of(JobJson.WriteObject(document), Tokens(field.Path)),
            Settles = field.Ids,
        };
    }

    /// <summary>The document as it would be with another value in a field; null where it could not be.</summary>
    /// <param name="document">The document.</param>
    /// <param name="field">The field.</param>
    /// <param name="value">The value; null for nothing.</param>
    public static JobDocument? With(JobDocument document, Disagreement field, JsonNode? value)
    {
        ArgumentNullException.ThrowIfNull(field);
        if (field.Gone)
            return null;
        var edit = new Edit(Guid.NewGuid(), "", default, "", field.Path, value?.DeepClone());
        return Edits.TryApply(JobJson.WriteObject(document), edit).Document is { } changed
            ? JobJson.Read(changed).Document
            : null;
    }

    /// <summary>The ids of the conflicts that are open at a place, for whoever types over it.</summary>
    /// <param name="document">The document as a JSON object.</param>
    /// <param name="path">The place.</param>
    public static IReadOnlyList<Guid>? OpenAt(JsonObject document, string path)
    {
        ArgumentNullException.ThrowIfNull(document);
        if ((document["records"] as JsonObject)?["conflicts"] is not JsonArray { Count: > 0 })
            return null;
        if (JobJson.Read(document).Document is not { } read)
            return null;
        var ids = Of(read).Where(d => d.Path == path).SelectMany(d => d.Ids).ToList();
        return ids.Count > 0 ? ids : null;
    }

    /// <summary>The next step while devices disagree; null when they do not.</summary>
    internal static NextStep? Next(JobDocument document) =>
        Of(document) is { Count: > 0 } fields
            ? new(
                Place,
                Sentence.Plain(
                    $"{Said(fields[0])} Settle which counts"
                        + fields.Count switch
                        {
                            1 => ".",
                            2 => "; one more field waits for the same.",
                            _ => $"; {fields.Count - 1} more fields wait for the same.",
                        }
                )
            )
            : null;

    /// <summary>What was used where devices disagree, as findings beside the answers.</summary>
    /// <param name="document">The document.</param>
    public static IReadOnlyList<Finding> Findings(JobDocument document) =>
        [
            .. Of(document)
                .Select(d => (Field: d, Stage: StageOf(d.Path)))
                .Where(d => d.Stage is not null)
                .Select(d => new Finding(
                    Severity.Caution,
                    d.Stage!.Value,
                    Place,
                    Sentence.Plain(Said(d.Field)),
                    $"Measure it again, or choose one on the job's page.",
                    "the entries of this job's devices"
                )),
        ];

    /// <summary>A device in a sentence: "phone 1a2b" for <c>phone-1a2b3c4d</c>.</summary>
    /// <param name="device">The device; empty when it is not known.</param>
    public static string Called(string device)
    {
        ArgumentNullException.ThrowIfNull(device);
        return device.Length == 0 ? "another device"
            : OwnName().Match(device) is { Success: true } m ? $"{m.Groups[1]} {m.Groups[2]}"
            : device;
    }

    private static string Said(Disagreement d) =>
        d.Gone
            ? $"What {Called(d.Others[0].Device)} said of {d.Field} is kept and used nowhere: {d.Others[0].Text}. Put it away, or type it where it belongs."
            : $"Two devices disagree on {d.Field}: {Called(d.Stands.Device)} says {d.Stands.Text}, "
                + string.Join(", ", d.Others.Select(o => $"{Called(o.Device)} says {o.Text}"))
                + $". Used until it is settled: {d.Stands.Text}.";

    /// <summary>What a field of an entry that is gone was called; empty for one that is there.</summary>
    private static string Lost(JsonObject json, OpenConflict conflict) =>
        Now(json, conflict) is null
            ? string.Join(
                ", ",
                Tokens(conflict.Path)
                    .Select(t => ListEntry.Index(t) < 0 ? Apart(t) : "one that is gone")
            )
            : "";

    private static string? Now(JsonObject json, OpenConflict conflict) =>
        ListEntry.Find(json, Tokens(conflict.Path), conflict.Entries) is { } found
            ? Edits.Pointer(found)
            : null;

    private static string[] Tokens(string path) => FieldPath.Tokens(path, 16) ?? [];

    private static string Name(JsonObject json, string[] tokens)
    {
        var words = new List<string>();
        JsonNode? at = json;
        foreach (var token in tokens)
        {
            if (at is JsonArray list)
            {
                var i = ListEntry.Index(token);
                at = i >= 0 && i < list.Count ? list[i] : null;
                var told = ListEntry.Told(at);
                words[^1] +=
                    told.Length > 0 && !told.StartsWith("id ", StringComparison.Ordinal)
                        ? $" ({told})"
                        : $" no. {i + 1}";
            }
            else
            {
                at = (at as JsonObject)?[token];
                words.Add(Apart(token));
            }
        }
        return string.Join(", ", words);
    }

    private static string Words(JsonNode? value) =>
        value switch
        {
            null => "nothing",
            JsonArray list => list.Count == 1 ? "a list of one" : $"a list of {list.Count}",
            JsonObject o => string.Join(
                ", ",
                o.Where(m => m.Key != "id").Take(4).Select(m => $"{Apart(m.Key)} {Words(m.Value)}")
            ),
            JsonValue v when v.TryGetValue<bool>(out var yes) => yes ? "yes" : "no",
            _ => Camel().IsMatch(value.ToString()) ? Apart(value.ToString()) : value.ToString(),
        };

    private static Stage? StageOf(string path) =>
        Tokens(path).FirstOrDefault() switch
        {
            "car" or "donorCars" => Stage.Car,
            "corner" => Stage.Corner,
            "joints" => Stage.Joints,
            "length" => Stage.Length,
            "donors" => Stage.Donors,
            "cut" => Stage.Cut,
            "strength" => Stage.Strength,
            "weld" => Stage.Weld,
            "truing" => Stage.Truing,
            "crackTest" => Stage.CrackTest,
            _ => null,
        };

    private static string Apart(string name) =>
        Capital().Replace(name, m => " " + m.Value.ToLowerInvariant());

    [GeneratedRegex("(?<=[a-z])[A-Z]")]
    private static partial Regex Capital();

    [GeneratedRegex("^[a-z]+([A-Z][a-z]+)+$")]
    private static partial Regex Camel();

    [GeneratedRegex("^([a-z]+)-([0-9a-f]{4})[0-9a-f]{4}$")]
    private static partial Regex OwnName();
}
