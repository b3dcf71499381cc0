using System.Text.Json;
using System.Text.Json.Nodes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile.Shapes;

/// <summary>A record: its members by name. Unknown names are refused, missing ones are legal unless a member says otherwise.</summary>
/// <param name="name">Name of the definition in the schema.</param>
/// <param name="words">What it is.</param>
/// <param name="blank">The record with nothing in it.</param>
internal sealed class ObjectShape<T>(string name, string words, Func<T> blank) : Shape<T>
{
    private readonly List<Member> _members = [];
    private readonly Dictionary<string, Member> _byName = new(StringComparer.Ordinal);

    /// <summary>The names of its members, in the order they are written.</summary>
    public IEnumerable<string> Names => _members.Select(m => m.Name);

    /// <summary>A measure; its name and words are the field's.</summary>
    public ObjectShape<T> Measure<D>(
        Field<D> field,
        Func<T, Measured<D>?> get,
        Func<T, Measured<D>, T> set
    )
        where D : IDimension<D> => Part(field.Name, "", new MeasureShape<D>(field), get, set);

    /// <summary>A part that may be missing.</summary>
    public ObjectShape<T> Part<V>(
        string member,
        string about,
        Shape<V> shape,
        Func<T, V?> get,
        Func<T, V, T> set
    )
        where V : class =>
        Add(new Member<V>(member, about, shape, t => get(t)!, set, v => v is not null, false));

    /// <summary>A value written only when <paramref name="says"/> holds for it.</summary>
    public ObjectShape<T> Value<V>(
        string member,
        string about,
        Shape<V> shape,
        Func<T, V> get,
        Func<T, V, T> set,
        Func<V, bool>? says = null,
        bool required = false
    ) => Add(new Member<V>(member, about, shape, get, set, says ?? (_ => true), required));

    /// <summary>A text, not written when empty.</summary>
    public ObjectShape<T> Text(
        string member,
        string about,
        int most,
        Func<T, string> get,
        Func<T, string, T> set
    ) => Value(member, about, new TextShape(most), get, set, v => v.Length > 0);

    /// <summary>True or false, not written when false.</summary>
    public ObjectShape<T> Flag(
        string member,
        string about,
        Func<T, bool> get,
        Func<T, bool, T> set
    ) => Value(member, about, new YesNoShape(), get, set, v => v);

    /// <summary>A word; <paramref name="silent"/> is the "don't know" that need not be written.</summary>
    public ObjectShape<T> Choice<E>(
        string member,
        string about,
        Func<T, E> get,
        Func<T, E, T> set,
        E? silent = null
    )
        where E : struct, Enum =>
        Add(
            new Member<E>(
                member,
                about,
                new ChoiceShape<E>(),
                get,
                set,
                v => silent is not { } s || !EqualityComparer<E>.Default.Equals(v, s),
                false
            )
        );

    /// <summary>Yes, no, or not known.</summary>
    public ObjectShape<T> YesNo(
        string member,
        string about,
        Func<T, bool?> get,
        Func<T, bool, T> set
    ) =>
        Add(
            new Member<bool>(
                member,
                about,
                new YesNoShape(),
                t => get(t) ?? false,
                set,
                null,
                false,
                t => get(t) is not null
            )
        );

    /// <summary>A list, not written when empty.</summary>
    public ObjectShape<T> List<V>(
        string member,
        string about,
        Shape<V> item,
        int most,
        Func<T, IReadOnlyList<V>> get,
        Func<T, IReadOnlyList<V>, T> set
    ) => Value(member, about, new ListShape<V>(item, most), get, set, list => list.Count > 0);

    public override bool Read(JsonElement json, string path, List<Refusal> log, out T value)
    {
        value = blank();
        if (json.ValueKind != JsonValueKind.Object)
            return Refuse(json, path, log, $"is not {words}", "an object, {…}");
        var seen = 0;
        foreach (var property in json.EnumerateObject())
        {
            var at = Under(path, property.Name);
            if (!_byName.TryGetValue(property.Name, out var member))
            {
                Refuse(property.Value, at, log, "is not a field here", string.Join(", ", Names));
                continue;
            }
            seen += member.Required ? 1 : 0;
            member.Read(property.Value, at, log, ref value);
        }
        if (seen < _members.Count(m => m.Required))
        {
            foreach (var member in _members.Where(m => m.Required))
            {
                if (!json.TryGetProperty(member.Name, out _))
                    log.Add(new(Under(path, member.Name), "", "is missing", member.About));
            }
        }
        // What could be read is kept, so that its ranges are checked in the same look.
        return true;
    }

    public override void Write(Utf8JsonWriter json, T value)
    {
        json.WriteStartObject();
        foreach (var member in _members)
            member.Write(json, value);
        json.WriteEndObject();
    }

    public override void WriteMeaning(Utf8JsonWriter json, T value)
    {
        json.WriteStartObject();
        foreach (var member in _members)
            member.Write(json, value, meaning: true);
        json.WriteEndObject();
    }

    public override JsonObject Schema(JsonObject defs)
    {
        if (!defs.ContainsKey(name))
        {
            defs[name] = null; // Holds its place, so that a definition cannot be built twice.
            defs[name] = Body(defs);
        }
        return new JsonObject { ["$ref"] = "#/$defs/" + name };
    }

    /// <summary>The schema itself, without a name.</summary>
    public JsonObject Body(JsonObject defs)
    {
        var properties = new JsonObject();
        var required = new JsonArray();
        foreach (var member in _members)
        {
            var schema = member.Schema(defs);
            if (member.About.Length > 0)
                schema["description"] = member.About;
            properties[member.Name] = schema;
            if (member.Required)
                required.Add((JsonNode)member.Name);
        }
        var body = new JsonObject
        {
            ["description"] = words,
            ["type"] = "object",
            ["properties"] = properties,
        };
        if (required.Count > 0)
            body["required"] = required;
        body["additionalProperties"] = false;
        return body;
    }

    /// <summary>A member that has no name is named as it stands in the file, in quotes.</summary>
    private static string Under(string path, string member)
    {
        var name = member.Length == 0 ? "\"\"" : Clip(member);
        return path.Length == 0 ? name : path + "." + name;
    }

    private ObjectShape<T> Add(Member member)
    {
        _members.Add(member);
        _byName.Add(member.Name, member);
        return this;
    }

    private abstract class Member(string name, string about, bool required)
    {
        public string Name => name;
        public string About => about;
        public bool Required => required;
        public abstract void Read(JsonElement json, string path, List<Refusal> log, ref T owner);
        public abstract void Write(Utf8JsonWriter json, T owner, bool meaning = false);
        public abstract JsonObject Schema(JsonObject defs);
    }

    private sealed class Member<V>(
        string name,
        string about,
        Shape<V> shape,
        Func<T, V> get,
        Func<T, V, T> set,
        Func<V, bool>? says,
        bool required,
        Func<T, bool>? present = null
    ) : Member(name, about, required)
    {
        public override void Read(JsonElement json, string path, List<Refusal> log, ref T owner)
        {
            if (shape.Read(json, path, log, out var value))
                owner = set(owner, value);
        }

        public override void Write(Utf8JsonWriter json, T owner, bool meaning = false)
        {
            if (present is not null && !present(owner))
                return;
            var value = get(owner);
            if (says is not null && !says(value))
                return;
            json.WritePropertyName(Name);
            if (meaning)
                shape.WriteMeaning(json, value);
            else
                shape.Write(json, value);
        }

        public override JsonObject Schema(JsonObject defs) => shape.Schema(defs);
    }
}
