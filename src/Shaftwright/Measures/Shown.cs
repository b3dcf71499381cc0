using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace Shaftwright.Measures;

/// <summary>The units numbers are shown in.</summary>
public enum Display
{
    /// <summary>mm, N·m, MPa.</summary>
    Metric,

    /// <summary>inches, lbf·ft, ksi.</summary>
    Inch,
}

/// <summary>A number on its way to a person: internal value, and how many digits of it are worth reading.</summary>
/// <param name="Value">Internal unit.</param>
/// <param name="Kind">What it is.</param>
public readonly record struct Shown(double Value, ShownKind Kind)
{
    /// <summary>The number with its unit.</summary>
    public string In(Display display)
    {
        var (unit, decimals) = (Kind, display) switch
        {
            (ShownKind.Length, Display.Metric) => (Distance.Mm, 1),
            (ShownKind.Length, Display.Inch) => (Distance.Inch, 3),
            (ShownKind.Diameter, Display.Metric) => (Distance.Mm, 2),
            (ShownKind.Diameter, Display.Inch) => (Distance.Inch, 3),
            (ShownKind.Fine, Display.Metric) => (Distance.Mm, 2),
            (ShownKind.Fine, Display.Inch) => (Distance.Thou, 1),
            (ShownKind.Angle, _) => (Angle.Degree, 1),
            (ShownKind.Bearing, _) => (Angle.Degree, 0),
            (ShownKind.Torque, Display.Metric) => (Torque.NewtonMetre, 0),
            (ShownKind.Torque, Display.Inch) => (Torque.PoundFoot, 0),
            (ShownKind.Stress, Display.Metric) => (Stress.MPa, 0),
            (ShownKind.Stress, Display.Inch) => (Stress.Ksi, 1),
            (ShownKind.StressIntensity, Display.Metric) => (StressIntensity.MPaRootMetre, 1),
            (ShownKind.StressIntensity, Display.Inch) => (StressIntensity.KsiRootInch, 1),
            (ShownKind.Temperature, Display.Metric) => (Temperature.Celsius, 0),
            (ShownKind.Temperature, Display.Inch) => (Temperature.Fahrenheit, 0),
            (ShownKind.Load, Display.Metric) => (Force.Kilonewton, 1),
            (ShownKind.Load, Display.Inch) => (Force.PoundForce, 0),
            (ShownKind.Force, Display.Metric) => (Force.Newton, 0),
            (ShownKind.Force, Display.Inch) => (Force.PoundForce, 0),
            (ShownKind.Light, Display.Metric) => (Illuminance.Lux, 0),
            (ShownKind.Light, Display.Inch) => (Illuminance.FootCandle, 0),
            (ShownKind.UltraViolet, _) => (Irradiance.WattPerSquareMetre, 1),
            (ShownKind.Content, _) => (Content.Percent, 2),
            (ShownKind.Vickers, _) => (Vickers.Hv, 0),
            (ShownKind.Current, _) => (Current.Ampere, 0),
            (ShownKind.Share, _) => (Ratio.Percent, 0),
            _ => (Ratio.One, 2),
        };
        if (!double.IsFinite(Value))
            return "not known";
        if (Kind == ShownKind.Chance)
            return Chance(Value);
        if (Kind == ShownKind.Time)
            return Time(Value);
        var number = unit.FromInternal(Value);
        var text = Math.Round(number, decimals, MidpointRounding.AwayFromZero)
            .ToString(
                "F" + decimals.ToString(CultureInfo.InvariantCulture),
                CultureInfo.InvariantCulture
            );
        if (text.StartsWith('-') && text.AsSpan(1).IndexOfAnyExcept("0.") < 0)
            text = text[1..];
        text = text.Replace('-', '−');
        return unit.Symbol switch
        {
            "" => text,
            "°" => text + "°",
            _ => text + "\u00a0" + unit.Symbol,
        };
    }

    private static string Chance(double p) =>
        p switch
        {
            < 0.001 => "less than 1 in 1000",
            < 0.095 => "about 1 in "
                + Math.Round(1 / p).ToString("0", CultureInfo.InvariantCulture),
            < 0.995 => "about "
                + Math.Round(p * 100).ToString("0", CultureInfo.InvariantCulture)
                + "\u00a0%",
            _ => "almost certain",
        };

    private static string Time(double seconds)
    {
        var sign = seconds < 0 ? "−" : "";
        var s = (long)Math.Round(Math.Abs(seconds), MidpointRounding.AwayFromZero);
        if (s < 100)
            return Count(sign, s, "s");
        // Whole minutes from there, but never one that has not passed: an early dwell must not read as a full one.
        var minutes = s / 60;
        if (minutes < 100)
            return s % 60 == 0
                ? Count(sign, minutes, "min")
                : Count(sign, minutes, "min") + " " + Count("", s % 60, "s");
        var hours = minutes / 60;
        if (hours >= 96)
            return Count(sign, hours / 24, "days");
        return minutes % 60 == 0
            ? Count(sign, hours, "h")
            : Count(sign, hours, "h") + " " + Count("", minutes % 60, "min");
    }

    private static string Count(string sign, long number, string unit) =>
        sign + number.ToString(CultureInfo.InvariantCulture) + "\u00a0" + unit;

    /// <summary>Metric text.</summary>
    public override string ToString() => In(Display.Metric);
}

