using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Shaftwright.JobFile;

namespace Shaftwright.Records.Tests.JobFile;

/// <summary>Legal jobs made from the schema: so a new input is generated as soon as it has its line.</summary>
internal static class RandomJob
{
    private static readonly JsonElement s_schema = JsonDocument.Parse(JobJson.Schema()).RootElement;

    private static readonly string[] s_bands = ["hardened", "bores", "gone"];

    /// <summary>The text of a legal job.</summary>
    public static Gen<string> Gen { get; } =
        CsCheck.Gen.Int.Select(seed => Of(seed).ToJsonString());

    public static JsonObject Of(int seed)
    {
        var random = new Random(seed);
        var job = (JsonObject)Make(s_schema, random)!;
        // An order that no schema states: zones follow each other, a band ends after it begins, ids are single.
        var ids = 0;
        foreach (var node in Objects(job).ToList())
        {
            if (node["zones"] is JsonArray zones)
            {
                for (var i = 0; i < zones.Count; i++)
                    zones[i]!["until"] = $"{(i + 1) * 3} mm";
            }
            foreach (var band in s_bands.SelectMany(list => (node[list] as JsonArray) ?? []))
            {
                band!["from"] = random.Next(0, 100);
                band["to"] = $"{random.Next(101, 300)}.50 mm";
            }
            if (node["points"] is JsonArray points)
            {
                var seen = new HashSet<string>();
                for (var i = points.Count - 1; i >= 0; i--)
                {
                    if (!seen.Add((string?)points[i]!["point"] ?? "wheelCentre"))
                        points.RemoveAt(i);
                }
            }
            if (node.ContainsKey("id"))
                node["id"] = $"e{ids++}";
            if (node.ContainsKey("sha256"))
                node["sha256"] = new string("0123456789abcdef"[random.Next(16)], 64);
        }
        return job;
    }

    /// <summary>Whether a value says no more than its absence.</summary>
    public static bool IsSilent(JsonValue value) =>
        value.GetValueKind() switch
        {
            JsonValueKind.String => value.GetValue<string>()
                is "unknown"
                    or "unsaid"
                    or "untried"
                    or "balanced"
                    or "b"
                    or "",
            JsonValueKind.False => value.GetPropertyName()
                is "withdrawn"
                    or "fusionFromSample"
                    or "mirrored"
                    or "heldAtOuterStop"
                    or "crackSign",
            JsonValueKind.Number => value.Parent is JsonObject
                && value.GetPropertyName() == "mostLeaves",
            _ => false,
        };

    private static IEnumerable<JsonObject> Objects(JsonNode node)
    {
        if (node is JsonObject o)
            yield return o;
        foreach (
            var child in node is JsonObject own ? own.Select(p => p.Value)
            : node is JsonArray list ? list
            : []
        )
        {
            foreach (var found in Objects(child!))
                yield return found;
        }
    }

    private static JsonNode? Make(JsonElement schema, Random random)
    {
        if (schema.TryGetProperty("$ref", out var reference))
            return Make(
                s_schema.GetProperty("$defs").GetProperty(reference.GetString()!.Split('/')[^1]),
                random
            );
        if (schema.TryGetProperty("enum", out var words))
            return words[random.Next(words.GetArrayLength())].GetString();
        var type = schema.GetProperty("type");
        if (type.ValueKind == JsonValueKind.Array)
            return schema.TryGetProperty("minimum", out _)
                ? Measure(schema, random)
                : JsonNode.Parse(random.Next(2) == 0 ? "\"27,30 mm\"" : """{"a":[1.50,true]}""");
        switch (type.GetString())
        {
            case "object":
                var made = new JsonObject();
                var required = schema.TryGetProperty("required", out var r)
                    ? r.EnumerateArray().Select(n => n.GetString()).ToList()
                    : [];
                foreach (var property in schema.GetProperty("properties").EnumerateObject())
                {
                    if (required.Contains(property.Name) || random.Next(3) > 0)
                        made[property.Name] = Make(property.Value, random);
                }
                return made;
            case "array":
                var count = random.Next(0, 4);
                return new JsonArray([
                    .. Enumerable
                        .Range(0, count)
                        .Select(_ => Make(schema.GetProperty("items"), random)),
                ]);
            case "boolean":
                return random.Next(2) == 0;
            case "integer":
                return random.Next(
                    schema.GetProperty("minimum").GetInt32(),
                    schema.GetProperty("maximum").GetInt32() + 1
                );
            default:
                if (schema.TryGetProperty("format", out _))
                    return random.Next(2) == 0
                        ? $"2026-05-{random.Next(1, 29):00}T14:20:{random.Next(60):00}.25Z"
                        : $"2026-05-{random.Next(1, 29):00}T14:20:00-03:30";
                string[] texts = ["a", "Ø25 “quoted” \\ ±", "Größe\nzwei", "<b>&amp;</b>", "🙂"];
                return texts[random.Next(texts.Length)];
        }
    }

    private static JsonNode Measure(JsonElement schema, Random random)
    {
        var least = schema.GetProperty("minimum").GetDouble();
        var most = schema.GetProperty("maximum").GetDouble();
        var inside = least + (most - least) * (0.01 + 0.98 * random.NextDouble());
        var number = Math.Round(inside, 3).ToString("0.0##", CultureInfo.InvariantCulture);
        var about = schema.GetProperty("description").GetString()!;
        var unit = about.Split("a bare number is ")[1].Split('.')[0];
        if (unit == "a plain number")
            unit = "";
        return random.Next(5) switch
        {
            0 => JsonNode.Parse(number)!,
            1 => number,
            2 =>
                $"{number.Replace('.', ',')}{(number.IndexOf('.') == number.Length - 4 ? "0" : "")} {unit}".Trim(),
            3 => $"{number} +/- 0.001{unit}",
            _ => $"{number} ± 0.001 {unit}".Trim(),
        };
    }
}
