using System.Globalization;
using Shaftwright.Measures;
using Shaftwright.Truing;

namespace Shaftwright.App.Api;

/// <summary>One line of a digital indicator, as docs/indicator-feed.md describes it: sign, number, unit.</summary>
/// <param name="Text">The reading as it is offered, "0.125 mm"; null when refused.</param>
/// <param name="Millimetres">The same, mm.</param>
/// <param name="Refused">Why it was refused, in words; null when taken.</param>
internal sealed record IndicatorLine(string? Text, double Millimetres, string? Refused)
{
    /// <summary>Longest line that is looked at, characters.</summary>
    public const int Longest = 64;

    private const string Wanted =
        "Wanted: a number with its unit and nothing else, like +0.125 mm or -0.004 in.";

    /// <summary>Reads a line without its end. Null for an empty one, which says nothing.</summary>
    public static IndicatorLine? Read(string line)
    {
        var said = line.Trim();
        if (said.Length == 0)
            return null;
        if (said.Length > Longest)
            return No(said[..20] + "…", "is too long for a reading");
        var unit =
            said.EndsWith("mm", StringComparison.OrdinalIgnoreCase) ? Distance.Mm
            : said.EndsWith("in", StringComparison.OrdinalIgnoreCase) ? Distance.Inch
            : null;
        if (unit is null)
            return No(said, "does not end with mm or in");
        var number = said[..^2].Trim();
        if (
            !decimal.TryParse(
                number,
                NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out var value
            )
        )
            return No(said, "is no number");
        // As sent, digits and all: they say how fine the indicator reads.
        var text = value.ToString(CultureInfo.InvariantCulture) + " " + unit.Symbol;
        var reading = TruingFields.Dial.Read(text);
        return reading.Measure is { } measure
            ? new(text, measure.Value, null)
            : No(said, reading.Refusal!.Problem);
    }

    private static IndicatorLine No(string said, string why)
    {
        var clean = string.Concat(said.Select(c => char.IsControl(c) || c == '\uFFFD' ? '·' : c));
        return new(null, 0, $"“{clean}” {why}. {Wanted}");
    }
}
