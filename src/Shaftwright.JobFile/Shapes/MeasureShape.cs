using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Shaftwright.Measures;

namespace Shaftwright.JobFile.Shapes;

/// <summary>A measure: a string as typed, or a bare number in the dimension's default unit. Its range is checked by
/// <see cref="Job.Check"/>, with everything else that the stages know about their inputs.</summary>
internal sealed class MeasureShape<D>(Field<D> field) : Shape<Measured<D>>
    where D : IDimension<D>
{
    public override bool Read(
        JsonElement json,
        string path,
        List<Refusal> log,
        out Measured<D> value
    )
    {
        value = null!;
        string text;
        switch (json.ValueKind)
        {
            case JsonValueKind.String:
                text = json.GetString()!;
                break;
            case JsonValueKind.Number:
                text = json.GetRawText();
                // People do not write 4.4e2 on a hand, programs do.
                if (text.AsSpan().ContainsAny('e', 'E'))
                {
                    if (
                        !decimal.TryParse(
                            text,
                            NumberStyles.Float,
                            CultureInfo.InvariantCulture,
                            out var plain
                        )
                    )
                        return Refuse(json, path, log, "is too large", field.Range());
                    text = plain.ToString(CultureInfo.InvariantCulture);
                }
                break;
            default:
                return Refuse(
                    json,
                    path,
                    log,
                    json.ValueKind == JsonValueKind.Null
                        ? "is not a measure; leave the field out when it is not known"
                        : "is not a measure",
                    D.Examples
                );
        }
        var reading = Measured<D>.Read(text, path);
        if (reading.Refusal is { } refusal)
        {
            log.Add(refusal);
            return false;
        }
        value = reading.Required;
        return true;
    }

    public override void Write(Utf8JsonWriter json, Measured<D> value)
    {
        // A decimal keeps its trailing zeros: 24.0 stays 24.0. What it would write otherwise stays a string.
        if (
            decimal.TryParse(
                value.Typed,
                NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out var number
            )
            && number.ToString(CultureInfo.InvariantCulture) == value.Typed
        )
            json.WriteNumberValue(number);
        else
            json.WriteStringValue(value.Typed);
    }

    public override void WriteMeaning(Utf8JsonWriter json, Measured<D> value)
    {
        // 1 in and 25.4 mm differ in the last bits, and nothing here is measured to twelve digits.
        json.WriteStringValue(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{value.Value:G12} ± {value.PlusMinus:G12}"
            )
        );
    }

    public override JsonObject Schema(JsonObject defs)
    {
        var unit = D.Units[0];
        var inUnit = unit.Symbol.Length == 0 ? "a plain number" : unit.Symbol;
        var usual =
            field.UsualPlusMinus > 0 && field.How.Length > 0
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $" Taken as ± {unit.FromInternal(field.UsualPlusMinus):0.####} {unit.Symbol} ({field.How}) when no ± is typed."
                )
                : "";
        return new JsonObject
        {
            ["description"] =
                $"{char.ToUpperInvariant(field.Words[0])}{field.Range()[1..]}. As typed, such as {D.Examples}; a bare number is {inUnit}.{usual}",
            ["type"] = new JsonArray("string", "number"),
            // Only a bare number is in a known unit, and "minimum" binds numbers only.
            ["minimum"] = Bound(unit.FromInternal(field.Least)),
            ["maximum"] = Bound(unit.FromInternal(field.Most)),
            ["maxLength"] = 60,
            ["pattern"] = "^[^A-Za-z]*[0-9]",
        };
    }

    // Degrees come back from radians a hair off; a bound is meant to six digits.
    private static decimal Bound(double bound) => Math.Round((decimal)bound, 6) / 1.0000000m;
}
