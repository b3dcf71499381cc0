using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile.Shapes;

/// <summary>Words a person wrote.</summary>
internal sealed class TextShape(int most, int least = 0) : Shape<string>
{
    public override bool Read(JsonElement json, string path, List<Refusal> log, out string value)
    {
        value = "";
        var accepted =
            least > 0 ? $"text of 1 to {most} characters" : $"text of up to {most} characters";
        if (json.ValueKind != JsonValueKind.String)
            return Refuse(json, path, log, "is not text", accepted);
        value = json.GetString()!;
        if (value.Length > most)
            return Refuse(json, path, log, $"has {value.Length} characters", accepted);
        return value.Length >= least || Refuse(json, path, log, "is empty", accepted);
    }

    public override void Write(Utf8JsonWriter json, string value) => json.WriteStringValue(value);

    public override JsonObject Schema(JsonObject defs)
    {
        var schema = new JsonObject { ["type"] = "string", ["maxLength"] = most };
        if (least > 0)
            schema["minLength"] = least;
        return schema;
    }
}

/// <summary>Yes or no.</summary>
internal sealed class YesNoShape : Shape<bool>
{
    public override bool Read(JsonElement json, string path, List<Refusal> log, out bool value)
    {
        value = json.ValueKind == JsonValueKind.True;
        return json.ValueKind is JsonValueKind.True or JsonValueKind.False
            || Refuse(
                json,
                path,
                log,
                "is neither true nor false",
                "true or false; leave it out when it is not known"
            );
    }

    public override void Write(Utf8JsonWriter json, bool value) => json.WriteBooleanValue(value);

    public override JsonObject Schema(JsonObject defs) => new() { ["type"] = "boolean" };
}

/// <summary>A whole number.</summary>
internal sealed class CountShape(int least, int most) : Shape<int>
{
    public override bool Read(JsonElement json, string path, List<Refusal> log, out int value)
    {
        value = 0;
        return (
                json.ValueKind == JsonValueKind.Number
                && json.TryGetInt32(out value)
                && value >= least
                && value <= most
            )
            || Refuse(
                json,
                path,
                log,
                "is not a count in range",
                $"a whole number from {least} to {most}"
            );
    }

    public override void Write(Utf8JsonWriter json, int value) => json.WriteNumberValue(value);

    public override JsonObject Schema(JsonObject defs) =>
        new()
        {
            ["type"] = "integer",
            ["minimum"] = least,
            ["maximum"] = most,
        };
}

/// <summary>One word out of a list: an enum, in camel case.</summary>
internal sealed class ChoiceShape<E> : Shape<E>
    where E : struct, Enum
{
    private static readonly E[] s_values = Enum.GetValues<E>();
    private static readonly string[] s_words =
    [
        .. Enum.GetNames<E>().Select(JsonNamingPolicy.CamelCase.ConvertName),
    ];

    public override bool Read(JsonElement json, string path, List<Refusal> log, out E value)
    {
        var i =
            json.ValueKind == JsonValueKind.String ? Array.IndexOf(s_words, json.GetString()) : -1;
        value = i < 0 ? default : s_values[i];
        return i >= 0
            || Refuse(json, path, log, "is not one of the words", string.Join(", ", s_words));
    }

    public override void Write(Utf8JsonWriter json, E value) =>
        json.WriteStringValue(s_words[Array.IndexOf(s_values, value)]);

    public override JsonObject Schema(JsonObject defs) =>
        new() { ["enum"] = new JsonArray([.. s_words.Select(w => (JsonNode)w)]) };
}

/// <summary>A moment, always with its offset from UTC: a time without one means another moment on every machine.</summary>
internal sealed class MomentShape : Shape<DateTimeOffset>
{
    private const string Form = "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF";
    private static readonly string[] s_forms = [Form + "'Z'", Form + "zzz"];

    public override bool Read(
        JsonElement json,
        string path,
        List<Refusal> log,
        out DateTimeOffset value
    )
    {
        value = default;
        return (
                json.ValueKind == JsonValueKind.String
                && DateTimeOffset.TryParseExact(
                    json.GetString(),
                    s_forms,
                    CultureInfo.InvariantCulture,
                    DateTimeStyles.AssumeUniversal,
                    out value
                )
            )
            || Refuse(
                json,
                path,
                log,
                "is not a date and time with its offset",
                "2026-05-03T14:20:00Z or 2026-05-03T16:20:00+02:00"
            );
    }

    public override void Write(Utf8JsonWriter json, DateTimeOffset value) =>
        json.WriteStringValue(
            value.ToString(
                value.Offset == TimeSpan.Zero ? s_forms[0] : s_forms[1],
                CultureInfo.InvariantCulture
            )
        );

    public override JsonObject Schema(JsonObject defs) =>
        new()
        {
            ["type"] = "string",
            ["format"] = "date-time",
            ["pattern"] =
                @"^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(\.[0-9]{1,7})?(Z|[+-][0-9]{2}:[0-9]{2})$",
        };
}

/// <summary>A list.</summary>
internal sealed class ListShape<T>(Shape<T> item, int most) : Shape<IReadOnlyList<T>>
{
    public override bool Read(
        JsonElement json,
        string path,
        List<Refusal> log,
        out IReadOnlyList<T> value
    )
    {
        value = [];
        if (json.ValueKind != JsonValueKind.Array)
            return Refuse(json, path, log, "is not a list", "a list, […]");
        if (json.GetArrayLength() > most)
        {
            log.Add(
                new Refusal(
                    path,
                    $"{json.GetArrayLength()} entries",
                    "is too long a list",
                    $"at most {most}"
                )
            );
            return false;
        }
        var list = new List<T>(json.GetArrayLength());
        var whole = true;
        foreach (var element in json.EnumerateArray())
        {
            // A refused entry keeps its place, so that the paths of later refusals stay true.
            whole &= item.Read(element, $"{path}[{list.Count}]", log, out var entry);
            list.Add(entry);
        }
        value = whole ? list : [];
        return whole;
    }

    public override void Write(Utf8JsonWriter json, IReadOnlyList<T> value)
    {
        json.WriteStartArray();
        foreach (var entry in value)
            item.Write(json, entry);
        json.WriteEndArray();
    }

    public override void WriteMeaning(Utf8JsonWriter json, IReadOnlyList<T> value)
    {
        json.WriteStartArray();
        foreach (var entry in value)
            item.WriteMeaning(json, entry);
        json.WriteEndArray();
    }

    public override JsonObject Schema(JsonObject defs) =>
        new()
        {
            ["type"] = "array",
            ["maxItems"] = most,
            ["items"] = item.Schema(defs),
        };
}
