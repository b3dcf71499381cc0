using System.Buffers;
using System.Text.Json;
using System.Text.Json.Nodes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile.Shapes;

/// <summary>How an open conflict looks in a file.</summary>
internal static class ConflictShape
{
    /// <summary>A conflict as a node of a document.</summary>
    public static JsonObject Node(OpenConflict conflict)
    {
        var buffer = new ArrayBufferWriter<byte>(256);
        using (var json = new Utf8JsonWriter(buffer))
            Conflict.Write(json, conflict);
        return JsonNode.Parse(buffer.WrittenSpan)!.AsObject();
    }

    /// <summary>The same conflict, with what stands set by somebody else.</summary>
    public static JsonObject StandsBy(JsonNode conflict, string device, DateTimeOffset at)
    {
        using var json = JsonDocument.Parse(conflict.ToJsonString());
        Conflict.Read(json.RootElement, "", [], out var read);
        return Node(read with { StandsDevice = device, StandsAt = at });
    }

    public static ObjectShape<OpenConflict> Conflict { get; } =
        new ObjectShape<OpenConflict>(
            "conflict",
            "a value that was set for a field while another device had changed it",
            () => new("", "", "", default)
        )
            .Value(
                "id",
                "id of the edit that brought it",
                new TextShape(64, 1),
                c => c.Id,
                (c, v) => c with { Id = v },
                required: true
            )
            .Value(
                "path",
                "the field, as a JSON Pointer",
                new TextShape(500, 1),
                c => c.Path,
                (c, v) => c with { Path = v },
                required: true
            )
            .List(
                "entries",
                "which entries of lists the numbers in the path mean",
                new TextShape(200),
                16,
                c => c.Entries,
                (c, v) => c with { Entries = v }
            )
            .Part(
                "value",
                "what was set; left out when the field was emptied",
                new AnyShape(),
                c => c.Value,
                (c, v) => c with { Value = v }
            )
            .Part(
                "was",
                "what the device saw there before; left out when there was nothing",
                new AnyShape(),
                c => c.Was,
                (c, v) => c with { Was = v }
            )
            .Value(
                "device",
                "the device that set it",
                new TextShape(64),
                c => c.Device,
                (c, v) => c with { Device = v },
                required: true
            )
            .Value(
                "at",
                "when, by the clock of that device",
                new MomentShape(),
                c => c.At,
                (c, v) => c with { At = v },
                required: true
            )
            .Text(
                "standsDevice",
                "the device that set what stands in the field; left out when it is not known",
                64,
                c => c.StandsDevice,
                (c, v) => c with { StandsDevice = v }
            )
            .Value(
                "standsAt",
                "when that was",
                new MomentShape(),
                c => c.StandsAt ?? default,
                (c, v) => c with { StandsAt = v },
                v => v != default
            );
}

/// <summary>Anything that may stand in a field of the job. It was read as that field before it was kept.</summary>
internal sealed class AnyShape : Shape<JsonNode>
{
    public override bool Read(JsonElement json, string path, List<Refusal> log, out JsonNode value)
    {
        value = JsonNode.Parse(json.GetRawText())!;
        return json.ValueKind != JsonValueKind.Null
            || Refuse(json, path, log, "is nothing", "a value; leave it out for none");
    }

    public override void Write(Utf8JsonWriter json, JsonNode value) => value.WriteTo(json);

    public override JsonObject Schema(JsonObject defs) =>
        new() { ["type"] = new JsonArray("string", "number", "boolean", "object", "array") };
}