/// <summary>What a shown number is, which fixes its unit and digits.</summary>
public enum ShownKind
{
    /// <summary>A length to a tenth of a millimetre.</summary>
    Length,

    /// <summary>A diameter to a hundredth, as a caliper reads it.</summary>
    Diameter,

    /// <summary>A small length to a hundredth: shims, run-out.</summary>
    Fine,

    /// <summary>An angle to a tenth of a degree.</summary>
    Angle,

    /// <summary>An angle round the shaft, to a whole degree.</summary>
    Bearing,

    /// <summary>A torque to a newton metre.</summary>
    Torque,

    /// <summary>A stress to a megapascal.</summary>
    Stress,

    /// <summary>A stress intensity to a tenth.</summary>
    StressIntensity,

    /// <summary>A share, in per cent.</summary>
    Share,

    /// <summary>A probability, in words.</summary>
    Chance,

    /// <summary>A plain factor to two decimals.</summary>
    Factor,

    /// <summary>A temperature to a whole degree.</summary>
    Temperature,

    /// <summary>A span of time: seconds, minutes and seconds, hours and minutes, or days.</summary>
    Time,

    /// <summary>A force to a newton.</summary>
    Force,

    /// <summary>The load of a press to a tenth of a kilonewton.</summary>
    Load,

    /// <summary>Light on a surface, to a lux.</summary>
    Light,

    /// <summary>UV-A on a surface, to a tenth of a watt a square metre.</summary>
    UltraViolet,

    /// <summary>A share by mass, to a hundredth of a per cent.</summary>
    Content,

    /// <summary>A Vickers hardness.</summary>
    Vickers,

    /// <summary>A current to an ampere.</summary>
    Current,
}

/// <summary>Shorthand for <see cref="Shown"/> inside sentences.</summary>
public static class Say
{
    /// <summary>A length, mm.</summary>
    public static Shown Length(double mm) => new(mm, ShownKind.Length);

    /// <summary>A diameter as a caliper reads it, mm.</summary>
    public static Shown Diameter(double mm) => new(mm, ShownKind.Diameter);

    /// <summary>A small length, mm.</summary>
    public static Shown Fine(double mm) => new(mm, ShownKind.Fine);

    /// <summary>An angle, rad.</summary>
    public static Shown Angle(double rad) => new(rad, ShownKind.Angle);

    /// <summary>An angle round the shaft, rad, to a whole degree.</summary>
    public static Shown Bearing(double rad) => new(rad, ShownKind.Bearing);

    /// <summary>A torque, N·mm.</summary>
    public static Shown Torque(double newtonMillimetres) =>
        new(newtonMillimetres, ShownKind.Torque);

