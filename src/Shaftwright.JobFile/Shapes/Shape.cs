using System.Text.Json;
using System.Text.Json.Nodes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile.Shapes;

/// <summary>How one kind of value looks in a file. Reading, writing and the schema come from the same shape, so they cannot
/// drift apart. A shape never throws on what it reads; it says what is wrong and goes on, so that one look shows everything.</summary>
internal abstract class Shape<T>
{
    /// <summary>Reads a value. False when it was refused, with the reasons added to <paramref name="log"/>.</summary>
    public abstract bool Read(JsonElement json, string path, List<Refusal> log, out T value);

    public abstract void Write(Utf8JsonWriter json, T value);

    /// <summary>Writes what the value means, whatever way it was spelt.</summary>
    public virtual void WriteMeaning(Utf8JsonWriter json, T value) => Write(json, value);

    /// <summary>The JSON Schema of the value; named definitions go to <paramref name="defs"/>.</summary>
    public abstract JsonObject Schema(JsonObject defs);

    protected static bool Refuse(
        JsonElement json,
        string path,
        List<Refusal> log,
        string problem,
        string accepted
    )
    {
        log.Add(new Refusal(path, Shown(json), problem, accepted));
        return false;
    }

    /// <summary>What stood there, short enough for a sentence.</summary>
    internal static string Shown(JsonElement json)
    {
        var text = json.ValueKind switch
        {
            JsonValueKind.String => json.GetString()!,
            JsonValueKind.Object => "{…}",
            JsonValueKind.Array => "[…]",
            _ => json.GetRawText(),
        };
        return Clip(text);
    }

    internal static string Clip(string text) => text.Length <= 60 ? text : text[..59] + "…";
}
