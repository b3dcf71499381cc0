using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Shaftwright.Car;
using Shaftwright.Corner;
using Shaftwright.Corner.Linkages;
using Shaftwright.CrackTest;
using Shaftwright.Cut;
using Shaftwright.Cut.Search;
using Shaftwright.Donors;
using Shaftwright.Findings;
using Shaftwright.Length;
using Shaftwright.Measures;
using Shaftwright.Strength;
using Shaftwright.Truing;
using Shaftwright.Truing.Pressing;
using Shaftwright.Weld;

namespace Shaftwright.App.Verbs;

/// <summary>Results as JSON for programs: camelCase names, numbers in internal units, sentences in the asked units.</summary>
internal sealed class ResultJson
{
    private readonly JsonSerializerOptions _options;

    private ResultJson(Display display)
    {
        _options = new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
            // ± and · stay readable. The text goes to files and pipes, never into a page's markup.
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            TypeInfoResolver = ResultContext.Default.WithAddedModifier(WithoutFindings),
            Converters =
            {
                new SentenceConverter(display),
                Named<Severity>(),
                Named<Stage>(),
                Named<Steering>(),
                Named<PowerUnitState>(),
                Named<Forbids>(),
                Named<Aim>(),
                Named<ShaftEnd>(),
                Named<SearchGoal>(),
                Named<ZoneKind>(),
                Named<SectionKind>(),
                Named<TorqueLimit>(),
                Named<PackingWay>(),
                Named<TackCall>(),
                Named<SeamPlace>(),
                Named<SeamLevel>(),
                Named<SeamItem>(),
                Named<SeamVerdict>(),
                Named<TestStep>(),
                Named<ClockPhase>(),
                Named<RunVerdict>(),
                Named<Place>(),
                Named<SiteState>(),
                Named<DemandKind>(),
                Named<DemandState>(),
                Named<DemandLack>(),
                Named<Moment>(),
                Named<RunOutVerdict>(),
                Named<BendKind>(),
                Named<TurningLine>(),
                Named<PressStep>(),
            },
        };
    }

    /// <summary>The whole answer of a verb.</summary>
    public static string Text(
        StageVerb verb,
        JobResult result,
        IReadOnlyList<Finding> findings,
        Display display
    )
    {
        var json = new ResultJson(display);
        using var stream = new MemoryStream();
        using (
            var writer = new Utf8JsonWriter(
                stream,
                new JsonWriterOptions
                {
                    Indented = true,
                    NewLine = "\n",
                    Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
                }
            )
        )
        {
            writer.WriteStartObject();
            writer.WriteString("verb", verb.Name);
            writer.WriteString("job", result.Job.Name);
            writer.WriteString("units", "mm, N·mm, MPa, rad");
            json.Write(writer, "answer", verb.Answer(result));
            writer.WriteBoolean("stop", findings.Any(f => f.Severity == Severity.Stop));
            verb.Write(result, json, writer);
            json.Write(writer, "findings", findings);
            writer.WriteEndObject();
        }
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>One member.</summary>
    public void Write<T>(Utf8JsonWriter writer, string name, T? value)
    {
        writer.WritePropertyName(name);
        if (value is null)
            writer.WriteNullValue();
        else
            JsonSerializer.Serialize(
                writer,
                value,
                (JsonTypeInfo<T>)_options.GetTypeInfo(typeof(T))
            );
    }

    private static JsonStringEnumConverter<E> Named<E>()
        where E : struct, Enum => new(JsonNamingPolicy.CamelCase, allowIntegerValues: false);

    /// <summary>A result's own findings stand in the verb's list, with those of the stages it builds on.</summary>
    private static void WithoutFindings(JsonTypeInfo type)
    {
        foreach (
            var property in type
                .Properties.Where(p =>
                    p.Name == "findings" || p.Name.EndsWith("Findings", StringComparison.Ordinal)
                )
                .ToList()
        )
            type.Properties.Remove(property);
    }

    private sealed class SentenceConverter(Display display) : JsonConverter<Sentence>
    {
        public override Sentence Read(
            ref Utf8JsonReader reader,
            Type typeToConvert,
            JsonSerializerOptions options
        ) => throw new NotSupportedException("Results are written, not read.");

        public override void Write(
            Utf8JsonWriter writer,
            Sentence value,
            JsonSerializerOptions options
        ) => writer.WriteStringValue(PlainText.Spaced(value.In(display)));
    }
}

/// <summary>The result records, known at build time.</summary>
[JsonSerializable(typeof(LengthResult))]
[JsonSerializable(typeof(LengthSpread))]
[JsonSerializable(typeof(CutResult))]
[JsonSerializable(typeof(ShelfResult))]
[JsonSerializable(typeof(ShareResult))]
[JsonSerializable(typeof(StrengthResult))]
[JsonSerializable(typeof(CarResult))]
[JsonSerializable(typeof(WeldResult))]
[JsonSerializable(typeof(BeadPlan))]
[JsonSerializable(typeof(PressResult))]
[JsonSerializable(typeof(CrackTestResult))]
[JsonSerializable(typeof(IReadOnlyList<CrackTestVerb.Clock>))]
[JsonSerializable(typeof(IReadOnlyList<CrackTestVerb.Demand>))]
[JsonSerializable(typeof(TruingResult))]
[JsonSerializable(typeof(Sentence))]
[JsonSerializable(typeof(IReadOnlyList<Finding>))]
internal sealed partial class ResultContext : JsonSerializerContext;