    /// <summary>A stress, MPa.</summary>
    public static Shown Stress(double mpa) => new(mpa, ShownKind.Stress);

    /// <summary>A stress intensity in N/mm^1.5.</summary>
    public static Shown StressIntensity(double value) => new(value, ShownKind.StressIntensity);

    /// <summary>The load of a press, N.</summary>
    public static Shown Load(double newton) => new(newton, ShownKind.Load);

    /// <summary>A share between 0 and 1.</summary>
    public static Shown Share(double share) => new(share, ShownKind.Share);

    /// <summary>A probability between 0 and 1.</summary>
    public static Shown Chance(double p) => new(p, ShownKind.Chance);

    /// <summary>A plain factor.</summary>
    public static Shown Factor(double factor) => new(factor, ShownKind.Factor);

    /// <summary>A temperature, °C.</summary>
    public static Shown Temperature(double celsius) => new(celsius, ShownKind.Temperature);

    /// <summary>A span of time, s.</summary>
    public static Shown Time(double seconds) => new(seconds, ShownKind.Time);

    /// <summary>A force, N.</summary>
    public static Shown Force(double newtons) => new(newtons, ShownKind.Force);

    /// <summary>Light on a surface, lx.</summary>
    public static Shown Light(double lux) => new(lux, ShownKind.Light);

    /// <summary>A share by mass, per cent.</summary>
    public static Shown Content(double percent) => new(percent, ShownKind.Content);

    /// <summary>A Vickers hardness.</summary>
    public static Shown Vickers(double hv) => new(hv, ShownKind.Vickers);

    /// <summary>A current, A.</summary>
    public static Shown Current(double amperes) => new(amperes, ShownKind.Current);

    /// <summary>UV-A on a surface, W/m².</summary>
    public static Shown UltraViolet(double wattsPerSquareMetre) =>
        new(wattsPerSquareMetre, ShownKind.UltraViolet);
}

/// <summary>A sentence whose numbers follow the reader's units. Written as an interpolated string.</summary>
/// <example><code>Sentence s = $"Make it {Say.Length(455.1)} long.";</code></example>
[InterpolatedStringHandler]
public sealed class Sentence : IEquatable<Sentence>
{
    private readonly List<(string? Text, Shown Number)> _parts = [];

    /// <summary>Called by the compiler.</summary>
    public Sentence(int literalLength, int formattedCount) => _ = (literalLength, formattedCount);

    /// <summary>A sentence without numbers.</summary>
    public static Sentence Plain(string text)
    {
        var sentence = new Sentence(0, 0);
        sentence.AppendLiteral(text);
        return sentence;
    }

    /// <summary>Called by the compiler.</summary>
    public void AppendLiteral(string text) => _parts.Add((text, default));

    /// <summary>A number that follows the reader's units.</summary>
    public void AppendFormatted(Shown number) => _parts.Add((null, number));

    /// <summary>A word.</summary>
    public void AppendFormatted(string? text) => _parts.Add((text ?? "", default));

    /// <summary>A count.</summary>
    public void AppendFormatted(int count) =>
        _parts.Add((count.ToString(CultureInfo.InvariantCulture), default));

    /// <summary>Another sentence, in place.</summary>
    public void AppendFormatted(Sentence? sentence)
    {
        if (sentence is not null)
            _parts.AddRange(sentence._parts);
    }

    /// <summary>The text in the reader's units.</summary>
    public string In(Display display)
    {
        var text = new StringBuilder();
        foreach (var (words, number) in _parts)
            text.Append(words ?? number.In(display));
        return text.ToString();
    }

    /// <summary>Metric text.</summary>
    public override string ToString() => In(Display.Metric);

    /// <inheritdoc/>
    public bool Equals(Sentence? other) => other is not null && _parts.SequenceEqual(other._parts);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Sentence);

    /// <inheritdoc/>
    public override int GetHashCode() => ToString().GetHashCode(StringComparison.Ordinal);
}
